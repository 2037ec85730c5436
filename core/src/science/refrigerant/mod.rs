//! Refrigerants: saturation, superheat, subcooling, the gas cooler of R744, the cycle as a sketch.
//!
//! Equations: tables written from CoolProp's equations of state (`tables/generate.py` says how), read by a piecewise cubic.
//! Range: −40 °C to 3 K below critical; nearer to critical and above it a refusal that names the end.
//! Accuracy: within 0.02 K or 0.05 % of CoolProp (tests/outside/REPORT.md has what was found; the nodes are placed for 0.0001 K
//! and 0.001 %). R410A and R407C are CoolProp's pseudo-pure fluids, R513A and R454B its mixtures of that name.
//! Source: CoolProp 8.0.0 (Bell, Wronski, Quoilin and Lemort, Ind. Eng. Chem. Res. 53 (2014) 2498), with the equation of state
//! that each table's first line names. Nothing here allocates unless it refuses.

mod curve;
mod cycle;
mod high_side;
#[cfg(test)]
mod laws;
mod line;
mod name;
mod saturation;
mod tables;
mod vapour;

pub use cycle::{CircuitReadings, Cycle, DOME, Dome, State};
pub use high_side::{HighSide, gas_cooler_pressure, high_side};
pub use line::Line;
pub use name::Refrigerant;
pub use saturation::{Saturation, SaturationTemperatures};
