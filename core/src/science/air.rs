//! Moist air: from a hygrometer or a wet bulb to everything else.
//!
//! ```text
//! W = 0.621945 pw / (p − pw)                                   pw = humidity · vapour pressure at the dry bulb
//! W = ((2501 − 2.326 t*) Ws* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*)         wet bulb t* at or above 0 °C
//! W = ((2830 − 0.24 t*) Ws* − 1.006 (t − t*)) / (2830 + 1.86 t − 2.1 t*)            below, an iced bulb
//! h = 1.006 t + W (2501 + 1.86 t) kJ/kg       v = 287.042 T (1 + 1.607858 W) / p
//! ```
//! The wet bulb is found by Halley's steps, to a millionth of a kelvin.
//! Range: −50…60 °C, humidity 0.001…1, 50 000…120 000 Pa. Humidity is over ice below 0.01 °C.
//! Accuracy: an ideal gas; real air holds 0.3 to 0.7 % more water. Just around a wet bulb of 0 °C a wet and an iced bulb differ
//! by up to 1 K, most in dry air. For some air both would do; the wet one is given.
//! Source: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 20, 24, 26, 30, 33, 35; constants as in the PyPI package PsychroLib 2.5.0.

use super::error::{ScienceError, within};
use super::quantity::{celsius, to_celsius, within_c, within_temperatures};
use super::water::{ln_vapour_pressure, saturation_temperature, vapour_pressure_pa};
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::{AvailableEnergy, Pressure, Ratio, SpecificVolume, ThermodynamicTemperature};
use uom::si::pressure::pascal;
use uom::si::ratio::ratio;
use uom::si::specific_volume::cubic_meter_per_kilogram;
use uom::si::thermodynamic_temperature::kelvin;

const HUMIDITY_LEAST: f64 = 0.001;
/// Molar mass of water over that of dry air.
const WATER_TO_AIR: f64 = 0.621945;
const DRY_AIR_J_KG_K: f64 = 287.042;

/// Moist air in one state.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Temperature of a dry thermometer.
    pub dry_bulb: ThermodynamicTemperature,
    /// Relative humidity, 0.001…1.
    pub humidity: Ratio,
    /// Water in each kilogram of dry air.
    pub humidity_ratio: Ratio,
    /// Where water or frost begins to settle.
    pub dew_point: ThermodynamicTemperature,
    /// Temperature of a wetted thermometer in moving air.
    pub wet_bulb: ThermodynamicTemperature,
    /// For each kilogram of dry air, from dry air at 0 °C.
    pub enthalpy: AvailableEnergy,
    /// For each kilogram of dry air.
    pub volume: SpecificVolume,
}

/// How a hand instrument gives the state of air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hygrometer<'a> {
    /// What the temperature is called if it is refused.
    pub dry_bulb_name: &'a str,
    /// What the humidity is called if it is refused.
    pub humidity_name: &'a str,
}

impl Hygrometer<'_> {
    /// Air of a temperature (−50…60 °C) and relative humidity (0.001…1) at an absolute pressure (50 000…120 000 Pa).
    pub fn air(
        &self,
        dry_bulb: ThermodynamicTemperature,
        humidity: f64,
        pressure: Pressure,
    ) -> Result<Air, ScienceError> {
        within_c(self.dry_bulb_name, dry_bulb, -50.0, 60.0)?;
        within(self.humidity_name, humidity, HUMIDITY_LEAST, 1.0)?;
        let p = checked_pascal(pressure)?;
        let t_c = to_celsius(dry_bulb);
        let vapour_pa = humidity * vapour_pressure_pa(dry_bulb.get::<kelvin>());
        let w = WATER_TO_AIR * vapour_pa / (p - vapour_pa);
        // Saturated air's may round to a hair above the dry bulb.
        let dew_point = saturation_temperature("humidity_rh", Pressure::new::<pascal>(vapour_pa))?.min(dry_bulb);
        Ok(Air {
            dry_bulb,
            humidity: Ratio::new::<ratio>(humidity),
            humidity_ratio: Ratio::new::<ratio>(w),
            dew_point,
            wet_bulb: celsius(wet_bulb_c(t_c, w, p)),
            enthalpy: enthalpy(dry_bulb, Ratio::new::<ratio>(w)),
            volume: SpecificVolume::new::<cubic_meter_per_kilogram>(
                DRY_AIR_J_KG_K * dry_bulb.get::<kelvin>() * (1.0 + 1.607858 * w) / p,
            ),
        })
    }
}

