//! Every exported function with what it can give. A line each; a field of a record cannot be left out.

use crate::judged::{ANY, By, Judged as _, no_date};
use crate::law::Law;
use coilside_core::science::exports;
use coilside_core::science::exports::change::ChangeValues;
use coilside_core::science::exports::heat::HeatTestValues;
use coilside_core::science::exports::reading::DoubtedValue;
use coilside_core::science::exports::refrigerant::HighSideValues;
use std::ops::RangeInclusive;

/// Limits of readings reach to 10¹², and slopes with which they enter a result are steep where it is close to no longer defined.
const DOUBT_MOST: f64 = 1e30;
const DIFFERENCES: [&str; 3] = ["better", "worse", "no difference that can be told"];

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
        law!(chemistry::dilute_in => DilutionValues {
            concentrate_l: 0.0..=10_000.0,
            water_l: 0.0..=10_000.0,
            fraction: 0.0..=1.0,
        }),
        law!(chemistry::label_check => LabelCheckValues { by_ratio: 0.0..=1.0, by_measures: 0.0..=1.0, agree: ANY }),
        law!(chemistry::acid_protons_given => 0.0..=3.0),
        law!(chemistry::acid_complete_g_caco3 => 0.0..=2e8),
        law!(chemistry::acid_bath => BathValues {
            dissolved_g_caco3: 0.0..=2e8,
            left_g_caco3: 0.0..=2e8,
            share_left: 0.0..=1.0,
            to_neutralise_mol: 0.0..=4e6,
            or_further: ANY,
        }),
        law!(chemistry::acid_on_metal => [
            "allowed: leaves-alone",
            "with-limits: inhibited",
            "with-limits: weak-and-short",
            "forbidden: chloride-pits",
            "forbidden: dissolves",
            "forbidden: eats-joints",
        ]),
        law!(chemistry::free_acid_mol => 0.0..=1.4e5),
        law!(change::heat_by_instruments => By(no_heat)),
        law!(change::reading_change => ChangeValues {
            found: doubted(-1e12..=1e12),
            left: doubted(-1e12..=1e12),
            difference: doubted(-2e12..=2e12),
            verdict: DIFFERENCES,
        }),
        law!(change::work_change => WorkValues { heat_w: By(no_change), cop: By(no_change_of_cop) }),
        law!(change::year_change => YearValues {
            found_kwh: doubted(0.0..=1e12),
            left_kwh: doubted(0.0..=1e12),
            saved_kwh: doubted(-1e12..=1e12),
            saved_cost: By(no_cost),
        }),
        law!(change::condenser_by_instruments => CondenserValues {
            lmtd_k: doubted(0.0..=251.0),
            ua_w_k: doubted(0.0..=1.001e9),
            approach_k: doubted(-250.0..=250.0),
            // Of a condenser that now passes more than when clean it is below zero.
            fouling_m2_k_w: doubted(-1e6..=1e6),
        }),
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
        law!(flow::bucket_flow => doubted(0.0..=1e5)),
        law!(flow::once_through_heat => doubted(0.0..=1e8)),
        law!(flow::meter_flow => doubted(0.1..=1000.0)),
        law!(flow::counted_flow => doubted(0.0..=1e5)),
        law!(flow::counted_power => doubted(0.0..=1e8)),
        law!(flow::heating_curve_heat => doubted(0.0..=1e9)),
        law!(flow::heating_time => doubted(0.0..=1e9)),
        law!(flow::heating_time_min => 0.0..=1e9),
        law!(flow::airflow_by_balance => doubted(0.0..=1e5)),
        law!(flow::frost_risk => FrostValues {
            risk: ["none", "possible", "likely"],
            margin_k: -120.0..=120.0,
            margin_u: 0.0..=DOUBT_MOST,
        }),
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
        law!(performance::performance_ratios => PerformanceValues { cop: doubted(0.0..=1e3), capacity: By(no_capacity) }),
        law!(performance::expected_performance => PerformanceValues { cop: doubted(0.0..=1e5), capacity: By(no_capacity) }),
        law!(performance::performance_error => PerformanceErrorValues {
            machines: By(|machines: &u16| (*machines == 0).then(|| "of no machine".to_owned())),
            cop_u_per_k: 0.005..=0.05,
            capacity_u_per_k: 0.005..=0.05,
            capacity_by_source_per_k: 0.0..=0.05,
            capacity_by_water_per_k: -0.01..=0.0,
        }),
        law!(reading::reading_with_doubt => doubted(-1e12..=1e12)),
        law!(refrigerant::saturation => SaturationValues {
            bubble_pressure_pa: 2e4..=7.4e6,
            dew_pressure_pa: 2e4..=7.4e6,
            liquid_density_kg_m3: 250.0..=1500.0,
            vapour_density_kg_m3: 0.5..=500.0,
            latent_heat_j_kg: 2e4..=5e5,
            liquid_enthalpy_j_kg: 5e4..=6e5,
            vapour_enthalpy_j_kg: 1.5e5..=8e5,
            vapour_specific_heat_j_kg_k: 500.0..=5e4,
        }),
        law!(refrigerant::saturation_temperatures => SaturationTemperatureValues {
            bubble_c: -60.0..=140.0,
            dew_c: -60.0..=140.0,
        }),
        law!(refrigerant::superheat_k => -300.0..=300.0),
        law!(refrigerant::subcooling_k => -300.0..=300.0),
        law!(refrigerant::high_side => By(no_high_side)),
        law!(refrigerant::gas_cooler_pressure_pa => 7e6..=1.7e7),
        law!(refrigerant::vapour_enthalpy_j_kg => 1.5e5..=1e6),
        law!(refrigerant::refrigerant_cycle => CycleValues {
            suction_enthalpy_j_kg: 1.5e5..=1e6,
            discharge_enthalpy_j_kg: 1.5e5..=1e6,
            liquid_enthalpy_j_kg: 5e4..=6e5,
            superheat_k: 0.0..=60.0001,
            subcooling_k: 0.0..=180.0,
            cop: 1.0..=20.0,
        }),
        law!(rules::co2_equivalent_t => 0.0..=20_875.1),
        law!(rules::safety_group => ["A1", "A2L", "A3"]),
        law!(rules::lower_flammable_limit_kg_m3 => 0.038..=0.307),
        law!(rules::small_charge_limit_kg => 0.152..=1.842),
        law!(scaling::langelier_index => -8.6..=7.2),
        law!(scaling::ryznar_index => -3.3..=21.2),
        law!(scaling::calcite_saturation_index => -9.0..=5.0),
        law!(scaling::heated_water => HeatedWaterValues { ph: 3.0..=13.0, calcite_saturation_index: -9.0..=5.0 }),
        law!(scaling::ion_imbalance => -1.0..=1.0),
        law!(scaling::descale_advice => DescaleAdviceValues {
            months: By(no_months),
            least_months: By(no_months),
            most_months: By(no_months),
            reason: [
                "descale-water-scales",
                "descale-water-does-not-scale",
                "descale-worsened",
                "descale-no-worsening-told",
            ],
            held: ["descale-held-no", "descale-held-at-shortest", "descale-held-at-longest"],
        }),
        law!(surroundings::atmospheric_pressure_pa => 22_600.0..=127_800.0),
        law!(surroundings::water_boiling_c => 60.0..=107.0),
        law!(surroundings::water => WaterValues {
            density_kg_m3: 958.0..=999.98,
            specific_heat_j_kg_k: 4178.0..=4220.0,
        }),
        law!(surroundings::water_vapour_pressure_pa => 0.001..=1.556e6),
        law!(surroundings::distance_m => 0.0..=20_003_931.46),
        law!(surroundings::add_months => By(no_date)),
        law!(surroundings::add_days => By(no_date)),
        law!(surroundings::days_between => -4e6..=4e6),
        // Points to 10¹² whose x lie a billionth apart.
        law!(surroundings::theil_sen => TrendValues {
            slope: -2.1e21..=2.1e21,
            intercept: -2.2e33..=2.2e33,
            least: -2.1e21..=2.1e21,
            most: -2.1e21..=2.1e21,
        }),
    ]
}

