//! The tables that `generate.py` writes from CoolProp, one file a refrigerant.

mod r1234yf;
mod r134a;
mod r290;
mod r32;
mod r407c;
mod r410a;
mod r454b;
mod r513a;
mod r600a;
mod r744;

use super::Refrigerant;
use super::curve::Curve;

/// A refrigerant's saturation lines. "By temperature" is over √(1 − T / Tc), "by pressure" over ln p.
pub(super) struct Table {
    /// Critical temperature, which also scales the coordinate.
    pub(super) critical_k: f64,
    /// Critical pressure.
    pub(super) critical_pa: f64,
    /// Where the curves by temperature end, 3 K below critical; all begin at [`LEAST_C`].
    pub(super) most_c: f64,
    /// From where to where the bubble temperature is tabled.
    pub(super) bubble_pa: [f64; 2],
    /// From where to where the dew temperature is tabled.
    pub(super) dew_pa: [f64; 2],
    /// ln of pascal, by temperature.
    pub(super) bubble_pressure: Curve,
    /// Kelvin, by pressure.
    pub(super) bubble_temperature: Curve,
    /// ln of pascal, by temperature.
    pub(super) dew_pressure: Curve,
    /// Kelvin, by pressure.
    pub(super) dew_temperature: Curve,
    /// kg/m³ on the bubble line, by temperature.
    pub(super) liquid_density: Curve,
    /// ln of kg/m³ on the dew line, by temperature.
    pub(super) vapour_density: Curve,
    /// J/kg on the bubble line, by temperature; 200 kJ/kg at 0 °C.
    pub(super) liquid_enthalpy: Curve,
    /// J/kg on the dew line, by temperature, from the same zero.
    pub(super) vapour_enthalpy: Curve,
    /// ln of J/(kg K) on the dew line, by temperature.
    pub(super) vapour_specific_heat: Curve,
    /// ln of J/(kg K), by temperature of the dew line: the mean of the first 60 K above it, at its pressure.
    pub(super) superheated_specific_heat: Curve,
}

/// The least temperature of every table.
pub(super) const LEAST_C: f64 = -40.0;

impl Refrigerant {
    pub(super) fn table(self) -> &'static Table {
        match self {
            Self::R290 => &r290::TABLE,
            Self::R600a => &r600a::TABLE,
            Self::R744 => &r744::TABLE,
            Self::R32 => &r32::TABLE,
            Self::R134a => &r134a::TABLE,
            Self::R1234yf => &r1234yf::TABLE,
            Self::R410A => &r410a::TABLE,
            Self::R407C => &r407c::TABLE,
            Self::R513A => &r513a::TABLE,
            Self::R454B => &r454b::TABLE,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_tables_as_committed_stay_below_150_kb() {
        let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/science/refrigerant/tables");
        let sizes: Vec<u64> = std::fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap())
            .filter(|entry| entry.file_name().to_string_lossy().starts_with('r'))
            .map(|entry| entry.metadata().unwrap().len())
            .collect();
        assert_eq!(sizes.len(), Refrigerant::ALL.len());
        assert!(sizes.iter().sum::<u64>() < 150_000, "{sizes:?}");
    }

    #[test]
    fn every_curve_that_goes_one_way_cannot_turn_between_its_nodes() {
        for refrigerant in Refrigerant::ALL {
            let table = refrigerant.table();
            for curve in [&table.bubble_temperature, &table.dew_temperature, &table.liquid_density] {
                assert!(curve.is_monotone(), "{refrigerant:?}");
            }
            for curve in [&table.bubble_pressure, &table.dew_pressure, &table.vapour_density, &table.liquid_enthalpy] {
                assert!(curve.is_monotone(), "{refrigerant:?}");
            }
        }
    }
}