/// The wet bulb alone, for the same arguments as [`from_humidity`], and quicker.
pub fn wet_bulb(
    dry_bulb: ThermodynamicTemperature,
    humidity: f64,
    pressure: Pressure,
) -> Result<ThermodynamicTemperature, ScienceError> {
    within_c("dry_bulb_c", dry_bulb, -50.0, 60.0)?;
    within("humidity_rh", humidity, HUMIDITY_LEAST, 1.0)?;
    let p = checked_pascal(pressure)?;
    let vapour_pa = humidity * vapour_pressure_pa(dry_bulb.get::<kelvin>());
    Ok(celsius(wet_bulb_c(to_celsius(dry_bulb), WATER_TO_AIR * vapour_pa / (p - vapour_pa), p)))
}

/// Air from its temperature and relative humidity; see [`Hygrometer::air`].
pub fn from_humidity(
    dry_bulb: ThermodynamicTemperature,
    humidity: f64,
    pressure: Pressure,
) -> Result<Air, ScienceError> {
    let names = Hygrometer { dry_bulb_name: "dry_bulb_c", humidity_name: "humidity_rh" };
    names.air(dry_bulb, humidity, pressure)
}

/// Air from a dry and a wet bulb. The wet bulb is not above the dry one, nor lower than air of humidity 0.001 cools it.
pub fn from_wet_bulb(
    dry_bulb: ThermodynamicTemperature,
    wet_bulb: ThermodynamicTemperature,
    pressure: Pressure,
) -> Result<Air, ScienceError> {
    let driest = from_humidity(dry_bulb, HUMIDITY_LEAST, pressure)?;
    within_temperatures("wet_bulb_c", wet_bulb, driest.wet_bulb, dry_bulb)?;
    let p = checked_pascal(pressure)?;
    let w = ratio_at_wet_bulb(to_celsius(dry_bulb), to_celsius(wet_bulb), p);
    let saturated_pa = vapour_pressure_pa(dry_bulb.get::<kelvin>());
    let humidity = p * w / (WATER_TO_AIR + w) / saturated_pa;
    // The bounds above hold it but for rounding, and for the step between a wet and an iced bulb.
    let air = from_humidity(dry_bulb, humidity.clamp(HUMIDITY_LEAST, 1.0), pressure)?;
    Ok(Air { wet_bulb, ..air })
}

/// Enthalpy for each kilogram of dry air.
pub(super) fn enthalpy(dry_bulb: ThermodynamicTemperature, humidity_ratio: Ratio) -> AvailableEnergy {
    let t_c = to_celsius(dry_bulb);
    AvailableEnergy::new::<joule_per_kilogram>(
        1006.0 * t_c + humidity_ratio.get::<ratio>() * (2_501_000.0 + 1860.0 * t_c),
    )
}

fn checked_pascal(pressure: Pressure) -> Result<f64, ScienceError> {
    let p = pressure.get::<pascal>();
    within("pressure_pa", p, 50_000.0, 120_000.0)?;
    Ok(p)
}

/// A wetted thermometer: `latent − latent_slope t*` kJ/kg evaporate from it, and the water or ice on it holds
/// `bulb_heat` kJ/(kg K).
struct Bulb {
    latent: f64,
    latent_slope: f64,
    bulb_heat: f64,
    /// The eighth root of the vapour pressure as a cubic of °C: within 0.03 %, fitted here to the handbook's equation, and quick.
    eighth_root: [f64; 4],
}

const WET: Bulb = Bulb {
    latent: 2501.0,
    latent_slope: 2.326,
    bulb_heat: 4.186,
    eighth_root: [2.22978, 0.0202719, 6.83273e-6, -1.08815e-7],
};
const ICED: Bulb = Bulb {
    latent: 2830.0,
    latent_slope: 0.24,
    bulb_heat: 2.1,
    eighth_root: [2.2298, 0.0229479, 3.28761e-5, -1.78613e-7],
};
/// Vapour pressure at 0 °C, where the two part.
const FREEZING_PA: f64 = 611.153570890766;

