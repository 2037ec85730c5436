//! What a machine should give at other conditions than the rated ones, with the model's own measured error.
//!
//! ```text
//! COP(site) / COP(rated) = C(site) / C(rated)        C = Th / (Th − Tc)        Th = w + 5 K        Tc = s − 10 K
//! ln (capacity(site) / capacity(rated)) = a (s(site) − s(rated)) + b (w(site) − w(rated))
//! doubt of either logarithm: u · (g(site) − g(rated)) for s and again for w,  g(x) = x inside the table's range, 2 for 1 outside
//! ```
//! s and w are those of `conditions.rs`; u, a and b those of `performance_error.rs`. Constant second-law efficiency
//! between the refrigerant's temperatures: 5 K above the water and 10 K below the source leave less error than the
//! water's and the source's own (fixed speed, air: 0.25 to 0.08 root mean square of the logarithm; both offsets
//! chosen among six pairs on the same table). Slopes fitted beside it were next to no better on machines that they
//! were not fitted to, but for variable speed, where they follow the house's load: left out. The model's error is one
//! slope a machine, so it cancels as far as two corrections go the same way, and is nothing where rated point and
//! site are the same.
//!
//! Range: s −25…45 °C, w 0…90 °C and at most 5 K below s; at most 30 K from the rated point in each.
//! Accuracy: measured on **space-heating** machines: hplib's table, source −7…12 °C of air (brine only at 0 °C, well
//! water only at 10 °C), flow 24…52 °C, the warmer the air the cooler the flow. **No open table of hot-water ratings
//! was found.** A water heater at 20 °C of air and 55 °C of water lies outside: each kelvin outside counts twice (our
//! own choice, no source). Past a doubt of 0.3 the range given is an order of size. A fixed source in the table also
//! means that brine's and well water's source slope is not measured: air's is used, and counts twice. Capacity of
//! variable-speed machines is not predicted: their tests run at the house's load.
//! Source: second-law efficiency: any textbook of thermodynamics; error: `tests/outside/performance_model.py`.

use super::conditions::Conditions;
use super::error::{ScienceError, within};
use super::performance_error::{
    AIR_FIXED, AIR_REGULATED, BRINE_FIXED, BRINE_REGULATED, ModelError, WATER_C, WATER_FIXED,
};
use super::uncertainty::{Cause, Doubted};

const ABOVE_WATER_K: f64 = 5.0;
const BELOW_SOURCE_K: f64 = 10.0;
const ZERO_C_K: f64 = 273.15;
const SHIFT_MOST_K: f64 = 30.0;

/// Kinds of machine, as the table tells them apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Heat from air, compressor at one speed.
    AirFixed,
    /// Heat from air, compressor at variable speed.
    AirRegulated,
    /// Heat from brine, one speed.
    BrineFixed,
    /// Heat from brine, variable speed.
    BrineRegulated,
    /// Heat from well water, one speed.
    WaterFixed,
}

impl Kind {
    /// The kind of this name, as [`Self::as_str`] gives it.
    pub fn named(name: &str) -> Result<Self, ScienceError> {
        let all = [Self::AirFixed, Self::AirRegulated, Self::BrineFixed, Self::BrineRegulated, Self::WaterFixed];
        let expected = "air fixed, air regulated, brine fixed, brine regulated or water fixed";
        all.into_iter().find(|kind| kind.as_str() == name).ok_or_else(|| ScienceError::word("kind", name, expected))
    }

    /// As it crosses a border.
    pub fn as_str(self) -> &'static str {
        match self {
            Self::AirFixed => "air fixed",
            Self::AirRegulated => "air regulated",
            Self::BrineFixed => "brine fixed",
            Self::BrineRegulated => "brine regulated",
            Self::WaterFixed => "water fixed",
        }
    }

    /// How wrong the model is for this kind.
    pub fn error(self) -> &'static ModelError {
        match self {
            Self::AirFixed => &AIR_FIXED,
            Self::AirRegulated => &AIR_REGULATED,
            Self::BrineFixed => &BRINE_FIXED,
            Self::BrineRegulated => &BRINE_REGULATED,
            Self::WaterFixed => &WATER_FIXED,
        }
    }
}

/// What a machine gives at one set of conditions over what it gives at another.
#[derive(Debug, Clone, PartialEq)]
pub struct Ratios {
    /// Of the coefficient of performance.
    pub cop: Doubted,
    /// Of the heating capacity; none for variable speed.
    pub capacity: Option<Doubted>,
}

