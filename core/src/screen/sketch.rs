//! The refrigerant cycle as a plot: pressure, by its logarithm, over enthalpy.

use uom::si::available_energy::kilojoule_per_kilogram;
use uom::si::pressure::kilopascal;
use uom::si::temperature_interval::kelvin;

use super::{LineStyle, Plot, PlotLine, PlotPoint, Tick};
use crate::procedure::measure::Units;
use crate::procedure::pack::Quantity;
use crate::record::results::{Sketched, Stage};
use crate::science::refrigerant::{Cycle, State};
use crate::words::{Words, number};

/// Exact, by the definitions of the international table's Btu and of the pound.
const KJ_KG_PER_BTU_LB: f64 = 2.326;
/// Room beside what is drawn, as a part of the width.
const MARGIN: f64 = 0.04;
/// Marks of an axis of pressure, times a power of ten.
const PRESSURE_MARKS: [f64; 3] = [1.0, 2.0, 5.0];

/// An axis between two numbers in the units that people see.
struct Axis {
    least: f64,
    most: f64,
}

impl Axis {
    /// Around all of these, which are finite.
    fn around(values: impl Iterator<Item = f64> + Clone) -> Self {
        let (least, most) = (values.clone().fold(f64::INFINITY, f64::min), values.fold(f64::NEG_INFINITY, f64::max));
        let room = MARGIN * (most - least);
        Self { least: least - room, most: most + room }
    }

    fn at(&self, value: f64) -> f64 {
        ((value - self.least) / (self.most - self.least)).clamp(0.0, 1.0)
    }

    /// Those that lie on it, each with its number; `on` is where on the axis a number lies.
    fn ticks(&self, numbers: impl Iterator<Item = f64>, on: impl Fn(f64) -> f64, language: &str) -> Vec<Tick> {
        numbers
            .filter(|number| (self.least..=self.most).contains(&on(*number)))
            .map(|number| Tick { at: self.at(on(number)), text: number::write(number, 0, language) })
            .collect()
    }
}

/// In the units that people see: enthalpy, and the logarithm of pressure.
fn seen(state: &State, units: Units) -> (f64, f64) {
    let kj_kg = state.enthalpy.get::<kilojoule_per_kilogram>();
    let enthalpy = if units == Units::Us { kj_kg / KJ_KG_PER_BTU_LB } else { kj_kg };
    (enthalpy, libm::log(Quantity::Pressure.to_people(state.pressure.get::<kilopascal>(), units)))
}

/// The corners as the refrigerant passes them; without a discharge the way through the compressor and the condenser is open.
fn way(cycle: &Cycle) -> Vec<State> {
    match cycle.discharge {
        Some(discharge) => vec![cycle.suction, discharge, cycle.liquid, cycle.expanded, cycle.suction],
        None => vec![cycle.liquid, cycle.expanded, cycle.suction],
    }
}

/// The plot of a unit's cycles.
#[must_use]
pub fn sketch(sketched: &Sketched, words: &Words, units: Units) -> Plot {
    let dome = words.text("result-cycle-dome");
    let mut drawn: Vec<(String, LineStyle, Vec<State>)> = vec![
        (dome.clone(), LineStyle::Plain, sketched.dome.bubble.to_vec()),
        (dome, LineStyle::Plain, sketched.dome.dew.to_vec()),
    ];
    for (stage, cycle) in &sketched.cycles {
        let (key, style) = match stage {
            Stage::Left => ("column-left", LineStyle::Strong),
            Stage::Found | Stage::Once => ("column-found", LineStyle::Dashed),
        };
        drawn.push((words.text(key), style, way(cycle)));
    }
    let points = || drawn.iter().flat_map(|(_, _, states)| states).map(move |state| seen(state, units));
    let (x, y) = (Axis::around(points().map(|(x, _)| x)), Axis::around(points().map(|(_, y)| y)));
    let language = words.language();
    let step = if x.most - x.least > 250.0 { 100.0 } else { 50.0 };
    let enthalpies = (0..40).map(|count| f64::from(count) * step);
    let pressures = [10.0, 100.0, 1000.0, 10_000.0].into_iter().flat_map(|ten| PRESSURE_MARKS.map(|mark| mark * ten));
    let refrigerant = [("refrigerant", sketched.refrigerant.as_str())];
    let enthalpy_unit = if units == Units::Us { "Btu/lb" } else { "kJ/kg" };
    Plot {
        caption: words.fill("result-cycle-caption", &refrigerant),
        text: said(sketched, words, units),
        x_title: words.fill("result-cycle-enthalpy", &[("unit", enthalpy_unit)]),
        y_title: words.fill("result-cycle-pressure", &[("unit", Quantity::Pressure.symbol(units))]),
        x_ticks: x.ticks(enthalpies, |number| number, language),
        y_ticks: y.ticks(pressures, libm::log, language),
        lines: drawn
            .iter()
            .map(|(label, style, states)| PlotLine {
                label: label.clone(),
                style: *style,
                points: states
                    .iter()
                    .map(|state| seen(state, units))
                    .map(|(enthalpy, pressure)| PlotPoint { x: x.at(enthalpy), y: y.at(pressure) })
                    .collect(),
            })
            .collect(),
    }
}

/// The drawing in words: a sentence a stage.
fn said(sketched: &Sketched, words: &Words, units: Units) -> String {
    let language = words.language();
    let of_stage = |(stage, cycle): &(Stage, Cycle)| {
        let pressure = |state: &State| {
            let value = Quantity::Pressure.to_people(state.pressure.get::<kilopascal>(), units);
            format!("{}\u{a0}{}", number::write(value, 0, language), Quantity::Pressure.symbol(units))
        };
        let difference = |kelvins: f64| match units {
            Units::Metric => format!("{}\u{a0}K", number::write(kelvins, 1, language)),
            Units::Us => format!("{}\u{a0}°F", number::write(kelvins * 1.8, 1, language)),
        };
        let key = if *stage == Stage::Left { "column-left" } else { "column-found" };
        let text = words.fill(
            "result-cycle-stage",
            &[
                ("stage", &words.text(key)),
                ("low", &pressure(&cycle.suction)),
                ("high", &pressure(&cycle.liquid)),
                ("superheat", &difference(cycle.superheat.get::<kelvin>())),
                ("subcooling", &difference(cycle.subcooling.get::<kelvin>())),
            ],
        );
        let cop = |cop| words.fill("result-cycle-cop", &[("cop", &number::write(cop, 1, language))]);
        std::iter::once(text).chain(cycle.cop.map(cop)).collect::<Vec<String>>().join(" ")
    };
    sketched.cycles.iter().map(of_stage).collect::<Vec<String>>().join("\n")
}
