//! Names of things, one type each, so that a slot is never taken for a step.

use std::borrow::Borrow;
use std::fmt;

use serde::{Deserialize, Serialize};

macro_rules! ids {
    ($( $(#[$doc:meta])* $name:ident ),+ $(,)?) => { $(
        $(#[$doc])*
        #[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(pub String);

        impl $name {
            /// The name as text.
            #[must_use]
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(&self.0)
            }
        }

        impl Borrow<str> for $name {
            fn borrow(&self) -> &str {
                &self.0
            }
        }

        impl From<&str> for $name {
            fn from(text: &str) -> Self {
                $name(text.to_owned())
            }
        }

        impl From<String> for $name {
            fn from(text: String) -> Self {
                $name(text)
            }
        }
    )+ };
}

ids! {
    /// A visit: a UUID made from the entropy of the device that began it. Never sorted on for meaning.
    VisitId,
    /// A unit's letter within a visit.
    Letter,
    /// A step of a pack.
    StepId,
    /// A phase of a pack.
    PhaseId,
    /// A reading of a pack.
    ReadingId,
    /// A shot's slot in a pack; empty for a photograph not placed yet.
    Slot,
    /// An excursion of a pack.
    ExcursionId,
    /// A condition of a pack.
    ConditionId,
    /// SHA-256 in lower-case hex.
    Digest,
}
