//! Liquid water at atmospheric pressure, and its vapour pressure.
//!
//! ```text
//! τ = T / 10 K        α = 10 K / (593 K − T)        β = 10 K / (T − 232 K)        R = 461.51805 J/(kg K)
//! g = R 10 K (c1 + c2 τ + c3 τ ln τ + Σ ai α^ni + Σ bi β^mi)
//! s = −R (c2 + c3 (1 + ln τ) + Σ ni ai α^(ni+1) − Σ mi bi β^(mi+1))         h = g + T s
//! cp = −R (c3 + τ Σ ni (ni+1) ai α^(ni+2) + τ Σ mi (mi+1) bi β^(mi+2))
//! v = R 10 K / 0.1 MPa (a5 + Σ ai α^ni + Σ bi β^mi)                         ∂v/∂T = R / 0.1 MPa (Σ ni ai α^(ni+1) − Σ mi bi β^(mi+1))
//! ln p = C/T + polynomial(T) + C' ln T         one set of constants over ice, one over water
//! ```
//! Range: liquid 0…100 °C at 0.1 MPa (mains pressure changes density by 0.02 %); vapour pressure −100…200 °C.
//! Accuracy: density within 0.0001 %, specific heat 0.1 %; vapour pressure within 0.03 % of the handbook's table.
//! Source: IAPWS SR6-08(2011), constants as in the PyPI package iapws 1.5.5; vapour pressure: Hyland and Wexler 1983 as in
//! ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5 and 6, constants from memory, checked against the handbook's table.

use super::atmosphere;
use super::error::{ScienceError, within};
use super::quantity::within_c;
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::{
    AvailableEnergy, Length, MassDensity, Pressure, SpecificHeatCapacity, TemperatureCoefficient,
    ThermodynamicTemperature,
};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_coefficient::per_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

const R_J_KG_K: f64 = 461.51805;
const TR_K: f64 = 10.0;
const P0_PA: f64 = 1e5;
const C: [f64; 3] = [-2.452093414e2, 3.869269598e1, -8.983025854];
/// Power and factor of each term of the Gibbs energy in α, then in β.
const G_ALPHA: [(i32, f64); 3] = [(4, -1.661470539e5), (5, 2.708781640e6), (7, -1.557191544e8)];
const G_BETA: [(i32, f64); 4] = [(2, -8.237426256e-1), (3, 1.908956353), (4, -2.017597384), (5, 8.546361348e-1)];
const V_FIRST: f64 = 1.93763157e-2;
/// The same of the volume.
const V_ALPHA: [(i32, f64); 5] =
    [(4, 6.74458446e3), (5, -2.22521604e5), (7, 1.00231247e8), (8, -1.63552118e9), (9, 8.32299658e9)];
const V_BETA: [(i32, f64); 6] = [
    (1, 5.78545292e-3),
    (2, -1.53195665e-2),
    (3, 3.11337859e-2),
    (4, -4.23546241e-2),
    (5, 3.38713507e-2),
    (6, -1.19946761e-2),
];

/// Where ice, water and vapour meet; the two vapour pressure curves cross here.
const TRIPLE_K: f64 = 273.16;
const VAPOUR_LEAST_C: f64 = -100.0;
const VAPOUR_MOST_C: f64 = 200.0;
/// The vapour pressure at these three; a test compares them with the equations.
const TRIPLE_PA: f64 = 611.6570243908809;
const VAPOUR_LEAST_PA: f64 = 0.001405102123874164;
const VAPOUR_MOST_PA: f64 = 1_555_073.745636215;

/// Liquid water at one temperature, at 0.1 MPa.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Water {
    /// Mass of a volume.
    pub density: MassDensity,
    /// Heat to warm it, at constant pressure.
    pub specific_heat: SpecificHeatCapacity,
    /// Its enthalpy, from the triple point.
    pub enthalpy: AvailableEnergy,
    /// How much of its volume it gains for each kelvin.
    pub expansion: TemperatureCoefficient,
}

