//! In what things used up are counted: millilitres of liquids, grams of powders, pieces, minutes.

use crate::procedure::measure::Units;
use crate::procedure::mixing::Concentrate;
use crate::procedure::pack::Form;
use crate::words::number;

/// In what something used up is counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Measure {
    /// By volume.
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
const ML_PER_OUNCE: f64 = 3_785.411_784 / 128.0;
/// Grams in an ounce avoirdupois, exact by definition (NIST Handbook 44, appendix C).
const G_PER_OUNCE: f64 = 28.349_523_125;

/// An amount as the log and tables keep it: a decimal point, whatever the language, and at most a tenth.
#[must_use]
pub fn tenths(amount: f64) -> String {
    let text = format!("{amount:.1}");
    text.strip_suffix(".0").map(str::to_owned).unwrap_or(text)
}

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

impl Measure {
    /// How a chemical's amounts are counted.
    #[must_use]
    pub const fn of(form: Form) -> Measure {
        match form {
            Form::Liquid => Measure::Millilitre,
            Form::Powder => Measure::Gram,
        }
    }
}

/// An amount of concentrate, counted: millilitres or grams.
#[must_use]
pub const fn counted(concentrate: Concentrate) -> (f64, Measure) {
    match concentrate {
        Concentrate::Litres(litres) => (litres * 1000.0, Measure::Millilitre),
        Concentrate::Grams(grams) => (grams, Measure::Gram),
    }
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
