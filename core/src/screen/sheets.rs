//! The sheets of a visit: photographs, readings, findings.

use super::fields::{entry, photo_view, shot};
use super::results;
use super::view::{go, of_visit, tone_of};
use super::{Block, Button, ChoiceOption, Screen, Tone, View, VisitView};
use crate::action::Action;
use crate::procedure::gate::{Applies, applies};
use crate::record::names::name_of;
use crate::visit::event::Severity;

/// All photographs by slot, what is missing, and one tap for anything else.
pub(super) fn photographs(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text("menu-photographs"));
    let wanted = visit
        .pack
        .steps()
        .filter(|(_, step)| applies(step, visit.run) != Applies::No)
        .flat_map(|(_, step)| &step.shots);
    screen.blocks.extend(wanted.filter_map(|slot| shot(view, visit, slot.as_str())));
    let title = words.text("shot-unplaced");
    let unplaced = visit.run.photos.get("").map(Vec::as_slice).unwrap_or_default();
    screen.blocks.push(Block::Shot {
        slot: String::new(),
        show: words.text("shot-unplaced.show"),
        photos: unplaced.iter().map(|photo| photo_view(view, photo, &title)).collect(),
        title,
        drawing: None,
        before: None,
        press: Button {
            label: words.text("shot-take"),
            tone: Tone::Plain,
            press: Action::Shoot { slot: String::new() },
            hold: false,
        },
        skip: None,
    });
    screen.foot.push(go(view, "back-to-now", "now"));
    screen
}

/// What the readings come to; then the readings as found and as left, and the others.
pub(super) fn readings(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text("menu-readings"));
    let shown = |id: &str| {
        let reading = visit.pack.reading(id);
        let taken = visit.run.readings.get(id);
        reading.zip(taken).map_or_else(
            || words.text("not-yet"),
            |(reading, taken)| reading.quantity.show(&taken.value, reading.decimals, view.units, words.language()),
        )
    };
    let mut pairs = Vec::new();
    let mut others = Vec::new();
    for reading in &visit.pack.readings {
        let id = reading.id.as_str();
        if reading.of_circuit() && !visit.knows_refrigerant() && !visit.run.readings.contains_key(id) {
            continue;
        }
        let label = name_of(words, visit.pack, reading);
        if let Some(found) = &reading.as_found {
            pairs.push(vec![label, shown(found.as_str()), shown(id)]);
        } else if visit.run.readings.contains_key(id)
            && !visit.pack.readings.iter().any(|other| other.as_found.as_ref() == Some(&reading.id))
        {
            others.push(vec![label, shown(id)]);
        }
    }
    screen.blocks.extend(results::blocks(view, visit));
    let columns = |keys: &[&str]| keys.iter().map(|key| words.text(key)).collect();
    screen.blocks.push(Block::Table {
        caption: words.text("readings-before-after"),
        columns: columns(&["column-reading", "column-found", "column-left"]),
        rows: pairs,
    });
    if !others.is_empty() {
        screen.blocks.push(Block::Table {
            caption: words.text("readings-others"),
            columns: columns(&["column-reading", "column-value"]),
            rows: others,
        });
    }
    screen.foot.push(go(view, "back-to-now", "now"));
    screen
}

/// Findings so far, and a new one.
pub(super) fn findings(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text("menu-findings"));
    for (at, finding) in visit.run.findings.iter().enumerate() {
        let tone = tone_of(finding.severity);
        let told = finding.since.as_ref().map_or_else(
            || finding.text.clone(),
            |date| words.fill("finding-since", &[("text", &finding.text), ("date", date)]),
        );
        let text = format!("{}: {told}", words.text(finding.severity.key()));
        let Some(mended) = &finding.mended else {
            screen.blocks.push(Block::Text { text, level: 0, tone });
            if finding.severity > Severity::Note && !visit.sealed {
                let field = format!("mended:{at}");
                screen.blocks.push(entry(view, visit, &field, &words.text("finding-mended-label"), 1));
                let (label, press) = (words.text("finding-mend"), Action::MendFinding { finding: at.to_string() });
                let button = Button { label, tone: Tone::Plain, press, hold: false };
                screen.blocks.push(Block::Button { button });
            }
            continue;
        };
        screen.blocks.push(Block::Text { text, level: 0, tone: Tone::Plain });
        let line = words.fill("finding-mended", &[("words", &mended.words)]);
        screen.blocks.push(Block::Text { text: line, level: 0, tone: Tone::Good });
    }
    screen.blocks.push(Block::Text { text: words.text("finding-new"), level: 2, tone: Tone::Plain });
    screen.blocks.push(entry(view, visit, "finding", &words.text("finding-label"), 3));
    let options = ["note", "soon", "unsafe"]
        .iter()
        .map(|value| ChoiceOption { value: (*value).to_owned(), label: words.text(&format!("severity-{value}")) })
        .collect();
    screen.blocks.push(Block::Choice {
        field: "severity".into(),
        label: words.text("severity-label"),
        options,
        chosen: visit.drafts.get("severity").cloned(),
        problem: visit.problems.get("severity").map(|_| words.text("problem-choose")),
    });
    let add = Button { label: words.text("finding-add"), tone: Tone::Primary, press: Action::AddFinding, hold: false };
    screen.foot.push(add);
    screen.foot.push(go(view, "back-to-now", "now"));
    screen
}
