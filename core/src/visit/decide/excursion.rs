//! Excursions: a controller setting leaves home for the work, and comes back or is answered for.

use super::{Circumstances, Decision, Refusal, words};
use crate::id::{ExcursionId, StepId};
use crate::procedure::gate::Missing;
use crate::procedure::pack::Excursion;
use crate::visit::event::Body;
use crate::visit::state::{ExcursionEnd, Run};

fn find<'a>(id: &str, around: &Circumstances<'a>) -> Result<&'a Excursion, Refusal> {
    let known = around.pack.excursions.iter().find(|known| known.id.as_str() == id);
    known.ok_or_else(|| Refusal::NoSuch { name: id.to_owned() })
}

fn open_one(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<(ExcursionId, String), Refusal> {
    let excursion = find(id, around)?.id.clone();
    match run.excursions.get(&excursion) {
        Some(open) if open.end == ExcursionEnd::Open => Ok((excursion, open.home.clone())),
        _ => Err(Refusal::NoSuch { name: format!("{id}: a setting that is away") }),
    }
}

/// A change is noted once the settings as they were are photographed, or answered for, where the pack asks for that.
pub(super) fn open(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let excursion = find(id, around)?;
    let (home_field, away_field, because) = (format!("home:{id}"), format!("away:{id}"), format!("because:{id}"));
    let home = words(&home_field, around)?;
    let away = words(&away_field, around)?;
    let reason = words(&because, around).unwrap_or_default();
    if let Some(slot) = &excursion.shot {
        let taken = run.photos.get(slot).is_some_and(|photos| !photos.is_empty());
        if !taken && !run.shots_missed.contains_key(slot) {
            let opens = around.pack.steps().find(|(_, step)| step.opens.as_ref() == Some(&excursion.id));
            let step = opens.map_or_else(|| StepId(id.to_owned()), |(_, step)| step.id.clone());
            return Err(Refusal::Gate { step, missing: vec![Missing::Shot { slot: slot.clone() }] });
        }
    }
    let excursion = excursion.id.clone();
    Ok(Decision {
        events: vec![Body::ExcursionOpened { unit: around.unit.clone(), excursion, home, away, reason }],
        used: vec![home_field, away_field, because],
        ..Decision::default()
    })
}

/// The setting is back. What the controller shows must be what it was, or the person says why it need not.
pub(super) fn home(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let (excursion, was) = open_one(run, id, around)?;
    let (field, differs) = (format!("back:{id}"), format!("differs:{id}"));
    let shows = words(&field, around)?;
    let mut answered = String::new();
    if !reads_alike(&was, &shows) {
        answered = words(&differs, around).unwrap_or_default();
        if answered.is_empty() {
            return Err(Refusal::ReadBack { field, home: was, shows });
        }
    }
    Ok(Decision {
        events: vec![Body::ExcursionHome { unit: around.unit.clone(), excursion, shows, answered }],
        used: vec![field, differs],
        ..Decision::default()
    })
}

pub(super) fn leave(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let (excursion, _) = open_one(run, id, around)?;
    let field = format!("left:{id}");
    let reason = words(&field, around)?;
    Ok(Decision {
        events: vec![Body::ExcursionLeft { unit: around.unit.clone(), excursion, reason }],
        used: vec![field],
        go: Some("now".into()),
        ..Decision::default()
    })
}

/// Do two readings of a setting say the same? '55' is '55 °C' and '55,0 °C', '06:00 – 22:00' is '06:00-22:00'.
#[must_use]
pub fn reads_alike(one: &str, other: &str) -> bool {
    let (one, other) = (plain(one), plain(other));
    if one == other {
        return true;
    }
    let (Some((number, unit)), Some((other_number, other_unit))) = (number(&one), number(&other)) else { return false };
    (number - other_number).abs() < 1e-9 && (unit == other_unit || unit.is_empty() || other_unit.is_empty())
}

/// Without spaces and capitals, with one kind of dash and of decimal mark.
fn plain(text: &str) -> String {
    let one = |c: char| match c {
        '\u{2010}'..='\u{2015}' | '\u{2212}' => '-',
        ',' => '.',
        c => c,
    };
    text.chars().filter(|c| !c.is_whitespace()).map(one).flat_map(char::to_lowercase).collect()
}

/// The number that a text begins with, and the rest.
fn number(text: &str) -> Option<(f64, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit() && !matches!(c, '.' | '-')).unwrap_or(text.len());
    let (number, rest) = text.split_at(end);
    Some((number.parse().ok()?, rest))
}

#[cfg(test)]
mod tests {
    use super::reads_alike;

    #[test]
    fn a_setting_reads_alike_however_it_is_written() {
        for (one, other) in [
            ("55 °C", "55°c"),
            ("55 °C", "55"),
            ("55,0 °C", "55 °C"),
            ("06:00–22:00", "06:00 - 22:00"),
            ("Always on", "always  on"),
        ] {
            assert!(reads_alike(one, other), "{one} {other}");
        }
    }

    #[test]
    fn a_setting_that_differs_does_not_read_alike() {
        for (one, other) in [
            ("55 °C", "50 °C"),
            ("55 °C", "55 °F"),
            ("06:00–22:00", "06:00–23:00"),
            ("55", "on"),
            ("on", "off"),
            ("5", "-5"),
        ] {
            assert!(!reads_alike(one, other), "{one} {other}");
        }
    }
}
