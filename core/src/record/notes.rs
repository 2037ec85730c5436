//! What stands in the record beside its gaps: a label that contradicts itself, an instrument whose calibration lapsed, a
//! setting that was brought back to something else, a photograph that shows little or not this place. None of it makes the record incomplete.

use std::collections::BTreeSet;

use super::photo::{flag_words, is_noted};
use crate::procedure::measure::{Units, jug, scales};
use crate::procedure::mixing::{Concentrate, MixNote};
use crate::visit::state::{ExcursionEnd, Run};
use crate::words::Words;

/// The notes of a unit's run, a line each.
#[must_use]
pub fn notes(run: &Run, units: Units, words: &Words) -> Vec<String> {
    let lapsed: BTreeSet<(&str, &str, &str)> = run
        .readings
        .values()
        .filter_map(|taken| taken.own.as_ref())
        .filter(|own| own.lapsed)
        .map(|own| (own.serial.as_str(), own.name.as_str(), own.calibrated_until.as_str()))
        .collect();
    let lapsed = lapsed.into_iter().map(|(serial, name, until)| {
        words.fill("note-lapsed", &[("name", name), ("serial", serial), ("until", until)])
    });
    let mixes = run.mixes.iter().flat_map(|(id, mixed)| {
        let name = words.text(&format!("mix-{id}"));
        let took = Concentrate::of(&mixed.concentrate, &mixed.measure).unwrap_or(Concentrate::Litres(0.0));
        mixed.notes.iter().map(move |note| {
            let note = mix_note(note, took, units, words);
            words.fill("note-mix", &[("mix", &name), ("note", &note)])
        })
    });
    let settings = run.excursions.iter().filter_map(|(id, excursion)| {
        let ExcursionEnd::Home { shows, answered } = &excursion.end else { return None };
        let name = words.text(&format!("excursion-{id}"));
        let parts =
            [("setting", name.as_str()), ("home", &excursion.home), ("shows", shows), ("reason", answered.as_str())];
        (!answered.is_empty()).then(|| words.fill("excursion-home-differs", &parts))
    });
    let photos = run.photos.iter().flat_map(|(slot, photos)| {
        let title = if slot.as_str().is_empty() { "shot-unplaced".to_owned() } else { format!("shot-{slot}") };
        let title = words.text(&title);
        // The newest one of a slot counts: a poor one was taken again.
        let newest = photos.last();
        newest.into_iter().flat_map(|photo| photo.flags.iter().map(move |flag| (photo, *flag))).filter_map(
            move |(photo, flag)| {
                let said = flag_words(photo, flag, units, words);
                is_noted(flag).then(|| words.fill("note-photo", &[("title", &title), ("flag", &said)]))
            },
        )
    });
    lapsed.chain(mixes).chain(settings).chain(photos).collect()
}

/// So much concentrate, as a jug or scales show it.
#[must_use]
pub fn amount(concentrate: Concentrate, units: Units, words: &Words) -> String {
    match concentrate {
        Concentrate::Litres(litres) => jug(litres, units, words.language()),
        Concentrate::Grams(grams) => scales(grams, units, words.language()),
    }
}

/// What does not fit together about a mix, in words. `concentrate` is what the mix takes.
#[must_use]
pub fn mix_note(note: &MixNote, concentrate: Concentrate, units: Units, words: &Words) -> String {
    let litres = |text: &str| jug(text.parse().unwrap_or_default(), units, words.language());
    match note {
        MixNote::LabelContradicts { by, other, asks } => {
            let said = |name: &str| words.text(&format!("mix-said-{name}"));
            let asks = Concentrate::of(asks, concentrate.code()).map(|asks| amount(asks, units, words));
            let parts = [
                ("by", said(by.name())),
                ("amount", amount(concentrate, units, words)),
                ("other", said(other.name())),
                ("asks", asks.unwrap_or_default()),
            ];
            let parts: Vec<(&str, &str)> = parts.iter().map(|(name, text)| (*name, text.as_str())).collect();
            words.fill("mix-label-contradicts", &parts)
        }
        MixNote::LessThanLoop { loop_l } => words.fill("mix-less-than-loop", &[("loop", &litres(loop_l))]),
        MixNote::MoreThanVessel { vessel_l } => words.fill("mix-more-than-vessel", &[("vessel", &litres(vessel_l))]),
    }
}
