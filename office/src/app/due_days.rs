//! The due days of what is open, for a calendar: the day of the service, and the last day on which cover still stands.

use coilside_core::round::calendar::{Entry, calendar};
use coilside_core::round::{AssignedUnit, Assignment, due};
use coilside_core::words::Words;

use super::plan_day::Day;

/// So long before a day the calendar reminds.
const REMIND_DAYS: u32 = 14;

/// All of them as an iCalendar file.
pub(crate) fn file(day: &Day, words: &Words, now_ms: i64) -> String {
    let units =
        day.assignments.iter().flat_map(|assignment| assignment.units.iter().map(move |unit| (assignment, unit)));
    let entries: Vec<Entry> = units.flat_map(|(assignment, unit)| entries(assignment, unit, words)).collect();
    calendar(&entries, now_ms)
}

fn entries(assignment: &Assignment, unit: &AssignedUnit, words: &Words) -> Vec<Entry> {
    let Some(due) = due::due(unit, &assignment.due) else { return Vec::new() };
    let entry = |kind: &str, on, key: &str| Entry {
        uid: format!("{kind}-{}-{}@coilside", assignment.id, unit.letter),
        on,
        title: words.fill(key, &[("site", &assignment.site.name), ("unit", &unit.letter)]),
        text: [
            assignment.reason.clone(),
            format!("{} {} {}", unit.maker, unit.model, unit.serial),
            due::because(&due, unit.terms.as_ref(), words).unwrap_or_default(),
        ]
        .into_iter()
        .filter(|line| !line.trim().is_empty())
        .collect::<Vec<_>>()
        .join("\n"),
        place: assignment.site.address.clone(),
        remind_days: Some(REMIND_DAYS),
    };
    let service = entry("due", due.on, "office-calendar-due");
    let cover = due.cover_ends.map(|end| entry("cover", end, "office-calendar-cover"));
    [Some(service), cover].into_iter().flatten().collect()
}
