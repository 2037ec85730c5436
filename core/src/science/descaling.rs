//! When to descale next: advice in months, from the water and from what the exchanger showed.
//!
//! ```text
//! load = litres a year · hardness · (1 − 10^(−index / 2))                         g/a that could settle; nothing at an index of zero or below
//! by the water:  months = 12 · load of the reference household / load             range: index ± 2 u, and a factor of 1.5 either way
//! by the trend:  months = months since · allowed / worsened                       range: worsened ± 2 u
//! ```
//! The bracket is the share by which calcium and carbonate must both fall until the water rests. It counts all hardness as calcium with
//! as much carbonate, so it overstates: 1.6 to 11 times what PHREEQC lets settle from 266 random tap waters, most at a small index. That
//! errs on the early side where little settles.
//! The water's interval takes the index one standard uncertainty higher than it was found: early costs an hour, late an exchanger.
//! A trend that can be told (beyond twice its uncertainty) outranks the water, since it is this exchanger that showed it; as one interval
//! is one sample, it makes the next no shorter than half of the last and no longer than double. A trend that shows no worsening, with
//! readings good enough to have shown it, supports at least the same interval again.
//! Bounds: 3 to 36 months. Where less is called for, acid four times a year harms the exchanger and its owner more than scale: the water
//! or its temperature has to change. Beyond three years neither water nor use is what it was, and a unit is looked at anyway.
//! Common practice, no source: the reference household (70 000 l a year of water with 200 mg/l whose index at the heated surface is 0.5,
//! descaled yearly); what may be used up before (3 K of approach temperature or a tenth of the heat); the factors 1.5, a half and double.
//! Range: index −5…5 and its uncertainty to 2; 100…100 000 000 l a year; hardness 1…2000 mg/l; 1…120 months since.
//! Accuracy: advice, not a forecast; the maker's interval and terms come first.

use super::error::{ScienceError, within};
use super::uncertainty::Doubted;

/// Bounds of any advice, in months.
pub const MONTHS_LEAST: f64 = 3.0;
/// See [`MONTHS_LEAST`].
pub const MONTHS_MOST: f64 = 36.0;

const YEAR_MONTHS: f64 = 12.0;
const REFERENCE_L_YEAR: f64 = 70_000.0;
const REFERENCE_HARDNESS_MG_L: f64 = 200.0;
const REFERENCE_INDEX: f64 = 0.5;
const MODEL_FACTOR: f64 = 1.5;
/// Standard uncertainties either way that a range spans.
const COVERAGE: f64 = 2.0;
const LAST_SHARE_LEAST: f64 = 0.5;
const LAST_SHARE_MOST: f64 = 2.0;

/// The water that a unit heats, and how much of it.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatedUse {
    /// The index at the heated surface, with its doubt: of [`super::carbonate::WaterAnalysis::heated`] or, for want of an analysis, the
    /// handbook's at the hot temperature.
    pub surface_index: Doubted,
    /// Water heated in a year, in litres.
    pub throughput_l_year: f64,
    /// Hardness in mg/l as CaCO3.
    pub hardness_mg_l_caco3: f64,
}

/// What showed the worsening.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Symptom {
    /// Approach temperature between refrigerant and water, in kelvin: found now, less left then.
    Approach,
    /// Heat output corrected to the same conditions: the share lost since it was left.
    Heat,
}

impl Symptom {
    /// By its name.
    pub fn parse(symptom: &str) -> Result<Self, ScienceError> {
        match symptom {
            "approach" => Ok(Self::Approach),
            "heat" => Ok(Self::Heat),
            _ => Err(ScienceError::word("symptom", symptom, "approach or heat")),
        }
    }

    /// How much of it may be used up before descaling, in its own unit.
    fn allowed(self) -> f64 {
        match self {
            Self::Approach => 3.0,
            Self::Heat => 0.1,
        }
    }

    /// The most that can be meant.
    fn most(self) -> f64 {
        match self {
            Self::Approach => 50.0,
            Self::Heat => 1.0,
        }
    }
}

/// How an exchanger changed since it was last descaled.
#[derive(Debug, Clone, PartialEq)]
pub struct Trend {
    /// Months since then.
    pub months: f64,
    /// What was watched.
    pub symptom: Symptom,
    /// By how much it is worse, in the symptom's unit; below zero it is better.
    pub worsened: Doubted,
}

/// Why the interval is what it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reason {
    /// The water lays down lime at the heated surface.
    WaterScales,
    /// The water lays down none there.
    WaterDoesNotScale,
    /// The exchanger worsened as measured.
    Worsened,
    /// No worsening could be told since last time.
    NoWorseningTold,
}

impl Reason {
    /// The key of its words.
    pub fn key(self) -> &'static str {
        match self {
            Self::WaterScales => "descale-water-scales",
            Self::WaterDoesNotScale => "descale-water-does-not-scale",
            Self::Worsened => "descale-worsened",
            Self::NoWorseningTold => "descale-no-worsening-told",
        }
    }
}

