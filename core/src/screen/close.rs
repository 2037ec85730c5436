//! Leaving: what is open leads to its mend, one hold seals. And the emergency card.

use super::fields::entry;
use super::notices::clock;
use super::view::{go, of_visit};
use super::{Block, Button, Screen, Tone, View, VisitView, customer};
use crate::action::Action;
use crate::record::notes::notes;
use crate::visit::decide::{Gap, gaps};
use crate::visit::fact::{Fact, Value};

/// What is left of the visit before the seal; after it, what became of the record.
pub(super) fn leaving(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text("menu-leaving"));
    let text = |text: String, tone| Block::Text { text, level: 0, tone };
    if visit.sealed {
        screen.title = words.text("sealed-title");
        screen.blocks.push(text(words.text("sealed-text"), Tone::Good));
        let key = if visit.safe { "sealed-safe" } else { "sealed-waiting" };
        screen.blocks.push(text(words.text(key), if visit.safe { Tone::Good } else { Tone::Plain }));
        if let Some(sealing) = &visit.visit.sealing {
            let key = if sealing.complete { "sealed-complete" } else { "sealed-incomplete" };
            screen.blocks.push(text(words.text(key), Tone::Plain));
        }
        screen.blocks.extend(customer::said(view, visit).map(|line| text(line, Tone::Plain)));
        screen.blocks.extend(addenda(view, visit));
        screen.blocks.push(Block::Text { text: words.text("summary-hand-over"), level: 2, tone: Tone::Plain });
        for (key, to) in [("summary-hand-over-page", "summary.html"), ("summary-hand-over-paper", "summary.pdf")] {
            screen.blocks.push(Block::Link { label: words.text(key), to: to.into() });
        }
        screen.foot.push(Button { tone: Tone::Primary, ..go(view, "back-to-round", "round") });
        return screen;
    }
    if visit.visit.sealing.is_some() {
        screen.blocks.push(text(words.text("sealing-text"), Tone::Attention));
        let label = words.text("sealing-again");
        screen.foot.push(Button { label, tone: Tone::Primary, press: Action::Seal, hold: false });
        let label = words.text("sealing-cancel");
        screen.foot.push(Button { label, tone: Tone::Quiet, press: Action::CancelSeal, hold: false });
        return screen;
    }
    if let Some(broken) = &visit.visit.broken_off {
        let line = words.fill("leaving-broken-off", &[("reason", &broken.reason)]);
        screen.blocks.push(text(line, Tone::Attention));
        for danger in &broken.dangers {
            screen.blocks.push(text(words.text(&format!("danger-{}", danger.name())), Tone::Danger));
        }
    } else if visit.run.is_unsafe() {
        screen.blocks.push(text(words.text("danger-hand-over-unsafe"), Tone::Danger));
        screen.blocks.push(text(words.text("danger-hand-over-unsafe.do"), Tone::Plain));
        screen.blocks.push(Block::Button { button: go(view, "leaving-mend", "findings") });
    }
    screen.blocks.extend(state_of_the_unit(view, visit));
    for (id, excursion) in visit.run.open_excursions() {
        let name = words.text(&format!("excursion-{id}"));
        let line = words.fill("excursion-bring-home", &[("setting", &name), ("home", &excursion.home)]);
        screen.blocks.push(text(line, Tone::Danger));
        let homing = visit.pack.steps().find(|(_, step)| step.homes.as_ref() == Some(id));
        if let Some((phase, _)) = homing {
            screen.blocks.push(Block::Button { button: go(view, "leaving-mend", &format!("phase:{}", phase.id)) });
        }
    }
    screen.blocks.extend(gap_blocks(view, visit));
    screen.blocks.extend(note_blocks(view, visit));
    screen.blocks.extend(customer::ask(view, visit));
    screen.blocks.push(Block::Button { button: go(view, "menu-used", "used") });
    let seal = Button { label: words.text("seal-hold"), tone: Tone::Primary, press: Action::Seal, hold: true };
    screen.foot.push(seal);
    if visit.visit.broken_off.is_none() {
        screen.foot.push(go(view, "back-to-now", "now"));
    }
    screen
}

