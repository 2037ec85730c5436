//! Heat given to the water and the coefficient of performance, with their doubt.
//!
//! ```text
//! Q = V' ρ(inlet) (h(outlet) − h(inlet))        COP = Q / P        into a bucket: ρ(outlet)
//! ∂Q/∂V' = Q/V'     ∂Q/∂outlet = V' ρ cp(outlet)     ∂Q/∂inlet = −V' ρ cp(inlet) − Q · expansion(inlet)
//! ```
//! Range: flow 0.1…1000 l/min, water 0…100 °C, outlet not colder than inlet, power 10…100 000 W.
//! Accuracy: that of the readings; the water's own properties add less than 0.1 %, which is left out.
//! Source: energy balance of a steady flow; properties IAPWS SR6-08(2011); doubt JCGM 100:2008, eq. 10 and 16.

use super::error::{ScienceError, within};
use super::flow::{LoopFlow, OpenFlow};
use super::quantity::{celsius, within_temperatures};
use super::uncertainty::{Cause, Doubted};
use super::water::{self, Water};
use uom::si::available_energy::joule_per_kilogram;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_coefficient::per_kelvin;

/// Litres a minute in one cubic metre a second.
const L_MIN_OF_M3_S: f64 = 60_000.0;

/// A reading at a border: its value and its standard uncertainty, both in the argument's unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// What the instrument shows.
    pub value: f64,
    /// Its own standard uncertainty, shared with no other reading.
    pub standard_u: f64,
}

/// What a heat test measures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeatTest {
    /// Water flow at the inlet, l/min.
    pub flow_l_min: Reading,
    /// Water in, °C.
    pub inlet_c: Reading,
    /// Water out, °C.
    pub outlet_c: Reading,
    /// Standard uncertainty of an error that both temperatures share, K.
    pub shared_thermometer_u: f64,
    /// Electric power taken, W.
    pub power_w: Reading,
}

/// What a heat test tells.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatResult {
    /// Heat given to the water, W.
    pub heat_w: Doubted,
    /// Coefficient of performance.
    pub cop: Doubted,
}

impl HeatTest {
    /// Works out heat and COP.
    pub fn result(&self) -> Result<HeatResult, ScienceError> {
        within("flow_u", self.flow_l_min.standard_u, 0.0, 1000.0)?;
        within("power_u", self.power_w.standard_u, 0.0, 100_000.0)?;
        within("shared_thermometer_u", self.shared_thermometer_u, 0.0, 50.0)?;
        within("inlet_u", self.inlet_c.standard_u, 0.0, 50.0)?;
        within("outlet_u", self.outlet_c.standard_u, 0.0, 50.0)?;

        let flow = doubted("flow_l_min", "flow_u", self.flow_l_min)?;
        let shared = Cause::new("thermometer, shared");
        let u = self.shared_thermometer_u;
        let inlet = doubted("inlet_c", "inlet_u", self.inlet_c)?.because("shared_thermometer_u", shared.clone(), u)?;
        let outlet = doubted("outlet_c", "outlet_u", self.outlet_c)?.because("shared_thermometer_u", shared, u)?;
        let power = doubted("power_w", "power_u", self.power_w)?;

        let heat_w = heat_w(&LoopFlow::metered(flow)?, &inlet, &outlet)?;
        let cop = cop(&heat_w, &power)?;
        Ok(HeatResult { heat_w, cop })
    }
}

/// Coefficient of performance, from heat and electric power (10…100 000 W).
pub fn cop(heat_w: &Doubted, power_w: &Doubted) -> Result<Doubted, ScienceError> {
    within("power_w", power_w.value(), 10.0, 100_000.0)?;
    Ok(heat_w.over(power_w))
}

fn doubted(argument: &'static str, argument_u: &'static str, reading: Reading) -> Result<Doubted, ScienceError> {
    Doubted::new(argument, reading.value)?.because(argument_u, Cause::new(argument), reading.standard_u)
}

/// Heat in watt that a flow, metered at the inlet, takes up between two temperatures in °C.
pub fn heat_w(flow: &LoopFlow, inlet_c: &Doubted, outlet_c: &Doubted) -> Result<Doubted, ScienceError> {
    let (cold, hot) = ends(inlet_c, outlet_c)?;
    let heat = taken_up_w(flow.l_min(), &cold, &hot, &cold);
    let by_inlet = heat.by_inlet - heat.w * cold.expansion.get::<per_kelvin>();
    Ok(Doubted::from_slopes(heat.w, &[(heat.by_flow, flow.l_min()), (by_inlet, inlet_c), (heat.by_outlet, outlet_c)]))
}

