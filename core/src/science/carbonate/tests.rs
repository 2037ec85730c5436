//! What must hold for any water in the range.

use super::*;
use crate::science::quantity::celsius;
use proptest::prelude::*;

/// Any water in the middle of the range, where hydroxide (magnesium's too) leaves carbonate room at every pH.
fn waters() -> impl Strategy<Value = WaterAnalysis> {
    let cations = (1.0..400.0f64, 0.0..150.0f64, 0.0..300.0f64, 0.0..50.0f64);
    (6.0..9.0f64, 1.0..60.0f64, cations, 40.0..600.0f64, 0.0..400.0f64, 0.0..400.0f64).prop_map(
        |(ph, temperature_c, (calcium, magnesium, sodium, potassium), alkalinity, sulfate, chloride)| WaterAnalysis {
            ph,
            temperature: celsius(temperature_c),
            calcium_mg_l: calcium,
            magnesium_mg_l: magnesium,
            sodium_mg_l: sodium,
            potassium_mg_l: potassium,
            alkalinity_mg_l_caco3: alkalinity,
            sulfate_mg_l: sulfate,
            chloride_mg_l: chloride,
        },
    )
}

fn hard() -> WaterAnalysis {
    WaterAnalysis {
        ph: 7.5,
        temperature: celsius(15.0),
        calcium_mg_l: 80.0,
        magnesium_mg_l: 10.0,
        sodium_mg_l: 20.0,
        potassium_mg_l: 2.0,
        alkalinity_mg_l_caco3: 200.0,
        sulfate_mg_l: 40.0,
        chloride_mg_l: 32.1,
    }
}

/// Alkalinity and charge, summed from the species.
fn alkalinity(x: &Speciation) -> f64 {
    let pairs: f64 = [x.calcium, x.magnesium, x.sodium, x.potassium]
        .iter()
        .map(|m| m.hydroxide + m.bicarbonate + 2.0 * m.carbonate)
        .sum();
    x.hydroxide - x.hydrogen - x.bisulfate + x.bicarbonate + 2.0 * x.carbonate + pairs
}

fn charge(x: &Speciation, chloride: f64) -> f64 {
    let twofold: f64 = [x.calcium, x.magnesium].iter().map(|m| 2.0 * m.free + m.hydroxide + m.bicarbonate).sum();
    let onefold: f64 = [x.sodium, x.potassium].iter().map(|m| m.free - m.carbonate - m.sulfate).sum();
    let anions = x.hydroxide + x.bicarbonate + x.bisulfate + 2.0 * (x.carbonate + x.sulfate) + chloride;
    x.hydrogen + twofold + onefold - anions
}

fn same(a: f64, b: f64, share: f64) -> bool {
    (a - b).abs() <= share * a.abs().max(b.abs())
}

#[test]
fn more_hydroxide_than_alkalinity_is_refused_with_the_least_that_there_must_be() {
    let odd = WaterAnalysis { ph: 10.0, temperature: celsius(60.0), alkalinity_mg_l_caco3: 5.0, ..hard() };
    let refused = odd.calcite_saturation_index().unwrap_err();
    let ScienceError::OutOfRange { argument, value, least, .. } = refused else { panic!("{refused}") };
    assert_eq!((argument.as_str(), value), ("alkalinity_mg_l_caco3", 5.0));
    assert!(least > 40.0);
}

/// Magnesium's hydroxide takes nearly all of this water's alkalinity once it is hot, so that hardly any carbon is left to balance.
#[test]
fn water_with_hardly_any_carbon_beside_hydroxide_has_an_answer_when_hot() {
    let soft = WaterAnalysis {
        ph: 8.854010496836237,
        temperature: celsius(64.22845223274217),
        calcium_mg_l: 17.550103332486998,
        magnesium_mg_l: 26.109271592521683,
        sodium_mg_l: 338.57157859889344,
        potassium_mg_l: 136.65086214519374,
        alkalinity_mg_l_caco3: 6.326484695809916,
        sulfate_mg_l: 664.0347332487821,
        chloride_mg_l: 986.7174240488545,
    };
    let hot = soft.heated(celsius(95.0)).unwrap();
    assert!((7.5..soft.ph).contains(&hot.ph), "{hot:?}");
}

#[test]
fn water_is_not_heated_to_below_where_it_is() {
    let refused = hard().heated(celsius(14.0)).unwrap_err();
    assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "heated_c"));
}

#[test]
fn an_analysis_in_balance_shows_none_and_one_without_its_chloride_does() {
    assert!(hard().ion_imbalance().unwrap().abs() < 0.01);
    assert!(WaterAnalysis { chloride_mg_l: 0.0, ..hard() }.ion_imbalance().unwrap() > 0.05);
}