/// What was added after the seal, and the way to add to it.
fn addenda(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Block> {
    let words = view.words;
    let mut blocks = vec![Block::Text { text: words.text("addenda-title"), level: 2, tone: Tone::Plain }];
    for addendum in &visit.visit.addenda {
        let time = clock(addendum.at.utc_ms, addendum.at.offset_min);
        let text = words.fill("addendum-line", &[("clock", &time), ("text", &addendum.text)]);
        blocks.push(Block::Text { text, level: 0, tone: Tone::Plain });
    }
    let button = |key: &str| Block::Button {
        button: Button { label: words.text(key), tone: Tone::Plain, press: Action::AddAddendum, hold: false },
    };
    if visit.unsigned {
        blocks.push(Block::Text { text: words.text("addendum-unsigned"), level: 0, tone: Tone::Attention });
        blocks.push(button("sealing-again"));
    }
    blocks.push(entry(view, visit, "addendum", &words.text("addendum-field"), 3));
    blocks.push(button("addendum-add"));
    blocks
}

/// Isolated or running, valves, liquid, electrics: as a table to compare with what is seen.
fn state_of_the_unit(view: &View<'_>, visit: &VisitView<'_>) -> Option<Block> {
    let words = view.words;
    let shown = [Fact::Supply, Fact::Valves, Fact::Loop, Fact::RinseCheck, Fact::Covers, Fact::Dampness, Fact::Tag];
    let rows: Vec<Vec<String>> = shown
        .iter()
        .filter_map(|fact| {
            let value = visit.run.facts.get(fact)?;
            let name = words.text(&format!("fact-{}", fact.name()));
            Some(vec![name, words.text(&format!("fact-{}-{}", fact.name(), value.word()))])
        })
        .collect();
    (!rows.is_empty()).then(|| Block::Table {
        caption: words.text("leaving-state"),
        columns: vec![words.text("column-what"), words.text("column-is")],
        rows,
    })
}

/// What the record lacks: one line each, with the way to its mend, phase by phase.
fn gap_blocks(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Block> {
    let words = view.words;
    let gaps = gaps(visit.pack, visit.run);
    let mut blocks = Vec::new();
    if gaps.is_empty() && visit.visit.broken_off.is_none() {
        return vec![Block::Text { text: words.text("leaving-complete"), level: 0, tone: Tone::Good }];
    }
    if !gaps.is_empty() {
        blocks.push(Block::Text { text: words.text("leaving-missing"), level: 2, tone: Tone::Plain });
    }
    for gap in gaps {
        let (line, step) = gap_line(view, visit, &gap);
        blocks.push(Block::Text { text: line, level: 0, tone: Tone::Attention });
        let phase = step.and_then(|step| visit.pack.step(&step)).map(|(phase, _)| phase);
        let answered = matches!(
            &gap,
            Gap::StepSkipped { .. }
                | Gap::SettingLeft { .. }
                | Gap::Shot { reason: Some(_), .. }
                | Gap::Reading { reason: Some(_), .. }
        );
        if let (Some(phase), false, None) = (phase, answered, &visit.visit.broken_off) {
            blocks.push(Block::Button { button: go(view, "leaving-mend", &format!("phase:{}", phase.id)) });
        }
    }
    blocks
}

/// What is no gap but stands in the record beside it.
fn note_blocks(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Block> {
    let notes = notes(visit.run, view.units, view.words);
    let heading = Block::Text { text: view.words.text("leaving-notes"), level: 2, tone: Tone::Plain };
    let lines = notes.into_iter().map(|text| Block::Text { text, level: 0, tone: Tone::Attention });
    let blocks: Vec<Block> = std::iter::once(heading).chain(lines).collect();
    if blocks.len() > 1 { blocks } else { Vec::new() }
}

fn gap_line(view: &View<'_>, visit: &VisitView<'_>, gap: &Gap) -> (String, Option<String>) {
    let words = view.words;
    let because = |line: String, reason: Option<&String>| match reason {
        Some(reason) => words.fill("gap-because", &[("gap", &line), ("reason", reason)]),
        None => line,
    };
    let step_with = |has: &dyn Fn(&crate::procedure::pack::Step) -> bool| {
        visit.pack.steps().find(|(_, step)| has(step)).map(|(_, step)| step.id.0.clone())
    };
    match gap {
        Gap::StepOpen { step } => {
            let title = words.text(&format!("step-{step}"));
            (words.fill("gap-step-open", &[("step", &title)]), Some(step.0.clone()))
        }
        Gap::StepSkipped { step, reason } => {
            let title = words.text(&format!("step-{step}"));
            (because(words.fill("gap-step-skipped", &[("step", &title)]), Some(reason)), Some(step.0.clone()))
        }
        Gap::Shot { slot, reason } => {
            let title = words.text(&format!("shot-{slot}"));
            let line = because(words.fill("missing-shot", &[("shot", &title)]), reason.as_ref());
            (line, step_with(&|step| step.shots.contains(slot)))
        }
        Gap::Reading { reading, reason } => {
            let title = words.text(&format!("reading-{reading}"));
            let line = because(words.fill("missing-reading", &[("reading", &title)]), reason.as_ref());
            (line, step_with(&|step| step.readings.contains(reading)))
        }
        Gap::SettingLeft { excursion, reason } => {
            let name = words.text(&format!("excursion-{excursion}"));
            (words.fill("excursion-left", &[("setting", &name), ("reason", reason)]), None)
        }
        Gap::BrokenOff { reason } => (words.fill("leaving-broken-off", &[("reason", reason)]), None),
    }
}

/// What to do at once, and the place to read aloud.
pub(super) fn emergency(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text("menu-emergency"));
    screen.notices.clear();
    let text = |text: String, level, tone| Block::Text { text, level, tone };
    screen.blocks.push(text(words.text("emergency-call"), 1, Tone::Danger));
    screen.blocks.push(text(words.text("emergency-here"), 2, Tone::Plain));
    screen.blocks.push(text(visit.assignment.site.address.clone(), 1, Tone::Plain));
    let place = match &visit.visit.place {
        Some(place) => {
            let parts = [
                ("latitude", place.latitude.as_str()),
                ("longitude", &place.longitude),
                ("accuracy", &place.accuracy_m),
            ];
            words.fill("emergency-place", &parts)
        }
        None => words.text("emergency-no-place"),
    };
    screen.blocks.push(text(place, 0, Tone::Plain));
    for kind in ["eye", "shock", "gas", "burn"] {
        screen.blocks.push(Block::Caution {
            sign: format!("emergency-{kind}"),
            title: words.text(&format!("emergency-{kind}")),
            text: words.text(&format!("emergency-{kind}.do")),
        });
    }
    if visit.run.facts.get(&Fact::Loop) == Some(&Value::Acid) {
        screen.blocks.insert(0, text(words.text("emergency-acid-in-loop"), 0, Tone::Danger));
    }
    let now = words.fill("emergency-clock", &[("clock", &clock(view.now.utc_ms, view.now.offset_min))]);
    screen.blocks.push(text(now, 0, Tone::Quiet));
    screen.foot.push(go(view, "back-to-now", "now"));
    screen
}