/// The same of water that passes once and runs hot into a bucket.
pub fn once_through_w(flow: &OpenFlow, inlet_c: &Doubted, outlet_c: &Doubted) -> Result<Doubted, ScienceError> {
    let (cold, hot) = ends(inlet_c, outlet_c)?;
    let heat = taken_up_w(flow.l_min(), &cold, &hot, &hot);
    let by_outlet = heat.by_outlet - heat.w * hot.expansion.get::<per_kelvin>();
    Ok(Doubted::from_slopes(heat.w, &[(heat.by_flow, flow.l_min()), (heat.by_inlet, inlet_c), (by_outlet, outlet_c)]))
}

fn ends(inlet_c: &Doubted, outlet_c: &Doubted) -> Result<(Water, Water), ScienceError> {
    let (t_in, t_out) = (celsius(inlet_c.value()), celsius(outlet_c.value()));
    let cold = water::liquid("inlet_c", t_in)?;
    within_temperatures("outlet_c", t_out, t_in, celsius(100.0))?;
    Ok((cold, water::liquid("outlet_c", t_out)?))
}

/// Heat in watt with its slopes, but for what the metered water's own density adds.
struct TakenUp {
    w: f64,
    by_flow: f64,
    by_inlet: f64,
    by_outlet: f64,
}

fn taken_up_w(flow_l_min: &Doubted, cold: &Water, hot: &Water, metered: &Water) -> TakenUp {
    let flow_m3_s = flow_l_min.value() / L_MIN_OF_M3_S;
    let mass_kg_s = flow_m3_s * metered.density.get::<kilogram_per_cubic_meter>();
    let w = mass_kg_s * (hot.enthalpy - cold.enthalpy).get::<joule_per_kilogram>();
    TakenUp {
        w,
        by_flow: w / flow_l_min.value(),
        by_inlet: -mass_kg_s * cold.specific_heat.get::<joule_per_kilogram_kelvin>(),
        by_outlet: mass_kg_s * hot.specific_heat.get::<joule_per_kilogram_kelvin>(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn test(inlet: f64, outlet: f64, own_u: f64, shared_u: f64) -> HeatTest {
        let reading = |value, standard_u| Reading { value, standard_u };
        HeatTest {
            flow_l_min: reading(10.0, 0.0),
            inlet_c: reading(inlet, own_u),
            outlet_c: reading(outlet, own_u),
            shared_thermometer_u: shared_u,
            power_w: reading(950.0, 0.0),
        }
    }

    #[test]
    fn what_both_thermometers_share_hardly_matters() {
        let own = test(45.0, 50.0, 0.15, 0.0).result().unwrap();
        let shared = test(45.0, 50.0, 0.0, 0.15).result().unwrap();
        assert!(shared.heat_w.standard_u() < own.heat_w.standard_u() / 100.0);
    }

    #[test]
    fn an_outlet_colder_than_the_inlet_is_refused_by_name() {
        let refused = test(50.0, 45.0, 0.1, 0.0).result().unwrap_err();
        assert!(matches!(refused, ScienceError::OutOfRange { argument, .. } if argument == "outlet_c"));
    }

    proptest! {
        #[test]
        fn two_steps_of_heating_add_up(a in 0.0..100.0f64, b in 0.0..100.0f64, c in 0.0..100.0f64) {
            let mut t = [a, b, c];
            t.sort_by(f64::total_cmp);
            let enthalpy = |t| water::liquid("t", celsius(t)).unwrap().enthalpy.get::<joule_per_kilogram>();
            // The same mass: heat for each kilogram, whatever its density at the meter.
            let rise = |from: f64, to: f64| {
                let rho = water::liquid("t", celsius(from)).unwrap().density.get::<kilogram_per_cubic_meter>();
                test(from, to, 0.0, 0.0).result().unwrap().heat_w.value() / (rho * 10.0 / L_MIN_OF_M3_S)
            };
            prop_assert!((rise(t[0], t[1]) + rise(t[1], t[2]) - rise(t[0], t[2])).abs() < 1e-6);
            prop_assert!((rise(t[0], t[2]) - (enthalpy(t[2]) - enthalpy(t[0]))).abs() < 1e-6);
        }
    }
}
