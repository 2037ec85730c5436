//! The units of readings: what is written into the log (UCUM codes, an open standard), and what people see.

use super::pack::Quantity;
use crate::words::number;

/// Metric, or US customary.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Units {
    /// °C, litres, kilopascal.
    #[default]
    Metric,
    /// °F, US gallons, psi.
    Us,
}

/// Litres in a US liquid gallon, exact by definition (231 cubic inches; NIST Handbook 44, appendix C).
const LITRES_PER_GALLON: f64 = 3.785_411_784;
/// Millilitres to a litre in a US fluid ounce to a US gallon: a gallon has 128 of them.
const DOSE_PER_US_DOSE: f64 = 1000.0 / 128.0;
/// Kilopascal in a pound-force per square inch (NIST SP 811, appendix B.8).
const KPA_PER_PSI: f64 = 6.894_757;

/// Grams in an avoirdupois ounce, exact by definition (NIST Handbook 44, appendix C).
const GRAMS_PER_OUNCE: f64 = 28.349_523_125;

impl Quantity {
    /// The UCUM code of the unit in which the log keeps it.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Quantity::Temperature => "Cel",
            Quantity::RelativeHumidity => "%",
            Quantity::Flow => "L/min",
            Quantity::Volume => "L",
            Quantity::Pressure => "kPa",
            Quantity::Voltage => "V",
            Quantity::Current => "A",
            Quantity::Power => "W",
            Quantity::Capacitance => "uF",
            Quantity::Insulation => "MOhm",
            Quantity::Acidity => "[pH]",
            Quantity::Conductivity => "uS/cm",
            Quantity::Hardness => "mg/L",
            Quantity::Share => "%{vol}",
            Quantity::Dose => "mL/L",
            Quantity::Minutes => "min",
            Quantity::Count => "1",
            Quantity::Text => "",
        }
    }

    /// The unit as people see it.
    #[must_use]
    pub const fn symbol(self, units: Units) -> &'static str {
        match (self, units) {
            (Quantity::Temperature, Units::Metric) => "°C",
            (Quantity::Temperature, Units::Us) => "°F",
            (Quantity::Flow, Units::Us) => "gal/min",
            (Quantity::Flow, Units::Metric) => "L/min",
            (Quantity::Volume, Units::Us) => "gal",
            (Quantity::Pressure, Units::Us) => "psi",
            (Quantity::Capacitance, _) => "µF",
            (Quantity::Insulation, _) => "MΩ",
            (Quantity::Acidity, _) => "pH",
            (Quantity::Conductivity, _) => "µS/cm",
            (Quantity::Share, _) => "%",
            (Quantity::Dose, Units::Us) => "fl oz/gal",
            (Quantity::Count, _) => "",
            (quantity, _) => quantity.code(),
        }
    }

    /// What was typed, in the log's unit.
    #[must_use]
    pub fn to_log(self, value: f64, units: Units) -> f64 {
        match (self, units) {
            (Quantity::Temperature, Units::Us) => (value - 32.0) / 1.8,
            (Quantity::Flow | Quantity::Volume, Units::Us) => value * LITRES_PER_GALLON,
            (Quantity::Pressure, Units::Us) => value * KPA_PER_PSI,
            (Quantity::Dose, Units::Us) => value * DOSE_PER_US_DOSE,
            _ => value,
        }
    }

    /// A value of the log, in the units that people see.
    #[must_use]
    pub fn to_people(self, value: f64, units: Units) -> f64 {
        match (self, units) {
            (Quantity::Temperature, Units::Us) => value * 1.8 + 32.0,
            (Quantity::Flow | Quantity::Volume, Units::Us) => value / LITRES_PER_GALLON,
            (Quantity::Pressure, Units::Us) => value / KPA_PER_PSI,
            (Quantity::Dose, Units::Us) => value / DOSE_PER_US_DOSE,
            _ => value,
        }
    }

    /// A difference of values of the log with its unit, as people see it: a temperature loses the offset of its zero.
    #[must_use]
    pub fn show_difference(self, value: &str, units: Units, language: &str) -> String {
        let Ok(number) = value.parse::<f64>() else { return value.to_owned() };
        let finer = value.split_once('.').map_or(0, |(_, rest)| rest.len().min(6)) as u8;
        let (number, symbol, decimals) = match (self, units) {
            (Quantity::Temperature, Units::Metric) => (number, "K", finer),
            (_, Units::Metric) => (number, self.symbol(units), finer),
            (_, Units::Us) => {
                let seen = self.to_people(number, units) - self.to_people(0.0, units);
                (seen, self.symbol(units), finer.max(1))
            }
        };
        let text = number::write(number, decimals, language);
        match symbol {
            "" | "pH" => text,
            symbol => format!("{text}\u{a0}{symbol}"),
        }
    }

    /// The decimals to keep in the log: one more than people see where a conversion stands between.
    #[must_use]
    pub const fn log_decimals(self, decimals: u8, units: Units) -> u8 {
        match (self, units) {
            (
                Quantity::Temperature | Quantity::Flow | Quantity::Volume | Quantity::Pressure | Quantity::Dose,
                Units::Us,
            ) => decimals + 1,
            _ => decimals,
        }
    }

    /// A value of the log with its unit, as people see it.
    #[must_use]
    pub fn show(self, value: &str, decimals: u8, units: Units, language: &str) -> String {
        let Ok(number) = value.parse::<f64>() else { return value.to_owned() };
        let symbol = self.symbol(units);
        let text = if units == Units::Metric {
            number::localise(value, language)
        } else {
            number::write(self.to_people(number, units), decimals, language)
        };
        let glue = match symbol {
            "" => return text,
            "pH" => return format!("pH {text}"),
            _ => "\u{a0}",
        };
        format!("{text}{glue}{symbol}")
    }
}

