//! What units of one visit share: isolators, valves, a cylinder.

use serde::{Deserialize, Serialize};

/// Facts that are one and the same thing for several units.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Shared {
    /// The letters of the units; all of the visit where none is named.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub units: Vec<String>,
    /// Names of facts: `supply`, `valves`, `tank`. A name that is not known here is passed over.
    pub facts: Vec<String>,
}
