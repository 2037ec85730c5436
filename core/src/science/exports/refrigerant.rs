//! Refrigerants: saturation, superheat, subcooling, the gas cooler.

use crate::science::ScienceError;
use crate::science::quantity::{celsius, to_celsius};
use crate::science::refrigerant::{self, CircuitReadings, HighSide, Line, Refrigerant};
use uom::si::available_energy::joule_per_kilogram;
use uom::si::f64::{Length, Pressure};
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;
use uom::si::pressure::pascal;
use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
use uom::si::temperature_interval::kelvin;

/// Liquid on the bubble line and vapour on the dew line at one temperature; pressures absolute.
#[derive(Debug, Clone, uniffi::Record)]
pub struct SaturationValues {
    /// Of the liquid.
    pub bubble_pressure_pa: f64,
    /// Of the vapour.
    pub dew_pressure_pa: f64,
    /// Of the liquid.
    pub liquid_density_kg_m3: f64,
    /// Of the vapour.
    pub vapour_density_kg_m3: f64,
    /// Between the two.
    pub latent_heat_j_kg: f64,
    /// Of the liquid; 200 kJ/kg at 0 °C.
    pub liquid_enthalpy_j_kg: f64,
    /// Of the vapour.
    pub vapour_enthalpy_j_kg: f64,
    /// Of the vapour, at constant pressure.
    pub vapour_specific_heat_j_kg_k: f64,
}

/// Where a refrigerant boils and condenses at one pressure.
#[derive(Debug, Clone, uniffi::Record)]
pub struct SaturationTemperatureValues {
    /// Where the liquid begins to boil.
    pub bubble_c: f64,
    /// Where the vapour begins to condense.
    pub dew_c: f64,
}

/// The corners of a cycle; pressures are those that were given.
#[derive(Debug, Clone, uniffi::Record)]
pub struct CycleValues {
    /// Into the compressor.
    pub suction_enthalpy_j_kg: f64,
    /// Out of it, where its temperature was given.
    pub discharge_enthalpy_j_kg: Option<f64>,
    /// Before and after the expansion.
    pub liquid_enthalpy_j_kg: f64,
    /// Of the vapour that is sucked.
    pub superheat_k: f64,
    /// Of the liquid.
    pub subcooling_k: f64,
    /// Of the refrigerant alone; none where it cannot be told.
    pub cop: Option<f64>,
}

/// What the readings after a condenser or gas cooler mean.
#[derive(Debug, Clone, uniffi::Enum)]
pub enum HighSideValues {
    /// Below critical.
    Condenser {
        /// Colder than the bubble point.
        subcooling_k: f64,
    },
    /// R744 above critical.
    GasCooler {
        /// Absolute.
        pressure_pa: f64,
        /// Outlet warmer than what cools it enters.
        approach_k: f64,
    },
}

fn line(pressure_pa_gauge: f64, line_temperature_c: f64, altitude_m: f64) -> Line {
    Line {
        gauge_pressure: Pressure::new::<pascal>(pressure_pa_gauge),
        temperature: celsius(line_temperature_c),
        altitude: Length::new::<meter>(altitude_m),
    }
}

/// [`Refrigerant::saturation`].
#[uniffi::export]
pub fn saturation(refrigerant: String, temperature_c: f64) -> Result<SaturationValues, ScienceError> {
    let state = Refrigerant::named(&refrigerant)?.saturation(celsius(temperature_c))?;
    Ok(SaturationValues {
        bubble_pressure_pa: state.bubble_pressure.get::<pascal>(),
        dew_pressure_pa: state.dew_pressure.get::<pascal>(),
        liquid_density_kg_m3: state.liquid_density.get::<kilogram_per_cubic_meter>(),
        vapour_density_kg_m3: state.vapour_density.get::<kilogram_per_cubic_meter>(),
        latent_heat_j_kg: state.latent_heat().get::<joule_per_kilogram>(),
        liquid_enthalpy_j_kg: state.liquid_enthalpy.get::<joule_per_kilogram>(),
        vapour_enthalpy_j_kg: state.vapour_enthalpy.get::<joule_per_kilogram>(),
        vapour_specific_heat_j_kg_k: state.vapour_specific_heat.get::<joule_per_kilogram_kelvin>(),
    })
}

