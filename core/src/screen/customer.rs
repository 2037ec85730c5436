//! The customer before the seal: there or not, what they are shown, their name, their signature. Nothing of it must be.

use super::fields::entry;
use super::notices::{clock, problem_of};
use super::{Block, Button, ChoiceOption, Tone, View, VisitView};
use crate::action::Action;
use crate::evidence::Shown;
use crate::record::summary::{Sources, to_be_shown};
use crate::round::day::day_of;
use crate::visit::decide::{INK_FIELD, NAME_FIELD};

/// The box to draw in: wider than high, as a line of writing is. A shell stretches it to its width.
const BOX: (u32, u32) = (1_200, 480);

/// Is the customer there? Nobody must answer it to seal, and whoever is there need not sign.
pub(super) fn ask(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Block> {
    let words = view.words;
    let options = ["present", "absent"]
        .map(|value| ChoiceOption { value: value.to_owned(), label: words.text(&format!("customer-{value}")) });
    let chosen = visit.visit.customer_present.map(|present| if present { "present" } else { "absent" }.to_owned());
    let question = words.text("customer-question");
    let heading = Block::Text { text: words.text("customer-title"), level: 2, tone: Tone::Plain };
    let choice =
        Block::Choice { field: "customer".to_owned(), label: question, options: options.into(), chosen, problem: None };
    let mut blocks = vec![heading, choice];
    match (visit.visit.customer_present, visit.visit.customer_unsigned) {
        (Some(true), false) => blocks.extend(sign(view, visit)),
        (Some(true), true) => {
            blocks.push(plain(words.text("customer-unsigned-text")));
            let press = Action::Choose { field: "customer".to_owned(), option: "present".to_owned() };
            blocks.push(Block::Button { button: button(view, "customer-sign-after-all", press) });
        }
        (Some(false), _) => blocks.push(plain(words.text("customer-absent-text"))),
        (None, _) => {}
    }
    blocks
}

/// What is said of the customer once the record is sealed.
pub(super) fn said(view: &View<'_>, visit: &VisitView<'_>) -> Option<String> {
    let words = view.words;
    let state = visit.visit;
    match (state.customer_present?, visit.shown) {
        (true, Some(shown)) => Some(line(view, visit, shown)),
        (true, None) if state.shown.is_some() => Some(words.text("customer-withheld")),
        (true, None) if state.customer_unsigned => Some(words.text("customer-unsigned")),
        (true, None) => Some(words.text("customer-present")),
        (false, _) => Some(words.text("customer-absent")),
    }
}

/// 'Shown to Edda Marsh, signed at 14:05'.
fn line(view: &View<'_>, visit: &VisitView<'_>, shown: &Shown) -> String {
    let offset_min = visit.visit.last.as_ref().map_or(view.now.offset_min, |last| last.offset_min);
    let key = if shown.name.is_empty() { "customer-signed-unnamed" } else { "customer-signed" };
    view.words.fill(key, &[("name", &shown.name), ("clock", &clock(shown.utc_ms, offset_min))])
}

fn plain(text: String) -> Block {
    Block::Text { text, level: 0, tone: Tone::Plain }
}

fn button(view: &View<'_>, key: &str, press: Action) -> Button {
    Button { label: view.words.text(key), tone: Tone::Plain, press, hold: false }
}

/// What the customer is shown, then their name and the box to draw in.
fn sign(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Block> {
    let words = view.words;
    let mut blocks = vec![plain(words.text("customer-show"))];
    blocks.extend(to_show(view, visit));
    blocks.push(plain(words.text("customer-statement")));
    blocks.push(entry(view, visit, NAME_FIELD, &words.text("customer-name"), 1));
    blocks.push(ink(view, visit));
    blocks
}

/// What was done and found, in the words of the owner's summary.
fn to_show(view: &View<'_>, visit: &VisitView<'_>) -> Vec<Block> {
    let told = to_be_shown(&Sources {
        visit: visit.visit,
        assignment: visit.assignment,
        pack: visit.pack,
        words: view.words,
        units: view.units,
        contact: None,
        day: day_of(view.now.utc_ms, view.now.offset_min).unwrap_or_default(),
        seal: None,
        address: None,
        shown: None,
    });
    let lines = |(title, lines): (String, Vec<String>)| {
        let heading = Block::Text { text: title, level: 3, tone: Tone::Plain };
        std::iter::once(heading).chain(lines.into_iter().map(plain))
    };
    told.into_iter().flat_map(lines).collect()
}

fn ink(view: &View<'_>, visit: &VisitView<'_>) -> Block {
    let words = view.words;
    let problem = visit.problems.get(INK_FIELD);
    let problem = problem.and_then(|refusal| problem_of(refusal, words, Some(visit.pack), view.units));
    let drawn = visit.shown.and_then(Shown::ink).and_then(|ink| serde_json::to_string(&ink).ok());
    let (width, height) = BOX;
    let name_alone = button(view, "customer-sign-name", Action::Sign { drawn: false });
    let unsigned = Action::Choose { field: "customer".to_owned(), option: "unsigned".to_owned() };
    let unsigned = Button { tone: Tone::Quiet, ..button(view, "customer-unsigned", unsigned) };
    Block::Ink {
        field: INK_FIELD.to_owned(),
        label: words.text("customer-ink"),
        hint: words.text("customer-ink.hint"),
        width,
        height,
        // One that was cleared is empty, although another one stands in the record.
        text: visit.drafts.get(INK_FIELD).cloned().or(drawn).unwrap_or_default(),
        taken: visit.shown.map(|shown| line(view, visit, shown)),
        problem,
        press: button(view, "customer-sign", Action::Sign { drawn: true }),
        others: vec![name_alone, unsigned],
    }
}
