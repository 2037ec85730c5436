//! How wrong the model of `performance.rs` is, as measured; written by hand from `tests/outside/performance_error.tsv`.
//!
//! `tests/outside/performance_model.py` works the numbers out from the 505 rated machines of the table in the PyPI package hplib 1.9
//! (T. Tjaden, H. Hoops, K. Rösken, CC BY 4.0; from the public Keymark test results, average climate), and `tests/python` fails
//! when the numbers here are no longer what that table says. Nothing of the table itself is here.
//!
//! What one kelvin of difference between the rated point and the site adds to the doubt, as a part of the value (of its
//! logarithm), one standard uncertainty: √(a² + b²) with
//! a, of the model beside the table's fitted coefficients, the larger of half the span 16…84 % and a quarter of the span 2.5…97.5 %, so
//! that two of it hold 95 % of the machines; and b, of those coefficients beside the tests that they were fitted to (1.2533 times
//! the table's median absolute error, twice, over the mean distance of the drawn conditions).

/// The numbers of one kind of machine.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ModelError {
    /// Machines in the table.
    pub machines: u16,
    /// COP: doubt for each kelvin.
    pub cop_u_per_k: f64,
    /// Capacity, where the table's tests run at full load.
    pub capacity: Option<CapacityError>,
    /// Source temperatures that the table covers, °C.
    pub source_c: [f64; 2],
}

/// How capacity follows temperatures, and how well.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CapacityError {
    /// Growth of its logarithm with each kelvin of the source.
    pub by_source_per_k: f64,
    /// The same of the water.
    pub by_water_per_k: f64,
    /// Doubt for each kelvin.
    pub u_per_k: f64,
}

/// What the table covers on the water side: flow temperature 24…52 °C, less half of its 5 K rise.
pub const WATER_C: [f64; 2] = [21.5, 49.5];

/// Fitted on air machines; no other kind's source moves in the table.
const BY_SOURCE_PER_K: f64 = 0.02808;

/// Outdoor air to water, fixed speed.
pub const AIR_FIXED: ModelError = ModelError {
    machines: 23,
    cop_u_per_k: 0.01288,
    capacity: Some(CapacityError { by_source_per_k: BY_SOURCE_PER_K, by_water_per_k: -0.00376, u_per_k: 0.01016 }),
    source_c: [-7.0, 12.0],
};

/// Outdoor air to water, variable speed. Its tests run at part load: capacity is what the house asked for.
pub const AIR_REGULATED: ModelError =
    ModelError { machines: 366, cop_u_per_k: 0.02753, capacity: None, source_c: [-7.0, 12.0] };

/// Brine to water, fixed speed.
pub const BRINE_FIXED: ModelError = ModelError {
    machines: 53,
    cop_u_per_k: 0.01633,
    capacity: Some(CapacityError { by_source_per_k: BY_SOURCE_PER_K, by_water_per_k: -0.00422, u_per_k: 0.00717 }),
    source_c: [0.0, 0.0],
};

/// Brine to water, variable speed.
pub const BRINE_REGULATED: ModelError =
    ModelError { machines: 53, cop_u_per_k: 0.01319, capacity: None, source_c: [0.0, 0.0] };

/// Water to water, fixed speed.
pub const WATER_FIXED: ModelError = ModelError {
    machines: 10,
    cop_u_per_k: 0.00852,
    capacity: Some(CapacityError { by_source_per_k: BY_SOURCE_PER_K, by_water_per_k: -0.0042, u_per_k: 0.00585 }),
    source_c: [10.0, 10.0],
};
