//! What past visits say about a unit: its readings over the years with their trend, and when to descale next. All of it
//! comes with the assignment, so that it is there without coverage.

use std::collections::BTreeMap;

use chrono::NaiveDate;

use super::assignment::{AssignedUnit, PastReading};
use super::day::day_of;
use crate::now::Now;
use crate::procedure::pack::{Pack, Quantity, Reading};
use crate::record::results::{Known, results};
use crate::science::calendar::{add_months, days_between, parse_date};
use crate::science::descaling::Advice;
use crate::science::trend::{TOLD_LEAST, theil_sen};
use crate::visit::state::{Run, Taken};

/// Days in a year of the Gregorian calendar, on average.
const YEAR_DAYS: f64 = 365.2425;

/// The values of one reading over the years.
#[derive(Clone, Debug, PartialEq)]
pub struct Series<'a> {
    /// Which.
    pub reading: &'a Reading,
    /// Day and decimal text in the log's unit, the oldest first; one a day.
    pub values: Vec<(NaiveDate, String)>,
    /// Where they go; none where two days are not there.
    pub trend: Option<Trend>,
}

/// Where readings go, in the log's unit a year.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trend {
    /// The median slope.
    pub per_year: f64,
    /// The least of its 95 % range.
    pub least: f64,
    /// The greatest.
    pub most: f64,
    /// What can be told of it.
    pub told: Direction,
}

/// What can be told of a trend.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// The whole range lies above zero.
    Rises,
    /// The whole range lies below zero.
    Falls,
    /// Zero lies in the range.
    NoTrend,
    /// Fewer than five values: the range is not one of 95 %.
    TooFew,
}

/// The measured readings of a unit over the years, in the pack's order, those of this visit among them. Only numbers that
/// an instrument read or that a computation of the core uses; a single value is no history.
#[must_use]
pub fn series<'a>(pack: &'a Pack, past: &[PastReading], run: Option<&Run>) -> Vec<Series<'a>> {
    let told = |reading: &&Reading| {
        reading.quantity != Quantity::Text && (reading.instrument.is_some() || reading.role.is_some())
    };
    pack.readings
        .iter()
        .filter(told)
        .filter_map(|reading| {
            let values = values(reading, past, run);
            let trend = trend(&values);
            (values.len() > 1).then_some(Series { reading, values, trend })
        })
        .collect()
}

fn values(reading: &Reading, past: &[PastReading], run: Option<&Run>) -> Vec<(NaiveDate, String)> {
    let of_past = past
        .iter()
        .filter(|past| past.reading == reading.id.as_str() && past.unit == reading.quantity.code())
        .filter_map(|past| Some((parse_date(&past.date).ok()?, past.value.clone())));
    let of_now =
        run.and_then(|run| run.readings.get(&reading.id)).filter(|taken| taken.measure == reading.quantity.code());
    let of_now = of_now.and_then(|taken| Some((day_of(taken.at.utc_ms, taken.at.offset_min)?, taken.value.clone())));
    let is_number = |(_, text): &(NaiveDate, String)| text.parse::<f64>().is_ok_and(f64::is_finite);
    // By day: of two on one day the later one counts.
    let by_day: BTreeMap<NaiveDate, String> = of_past.chain(of_now).filter(is_number).collect();
    by_day.into_iter().collect()
}

fn trend(values: &[(NaiveDate, String)]) -> Option<Trend> {
    let (first, _) = values.first()?;
    let points: Vec<(f64, f64)> = values
        .iter()
        .filter_map(|(day, text)| Some((days_between(*first, *day) as f64 / YEAR_DAYS, text.parse().ok()?)))
        .collect();
    let line = theil_sen(&points).ok()?;
    let told = if points.len() < TOLD_LEAST {
        Direction::TooFew
    } else if line.least > 0.0 {
        Direction::Rises
    } else if line.most < 0.0 {
        Direction::Falls
    } else {
        Direction::NoTrend
    };
    Some(Trend { per_year: line.slope, least: line.least, most: line.most, told })
}

/// When to descale next, as the readings of past visits give it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NextDescale {
    /// The advice, in months from then.
    pub advice: Advice,
    /// The day of the newest reading behind it.
    pub from: NaiveDate,
    /// That many months on: what to plan for.
    pub on: NaiveDate,
}