/// Humidity ratio of air in which a wet bulb shows `wet_c`.
fn ratio_at_wet_bulb(dry_c: f64, wet_c: f64, p: f64) -> f64 {
    let saturated_pa = vapour_pressure_pa(celsius(wet_c).get::<kelvin>());
    let saturated = WATER_TO_AIR * saturated_pa / (p - saturated_pa);
    let bulb = if wet_c >= 0.0 { WET } else { ICED };
    let cooling = 1.006 * (dry_c - wet_c);
    ((bulb.latent - bulb.latent_slope * wet_c) * saturated - cooling)
        / (bulb.latent + 1.86 * dry_c - bulb.bulb_heat * wet_c)
}

/// The wet bulb of air of a humidity ratio.
fn wet_bulb_c(dry_c: f64, w: f64, p: f64) -> f64 {
    let heat = |bulb: &Bulb| 1.006 * dry_c + w * (bulb.latent + 1.86 * dry_c);
    let frozen_is_too_much = WET.latent * WATER_TO_AIR * FREEZING_PA / (p - FREEZING_PA) > heat(&WET);
    let (bulb, least, most) = if frozen_is_too_much { (&ICED, -100.0, dry_c.min(0.0)) } else { (&WET, 0.0, dry_c) };
    let balance = Balance { bulb, p, heat: heat(bulb), heat_slope: 1.006 + w * bulb.bulb_heat };
    // The wet bulb depends on little but the enthalpy and the pressure; this fit to both is mostly within 2 K.
    let (root, p_share) = ((heat(&WET) + 52.0).sqrt(), p / 101_325.0);
    let mut wet_c = (-69.97 + root * (9.684 - 0.2339 * root) + p_share * (1.748 * root - 5.807)).clamp(least, most);
    // First with a quick vapour pressure to some hundredths of a kelvin, then with the true one. What a step leaves, in
    // kelvin, is less than 0.2 % of its square.
    for _ in 0..20 {
        let (vapour_pa, ln_slope) = bulb.quick_vapour(wet_c);
        let step = balance.step(wet_c, vapour_pa, ln_slope);
        wet_c = (wet_c - step).clamp(least, most);
        if libm::fabs(step) < 2.0 {
            break;
        }
    }
    for _ in 0..20 {
        let (ln_p, ln_slope) = ln_vapour_pressure(celsius(wet_c).get::<kelvin>());
        let step = balance.step(wet_c, libm::exp(ln_p), ln_slope);
        wet_c = (wet_c - step).clamp(least, most);
        // Over ice and over water the slopes differ, and a step across 0.01 °C leaves more.
        let enough = if wet_c > 0.0 && wet_c < 0.05 { 1e-7 } else { 0.01 };
        if libm::fabs(step) < enough {
            break;
        }
    }
    wet_c
}

impl Bulb {
    /// Roughly the vapour pressure, and the slope of its logarithm.
    fn quick_vapour(&self, wet_c: f64) -> (f64, f64) {
        let [a, b, c, d] = self.eighth_root;
        let root = a + wet_c * (b + wet_c * (c + wet_c * d));
        let square = root * root;
        let fourth = square * square;
        (fourth * fourth, 8.0 * (b + wet_c * (2.0 * c + wet_c * 3.0 * d)) / root)
    }
}

/// The heat that the air brings to a bulb and that which the bulb loses by evaporation: equal at the wet bulb.
struct Balance<'a> {
    bulb: &'a Bulb,
    p: f64,
    /// What comes to a bulb at 0 °C.
    heat: f64,
    /// How much less comes for each kelvin.
    heat_slope: f64,
}