/// The factors that bring results of a machine from the conditions `from` to the conditions `to`.
pub fn ratios(kind: Kind, from: &Conditions, to: &Conditions) -> Result<Ratios, ScienceError> {
    let source_k = to.source_c.value() - from.source_c.value();
    let water_k = to.water_c.value() - from.water_c.value();
    within("source_c from one to the other", source_k, -SHIFT_MOST_K, SHIFT_MOST_K)?;
    within("water_out_c from one to the other", water_k, -SHIFT_MOST_K, SHIFT_MOST_K)?;
    let (start, end) = (Carnot::at(from)?, Carnot::at(to)?);
    let error = kind.error();
    let path =
        |range: [f64; 2], from: &Doubted, to: &Doubted| weighted(range, to.value()) - weighted(range, from.value());
    let source_path = path(error.source_c, &from.source_c, &to.source_c);
    let water_path = path(WATER_C, &from.water_c, &to.water_c);
    let with_model = |ratio: Doubted, what: &str, u_per_k: f64| {
        let part = ratio.value() * u_per_k;
        ratio
            .with_part(Cause::new(format!("performance model, {what} by source")), part * source_path)
            .with_part(Cause::new(format!("performance model, {what} by water")), part * water_path)
    };

    let cop = end.cop / start.cop;
    let by_conditions = Doubted::from_slopes(
        cop,
        &[
            (cop * end.by_source, &to.source_c),
            (cop * end.by_water, &to.water_c),
            (-cop * start.by_source, &from.source_c),
            (-cop * start.by_water, &from.water_c),
        ],
    );
    let capacity = error.capacity.map(|capacity| {
        let (a, b) = (capacity.by_source_per_k, capacity.by_water_per_k);
        let ratio = libm::exp(a * source_k + b * water_k);
        let by_conditions = Doubted::from_slopes(
            ratio,
            &[
                (ratio * a, &to.source_c),
                (ratio * b, &to.water_c),
                (-ratio * a, &from.source_c),
                (-ratio * b, &from.water_c),
            ],
        );
        with_model(by_conditions, "capacity", capacity.u_per_k)
    });
    Ok(Ratios { cop: with_model(by_conditions, "COP", error.cop_u_per_k), capacity })
}

/// A temperature on a scale on which a kelvin outside the table counts twice.
fn weighted([least, most]: [f64; 2], x: f64) -> f64 {
    let outside = x - x.clamp(least, most);
    x + outside
}

/// The ideal COP between the refrigerant's temperatures, and how its logarithm follows source and water.
struct Carnot {
    cop: f64,
    by_source: f64,
    by_water: f64,
}

impl Carnot {
    fn at(conditions: &Conditions) -> Result<Self, ScienceError> {
        let (source, water) = (conditions.source_c.value(), conditions.water_c.value());
        within("water_out_c with water_in_c", water, source - ABOVE_WATER_K, 90.0)?;
        let hot_k = water + ABOVE_WATER_K + ZERO_C_K;
        let lift_k = water + ABOVE_WATER_K - (source - BELOW_SOURCE_K);
        Ok(Self { cop: hot_k / lift_k, by_source: 1.0 / lift_k, by_water: 1.0 / hot_k - 1.0 / lift_k })
    }
}

/// One rated point of a machine, from its plate or sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Rated {
    /// What it was rated at.
    pub conditions: Conditions,
    /// Heating capacity in watt, with the rating's tolerance.
    pub capacity_w: Doubted,
    /// Coefficient of performance, with the rating's tolerance.
    pub cop: Doubted,
}

/// What a sound machine should give on site.
#[derive(Debug, Clone, PartialEq)]
pub struct Expected {
    /// Coefficient of performance.
    pub cop: Doubted,
    /// Heating capacity in watt; none for variable speed.
    pub capacity_w: Option<Doubted>,
}

