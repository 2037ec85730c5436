//! The files of an office as a model: what was written may be lost with the power until it was synced, and a new name until
//! its folder was. Bytes are told as runs of a photograph, so that megabytes cost nothing.

use std::collections::BTreeMap;

use crate::random::Random;

/// Bytes `from` to `to` of the photograph of that digest.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Run {
    of: String,
    from: u64,
    to: u64,
}

/// A file.
#[derive(Clone, Debug, Default)]
pub(crate) struct Content {
    runs: Vec<Run>,
    /// So many bytes are on the disk.
    synced: u64,
}

impl Content {
    pub(crate) fn length(&self) -> u64 {
        self.runs.iter().map(|run| run.to - run.from).sum()
    }

    pub(crate) fn append(&mut self, of: &str, from: u64, to: u64) {
        match self.runs.last_mut() {
            Some(last) if last.of == of && last.to == from => last.to = to,
            _ if from == to => {}
            _ => self.runs.push(Run { of: of.to_owned(), from, to }),
        }
    }

    pub(crate) fn sync(&mut self) {
        self.synced = self.length();
    }

    /// Whether it is the whole photograph of that digest: its runs are one, from its beginning.
    pub(crate) fn is(&self, digest: &str, length: u64) -> bool {
        matches!(self.runs.as_slice(), [run] if run.of == digest && run.from == 0 && run.to == length)
    }

    fn is_synced(&self) -> bool {
        self.synced == self.length()
    }

    /// What is left of it when the power failed: what was synced, and as much of the rest as had gone by itself.
    fn without_power(&mut self, random: &mut Random) {
        let length = self.length();
        let left = self.synced + random.below(length - self.synced + 1);
        let mut room = left;
        self.runs.retain_mut(|run| {
            run.to = run.from + (run.to - run.from).min(room);
            room -= run.to - run.from;
            run.to > run.from
        });
        self.synced = left;
    }
}

/// A photograph that has its name among the originals.
#[derive(Clone, Debug)]
pub(crate) struct Original {
    pub(crate) content: Content,
    /// The name is on the disk.
    pub(crate) named: bool,
}

impl Original {
    /// Whether it would be there as a whole if the power failed now.
    pub(crate) fn lasts(&self, digest: &str, length: u64) -> bool {
        self.named && self.content.is_synced() && self.content.is(digest, length)
    }
}

/// The folder of photographs.
#[derive(Clone, Debug, Default)]
pub(crate) struct Files {
    pub(crate) parts: BTreeMap<String, Content>,
    pub(crate) originals: BTreeMap<String, Original>,
}

impl Files {
    pub(crate) fn without_power(&mut self, random: &mut Random) {
        for part in self.parts.values_mut() {
            part.without_power(random);
        }
        let mut back = Vec::new();
        for (digest, original) in &mut self.originals {
            original.content.without_power(random);
            if !original.named && random.chance(500) {
                back.push(digest.clone());
            }
            original.named = true;
        }
        for digest in back {
            let content = self.originals.remove(&digest).unwrap().content;
            self.parts.insert(digest, content);
        }
    }
}
