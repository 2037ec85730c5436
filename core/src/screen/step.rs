//! One step as a block, with everything that belongs to it.

use uom::si::f64::Volume;
use uom::si::volume::liter;

use super::fields::{choice, entry, reading, shot};
use super::notices::{clock, missing_words, span};
use super::{Block, Button, DwellState, MixRow, StepState, Tone, View, VisitView};
use crate::action::Action;
use crate::id::ReadingId;
use crate::procedure::gate::{Applies, Missing, Passage, allowed, applies};
use crate::procedure::measure::Units;
use crate::procedure::pack::{Hazard, Mix, Phase, Quantity, Reading, Step};
use crate::science::chemistry;
use crate::visit::state::{ExcursionEnd, Mark};
use crate::words::number;

/// The most steps on one card.
const CARD_MOST: usize = 5;

/// The card of now: the first step that is not behind, and, where it is no hazard, those that go with it.
pub(super) fn card<'a>(visit: &VisitView<'a>) -> Option<(&'a Phase, Vec<&'a Step>)> {
    let open = |step: &&Step| !visit.run.is_behind(step.id.as_str()) && applies(step, visit.run) != Applies::No;
    let (phase, first) = visit.pack.steps().find(|(_, step)| open(step))?;
    if first.alone || first.dwell.is_some() {
        return Some((phase, vec![first]));
    }
    let steps = phase
        .steps
        .iter()
        .skip_while(|step| step.id != first.id)
        .filter(open)
        .take_while(|step| !step.alone && step.dwell.is_none())
        .take(CARD_MOST)
        .collect();
    Some((phase, steps))
}

/// A step with its cautions, fields, photographs, waiting time, and what is missing. On a card of several, each has its
/// own box to tick.
pub(super) fn step_block(view: &View<'_>, visit: &VisitView<'_>, phase: &Phase, step: &Step, on_card: bool) -> Block {
    let words = view.words;
    let mark = visit.run.steps.get(&step.id);
    let passage = if step.dwell.is_some() && mark.is_none() { Passage::Start } else { Passage::Done };
    let gate = allowed(visit.pack, phase, step, visit.run, passage, view.now);
    // What stands inside the step is no reason to call it gated: it is what there is to do.
    let outside: Vec<&Missing> = match &gate {
        Ok(_) => Vec::new(),
        Err(missing) => missing.iter().filter(|missing| is_outside(missing)).collect(),
    };
    let state = match mark {
        Some(Mark::Done { .. } | Mark::Happened { .. }) => StepState::Done,
        Some(Mark::Skipped { .. }) => StepState::Skipped,
        Some(Mark::Running { .. }) => StepState::Running,
        None if outside.is_empty() => StepState::Open,
        None => StepState::Gated,
    };
    let key = format!("step-{}", step.id);
    let mut blocks = Vec::new();
    if !matches!(state, StepState::Done | StepState::Skipped) {
        for hazard in cautions(visit, step) {
            let name = super::hazard_name(hazard);
            blocks.push(Block::Caution {
                sign: name.to_owned(),
                title: words.text(&format!("caution-{name}")),
                text: words.text(&format!("caution-{name}.text")),
            });
        }
        if let Some(how) = words.get(&format!("{key}.how")) {
            blocks.push(Block::Text { text: how, level: 0, tone: Tone::Plain });
        }
    }
    blocks.extend(step.asks.iter().filter_map(|id| choice(view, visit, id.as_str())));
    // What is measured in a waiting time is asked for once it runs; label values, which are preset, come before it.
    let asked = |id: &&ReadingId| {
        passage == Passage::Done || visit.pack.reading(id.as_str()).is_some_and(|reading| reading.preset.is_some())
    };
    let asked = |id: &&ReadingId| asked(id) && (visit.knows_refrigerant() || !of_circuit(visit, id));
    blocks.extend(step.readings.iter().filter(asked).filter_map(|id| reading(view, visit, id.as_str())));
    if let Some(mix) = step.mix.as_ref().and_then(|id| visit.pack.mix(id)) {
        blocks.push(mix_block(view, visit, mix));
    }
    blocks.extend(excursions(view, visit, step));
    blocks.extend(step.shots.iter().filter_map(|slot| shot(view, visit, slot.as_str())));
    blocks.extend(dwell(view, visit, step));
    if state == StepState::Gated {
        for missing in outside {
            let tone = if matches!(missing, Missing::Danger { .. }) { Tone::Danger } else { Tone::Attention };
            blocks.push(Block::Text { text: missing_words(missing, words), level: 0, tone });
        }
    }
    let several = on_card && !step.alone && step.dwell.is_none();
    let plain = !on_card && !step.alone && step.dwell.is_none();
    if (several || plain) && matches!(state, StepState::Open | StepState::Gated) {
        blocks.push(Block::Check {
            label: words.text("check-done"),
            done: false,
            press: Action::Done { step: step.id.0.clone() },
        });
    }
    Block::Step {
        id: step.id.0.clone(),
        title: words.text(&key),
        why: words.get(&format!("{key}.why")).unwrap_or_default(),
        state,
        state_text: state_text(view, state, mark),
        blocks,
    }
}

