//! The owner's summary of a sealed visit: its content, and the pictures that it shows.

use coilside_core::evidence::Shown;
use coilside_core::id;
use coilside_core::procedure::measure::Units;
use coilside_core::record::summary::{Picture, Pictures, Source, Sources, Summary, summary};
use coilside_core::round::day::day_of;
use coilside_core::visit::event::PhotoFlag;
use coilside_core::visit::state::Photo;

use super::language::Language;
use super::library::Library;
use super::preview;
use super::record::{Record, SealCheck};
use crate::ids::Digest;
use crate::store::{Store, StoreError, settings};

/// The settings that hold whom owners call, the office's address as owners reach it, and the units that they use.
const CONTACT: &str = "contact";
const ADDRESS: &str = "address";
const UNITS: &str = "units";

/// What every summary of this office has in common.
pub(crate) struct Firm {
    /// The firm's name and telephone, one line each or parted by ' · '.
    contact: Option<String>,
    /// 'https://office.example', without a slash at its end.
    pub(crate) address: Option<String>,
    /// The units of its owners.
    pub(crate) units: Units,
}

/// Sets whom owners call: the firm's name and telephone, one line each.
pub(crate) fn set_contact(store: &Store, text: &str) -> Result<(), StoreError> {
    store.write(|db| settings::put(db, CONTACT, text.trim()))
}

/// Sets the address under which owners reach the office.
pub(crate) fn set_address(store: &Store, text: &str) -> Result<(), StoreError> {
    store.write(|db| settings::put(db, ADDRESS, text.trim().trim_end_matches('/')))
}

/// Sets the units that owners use.
pub(crate) fn set_units(store: &Store, units: Units) -> Result<(), StoreError> {
    store.write(|db| settings::put(db, UNITS, units_name(units)))
}

/// What was set.
pub(crate) fn firm(store: &Store) -> Result<Firm, StoreError> {
    let set = |name| Ok::<_, StoreError>(store.read(|db| settings::of(db, name))?.filter(|text| !text.is_empty()));
    let units = set(UNITS)?.and_then(|name| units_named(&name)).unwrap_or_default();
    Ok(Firm { contact: set(CONTACT)?, address: set(ADDRESS)?, units })
}

/// As it stands in addresses and settings.
pub(crate) const fn units_name(units: Units) -> &'static str {
    match units {
        Units::Metric => "metric",
        Units::Us => "us",
    }
}

/// The other way round.
pub(crate) fn units_named(name: &str) -> Option<Units> {
    [Units::Metric, Units::Us].into_iter().find(|units| units_name(*units) == name)
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
    firm: &Firm,
    (language, units): (Language, Units),
    shown: Option<&Shown>,
) -> Option<Summary> {
    let (assignment, found) = (record.assignment.as_ref()?, record.pack?);
    let at = record.visit.last.as_ref()?;
    let page = firm.address.as_ref().zip(record.summary_token.as_ref());
    let page = page.map(|(office, token)| format!("{office}/s/{token}"));
    let seal = if let SealCheck::Holds { marks, .. } = &record.seal { Some(marks.clone()) } else { None };
    Some(summary(&Sources {
        visit: &record.visit,
        assignment,
        pack: &found.pack.pack,
        words: library.words(language, Some(found.pack)),
        units,
        contact: firm.contact.as_deref(),
        day: day_of(at.utc_ms, at.offset_min)?,
        seal,
        address: page.as_deref(),
        shown,
    }))
}

/// The previews that a summary shows, at addresses that begin so. Only of photographs that are here and can be shown.
pub(crate) fn linked(record: &Record<'_>, summary: &Summary, base: &str) -> Pictures {
    let of = |digest: &id::Digest| {
        let (width, height) = size(shown(record, digest)?)?;
        Some((digest.clone(), Picture { source: Source::Address(format!("{base}{digest}")), width, height }))
    };
    summary.photographs().filter_map(of).collect()
}

/// The same inside the summary itself. One that cannot be shown is left out, and the summary says so.
pub(crate) fn embedded(store: &Store, record: &Record<'_>, summary: &Summary) -> Pictures {
    let of = |digest: &id::Digest| {
        shown(record, digest)?;
        let jpeg = preview::preview(store, Digest::parse(digest.as_str()).ok()?).ok()?;
        Some((digest.clone(), Picture::embedded(&jpeg)?))
    };
    summary.photographs().filter_map(of).collect()
}

fn shown<'a>(record: &'a Record<'_>, digest: &id::Digest) -> Option<&'a Photo> {
    let (_, _, photo) = record.visit.photos().find(|(_, _, photo)| photo.digest == *digest)?;
    (record.safe.contains(digest) && !photo.flags.contains(&PhotoFlag::NoPreview)).then_some(photo)
}

/// Width and height as shown, so that a page does not jump: half of the EXIF orientations swap them.
pub(crate) fn size(photo: &Photo) -> Option<(u32, u32)> {
    let (width, height) = (photo.facts.width, photo.facts.height);
    match (width, height, photo.facts.orientation) {
        (0, _, _) | (_, 0, _) => None,
        (_, _, 5..=8) => Some((height, width)),
        _ => Some((width, height)),
    }
}
