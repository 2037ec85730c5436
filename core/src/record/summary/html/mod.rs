//! The summary as one page that needs nothing else: no script, nothing from elsewhere. The slider between before and after
//! is a row of radio buttons, so that it goes by tap, by arrow keys and with a screen reader.

mod drawing;
mod pair;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use maud::{DOCTYPE, Markup, PreEscaped, html};
use qrcodegen::{QrCode, QrCodeEcc};
use sha2::{Digest as _, Sha256};

use super::jpeg::Pictures;
use super::{Answer, Changed, Done, Found, Part, Section, Summary, Tone, Years, lines_of};
use crate::visit::event::Severity;

/// The style sheet of the page.
pub const STYLE: &str = include_str!("style.css");

/// What surrounds the summary where it is shown. By default the page stands for itself.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Dress {
    /// The address of [`STYLE`]; without one it is in the page.
    pub style: Option<String>,
    /// The address of the icon, where there is one.
    pub icon: Option<String>,
    /// Ways on from the page, for the screen only: address, words, language of what is there.
    pub ways: Vec<Way>,
    /// The address of the calendar file; without one it is in the page.
    pub calendar: Option<String>,
    /// Keep the page out of search engines.
    pub unlisted: bool,
}

/// A way on from the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Way {
    /// Where to.
    pub to: String,
    /// Its words.
    pub label: String,
    /// The language of what is there, where it is another.
    pub language: Option<String>,
    /// It is a file to keep.
    pub file: bool,
}

/// The page.
#[must_use]
pub fn html(summary: &Summary, pictures: &Pictures, dress: &Dress) -> String {
    let page = html! {
        (DOCTYPE)
        html lang=(summary.language) {
            head {
                meta charset="utf-8";
                @if dress.style.is_none() { meta http-equiv="Content-Security-Policy" content=(policy()); }
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                meta name="format-detection" content="telephone=no";
                @if dress.unlisted { meta name="robots" content="noindex, nofollow"; }
                title { (summary.title) }
                @if let Some(icon) = &dress.icon { link rel="icon" href=(icon) type="image/svg+xml"; }
                @match &dress.style {
                    Some(address) => { link rel="stylesheet" href=(address); }
                    None => { style { (PreEscaped(STYLE)) } }
                }
            }
            body.summary {
                main #main {
                    header {
                        h1 { (summary.title) }
                        @for line in &summary.lead { p.lead { (line) } }
                    }
                    @for (at, section) in summary.sections.iter().enumerate() {
                        (self::section(summary, section, at, pictures, dress))
                    }
                }
                @if !dress.ways.is_empty() {
                    nav.ways { ul { @for way in &dress.ways {
                        li { a href=(way.to) lang=[&way.language] hreflang=[&way.language] download[way.file] { (way.label) } }
                    } } }
                }
            }
        }
    };
    page.into_string()
}

/// The policy of a page that stands for itself: nothing may be loaded or run, only the one style sheet, known by its digest,
/// and pictures that are in the page.
#[must_use]
pub fn policy() -> String {
    let digest = STANDARD.encode(Sha256::digest(STYLE.as_bytes()));
    format!("default-src 'none'; style-src 'sha256-{digest}'; img-src data:; base-uri 'none'; form-action 'none'")
}

fn section(summary: &Summary, section: &Section, at: usize, pictures: &Pictures, dress: &Dress) -> Markup {
    let heading = format!("h-{}", section.name);
    let mut pair_at = 0;
    html! {
        section class=(section.name) aria-labelledby=[(!section.title.is_empty()).then_some(&heading)] {
            @if !section.title.is_empty() { h2 id=(heading) { (section.title) } }
            @if section.name == "pictures" { (pair::how_to(&summary.labels, &section.parts)) }
            @for part in &section.parts {
                @match part {
                    Part::Text(text, tone) => p class=(class(*tone)) { (text) },
                    Part::Answers(all) => (answers(all)),
                    Part::List(lines) => ul.plain { @for line in lines { li { (line) } } },
                    Part::Found(all) => (found(all)),
                    Part::Done(all) => (done(all)),
                    Part::Pair(of) => ({ pair_at += 1; pair::pair(&summary.labels, of, &format!("p{at}-{pair_at}"), pictures) }),
                    Part::Changed(of) => (changed(summary, of)),
                    Part::Years(of) => (years(of)),
                    Part::Ink(drawing) => div.ink { (drawing::svg(drawing)) },
                    Part::Facts(facts) => dl.marks { @for (name, value) in facts { div { dt { (name) } dd { (value) } } } },
                    Part::Code(address) => (code(address)),
                    Part::Calendar { label, ics } => p.calendar {
                        a download="next-service.ics" href=(dress.calendar.clone().unwrap_or_else(|| data("text/calendar;charset=utf-8", ics.as_bytes()))) { (label) }
                    },
                }
            }
        }
    }
}