/// Which bound the advice was held at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Held {
    /// Neither.
    No,
    /// Less than the shortest is called for: treat the water or heat it less.
    AtShortest,
    /// More than the longest would do.
    AtLongest,
}

impl Held {
    /// The key of its words.
    pub fn key(self) -> &'static str {
        match self {
            Self::No => "descale-held-no",
            Self::AtShortest => "descale-held-at-shortest",
            Self::AtLongest => "descale-held-at-longest",
        }
    }
}

/// Advice for the next time, in whole months from now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Advice {
    /// What to plan for.
    pub months: u32,
    /// The range in which the right time may lie.
    pub least_months: u32,
    /// See `least_months`.
    pub most_months: u32,
    /// Why.
    pub reason: Reason,
    /// Whether a bound holds it.
    pub held: Held,
}

/// Months, not yet bounded; endless where nothing settles.
#[derive(Debug, Clone, Copy)]
struct Span {
    least: f64,
    advised: f64,
    most: f64,
}

impl Span {
    fn map(self, f: impl Fn(f64) -> f64) -> Self {
        Self { least: f(self.least), advised: f(self.advised), most: f(self.most) }
    }

    fn advice(self, reason: Reason) -> Advice {
        let held = if self.advised < MONTHS_LEAST {
            Held::AtShortest
        } else if self.advised > MONTHS_MOST {
            Held::AtLongest
        } else {
            Held::No
        };
        // The bounds are small whole numbers, so nothing is cut but the part of a month.
        let whole = self.map(|months| libm::floor(months.clamp(MONTHS_LEAST, MONTHS_MOST)));
        let (least_months, months, most_months) = (whole.least as u32, whole.advised as u32, whole.most as u32);
        Advice { months, least_months, most_months, reason, held }
    }
}

/// When to descale next, from the water alone or also from what the exchanger showed since last time.
pub fn advise(water: &HeatedUse, trend: Option<&Trend>) -> Result<Advice, ScienceError> {
    let by_water = water.span()?;
    let water_reason = if water.surface_index.value() > 0.0 { Reason::WaterScales } else { Reason::WaterDoesNotScale };
    let Some(trend) = trend else { return Ok(by_water.advice(water_reason)) };
    trend.check()?;
    let (worsened, margin) = (trend.worsened.value(), COVERAGE * trend.worsened.standard_u());
    let (last, allowed) = (trend.months, trend.symptom.allowed());
    if worsened > margin {
        let months = |worsened: f64| last * allowed / worsened;
        let span =
            Span { least: months(worsened + margin), advised: months(worsened), most: months(worsened - margin) };
        let near_last = span.map(|months| months.clamp(LAST_SHARE_LEAST * last, LAST_SHARE_MOST * last));
        return Ok(near_last.advice(Reason::Worsened));
    }
    // Readings too rough to have shown what may be used up say nothing.
    if worsened + margin <= allowed && last > by_water.advised {
        return Ok(by_water.map(|months| months.max(last)).advice(Reason::NoWorseningTold));
    }
    Ok(by_water.advice(water_reason))
}

impl HeatedUse {
    fn span(&self) -> Result<Span, ScienceError> {
        let (index, u) = (self.surface_index.value(), self.surface_index.standard_u());
        within("surface_index", index, -5.0, 5.0)?;
        within("surface_index_u", u, 0.0, 2.0)?;
        within("throughput_l_year", self.throughput_l_year, 100.0, 1e8)?;
        within("hardness_mg_l_caco3", self.hardness_mg_l_caco3, 1.0, 2000.0)?;
        let reference = load_g_year(REFERENCE_L_YEAR, REFERENCE_HARDNESS_MG_L, REFERENCE_INDEX);
        let months =
            |index: f64| YEAR_MONTHS * reference / load_g_year(self.throughput_l_year, self.hardness_mg_l_caco3, index);
        Ok(Span {
            least: months(index + COVERAGE * u) / MODEL_FACTOR,
            advised: months(index + u),
            most: months(index - COVERAGE * u) * MODEL_FACTOR,
        })
    }
}

impl Trend {
    fn check(&self) -> Result<(), ScienceError> {
        within("trend_months", self.months, 1.0, 120.0)?;
        let most = self.symptom.most();
        within("worsened", self.worsened.value(), -most, most)?;
        within("worsened_u", self.worsened.standard_u(), 0.0, most)
    }
}