impl Balance<'_> {
    /// Halley's step, to be taken off `wet_c`, from the vapour pressure there and the slope of its logarithm.
    fn step(&self, wet_c: f64, vapour_pa: f64, ln_slope: f64) -> f64 {
        let dry_share = 1.0 / (self.p - vapour_pa);
        let saturated = WATER_TO_AIR * vapour_pa * dry_share;
        let slope_share = vapour_pa * ln_slope * dry_share;
        let saturated_slope = WATER_TO_AIR * self.p * dry_share * slope_share;
        // The vapour pressure's own bend is nearly that of exp(−B/T), and 2/T nearly 1/140; only the speed depends on it.
        let saturated_bend = saturated_slope * (2.0 * slope_share + ln_slope - 1.0 / 140.0);
        let latent = self.bulb.latent - self.bulb.latent_slope * wet_c;
        let lack = latent * saturated + self.heat_slope * wet_c - self.heat;
        let slope = latent * saturated_slope - self.bulb.latent_slope * saturated + self.heat_slope;
        let bend = latent * saturated_bend - 2.0 * self.bulb.latent_slope * saturated_slope;
        lack * slope / (slope * slope - 0.5 * lack * bend)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn pa(p: f64) -> Pressure {
        Pressure::new::<pascal>(p)
    }

    #[test]
    fn a_wet_bulb_above_the_dry_one_is_refused_by_name() {
        let refused = from_wet_bulb(celsius(20.0), celsius(20.5), pa(101_325.0)).unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, most: 20.0, .. } if argument == "wet_bulb_c"));
    }

    #[test]
    fn a_wet_bulb_colder_than_dry_air_makes_it_is_refused() {
        assert!(from_wet_bulb(celsius(30.0), celsius(5.0), pa(101_325.0)).is_err());
    }

    #[test]
    fn freezing_is_where_the_vapour_pressure_says() {
        assert!((vapour_pressure_pa(273.15) - FREEZING_PA).abs() < 1e-9);
    }

    /// Halving needs no slope and no start: slow, but hard to get wrong.
    fn wet_bulb_by_halving_c(dry_c: f64, w: f64, p: f64) -> f64 {
        let wet = ratio_at_wet_bulb(dry_c, 0.0, p) <= w;
        let (mut low, mut high) = if wet { (0.0, dry_c) } else { (-100.0, dry_c.min(-f64::MIN_POSITIVE)) };
        for _ in 0..60 {
            let middle = (low + high) / 2.0;
            if ratio_at_wet_bulb(dry_c, middle, p) > w {
                high = middle;
            } else {
                low = middle;
            }
        }
        high
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(5000))]

        #[test]
        fn the_wet_bulb_is_what_halving_finds(t in -50.0..60.0f64, ln_rh in -6.907..0.0f64, p in 50_000.0..120_000.0f64) {
            let air = from_humidity(celsius(t), libm::exp(ln_rh), pa(p)).unwrap();
            let slow = wet_bulb_by_halving_c(t, air.humidity_ratio.get::<ratio>(), p);
            prop_assert!((to_celsius(air.wet_bulb) - slow).abs() < 1e-6, "{air:?}, halving {slow}");
        }
    }

    proptest! {
        #[test]
        fn the_wet_bulb_leads_back_to_the_humidity(t in -50.0..60.0f64, rh in 0.01..1.0f64, p in 50_000.0..120_000.0f64) {
            let air = from_humidity(celsius(t), rh, pa(p)).unwrap();
            let back = from_wet_bulb(celsius(t), air.wet_bulb, pa(p)).unwrap();
            // At 0 °C the two bulbs' equations part; there is no way back there.
            if to_celsius(air.wet_bulb).abs() > 1e-6 {
                prop_assert!((back.humidity.get::<ratio>() - rh).abs() < 1e-6);
            }
        }

        #[test]
        fn the_wet_bulb_lies_between_dew_point_and_dry_bulb(t in -50.0..60.0f64, rh in 0.001..1.0f64) {
            let air = from_humidity(celsius(t), rh, pa(101_325.0)).unwrap();
            let hair = 1e-6;
            prop_assert!(air.dew_point.get::<kelvin>() <= air.wet_bulb.get::<kelvin>() + hair);
            prop_assert!(air.wet_bulb.get::<kelvin>() <= air.dry_bulb.get::<kelvin>() + hair);
        }
    }
}
