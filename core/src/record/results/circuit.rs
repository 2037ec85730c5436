//! What gauges and clamps at the refrigerant circuit tell, where the refrigerant is known: superheat and subcooling, above
//! critical the gas cooler, and the cycle as a sketch.
//!
//! The doubt of a pressure enters through the saturation line. The height of the site is not known here: the atmosphere that a
//! gauge counts from is taken as 97.5 ± 6 kPa, from the sea in fine weather to 850 m (common practice, no source).

use uom::si::f64::{Pressure, ThermodynamicTemperature};
use uom::si::pressure::{kilopascal, pascal};

use super::pair::ByRole;
use super::read::Readings;
use super::{Kind, Stage};
use crate::science::ScienceError;
use crate::science::quantity::{celsius, to_celsius};
use crate::science::refrigerant::{CircuitReadings, Cycle, Dome, Refrigerant};
use crate::science::uncertainty::{Cause, Doubted, from_limits};

const ATMOSPHERE_KPA: (f64, f64) = (97.5, 6.0);
/// So much of the lines below the coldest evaporation is drawn, K.
const BELOW_K: f64 = 10.0;
const COLDEST_C: f64 = -40.0;

/// How a result of the circuit comes out of the readings.
type WorkOut = fn(Refrigerant, ByRole<'_>) -> Option<Doubted>;

pub(super) const KINDS: [(Kind, WorkOut); 4] = [
    (Kind::Superheat, superheat),
    (Kind::Subcooling, subcooling),
    (Kind::GasCoolerPressure, gas_cooler_pressure),
    (Kind::GasCoolerApproach, gas_cooler_approach),
];

/// The refrigerant cycle at each stage that was read, and the lines that it stands in.
#[derive(Clone, Debug, PartialEq)]
pub struct Sketched {
    /// What flows.
    pub refrigerant: Refrigerant,
    /// Liquid and vapour.
    pub dome: Dome,
    /// As found before as left; at least one.
    pub cycles: Vec<(Stage, Cycle)>,
}

fn absolute_kpa(gauge: &Doubted) -> Option<Doubted> {
    let (kpa, limit) = ATMOSPHERE_KPA;
    let limit_u = from_limits(limit).ok()?;
    let atmosphere = Doubted::new("atmosphere", kpa).ok()?;
    Some(gauge.plus(&atmosphere.because("atmosphere", Cause::new("atmosphere, not read"), limit_u).ok()?))
}

/// Where the refrigerant boils at a pressure, °C, with its doubt.
fn boiling_c(
    gauge: &Doubted,
    at: impl Fn(Pressure) -> Result<ThermodynamicTemperature, ScienceError>,
) -> Option<Doubted> {
    let boiling = |[kpa]: [f64; 1]| at(Pressure::new::<kilopascal>(kpa)).map(to_celsius);
    Doubted::through([&absolute_kpa(gauge)?], boiling).ok()
}

fn superheat(refrigerant: Refrigerant, read: ByRole<'_>) -> Option<Doubted> {
    let dew = boiling_c(&read("circuit-low")?, |pressure| refrigerant.dew_temperature(pressure))?;
    Some(read("circuit-suction")?.less(&dew))
}

fn subcooling(refrigerant: Refrigerant, read: ByRole<'_>) -> Option<Doubted> {
    let bubble = boiling_c(&read("circuit-high")?, |pressure| refrigerant.bubble_temperature(pressure))?;
    Some(bubble.less(&read("circuit-liquid")?))
}

/// Only R744 runs above critical.
fn gas_cooler_pressure(refrigerant: Refrigerant, read: ByRole<'_>) -> Option<Doubted> {
    let pressure = absolute_kpa(&read("circuit-high")?)?;
    let above = Pressure::new::<kilopascal>(pressure.value()) > refrigerant.critical_pressure();
    (refrigerant == Refrigerant::R744 && above).then_some(pressure)
}

fn gas_cooler_approach(refrigerant: Refrigerant, read: ByRole<'_>) -> Option<Doubted> {
    gas_cooler_pressure(refrigerant, read)?;
    Some(read("circuit-liquid")?.less(&read("water-in")?))
}

/// The cycle as found and as left. A discharge that is too hot to be drawn is left out.
pub(super) fn sketched(readings: &Readings<'_>, refrigerant: Refrigerant) -> Option<Sketched> {
    let cycle = |stage| {
        let of = |role| readings.of(role, stage);
        let pressure = |role| Some(Pressure::new::<kilopascal>(absolute_kpa(&of(role)?)?.value()));
        let read = CircuitReadings {
            low_pressure: pressure("circuit-low")?,
            high_pressure: pressure("circuit-high")?,
            suction: celsius(of("circuit-suction")?.value()),
            discharge: of("circuit-discharge").map(|read| celsius(read.value())),
            liquid: celsius(of("circuit-liquid")?.value()),
        };
        let without = || refrigerant.cycle(&CircuitReadings { discharge: None, ..read });
        Some((stage, refrigerant.cycle(&read).or_else(|_| without()).ok()?))
    };
    let cycles: Vec<(Stage, Cycle)> = [Stage::Found, Stage::Left].into_iter().filter_map(cycle).collect();
    let low_pa = |(_, cycle): &(Stage, Cycle)| cycle.suction.pressure.get::<pascal>();
    let lowest = cycles.iter().map(low_pa).reduce(f64::min)?;
    let dew_c = to_celsius(refrigerant.dew_temperature(Pressure::new::<pascal>(lowest)).ok()?);
    let dome = refrigerant.dome(celsius((dew_c - BELOW_K).max(COLDEST_C))).ok()?;
    Some(Sketched { refrigerant, dome, cycles })
}
