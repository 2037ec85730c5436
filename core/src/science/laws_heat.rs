//! What holds across the files about heat: any numbers give a finite answer or a refusal, energy balances close, units lead back.

use super::ScienceError;
use super::airflow::CoilBalance;
use super::change::{Better, Change};
use super::conditions::Conditions;
use super::exchanger::{EndsRead, fouling_resistance_read};
use super::flow::{Bucket, Counted, LoopFlow, MeterError};
use super::frost::{Coldest, frost};
use super::heat::{cop, heat_w, once_through_w};
use super::heating_curve::{HeatingCurve, heating_time_min};
use super::instrument::{Instrument, Stated};
use super::performance::{Kind, Rated, expected, ratios};
use super::quantity::{celsius, to_celsius};
use super::uncertainty::{Cause, Doubted};
use super::year::{hot_water_kwh, year};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use std::collections::BTreeSet;
use uom::si::f64::Pressure;
use uom::si::pressure::pascal;

/// Mostly something that lies in a range, so that eight of them often all do; and any bits.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        10 => 0.0..60.0f64,
        4 => -30.0..100.0f64,
        8 => 0.0..1.0f64,
        4 => 0.0..5000.0f64,
        1 => any::<f64>(),
        1 => prop::sample::select(vec![f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -0.0, 1e12, 5e-324]),
    ]
}

fn exactly(value: f64) -> Doubted {
    Doubted::new("value", value).unwrap()
}

/// Every calculation on the same eight numbers, by name.
fn every(x: [f64; 8]) -> Vec<(&'static str, Result<Doubted, ScienceError>)> {
    let [a, b, c, d, e, f, g, h] = x;
    let causes = ["a", "b", "c", "d", "e", "f", "g"].map(Cause::new);
    // The last number is everybody's doubt.
    let of = |value: f64, cause: &Cause| Doubted::new("value", value)?.because("u", cause.clone(), h);
    let [Ok(qa), Ok(qb), Ok(qc), Ok(qd), Ok(qe), Ok(qf), Ok(qg)] = [
        of(a, &causes[0]),
        of(b, &causes[1]),
        of(c, &causes[2]),
        of(d, &causes[3]),
        of(e, &causes[4]),
        of(f, &causes[5]),
        of(g, &causes[6]),
    ] else {
        return vec![("the readings", of(h, &causes[0]).and(of(a, &causes[0])))];
    };
    let stated = Stated { value: a, error_limit: b, step: c, scatter_u: d };
    let instrument = Instrument::named("one").with_common(e);
    let bucket = Bucket { volume_l: a, volume_limit_l: b, time_s: c, reaction_limit_s: d }.flow("bucket", "filling");
    let counted = Counted { start: a, end: b, time_s: c, time_limit_s: d, percent_of_count: e, step: f };
    let curve = HeatingCurve {
        volume_l: qa.clone(),
        start_c: qb.clone(),
        end_c: qc.clone(),
        stratification_limit_k: d,
        time_s: qe.clone(),
        standing_loss_w: qf.clone(),
    };
    let balance = CoilBalance {
        heat_w: qa.clone(),
        power_w: qb.clone(),
        share_to_refrigerant: qc.clone(),
        air_on_c: qd.clone(),
        air_on_rh: qe.clone(),
        air_off_c: qf.clone(),
        air_off_rh: qg.clone(),
        pressure: Pressure::new::<pascal>(101_325.0),
    };
    let ends = EndsRead { hot_in_c: qa.clone(), hot_out_c: qb.clone(), cold_in_c: qc.clone(), cold_out_c: qd.clone() };
    let from = Conditions::air(&qa, &qb, Pressure::new::<pascal>(101_325.0), &qc, &qd);
    let to = Conditions::liquid(&qe, &qf, &qg);
    let both = from.and_then(|from| Ok((from, to?)));
    let points = both
        .clone()
        .map(|(conditions, site)| (vec![Rated { conditions, capacity_w: qg.clone(), cop: qf.clone() }], site));
    let change = Change::between(&qa, &qb, Better::Higher);
    vec![
        ("instrument", instrument.and_then(|one| one.reads("reading", stated))),
        ("bucket", bucket.clone().map(|flow| flow.l_min().clone())),
        ("into a bucket", bucket.and_then(|flow| once_through_w(&flow, &qe, &qf))),
        (
            "meter",
            MeterError { percent_of_reading: a, digits: b, step: c }
                .stated(d)
                .and_then(|stated| Instrument::named("one").reads("reading", stated)),
        ),
        ("litres", counted.litres(&Instrument::named("one"), "period").map(|flow| flow.l_min().clone())),
        ("kilowatt-hours", counted.kilowatt_hours(&Instrument::named("one"), "period")),
        ("heat", LoopFlow::metered(qa.clone()).and_then(|flow| heat_w(&flow, &qb, &qc))),
        ("cop", cop(&qa, &qb)),
        ("curve", curve.heat_w("run")),
        ("heating time", heating_time_min(&qa, &qb, &qc, &qd, &qe)),
        ("airflow", balance.airflow_m3_s()),
        ("frost by surface", frost(&Coldest::Surface(qa.clone()), &qb).map(|frost| frost.margin_k)),
        ("frost by refrigerant", frost(&Coldest::Evaporating(qa.clone()), &qb).map(|frost| frost.margin_k)),
        ("mean difference", ends.lmtd_k()),
        ("conductance", ends.ua_w_k(&qe)),
        ("fouling", fouling_resistance_read(&qa, &qb, &qc)),
        ("ratio", both.and_then(|(from, to)| Ok(ratios(Kind::AirFixed, &from, &to)?.cop))),
        ("expected", points.and_then(|(points, site)| Ok(expected(Kind::AirFixed, &points, &site)?.cop))),
        ("change", change.clone().map(|change| change.difference)),
        ("hot water", hot_water_kwh(&qa, &qb, &qc)),
        ("year", change.and_then(|change| Ok(year(&qc, &change, &qd)?.saved_kwh))),
    ]
}