/// A volume as a measuring jug shows it: a litre and more to a tenth, or to 10 mL where a tenth would be coarse; below that
/// in steps of 10 mL, and the last 100 mL to a millilitre. Fluid ounces below a gallon. What is written here is to be
/// poured; the record holds the label's numbers.
#[must_use]
pub fn jug(litres: f64, units: Units, language: &str) -> String {
    match units {
        Units::Metric if litres < 0.0995 => format!("{}\u{a0}mL", number::write(litres * 1000.0, 0, language)),
        Units::Metric if litres < 0.995 => {
            format!("{}\u{a0}mL", number::write(libm::round(litres * 100.0) * 10.0, 0, language))
        }
        Units::Metric => format!("{}\u{a0}L", number::write(litres, if litres < 1.995 { 2 } else { 1 }, language)),
        Units::Us => {
            let gallons = Quantity::Volume.to_people(litres, Units::Us);
            if gallons < 1.0 {
                let ounces = gallons * 128.0;
                format!("{}\u{a0}fl\u{a0}oz", number::write(ounces, u8::from(ounces < 9.95), language))
            } else {
                format!("{}\u{a0}gal", number::write(gallons, 2, language))
            }
        }
    }
}

/// A weight as kitchen scales show it: to a gram below 100 g, then to 5 g, kilograms to 10 g. Ounces, and pounds from one on.
#[must_use]
pub fn scales(grams: f64, units: Units, language: &str) -> String {
    match units {
        Units::Metric if grams < 99.5 => format!("{}\u{a0}g", number::write(grams, 0, language)),
        Units::Metric if grams < 997.5 => {
            format!("{}\u{a0}g", number::write(libm::round(grams / 5.0) * 5.0, 0, language))
        }
        Units::Metric => format!("{}\u{a0}kg", number::write(grams / 1000.0, 2, language)),
        Units::Us => {
            let ounces = grams / GRAMS_PER_OUNCE;
            if ounces < 15.95 {
                format!("{}\u{a0}oz", number::write(ounces, 1, language))
            } else {
                format!("{}\u{a0}lb", number::write(ounces / 16.0, 2, language))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_those_that_a_measuring_jug_shows() {
        for (litres, shown) in [
            (10.909, "10.9\u{a0}L"),
            (2.0, "2.0\u{a0}L"),
            (1.091, "1.09\u{a0}L"),
            (0.2, "200\u{a0}mL"),
            (0.1045, "100\u{a0}mL"),
            (0.0874, "87\u{a0}mL"),
            (0.9968, "1.00\u{a0}L"),
        ] {
            assert_eq!(jug(litres, Units::Metric, "en"), shown);
        }
        assert_eq!(jug(0.2, Units::Us, "en"), "6.8\u{a0}fl\u{a0}oz");
        assert_eq!(jug(2.0, Units::Us, "en"), "68\u{a0}fl\u{a0}oz");
    }

    #[test]
    fn weights_are_those_that_scales_show() {
        for (grams, metric, us) in [
            (98.0, "98\u{a0}g", "3.5\u{a0}oz"),
            (102.0, "100\u{a0}g", "3.6\u{a0}oz"),
            (453.592_37, "455\u{a0}g", "1.00\u{a0}lb"),
            (1250.0, "1.25\u{a0}kg", "2.76\u{a0}lb"),
        ] {
            assert_eq!(scales(grams, Units::Metric, "en"), metric);
            assert_eq!(scales(grams, Units::Us, "en"), us);
        }
    }

    const EVERY: [Quantity; 15] = [
        Quantity::Temperature,
        Quantity::RelativeHumidity,
        Quantity::Flow,
        Quantity::Volume,
        Quantity::Pressure,
        Quantity::Voltage,
        Quantity::Current,
        Quantity::Power,
        Quantity::Capacitance,
        Quantity::Insulation,
        Quantity::Acidity,
        Quantity::Conductivity,
        Quantity::Hardness,
        Quantity::Count,
        Quantity::Text,
    ];

    #[test]
    fn every_unit_returns_to_what_was_typed() {
        for (quantity, units) in
            EVERY.into_iter().flat_map(|quantity| [(quantity, Units::Us), (quantity, Units::Metric)])
        {
            let back = |typed: f64| quantity.to_people(quantity.to_log(typed, units), units);
            for typed in (-20_000..20_000).map(|step| f64::from(step) * 0.37) {
                assert!((back(typed) - typed).abs() < 1e-9, "{quantity:?} {units:?} {typed}");
            }
        }
    }

    #[test]
    fn a_difference_of_temperatures_knows_no_zero_of_its_own() {
        assert_eq!(Quantity::Temperature.show_difference("1.0", Units::Us, "en"), "1.8\u{a0}°F");
        assert_eq!(Quantity::Temperature.show_difference("0.5", Units::Metric, "es"), "0,5\u{a0}K");
        assert_eq!(Quantity::Acidity.show_difference("0.1", Units::Metric, "en"), "0.1");
    }

    #[test]
    fn water_boils_at_212_fahrenheit() {
        assert!((Quantity::Temperature.to_log(212.0, Units::Us) - 100.0).abs() < 1e-12);
    }

    #[test]
    fn us_units_are_those_of_the_tables() {
        // NIST SP 811, appendix B.8, from memory: 1 gal (US) is 3.785 412 L, 1 psi is 6.894 757 kPa.
        for (quantity, us, log) in [
            (Quantity::Volume, 1.0, 3.785_412),
            (Quantity::Flow, 10.0, 37.854_12),
            (Quantity::Pressure, 100.0, 689.475_7),
            (Quantity::Temperature, -40.0, -40.0),
        ] {
            assert!((quantity.to_log(us, Units::Us) - log).abs() < 1e-5, "{quantity:?}");
        }
    }
}
