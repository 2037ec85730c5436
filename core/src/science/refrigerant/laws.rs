//! What holds for every refrigerant.

use super::{CircuitReadings, Cycle, Line, Refrigerant, Saturation, gas_cooler_pressure, high_side};
use crate::science::ScienceError;
use crate::science::quantity::{celsius, to_celsius};
use proptest::prelude::*;
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::{Length, Pressure, ThermodynamicTemperature};
use uom::si::length::meter;
use uom::si::pressure::pascal;
use uom::si::thermodynamic_temperature::kelvin;

fn any_refrigerant() -> impl Strategy<Value = Refrigerant> {
    prop::sample::select(Refrigerant::ALL.to_vec())
}

/// A temperature in its table, as a part of the way from the coldest to the warmest.
fn at(refrigerant: Refrigerant, part: f64) -> ThermodynamicTemperature {
    celsius(-40.0 + part * (refrigerant.table().most_c + 40.0))
}

/// Any bits, and often enough something that lies in a range.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        any::<f64>(),
        -100.0..200.0f64,
        0.0..20e6f64,
        Just(f64::NAN),
        Just(f64::INFINITY),
        Just(f64::NEG_INFINITY),
        Just(0.0),
    ]
}

fn finite_or_refused<T>(answer: Result<T, ScienceError>, value: impl Fn(&T) -> f64) -> bool {
    match answer {
        Ok(answer) => value(&answer).is_finite(),
        Err(ScienceError::OutOfRange { argument, value, least, most }) => {
            !argument.is_empty() && least < most && !(value >= least && value <= most)
        }
        Err(_) => false,
    }
}

/// Finite only if each of its numbers is.
fn sum(state: &Saturation) -> f64 {
    let pressures = state.bubble_pressure.value + state.dew_pressure.value;
    let vapour = state.vapour_density.value + state.vapour_specific_heat.value;
    pressures + state.liquid_density.value + vapour + state.latent_heat().value
}