/// By the water and use that past visits read: the newest value of each counts.
#[must_use]
pub fn next_descale(pack: &Pack, unit: &AssignedUnit) -> Option<NextDescale> {
    let mut run = Run::default();
    let mut newest = None;
    for past in &unit.history {
        let Some(reading) = pack.reading(&past.reading).filter(|reading| reading.quantity.code() == past.unit) else {
            continue;
        };
        let Ok(day) = parse_date(&past.date) else { continue };
        newest = newest.max(Some(day));
        run.readings.insert(reading.id.clone(), taken(pack, reading, past));
    }
    let advice = results(pack, &run, &Known::default()).descaling?;
    let from = newest?;
    Some(NextDescale { advice, from, on: add_months(from, i32::try_from(advice.months).ok()?).ok()? })
}

/// A past value as if it were read now, with the limits that the pack states for its instrument.
fn taken(pack: &Pack, reading: &Reading, past: &PastReading) -> Taken {
    let instrument = reading.instrument.clone().unwrap_or_default();
    let limit = pack.instruments.iter().find(|known| known.id == instrument).map(|known| known.error_limit.clone());
    Taken {
        value: past.value.clone(),
        measure: past.unit.clone(),
        instrument,
        own: None,
        error_limit: limit.unwrap_or_default(),
        unusual: false,
        at: Now { utc_ms: 0, offset_min: 0, mono_ms: 0, mono_epoch: String::new() },
        times: 1,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::procedure::library::built_in;

    fn past(reading: &str, value: &str, unit: &str, date: &str) -> PastReading {
        PastReading { reading: reading.into(), value: value.into(), unit: unit.into(), date: date.into() }
    }

    /// scipy 1.17.1: theilslopes of these flows over days / 365.2425, 0.95.
    #[test]
    fn a_flow_that_falls_year_by_year_is_told_with_its_range() {
        let pack = &built_in().unwrap()[0].pack;
        let years = [("2022-05-02", "10.4"), ("2023-05-08", "10.1"), ("2024-05-06", "9.9"), ("2025-05-05", "9.6")];
        let mut history: Vec<PastReading> =
            years.iter().map(|(date, value)| past("flow-found", value, "L/min", date)).collect();
        let few = series(pack, &history, None);
        assert_eq!(few[0].trend.unwrap().told, Direction::TooFew);
        history.push(past("flow-found", "9.0", "L/min", "2026-05-04"));
        let told = series(pack, &history, None);
        assert_eq!(told.len(), 1, "one reading alone has a history");
        let trend = told[0].trend.unwrap();
        assert_eq!(trend.told, Direction::Falls);
        for (ours, scipy) in [(trend.per_year, SLOPE), (trend.least, LEAST), (trend.most, MOST)] {
            assert!((ours - scipy).abs() < 1e-9, "{ours} {scipy}");
        }
    }
    const SLOPE: f64 = -0.29818418904209065;
    const LEAST: f64 = -0.6020480769230764;
    const MOST: f64 = -0.20068269230769162;

    #[test]
    fn values_of_another_unit_or_day_that_is_none_are_left_out() {
        let pack = &built_in().unwrap()[0].pack;
        let history = [
            past("flow-found", "10", "gal/min", "2024-05-06"),
            past("flow-found", "9.6", "L/min", "some day"),
            past("flow-found", "9.5", "L/min", "2025-05-05"),
            past("serial", "1", "", "2024-05-05"),
        ];
        assert!(series(pack, &history, None).is_empty());
    }

    #[test]
    fn the_next_descaling_is_counted_from_the_day_of_the_readings() {
        let pack = &built_in().unwrap()[0].pack;
        let read = [
            ("supply-ph", "7.4", "[pH]"),
            ("supply-conductivity", "480", "uS/cm"),
            ("supply-hardness", "210", "mg/L"),
            ("supply-alkalinity", "185", "mg/L"),
            ("water-use", "160", "L"),
            ("water-out-left", "45.0", "Cel"),
        ];
        let history = read.iter().map(|(id, value, unit)| past(id, value, unit, "2025-05-05")).collect();
        let unit = AssignedUnit { history, ..AssignedUnit::default() };
        let next = next_descale(pack, &unit).unwrap();
        assert_eq!(next.from, parse_date("2025-05-05").unwrap());
        assert_eq!(next.on, add_months(next.from, next.advice.months as i32).unwrap());
        assert_eq!(next_descale(pack, &AssignedUnit::default()), None);
    }
}
