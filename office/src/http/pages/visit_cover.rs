//! What the terms of cover ask for, beside what is there. The desk decides, never this page.

use coilside_core::id;
use coilside_core::round::cover::{Judgement, Verdict, told};
use coilside_core::words::Words;
use maud::{Markup, html};

use crate::app::record::Record;

/// As it was looked at before the seal.
pub(super) fn of_run(words: &Words, record: &Record<'_>, letter: &id::Letter) -> Markup {
    html! { @if let Some(judgement) = record.visit.cover.get(letter) { section.card { h3 { (words.text("cover-title")) } (lines(words, judgement)) } } }
}

/// A judgement with its reasons.
pub(super) fn lines(words: &Words, judgement: &Judgement) -> Markup {
    let tone = match judgement.verdict {
        Verdict::AsAsked => "",
        Verdict::NotAsAsked | Verdict::NotKnown => "look",
    };
    let mut lines = told(judgement, words).into_iter();
    html! {
        @if let Some(head) = lines.next() { p class=(tone) { (head) } }
        ul.gaps { @for line in lines { li { (line) } } }
    }
}
