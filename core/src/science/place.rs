//! How far apart two places are: the shortest line on the WGS 84 ellipsoid.
//!
//! ```text
//! tan β = (1 − f) tan φ                    reduced latitude; the line is a great circle on the auxiliary sphere of β
//! sin α0 = sin α1 cos β1                   k² = e'² cos² α0
//! s = b ∫ √(1 + k² sin² σ) dσ              λ = ω − f sin α0 ∫ (2 − f) / (1 + (1 − f) √(1 + k² sin² σ)) dσ
//! ```
//! ω, the difference of longitude on the sphere, is found by repeating the second line; where that does not settle (nearly
//! opposite ends of the Earth) the azimuth α1 is found by halving instead. Integrals by ten-point Gauss-Legendre.
//!
//! Range: every place. Accuracy: within a micrometre of geographiclib, far below any receiver's doubt.
//! Source: Karney, Algorithms for geodesics, J. Geodesy 87 (2013), eq. 5 to 8; ellipsoid: WGS 84, NIMA TR8350.2.

use super::error::{ScienceError, within};
use core::f64::consts::PI;
use uom::si::f64::Length;
use uom::si::length::meter;

const A_M: f64 = 6_378_137.0;
const F: f64 = 1.0 / 298.257_223_563;
const B_M: f64 = A_M * (1.0 - F);
/// Second eccentricity squared.
const E2: f64 = F * (2.0 - F) / ((1.0 - F) * (1.0 - F));
/// Nodes and weights of the ten-point rule; each node stands on both sides of the middle.
const GAUSS: [(f64, f64); 5] = [
    (0.148874338981631, 0.295524224714753),
    (0.433395394129247, 0.269266719309996),
    (0.679409568299024, 0.219086362515982),
    (0.865063366688985, 0.149451349150581),
    (0.973906528517172, 0.066671344308688),
];

/// A place by WGS 84 latitude and longitude in degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Place {
    /// −90…90, north positive.
    pub latitude: f64,
    /// −180…180, east positive.
    pub longitude: f64,
}

/// A reduced latitude by its sine and cosine.
#[derive(Clone, Copy)]
struct Reduced {
    sin: f64,
    cos: f64,
}

/// A stretch of a great circle on the auxiliary sphere.
struct Arc {
    sin_alpha0: f64,
    sigma1: f64,
    sigma2: f64,
}

/// Length of the shortest line between two places.
pub fn distance(from: Place, to: Place) -> Result<Length, ScienceError> {
    within("lat1", from.latitude, -90.0, 90.0)?;
    within("lon1", from.longitude, -180.0, 180.0)?;
    within("lat2", to.latitude, -90.0, 90.0)?;
    within("lon2", to.longitude, -180.0, 180.0)?;

    let east = libm::fabs(to.longitude - from.longitude);
    let lambda = east.min(360.0 - east) * PI / 180.0;
    // By symmetry the first place may be the one farther from the equator, on the southern side.
    let (far, near) = if libm::fabs(from.latitude) >= libm::fabs(to.latitude) {
        (from.latitude, to.latitude)
    } else {
        (to.latitude, from.latitude)
    };
    // On the equator too: -0.0 makes it the southern side, where an azimuth beyond 90° first dips under.
    let (far, near) = if far.is_sign_positive() { (-far, -near) } else { (far, near) };
    let (one, two) = (Reduced::of(far), Reduced::of(near));
    let arc = repeated(one, two, lambda).unwrap_or_else(|| halved(one, two, lambda));
    Ok(Length::new::<meter>(B_M * arc.integral(|root| root)))
}

impl Reduced {
    fn of(latitude: f64) -> Self {
        let phi = latitude * PI / 180.0;
        let (sin, cos) = ((1.0 - F) * libm::sin(phi), libm::cos(phi));
        let norm = libm::hypot(sin, cos);
        Self { sin: sin / norm, cos: cos / norm }
    }
}

impl Arc {
    /// ∫ f(√(1 + k² sin² σ)) dσ along the arc.
    fn integral(&self, f: impl Fn(f64) -> f64) -> f64 {
        let k2 = E2 * (1.0 - self.sin_alpha0 * self.sin_alpha0);
        let (middle, half) = ((self.sigma1 + self.sigma2) / 2.0, (self.sigma2 - self.sigma1) / 2.0);
        let at = |sigma: f64| {
            let sin = libm::sin(sigma);
            f(libm::sqrt(1.0 + k2 * sin * sin))
        };
        GAUSS.iter().map(|(node, weight)| weight * half * (at(middle - half * node) + at(middle + half * node))).sum()
    }

