//! What the readings come to: each result with its doubt and what it means, and behind it the details.

use super::view::{go, of_visit};
use super::{Bar, Block, Button, Notice, Screen, Tone, View, VisitView, sketch};
use crate::id::StepId;
use crate::record::results::{
    Kind, Known, Measured, Outcome, Results, Stage, Told, descaling_told, results, told, yearly_told,
};
use crate::visit::state::Mark;
use crate::words::Words;

/// The results of the unit that is shown.
fn of(visit: &VisitView<'_>) -> Results {
    results(visit.pack, visit.run, &visit.assigned().map(Known::of).unwrap_or_default())
}

/// Each result: a heading, its values, the last visit's, and what it means. A chart where heat and COP stand beside each
/// other before and after.
pub(super) fn blocks(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Block> {
    let words = view.words;
    let text = |text: String, level, tone| Block::Text { text, level, tone };
    let results = of(visit);
    if results.outcomes.is_empty() {
        return vec![text(words.text("result-not-yet"), 0, Tone::Quiet)];
    }
    let mut blocks = vec![text(words.text("result-title"), 2, Tone::Plain)];
    for outcome in &results.outcomes {
        let told = told(outcome, words, view.units);
        blocks.push(text(told.name.clone(), 3, Tone::Plain));
        match chart(outcome, &told, words) {
            Some(chart) => {
                blocks.push(chart);
                blocks.extend(told.last.clone().map(|last| text(last, 0, Tone::Quiet)));
            }
            None => {
                let lines: Vec<String> =
                    told.values.iter().map(|value| staged(words, value)).chain(told.last.clone()).collect();
                blocks.push(text(lines.join("\n"), 0, Tone::Plain));
            }
        }
        let tone = if told.attention { Tone::Attention } else { Tone::Plain };
        blocks.push(text(told.means, 0, tone));
    }
    if let Some(cycle) = &results.cycle {
        let plot = sketch(cycle, words, view.units);
        blocks.push(text(words.text("result-cycle"), 3, Tone::Plain));
        let said = plot.text.clone();
        blocks.push(Block::Plot { plot });
        blocks.push(text(said, 0, Tone::Plain));
        blocks.push(text(words.text("result-cycle-means"), 0, Tone::Quiet));
    }
    if let Some(year) = &results.yearly {
        blocks.push(text(words.text("result-year"), 3, Tone::Plain));
        blocks.push(text(yearly_told(year, words), 0, Tone::Plain));
    }
    if let Some(advice) = &results.descaling {
        blocks.push(text(words.text("descale-title"), 3, Tone::Plain));
        blocks.push(text(descaling_told(advice, words).join("\n"), 0, Tone::Plain));
    }
    blocks.push(text(words.text("result-doubt"), 0, Tone::Quiet));
    blocks.push(Block::Button { button: go(view, "result-to-details", "details") });
    blocks
}

/// 'As found: 1900 ± 1000 W'; what is measured once stands alone.
fn staged(words: &Words, (stage, value): &(Stage, String)) -> String {
    let key = match stage {
        Stage::Found => "column-found",
        Stage::Left => "column-left",
        Stage::Once => return value.clone(),
    };
    words.fill("result-staged", &[("stage", &words.text(key)), ("value", value)])
}

fn chart(outcome: &Outcome, told: &Told, words: &Words) -> Option<Block> {
    let charted = matches!(outcome.kind, Kind::Heat | Kind::Cop);
    let ([found, left], true) = (outcome.measured.as_slice(), charted) else { return None };
    let bar = |key: &str, measured: &Measured| Bar {
        label: words.text(key),
        value: measured.value,
        doubt: measured.expanded_u,
        text: told.at(measured.stage).unwrap_or_default().to_owned(),
    };
    let bars = vec![bar("column-found", found), bar("column-left", left)];
    Some(Block::Chart { caption: words.text("result-before-after"), unit: told.unit.to_owned(), bars })
}

/// Right after a step whose readings make results possible: what came out, and the way to all of it.
pub(super) fn notice(view: &View<'_>, visit: &VisitView<'_>) -> Option<Notice> {
    let newest = visit.run.order.last()?;
    let done = matches!(visit.run.steps.get(newest), Some(Mark::Done { .. }));
    let stage = done.then(|| stage_of(visit, newest))??;
    let results = of(visit);
    let words = view.words;
    let lines: Vec<String> = [Kind::Heat, Kind::Cop]
        .iter()
        .filter_map(|kind| results.of(*kind))
        .filter_map(|outcome| {
            let told = told(outcome, words, view.units);
            let value = told.at(stage)?.to_owned();
            // As found the numbers beside the last visit's tell what it needs; as left, what the work did.
            let more = if stage == Stage::Left { told.means } else { told.last.unwrap_or_default() };
            let parts = [("name", told.name.as_str()), ("value", &value), ("more", &more)];
            Some(words.fill("result-line", &parts).trim().to_owned())
        })
        .collect();
    let key = if stage == Stage::Left { "result-notice-left" } else { "result-notice-found" };
    let buttons = vec![go(view, "result-to-all", "readings")];
    (!lines.is_empty()).then(|| Notice { tone: Tone::Plain, title: words.text(key), lines, buttons })
}

/// Whether a step takes the readings as found or as left: those of the heat test tell.
fn stage_of(visit: &VisitView<'_>, step: &StepId) -> Option<Stage> {
    let (_, step) = visit.pack.step(step.as_str())?;
    let flow = step
        .readings
        .iter()
        .filter_map(|id| visit.pack.reading(id.as_str()))
        .find(|reading| reading.role.as_deref() == Some("flow"))?;
    Some(if flow.as_found.is_some() { Stage::Left } else { Stage::Found })
}

/// What stands behind the results, for whoever checks them.
pub(super) fn details(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text("details-title"));
    let results = of(visit);
    let columns = |keys: &[&str]| keys.iter().map(|key| words.text(key)).collect();
    let row = |outcome: &Outcome| {
        let told = told(outcome, words, view.units);
        (!told.verdict.is_empty()).then(|| vec![told.name, told.difference.unwrap_or_default(), told.verdict])
    };
    let text = |key: &str, tone| Block::Text { text: words.text(key), level: 0, tone };
    screen.blocks.push(Block::Table {
        caption: words.text("details-results"),
        columns: columns(&["details-result", "details-difference", "details-verdict"]),
        rows: results.outcomes.iter().filter_map(row).collect(),
    });
    let rows = visit.pack.readings.iter().filter(|reading| reading.role.is_some()).filter_map(|reading| {
        let taken = visit.run.readings.get(&reading.id).filter(|taken| !taken.error_limit.is_empty())?;
        let limit = reading.quantity.show_difference(&taken.error_limit, view.units, words.language());
        let name = words.text(&format!("reading-{}", reading.id));
        let kind = || words.text(&format!("instrument-{}", taken.instrument));
        let instrument = taken.own.as_ref().map_or_else(kind, |own| format!("{} ({})", own.name, own.serial));
        Some(vec![name, format!("±\u{a0}{limit}"), instrument])
    });
    screen.blocks.push(Block::Table {
        caption: words.text("details-readings"),
        columns: columns(&["column-reading", "details-limits", "details-instrument"]),
        rows: rows.collect(),
    });
    screen.blocks.extend(
        ["details-doubt", "details-shared", "details-conditions", "details-rules"].map(|key| text(key, Tone::Quiet)),
    );
    screen.foot.push(Button { tone: Tone::Primary, ..go(view, "details-back", "readings") });
    screen
}