proptest! {
    #[test]
    fn the_index_rises_with_ph_calcium_and_alkalinity(water in waters()) {
        let index = |w: WaterAnalysis| w.calcite_saturation_index();
        let before = index(water)?;
        for more in [
            WaterAnalysis { ph: water.ph + 0.05, ..water },
            WaterAnalysis { calcium_mg_l: water.calcium_mg_l * 1.05, ..water },
            WaterAnalysis { alkalinity_mg_l_caco3: water.alkalinity_mg_l_caco3 * 1.05, ..water },
        ] {
            prop_assert!(index(more)? > before, "{more:?}");
        }
    }

    #[test]
    fn water_that_is_not_heated_stays_as_it_is(water in waters()) {
        let same = water.heated(water.temperature)?;
        prop_assert!((same.ph - water.ph).abs() < 1e-9);
        prop_assert!((same.calcite_saturation_index - water.calcite_saturation_index()?).abs() < 1e-9);
    }

    #[test]
    fn masses_alkalinity_and_charge_close(water in waters(), hotter in 0.0..1.0f64) {
        let totals = water.totals();
        let cold = water.speciation()?;
        let heated = celsius(to_celsius(water.temperature) + hotter * 30.0);
        let (_, hot) = heating::heat(&chemistry("t", heated)?, &totals, cold.carbon(), water.ph).unwrap();
        prop_assert!(same(hot.carbon(), cold.carbon(), 1e-9));
        let given = 2.0 * (totals.calcium + totals.magnesium - totals.sulfate) + totals.sodium + totals.potassium
            - totals.chloride - totals.alkalinity;
        for state in [&cold, &hot] {
            prop_assert!(same(state.calcium.total(), totals.calcium, 1e-9));
            prop_assert!(same(state.magnesium.total(), totals.magnesium, 1e-9));
            prop_assert!(same(state.sodium.total(), totals.sodium, 1e-9));
            prop_assert!(same(state.potassium.total(), totals.potassium, 1e-9));
            let paired = state.calcium.sulfate + state.magnesium.sulfate + state.sodium.sulfate + state.potassium.sulfate;
            prop_assert!(same(state.sulfate + state.bisulfate + paired, totals.sulfate, 1e-9));
            prop_assert!(same(alkalinity(state), totals.alkalinity, 1e-9));
            prop_assert!((charge(state, totals.chloride) - given).abs() < 1e-12);
        }
    }

    #[test]
    fn any_analysis_in_the_range_has_an_index_or_is_refused_for_its_alkalinity(
        ph in 5.5..=10.0f64, t in 0.0..=95.0f64, ca in 0.1..=1000.0f64, mg in 0.0..=500.0f64, na in 0.0..=1000.0f64,
        k in 0.0..=200.0f64, alkalinity in 1.0..=1000.0f64, so4 in 0.0..=1500.0f64, cl in 0.0..=1500.0f64,
    ) {
        let water = WaterAnalysis {
            ph, temperature: celsius(t), calcium_mg_l: ca, magnesium_mg_l: mg, sodium_mg_l: na, potassium_mg_l: k,
            alkalinity_mg_l_caco3: alkalinity, sulfate_mg_l: so4, chloride_mg_l: cl,
        };
        match water.heated(celsius(95.0)) {
            Ok(hot) => prop_assert!(hot.ph.is_finite() && hot.calcite_saturation_index.is_finite()),
            Err(ScienceError::OutOfRange { argument, value, least, .. }) => {
                prop_assert_eq!(argument, "alkalinity_mg_l_caco3");
                prop_assert!(least >= value);
            }
            Err(other) => prop_assert!(false, "{} for {:?}", other, water),
        }
    }

    #[test]
    fn any_bits_give_a_finite_answer_or_a_refusal(bits in prop::array::uniform10(any_number())) {
        let [ph, t, ca, mg, na, k, alkalinity, so4, cl, heated] = bits;
        let water = WaterAnalysis {
            ph, temperature: celsius(t), calcium_mg_l: ca, magnesium_mg_l: mg, sodium_mg_l: na, potassium_mg_l: k,
            alkalinity_mg_l_caco3: alkalinity, sulfate_mg_l: so4, chloride_mg_l: cl,
        };
        let known = |answer: Result<f64, ScienceError>| answer.map_or(true, f64::is_finite);
        prop_assert!(known(water.calcite_saturation_index()));
        prop_assert!(known(water.heated(celsius(heated)).map(|hot| hot.ph + hot.calcite_saturation_index)));
        prop_assert!(known(water.ion_imbalance()));
    }
}

/// Any bits, and often enough something that lies in a range.
fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![1 => any::<f64>(), 20 => 5.5..10.0f64, 5 => 0.0..95.0f64, 1 => Just(f64::NAN), 1 => Just(f64::INFINITY), 1 => Just(-0.0)]
}
