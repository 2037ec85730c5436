//! Random bytes, out of those that the shell handed in at opening.

use sha2::{Digest as _, Sha256};

/// Random bytes, drawn out of what the shell handed in at opening.
pub(super) struct Entropy {
    pub(super) seed: Vec<u8>,
    pub(super) drawn: u64,
}

impl Entropy {
    pub(super) fn draw(&mut self) -> [u8; 32] {
        self.drawn += 1;
        let mut hash = Sha256::new();
        hash.update(&self.seed);
        hash.update(self.drawn.to_be_bytes());
        hash.finalize().into()
    }
}
