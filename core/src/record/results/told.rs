//! Results in words: the name, each value with its doubt, the last visit's, and one sentence of what it means.

use super::{Change, Kind, Last, Measured, Outcome, Stage};
use crate::procedure::measure::Units;
use crate::procedure::pack::Quantity;
use crate::science::verdict::Verdict;
use crate::words::{Words, number};

/// A result as people read it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// Of what.
    pub name: String,
    /// The unit, empty where it has none.
    pub unit: &'static str,
    /// Each value with doubt and unit.
    pub values: Vec<(Stage, String)>,
    /// The last visit's value with its day.
    pub last: Option<String>,
    /// What it means, in one or two short sentences.
    pub means: String,
    /// It wants a look.
    pub attention: bool,
    /// As left less as found, with the doubt of the difference.
    pub difference: Option<String>,
    /// What a standard calls it: passed, failed, too close to call; more, less, no difference. Empty where there is
    /// nothing to judge by.
    pub verdict: String,
}

impl Told {
    /// The value of a stage in words.
    #[must_use]
    pub fn at(&self, stage: Stage) -> Option<&str> {
        self.values.iter().find(|(at, _)| *at == stage).map(|(_, text)| text.as_str())
    }
}

/// A result in words.
#[must_use]
pub fn told(outcome: &Outcome, words: &Words, units: Units) -> Told {
    let (kind, key) = (outcome.kind, format!("result-{}", outcome.kind.name()));
    let (attribute, attention) = meaning(outcome);
    let beside = outcome.beside.map(|value| plain(kind, value, words, units)).unwrap_or_default();
    Told {
        name: words.text(&key),
        unit: unit(kind, units),
        values: outcome.measured.iter().map(|value| (value.stage, doubted(kind, value, words, units))).collect(),
        last: outcome.last.as_ref().map(|last| last_time(kind, last, words, units)),
        means: words.fill(&format!("{key}.{attribute}"), &[("beside", &beside)]),
        attention,
        difference: outcome.change.map(|changed| {
            let measured = Measured { stage: Stage::Left, value: changed.value, expanded_u: changed.expanded_u };
            let text = doubted(kind, &measured, words, units);
            if changed.value > 0.0 { format!("+{text}") } else { text }
        }),
        verdict: verdict_key(outcome).map(|key| words.text(key)).unwrap_or_default(),
    }
}

fn verdict_key(outcome: &Outcome) -> Option<&'static str> {
    match (outcome.verdict, outcome.change.map(|changed| changed.change)) {
        (Some(Verdict::Pass), _) => Some("verdict-pass"),
        (Some(Verdict::Fail), _) => Some("verdict-fail"),
        (Some(Verdict::TooCloseToCall), _) => Some("verdict-close"),
        (None, Some(Change::More)) => Some("verdict-more"),
        (None, Some(Change::Less)) => Some("verdict-less"),
        (None, Some(Change::None)) => Some("verdict-none"),
        (None, None) => None,
    }
}

/// Which of a result's sentences holds, and whether it wants a look.
fn meaning(outcome: &Outcome) -> (&'static str, bool) {
    let of_machine = matches!(outcome.kind, Kind::Heat | Kind::Cop);
    match (outcome.verdict, outcome.change.map(|changed| changed.change)) {
        (Some(Verdict::Pass), _) => ("pass", false),
        (Some(Verdict::Fail), _) => ("fail", true),
        (Some(Verdict::TooCloseToCall), _) => ("close", true),
        (None, None) if outcome.measured.len() > 1 => ("apart", false),
        (None, None) => ("alone", false),
        (None, Some(Change::None)) => ("none", false),
        (None, Some(Change::More)) => ("more", false),
        (None, Some(Change::Less)) => ("less", of_machine),
    }
}

fn last_time(kind: Kind, last: &Last, words: &Words, units: Units) -> String {
    let key = if last.stage == Stage::Left { "result-last-left" } else { "result-last-found" };
    words.fill(key, &[("value", &plain(kind, last.value, words, units)), ("date", &last.date.replace('-', "\u{2011}"))])
}

const fn unit(kind: Kind, units: Units) -> &'static str {
    match (kind, units) {
        (Kind::Heat, _) => Quantity::Power.symbol(units),
        (kind, Units::Metric) if is_difference(kind) => "K",
        (kind, Units::Us) if is_difference(kind) => "°F",
        (Kind::GasCoolerPressure, _) => Quantity::Pressure.symbol(units),
        (Kind::Insulation | Kind::InsulationAt40, _) => Quantity::Insulation.symbol(units),
        (Kind::Capacitor, _) => Quantity::Capacitance.symbol(units),
        _ => "",
    }
}

