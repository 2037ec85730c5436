//! When a service is due and until when cover stands, from interval, grace and first service; and how far off both are.

use chrono::NaiveDate;

use super::assignment::AssignedUnit;
use super::terms::Terms;
use crate::science::calendar::{add_days, add_months, days_between, parse_date};
use crate::words::Words;

/// What a due day was counted from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// The last service.
    LastService(NaiveDate),
    /// The day since which the unit is in service: it never had one.
    InService(NaiveDate),
    /// Nothing of the unit is known: the office's own day.
    Assigned,
}

/// A due day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Due {
    /// The day.
    pub on: NaiveDate,
    /// The last day on which a service still counts; none without terms or without a day to count from.
    pub cover_ends: Option<NaiveDate>,
    /// What it was counted from.
    pub basis: Basis,
}

/// How far off a due day is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// Days until it is due; below zero it was.
    pub to_due: i64,
    /// Days until the last one on which a service still counts; below zero it is over.
    pub to_end: Option<i64>,
}

/// When a unit's service is due: by its terms where there is a day to count from, else by the assignment's own day.
/// None where that is no day of the calendar.
#[must_use]
pub fn due(unit: &AssignedUnit, assigned: &str) -> Option<Due> {
    by_terms(unit).or_else(|| Some(Due { on: parse_date(assigned).ok()?, cover_ends: None, basis: Basis::Assigned }))
}

fn by_terms(unit: &AssignedUnit) -> Option<Due> {
    let terms = unit.terms.as_ref()?;
    let day = |text: &Option<String>| parse_date(text.as_deref()?).ok();
    let (basis, from, months) = match (day(&unit.last_service), day(&unit.in_service)) {
        (Some(last), _) => (Basis::LastService(last), last, terms.interval_months),
        (None, Some(since)) => (Basis::InService(since), since, first_months(terms)),
        (None, None) => return None,
    };
    let on = add_months(from, i32::try_from(months).ok()?).ok()?;
    let cover_ends = add_days(on, i32::try_from(terms.grace_days).ok()?).ok()?;
    Some(Due { on, cover_ends: Some(cover_ends), basis })
}

fn first_months(terms: &Terms) -> u32 {
    terms.first_within_months.unwrap_or(terms.interval_months)
}

impl Due {
    /// How far off it is on a day.
    #[must_use]
    pub fn seen_on(&self, day: NaiveDate) -> Standing {
        Standing { to_due: days_between(day, self.on), to_end: self.cover_ends.map(|end| days_between(day, end)) }
    }

    /// It is past, and cover still stands or there is none.
    #[must_use]
    pub fn is_past(&self, day: NaiveDate) -> bool {
        self.on < day
    }
}

/// 'Due 14 days ago, cover ends in 16', and in a second sentence what it was counted from.
#[must_use]
pub fn told(due: &Due, terms: Option<&Terms>, today: NaiveDate, words: &Words) -> String {
    let Standing { to_due, to_end } = due.seen_on(today);
    let days = to_due.unsigned_abs().to_string();
    let key = match to_due {
        0 => "due-today",
        1 => "due-tomorrow",
        -1 => "due-yesterday",
        2.. => "due-in",
        _ => "due-ago",
    };
    let (on, when) = (due.on.to_string(), words.fill(key, &[("days", &days)]));
    let parts = match to_end {
        None => words.fill("due-without-cover", &[("when", &when), ("on", &on)]),
        Some(left) => {
            let key = match left {
                0 => "cover-ends-today",
                1.. => "cover-ends-in",
                -1 => "cover-ended-yesterday",
                _ => "cover-ended-ago",
            };
            let cover = words.fill(key, &[("days", &left.unsigned_abs().to_string())]);
            words.fill("due-with-cover", &[("when", &when), ("cover", &cover)])
        }
    };
    match (because(due, terms, words), due.basis) {
        (Some(because), _) => format!("{parts} {because}"),
        (None, _) => parts,
    }
}

/// What the days were counted from, with the arithmetic; none where the assignment itself said the day.
#[must_use]
pub fn because(due: &Due, terms: Option<&Terms>, words: &Words) -> Option<String> {
    let terms = terms?;
    let (key, from, months) = match due.basis {
        Basis::LastService(from) => ("due-from-last", from, terms.interval_months),
        Basis::InService(from) => ("due-from-first", from, first_months(terms)),
        Basis::Assigned => return None,
    };
    let parts = [
        ("from", from.to_string()),
        ("months", months.to_string()),
        ("on", due.on.to_string()),
        ("grace", terms.grace_days.to_string()),
        ("end", due.cover_ends.map(|end| end.to_string()).unwrap_or_default()),
    ];
    let parts: Vec<(&str, &str)> = parts.iter().map(|(name, value)| (*name, value.as_str())).collect();
    Some(words.fill(key, &parts))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> NaiveDate {
        parse_date(text).unwrap()
    }

    fn unit(last: Option<&str>, since: Option<&str>) -> AssignedUnit {
        let terms = Terms {
            id: "t".into(),
            name: "Cover".into(),
            interval_months: 12,
            grace_days: 30,
            first_within_months: Some(6),
            ..Terms::default()
        };
        AssignedUnit {
            terms: Some(terms),
            last_service: last.map(Into::into),
            in_service: since.map(Into::into),
            ..AssignedUnit::default()
        }
    }

    fn said(unit: &AssignedUnit, today: &str) -> String {
        let words = Words::new("en", None).unwrap();
        told(&due(unit, "2026-05-01").unwrap(), unit.terms.as_ref(), day(today), &words)
    }

    #[test]
    fn a_late_service_is_told_with_what_is_left_of_cover() {
        let unit = unit(Some("2025-04-20"), Some("2021-04-20"));
        let found = due(&unit, "2026-05-01").unwrap();
        assert_eq!((found.on, found.cover_ends), (day("2026-04-20"), Some(day("2026-05-20"))));
        assert_eq!(found.seen_on(day("2026-05-04")), Standing { to_due: -14, to_end: Some(16) });
        assert!(
            said(&unit, "2026-05-04").starts_with("Due 14 days ago, cover ends in 16. "),
            "{}",
            said(&unit, "2026-05-04")
        );
        assert!(said(&unit, "2026-05-20").contains("cover ends today"));
        assert!(said(&unit, "2026-05-21").contains("cover ended yesterday"));
        assert!(said(&unit, "2026-04-19").starts_with("Due tomorrow"));
    }

    #[test]
    fn the_first_service_is_counted_from_the_day_in_service() {
        // 31 August and six months: February has no such day (dateutil's relativedelta gives 2026-02-28).
        let unit = unit(None, Some("2025-08-31"));
        let found = due(&unit, "2026-05-01").unwrap();
        assert_eq!((found.on, found.basis), (day("2026-02-28"), Basis::InService(day("2025-08-31"))));
        assert_eq!(found.cover_ends, Some(day("2026-03-30")));
    }

    #[test]
    fn a_unit_of_which_nothing_is_known_is_due_on_the_offices_day_and_nothing_is_said_of_cover() {
        let found = due(&unit(None, None), "2026-05-01").unwrap();
        assert_eq!((found.on, found.cover_ends), (day("2026-05-01"), None));
        assert_eq!(said(&unit(None, None), "2026-05-04"), "Due 3 days ago (2026-05-01).");
        assert_eq!(due(&unit(None, None), "soon"), None);
    }
}
