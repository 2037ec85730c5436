//! The owner's summary of a sealed visit.

use coilside_core::procedure::measure::Units;
use coilside_core::record::summary::{Sources, Summary, summary};

use super::day;
use super::language::Language;
use super::library::Library;
use super::record::Record;
use crate::store::{Store, StoreError, settings};

/// The setting that holds whom owners call.
const CONTACT: &str = "contact";

/// From one service to the next where no terms say otherwise: common practice, no source.
const YEAR_MONTHS: u32 = 12;

/// Sets whom owners call: the firm's name and telephone, one line each.
pub(crate) fn set_contact(store: &Store, text: &str) -> Result<(), StoreError> {
    store.write(|db| settings::put(db, CONTACT, text.trim()))
}

/// Whom owners call, as set.
pub(crate) fn contact(store: &Store) -> Result<Option<String>, StoreError> {
    store.read(|db| settings::of(db, CONTACT))
}

/// The language that the owner speaks.
pub(crate) fn owners_language(record: &Record<'_>) -> Language {
    let asked = record.assignment.as_ref().and_then(|assignment| Language::parse(&assignment.owner.language));
    asked.unwrap_or_default()
}

/// The summary's content. None where assignment or pack is not known here, so that nothing could be said.
pub(crate) fn make(
    record: &Record<'_>,
    library: &Library,
    contact: Option<&str>,
    language: Language,
) -> Option<Summary> {
    let (assignment, found) = (record.assignment.as_ref()?, record.pack?);
    let words = library.words(language, Some(found.pack));
    let at = record.visit.last.as_ref()?;
    let by_phone = words.text("office-summary-next-by-phone");
    let terms = assignment.units.iter().filter_map(|unit| unit.terms.as_ref());
    let months = terms.map(|terms| terms.interval_months).min().unwrap_or(YEAR_MONTHS);
    let next = day::month_later(words, at.utc_ms, at.offset_min, months);
    let no_contact = words.text("office-summary-no-contact");
    Some(summary(&Sources {
        visit: &record.visit,
        assignment,
        pack: &found.pack.pack,
        words,
        units: Units::Metric,
        contact: contact.filter(|contact| !contact.is_empty()).unwrap_or(&no_contact),
        next_day: if record.visit.broken_off.is_some() { &by_phone } else { &next },
        day: &day::day(words, at.utc_ms, at.offset_min),
    }))
}
