//! One day of the round: which visits, in which order, when one is there, and what is told of each before it begins.

use chrono::{DateTime, FixedOffset, NaiveDate, Timelike as _};

use super::assignment::{Assignment, Spot};
use super::forecast::{Basis, Forecast, forecast, together};
use super::route::{Leg, Stop, order};
use crate::procedure::pack::Pack;
use crate::science::calendar::parse_date;
use crate::science::place::Place;
use crate::words::{Words, number};

/// The day begins at eight where nothing else is known, minutes since midnight: common practice, no source.
pub const BEGINS_MIN: u32 = 8 * 60;
/// Whatever ends after midnight is not of this day any more.
const DAY_MIN: f64 = 24.0 * 60.0;

/// The day that a clock shows.
#[must_use]
pub fn day_of(utc_ms: i64, offset_min: i32) -> Option<NaiveDate> {
    Some(there(utc_ms, offset_min)?.date_naive())
}

/// Minutes since midnight that a clock shows.
#[must_use]
pub fn minute_of(utc_ms: i64, offset_min: i32) -> u32 {
    there(utc_ms, offset_min).map_or(0, |at| at.hour() * 60 + at.minute())
}

/// The time by the clock there; none where no calendar or zone has it.
#[must_use]
pub fn there(utc_ms: i64, offset_min: i32) -> Option<DateTime<FixedOffset>> {
    let zone = FixedOffset::east_opt(offset_min.checked_mul(60)?)?;
    Some(DateTime::from_timestamp_millis(utc_ms)?.with_timezone(&zone))
}

/// Minutes since midnight as people read them: '09:05'. Past midnight they are written on: '25:10'.
#[must_use]
pub fn clock(minutes: f64) -> String {
    // Minutes of a day are small and above zero: only the part of one is cut.
    let whole = libm::round(minutes.max(0.0)) as u32;
    format!("{:02}:{:02}", whole / 60, whole % 60)
}

/// The visits of a day and those of later ones.
#[derive(Clone, Debug, PartialEq)]
pub struct DayPlan<'a> {
    /// Today's, in the order of the day.
    pub today: Vec<Planned<'a>>,
    /// The others, as they were given.
    pub later: Vec<&'a Assignment>,
}

/// A visit in the order of the day.
#[derive(Clone, Debug, PartialEq)]
pub struct Planned<'a> {
    /// What was assigned.
    pub assignment: &'a Assignment,
    /// When one is there.
    pub leg: Leg,
    /// How long it takes; none where the procedure of no unit is known here.
    pub forecast: Option<Forecast>,
}

/// Puts a day together. `now_min` are minutes since midnight: what is past cannot be planned any more.
#[must_use]
pub fn plan<'a>(
    assignments: &'a [Assignment],
    pack_of: &dyn Fn(&str) -> Option<&'a Pack>,
    today: NaiveDate,
    now_min: u32,
) -> DayPlan<'a> {
    let (due, later): (Vec<&Assignment>, Vec<&Assignment>) =
        assignments.iter().partition(|assignment| is_of(assignment, today));
    let start = due.iter().find_map(|assignment| assignment.start).map(place);
    let forecasts: Vec<Option<Forecast>> = due.iter().map(|assignment| of(assignment, pack_of)).collect();
    let stops: Vec<Stop> = due
        .iter()
        .zip(&forecasts)
        .map(|(assignment, forecast)| Stop {
            id: assignment.id.clone(),
            place: Place { latitude: assignment.site.latitude_deg, longitude: assignment.site.longitude_deg },
            minutes: forecast.map_or(0, |forecast| forecast.minutes),
            window_min: window(assignment, today),
        })
        .collect();
    let planned = order(start, now_min.max(BEGINS_MIN), &stops).into_iter().filter_map(|leg| {
        let at = due.iter().position(|assignment| assignment.id == leg.id)?;
        Some(Planned { assignment: due.get(at)?, forecast: forecasts.get(at).copied().flatten(), leg })
    });
    DayPlan { today: planned.collect(), later }
}

fn place(spot: Spot) -> Place {
    Place { latitude: spot.latitude_deg, longitude: spot.longitude_deg }
}

