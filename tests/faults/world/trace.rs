//! What happened in a world, as a hash always and as lines to read where somebody wants them.

use std::fmt::{self, Write as _};

/// The trace of a world. Two runs of a seed have the same hash.
pub(crate) struct Trace {
    hash: u64,
    lines: Option<Vec<String>>,
    /// The last lines, for the words of a failure.
    pub(crate) steps: u64,
}

impl Trace {
    pub(crate) fn new(read: bool) -> Trace {
        Trace { hash: 0xcbf2_9ce4_8422_2325, lines: read.then(Vec::new), steps: 0 }
    }

    pub(crate) fn note(&mut self, at_ms: i64, what: fmt::Arguments<'_>) {
        self.steps += 1;
        let _ = write!(Fnv(&mut self.hash), "{at_ms} {what}");
        if let Some(lines) = &mut self.lines {
            lines.push(format!("{:>10.3} s  {what}", at_ms as f64 / 1_000.0));
        }
    }

    pub(crate) const fn hash(&self) -> u64 {
        self.hash
    }

    pub(crate) fn lines(self) -> Vec<String> {
        self.lines.unwrap_or_default()
    }
}

/// FNV-1a, 64 bits (RFC 9923).
struct Fnv<'a>(&'a mut u64);

impl fmt::Write for Fnv<'_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for byte in text.bytes() {
            *self.0 = (*self.0 ^ u64::from(byte)).wrapping_mul(0x100_0000_01b3);
        }
        Ok(())
    }
}
