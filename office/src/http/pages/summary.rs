//! The owner's summary: one page without a sign-in, for someone of seventy with a telephone in the hand.

use axum::extract::{Path, State};
use axum::response::{Html, IntoResponse as _};
use coilside_core::record::summary::Summary;
use coilside_core::visit::event::Severity;
use coilside_core::visit::state::Photo;
use coilside_core::words::Words;
use maud::{DOCTYPE, Markup, html};

use super::frame::{head, languages, mark};
use super::photos::picture;
use super::visit_photos::{pairs_of, size};
use super::visitor::Visitor;
use super::{Page, PageError};
use crate::app::language::Language;
use crate::app::library::Library;
use crate::app::record::{self, Record};
use crate::app::{make_summary, preview};
use crate::http::blocking::{on_disk, on_shelf};
use crate::ids::Digest;
use crate::office::Office;
use crate::store::{Store, StoreError, summaries};

pub(super) async fn show(State(office): State<Office>, mut visitor: Visitor, Path(token): Path<String>) -> Page {
    let asked = visitor.clone();
    let made = on_shelf(&office, move |store, library, _| -> Result<_, StoreError> {
        let Some(record) = behind(store, library, &token)? else { return Ok(None) };
        // The owner's language, unless this very address asks for another; the office's cookie does not count here.
        visitor.language = visitor.chosen.unwrap_or_else(|| make_summary::owners_language(&record));
        let contact = make_summary::contact(store)?;
        let Some(summary) = make_summary::make(&record, library, contact.as_deref(), visitor.language) else {
            return Ok(None);
        };
        let words = library.words(visitor.language, record.pack.map(|found| found.pack));
        Ok(Some(Html(document(words, &visitor, &record, &summary, &token).into_string())))
    });
    Ok(made.await?.ok_or(PageError::NoSummary(asked))?.into_response())
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
        let words = library.words(Language::default(), record.pack.map(|found| found.pack));
        let mut pairs = record.visit.runs.values().flat_map(|run| pairs_of(words, &record, run));
        let is_it = |photo: &Photo| photo.digest.as_str() == digest.to_string();
        Ok(pairs.any(|pair| pair.sides().into_iter().any(|(_, photo)| photo.is_some_and(is_it))))
    });
    if !shown.await? {
        return Err(PageError::NoSummary(visitor));
    }
    let jpeg = on_disk(&office, move |store, _| preview::preview(store, digest)).await?;
    Ok(picture(jpeg))
}

/// The record that a summary's token opens. One that cannot be vouched for tells an owner nothing: it might say that
/// something is safe which is not.
fn behind<'a>(store: &Store, library: &'a Library, token: &str) -> Result<Option<Record<'a>>, StoreError> {
    match store.read(|db| summaries::visit_of(db, token))? {
        Some(visit) => Ok(record::read(store, library, &visit)?.filter(Record::is_sealed_and_holds)),
        None => Ok(None),
    }
}

fn document(words: &Words, visitor: &Visitor, record: &Record<'_>, summary: &Summary, token: &str) -> Markup {
    html! {
        (DOCTYPE)
        html lang=(summary.language) {
            (head(&summary.title))
            body.summary {
                a.skip href="#main" { (words.text("office-skip")) }
                header.summary-top {
                    span.mark { (mark()) }
                    nav aria-label=(words.text("office-tools")) { (languages(visitor)) }
                }
                main #main {
                    h1 { (summary.title) }
                    p.summary-lead { (summary.lead) }
                    (answers(summary))
                    (findings(words, summary))
                    (done(words, summary, record.visit.runs.len() > 1))
                    (pairs(words, record, token))
                    (numbers(words, summary))
                    (list("office-summary-gaps", words, &summary.gaps))
                    (list("office-summary-settings", words, &summary.settings))
                    (list("office-summary-cover", words, &summary.cover))
                    (list("office-summary-cautions", words, &summary.cautions))
                    (list("office-summary-next", words, &summary.next))
                }
                footer { p { (words.text("office-summary-foot")) } }
            }
        }
    }
}