/// Lime that could settle in a year; see the head of this file.
fn load_g_year(litres: f64, hardness_mg_l: f64, index: f64) -> f64 {
    litres * hardness_mg_l / 1000.0 * -libm::expm1(-std::f64::consts::LN_10 / 2.0 * index.max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::uncertainty::Cause;
    use proptest::prelude::*;

    fn doubted(value: f64, u: f64) -> Doubted {
        Doubted::new("value", value).unwrap().because("u", Cause::new("meter"), u).unwrap()
    }

    fn water(index: f64, index_u: f64, throughput_l_year: f64, hardness_mg_l_caco3: f64) -> HeatedUse {
        HeatedUse { surface_index: doubted(index, index_u), throughput_l_year, hardness_mg_l_caco3 }
    }

    fn trend(months: f64, symptom: Symptom, worsened: f64, u: f64) -> Trend {
        Trend { months, symptom, worsened: doubted(worsened, u) }
    }

    #[test]
    fn the_reference_household_is_descaled_yearly() {
        let advice = advise(&water(0.5, 0.0, 70_000.0, 200.0), None).unwrap();
        assert_eq!((advice.least_months, advice.months, advice.most_months), (8, 12, 18));
        assert_eq!((advice.reason, advice.held), (Reason::WaterScales, Held::No));
    }

    #[test]
    fn a_hotel_on_hard_water_is_told_to_treat_it_rather_than_to_descale_monthly() {
        let advice = advise(&water(1.2, 0.2, 2_000_000.0, 350.0), None).unwrap();
        assert_eq!((advice.months, advice.held), (3, Held::AtShortest));
    }

    #[test]
    fn water_that_lays_down_nothing_is_looked_at_after_three_years() {
        let advice = advise(&water(-0.5, 0.1, 70_000.0, 60.0), None).unwrap();
        assert_eq!((advice.months, advice.reason, advice.held), (36, Reason::WaterDoesNotScale, Held::AtLongest));
    }

    #[test]
    fn a_measured_worsening_outranks_the_water_but_moves_the_interval_by_half_or_double_only() {
        let mild = water(-0.5, 0.1, 70_000.0, 60.0);
        let advice = advise(&mild, Some(&trend(12.0, Symptom::Approach, 4.0, 0.5))).unwrap();
        assert_eq!((advice.months, advice.reason), (9, Reason::Worsened));
        let fast = advise(&mild, Some(&trend(12.0, Symptom::Heat, 0.8, 0.05))).unwrap();
        assert_eq!(fast.months, 6);
    }

    #[test]
    fn no_worsening_told_supports_the_same_interval_again_and_rough_readings_say_nothing() {
        let hard = water(0.9, 0.2, 120_000.0, 300.0);
        let by_water = advise(&hard, None).unwrap();
        let sure = advise(&hard, Some(&trend(12.0, Symptom::Approach, 0.3, 0.5))).unwrap();
        assert_eq!((sure.months, sure.reason), (12, Reason::NoWorseningTold));
        let rough = advise(&hard, Some(&trend(12.0, Symptom::Approach, 0.3, 2.0))).unwrap();
        assert_eq!(rough, by_water);
    }

    proptest! {
        #[test]
        fn advice_keeps_its_bounds_and_its_order(
            index in -3.0..3.0f64, u in 0.0..1.0f64, litres in 1e3..1e7f64, hardness in 1.0..800.0f64,
            months in 1.0..60.0f64, worsened in -5.0..20.0f64, worsened_u in 0.0..5.0f64, with_trend: bool,
        ) {
            let trend = trend(months, Symptom::Approach, worsened, worsened_u);
            let advice = advise(&water(index, u, litres, hardness), with_trend.then_some(&trend))?;
            prop_assert!(advice.least_months >= 3 && advice.most_months <= 36);
            prop_assert!(advice.least_months <= advice.months && advice.months <= advice.most_months);
        }

        #[test]
        fn more_water_harder_water_and_a_higher_index_never_lengthen_the_interval(
            index in -1.0..2.0f64, u in 0.0..0.5f64, litres in 1e3..1e6f64, hardness in 10.0..500.0f64,
        ) {
            let months = |w: HeatedUse| advise(&w, None).map(|advice| advice.months);
            let before = months(water(index, u, litres, hardness))?;
            prop_assert!(months(water(index, u, litres * 1.3, hardness))? <= before);
            prop_assert!(months(water(index, u, litres, hardness * 1.3))? <= before);
            prop_assert!(months(water(index + 0.2, u, litres, hardness))? <= before);
        }

        #[test]
        fn any_bits_give_advice_in_bounds_or_a_refusal(x in prop::array::uniform7(prop_oneof![any::<f64>(), 0.0..2.0f64, 100.0..1000.0f64])) {
            let [index, index_u, litres, hardness, months, worsened, worsened_u] = x;
            let of = |value, u| Doubted::new("v", value)?.because("u", Cause::new("meter"), u);
            let advice = of(index, index_u).and_then(|surface_index| {
                let water = HeatedUse { surface_index, throughput_l_year: litres, hardness_mg_l_caco3: hardness };
                advise(&water, Some(&Trend { months, symptom: Symptom::Heat, worsened: of(worsened, worsened_u)? }))
            });
            if let Ok(advice) = advice {
                prop_assert!((3..=36).contains(&advice.months));
            }
        }
    }
}