/// Liquid water at `temperature` (0…100 °C). `argument` names the temperature if it is refused.
pub fn liquid(argument: &str, temperature: ThermodynamicTemperature) -> Result<Water, ScienceError> {
    within_c(argument, temperature, 0.0, 100.0)?;
    let t = temperature.get::<kelvin>();
    let (tau, alpha, beta) = (t / TR_K, TR_K / (593.0 - t), TR_K / (t - 232.0));
    let [c1, c2, c3] = C;
    let ln_tau = libm::log(tau);
    let g = R_J_KG_K * TR_K * (c1 + c2 * tau + c3 * tau * ln_tau + sum(&G_ALPHA, alpha) + sum(&G_BETA, beta));
    let s = -R_J_KG_K * (c2 + c3 * (1.0 + ln_tau) + slope(&G_ALPHA, alpha) - slope(&G_BETA, beta));
    let cp = -R_J_KG_K * (c3 + tau * (bend(&G_ALPHA, alpha) + bend(&G_BETA, beta)));
    let v = R_J_KG_K * TR_K / P0_PA * (V_FIRST + sum(&V_ALPHA, alpha) + sum(&V_BETA, beta));
    let dv_dt = R_J_KG_K / P0_PA * (slope(&V_ALPHA, alpha) - slope(&V_BETA, beta));
    Ok(Water {
        density: MassDensity::new::<kilogram_per_cubic_meter>(1.0 / v),
        specific_heat: SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(cp),
        enthalpy: AvailableEnergy::new::<joule_per_kilogram>(g + t * s),
        expansion: TemperatureCoefficient::new::<per_kelvin>(dv_dt / v),
    })
}

fn power(x: f64, n: i32) -> f64 {
    (0..n).fold(1.0, |product, _| product * x)
}

/// Σ k xⁿ.
fn sum(terms: &[(i32, f64)], x: f64) -> f64 {
    terms.iter().map(|(n, k)| k * power(x, *n)).sum()
}

/// Σ n k xⁿ⁺¹: the first derivative by temperature, up to its sign.
fn slope(terms: &[(i32, f64)], x: f64) -> f64 {
    terms.iter().map(|(n, k)| f64::from(*n) * k * power(x, n + 1)).sum()
}

/// Σ n (n+1) k xⁿ⁺²: the second.
fn bend(terms: &[(i32, f64)], x: f64) -> f64 {
    terms.iter().map(|(n, k)| f64::from(n * (n + 1)) * k * power(x, n + 2)).sum()
}

/// Pressure of saturated vapour at `temperature` (−100…200 °C): over ice below the triple point (0.01 °C), over water above.
pub fn vapour_pressure(argument: &str, temperature: ThermodynamicTemperature) -> Result<Pressure, ScienceError> {
    within_c(argument, temperature, VAPOUR_LEAST_C, VAPOUR_MOST_C)?;
    Ok(Pressure::new::<pascal>(vapour_pressure_pa(temperature.get::<kelvin>())))
}

/// As [`vapour_pressure`], for a temperature in kelvin that is known to lie in its range.
pub(super) fn vapour_pressure_pa(t_k: f64) -> f64 {
    libm::exp(ln_vapour_pressure(t_k).0)
}

/// Natural logarithm of the vapour pressure in pascal, and its slope by temperature.
pub(super) fn ln_vapour_pressure(t: f64) -> (f64, f64) {
    if t <= TRIPLE_K {
        let polynomial = 6.3925247 + t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 + t * -9.484024e-13)));
        let polynomial_slope =
            -9.677843e-3 + t * (2.0 * 6.2215701e-7 + t * (3.0 * 2.0747825e-9 + t * 4.0 * -9.484024e-13));
        (
            -5.6745359e3 / t + polynomial + 4.1635019 * libm::log(t),
            5.6745359e3 / (t * t) + polynomial_slope + 4.1635019 / t,
        )
    } else {
        let polynomial = 1.3914993 + t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8));
        let polynomial_slope = -4.8640239e-2 + t * (2.0 * 4.1764768e-5 + t * 3.0 * -1.4452093e-8);
        (
            -5.8002206e3 / t + polynomial + 6.5459673 * libm::log(t),
            5.8002206e3 / (t * t) + polynomial_slope + 6.5459673 / t,
        )
    }
}

