//! Results that are measured as found and again as left.

use std::cell::RefCell;

use super::read::Readings;
use super::{COVERAGE, Change, Changed, Conditions, Kind, Last, Measured, Outcome, Stage};
use crate::round::PastReading;
use crate::science::heat::heat_w;
use crate::science::uncertainty::Doubted;

/// Readings by role.
type ByRole<'a> = &'a dyn Fn(&str) -> Option<Doubted>;
/// How a result comes out of them.
type WorkOut = fn(ByRole<'_>) -> Option<Doubted>;

/// Below this no flow meter of the trade reads: a result would be a guess.
const FLOW_LEAST_L_MIN: f64 = 0.1;
const POWER_LEAST_W: f64 = 10.0;

const KINDS: [(Kind, WorkOut); 4] =
    [(Kind::Heat, heat), (Kind::Cop, cop), (Kind::WaterRise, water_rise), (Kind::AirDrop, air_drop)];

fn heat(read: ByRole<'_>) -> Option<Doubted> {
    let flow = read("flow").filter(|flow| flow.value() >= FLOW_LEAST_L_MIN)?;
    heat_w(&flow, &read("water-in")?, &read("water-out")?).ok()
}

fn cop(read: ByRole<'_>) -> Option<Doubted> {
    let power = read("power").filter(|power| power.value() >= POWER_LEAST_W)?;
    Some(heat(read)?.over(&power))
}

fn water_rise(read: ByRole<'_>) -> Option<Doubted> {
    Some(read("water-out")?.less(&read("water-in")?))
}

fn air_drop(read: ByRole<'_>) -> Option<Doubted> {
    Some(read("air-on")?.less(&read("air-off")?))
}

pub(super) fn outcomes(readings: &Readings<'_>, history: &[PastReading]) -> Vec<Outcome> {
    KINDS
        .iter()
        .filter_map(|(kind, work_out)| {
            let at = |stage| work_out(&|role| readings.of(role, stage));
            let (found, left) = (at(Stage::Found), at(Stage::Left));
            let measured: Vec<Measured> = [(Stage::Found, &found), (Stage::Left, &left)]
                .into_iter()
                .filter_map(|(stage, value)| Some(Measured::of(stage, value.as_ref()?)))
                .collect();
            let change = found.as_ref().zip(left.as_ref()).map(|(found, left)| changed(found, left));
            let last =
                || [Stage::Left, Stage::Found].iter().find_map(|stage| last(readings, history, *stage, *work_out));
            (!measured.is_empty()).then(|| Outcome {
                kind: *kind,
                measured,
                change,
                verdict: None,
                beside: None,
                last: last(),
            })
        })
        .collect()
}

fn changed(found: &Doubted, left: &Doubted) -> Changed {
    let difference = left.less(found);
    let (value, expanded_u) = (difference.value(), COVERAGE * difference.standard_u());
    Changed { value, expanded_u, change: Change::of(value, expanded_u) }
}

/// The value of the last visit, if all of its readings are of one day.
fn last(readings: &Readings<'_>, history: &[PastReading], stage: Stage, work_out: WorkOut) -> Option<Last> {
    let days = RefCell::new(Vec::new());
    let value = work_out(&|role| {
        let (value, day) = readings.past(history, role, stage)?;
        days.borrow_mut().push(day);
        Some(value)
    })?;
    let days = days.into_inner();
    let day = days.first()?;
    days.iter().all(|other| other == day).then(|| Last { stage, value: value.value(), date: (*day).to_owned() })
}

/// Warmer air and cooler water make it easier, cooler air and warmer water harder. Water is judged by its outlet, for which
/// the compressor works.
pub(super) fn conditions(readings: &Readings<'_>) -> Conditions {
    let change = |role| {
        let (found, left) = (readings.of(role, Stage::Found)?, readings.of(role, Stage::Left)?);
        Some(changed(&found, &left).change)
    };
    match (change("air-on"), change("water-out")) {
        (Some(Change::None), Some(Change::None)) => Conditions::Alike,
        (Some(Change::More | Change::None), Some(Change::Less | Change::None)) => Conditions::Easier,
        (Some(Change::Less | Change::None), Some(Change::More | Change::None)) => Conditions::Harder,
        _ => Conditions::Unclear,
    }
}