    /// How much longitude on the sphere exceeds that on the ellipsoid.
    fn excess(&self) -> f64 {
        F * self.sin_alpha0 * self.integral(|root| (2.0 - F) / (1.0 + (1.0 - F) * root))
    }
}

/// Repeats ω = λ + excess until it stands; none where it does not.
fn repeated(one: Reduced, two: Reduced, lambda: f64) -> Option<Arc> {
    let mut omega = lambda;
    for _ in 0..30 {
        let (sin_omega, cos_omega) = (libm::sin(omega), libm::cos(omega));
        let across = two.cos * sin_omega;
        let along = one.cos * two.sin - one.sin * two.cos * cos_omega;
        let sin_sigma = libm::hypot(across, along);
        let cos_sigma = one.sin * two.sin + one.cos * two.cos * cos_omega;
        if sin_sigma == 0.0 && cos_sigma < 0.0 {
            return None;
        }
        let alpha1 = libm::atan2(across, along);
        let sigma1 = libm::atan2(one.sin, libm::cos(alpha1) * one.cos);
        let arc =
            Arc { sin_alpha0: libm::sin(alpha1) * one.cos, sigma1, sigma2: sigma1 + libm::atan2(sin_sigma, cos_sigma) };
        let next = lambda + arc.excess();
        if next > PI {
            return None;
        }
        if libm::fabs(next - omega) < 1e-15 {
            return Some(arc);
        }
        omega = next;
    }
    None
}

/// Halves the span of α1: the longitude reached at the second latitude grows with it from 0 to π.
fn halved(one: Reduced, two: Reduced, lambda: f64) -> Arc {
    let (mut low, mut high) = (0.0, PI);
    for _ in 0..60 {
        let middle = (low + high) / 2.0;
        let (arc, omega) = leaving(one, two, middle);
        if omega - arc.excess() < lambda {
            low = middle;
        } else {
            high = middle;
        }
    }
    leaving(one, two, high).0
}

/// The arc that leaves the first place at azimuth `alpha1` and reaches the second latitude going north, with its longitude
/// on the sphere.
fn leaving(one: Reduced, two: Reduced, alpha1: f64) -> (Arc, f64) {
    let (sin1, cos1) = (libm::sin(alpha1), libm::cos(alpha1));
    let sin_alpha0 = sin1 * one.cos;
    let north1 = cos1 * one.cos;
    let north2 = libm::sqrt((north1 * north1 + (two.cos - one.cos) * (two.cos + one.cos)).max(0.0));
    let arc = Arc { sin_alpha0, sigma1: libm::atan2(one.sin, north1), sigma2: libm::atan2(two.sin, north2) };
    let omega = libm::atan2(sin_alpha0 * two.sin, north2) - libm::atan2(sin_alpha0 * one.sin, north1);
    (arc, omega)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn metres(a: (f64, f64), b: (f64, f64)) -> f64 {
        let place = |(latitude, longitude)| Place { latitude, longitude };
        distance(place(a), place(b)).unwrap().get::<meter>()
    }

    #[test]
    fn opposite_ends_of_the_earth_are_half_a_meridian_apart() {
        // WGS 84 quarter meridian 10 001 965.729 m, from memory; geographiclib 2.1 gives 20 003 931.4586 for these.
        for (a, b) in [((90.0, 0.0), (-90.0, 0.0)), ((0.0, 0.0), (0.0, 180.0)), ((30.0, -10.0), (-30.0, 170.0))] {
            assert!((metres(a, b) - 20_003_931.458_6).abs() < 1e-3, "{a:?} {b:?}");
        }
    }

    #[test]
    fn nearly_opposite_on_the_equator_goes_over_the_side() {
        // geographiclib 2.1 Geodesic.WGS84.Inverse(0, 0, 0.5, 179.7)
        assert!((metres((0.0, 0.0), (0.5, 179.7)) - 19_944_127.420_750).abs() < 1e-5);
    }

    proptest! {
        #[test]
        fn the_way_back_is_as_long(a in -90.0..90.0f64, b in -180.0..180.0f64, c in -90.0..90.0f64, d in -180.0..180.0f64) {
            let way = metres((a, b), (c, d));
            prop_assert!((way - metres((c, d), (a, b))).abs() < 1e-6);
            prop_assert!((0.0..20_003_931.46).contains(&way));
            prop_assert!(metres((a, b), (a, b)) == 0.0);
        }
    }
}