/// The four answers of the first page.
fn answers(summary: &Summary) -> Markup {
    html! {
        dl.answers {
            @for (at, answer) in summary.answers.iter().enumerate() {
                // The first two are about safety and hot water: there, whether all is well is shown beside the words.
                @let tone = match (at, answer.good) { (0 | 1, true) => "good", (0, false) => "danger", (_, false) => "attention", _ => "plain" };
                div class={ "answer " (tone) } {
                    dt { (answer.question) }
                    dd { (with_telephone(&answer.answer)) }
                }
            }
        }
    }
}

/// Parts of an answer, one a line; one that is a telephone number can be tapped.
fn with_telephone(text: &str) -> Markup {
    let number = |part: &str| -> Option<String> {
        let digits: String = part.chars().filter(|c| c.is_ascii_digit() || *c == '+').collect();
        let only = part.chars().all(|c| c.is_ascii_digit() || " +-()/.\u{a0}".contains(c));
        (only && digits.len() >= 5).then_some(digits)
    };
    html! {
        @for part in text.split(['\n', '·']).map(str::trim).filter(|part| !part.is_empty()) {
            @match number(part) {
                Some(digits) => a.telephone href={ "tel:" (digits) } { (part) },
                None => span.line { (part) },
            }
        }
    }
}

fn findings(words: &Words, summary: &Summary) -> Markup {
    html! {
        @if !summary.findings.is_empty() {
            section {
                h2 { (words.text("office-summary-findings")) }
                ul.found {
                    @for finding in &summary.findings {
                        @let tone = match finding.severity { Severity::Unsafe => "danger", Severity::Soon => "attention", Severity::Note => "plain" };
                        li class=(tone) { b { (finding.severity_text) } p { (finding.text) } }
                    }
                }
            }
        }
    }
}

fn done(words: &Words, summary: &Summary, several: bool) -> Markup {
    html! {
        @if !summary.done.is_empty() {
            section {
                h2 { (words.text("office-summary-done")) }
                ol.done { @for done in &summary.done {
                    li {
                        p.what { @if several { span.unit { (done.unit) } " " } (done.what) }
                        @if !done.matters.is_empty() { p.matters { (done.matters) } }
                    }
                } }
            }
        }
    }
}

fn pairs(words: &Words, record: &Record<'_>, token: &str) -> Markup {
    let all = record.visit.runs.values().flat_map(|run| pairs_of(words, record, run));
    let shown: Vec<_> = all.filter(|pair| pair.sides().iter().any(|(_, photo)| is_here(record, *photo))).collect();
    html! {
        @if !shown.is_empty() {
            section {
                h2 { (words.text("office-before-after")) }
                @for pair in &shown {
                    div.pair { @for (title, photo) in pair.sides() {
                        @match photo.filter(|photo| is_here(record, Some(photo))) {
                            Some(photo) => figure {
                                img src={ "/s/" (token) "/photos/" (photo.digest) } alt=(title) loading="lazy" decoding="async"
                                    width=[size(photo).map(|(width, _)| width)] height=[size(photo).map(|(_, height)| height)];
                                figcaption { (title) }
                            },
                            None => div.no-photo { b { (title) } span { (words.text("office-no-photo")) } },
                        }
                    } }
                }
            }
        }
    }
}

fn is_here(record: &Record<'_>, photo: Option<&Photo>) -> bool {
    photo.is_some_and(|photo| record.safe.contains(&photo.digest))
}

fn numbers(words: &Words, summary: &Summary) -> Markup {
    html! {
        @if !summary.numbers.is_empty() {
            section {
                h2 { (words.text("office-summary-numbers")) }
                @for line in &summary.gain { p.gain { (line) } }
                p.quiet { (words.text("office-summary-numbers-hint")) }
                ul.numbers { @for changed in &summary.numbers {
                    li {
                        h3 { (changed.label) }
                        dl {
                            div { dt { (words.text("office-before")) } dd { (changed.found) } }
                            div { dt { (words.text("office-after")) } dd { (changed.left) } }
                        }
                        @if !changed.meaning.is_empty() { p.quiet { (changed.meaning) } }
                    }
                } }
            }
        }
    }
}

fn list(key: &str, words: &Words, lines: &[String]) -> Markup {
    html! {
        @if !lines.is_empty() {
            section { h2 { (words.text(key)) } ul.plain { @for line in lines { li { (line) } } } }
        }
    }
}
