//! The work itself: what to do now, and the phases to look over and back into.

use super::results;
use super::step::{card, step_block};
use super::view::{go, of_visit};
use super::{Block, Button, Screen, StepState, Tone, View, VisitView};
use crate::action::Action;
use crate::procedure::gate::{Applies, Passage, allowed, applies, phase_is_behind};
use crate::procedure::pack::{Phase, Step};
use crate::visit::state::Mark;

/// What to do now: one card, hazards one by one.
pub(super) fn now(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let Some((phase, steps)) = card(visit) else {
        let mut screen = of_visit(view, visit, words.text("now-all-done"));
        screen.blocks.push(Block::Text { text: words.text("now-all-done-text"), level: 0, tone: Tone::Good });
        screen.foot.push(Button { tone: Tone::Primary, ..go(view, "now-to-leaving", "leaving") });
        return screen;
    };
    let mut screen = of_visit(view, visit, words.text(&format!("phase-{}", phase.id)));
    screen.notices.extend(results::notice(view, visit));
    for step in &steps {
        screen.blocks.push(step_block(view, visit, phase, step, true));
    }
    if let Some(first) = steps.first() {
        screen.foot = foot(view, visit, phase, first);
    }
    if let Some(last) = visit.run.order.last()
        && matches!(visit.run.steps.get(last), Some(Mark::Done { .. } | Mark::Skipped { .. }))
    {
        let step = words.text(&format!("step-{last}"));
        screen.foot.push(Button {
            label: words.fill("undo", &[("step", &step)]),
            tone: Tone::Quiet,
            press: Action::Undo { step: last.0.clone() },
            hold: false,
        });
    }
    screen
}

/// The buttons of the step that is next: the main one large, in the lower half.
fn foot(view: &View<'_>, visit: &VisitView<'_>, phase: &Phase, step: &Step) -> Vec<Button> {
    let words = view.words;
    let running = matches!(visit.run.steps.get(&step.id), Some(Mark::Running { .. }));
    let id = step.id.0.clone();
    let (key, press, passage) = if step.dwell.is_some() && !running {
        ("foot-start", Action::Start { step: id.clone() }, Passage::Start)
    } else {
        ("foot-done", Action::Done { step: id.clone() }, Passage::Done)
    };
    let open = allowed(visit.pack, phase, step, visit.run, passage, view.now).is_ok();
    let title = words.text(&format!("step-{}", step.id));
    let tone = if open { Tone::Primary } else { Tone::Plain };
    let mut foot = vec![Button { label: words.fill(key, &[("step", &title)]), tone, press, hold: false }];
    if step.may_skip {
        let to = format!("skip:{id}");
        foot.push(Button { label: words.text("foot-skip"), tone: Tone::Quiet, press: Action::Go { to }, hold: false });
    }
    foot
}

/// All phases with how far each is.
pub(super) fn phases(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text("menu-phases"));
    let now = card(visit).map(|(phase, _)| phase.id.clone());
    for phase in &visit.pack.phases {
        let steps: Vec<_> = phase.steps.iter().filter(|step| applies(step, visit.run) != Applies::No).collect();
        let done = steps.iter().filter(|step| visit.run.is_behind(step.id.as_str())).count();
        let title = words.text(&format!("phase-{}", phase.id));
        let far = words.fill("progress", &[("done", &done.to_string()), ("total", &steps.len().to_string())]);
        let tone = if phase_is_behind(phase, visit.run) {
            Tone::Good
        } else if now.as_ref() == Some(&phase.id) {
            Tone::Primary
        } else {
            Tone::Plain
        };
        screen.blocks.push(Block::Button {
            button: Button {
                label: format!("{title} · {far}"),
                tone,
                press: Action::Go { to: format!("phase:{}", phase.id) },
                hold: false,
            },
        });
    }
    screen.foot.push(go(view, "back-to-now", "now"));
    screen
}

/// One phase with all of its steps, to look over, correct, and do out of the offered order.
pub(super) fn phase(view: &View<'_>, visit: &VisitView<'_>, id: &str) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text(&format!("phase-{id}")));
    for phase in visit.pack.phases.iter().filter(|phase| phase.id.as_str() == id) {
        for step in phase.steps.iter().filter(|step| applies(step, visit.run) != Applies::No) {
            let mut block = step_block(view, visit, phase, step, false);
            if let Block::Step { blocks, state, .. } = &mut block
                && matches!(state, StepState::Open | StepState::Gated | StepState::Running)
                && (step.dwell.is_some() || step.alone)
            {
                blocks.extend(foot(view, visit, phase, step).into_iter().map(|button| Block::Button { button }));
            }
            screen.blocks.push(block);
        }
    }
    screen.foot.push(go(view, "back-to-now", "now"));
    screen
}
