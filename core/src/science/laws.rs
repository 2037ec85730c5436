//! What holds for every calculation: any bits at all give a finite number or a refusal, never a panic.

use super::chemistry::{self, Base};
use super::heat::{HeatTest, Reading};
use super::place::{self, Place};
use super::quantity::{celsius, to_celsius};
use super::{ScienceError, atmosphere, uncertainty, water};
use proptest::prelude::*;
use uom::si::f64::{AmountOfSubstance, Length, Mass, MassDensity, Pressure, Volume};

/// Any bits, and often enough something that lies in a range.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        any::<f64>(),
        -200.0..400.0f64,
        0.0..1.0f64,
        0.0..150_000.0f64,
        Just(f64::NAN),
        Just(f64::INFINITY),
        Just(f64::NEG_INFINITY),
        Just(0.0),
        Just(-0.0),
    ]
}

fn base_si<D: ?Sized, U: ?Sized>(quantity: uom::si::Quantity<D, U, f64>) -> f64
where
    D: uom::si::Dimension,
    U: uom::si::Units<f64>,
{
    quantity.value
}

fn kg_m3(x: f64) -> MassDensity {
    MassDensity::new::<uom::si::mass_density::kilogram_per_cubic_meter>(x)
}

fn litre(x: f64) -> Volume {
    Volume::new::<uom::si::volume::liter>(x)
}

fn gram(x: f64) -> Mass {
    Mass::new::<uom::si::mass::gram>(x)
}

fn mole(x: f64) -> AmountOfSubstance {
    AmountOfSubstance::new::<uom::si::amount_of_substance::mole>(x)
}

fn pascal(x: f64) -> Pressure {
    Pressure::new::<uom::si::pressure::pascal>(x)
}

fn metre(x: f64) -> Length {
    Length::new::<uom::si::length::meter>(x)
}

/// Every calculation on the same nine numbers, by name.
fn every(x: [f64; 9]) -> Vec<(&'static str, Result<f64, ScienceError>)> {
    let [a, b, c, d, e, f, g, h, i] = x;
    let reading = |value, standard_u| Reading { value, standard_u };
    let place = |latitude, longitude| Place {
        latitude,
        longitude,
    };
    let heat = HeatTest {
        flow_l_min: reading(a, b),
        inlet_c: reading(c, d),
        outlet_c: reading(e, f),
        shared_thermometer_u: g,
        power_w: reading(h, i),
    };
    vec![
        ("atmosphere", atmosphere::pressure(metre(a)).map(base_si)),
        ("boiling", water::boiling(metre(a)).map(to_celsius)),
        (
            "density",
            water::liquid("t", celsius(a)).map(|w| base_si(w.density)),
        ),
        (
            "vapour pressure",
            water::vapour_pressure("t", celsius(a)).map(base_si),
        ),
        (
            "saturation temperature",
            water::saturation_temperature("p", pascal(a)).map(to_celsius),
        ),
        ("heat's doubt", heat.result().map(|r| r.heat_w.standard_u())),
        ("cop's doubt", heat.result().map(|r| r.cop.standard_u())),
        ("limits", uncertainty::from_limits(a)),
        ("resolution", uncertainty::from_resolution(a)),
        (
            "molarity",
            chemistry::acid_molarity(a, kg_m3(b)).map(base_si),
        ),
        (
            "capacity",
            chemistry::acid_capacity(litre(a), b, kg_m3(c)).map(base_si),
        ),
        (
            "acid left",
            chemistry::acid_left(mole(a), gram(b)).map(base_si),
        ),
        (
            "co2",
            chemistry::co2_released(gram(a), celsius(b), pascal(c)).map(base_si),
        ),
        (
            "neutralise",
            chemistry::neutralise(mole(a), Base::Carbonate).map(base_si),
        ),
        (
            "dilute",
            chemistry::dilute(a, b, litre(c)).map(|m| base_si(m.water)),
        ),
        (
            "distance",
            place::distance(place(a, b), place(c, d)).map(base_si),
        ),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4000))]

    #[test]
    fn any_numbers_give_a_finite_answer_or_a_refusal(x in prop::array::uniform9(number())) {
        for (name, answer) in every(x) {
            match answer {
                Ok(value) => prop_assert!(value.is_finite(), "{name} gave {value} for {x:?}"),
                Err(ScienceError::OutOfRange { argument, least, most, .. }) => {
                    prop_assert!(!argument.is_empty() && !least.is_nan() && !most.is_nan());
                }
                Err(_) => {}
            }
        }
    }

    #[test]
    fn what_is_not_a_number_is_always_refused(x in prop::array::uniform9(prop_oneof![Just(f64::NAN), Just(f64::INFINITY), Just(f64::NEG_INFINITY)])) {
        for (name, answer) in every(x) {
            prop_assert!(answer.is_err(), "{name} took {x:?}");
        }
    }
}
