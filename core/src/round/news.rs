//! What comes down from the office.

use serde::{Deserialize, Serialize};

use super::{Assignment, Technician};

/// Everything that the office hands out. What it leaves out stays as it was.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct News {
    /// Assignments, new ones and newer versions.
    pub assignments: Vec<Assignment>,
    /// Who works with this device.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub technician: Option<Technician>,
}