fn wrong_with_doubted(result: &DoubtedValue, values: &RangeInclusive<f64>) -> Option<String> {
    result.value.wrong(values).or_else(|| result.standard_u.wrong(&(0.0..=DOUBT_MOST)))
}

/// A result in this range with any doubt that is a number.
fn doubted(values: RangeInclusive<f64>) -> By<impl Fn(&DoubtedValue) -> Option<String>> {
    By(move |result: &DoubtedValue| wrong_with_doubted(result, &values))
}

fn wrong_with_change(change: &ChangeValues, most: f64) -> Option<String> {
    wrong_with_doubted(&change.found, &(0.0..=most))
        .or_else(|| wrong_with_doubted(&change.left, &(0.0..=most)))
        .or_else(|| wrong_with_doubted(&change.difference, &(-most..=most)))
        .or_else(|| change.verdict.wrong(&DIFFERENCES))
}

/// Heat to 7.1 MW as found, by a factor of capacity.
fn no_change(change: &Option<ChangeValues>) -> Option<String> {
    wrong_with_change(change.as_ref()?, 1e9)
}

fn no_change_of_cop(change: &ChangeValues) -> Option<String> {
    wrong_with_change(change, 1e9)
}

fn no_heat(heat: &HeatTestValues) -> Option<String> {
    let most = 0.0..=DOUBT_MOST;
    let in_doubt = || heat.heat_u.wrong(&most).or_else(|| heat.cop_u.wrong(&most));
    heat.heat_w.wrong(&(0.0..=7.1e6)).or_else(|| heat.cop.wrong(&(0.0..=7.1e5))).or_else(in_doubt)
}

fn no_cost(cost: &Option<DoubtedValue>) -> Option<String> {
    wrong_with_doubted(cost.as_ref()?, &(-1e24..=1e24))
}

fn no_capacity(capacity: &Option<DoubtedValue>) -> Option<String> {
    wrong_with_doubted(capacity.as_ref()?, &(0.0..=1e9))
}

fn no_high_side(side: &HighSideValues) -> Option<String> {
    match side {
        HighSideValues::Condenser { subcooling_k } => subcooling_k.wrong(&(-300.0..=300.0)),
        HighSideValues::GasCooler { pressure_pa, approach_k } => {
            pressure_pa.wrong(&(7.3e6..=2e7)).or_else(|| approach_k.wrong(&(-300.0..=300.0)))
        }
    }
}

fn no_months(months: &u32) -> Option<String> {
    (!(3..=36).contains(months)).then(|| format!("gave {months} months"))
}
