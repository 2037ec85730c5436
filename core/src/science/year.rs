//! What a changed COP comes to in a year: electricity, and money where a difference can be told.
//!
//! ```text
//! heat = 365 · litres a day · ρ(cold) (h(hot) − h(cold))        electricity = heat / COP        saved = heat (1 / COP found − 1 / COP left)
//! ```
//! Both COP at the same conditions, taken to hold all year: the year's own mean differs, which is the larger part of what is not
//! known; the doubt given is that of the COP, the use and the price.
//!
//! Range: 1…100 000 litres a day, water 0…100 °C, hot above cold, COP 0.5…20, price 0…100 a kWh in any currency.
//! Accuracy: first order; with a COP in doubt by more than 15 % the upper end is too low.
//! Source: energy balance; water IAPWS SR6-08(2011). No figure without a difference: the project's own rule.

use super::change::{Change, Difference};
use super::error::{ScienceError, within};
use super::quantity::{celsius, within_temperatures};
use super::uncertainty::Doubted;
use super::water;
use uom::si::available_energy::joule_per_kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;

const DAYS: f64 = 365.0;
const J_OF_KWH: f64 = 3.6e6;
const L_OF_M3: f64 = 1000.0;

/// Heat in kWh a year that hot water takes: litres a day (metered cold) and its temperatures in °C before and after.
pub fn hot_water_kwh(litres_a_day: &Doubted, cold_c: &Doubted, hot_c: &Doubted) -> Result<Doubted, ScienceError> {
    Doubted::through([litres_a_day, cold_c, hot_c], |[litres, cold_c, hot_c]| {
        within("litres_a_day", litres, 1.0, 100_000.0)?;
        let cold = water::liquid("cold_c", celsius(cold_c))?;
        within_temperatures("hot_c", celsius(hot_c), celsius(cold_c), celsius(100.0))?;
        let rise = water::liquid("hot_c", celsius(hot_c))?.enthalpy - cold.enthalpy;
        let mass_kg = DAYS * litres / L_OF_M3 * cold.density.get::<kilogram_per_cubic_meter>();
        Ok(mass_kg * rise.get::<joule_per_kilogram>() / J_OF_KWH)
    })
}

/// A year before and after the work.
#[derive(Debug, Clone, PartialEq)]
pub struct Year {
    /// Electricity with the COP as found, kWh.
    pub found_kwh: Doubted,
    /// Electricity with the COP as left, kWh.
    pub left_kwh: Doubted,
    /// The one less the other, kWh; below zero if the machine takes more than before.
    pub saved_kwh: Doubted,
    /// What that costs; none where no difference can be told.
    pub saved_cost: Option<Doubted>,
}

/// A year's electricity for `heat_kwh` with the COP of before and after the work, at a price for each kWh.
pub fn year(heat_kwh: &Doubted, cop: &Change, price_a_kwh: &Doubted) -> Result<Year, ScienceError> {
    within("heat_kwh", heat_kwh.value(), 0.0, 1e7)?;
    within("cop as found", cop.found.value(), 0.5, 20.0)?;
    within("cop as left", cop.left.value(), 0.5, 20.0)?;
    within("price_a_kwh", price_a_kwh.value(), 0.0, 100.0)?;
    let [found_kwh, left_kwh] = [&cop.found, &cop.left].map(|cop| heat_kwh.over(cop));
    let saved_kwh = found_kwh.less(&left_kwh);
    let saved_cost = (cop.verdict != Difference::NoDifference).then(|| saved_kwh.times(price_a_kwh));
    Ok(Year { found_kwh, left_kwh, saved_kwh, saved_cost })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::science::change::Better;
    use crate::science::uncertainty::Cause;

    fn doubted(value: f64, cause: &'static str, u: f64) -> Doubted {
        Doubted::new("value", value).unwrap().because("u", Cause::new(cause), u).unwrap()
    }

    fn of(found: Doubted, left: Doubted) -> Year {
        let heat = doubted(2400.0, "use", 240.0);
        let change = Change::between(&found, &left, Better::Higher).unwrap();
        year(&heat, &change, &doubted(0.3, "price", 0.01)).unwrap()
    }

    #[test]
    fn two_hundred_litres_a_day_take_some_three_and_a_half_megawatt_hours() {
        // 365 · 200 kg · 4.186 kJ/(kg K) · 40 K = 3.395 MWh, by hand.
        let none = |value| doubted(value, "none", 0.0);
        let heat = hot_water_kwh(&none(200.0), &none(15.0), &none(55.0)).unwrap();
        assert!((heat.value() / 3395.0 - 1.0).abs() < 0.003);
    }

    #[test]
    fn no_money_where_no_difference_can_be_told() {
        let unclear = of(doubted(3.0, "found", 0.2), doubted(3.3, "left", 0.2));
        assert!(unclear.saved_cost.is_none());
        let clear = of(doubted(2.4, "found", 0.05), doubted(3.0, "left", 0.05));
        // 2400 (1/2.4 − 1/3.0) = 200 kWh, at 0.3: 60, by hand.
        assert!((clear.saved_cost.unwrap().value() - 60.0).abs() < 1e-9);
    }

    #[test]
    fn what_found_and_left_share_does_not_widen_the_saving() {
        let shared = of(doubted(2.4, "meter", 0.05), doubted(3.0, "meter", 0.0625));
        let apart = of(doubted(2.4, "found", 0.05), doubted(3.0, "left", 0.0625));
        assert!(shared.saved_kwh.standard_u() < apart.saved_kwh.standard_u());
    }
}
