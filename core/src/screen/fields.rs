//! Fields of a step: answers, numbers, texts, photographs.

use super::drawing::drawing;
use super::notices::{day_clock, problem_of};
use super::{Block, Button, ChoiceOption, PhotoView, Question, Tone, View, VisitView};
use crate::action::Action;
use crate::evidence::plate::offered;
use crate::procedure::pack::{Quantity, Reading};
use crate::record::photo::{code_words, flag_words};
use crate::visit::decide::Refusal;
use crate::visit::state::Photo;
use crate::words::{Words, number};

/// A question about the unit.
pub(super) fn choice(view: &View<'_>, visit: &VisitView<'_>, id: &str) -> Option<Block> {
    let words = view.words;
    let condition = visit.pack.condition(id)?;
    let options = condition
        .options
        .iter()
        .map(|option| ChoiceOption {
            value: option.id.clone(),
            label: words.text(&format!("condition-{id}-{}", option.id)),
        })
        .collect();
    Some(Block::Choice {
        field: format!("condition:{id}"),
        label: words.text(&format!("condition-{id}")),
        options,
        chosen: visit.run.conditions.get(&condition.id).cloned(),
        problem: None,
    })
}

/// A reading: typed text, value in the record, last visit's value, and what is wrong.
pub(super) fn reading(view: &View<'_>, visit: &VisitView<'_>, id: &str) -> Option<Block> {
    let words = view.words;
    let reading = visit.pack.reading(id)?;
    let field = format!("read:{id}");
    let language = words.language();
    let shown = |value: &str| reading.quantity.show(value, reading.decimals, view.units, language);
    let taken = visit.run.readings.get(&reading.id).map(|taken| taken.value.as_str());
    let draft = visit.drafts.get(&field).cloned();
    let refusal = visit.problems.get(&field);
    let problem = refusal.and_then(|refusal| problem_of(refusal, words, Some(visit.pack), view.units));
    let missed = visit.run.missed.get(&reading.id);
    let label = words.text(&format!("reading-{id}"));
    // Read from a photograph: it stands in the field, and counts once a person has pressed. What somebody typed comes first.
    let offer = (taken.is_none() && draft.is_none() && missed.is_none()).then(|| offered(visit.run, reading)).flatten();
    let text = draft
        .or_else(|| offer.clone())
        .or_else(|| taken.map(|value| typed_again(view, reading, value)))
        .unwrap_or_else(|| {
            let preset = reading.preset.as_deref().unwrap_or_default();
            typed_again(view, reading, preset)
        });
    let could_not =
        (taken.is_none() && missed.is_none() && !reading.optional && reading.preset.is_none()).then(|| Button {
            label: words.text("could-not-measure"),
            tone: Tone::Quiet,
            press: Action::Go { to: format!("why:{field}") },
            hold: false,
        });
    let (problem, question) = match refusal {
        Some(Refusal::Unusual { .. } | Refusal::OtherUnit { .. }) => {
            let other = matches!(refusal, Some(Refusal::OtherUnit { .. }));
            let confirm = Button {
                label: words.text(if other { "confirm-other-unit" } else { "confirm-unusual" }),
                tone: Tone::Plain,
                press: Action::Confirm { field: field.clone() },
                hold: false,
            };
            (None, Some(Question { text: problem.unwrap_or_default(), confirm }))
        }
        _ => (problem, offer.map(|read| offer_of(words, &field, &read))),
    };
    if reading.quantity == Quantity::Text {
        return Some(Block::TextEntry { field, label, text, lines: 1, problem, question });
    }
    let before = visit
        .assigned()
        .and_then(|unit| unit.history.iter().rfind(|past| past.reading == id))
        .map(|past| words.fill("before-value", &[("value", &shown(&past.value)), ("date", &past.date)]));
    let taken = taken
        .map(|value| words.fill("taken-value", &[("value", &shown(value))]))
        .or_else(|| missed.map(|reason| words.fill("missed-value", &[("reason", reason)])));
    Some(Block::Number {
        field,
        label,
        unit: reading.quantity.symbol(view.units).to_owned(),
        text,
        hint: words.get(&format!("reading-{id}.hint")).unwrap_or_default(),
        before,
        problem,
        question,
        taken,
        could_not,
    })
}

