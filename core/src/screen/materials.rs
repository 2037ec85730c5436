//! What the table of materials says, at the step that calls an acid allowed.

use super::{Block, Tone, View, VisitView};
use crate::procedure::pack::{Step, When};
use crate::procedure::proof::{AcidOnMetal, acid_on_metal};
use crate::science::materials::{Reason, Suits};
use crate::visit::fact::{Fact, Value};
use crate::words::Words;

/// The verdict on acid and metal, with its reason; none at other steps, or where the pack does not ask for both.
pub(super) fn verdict(view: &View<'_>, visit: &VisitView<'_>, step: &Step) -> Option<Block> {
    let claims = step.sets.iter().any(|holds| (holds.fact, holds.value) == (Fact::ExchangerAcid, Value::Allowed));
    let found = acid_on_metal(visit.pack, visit.run).filter(|_| claims)?;
    let (text, tone) = match &found {
        AcidOnMetal::Unknown => (view.words.text("missing-acid-unknown"), Tone::Danger),
        AcidOnMetal::Known { acid, metal, suits, reason } => {
            let tone = match suits {
                Suits::Allowed => Tone::Good,
                Suits::WithLimits => Tone::Attention,
                Suits::Forbidden => Tone::Danger,
            };
            (told(view.words, *suits, acid, metal, *reason), tone)
        }
    };
    Some(Block::Text { text, level: 0, tone })
}

/// A verdict in words.
pub(super) fn told(words: &Words, suits: Suits, acid: &When, metal: &When, reason: Reason) -> String {
    let answer = |of: &When| words.text(&format!("condition-{}-{}", of.condition, of.option));
    let reason = words.text(&format!("acid-reason-{}", reason.name()));
    let parts = [("acid", answer(acid)), ("metal", answer(metal)), ("reason", reason)];
    let parts: Vec<(&str, &str)> = parts.iter().map(|(name, text)| (*name, text.as_str())).collect();
    words.fill(&format!("acid-{}", suits.name()), &parts)
}
