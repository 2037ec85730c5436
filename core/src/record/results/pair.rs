//! Results that are measured as found and again as left.
//!
//! Heat and COP follow the air and the water, so they are compared at like conditions: the result as found is brought to the
//! conditions as left by `science::performance`, with that model's own doubt, as for a compressor at one speed. The humidity
//! of the air is not read: it is taken as 0.6 ± 0.3 and the same before and after (common practice, no source), at the
//! standard atmosphere's pressure at sea level.

use std::cell::RefCell;

use uom::si::f64::Pressure;
use uom::si::pressure::pascal;

use super::read::Readings;
use super::{COVERAGE, Change, Changed, Kind, Known, Last, Measured, Outcome, Stage, circuit};
use crate::round::PastReading;
use crate::science::change::{Better, Change as Compared, Difference};
use crate::science::conditions::Conditions;
use crate::science::flow::LoopFlow;
use crate::science::heat::heat_w;
use crate::science::performance::{self, Ratios, ratios};
use crate::science::uncertainty::{Cause, Doubted, from_limits};

/// Readings by role.
pub(super) type ByRole<'a> = &'a dyn Fn(&str) -> Option<Doubted>;
/// How a result comes out of them.
type WorkOut = fn(ByRole<'_>) -> Option<Doubted>;

const POWER_LEAST_W: f64 = 10.0;
const HUMIDITY: (f64, f64) = (0.6, 0.3);
const PRESSURE_PA: f64 = 101_325.0;

const KINDS: [(Kind, WorkOut); 4] =
    [(Kind::Heat, heat), (Kind::Cop, cop), (Kind::WaterRise, water_rise), (Kind::AirDrop, air_drop)];

fn heat(read: ByRole<'_>) -> Option<Doubted> {
    heat_w(&LoopFlow::metered(read("flow")?).ok()?, &read("water-in")?, &read("water-out")?).ok()
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

pub(super) fn outcomes(readings: &Readings<'_>, known: &Known<'_>) -> Vec<Outcome> {
    let ratios = to_like_conditions(readings);
    let of = |kind, work_out: &dyn Fn(ByRole<'_>) -> Option<Doubted>| {
        outcome(readings, known.history, ratios.as_ref(), kind, work_out)
    };
    let mut outcomes: Vec<Outcome> = KINDS.iter().filter_map(|(kind, work_out)| of(*kind, work_out)).collect();
    if let Some(refrigerant) = known.refrigerant {
        let of_circuit = circuit::KINDS.iter();
        outcomes.extend(of_circuit.filter_map(|(kind, work_out)| of(*kind, &|read| work_out(refrigerant, read))));
    }
    outcomes
}

fn outcome(
    readings: &Readings<'_>,
    history: &[PastReading],
    ratios: Option<&Ratios>,
    kind: Kind,
    work_out: &dyn Fn(ByRole<'_>) -> Option<Doubted>,
) -> Option<Outcome> {
    let at = |stage| work_out(&|role| readings.of(role, stage));
    let (found, left) = (at(Stage::Found), at(Stage::Left));
    let measured: Vec<Measured> = [(Stage::Found, &found), (Stage::Left, &left)]
        .into_iter()
        .filter_map(|(stage, value)| Some(Measured::of(stage, value.as_ref()?)))
        .collect();
    let change = found.as_ref().zip(left.as_ref()).and_then(|(found, left)| changed(kind, found, left, ratios));
    let last = || [Stage::Left, Stage::Found].iter().find_map(|stage| last(readings, history, *stage, work_out));
    (!measured.is_empty()).then(|| Outcome { kind, measured, change, verdict: None, beside: None, last: last() })
}

/// The factors that bring heat and COP from the conditions as found to those as left. None where a reading is missing or they
/// lie too far apart.
fn to_like_conditions(readings: &Readings<'_>) -> Option<Ratios> {
    let (humidity, limit) = HUMIDITY;
    let humidity = Doubted::new("humidity", humidity).ok()?;
    let humidity = humidity.because("humidity", Cause::new("humidity, not read"), from_limits(limit).ok()?).ok()?;
    let at = |stage| {
        let read = |role| readings.of(role, stage);
        let pressure = Pressure::new::<pascal>(PRESSURE_PA);
        Conditions::air(&read("air-on")?, &humidity, pressure, &read("water-in")?, &read("water-out")?).ok()
    };
    ratios(performance::Kind::AirFixed, &at(Stage::Found)?, &at(Stage::Left)?).ok()
}

/// The coefficient of performance as found, brought to the conditions as left, beside that as left.
pub(super) fn cop_compared(readings: &Readings<'_>) -> Option<Compared> {
    let at = |stage| cop(&|role| readings.of(role, stage));
    compared(Kind::Cop, &at(Stage::Found)?, &at(Stage::Left)?, to_like_conditions(readings).as_ref())
}

/// Heat and COP at like conditions, or not at all; a rise or a drop as it is.
fn compared(kind: Kind, found: &Doubted, left: &Doubted, ratios: Option<&Ratios>) -> Option<Compared> {
    let compared = match kind {
        Kind::Heat => Compared::corrected(found, ratios?.capacity.as_ref()?, left, Better::Higher),
        Kind::Cop => Compared::corrected(found, &ratios?.cop, left, Better::Higher),
        _ => Compared::between(found, left, Better::Higher),
    };
    compared.ok()
}

/// What the work changed.
fn changed(kind: Kind, found: &Doubted, left: &Doubted, ratios: Option<&Ratios>) -> Option<Changed> {
    let compared = compared(kind, found, left, ratios)?;
    Some(Changed {
        value: compared.difference.value(),
        expanded_u: COVERAGE * compared.difference.standard_u(),
        change: match compared.verdict {
            Difference::Better => Change::More,
            Difference::Worse => Change::Less,
            Difference::NoDifference => Change::None,
        },
    })
}

/// The value of the last visit, if all of its readings are of one day.
fn last(
    readings: &Readings<'_>,
    history: &[PastReading],
    stage: Stage,
    work_out: &dyn Fn(ByRole<'_>) -> Option<Doubted>,
) -> Option<Last> {
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