/// [`Refrigerant::saturation_temperatures`].
#[uniffi::export]
pub fn saturation_temperatures(
    refrigerant: String,
    pressure_pa: f64,
) -> Result<SaturationTemperatureValues, ScienceError> {
    let both = Refrigerant::named(&refrigerant)?.saturation_temperatures(Pressure::new::<pascal>(pressure_pa))?;
    Ok(SaturationTemperatureValues { bubble_c: to_celsius(both.bubble), dew_c: to_celsius(both.dew) })
}

/// [`Line::superheat`].
#[uniffi::export]
pub fn superheat_k(
    refrigerant: String,
    pressure_pa_gauge: f64,
    line_temperature_c: f64,
    altitude_m: f64,
) -> Result<f64, ScienceError> {
    let line = line(pressure_pa_gauge, line_temperature_c, altitude_m);
    Ok(line.superheat(Refrigerant::named(&refrigerant)?)?.get::<kelvin>())
}

/// [`Line::subcooling`].
#[uniffi::export]
pub fn subcooling_k(
    refrigerant: String,
    pressure_pa_gauge: f64,
    line_temperature_c: f64,
    altitude_m: f64,
) -> Result<f64, ScienceError> {
    let line = line(pressure_pa_gauge, line_temperature_c, altitude_m);
    Ok(line.subcooling(Refrigerant::named(&refrigerant)?)?.get::<kelvin>())
}

/// [`refrigerant::high_side`].
#[uniffi::export]
pub fn high_side(
    refrigerant: String,
    pressure_pa_gauge: f64,
    line_temperature_c: f64,
    altitude_m: f64,
    cooled_by_c: f64,
) -> Result<HighSideValues, ScienceError> {
    let outlet = line(pressure_pa_gauge, line_temperature_c, altitude_m);
    Ok(match refrigerant::high_side(Refrigerant::named(&refrigerant)?, &outlet, celsius(cooled_by_c))? {
        HighSide::Condenser { subcooling } => HighSideValues::Condenser { subcooling_k: subcooling.get::<kelvin>() },
        HighSide::GasCooler { pressure, approach } => {
            HighSideValues::GasCooler { pressure_pa: pressure.get::<pascal>(), approach_k: approach.get::<kelvin>() }
        }
    })
}

/// [`refrigerant::gas_cooler_pressure`].
#[uniffi::export]
pub fn gas_cooler_pressure_pa(evaporating_c: f64, gas_cooler_outlet_c: f64) -> Result<f64, ScienceError> {
    Ok(refrigerant::gas_cooler_pressure(celsius(evaporating_c), celsius(gas_cooler_outlet_c))?.get::<pascal>())
}

/// [`Refrigerant::vapour_enthalpy`].
#[uniffi::export]
pub fn vapour_enthalpy_j_kg(refrigerant: String, pressure_pa: f64, temperature_c: f64) -> Result<f64, ScienceError> {
    let (pressure, temperature) = (Pressure::new::<pascal>(pressure_pa), celsius(temperature_c));
    Ok(Refrigerant::named(&refrigerant)?.vapour_enthalpy(pressure, temperature)?.get::<joule_per_kilogram>())
}

/// [`Refrigerant::cycle`]; pressures absolute.
#[uniffi::export]
pub fn refrigerant_cycle(
    refrigerant: String,
    low_pressure_pa: f64,
    high_pressure_pa: f64,
    suction_c: f64,
    discharge_c: Option<f64>,
    liquid_c: f64,
) -> Result<CycleValues, ScienceError> {
    let cycle = Refrigerant::named(&refrigerant)?.cycle(&CircuitReadings {
        low_pressure: Pressure::new::<pascal>(low_pressure_pa),
        high_pressure: Pressure::new::<pascal>(high_pressure_pa),
        suction: celsius(suction_c),
        discharge: discharge_c.map(celsius),
        liquid: celsius(liquid_c),
    })?;
    Ok(CycleValues {
        suction_enthalpy_j_kg: cycle.suction.enthalpy.get::<joule_per_kilogram>(),
        discharge_enthalpy_j_kg: cycle.discharge.map(|state| state.enthalpy.get::<joule_per_kilogram>()),
        liquid_enthalpy_j_kg: cycle.liquid.enthalpy.get::<joule_per_kilogram>(),
        superheat_k: cycle.superheat.get::<kelvin>(),
        subcooling_k: cycle.subcooling.get::<kelvin>(),
        cop: cycle.cop,
    })
}
