//! What holds for every calculation: any bits at all give a finite number or a refusal, never a panic.

use super::air::{self, Air};
use super::chemistry::{self, Base};
use super::coil;
use super::exchanger::{self, Ends};
use super::heat::{HeatTest, Reading};
use super::place::{self, Place};
use super::quantity::{celsius, to_celsius};
use super::refrigerant::Refrigerant;
use super::scaling::TapWater;
use super::verdict::Limits;
use super::{ScienceError, atmosphere, calendar, electrical, uncertainty, water};
use proptest::prelude::*;
use uom::si::area::square_meter;
use uom::si::electric_current::ampere;
use uom::si::electric_potential::volt;
use uom::si::electrical_resistance::megaohm;
use uom::si::f64::{
    AmountOfSubstance, Area, ElectricCurrent, ElectricPotential, ElectricalResistance, Frequency, Length, Mass,
    MassDensity, Power, Pressure, ThermalConductance, Volume, VolumeRate,
};
use uom::si::frequency::hertz;
use uom::si::power::watt;
use uom::si::thermal_conductance::watt_per_kelvin;
use uom::si::volume_rate::cubic_meter_per_second;

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

fn base_si<D, U>(quantity: uom::si::Quantity<D, U, f64>) -> f64
where
    D: uom::si::Dimension + ?Sized,
    U: uom::si::Units<f64> + ?Sized,
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
    let place = |latitude, longitude| Place { latitude, longitude };
    let heat = HeatTest {
        flow_l_min: reading(a, b),
        inlet_c: reading(c, d),
        outlet_c: reading(e, f),
        shared_thermometer_u: g,
        power_w: reading(h, i),
    };
    let volts = ElectricPotential::new::<volt>;
    let amperes = ElectricCurrent::new::<ampere>;
    let ends = Ends { hot_in: celsius(a), hot_out: celsius(b), cold_in: celsius(c), cold_out: celsius(d) };
    let tap = TapWater { ph: a, temperature: celsius(b), calcium_mg_l_caco3: c, alkalinity_mg_l_caco3: d, tds_mg_l: e };
    let ua = ThermalConductance::new::<watt_per_kelvin>;
    let worst = |air: Air| base_si(air.volume) + to_celsius(air.dew_point) + to_celsius(air.wet_bulb);
    let humid = air::from_humidity(celsius(a), b, pascal(c));
    let coil = humid.and_then(|on| {
        let off = air::from_humidity(celsius(d), e, pascal(c))?;
        coil::heat(&on, &off, VolumeRate::new::<cubic_meter_per_second>(f))
    });
    vec![
        ("air by humidity", air::from_humidity(celsius(a), b, pascal(c)).map(worst)),
        ("air by wet bulb", air::from_wet_bulb(celsius(a), celsius(b), pascal(c)).map(worst)),
        ("coil", coil.map(|h| base_si(h.latent) + base_si(h.condensate))),
        ("probability", Limits::new(Some(a), Some(b)).and_then(|l| l.probability(c, d))),
        ("verdict", Limits::new(Some(a), None).and_then(|l| l.judge(b, c, d)).map(|_| 0.0)),
        ("lmtd", ends.lmtd().map(base_si)),
        ("ua", ends.ua(Power::new::<watt>(e)).map(base_si)),
        ("effectiveness", exchanger::effectiveness(a, b)),
        ("fouling", exchanger::fouling_resistance(Area::new::<square_meter>(a), ua(b), ua(c))),
        ("langelier", tap.langelier()),
        ("ryznar", tap.ryznar()),
        ("unbalance", electrical::voltage_unbalance(volts(a), volts(b), volts(c)).map(base_si)),
        ("power factor", electrical::power_factor(Power::new::<watt>(a), volts(b), amperes(c)).map(base_si)),
        ("three-phase", electrical::three_phase_power(volts(a), amperes(b), c).map(base_si)),
        ("capacitance", electrical::capacitance(amperes(a), volts(b), Frequency::new::<hertz>(c)).map(base_si)),
        ("insulation", electrical::insulation_at_40c(ElectricalResistance::new::<megaohm>(a), celsius(b)).map(base_si)),
        ("co2 equivalent", Refrigerant::named("R410A").and_then(|r| r.co2_equivalent(gram(a))).map(base_si)),
        ("atmosphere", atmosphere::pressure(metre(a)).map(base_si)),
        ("boiling", water::boiling(metre(a)).map(to_celsius)),
        ("density", water::liquid("t", celsius(a)).map(|w| base_si(w.density))),
        ("vapour pressure", water::vapour_pressure("t", celsius(a)).map(base_si)),
        ("saturation temperature", water::saturation_temperature("p", pascal(a)).map(to_celsius)),
        ("heat's doubt", heat.result().map(|r| r.heat_w.standard_u())),
        ("cop's doubt", heat.result().map(|r| r.cop.standard_u())),
        ("limits", uncertainty::from_limits(a)),
        ("resolution", uncertainty::from_resolution(a)),
        ("molarity", chemistry::acid_molarity(a, kg_m3(b)).map(base_si)),
        ("capacity", chemistry::acid_capacity(litre(a), b, kg_m3(c)).map(base_si)),
        ("acid left", chemistry::acid_left(mole(a), gram(b)).map(base_si)),
        ("co2", chemistry::co2_released(gram(a), celsius(b), pascal(c)).map(base_si)),
        ("neutralise", chemistry::neutralise(mole(a), Base::Carbonate).map(base_si)),
        ("dilute", chemistry::dilute(a, b, litre(c)).map(|m| base_si(m.water))),
        ("distance", place::distance(place(a, b), place(c, d)).map(base_si)),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

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
    fn any_date_and_any_months_give_a_date_or_a_refusal(text in "\\PC{0,12}", days in 1..4_000_000i32, months in any::<i32>()) {
        let date = chrono::NaiveDate::from_num_days_from_ce_opt(days);
        let read = calendar::parse_date(&text).ok();
        for date in [date, read].into_iter().flatten() {
            if let Ok(moved) = calendar::add_months(date, months) {
                prop_assert!((1900..=2200).contains(&chrono::Datelike::year(&moved)));
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
