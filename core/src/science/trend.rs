//! The slope of readings over the years, by Theil and Sen: the median of the slopes between all pairs.
//!
//! ```text
//! slope = median over i < j, x_i ≠ x_j of (y_j − y_i) / (x_j − x_i)          intercept = median y − slope · median x
//! var S = (n(n−1)(2n+5) − Σ t(t−1)(2t+5)) / 18        t: how many share one x, and how many share one y
//! range of the slope: the sorted slopes at (N ∓ z √var S) / 2, rounded; N slopes, z = 1.959 964 for 95 %
//! ```
//! One reading in four may be wildly off and the slope still tells. The range rests on a normal law for S, which few readings do not
//! follow: with fewer than five even all slopes of one sign happen by chance in more than one of twenty (2 / n!), so [`TOLD_LEAST`].
//! Range: 2…500 points, of which two differ in x; −10¹²…10¹² in both. Accuracy: that of the readings.
//! Source: Sen, Estimates of the regression coefficient based on Kendall's tau, JASA 63 (1968), 1379–1389; indices rounded half to
//! even as in scipy.stats.theilslopes, against which it is checked.

use super::error::{ScienceError, within};

/// So many readings are needed before a trend is told.
pub const TOLD_LEAST: usize = 5;

const POINTS_MOST: usize = 500;
const MOST: f64 = 1e12;
/// Nearer in x than this counts as one: their slope would say nothing.
const APART_LEAST: f64 = 1e-9;
/// Of the normal law, for 95 % between both tails.
const Z: f64 = 1.959_963_984_540_054;

/// A slope with its range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TheilSen {
    /// The median slope, in y for one of x.
    pub slope: f64,
    /// The value at x = 0 of the line with that slope through the medians.
    pub intercept: f64,
    /// The least slope of the 95 % range.
    pub least: f64,
    /// The greatest.
    pub most: f64,
}

/// The slope of points (x, y).
///
/// # Errors
/// Where there are too few or too many points, all at one x, or a number out of range.
pub fn theil_sen(points: &[(f64, f64)]) -> Result<TheilSen, ScienceError> {
    within("points", points.len() as f64, 2.0, POINTS_MOST as f64)?;
    for (x, y) in points {
        within("x", *x, -MOST, MOST)?;
        within("y", *y, -MOST, MOST)?;
    }
    let mut slopes = Vec::new();
    for (at, (x1, y1)) in points.iter().enumerate() {
        for (x2, y2) in points.iter().skip(at + 1) {
            if libm::fabs(x2 - x1) >= APART_LEAST {
                slopes.push((y2 - y1) / (x2 - x1));
            }
        }
    }
    slopes.sort_by(f64::total_cmp);
    let slope = median(&slopes).ok_or_else(|| ScienceError::Missing { argument: "x (two that differ)".to_owned() })?;
    let [xs, ys] = [sorted(points.iter().map(|(x, _)| *x)), sorted(points.iter().map(|(_, y)| *y))];
    let middle = |values: &[f64]| median(values).unwrap_or_default();
    let n = points.len() as f64;
    let variance = (n * (n - 1.0) * (2.0 * n + 5.0) - ties(&xs) - ties(&ys)) / 18.0;
    let (count, reach) = (slopes.len() as f64, Z * libm::sqrt(variance.max(0.0)));
    let last = slopes.len() - 1;
    // Both are small and above zero after the clamp, so nothing is cut.
    let low = (libm::rint((count - reach) / 2.0) - 1.0).max(0.0) as usize;
    let high = (libm::rint((count + reach) / 2.0).max(0.0) as usize).min(last);
    let at = |index: usize| slopes.get(index.min(last)).copied().unwrap_or(slope);
    Ok(TheilSen { slope, intercept: middle(&ys) - slope * middle(&xs), least: at(low), most: at(high) })
}

fn sorted(values: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut values: Vec<f64> = values.collect();
    values.sort_by(f64::total_cmp);
    values
}

/// The median of sorted values; none of none.
pub fn median(sorted: &[f64]) -> Option<f64> {
    quantile(sorted, 0.5)
}

/// The quantile of sorted values, linear between neighbours (Hyndman and Fan, type 7); none of none.
pub fn quantile(sorted: &[f64], share: f64) -> Option<f64> {
    let place = share.clamp(0.0, 1.0) * (sorted.len().checked_sub(1)?) as f64;
    let below = libm::floor(place);
    let (low, high) = (sorted.get(below as usize)?, sorted.get(libm::ceil(place) as usize)?);
    Some(low + (high - low) * (place - below))
}

/// Σ t(t−1)(2t+5) over groups of equal neighbours.
fn ties(sorted: &[f64]) -> f64 {
    sorted
        .chunk_by(|a, b| a == b)
        .map(|group| {
            let t = group.len() as f64;
            t * (t - 1.0) * (2.0 * t + 5.0)
        })
        .sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn close(ours: TheilSen, theirs: [f64; 4]) {
        for (ours, theirs) in [ours.slope, ours.intercept, ours.least, ours.most].into_iter().zip(theirs) {
            assert!((ours - theirs).abs() < 1e-12 * theirs.abs().max(1.0), "{ours} {theirs}");
        }
    }

    /// Each line: scipy.stats.theilslopes(y, x, 0.95), scipy 1.17.1, run by hand; the grid
    /// `trend_scipy.py` draws hundreds more.
    #[test]
    fn the_slope_is_that_of_scipy() {
        let falls = [(0.0, 10.4), (1.0, 10.1), (2.0, 9.9), (3.0, 9.6), (4.0, 9.0)];
        close(theil_sen(&falls).unwrap(), SCIPY_FALLS);
        let tied = [(0.0, 1.0), (0.0, 2.0), (1.0, 2.0), (2.0, 2.0), (3.0, 5.0), (4.5, 4.0), (4.5, 4.5)];
        close(theil_sen(&tied).unwrap(), SCIPY_TIED);
    }
    /// Slope, intercept, least, most.
    const SCIPY_FALLS: [f64; 4] =
        [-0.300_000_000_000_000_7, 10.500_000_000_000_002, -0.599_999_999_999_999_6, -0.199_999_999_999_999_3];
    const SCIPY_TIED: [f64; 4] = [0.666_666_666_666_666_6, 0.666_666_666_666_666_7, 0.0, 1.333_333_333_333_333_3];

    #[test]
    fn points_of_one_day_have_no_slope() {
        assert!(theil_sen(&[(1.0, 2.0), (1.0, 3.0)]).is_err());
        assert!(theil_sen(&[(1.0, 2.0)]).is_err());
        assert!(theil_sen(&[(1.0, 2.0), (2.0, f64::NAN)]).is_err());
    }

    proptest! {
        #[test]
        fn the_slope_lies_in_its_range(points in prop::collection::vec((-1e3..1e3f64, -1e3..1e3f64), 2..40)) {
            if let Ok(line) = theil_sen(&points) {
                prop_assert!(line.least <= line.slope && line.slope <= line.most);
            }
        }

        #[test]
        fn one_wild_reading_of_nine_does_not_turn_a_line(wild in -1e6..1e6f64, at in 0..9usize) {
            let points: Vec<(f64, f64)> = (0..9).map(|x| (f64::from(x), if x as usize == at { wild } else { 3.0 * f64::from(x) })).collect();
            let line = theil_sen(&points).unwrap();
            prop_assert!((line.slope - 3.0).abs() < 1e-9);
        }
    }
}
