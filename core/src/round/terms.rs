//! Terms of cover, as data: what a guarantee or a contract asks for, so that the desk goes on covering the unit.

use serde::{Deserialize, Serialize};

use crate::id::{ReadingId, Slot};

/// What cover asks for. Whether it then pays is the desk's decision and never ours.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Terms {
    /// Its name at the office.
    pub id: String,
    /// As people call it.
    pub name: String,
    /// Months from one service to the next.
    pub interval_months: u32,
    /// Days after the due day on which a service still counts. The last of them counts too.
    #[serde(default)]
    pub grace_days: u32,
    /// Months in service within which the first one is due; as `interval_months` where it is not said.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub first_within_months: Option<u32>,
    /// Who may do it: the names of the accreditations that are all needed.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub accreditations: Vec<String>,
    /// Photographs that must be there, by slot.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub shots: Vec<Slot>,
    /// Readings that must be there.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub readings: Vec<ReadingId>,
}