/// What was read from a photograph, to be taken by one press.
fn offer_of(words: &Words, field: &str, read: &str) -> Question {
    let confirm = Button {
        label: words.text("confirm-from-photo"),
        tone: Tone::Plain,
        press: Action::Enter { field: field.to_owned(), text: read.to_owned() },
        hold: false,
    };
    Question { text: words.fill("question-from-photo", &[("read", read)]), confirm }
}

/// A value of the log as a person would type it.
fn typed_again(view: &View<'_>, reading: &Reading, value: &str) -> String {
    match value.parse::<f64>() {
        Ok(number) if reading.quantity != Quantity::Text => {
            let finer = value.split_once('.').map_or(0, |(_, rest)| rest.len().min(6)) as u8;
            let decimals =
                if view.units == crate::procedure::measure::Units::Metric { finer } else { reading.decimals };
            number::write(reading.quantity.to_people(number, view.units), decimals, view.words.language())
        }
        _ => value.to_owned(),
    }
}

/// Words to type.
pub(super) fn entry(view: &View<'_>, visit: &VisitView<'_>, field: &str, label: &str, lines: u8) -> Block {
    let problem =
        visit.problems.get(field).and_then(|refusal| problem_of(refusal, view.words, Some(visit.pack), view.units));
    Block::TextEntry {
        field: field.to_owned(),
        label: label.to_owned(),
        text: visit.drafts.get(field).cloned().unwrap_or_default(),
        lines,
        problem,
        question: None,
    }
}

/// A photograph that is wanted.
pub(super) fn shot(view: &View<'_>, visit: &VisitView<'_>, slot: &str) -> Option<Block> {
    let words = view.words;
    let shot = visit.pack.shot(slot)?;
    let title = words.text(&format!("shot-{slot}"));
    let photos: Vec<PhotoView> = visit
        .run
        .photos
        .get(slot)
        .map(|photos| photos.iter().map(|photo| photo_view(view, photo, &title)).collect())
        .unwrap_or_default();
    let before = shot.before.as_ref().and_then(|before| {
        let newest = visit.run.photos.get(before)?.last()?;
        Some(photo_view(view, newest, &words.text(&format!("shot-{before}"))))
    });
    let missed = visit.run.shots_missed.get(&shot.id);
    let show = words.get(&format!("shot-{slot}.show")).unwrap_or_default();
    let show = missed.map_or(show, |reason| words.fill("missed-value", &[("reason", reason)]));
    let press = Button {
        label: words.text(if photos.is_empty() { "shot-take" } else { "shot-take-another" }),
        tone: Tone::Plain,
        press: Action::Shoot { slot: slot.to_owned() },
        hold: false,
    };
    let skip = (shot.required && photos.is_empty() && missed.is_none()).then(|| Button {
        label: words.text("shot-could-not"),
        tone: Tone::Quiet,
        press: Action::Go { to: format!("why:shot:{slot}") },
        hold: false,
    });
    let drawing = shot.view.map(|view| drawing(view, words));
    Some(Block::Shot { slot: slot.to_owned(), title, show, drawing, photos, before, press, skip })
}

/// A photograph with its time and what does not fit together.
pub(super) fn photo_view(view: &View<'_>, photo: &Photo, title: &str) -> PhotoView {
    let words = view.words;
    let when = day_clock(photo.at.utc_ms, photo.at.offset_min);
    PhotoView {
        digest: photo.digest.0.clone(),
        caption: words.fill("photo-caption", &[("title", title), ("when", &when)]),
        read: code_words(photo, words),
        flags: photo.flags.iter().map(|flag| flag_words(photo, *flag, view.units, words)).collect(),
    }
}
