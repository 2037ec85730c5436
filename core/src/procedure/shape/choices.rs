//! The words that some fields choose from.

/// What a reading can be.
pub const QUANTITIES: &[&str] = &[
    "temperature",
    "relative-humidity",
    "flow",
    "volume",
    "pressure",
    "voltage",
    "current",
    "power",
    "capacitance",
    "insulation",
    "acidity",
    "conductivity",
    "hardness",
    "share",
    "dose",
    "minutes",
    "count",
    "text",
];

/// What the core judges by the facts at the moment in which it is done.
pub const ACTS: &[&str] =
    &["spray", "energise", "insulation-test", "hand-over", "open-water", "open-fitting", "open-circuit"];

/// The hazards that the core has cautions for.
pub const HAZARDS: &[&str] = &[
    "shock",
    "stored-energy",
    "acid",
    "alkali",
    "spray",
    "hot",
    "fan",
    "flammable",
    "height",
    "scald",
    "backflow",
    "sharp",
    "refrigerant",
    "disposal",
    "chlorine",
    "high-pressure",
    "suffocation",
];

/// What a photograph can show, for its drawing.
pub const VIEWS: &[&str] =
    &["plate", "face", "wiring", "display", "whole", "feet", "surface", "hoses", "strip", "lock", "part"];

/// What a chemical is to its neighbours in the van.
pub const CHEMICAL_KINDS: &[&str] = &["acid", "alkali", "hypochlorite", "neutral"];

/// How a chemical is measured.
pub const FORMS: &[&str] = &["liquid", "powder"];

/// What the core makes of a condition's answer.
pub const CONDITION_ROLES: &[&str] = &["exchanger-metal", "descaler-acid"];

/// The part that a reading takes in a computation of the core.
pub const READING_ROLES: &[&str] = &[
    "air-on",
    "air-off",
    "water-in",
    "water-out",
    "flow",
    "power",
    "circuit-low",
    "circuit-high",
    "circuit-suction",
    "circuit-discharge",
    "circuit-liquid",
    "loop-temperature",
    "fitting-temperature",
    "supply-ph",
    "supply-conductivity",
    "supply-hardness",
    "supply-alkalinity",
    "rinse-ph",
    "rinse-conductivity",
    "water-use",
    "insulation",
    "winding",
    "capacitor",
    "capacitor-label",
    "tap-hot",
    "serial",
    "model",
];
