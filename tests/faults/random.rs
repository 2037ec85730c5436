//! Chance that can be had again.

/// Splitmix64: the same number gives the same chances.
#[derive(Clone)]
pub(crate) struct Random(u64);

impl Random {
    /// From a seed.
    pub(crate) const fn of(seed: u64) -> Random {
        Random(seed)
    }

    /// Any number.
    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Below a limit, which is not 0.
    pub(crate) fn below(&mut self, limit: u64) -> u64 {
        self.next() % limit
    }

    /// From one number up to another one, both among them.
    pub(crate) fn between(&mut self, least: i64, most: i64) -> i64 {
        least + self.below((most - least + 1) as u64) as i64
    }

    /// True so many times of a thousand.
    pub(crate) fn chance(&mut self, of_thousand: u64) -> bool {
        self.below(1_000) < of_thousand
    }

    /// One of several.
    pub(crate) fn pick<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.below(of.len() as u64) as usize]
    }
}
