//! How much of a chemical a mix takes: millilitres of what is poured, grams of a powder that the label doses by weight.

use uom::si::f64::Volume;
use uom::si::volume::{liter, milliliter};

use crate::procedure::measure::Units;
use crate::procedure::pack::{Form, Mix, Pack};
use crate::science::chemistry::dilute;
use crate::words::number;

/// In what something used up is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Measure {
    /// By volume; also a powder that the label gives in measures.
    Millilitre,
    /// By weight.
    Gram,
    /// Pieces.
    Piece,
    /// Minutes.
    Minute,
}

/// Millilitres in a US fluid ounce, exact by definition: the 128th part of a gallon of 231 cubic inches (NIST Handbook 44,
/// appendix C).
const ML_PER_OUNCE: f64 = 3785.411_784 / 128.0;
/// Grams in an ounce avoirdupois, exact by definition (NIST Handbook 44, appendix C).
const G_PER_OUNCE: f64 = 28.349_523_125;

impl Measure {
    /// The UCUM code of the unit in which the log and tables keep it.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Measure::Millilitre => "mL",
            Measure::Gram => "g",
            Measure::Piece => "1",
            Measure::Minute => "min",
        }
    }

    /// The unit of a code.
    #[must_use]
    pub fn of_code(code: &str) -> Option<Measure> {
        [Measure::Millilitre, Measure::Gram, Measure::Piece, Measure::Minute].into_iter().find(|one| one.code() == code)
    }

    /// The unit as people see it.
    #[must_use]
    pub const fn symbol(self, units: Units) -> &'static str {
        match (self, units) {
            (Measure::Millilitre, Units::Us) => "fl\u{a0}oz",
            (Measure::Gram, Units::Us) => "oz",
            (Measure::Piece, _) => "",
            (measure, _) => measure.code(),
        }
    }

    const fn in_ounces(self, units: Units) -> f64 {
        match (self, units) {
            (Measure::Millilitre, Units::Us) => ML_PER_OUNCE,
            (Measure::Gram, Units::Us) => G_PER_OUNCE,
            _ => 1.0,
        }
    }

    /// A value of the log in the units that people see.
    #[must_use]
    pub fn to_people(self, value: f64, units: Units) -> f64 {
        value / self.in_ounces(units)
    }

    /// What was typed, in the log's unit.
    #[must_use]
    pub fn to_log(self, value: f64, units: Units) -> f64 {
        value * self.in_ounces(units)
    }

    /// A value of the log with its unit as people read it: litres and kilograms where it is much.
    #[must_use]
    pub fn show(self, value: f64, units: Units, language: &str) -> String {
        let large = match self {
            Measure::Millilitre => Some("L"),
            Measure::Gram => Some("kg"),
            Measure::Piece | Measure::Minute => None,
        };
        let (seen, decimals, symbol) = match (large, units) {
            (Some(symbol), Units::Metric) if value >= 999.5 => (value / 1000.0, 2, symbol),
            (Some(_), Units::Us) => (self.to_people(value, units), 1, self.symbol(units)),
            _ => (value, 0, self.symbol(units)),
        };
        let text = number::write(seen, decimals, language);
        if symbol.is_empty() { text } else { format!("{text}\u{a0}{symbol}") }
    }
}

/// How much concentrate goes into a mix, by the label's numbers that `value` gives (reading's id to number): by its ratio,
/// else its percentage, else its dose. None where a number is missing or cannot be.
#[must_use]
pub fn concentrate(pack: &Pack, mix: &Mix, value: &dyn Fn(&str) -> Option<f64>) -> Option<(f64, Measure)> {
    let total_l = value(mix.total.as_str()).filter(|total| total.is_finite() && *total >= 0.0)?;
    let total = Volume::new::<liter>(total_l);
    if let Some(parts) = mix.parts_water.as_ref().and_then(|id| value(id.as_str())) {
        let dilution = dilute(1.0, parts, total).ok()?;
        return Some((dilution.concentrate.get::<milliliter>(), Measure::Millilitre));
    }
    if let Some(percent) = mix.percent.as_ref().and_then(|id| value(id.as_str())) {
        let fits = (0.0..=100.0).contains(&percent);
        return fits.then_some((total_l * 1000.0 * percent / 100.0, Measure::Millilitre));
    }
    let dose = value(mix.dose.as_ref()?.as_str()).filter(|dose| (0.0..=10_000.0).contains(dose))?;
    let is_powder = pack.chemicals.iter().any(|one| Some(&one.id) == mix.chemical.as_ref() && one.form == Form::Powder);
    if is_powder {
        // A powder takes next to no room: the whole mix counts as water, which errs on the side of having enough.
        return Some((total_l * dose, Measure::Gram));
    }
    // The dose goes to a litre of water, so a litre of the mix holds a little less of it.
    Some((total_l * dose / (1.0 + dose / 1000.0), Measure::Millilitre))
}

/// A label value before anything was read: the reading's preset.
#[must_use]
pub fn preset(pack: &Pack, reading: &str) -> Option<f64> {
    pack.reading(reading)?.preset.as_ref()?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_shown_with_the_unit_that_fits() {
        let show = |measure: Measure, value, units| measure.show(value, units, "en");
        assert_eq!(show(Measure::Millilitre, 200.0, Units::Metric), "200\u{a0}mL");
        assert_eq!(show(Measure::Millilitre, 1090.9, Units::Metric), "1.09\u{a0}L");
        // 2 litres are 67.6 fl oz, 100 g are 3.5 oz: NIST SP 811, appendix B.8, from memory.
        assert_eq!(show(Measure::Millilitre, 2000.0, Units::Us), "67.6\u{a0}fl\u{a0}oz");
        assert_eq!(show(Measure::Gram, 100.0, Units::Us), "3.5\u{a0}oz");
        assert_eq!(show(Measure::Piece, 2.0, Units::Us), "2");
        assert_eq!(Measure::Minute.show(95.0, Units::Metric, "es"), "95\u{a0}min");
    }

    #[test]
    fn what_is_typed_returns_to_what_it_was() {
        for measure in [Measure::Millilitre, Measure::Gram, Measure::Piece, Measure::Minute] {
            assert_eq!(Measure::of_code(measure.code()), Some(measure));
            for units in [Units::Metric, Units::Us] {
                assert!((measure.to_people(measure.to_log(7.3, units), units) - 7.3).abs() < 1e-12);
            }
        }
    }
}
