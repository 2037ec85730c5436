//! How long a visit takes: from past visits with the same pack, else from the pack's own minutes and waiting times.

use std::collections::BTreeMap;

use super::load::{Need, steps};
use crate::procedure::pack::Pack;
use crate::science::trend::quantile;

/// From so many past visits on they tell more than the pack's minutes: common practice, no source.
const PAST_LEAST: usize = 3;

/// A forecast of the time on site.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Forecast {
    /// What to plan with, minutes.
    pub minutes: u32,
    /// The lower quarter of past visits needed less; or what is sure by the steps.
    pub least: u32,
    /// The upper quarter needed more; or all steps that may come.
    pub most: u32,
    /// From what.
    pub basis: Basis,
}

/// From what a forecast was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// So many past visits: their median and quartiles.
    Past(usize),
    /// The pack's minutes and least waiting times. What may come is planned for.
    Steps,
}

/// The forecast for one unit.
#[must_use]
pub fn forecast(pack: &Pack, known: &BTreeMap<String, String>, past_minutes: &[u32]) -> Forecast {
    if past_minutes.len() >= PAST_LEAST {
        let mut sorted: Vec<f64> = past_minutes.iter().map(|minutes| f64::from(*minutes)).collect();
        sorted.sort_by(f64::total_cmp);
        // Minutes are small and above zero: nothing is cut but the part of one.
        let at = |share: f64| libm::round(quantile(&sorted, share).unwrap_or_default()) as u32;
        let basis = Basis::Past(past_minutes.len());
        return Forecast { minutes: at(0.5), least: at(0.25), most: at(0.75), basis };
    }
    let (mut sure, mut maybe) = (0_u32, 0_u32);
    for (step, need) in steps(pack, known) {
        let dwell = step.dwell.map_or(0, |dwell| dwell.least_s.div_ceil(60));
        let minutes = u32::from(step.minutes).saturating_add(dwell);
        let sum = if need == Need::Sure { &mut sure } else { &mut maybe };
        *sum = sum.saturating_add(minutes);
    }
    let all = sure.saturating_add(maybe);
    Forecast { minutes: all, least: sure, most: all, basis: Basis::Steps }
}

/// The forecast for the units of one visit, one after the other.
#[must_use]
pub fn together(forecasts: impl IntoIterator<Item = Forecast>) -> Option<Forecast> {
    forecasts.into_iter().reduce(|one, other| Forecast {
        minutes: one.minutes.saturating_add(other.minutes),
        least: one.least.saturating_add(other.least),
        most: one.most.saturating_add(other.most),
        basis: match (one.basis, other.basis) {
            (Basis::Past(one), Basis::Past(other)) => Basis::Past(one.min(other)),
            _ => Basis::Steps,
        },
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::procedure::library::built_in;

    #[test]
    fn past_visits_give_the_median_and_their_quarters() {
        let pack = &built_in().unwrap()[0].pack;
        // numpy.percentile([95, 100, 110, 140, 200], [25, 50, 75]) gives 100, 110, 140.
        let told = forecast(pack, &BTreeMap::new(), &[200, 95, 140, 100, 110]);
        assert_eq!(told, Forecast { minutes: 110, least: 100, most: 140, basis: Basis::Past(5) });
        // numpy.percentile([90, 120, 121, 160], [25, 50, 75]) gives 112.5, 120.5, 130.75; a half is rounded away from zero.
        let told = forecast(pack, &BTreeMap::new(), &[160, 90, 121, 120]);
        assert_eq!((told.least, told.minutes, told.most), (113, 121, 131));
    }

    #[test]
    fn with_two_past_visits_the_steps_tell_and_what_is_not_known_is_planned_for() {
        let pack = &built_in().unwrap()[0].pack;
        let unknown = forecast(pack, &BTreeMap::new(), &[90, 95]);
        assert_eq!(unknown.basis, Basis::Steps);
        assert_eq!((unknown.minutes, unknown.least < unknown.most), (unknown.most, true));
        let no_acid = [("exchanger".to_owned(), "no-acid".to_owned())].into();
        assert!(forecast(pack, &no_acid, &[]).minutes < unknown.minutes);
    }
}
