//! What was used: worked out, and corrected by hand where it was otherwise.

use super::notices::problem_of;
use super::view::{go, of_visit};
use super::{Block, Button, Screen, Tone, View, VisitView};
use crate::round::amount::Measure;
use crate::round::used::{TIME, Used, of_run, time};
use crate::words::number;

/// Chemicals, parts and time of the unit that is shown, each with its field; after the seal a table.
pub(super) fn show(view: &View<'_>, visit: &VisitView<'_>) -> Screen {
    let words = view.words;
    let mut screen = of_visit(view, visit, words.text("used-title"));
    let text = |key: &str, tone| Block::Text { text: words.text(key), level: 0, tone };
    let mut all = of_run(visit.visit, visit.unit, visit.run, visit.pack);
    if all.is_empty() {
        screen.blocks.push(text("used-nothing", Tone::Quiet));
    }
    all.push(time(visit.visit));
    if visit.sealed || visit.visit.sealing.is_some() {
        screen.blocks.insert(0, text("used-sealed", Tone::Quiet));
        screen.blocks.push(Block::Table {
            caption: words.text("used-title"),
            columns: vec![words.text("used-what"), words.text("used-amount")],
            rows: all.iter().map(|used| vec![name(view, used), shown(view, used.measure, used.amount())]).collect(),
        });
        screen.foot.push(Button { tone: Tone::Primary, ..go(view, "back", "leaving") });
        return screen;
    }
    screen.blocks.insert(0, text("used-text", Tone::Plain));
    screen.blocks.extend(all.iter().map(|used| field(view, visit, used)));
    screen.foot.push(Button { tone: Tone::Primary, ..go(view, "now-to-leaving", "leaving") });
    screen.foot.push(go(view, "back-to-now", "now"));
    screen
}

fn name(view: &View<'_>, used: &Used) -> String {
    view.words.text(if used.item == TIME { "used-time" } else { &used.item })
}

fn shown(view: &View<'_>, measure: Measure, amount: f64) -> String {
    measure.show(amount, view.units, view.words.language())
}

fn field(view: &View<'_>, visit: &VisitView<'_>, used: &Used) -> Block {
    let (words, measure) = (view.words, used.measure);
    let field = format!("used:{}", used.item);
    let typed = || {
        let seen = measure.to_people(used.amount(), view.units);
        let whole = matches!(measure, Measure::Piece | Measure::Minute) || seen >= 9.95;
        number::write(seen, u8::from(!whole), words.language())
    };
    let problem = visit.problems.get(&field);
    Block::Number {
        label: name(view, used),
        unit: measure.symbol(view.units).to_owned(),
        text: visit.drafts.get(&field).cloned().unwrap_or_else(typed),
        hint: words.fill("used-worked", &[("amount", &shown(view, measure, used.worked))]),
        before: None,
        problem: problem.and_then(|refusal| problem_of(refusal, words, Some(visit.pack), view.units)),
        question: None,
        taken: used.corrected.map(|amount| words.fill("used-corrected", &[("amount", &shown(view, measure, amount))])),
        could_not: None,
        field,
    }
}