/// Bytes as an address of their own (RFC 2397).
fn data(media: &str, bytes: &[u8]) -> String {
    format!("data:{media};base64,{}", STANDARD.encode(bytes))
}

const fn class(tone: Tone) -> &'static str {
    match tone {
        Tone::Plain => "plain",
        Tone::Quiet => "quiet",
        Tone::Strong => "strong",
        Tone::Good => "good",
        Tone::Attention => "attention",
        Tone::Danger => "danger",
    }
}

fn answers(answers: &[Answer]) -> Markup {
    html! {
        dl.answers { @for answer in answers {
            div class={ "answer " (class(answer.tone)) } {
                dt { (answer.question) }
                dd { @for line in lines_of(&answer.answer) {
                    @match telephone(line) {
                        Some(digits) => a.telephone href={ "tel:" (digits) } { (line) },
                        None => span.line { (line) },
                    }
                } }
            }
        } }
    }
}

/// A line that is a telephone number can be tapped.
fn telephone(line: &str) -> Option<String> {
    let digits: String = line.chars().filter(|c| c.is_ascii_digit() || *c == '+').collect();
    let only = line.chars().all(|c| c.is_ascii_digit() || " +-()/.\u{a0}".contains(c));
    (only && digits.len() >= 5).then_some(digits)
}

fn found(found: &[Found]) -> Markup {
    html! {
        ul.found { @for found in found {
            @let tone = match found.severity { Severity::Unsafe => "danger", Severity::Soon => "attention", Severity::Note => "plain" };
            li class=(tone) { p.how { b { (found.severity_text) } } p { (found.text) } }
        } }
    }
}

fn done(done: &[Done]) -> Markup {
    html! {
        ol.done { @for done in done {
            li {
                p.what { @for unit in &done.units { span.unit { (unit) } " " } (done.what) }
                @if !done.matters.is_empty() { p.matters { (done.matters) } }
            }
        } }
    }
}

fn changed(summary: &Summary, changed: &Changed) -> Markup {
    html! {
        article.number {
            h3 { (changed.label) }
            dl {
                div { dt { (summary.labels.before) } dd { (changed.found) } }
                div { dt { (summary.labels.after) } dd { (changed.left) } }
            }
            @if !changed.meaning.is_empty() { p.meaning { (changed.meaning) } }
            @if let Some(chart) = &changed.chart { (drawing::svg(chart)) }
        }
    }
}

fn years(years: &Years) -> Markup {
    html! {
        article.number {
            h3 { (years.label) }
            (drawing::svg(&years.chart))
            dl.days { @for (day, value) in &years.values { div { dt { (day) } dd { (value) } } } }
            @if !years.meaning.is_empty() { p.meaning { (years.meaning) } }
        }
    }
}

/// An address as a code (ISO/IEC 18004) and as words to type. One that is too long for a code stands as words only.
fn code(address: &str) -> Markup {
    html! {
        @if let Ok(code) = QrCode::encode_text(address, QrCodeEcc::Medium) {
            @let side = code.size() + 8;
            svg.code viewBox={ "0 0 " (side) " " (side) } aria-hidden="true" focusable="false" {
                rect.ground width=(side) height=(side) {}
                path.dots d=(dots(&code)) {}
            }
        }
        p.address { a href=(address) { (address) } }
    }
}

/// The dark modules row by row, four modules of ground around.
pub(super) fn dots(code: &QrCode) -> String {
    let modules = (0..code.size()).flat_map(|y| (0..code.size()).map(move |x| (x, y)));
    let dark = modules.filter(|(x, y)| code.get_module(*x, *y));
    dark.map(|(x, y)| format!("M{} {}h1v1h-1z", x + 4, y + 4)).collect()
}