/// The temperature at which saturated vapour has `pressure`: a boiling or dew point. Inverse of [`vapour_pressure`], within
/// a billionth of a kelvin; its range is that of the other, as pressures.
pub fn saturation_temperature(argument: &str, pressure: Pressure) -> Result<ThermodynamicTemperature, ScienceError> {
    let p = pressure.get::<pascal>();
    within(argument, p, VAPOUR_LEAST_PA, VAPOUR_MOST_PA)?;
    let wanted = libm::log(p);
    // A start within 0.2 K, fitted here, on the right side of the triple point. Newton's steps are taken in 1/T, along which
    // the curve is close to a straight line.
    let mut t =
        if p <= TRIPLE_PA { -1.0875 + 6205.8 / (29.0461 - wanted) } else { 44.641 + 3845.77 / (23.233 - wanted) };
    for _ in 0..20 {
        let (ln_p, d_ln_p) = ln_vapour_pressure(t);
        let step = (wanted - ln_p) / (d_ln_p * t * t);
        t /= 1.0 - step * t;
        // The next would mend less than a ten-billionth of a kelvin.
        if libm::fabs(step) * t < 1e-6 {
            break;
        }
    }
    Ok(ThermodynamicTemperature::new::<kelvin>(t))
}

/// Where water boils in the open at `altitude` (−2000…11 000 m) on a day of standard pressure.
pub fn boiling(altitude: Length) -> Result<ThermodynamicTemperature, ScienceError> {
    saturation_temperature("altitude_m", atmosphere::pressure(altitude)?)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::quantity::celsius;
    use proptest::prelude::*;

    #[test]
    fn water_at_20_c_matches_the_release() {
        // iapws 1.5.5, `_Liquid(293.15)`, which is IAPWS SR6-08(2011).
        let water = liquid("t", celsius(20.0)).unwrap();
        assert!((water.density.get::<kilogram_per_cubic_meter>() - 998.2065464241155).abs() < 1e-9);
        assert!((water.specific_heat.get::<joule_per_kilogram_kelvin>() - 4184.189078396928).abs() < 1e-7);
        assert!((water.enthalpy.get::<joule_per_kilogram>() - 84_005.84269913573).abs() < 1e-4);
    }

    #[test]
    fn the_ends_of_the_vapour_pressure_are_what_the_equations_give() {
        for (c, pa) in [(VAPOUR_LEAST_C, VAPOUR_LEAST_PA), (0.01, TRIPLE_PA), (VAPOUR_MOST_C, VAPOUR_MOST_PA)] {
            assert!((vapour_pressure_pa(celsius(c).get::<kelvin>()) / pa - 1.0).abs() < 1e-14);
        }
        for pressure in [VAPOUR_LEAST_PA, VAPOUR_MOST_PA].map(Pressure::new::<pascal>) {
            assert!(saturation_temperature("p", pressure).is_ok());
        }
    }

    proptest! {
        #[test]
        fn specific_heat_is_the_slope_of_enthalpy(c in 0.01..99.99f64) {
            let h = |c: f64| liquid("t", celsius(c)).unwrap().enthalpy.get::<joule_per_kilogram>();
            let slope = (h(c + 0.01) - h(c - 0.01)) / 0.02;
            let cp = liquid("t", celsius(c)).unwrap().specific_heat.get::<joule_per_kilogram_kelvin>();
            prop_assert!((slope - cp).abs() < 0.01);
        }

        #[test]
        fn expansion_is_the_slope_of_volume(c in 0.01..99.99f64) {
            let v = |c: f64| 1.0 / liquid("t", celsius(c)).unwrap().density.get::<kilogram_per_cubic_meter>();
            let slope = (v(c + 0.01) - v(c - 0.01)) / 0.02 / v(c);
            let expansion = liquid("t", celsius(c)).unwrap().expansion.get::<per_kelvin>();
            prop_assert!((slope - expansion).abs() < 1e-9);
        }

        #[test]
        fn the_boiling_point_at_a_vapour_pressure_is_its_temperature(c in -100.0..200.0f64) {
            let pressure = vapour_pressure("t", celsius(c)).unwrap();
            let back = saturation_temperature("p", pressure).unwrap();
            prop_assert!((back.get::<kelvin>() - celsius(c).get::<kelvin>()).abs() < 1e-9);
        }
    }
}
