//! Every exported function with what it can give. A line each; a field of a record cannot be left out.

use crate::judged::{By, Judged as _, no_date};
use crate::law::Law;
use coilside_core::science::exports;

macro_rules! law {
    ($module:ident::$function:ident => $record:ident { $($field:ident: $bound:expr),+ $(,)? }) => {
        Law::new(stringify!($function), exports::$module::$function, |result: &exports::$module::$record| {
            let exports::$module::$record { $($field),+ } = result;
            $(if let Some(wrong) = $field.wrong(&$bound) {
                return Some(format!("{} {wrong}", stringify!($field)));
            })+
            None
        })
    };
    ($module:ident::$function:ident => $bound:expr) => {
        Law::new(stringify!($function), exports::$module::$function, |result| result.wrong(&$bound))
    };
}

/// The table. Bounds are the ranges of the arguments carried through the formula; where that is a wide one, with a comment.
pub(crate) fn laws() -> Vec<Law> {
    vec![
        law!(air::air_from_humidity => AirValues {
            humidity_rh: 0.001..=1.0,
            humidity_ratio_kg_kg: 0.0..=0.42,
            dew_point_c: -100.0..=60.0,
            wet_bulb_c: -51.0..=60.0,
            enthalpy_j_kg: -51_000.0..=1.25e6,
            volume_m3_kg: 0.5..=3.3,
        }),
        law!(air::air_from_wet_bulb => AirValues {
            humidity_rh: 0.001..=1.0,
            humidity_ratio_kg_kg: 0.0..=0.42,
            dew_point_c: -100.0..=60.0,
            wet_bulb_c: -51.0..=60.0,
            enthalpy_j_kg: -51_000.0..=1.25e6,
            volume_m3_kg: 0.5..=3.3,
        }),
        // 100 m³/s of air at 50 000 Pa that comes dry at −50 °C and leaves wet at 60 °C.
        law!(air::coil_heat => CoilHeatValues {
            total_w: -1.5e8..=1.5e8,
            sensible_w: -4e7..=4e7,
            latent_w: -1.5e8..=1.5e8,
            condensate_g_s: -4e4..=4e4,
        }),
        law!(chemistry::molar_mass_g_mol => 1.0..=2e27),
        law!(chemistry::acid_molarity_mol_l => 0.0..=14.41),
        law!(chemistry::acid_capacity_g_caco3 => 0.0..=7.21e6),
        law!(chemistry::acid_left_mol => 0.0..=10_000.0),
        law!(chemistry::co2_released_l => 0.0..=6.2e5),
        law!(chemistry::neutralise_g => 0.0..=840_070.0),
        law!(chemistry::dilute => DilutionValues {
            concentrate_l: 0.0..=10_000.0,
            water_l: 0.0..=10_000.0,
            fraction: 0.0..=1.0,
        }),
        law!(chemistry::langelier_index => -8.6..=7.2),
        law!(chemistry::ryznar_index => -3.3..=21.2),
        law!(electrical::voltage_unbalance => 0.0..=2.0),
        law!(electrical::power_factor => 0.0..=1.0),
        law!(electrical::three_phase_power_w => 0.0..=1_732_051.0),
        law!(electrical::capacitance_uf => 0.0..=1_591_550.0),
        law!(electrical::insulation_at_40c_mohm => 0.0..=2.56e8),
        law!(exchanger::lmtd_k => 0.00999..=250.01),
        law!(exchanger::ua_w_k => 0.0..=1.001e8),
        law!(exchanger::effectiveness => 0.0..=1.0),
        law!(exchanger::fouling_resistance_m2_k_w => 0.0..=10_000.0),
        // A thousand litres a minute from 0 to 100 °C, by 10 W; doubts as large as the readings' ranges.
        law!(heat::heat_test => HeatTestValues {
            heat_w: 0.0..=7.1e6,
            heat_u: 0.0..=2e7,
            cop: 0.0..=7.1e5,
            cop_u: 0.0..=7.1e9,
        }),
        law!(heat::uncertainty_from_resolution => 0.0..=2.887e11),
        law!(heat::uncertainty_from_limits => 0.0..=5.774e11),
        law!(heat::verdict => ["pass", "fail", "too close to call"]),
        law!(heat::conformance_probability => 0.0..=1.0),
        law!(rules::co2_equivalent_t => 0.0..=20_875.1),
        law!(rules::safety_group => ["A1", "A2L", "A3"]),
        law!(rules::lower_flammable_limit_kg_m3 => 0.038..=0.307),
        law!(rules::small_charge_limit_kg => 0.152..=1.842),
        law!(surroundings::atmospheric_pressure_pa => 22_600.0..=127_800.0),
        law!(surroundings::water_boiling_c => 60.0..=107.0),
        law!(surroundings::water => WaterValues {
            density_kg_m3: 958.0..=999.98,
            specific_heat_j_kg_k: 4178.0..=4220.0,
        }),
        law!(surroundings::water_vapour_pressure_pa => 0.001..=1.556e6),
        law!(surroundings::distance_m => 0.0..=20_003_931.46),
        law!(surroundings::add_months => By(no_date)),
    ]
}
