//! The owner's summary, without a sign-in: the page, the same as a file that stands for itself, as a PDF, and the day of the
//! next service.

use axum::extract::{Path, State};
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{Html, IntoResponse as _, Response};
use coilside_core::procedure::measure::Units;
use coilside_core::record::summary::{Dress, Part, Summary, Way, html, photographs_of};

use super::files;
use super::photos::picture;
use super::visitor::Visitor;
use super::{Page, PageError};
use crate::app::customer;
use crate::app::language::Language;
use crate::app::library::Library;
use crate::app::make_summary::{self, units_name, units_named};
use crate::app::preview;
use crate::app::record::{self, Record};
use crate::http::blocking::{on_disk, on_shelf};
use crate::http::refusal::Refusal;
use crate::ids::Digest;
use crate::office::Office;
use crate::store::{Store, StoreError, summaries};

/// A summary that may be shown, with how it was asked for.
struct Shown<'a> {
    record: Record<'a>,
    summary: Summary,
    language: Language,
}

pub(super) async fn show(State(office): State<Office>, visitor: Visitor, Path(token): Path<String>) -> Page {
    with_summary(&office, visitor, token, |_, visitor, token, shown| {
        let pictures = make_summary::linked(&shown.record, &shown.summary, &format!("/s/{token}/photos/"));
        let dress = Dress {
            style: Some(files::summary_style_address().to_owned()),
            icon: Some("/icon.svg".to_owned()),
            ways: ways(visitor, token, shown),
            calendar: Some(format!("/s/{token}/next.ics?{}", asked_for(shown))),
            unlisted: true,
        };
        Ok(Some(Html(html(&shown.summary, &pictures, &dress)).into_response()))
    })
    .await
}

/// The page as a file: pictures and style are in it.
pub(super) async fn file(State(office): State<Office>, visitor: Visitor, Path(token): Path<String>) -> Page {
    with_summary(&office, visitor, token, |store, _, _, shown| {
        let pictures = make_summary::embedded(store, &shown.record, &shown.summary);
        let page = html(&shown.summary, &pictures, &Dress::default());
        Ok(Some(kept("text/html; charset=utf-8", "html", page.into_bytes())))
    })
    .await
}

#[cfg(feature = "pdf")]
pub(super) async fn paper(State(office): State<Office>, visitor: Visitor, Path(token): Path<String>) -> Page {
    with_summary(&office, visitor, token, |store, _, _, shown| {
        let pictures = make_summary::embedded(store, &shown.record, &shown.summary);
        let paper = coilside_core::record::summary::pdf(&shown.summary, &pictures);
        let paper = paper.map_err(|error| Refusal::stuck(500, "not-made", "The PDF could not be made", &error))?;
        Ok(Some(kept("application/pdf", "pdf", paper)))
    })
    .await
}

/// The day of the next service for a calendar (RFC 5545). After a break-off there is none.
pub(super) async fn next(State(office): State<Office>, visitor: Visitor, Path(token): Path<String>) -> Page {
    with_summary(&office, visitor, token, |_, _, _, shown| {
        let mut parts = shown.summary.sections.iter().flat_map(|section| &section.parts);
        let ics = parts.find_map(|part| if let Part::Calendar { ics, .. } = part { Some(ics.clone()) } else { None });
        Ok(ics.map(|ics| kept("text/calendar; charset=utf-8", "ics", ics.into_bytes())))
    })
    .await
}

/// A preview, only of a photograph that this very summary shows. Never an original.
pub(super) async fn photo(
    State(office): State<Office>,
    visitor: Visitor,
    Path((token, digest)): Path<(String, String)>,
) -> Page {
    let digest = Digest::parse(&digest).map_err(|_| PageError::NoSummary(visitor.clone()))?;
    let shown = on_shelf(&office, move |store, library, _| -> Result<_, StoreError> {
        let Some(record) = behind(store, library, &token)? else { return Ok(false) };
        let digest = digest.to_string();
        let found = record.pack.filter(|_| record.assignment.is_some());
        let shows = |pack| photographs_of(&record.visit, pack).any(|photo| photo.as_str() == digest);
        Ok(found.is_some_and(|found| shows(&found.pack.pack)))
    });
    if !shown.await? {
        return Err(PageError::NoSummary(visitor));
    }
    let jpeg = on_disk(&office, move |store, _| preview::preview(store, digest)).await?;
    Ok(picture(jpeg))
}

/// Makes the summary that a token opens and hands it to be shown.
async fn with_summary(
    office: &Office,
    visitor: Visitor,
    token: String,
    show: impl FnOnce(&Store, &Visitor, &str, &Shown<'_>) -> Result<Option<Response>, Refusal> + Send + 'static,
) -> Page {
    let asked = visitor.clone();
    let made = on_shelf(office, move |store, library, _| -> Result<_, Refusal> {
        let Some(record) = behind(store, library, &token)? else { return Ok(None) };
        // The owner's language, unless this very address asks for another; the office's cookie does not count here.
        let language = visitor.chosen.unwrap_or_else(|| make_summary::owners_language(&record));
        let firm = make_summary::firm(store)?;
        let units = units_asked(&visitor).unwrap_or(firm.units);
        let shown = customer::shown(store, &record);
        let made = make_summary::make(&record, library, &firm, (language, units), shown.as_ref());
        let Some(summary) = made else { return Ok(None) };
        show(store, &visitor, &token, &Shown { record, summary, language })
    });
    made.await?.ok_or(PageError::NoSummary(asked))
}

/// The record that a summary's token opens. One that cannot be vouched for tells an owner nothing: it might say that
/// something is safe which is not.
fn behind<'a>(store: &Store, library: &'a Library, token: &str) -> Result<Option<Record<'a>>, StoreError> {
    match store.read(|db| summaries::visit_of(db, token))? {
        Some(visit) => Ok(record::read(store, library, &visit)?.filter(Record::is_sealed_and_holds)),
        None => Ok(None),
    }
}

fn units_asked(visitor: &Visitor) -> Option<Units> {
    visitor.query.split('&').find_map(|pair| units_named(pair.strip_prefix("units=")?))
}

fn asked_for(shown: &Shown<'_>) -> String {
    format!("lang={}&units={}", shown.language.tag(), units_name(shown.summary.units))
}

/// The other language, and the summary to keep or to print, as it is shown.
fn ways(visitor: &Visitor, token: &str, shown: &Shown<'_>) -> Vec<Way> {
    let words = visitor.words_in(shown.language);
    let file = |name: &str, key: &str| Way {
        to: format!("/s/{token}/{name}?{}", asked_for(shown)),
        label: words.text(key),
        language: None,
        file: true,
    };
    let other = |language: &Language| Way {
        to: format!("/s/{token}?lang={}&units={}", language.tag(), units_name(shown.summary.units)),
        label: language.name().to_owned(),
        language: Some(language.tag().to_owned()),
        file: false,
    };
    let paper = cfg!(feature = "pdf").then(|| file("summary.pdf", "office-summary-pdf"));
    let files = paper.into_iter().chain([file("summary.html", "office-summary-keep")]);
    files.chain(Language::ALL.iter().filter(|language| **language != shown.language).map(other)).collect()
}

/// A file for the owner to keep. It says who may see it, and is kept nowhere on the way.
fn kept(media: &'static str, ending: &str, bytes: Vec<u8>) -> Response {
    let name = format!("attachment; filename=\"summary.{ending}\"");
    ([(CONTENT_TYPE, media.to_owned()), (CONTENT_DISPOSITION, name)], bytes).into_response()
}