/// A difference of temperatures.
const fn is_difference(kind: Kind) -> bool {
    matches!(kind, Kind::WaterRise | Kind::AirDrop | Kind::Superheat | Kind::Subcooling | Kind::GasCoolerApproach)
}

/// A difference of temperatures in the units that people see; the rest is the same in both.
fn to_people(kind: Kind, value: f64, units: Units) -> f64 {
    match (kind, units) {
        (kind, Units::Us) if is_difference(kind) => value * 1.8,
        (Kind::GasCoolerPressure, _) => Quantity::Pressure.to_people(value, units),
        _ => value,
    }
}

/// More decimals than these say nothing, however small the doubt.
const fn decimals_most(kind: Kind) -> u8 {
    match kind {
        Kind::Heat | Kind::GasCoolerPressure => 0,
        Kind::Cop | Kind::Scaling => 2,
        _ => 1,
    }
}

fn doubted(kind: Kind, measured: &Measured, words: &Words, units: Units) -> String {
    let (value, doubt) = (to_people(kind, measured.value, units), to_people(kind, measured.expanded_u, units));
    let place = place(doubt, decimals_most(kind));
    let shown = |value| number::write(place.round(value), place.decimals, words.language());
    with_unit(words.fill("result-value", &[("value", &shown(value)), ("doubt", &shown(doubt))]), kind, units)
}

/// A value without its doubt: a limit, a label, or the last visit's.
fn plain(kind: Kind, value: f64, words: &Words, units: Units) -> String {
    let value = to_people(kind, value, units);
    let decimals = if kind == Kind::Cop { 1 } else { decimals_most(kind) };
    with_unit(number::write(value, decimals, words.language()), kind, units)
}

fn with_unit(number: String, kind: Kind, units: Units) -> String {
    match unit(kind, units) {
        "" => number,
        unit => format!("{number}\u{a0}{unit}"),
    }
}

/// The last digit that is worth writing.
pub(super) struct Place {
    step: f64,
    pub(super) decimals: u8,
}

impl Place {
    pub(super) fn round(&self, value: f64) -> f64 {
        libm::round(value / self.step) * self.step
    }
}

/// Two digits of the doubt (JCGM 100:2008, 7.2.6), but not more decimals than are of use.
pub(super) fn place(doubt: f64, decimals_most: u8) -> Place {
    let mut place = Place { step: 1.0, decimals: 0 };
    while doubt >= 99.5 * place.step && place.step < 1e6 {
        place.step *= 10.0;
    }
    while doubt < 9.95 * place.step && place.step <= 1.0 && place.decimals < decimals_most {
        place.step /= 10.0;
        place.decimals += 1;
    }
    place
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(kind: Kind, value: f64, expanded_u: f64, language: &str, units: Units) -> String {
        let words = Words::new(language, None).unwrap();
        doubted(kind, &Measured { stage: Stage::Once, value, expanded_u }, &words, units)
    }

    /// JCGM 100:2008, 7.2.6: two digits of the doubt do, and the value ends where they end.
    #[test]
    fn a_result_ends_where_two_digits_of_its_doubt_end() {
        let metric = |kind, value, doubt| written(kind, value, doubt, "en", Units::Metric);
        assert_eq!(metric(Kind::Heat, 1861.4, 1032.0), "1900\u{a0}±\u{a0}1000\u{a0}W");
        assert_eq!(metric(Kind::Heat, 1861.4, 97.3), "1861\u{a0}±\u{a0}97\u{a0}W");
        assert_eq!(metric(Kind::Heat, 1861.4, 99.7), "1860\u{a0}±\u{a0}100\u{a0}W");
        assert_eq!(metric(Kind::Cop, 1.899, 1.06), "1.9\u{a0}±\u{a0}1.1");
        assert_eq!(metric(Kind::Cop, 1.899, 0.052), "1.90\u{a0}±\u{a0}0.05");
        assert_eq!(metric(Kind::Scaling, -0.04, 0.36), "\u{2212}0.04\u{a0}±\u{a0}0.36");
    }

    #[test]
    fn a_rise_is_told_in_the_units_that_people_see_without_the_offset_of_their_zero() {
        assert_eq!(written(Kind::WaterRise, 5.0, 1.6, "es", Units::Us), "9,0\u{a0}±\u{a0}2,9\u{a0}°F");
        assert_eq!(written(Kind::WaterRise, 5.0, 1.6, "es", Units::Metric), "5,0\u{a0}±\u{a0}1,6\u{a0}K");
    }
}