/// The step's hazards, and that of the circuit where something is read at it.
fn cautions(visit: &VisitView<'_>, step: &Step) -> Vec<Hazard> {
    let at_circuit = visit.knows_refrigerant() && step.readings.iter().any(|id| of_circuit(visit, id));
    let added = at_circuit && !step.cautions.contains(&Hazard::Refrigerant);
    step.cautions.iter().copied().chain(added.then_some(Hazard::Refrigerant)).collect()
}

fn of_circuit(visit: &VisitView<'_>, id: &ReadingId) -> bool {
    visit.pack.reading(id.as_str()).is_some_and(Reading::of_circuit)
}

fn is_outside(missing: &Missing) -> bool {
    matches!(
        missing,
        Missing::Phase { .. }
            | Missing::Step { .. }
            | Missing::Fact { .. }
            | Missing::Danger { .. }
            | Missing::Answer { .. }
    )
}

fn state_text(view: &View<'_>, state: StepState, mark: Option<&Mark>) -> String {
    let words = view.words;
    let at = |now: &crate::now::Now| clock(now.utc_ms, now.offset_min);
    match mark {
        Some(Mark::Done { at: when, late: false, .. }) => words.fill("state-done", &[("clock", &at(when))]),
        Some(Mark::Done { at: when, late: true, .. }) => words.fill("state-done-late", &[("clock", &at(when))]),
        Some(Mark::Happened { at: when, words: said }) => {
            words.fill("state-happened", &[("clock", &at(when)), ("words", said)])
        }
        Some(Mark::Skipped { reason, .. }) => words.fill("state-skipped", &[("reason", reason)]),
        Some(Mark::Running { .. }) => words.text("state-running"),
        None if state == StepState::Gated => words.text("state-gated"),
        None => words.text("state-open"),
    }
}

fn dwell(view: &View<'_>, visit: &VisitView<'_>, step: &Step) -> Option<Block> {
    let time = step.dwell?;
    let words = view.words;
    let mark = visit.run.steps.get(&step.id);
    if matches!(mark, Some(Mark::Done { .. } | Mark::Skipped { .. } | Mark::Happened { .. })) {
        return None;
    }
    let (least_ms, most_ms) = (i64::from(time.least_s) * 1000, i64::from(time.most_s) * 1000);
    let (state, least_at, most_at, text) = match mark.and_then(|mark| mark.waited(view.now)) {
        Some(gone) => {
            let left = least_ms - gone.proven_ms;
            // Counted from now by what is proven, so that a wrong clock does not move the end.
            let least_at = view.now.utc_ms + left.max(0);
            let most_at = view.now.utc_ms + (most_ms - gone.longest_ms.min(most_ms)).max(0);
            if gone.longest_ms > most_ms {
                (DwellState::Over, least_at, most_at, words.text("dwell-over"))
            } else if left > 0 {
                (DwellState::Running, least_at, most_at, words.fill("dwell-running", &[("left", &span(left))]))
            } else {
                (DwellState::Ready, least_at, most_at, words.text("dwell-ready"))
            }
        }
        None => {
            let (least, most) = (span(least_ms), span(most_ms));
            let text = words.fill("dwell-waiting", &[("least", &least), ("most", &most)]);
            (DwellState::Waiting, view.now.utc_ms + least_ms, view.now.utc_ms + most_ms, text)
        }
    };
    Some(Block::Dwell {
        title: words.text(&format!("step-{}", step.id)),
        state,
        state_text: text,
        least_at_utc_ms: least_at,
        most_at_utc_ms: most_at,
        least_clock: clock(least_at, view.now.offset_min),
        most_clock: clock(most_at, view.now.offset_min),
        least_ms,
        then: words.get(&format!("step-{}.then", step.id)).unwrap_or_default(),
    })
}

