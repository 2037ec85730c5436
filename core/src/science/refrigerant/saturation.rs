//! A refrigerant where liquid and vapour stand beside each other.

use super::tables::LEAST_C;
use super::{Refrigerant, curve::Curve};
use crate::science::ScienceError;
use crate::science::error::within;
use crate::science::quantity::{to_celsius, within_c};
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::{AvailableEnergy, MassDensity, Pressure, SpecificHeatCapacity, ThermodynamicTemperature};
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::thermodynamic_temperature::kelvin;

/// Liquid on the bubble line and vapour on the dew line, both at one temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Saturation {
    /// Where the first bubble forms in the liquid, absolute.
    pub bubble_pressure: Pressure,
    /// Where the first drop forms in the vapour, absolute. The same for a pure fluid, lower for a blend.
    pub dew_pressure: Pressure,
    /// Density of the liquid.
    pub liquid_density: MassDensity,
    /// Density of the vapour.
    pub vapour_density: MassDensity,
    /// Enthalpy of the liquid; 200 kJ/kg at 0 °C.
    pub liquid_enthalpy: AvailableEnergy,
    /// Enthalpy of the vapour, from the same zero.
    pub vapour_enthalpy: AvailableEnergy,
    /// Specific heat of the vapour at constant pressure, within 0.1 % of CoolProp.
    pub vapour_specific_heat: SpecificHeatCapacity,
    /// The mean of the first 60 K above the dew line at its pressure, within 0.1 % of CoolProp.
    pub(super) superheated_specific_heat: SpecificHeatCapacity,
}

impl Saturation {
    /// Heat to turn the liquid into the vapour.
    pub fn latent_heat(&self) -> AvailableEnergy {
        self.vapour_enthalpy - self.liquid_enthalpy
    }
}

/// Where a refrigerant boils and condenses at one pressure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SaturationTemperatures {
    /// Where the liquid begins to boil.
    pub bubble: ThermodynamicTemperature,
    /// Where the vapour begins to condense. The same for a pure fluid, higher for a blend.
    pub dew: ThermodynamicTemperature,
}

impl Refrigerant {
    /// Both phases at `temperature` (−40 °C to 3 K below critical).
    pub fn saturation(self, temperature: ThermodynamicTemperature) -> Result<Saturation, ScienceError> {
        let table = self.table();
        within_c("temperature_c", temperature, LEAST_C, table.most_c)?;
        let s = (1.0 - temperature.get::<kelvin>() / table.critical_k).sqrt();
        let at = |curve: &Curve| {
            curve.at(s).ok_or_else(|| {
                ScienceError::out_of_range("temperature_c", to_celsius(temperature), LEAST_C, table.most_c)
            })
        };
        Ok(Saturation {
            bubble_pressure: Pressure::new::<pascal>(libm::exp(at(&table.bubble_pressure)?)),
            dew_pressure: Pressure::new::<pascal>(libm::exp(at(&table.dew_pressure)?)),
            liquid_density: MassDensity::new::<kilogram_per_cubic_meter>(at(&table.liquid_density)?),
            vapour_density: MassDensity::new::<kilogram_per_cubic_meter>(libm::exp(at(&table.vapour_density)?)),
            liquid_enthalpy: AvailableEnergy::new::<joule_per_kilogram>(at(&table.liquid_enthalpy)?),
            vapour_enthalpy: AvailableEnergy::new::<joule_per_kilogram>(at(&table.vapour_enthalpy)?),
            vapour_specific_heat: SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(libm::exp(at(
                &table.vapour_specific_heat
            )?)),
            superheated_specific_heat: SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(libm::exp(at(
                &table.superheated_specific_heat
            )?)),
        })
    }

    /// Absolute; above it liquid and vapour are one.
    pub fn critical_pressure(self) -> Pressure {
        Pressure::new::<pascal>(self.table().critical_pa)
    }

    /// Bubble and dew temperature at an absolute `pressure`, from the dew pressure at −40 °C to that 3 K below critical.
    pub fn saturation_temperatures(self, pressure: Pressure) -> Result<SaturationTemperatures, ScienceError> {
        // The dew line ends at the lower pressure, so it names the range.
        let dew = self.dew_temperature(pressure)?;
        Ok(SaturationTemperatures { dew, bubble: self.bubble_temperature(pressure)? })
    }

    /// Bubble temperature at an absolute `pressure`, from the dew pressure at −40 °C to the bubble pressure 3 K below critical.
    pub fn bubble_temperature(self, pressure: Pressure) -> Result<ThermodynamicTemperature, ScienceError> {
        let table = self.table();
        boiling(&table.bubble_temperature, table.bubble_pa, pressure)
    }

    /// Dew temperature at an absolute `pressure`, in the range of [`Self::saturation_temperatures`].
    pub fn dew_temperature(self, pressure: Pressure) -> Result<ThermodynamicTemperature, ScienceError> {
        let table = self.table();
        boiling(&table.dew_temperature, table.dew_pa, pressure)
    }
}

fn boiling(
    curve: &Curve,
    [least, most]: [f64; 2],
    pressure: Pressure,
) -> Result<ThermodynamicTemperature, ScienceError> {
    let p = pressure.get::<pascal>();
    within("pressure_pa", p, least, most)?;
    let t_k = curve.at(libm::log(p)).ok_or_else(|| ScienceError::out_of_range("pressure_pa", p, least, most))?;
    Ok(ThermodynamicTemperature::new::<kelvin>(t_k))
}
