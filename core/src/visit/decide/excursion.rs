//! Excursions: a controller setting leaves home for the work, and comes back or is answered for.

use super::{Circumstances, Decision, Refusal, words};
use crate::id::ExcursionId;
use crate::visit::event::Body;
use crate::visit::state::{ExcursionEnd, Run};

fn find(id: &str, around: &Circumstances<'_>) -> Result<ExcursionId, Refusal> {
    around
        .pack
        .excursions
        .iter()
        .find(|known| known.id.as_str() == id)
        .map(|known| known.id.clone())
        .ok_or_else(|| Refusal::NoSuch { name: id.to_owned() })
}

fn open_one(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<ExcursionId, Refusal> {
    let excursion = find(id, around)?;
    match run.excursions.get(&excursion) {
        Some(open) if open.end == ExcursionEnd::Open => Ok(excursion),
        _ => Err(Refusal::NoSuch { name: format!("{id}: a setting that is away") }),
    }
}

pub(super) fn open(id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let excursion = find(id, around)?;
    let (home_field, away_field) = (format!("home:{id}"), format!("away:{id}"));
    let home = words(&home_field, around)?;
    let away = words(&away_field, around)?;
    Ok(Decision {
        events: vec![Body::ExcursionOpened { unit: around.unit.clone(), excursion, home, away }],
        used: vec![home_field, away_field],
        ..Decision::default()
    })
}

pub(super) fn home(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let excursion = open_one(run, id, around)?;
    let field = format!("back:{id}");
    let shows = words(&field, around)?;
    Ok(Decision {
        events: vec![Body::ExcursionHome { unit: around.unit.clone(), excursion, shows }],
        used: vec![field],
        ..Decision::default()
    })
}

pub(super) fn leave(run: &Run, id: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let excursion = open_one(run, id, around)?;
    let field = format!("left:{id}");
    let reason = words(&field, around)?;
    Ok(Decision {
        events: vec![Body::ExcursionLeft { unit: around.unit.clone(), excursion, reason }],
        used: vec![field],
        go: Some("now".into()),
        ..Decision::default()
    })
}
