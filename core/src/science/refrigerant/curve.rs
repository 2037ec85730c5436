//! A piecewise cubic over evenly spaced nodes.
//!
//! ```text
//! y = y0 + u (d0 + u (3 Δ − 2 d0 − d1 + u (d0 + d1 − 2 Δ)))        Δ = y1 − y0, u = 0…1 from one node to the next
//! ```
//! Source: cubic Hermite interpolation; slopes limited by the table's generator after Fritsch and Carlson,
//! SIAM J. Numer. Anal. 17 (1980) 238.

/// A property over a coordinate.
pub(super) struct Curve {
    /// The coordinate of the first node.
    pub(super) least: f64,
    /// How many nodes follow in one unit of the coordinate.
    pub(super) per_step: f64,
    /// Value, and slope for one step.
    pub(super) nodes: &'static [[f64; 2]],
}

impl Curve {
    /// The value at `x`, which the caller knows to lie between the first and the last node. None without two nodes.
    pub(super) fn at(&self, x: f64) -> Option<f64> {
        let steps = (x - self.least) * self.per_step;
        // A cast cuts off the fraction, and takes what rounding puts before the first node to it.
        let before = (steps as usize).min(self.nodes.len().saturating_sub(2));
        let [[y0, d0], [y1, d1], ..] = self.nodes.get(before..)? else { return None };
        let (u, rise) = (steps - before as f64, y1 - y0);
        Some(y0 + u * (d0 + u * (3.0 * rise - 2.0 * d0 - d1 + u * (d0 + d1 - 2.0 * rise))))
    }

    /// Whether it rises, or falls, from end to end: enough, not needed, that slopes lie within a circle of three rises.
    #[cfg(test)]
    pub(super) fn is_monotone(&self) -> bool {
        let way = self.nodes[1][0] - self.nodes[0][0];
        self.nodes.windows(2).all(|pair| {
            let rise = pair[1][0] - pair[0][0];
            let (a, b) = (pair[0][1] / rise, pair[1][1] / rise);
            rise * way > 0.0 && a >= 0.0 && b >= 0.0 && a * a + b * b <= 9.0
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// y = x³ from 1 to 3, which a cubic meets everywhere.
    const CUBE: Curve = Curve { least: 1.0, per_step: 1.0, nodes: &[[1.0, 3.0], [8.0, 12.0], [27.0, 27.0]] };

    #[test]
    fn a_cubic_is_met_everywhere_and_at_both_ends() {
        for x in [1.0, 1.25, 2.0, 2.5, 3.0] {
            assert!((CUBE.at(x).unwrap() - x * x * x).abs() < 1e-12);
        }
    }

    #[test]
    fn too_few_nodes_give_nothing() {
        assert_eq!(Curve { nodes: &[[1.0, 0.0]], ..CUBE }.at(1.0), None);
    }

    #[test]
    fn a_slope_against_the_way_is_seen() {
        assert!(CUBE.is_monotone());
        assert!(!Curve { nodes: &[[0.0, 1.0], [1.0, -1.0]], ..CUBE }.is_monotone());
        assert!(!Curve { nodes: &[[0.0, 1.0], [1.0, 1.0], [0.5, 1.0]], ..CUBE }.is_monotone());
    }
}
