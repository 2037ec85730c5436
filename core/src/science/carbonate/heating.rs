//! What heating does to water that can neither lose gas nor drop lime.
//!
//! ```text
//! carbon(pH, alkalinity, hot) = carbon(pH, alkalinity, cold)          solved for the hot pH; alkalinity and all totals stay
//! ```
//! Heating splits bicarbonate and water further, so pH falls; lime dissolves less, so the index rises all the same.
//! At constant alkalinity the carbon in water falls as pH rises, so there is one answer. It is held between two bounds and
//! closed in by false position with the Illinois rule.
//! Source: the conservation of carbon, charge and cations in a closed system (Stumm and Morgan, Aquatic Chemistry, ch. 4, from
//! memory). Range: as [`super::WaterAnalysis`].

use super::speciation::{Chemistry, Speciation, Totals, Unsolved, speciate};

const STEPS_MAX: usize = 100;
/// How far apart in pH the bounds are sought, and how often: pH falls by no more than 3 between 0 and 95 °C, and rises by less than 1.
const SEARCH_STEP: f64 = 0.25;
const SEARCH_MAX: usize = 16;
/// How far the carbon balance may stay open, as a share of all carbon, or of the alkalinity where that is more.
const CLOSED: f64 = 1e-12;

/// The pH and the state of water with `totals` and so much `carbon` (mol/kg), where it had `ph` before it was heated.
pub(super) fn heat(hot: &Chemistry, totals: &Totals, carbon: f64, ph: f64) -> Result<(f64, Speciation), Unsolved> {
    let surplus = |ph: f64| match speciate(hot, totals, libm::exp10(-ph)) {
        Ok(found) => Ok((found.carbon() - carbon, Some(found))),
        // So alkaline that there is no room for carbon at all.
        Err(Unsolved::AlkalinityBelow(_)) => Ok((-carbon, None)),
        Err(unsettled) => Err(unsettled),
    };
    let closed = |open: f64| open.abs() <= CLOSED * carbon.max(totals.alkalinity);
    let (open, found) = surplus(ph)?;
    if let Some(found) = found.filter(|_| closed(open)) {
        return Ok((ph, found));
    }
    let (mut low, mut high, mut too_much, mut too_little) = (ph, ph, open, open);
    for _ in 0..SEARCH_MAX {
        if too_much < 0.0 {
            (high, too_little) = (low, too_much);
            low -= SEARCH_STEP;
            too_much = surplus(low)?.0;
        } else if too_little > 0.0 {
            (low, too_much) = (high, too_little);
            high += SEARCH_STEP;
            too_little = surplus(high)?.0;
        }
    }
    if too_much < 0.0 || too_little > 0.0 {
        return Err(Unsolved::Unsettled);
    }
    let mut kept = 0;
    for _ in 0..STEPS_MAX {
        let middle = low + (high - low) * too_much / (too_much - too_little);
        let (open, found) = surplus(middle)?;
        if let Some(found) = found.filter(|_| closed(open)) {
            return Ok((middle, found));
        }
        // An end that stays twice counts half, so that both close in.
        if open > 0.0 {
            (low, too_much) = (middle, open);
            too_little *= if kept > 0 { 0.5 } else { 1.0 };
            kept = 1;
        } else {
            (high, too_little) = (middle, open);
            too_much *= if kept < 0 { 0.5 } else { 1.0 };
            kept = -1;
        }
    }
    Err(Unsolved::Unsettled)
}
