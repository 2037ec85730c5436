//! What an argument of each type can be.

use crate::draw::Draw;
use coilside_core::science::exports;

/// A type that exported functions take.
pub(crate) trait Argument: std::fmt::Debug {
    fn drawn(name: &str, draw: &mut Draw) -> Self;
}

impl Argument for f64 {
    fn drawn(name: &str, draw: &mut Draw) -> Self {
        draw.number(name)
    }
}

impl<T: Argument> Argument for Option<T> {
    fn drawn(name: &str, draw: &mut Draw) -> Self {
        (draw.below(4) > 0).then(|| T::drawn(name, draw))
    }
}

impl Argument for i32 {
    fn drawn(name: &str, draw: &mut Draw) -> Self {
        // Cut off at the bounds of the type; what is no number becomes 0.
        draw.number(name) as i32
    }
}

impl Argument for bool {
    fn drawn(_: &str, draw: &mut Draw) -> Self {
        draw.below(2) == 0
    }
}

impl<T: Argument> Argument for Vec<T> {
    fn drawn(name: &str, draw: &mut Draw) -> Self {
        (0..draw.below(4)).map(|_| T::drawn(name, draw)).collect()
    }
}

/// Records, field by field.
macro_rules! record {
    ($module:ident::$record:ident { $($field:ident),+ }) => {
        impl Argument for exports::$module::$record {
            fn drawn(_: &str, draw: &mut Draw) -> Self {
                Self { $($field: Argument::drawn(stringify!($field), draw)),+ }
            }
        }
    };
}
record!(flow::BucketFilling { volume_l, volume_limit_l, time_s, reaction_limit_s });
record!(flow::CountedPeriod { start, end, time_s, time_limit_s, percent_of_count, step });
record!(flow::CoilBalanceReadings {
    heat_w,
    power_w,
    share_to_refrigerant,
    air_on_c,
    air_on_rh,
    air_off_c,
    air_off_rh,
    pressure_pa
});
record!(change::HeatReadings { flow_l_min, inlet_c, outlet_c, power_w });
record!(change::TestAtConditions { test, conditions });
record!(change::HotWaterUse { litres_a_day, cold_c, hot_c, price_a_kwh });
record!(performance::ConditionReadings { source_c, source_rh, pressure_pa, water_in_c, water_out_c });
record!(surroundings::TrendPoint { x, y });
record!(performance::RatedPoint { conditions, capacity_w, cop });

impl Argument for exports::reading::ReadingValue {
    /// The value goes by the name of the reading, whose range a refusal tells.
    fn drawn(name: &str, draw: &mut Draw) -> Self {
        Self {
            value: draw.number(name),
            error_limit: draw.number("error_limit"),
            step: draw.number("step"),
            scatter_u: draw.number("scatter_u"),
            instrument: Argument::drawn("instrument", draw),
            common: Argument::drawn("common", draw),
        }
    }
}

/// Words that some argument of that name is known by, and such that come near.
fn known(name: &str) -> &'static [&'static str] {
    match name {
        "refrigerant" => &[
            "R290", "R600a", "R744", "R32", "R134a", "R1234yf", "R410A", "R407C", "R513A", "R454B", "r-32", "R 410a",
            "R22", "R", "",
        ],
        "base" => &["NaHCO3", "Na2CO3", "NaOH", "naoh", "KOH", ""],
        "formula" => &[
            "H2O",
            "CaCO3",
            "Ca(HCO3)2",
            "citric",
            "sulfamic",
            "C6H8O7",
            "((H))2",
            "H999",
            "H0",
            "()",
            ")(",
            "(((((((((H",
        ],
        "acid" => &["hydrochloric", "citric", "phosphoric", "sulfamic", "acetic", ""],
        "metal" => &[
            "stainless",
            "copper-brazed",
            "copper",
            "aluminium",
            "zinc",
            "solder",
            "titanium",
            "cupronickel",
            "gold",
            "",
        ],
        "symptom" => &["approach", "heat", "smell", ""],
        "kind" => {
            &["air fixed", "air regulated", "brine fixed", "brine regulated", "water fixed", "water regulated", ""]
        }
        "coldest" => &["surface", "evaporating", "air", ""],
        "instrument" => &["thermometer T-1", "meter", ""],
        "date" | "until_date" => {
            &["1900-01-01", "2024-02-29", "2025-01-31", "2100-02-28", "2200-12-31", "2200-13-01", "2025-02-29", "-1-1"]
        }
        _ => panic!("say in argument.rs which words an argument named {name} may be"),
    }
}

impl Argument for String {
    fn drawn(name: &str, draw: &mut Draw) -> Self {
        let word = draw.one_of(known(name));
        if !draw.goes_wild() {
            return word.to_owned();
        }
        // Cut, doubled, or with anything in its midst.
        let any = char::from_u32(draw.bits() as u32 % 0x11_0000).unwrap_or('\u{fffd}');
        let cut: String = word.chars().skip(draw.below(3)).collect();
        match draw.below(4) {
            0 => cut,
            1 => format!("{cut}{any}{word}"),
            2 => cut.repeat(draw.below(40)),
            _ => format!("{any}{}", draw.number("")),
        }
    }
}