/// The same for a cycle.
fn sum_of_cycle(cycle: &Cycle) -> f64 {
    let differences = cycle.superheat.value + cycle.subcooling.value;
    let discharge = cycle.discharge.map_or(0.0, |state| state.enthalpy.value) + cycle.cop.unwrap_or_default();
    differences + discharge + cycle.suction.enthalpy.value + cycle.liquid.enthalpy.value
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn warmer_means_more_pressure_thinner_liquid_and_denser_vapour(
        refrigerant in any_refrigerant(), parts in prop::array::uniform2(0.0..=1.0f64)
    ) {
        prop_assume!((parts[0] - parts[1]).abs() > 1e-9);
        let [cold, warm] = [parts[0].min(parts[1]), parts[0].max(parts[1])]
            .map(|part| refrigerant.saturation(at(refrigerant, part)).unwrap());
        prop_assert!(cold.bubble_pressure < warm.bubble_pressure);
        prop_assert!(cold.dew_pressure < warm.dew_pressure);
        prop_assert!(cold.liquid_density > warm.liquid_density);
        prop_assert!(cold.vapour_density < warm.vapour_density);
        prop_assert!(cold.liquid_enthalpy < warm.liquid_enthalpy);
        prop_assert!(cold.latent_heat() > warm.latent_heat());
    }

    #[test]
    fn liquid_is_denser_than_vapour_and_boiling_it_takes_heat(refrigerant in any_refrigerant(), part in 0.0..=1.0f64) {
        let state = refrigerant.saturation(at(refrigerant, part)).unwrap();
        prop_assert!(state.liquid_density > state.vapour_density);
        prop_assert!(state.latent_heat().get::<joule_per_kilogram>() > 0.0);
        prop_assert!(state.liquid_enthalpy.get::<joule_per_kilogram>() > 0.0);
        prop_assert!(state.vapour_density.value > 0.0);
        // Where R513A is azeotropic its lines touch; two tables then differ by what each is wrong.
        prop_assert!(state.bubble_pressure.value > state.dew_pressure.value * (1.0 - 2e-5));
    }

    #[test]
    fn from_temperature_to_pressure_and_back_returns(refrigerant in any_refrigerant(), part in 0.0..=1.0f64) {
        let temperature = at(refrigerant, part);
        let state = refrigerant.saturation(temperature).unwrap();
        let bubble = refrigerant.bubble_temperature(state.bubble_pressure).unwrap();
        let dew = refrigerant.dew_temperature(state.dew_pressure).unwrap();
        prop_assert!((bubble.get::<kelvin>() - temperature.get::<kelvin>()).abs() < 0.001);
        prop_assert!((dew.get::<kelvin>() - temperature.get::<kelvin>()).abs() < 0.001);
    }

    #[test]
    fn dew_is_not_colder_than_bubble(refrigerant in any_refrigerant(), part in 0.0..=1.0f64) {
        let [least, most] = refrigerant.table().dew_pa;
        let both = refrigerant.saturation_temperatures(Pressure::new::<pascal>(least + part * (most - least))).unwrap();
        // As above.
        prop_assert!(both.dew.get::<kelvin>() > both.bubble.get::<kelvin>() - 0.0005);
    }

    #[test]
    fn hotter_vapour_has_more_enthalpy(refrigerant in any_refrigerant(), part in 0.0..=1.0f64, above in prop::array::uniform2(0.0..=60.0f64)) {
        prop_assume!((above[0] - above[1]).abs() > 1e-6);
        let dew_c = -40.0 + part * (refrigerant.table().most_c - 7.0 + 40.0);
        let pressure = refrigerant.saturation(celsius(dew_c)).unwrap().dew_pressure;
        let dew = to_celsius(refrigerant.dew_temperature(pressure).unwrap());
        let ends = [above[0].min(above[1]), above[0].max(above[1])];
        let [less, more] = ends.map(|above| refrigerant.vapour_enthalpy(pressure, celsius(dew + above.clamp(0.001, 59.999))).unwrap());
        prop_assert!(less <= more);
    }

    #[test]
    fn any_numbers_give_a_finite_answer_or_a_refusal(
        refrigerant in any_refrigerant(), x in prop::array::uniform4(number())
    ) {
        let [a, b, c, d] = x;
        let line = Line {
            gauge_pressure: Pressure::new::<pascal>(a),
            temperature: celsius(b),
            altitude: Length::new::<meter>(c),
        };
        prop_assert!(finite_or_refused(refrigerant.saturation(celsius(a)), sum));
        let both = refrigerant.saturation_temperatures(Pressure::new::<pascal>(a));
        prop_assert!(finite_or_refused(both, |both| to_celsius(both.bubble) + to_celsius(both.dew)));
        prop_assert!(finite_or_refused(line.superheat(refrigerant), |difference| difference.value));
        prop_assert!(finite_or_refused(line.subcooling(refrigerant), |difference| difference.value));
        prop_assert!(finite_or_refused(high_side(refrigerant, &line, celsius(d)), |_| 0.0));
        let read = CircuitReadings {
            low_pressure: Pressure::new::<pascal>(a),
            high_pressure: Pressure::new::<pascal>(b),
            suction: celsius(c),
            discharge: Some(celsius(d)),
            liquid: celsius(d),
        };
        prop_assert!(finite_or_refused(refrigerant.cycle(&read), sum_of_cycle));
        let enthalpy = refrigerant.vapour_enthalpy(Pressure::new::<pascal>(a), celsius(b));
        prop_assert!(finite_or_refused(enthalpy, |enthalpy| enthalpy.value));
        prop_assert!(finite_or_refused(refrigerant.dome(celsius(a)), |dome| dome.dew.iter().map(|at| at.enthalpy.value).sum()));
        prop_assert!(finite_or_refused(gas_cooler_pressure(celsius(a), celsius(b)), |pressure| pressure.value));
    }
}

#[test]
fn a_refrigerant_is_known_from_its_coldest_to_3_k_below_critical_and_no_further() {
    for refrigerant in Refrigerant::ALL {
        let table = refrigerant.table();
        let short_of_k = table.critical_k - 273.15 - table.most_c;
        assert!((3.0..3.1).contains(&short_of_k), "{refrigerant:?} ends {short_of_k} K below critical");
        for inside in [-40.0, table.most_c] {
            assert!(refrigerant.saturation(celsius(inside)).is_ok());
        }
        for outside in [-40.001, table.most_c + 0.001] {
            let refused = refrigerant.saturation(celsius(outside)).unwrap_err();
            assert!(matches!(refused, ScienceError::OutOfRange { least: -40.0, most, .. } if most == table.most_c));
        }
        for (line, ends) in [(table.bubble_pa, 0), (table.dew_pa, 1)] {
            let temperature = |p| {
                let p = Pressure::new::<pascal>(p);
                if ends == 0 { refrigerant.bubble_temperature(p) } else { refrigerant.dew_temperature(p) }
            };
            assert!(temperature(line[0]).is_ok() && temperature(line[1]).is_ok());
            assert!(temperature(line[0] - 1.0).is_err() && temperature(line[1] + 1.0).is_err());
        }
    }
}