#[test]
fn the_numbers_drawn_reach_an_answer_of_every_calculation() {
    let mut runner = TestRunner::deterministic();
    let mut unanswered: BTreeSet<_> = every([1.0; 8]).into_iter().map(|(name, _)| name).collect();
    for _ in 0..100_000 {
        if unanswered.is_empty() {
            return;
        }
        let drawn = prop::array::uniform8(number()).new_tree(&mut runner).unwrap().current();
        for (name, answer) in every(drawn) {
            if answer.is_ok() {
                unanswered.remove(name);
            }
        }
    }
    panic!("never answered: {unanswered:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    #[test]
    fn any_numbers_give_a_finite_answer_or_a_refusal(x in prop::array::uniform8(number())) {
        for (name, answer) in every(x) {
            match answer {
                Ok(doubted) => {
                    let (value, u) = (doubted.value(), doubted.standard_u());
                    prop_assert!(value.is_finite() && u.is_finite(), "{name} gave {value} ± {u} for {x:?}");
                }
                Err(ScienceError::OutOfRange { argument, least, most, .. }) => {
                    prop_assert!(!argument.is_empty() && !least.is_nan() && !most.is_nan(), "{name} for {x:?}");
                }
                Err(_) => {}
            }
        }
    }

    #[test]
    fn a_flow_that_fills_a_tank_brings_it_the_same_heat(flow in 1.0..50.0f64, cold in 5.0..60.0f64, rise in 1.0..35.0f64, minutes in 2.0..600.0f64) {
        let through = heat_w(&LoopFlow::metered(exactly(flow)).unwrap(), &exactly(cold), &exactly(cold + rise)).unwrap();
        let curve = HeatingCurve {
            volume_l: exactly(flow * minutes),
            start_c: exactly(cold),
            end_c: exactly(cold + rise),
            stratification_limit_k: 0.0,
            time_s: exactly(minutes * 60.0),
            standing_loss_w: exactly(0.0),
        };
        prop_assert!((curve.heat_w("run").unwrap().value() / through.value() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn counted_litres_and_a_bucket_tell_the_same_flow(litres in 5.0..500.0f64, seconds in 30.0..3000.0f64) {
        let bucket = Bucket { volume_l: litres, volume_limit_l: 0.0, time_s: seconds, reaction_limit_s: 0.0 };
        let counted = Counted { start: 0.0, end: litres, time_s: seconds, time_limit_s: 0.0, percent_of_count: 0.0, step: 0.0 };
        let (Ok(by_bucket), Ok(by_count)) = (bucket.flow("bucket", "once"), counted.litres(&Instrument::named("one"), "once")) else {
            return Err(TestCaseError::reject("a flow outside its range"));
        };
        prop_assert!((by_bucket.l_min().value() / by_count.l_min().value() - 1.0).abs() < 1e-12);
    }

    #[test]
    fn power_over_a_period_is_the_kilowatt_hours_again(kwh in 0.1..100.0f64, seconds in 3600.0..1e6f64) {
        let counted = Counted { start: 0.0, end: kwh, time_s: seconds, time_limit_s: 0.0, percent_of_count: 0.0, step: 0.0 };
        let watts = counted.kilowatt_hours(&Instrument::named("one"), "once").unwrap().value();
        prop_assert!((watts * seconds / 3.6e6 / kwh - 1.0).abs() < 1e-12);
    }

    #[test]
    fn degrees_celsius_lead_back(c in -100.0..200.0f64) {
        prop_assert!((to_celsius(celsius(c)) - c).abs() < 1e-12 * 373.15);
    }

    #[test]
    fn conditions_that_did_not_change_leave_a_result_as_it_was(air in -5.0..35.0f64, humidity in 0.3..1.0f64, water in 20.0..55.0f64, u in 0.0..0.5f64) {
        // The very same readings: whatever is wrong with them is wrong both times.
        let read = |name: &'static str, value| exactly(value).because("u", Cause::new(name), u).unwrap();
        let pressure = Pressure::new::<pascal>(101_325.0);
        let at = Conditions::air(&read("air", air), &read("humidity", humidity.min(0.99)), pressure, &read("in", water.max(air)), &read("out", water.max(air) + 5.0)).unwrap();
        let one = ratios(Kind::AirFixed, &at, &at).unwrap();
        prop_assert!(one.cop.value() == 1.0 && one.cop.standard_u() < 1e-12);
        let capacity = one.capacity.unwrap();
        prop_assert!(capacity.value() == 1.0 && capacity.standard_u() < 1e-12);
        let cop = read("cop", 3.0);
        let change = Change::corrected(&cop, &one.cop, &cop, Better::Higher).unwrap();
        prop_assert_eq!(change.verdict, super::change::Difference::NoDifference);
    }
}
