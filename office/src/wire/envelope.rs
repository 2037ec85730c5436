//! The few keys of an event that the office must understand to keep it. The rest is its business of later.

use serde::Deserialize;

use crate::ids::{Digest, VisitId};

/// The most bytes of one event. The core's largest holds a finding of a few thousand characters.
pub(crate) const EVENT_BYTES_MAX: usize = 256 * 1024;

/// Bytes that are no event of this visit.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub(crate) enum EnvelopeError {
    #[error("it has {bytes} bytes, more than {EVENT_BYTES_MAX}")]
    TooLong { bytes: usize },
    #[error("it is not an event: {why}")]
    NotAnEvent { why: String },
    #[error("it belongs to another visit")]
    AnotherVisit,
    #[error("it has number {found} where {wanted} must be")]
    OutOfOrder { found: u64, wanted: u64 },
    #[error("it does not follow the event before it")]
    NotChained,
}

#[derive(Deserialize)]
struct Keys {
    visit: String,
    seq: u64,
    prev: String,
}

/// An event as it is stored: its bytes, and what they say about their place in the chain.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Envelope {
    /// Its number, 0 for the first.
    pub(crate) seq: u64,
    /// The hash of the event before it.
    pub(crate) prev: Digest,
    /// Its own hash.
    pub(crate) hash: Digest,
    /// The original bytes.
    pub(crate) bytes: Vec<u8>,
}

impl Envelope {
    /// Reads an event that must be of this visit and have this number.
    pub(crate) fn read(bytes: &str, visit: &VisitId, wanted: u64) -> Result<Self, EnvelopeError> {
        if bytes.len() > EVENT_BYTES_MAX {
            return Err(EnvelopeError::TooLong { bytes: bytes.len() });
        }
        let not_an_event = |why: &dyn std::fmt::Display| EnvelopeError::NotAnEvent { why: why.to_string() };
        let keys: Keys = serde_json::from_str(bytes).map_err(|e| not_an_event(&e))?;
        let prev = Digest::parse(&keys.prev).map_err(|e| not_an_event(&format!("'prev' should be a hash, {e}")))?;
        if keys.visit != visit.as_str() {
            return Err(EnvelopeError::AnotherVisit);
        }
        if keys.seq != wanted {
            return Err(EnvelopeError::OutOfOrder { found: keys.seq, wanted });
        }
        if keys.seq == 0 && prev != Digest::ZERO {
            return Err(EnvelopeError::NotChained);
        }
        Ok(Self { seq: keys.seq, prev, hash: Digest::of(bytes.as_bytes()), bytes: bytes.as_bytes().to_vec() })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(bytes: &str) -> Result<Envelope, EnvelopeError> {
        Envelope::read(bytes, &VisitId::parse("v1").unwrap(), 0)
    }

    #[test]
    fn the_hash_is_over_the_bytes_as_they_came() {
        let bytes = format!(r#"{{ "visit":"v1","seq":0,"prev":"{}" }}"#, Digest::ZERO);
        let event = check(&bytes).unwrap();
        assert_eq!((event.hash, event.bytes), (Digest::of(bytes.as_bytes()), bytes.into_bytes()));
    }

    #[test]
    fn a_key_said_twice_is_no_event() {
        // Two readers could take different ones of the two (RFC 8259, section 4).
        let bytes = format!(r#"{{"visit":"v1","seq":1,"seq":0,"prev":"{}"}}"#, Digest::ZERO);
        assert!(matches!(check(&bytes), Err(EnvelopeError::NotAnEvent { .. })));
    }

    #[test]
    fn what_is_no_event_of_this_visit_is_refused() {
        assert!(matches!(check("<html>"), Err(EnvelopeError::NotAnEvent { .. })));
        assert!(matches!(check(r#"{"visit":"v1","seq":0,"prev":"beef"}"#), Err(EnvelopeError::NotAnEvent { .. })));
        let other = format!(r#"{{"visit":"v2","seq":0,"prev":"{}"}}"#, Digest::ZERO);
        assert_eq!(check(&other), Err(EnvelopeError::AnotherVisit));
        let later = format!(r#"{{"visit":"v1","seq":7,"prev":"{}"}}"#, Digest::ZERO);
        assert_eq!(check(&later), Err(EnvelopeError::OutOfOrder { found: 7, wanted: 0 }));
    }
}