/// Is it to be done on this day, or was it before? The planned day tells, else the agreed one, else the due one.
fn is_of(assignment: &Assignment, today: NaiveDate) -> bool {
    let agreed = assignment.appointment.as_ref().map(|appointment| &appointment.day);
    let day = assignment.planned.as_ref().or(agreed).unwrap_or(&assignment.due);
    // What is no day of the calendar is not put off for good.
    parse_date(day).map_or(true, |day| day <= today)
}

/// The agreed time, where it is of this day.
fn window(assignment: &Assignment, today: NaiveDate) -> Option<(u32, u32)> {
    let appointment = assignment.appointment.as_ref()?;
    if parse_date(&appointment.day).ok()? == today { appointment.window_min() } else { None }
}

fn of<'a>(assignment: &Assignment, pack_of: &dyn Fn(&str) -> Option<&'a Pack>) -> Option<Forecast> {
    let units = assignment.units.iter();
    together(units.filter_map(|unit| Some(forecast(pack_of(&unit.pack)?, &unit.answers(), &unit.past_minutes))))
}

/// A line about a visit of the day.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Its words.
    pub text: String,
    /// It wants a look.
    pub attention: bool,
}

/// When one is there, how long it takes, what was agreed, and that it cannot be kept.
#[must_use]
pub fn told(planned: &Planned<'_>, today: NaiveDate, words: &Words) -> Vec<Line> {
    let leg = &planned.leg;
    let plain = |text: String| Line { text, attention: false };
    if leg.leave_min > DAY_MIN {
        return vec![
            Line { text: words.text("round-not-today"), attention: true },
            plain(takes(planned.forecast, words)),
        ];
    }
    let (arrive, leave) = (clock(leg.arrive_min), clock(leg.leave_min));
    let mut lines = vec![plain(match leg.km {
        Some(km) => {
            let km = number::write(km, 1, words.language());
            words.fill("round-there-way", &[("arrive", &arrive), ("km", &km), ("leave", &leave)])
        }
        None => words.fill("round-there", &[("arrive", &arrive), ("leave", &leave)]),
    })];
    if let Some(appointment) = &planned.assignment.appointment {
        let parts = [("day", appointment.day.as_str()), ("from", &appointment.from), ("until", &appointment.until)];
        let is_today = window(planned.assignment, today).is_some();
        if !is_today {
            lines.push(Line { text: words.fill("round-agreed-past", &parts), attention: true });
        } else if leg.late_min > 0.0 {
            let parts = [("until", appointment.until.as_str()), ("arrive", &arrive)];
            lines.push(Line { text: words.fill("round-late", &parts), attention: true });
        } else {
            lines.push(plain(words.fill("round-agreed", &parts)));
            if leg.begin_min > leg.arrive_min {
                lines.push(plain(words.fill("round-wait", &[("begin", &clock(leg.begin_min))])));
            }
        }
    }
    lines.push(plain(takes(planned.forecast, words)));
    lines
}

fn takes(forecast: Option<Forecast>, words: &Words) -> String {
    let Some(forecast) = forecast else { return words.text("round-forecast-none") };
    let [minutes, least, most] = [forecast.minutes, forecast.least, forecast.most].map(|minutes| minutes.to_string());
    let parts = [("minutes", minutes.as_str()), ("least", &least), ("most", &most)];
    match forecast.basis {
        Basis::Past(visits) => {
            let visits = visits.to_string();
            words.fill("round-forecast-past", &[&parts[..], &[("visits", visits.as_str())]].concat())
        }
        Basis::Steps => words.fill("round-forecast-steps", &parts),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_clock_east_of_greenwich_shows_the_next_day_earlier() {
        // 2026-03-02T23:30Z.
        let late = 1_772_494_200_000;
        assert_eq!(day_of(late, 0), parse_date("2026-03-02").ok());
        assert_eq!(day_of(late, 120), parse_date("2026-03-03").ok());
        assert_eq!(minute_of(late, 120), 90);
        assert_eq!(day_of(i64::MAX, i32::MAX), None);
        assert_eq!((clock(545.4), clock(1510.0)), ("09:05".to_owned(), "25:10".to_owned()));
    }
}