/// What a machine with these rated points should give at the conditions on site: from the point that leaves the least
/// doubt of COP. A point too far away is passed over; if all are, the last one's refusal is given.
pub fn expected(kind: Kind, points: &[Rated], site: &Conditions) -> Result<Expected, ScienceError> {
    let mut best: Option<Expected> = None;
    let mut refused = ScienceError::Missing { argument: "rated points".to_owned() };
    for point in points {
        within("rated cop", point.cop.value(), 0.5, 20.0)?;
        within("rated capacity_w", point.capacity_w.value(), 10.0, 1e6)?;
        match ratios(kind, &point.conditions, site) {
            Err(why) => refused = why,
            Ok(ratios) => {
                let cop = point.cop.times(&ratios.cop);
                let capacity_w = ratios.capacity.map(|ratio| point.capacity_w.times(&ratio));
                let doubt = |cop: &Doubted| cop.standard_u() / cop.value();
                if best.as_ref().is_none_or(|best| doubt(&cop) < doubt(&best.cop)) {
                    best = Some(Expected { cop, capacity_w });
                }
            }
        }
    }
    best.ok_or(refused)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn exactly(value: f64) -> Doubted {
        Doubted::new("value", value).unwrap()
    }

    fn at(source: f64, water_out: f64) -> Conditions {
        Conditions::liquid(&exactly(source), &exactly(water_out - 5.0), &exactly(water_out)).unwrap()
    }

    fn rated(source: f64, water_out: f64, cop: f64) -> Rated {
        Rated { conditions: at(source, water_out), capacity_w: exactly(3000.0), cop: exactly(cop) }
    }

    #[test]
    fn at_the_rated_point_a_machine_gives_what_is_rated_and_the_model_adds_no_doubt() {
        let here = expected(Kind::AirFixed, &[rated(7.0, 45.0, 3.1)], &at(7.0, 45.0)).unwrap();
        let capacity = here.capacity_w.unwrap();
        assert_eq!((here.cop.value(), here.cop.standard_u()), (3.1, 0.0));
        assert_eq!((capacity.value(), capacity.standard_u()), (3000.0, 0.0));
    }

    #[test]
    fn a_kelvin_outside_the_table_counts_twice() {
        let u = |from: f64, to: f64| {
            let ratio = ratios(Kind::AirFixed, &at(from, 45.0), &at(to, 45.0)).unwrap().cop;
            ratio.standard_u() / ratio.value()
        };
        assert!((u(2.0, 6.0) - 4.0 * AIR_FIXED.cop_u_per_k).abs() < 1e-12);
        assert!((u(12.0, 16.0) - 8.0 * AIR_FIXED.cop_u_per_k).abs() < 1e-12);
        assert!((u(10.0, 14.0) - 6.0 * AIR_FIXED.cop_u_per_k).abs() < 1e-12);
    }

    #[test]
    fn of_two_rated_points_the_nearer_one_counts() {
        let points = [rated(-7.0, 35.0, 2.5), rated(7.0, 45.0, 3.1)];
        assert_eq!(expected(Kind::AirFixed, &points, &at(7.0, 45.0)).unwrap().cop.value(), 3.1);
    }

    #[test]
    fn a_rating_too_far_away_is_refused_by_name() {
        let refused = expected(Kind::AirFixed, &[rated(-7.0, 35.0, 2.5)], &at(30.0, 45.0)).unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument.starts_with("source_c")));
    }

    #[test]
    fn capacity_of_a_variable_speed_machine_is_not_guessed() {
        assert!(expected(Kind::AirRegulated, &[rated(7.0, 45.0, 3.1)], &at(8.0, 45.0)).unwrap().capacity_w.is_none());
    }

    proptest! {
        #[test]
        fn there_and_back_is_no_change(s in -7.0..20.0f64, w in 35.0..60.0f64, ds in -15.0..8.0f64, dw in -5.0..20.0f64) {
            let (a, b) = (at(s, w), at(s + ds, w + dw));
            let there = ratios(Kind::AirFixed, &a, &b).unwrap();
            let back = ratios(Kind::AirFixed, &b, &a).unwrap();
            let round = there.cop.times(&back.cop);
            prop_assert!((round.value() - 1.0).abs() < 1e-12 && round.standard_u() < 1e-12);
            let capacity = there.capacity.unwrap().times(&back.capacity.unwrap());
            prop_assert!((capacity.value() - 1.0).abs() < 1e-12 && capacity.standard_u() < 1e-12);
        }

        #[test]
        fn warmer_water_never_raises_the_cop_and_a_warmer_source_never_lowers_it(s in -7.0..25.0f64, w in 30.0..60.0f64, d in 0.0..10.0f64) {
            let cop = |from: Conditions, to: Conditions| ratios(Kind::AirFixed, &from, &to).unwrap().cop.value();
            // A source that is warmer than the water is refused by name: another test's matter.
            prop_assume!(s + d <= w);
            prop_assert!(cop(at(s, w), at(s, w + d)) <= 1.0);
            prop_assert!(cop(at(s, w), at(s + d, w)) >= 1.0);
        }
    }
}
