//! A controller setting at its step: noted as changed, brought home with what it shows then, or left away.

use super::fields::entry;
use super::{Block, Button, Tone, View, VisitView};
use crate::action::Action;
use crate::id::Slot;
use crate::procedure::pack::Step;
use crate::visit::decide::reads_alike;
use crate::visit::state::ExcursionEnd;

/// Is this the photograph that the pack wants before the step's change is noted?
pub(super) fn wants_first(visit: &VisitView<'_>, step: &Step, slot: &Slot) -> bool {
    let opened = visit.pack.excursions.iter().find(|excursion| step.opens.as_ref() == Some(&excursion.id));
    opened.is_some_and(|excursion| excursion.shot.as_ref() == Some(slot))
}

pub(super) fn blocks(view: &View<'_>, visit: &VisitView<'_>, step: &Step) -> Vec<Block> {
    let words = view.words;
    let mut blocks = Vec::new();
    let press = |key: &str, press: Action, tone: Tone| Block::Button {
        button: Button { label: words.text(key), tone, press, hold: false },
    };
    if let Some(id) = &step.opens {
        let name = words.text(&format!("excursion-{id}"));
        match visit.run.excursions.get(id) {
            None => {
                blocks.push(entry(
                    view,
                    visit,
                    &format!("home:{id}"),
                    &words.fill("excursion-home-label", &[("setting", &name)]),
                    1,
                ));
                blocks.push(entry(
                    view,
                    visit,
                    &format!("away:{id}"),
                    &words.fill("excursion-away-label", &[("setting", &name)]),
                    1,
                ));
                let label = words.fill("excursion-because-label", &[("setting", &name)]);
                blocks.push(entry(view, visit, &format!("because:{id}"), &label, 1));
                blocks.push(press("excursion-open", Action::OpenExcursion { excursion: id.0.clone() }, Tone::Plain));
            }
            Some(excursion) => blocks.push(Block::Text {
                text: words.fill(
                    "excursion-noted",
                    &[("setting", &name), ("home", &excursion.home), ("away", &excursion.away)],
                ),
                level: 0,
                tone: Tone::Good,
            }),
        }
    }
    if let Some(id) = &step.homes
        && let Some(excursion) = visit.run.excursions.get(id)
    {
        let name = words.text(&format!("excursion-{id}"));
        match &excursion.end {
            ExcursionEnd::Open => {
                blocks.push(Block::Text {
                    text: words.fill("excursion-bring-home", &[("setting", &name), ("home", &excursion.home)]),
                    level: 0,
                    tone: Tone::Attention,
                });
                blocks.push(entry(view, visit, &format!("back:{id}"), &words.text("excursion-back-label"), 1));
                let typed = visit.drafts.get(&format!("back:{id}")).map(|text| text.trim()).unwrap_or_default();
                if !typed.is_empty() && !reads_alike(&excursion.home, typed) {
                    let label = words.text("excursion-differs-label");
                    blocks.push(entry(view, visit, &format!("differs:{id}"), &label, 2));
                }
                blocks.push(press("excursion-is-home", Action::BringHome { excursion: id.0.clone() }, Tone::Plain));
                blocks.push(press("excursion-leave", Action::Go { to: format!("left:{id}") }, Tone::Quiet));
            }
            ExcursionEnd::Home { shows, answered } if answered.is_empty() => blocks.push(Block::Text {
                text: words.fill("excursion-home-now", &[("setting", &name), ("shows", shows)]),
                level: 0,
                tone: Tone::Good,
            }),
            ExcursionEnd::Home { shows, answered } => blocks.push(Block::Text {
                text: words.fill(
                    "excursion-home-differs",
                    &[("setting", &name), ("home", &excursion.home), ("shows", shows), ("reason", answered)],
                ),
                level: 0,
                tone: Tone::Attention,
            }),
            ExcursionEnd::Left { reason } => blocks.push(Block::Text {
                text: words.fill("excursion-left", &[("setting", &name), ("reason", reason)]),
                level: 0,
                tone: Tone::Attention,
            }),
        }
    }
    blocks
}
