//! Gives each different thing a number, in the order in which they came: the same numbers on every platform and run.

use std::hash::{Hash, Hasher};

const FREE: u32 = u32::MAX;

/// Things by their numbers, and numbers by their things.
pub(super) struct Interner<K> {
    items: Vec<K>,
    table: Vec<u32>,
}

impl<K: Hash + Eq + Clone> Interner<K> {
    pub(super) fn new() -> Self {
        Interner { items: Vec::new(), table: vec![FREE; 1024] }
    }

    pub(super) fn len(&self) -> usize {
        self.items.len()
    }

    pub(super) fn get(&self, number: u32) -> Option<&K> {
        self.items.get(number as usize)
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = &K> {
        self.items.iter()
    }

    /// Is the thing there already?
    pub(super) fn find(&self, item: &K) -> bool {
        self.place(item).1.is_some()
    }

    /// The thing's number, and whether it is new.
    pub(super) fn intern(&mut self, item: &K) -> (u32, bool) {
        let (place, found) = self.place(item);
        if let Some(number) = found {
            return (number, false);
        }
        let number = self.items.len() as u32;
        self.items.push(item.clone());
        if let Some(free) = self.table.get_mut(place) {
            *free = number;
        }
        if self.items.len() * 2 > self.table.len() {
            self.grow();
        }
        (number, true)
    }

    /// Where the thing stands in the table, or would; and its number.
    fn place(&self, item: &K) -> (usize, Option<u32>) {
        let mask = self.table.len() - 1;
        let mut place = hash(item) as usize & mask;
        loop {
            match self.table.get(place) {
                Some(&number) if number != FREE => {
                    if self.items.get(number as usize) == Some(item) {
                        return (place, Some(number));
                    }
                }
                _ => return (place, None),
            }
            place = (place + 1) & mask;
        }
    }

    fn grow(&mut self) {
        self.table = vec![FREE; self.table.len() * 4];
        let items = std::mem::take(&mut self.items);
        for (number, item) in items.iter().enumerate() {
            // Nothing is found while `items` is away: every occupied place counts as another thing's.
            let (place, _) = self.place(item);
            if let Some(free) = self.table.get_mut(place) {
                *free = number as u32;
            }
        }
        self.items = items;
    }
}

fn hash(item: &impl Hash) -> u64 {
    let mut mixer = Mixer(0);
    item.hash(&mut mixer);
    mixer.finish()
}

/// Multiply and rotate: quick, and the same everywhere. Nobody attacks this table.
struct Mixer(u64);

impl Mixer {
    fn mix(&mut self, word: u64) {
        self.0 = (self.0.rotate_left(5) ^ word).wrapping_mul(0x517c_c1b7_2722_0a95);
    }
}

impl Hasher for Mixer {
    fn finish(&self) -> u64 {
        self.0 ^ (self.0 >> 32)
    }

    fn write(&mut self, bytes: &[u8]) {
        for chunk in bytes.chunks(8) {
            self.mix(chunk.iter().fold(0, |word, byte| (word << 8) | u64::from(*byte)));
        }
    }

    fn write_u8(&mut self, word: u8) {
        self.mix(u64::from(word));
    }

    fn write_u32(&mut self, word: u32) {
        self.mix(u64::from(word));
    }

    fn write_u64(&mut self, word: u64) {
        self.mix(word);
    }

    fn write_u128(&mut self, word: u128) {
        self.mix(word as u64);
        self.mix((word >> 64) as u64);
    }

    fn write_usize(&mut self, word: usize) {
        self.mix(word as u64);
    }

    fn write_isize(&mut self, word: isize) {
        self.mix(word as u64);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_thousand_things_keep_their_numbers() {
        let mut interner = Interner::new();
        for round in 0..2 {
            for thing in 0..10_000_u64 {
                let (number, new) = interner.intern(&(thing * thing));
                assert_eq!((u64::from(number), new), (thing, round == 0));
            }
        }
        assert_eq!((interner.len(), interner.get(7), interner.get(10_000)), (10_000, Some(&49), None));
    }
}
