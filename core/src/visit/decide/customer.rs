//! The customer at the end of a visit: there or not, shown what was done, with name, drawing, both, or neither.

use super::{Circumstances, Decision, Refusal};
use crate::evidence::{Ink, InkError, Shown};
use crate::visit::event::{Body, sha256};
use crate::visit::state::Visit;

/// The field of the name that is typed.
pub const NAME_FIELD: &str = "customer-name";
/// The field of the signature that is drawn.
pub const INK_FIELD: &str = "ink:customer";

/// Whether the customer is there. Said again it is no news; changed, the later word counts, and both stay.
pub(super) fn noted(visit: &Visit, option: &str) -> Result<Decision, Refusal> {
    let (present, unsigned) = match option {
        "present" => (true, false),
        "unsigned" => (true, true),
        "absent" => (false, false),
        _ => return Err(Refusal::NoSuch { name: format!("customer={option}") }),
    };
    let news = (visit.customer_present, visit.customer_unsigned) != (Some(present), unsigned);
    // Who does not sign leaves no half-drawn name behind.
    let used = if present && !unsigned { Vec::new() } else { [NAME_FIELD, INK_FIELD].map(str::to_owned).into() };
    Ok(Decision {
        events: news.then_some(Body::CustomerNoted { present, unsigned, shown: None }).into_iter().collect(),
        used,
        ..Decision::default()
    })
}

/// The customer was shown what was done, and says so by name, by hand, or both. Done again, the later one counts.
pub(super) fn signs(drawn: bool, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let typed = |field| around.drafts.get(field).map(String::as_str).unwrap_or_default();
    let refused = |field: &'static str| move |why| Refusal::Ink { field: field.to_owned(), why };
    let ink = if drawn { Some(Ink::read(typed(INK_FIELD)).map_err(refused(INK_FIELD))?) } else { None };
    let name = typed(NAME_FIELD);
    if ink.is_none() && name.trim().is_empty() {
        return Err(Refusal::Words { field: NAME_FIELD.to_owned() });
    }
    let field = |why| refused(if why == InkError::Name { NAME_FIELD } else { INK_FIELD })(why);
    let shown = Shown::of(name, ink.as_ref(), around.salt, around.now.utc_ms).map_err(field)?;
    let bytes = shown.to_bytes().map_err(refused(INK_FIELD))?;
    let noted = Body::CustomerNoted { present: true, unsigned: false, shown: Some(sha256(&bytes)) };
    Ok(Decision {
        events: vec![noted],
        used: [NAME_FIELD, INK_FIELD].map(str::to_owned).into(),
        beside: Some(bytes),
        ..Decision::default()
    })
}

/// Something is typed or drawn that is not in the record yet: sealing over it would lose it.
pub(super) fn waits(visit: &Visit, around: &Circumstances<'_>) -> bool {
    let typed = |field| around.drafts.get(field).is_some_and(|text: &String| !text.trim().is_empty());
    let drawn = around.drafts.get(INK_FIELD).is_some_and(|text| !matches!(Ink::read(text), Err(InkError::Nothing)));
    visit.customer_present == Some(true) && !visit.customer_unsigned && (typed(NAME_FIELD) || drawn)
}