fn mix_block(view: &View<'_>, visit: &VisitView<'_>, mix: &Mix) -> Block {
    let words = view.words;
    let key = format!("mix-{}", mix.id);
    let value = |id: &str| visit.run.number(id).or_else(|| visit.pack.reading(id)?.preset.as_ref()?.parse().ok());
    let worked = mix
        .parts_water
        .as_ref()
        .and_then(|id| value(id.as_str()))
        .zip(value(mix.total.as_str()))
        .and_then(|(parts, total_l)| chemistry::dilute(1.0, parts, Volume::new::<liter>(total_l)).ok());
    let mut rows = Vec::new();
    if let Some(dilution) = worked {
        let amounts = [("water", dilution.water), ("concentrate", dilution.concentrate)];
        for (part, volume) in amounts {
            let litres = volume.get::<liter>();
            rows.push(MixRow {
                label: words.text(&format!("{key}.{part}")),
                amount: amount(litres, view.units, words.language()),
            });
        }
    }
    let order = (1..=4).map_while(|n| words.get(&format!("{key}.order-{n}"))).collect();
    let warning = words.get(&format!("{key}.gear"));
    Block::Mix { title: words.text(&key), rows, order, warning }
}

/// A volume as a measuring jug shows it: a litre and more to a tenth, or to 10 mL where a tenth would be coarse; below that
/// in steps of 10 mL, and the last 100 mL to a millilitre. Fluid ounces below a gallon. What is written here is to be
/// poured; the record holds the label's numbers.
fn amount(litres: f64, units: Units, language: &str) -> String {
    match units {
        Units::Metric if litres < 0.0995 => format!("{}\u{a0}mL", number::write(litres * 1000.0, 0, language)),
        Units::Metric if litres < 0.995 => {
            format!("{}\u{a0}mL", number::write(libm::round(litres * 100.0) * 10.0, 0, language))
        }
        Units::Metric => format!("{}\u{a0}L", number::write(litres, if litres < 1.995 { 2 } else { 1 }, language)),
        Units::Us => {
            let gallons = Quantity::Volume.to_people(litres, Units::Us);
            if gallons < 1.0 {
                let ounces = gallons * 128.0;
                format!("{}\u{a0}fl\u{a0}oz", number::write(ounces, u8::from(ounces < 9.95), language))
            } else {
                format!("{}\u{a0}gal", number::write(gallons, 2, language))
            }
        }
    }
}

fn excursions(view: &View<'_>, visit: &VisitView<'_>, step: &Step) -> Vec<Block> {
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
                blocks.push(press("excursion-is-home", Action::BringHome { excursion: id.0.clone() }, Tone::Plain));
                blocks.push(press("excursion-leave", Action::Go { to: format!("left:{id}") }, Tone::Quiet));
            }
            ExcursionEnd::Home { shows } => blocks.push(Block::Text {
                text: words.fill("excursion-home-now", &[("setting", &name), ("shows", shows)]),
                level: 0,
                tone: Tone::Good,
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_are_those_that_a_measuring_jug_shows() {
        for (litres, shown) in [
            (10.909, "10.9\u{a0}L"),
            (2.0, "2.0\u{a0}L"),
            (1.091, "1.09\u{a0}L"),
            (0.2, "200\u{a0}mL"),
            (0.1045, "100\u{a0}mL"),
            (0.0874, "87\u{a0}mL"),
            (0.9968, "1.00\u{a0}L"),
        ] {
            assert_eq!(amount(litres, Units::Metric, "en"), shown);
        }
        assert_eq!(amount(0.2, Units::Us, "en"), "6.8\u{a0}fl\u{a0}oz");
        assert_eq!(amount(2.0, Units::Us, "en"), "68\u{a0}fl\u{a0}oz");
    }
}
