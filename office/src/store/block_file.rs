//! A file that grows in whole blocks: its parts come in odd sizes, and the system writes aligned blocks in half the time.

use std::fs::File;
use std::io::{self, IoSlice, Write as _};

use bytes::Bytes;

/// Bytes of a block. Larger ones would only stay longer in memory.
const BLOCK: u64 = 128 * 1024;

/// A part of fewer bytes is copied: a small one may hold a large buffer in memory, of which it is all that is left.
const SMALL: usize = 16 * 1024;

/// The file, and what of its last block is not written yet.
#[derive(Debug)]
pub(crate) struct BlockFile {
    file: File,
    /// How far it is written.
    written: u64,
    held: Held,
    /// A write failed: how much of the last block the file has is not known, and nothing more may follow it.
    is_torn: bool,
}

impl BlockFile {
    /// Goes on with a file, which is open for appending, behind so many bytes.
    pub(crate) fn after(file: File, written: u64) -> Self {
        Self { file, written, held: Held::default(), is_torn: false }
    }

    /// Takes the next bytes, and writes the blocks that they fill.
    ///
    /// # Errors
    /// When a block cannot be written, then and from then on.
    pub(crate) fn take(&mut self, mut bytes: Bytes) -> io::Result<()> {
        while !bytes.is_empty() {
            let room = BLOCK - (self.written + self.held.bytes) % BLOCK;
            let fits = usize::try_from(room).unwrap_or(usize::MAX).min(bytes.len());
            self.held.add(bytes.split_to(fits));
            if fits as u64 == room {
                self.write_held()?;
            }
        }
        Ok(())
    }

    /// Writes what is held, and gives the file, in which everything now stands.
    ///
    /// # Errors
    /// When it cannot be written, or something before it could not.
    pub(crate) fn into_file(mut self) -> (File, io::Result<()>) {
        let written = self.write_held();
        (self.file, written)
    }

    fn write_held(&mut self) -> io::Result<()> {
        if self.is_torn {
            return Err(io::Error::other("an earlier part could not be written"));
        }
        self.is_torn = true;
        self.held.write_to(&mut self.file)?;
        self.is_torn = false;
        self.written += self.held.bytes;
        self.held = Held::default();
        Ok(())
    }
}

/// Parts in their order, as they came.
#[derive(Debug, Default)]
struct Held {
    parts: Vec<Bytes>,
    /// Small ones, behind the others.
    small: Vec<u8>,
    bytes: u64,
}

impl Held {
    fn add(&mut self, part: Bytes) {
        self.bytes += part.len() as u64;
        if part.len() < SMALL {
            self.small.extend_from_slice(&part);
            return;
        }
        if !self.small.is_empty() {
            self.parts.push(std::mem::take(&mut self.small).into());
        }
        self.parts.push(part);
    }

    fn write_to(&self, file: &mut File) -> io::Result<()> {
        let parts = self.parts.iter().map(Bytes::as_ref).chain([self.small.as_slice()]);
        let mut slices: Vec<_> = parts.map(IoSlice::new).collect();
        let mut left = slices.as_mut_slice();
        // Empty ones are no progress.
        IoSlice::advance_slices(&mut left, 0);
        while !left.is_empty() {
            match file.write_vectored(left) {
                Ok(0) => return Err(io::ErrorKind::WriteZero.into()),
                Ok(written) => IoSlice::advance_slices(&mut left, written),
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                Err(error) => return Err(error),
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use std::fs::OpenOptions;

    use super::*;

    #[test]
    fn whatever_the_sizes_of_its_parts_the_file_has_them_in_their_order() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("part");
        let all: Vec<u8> = (0..700_001_u32).map(|n| (n % 251) as u8).collect();
        // From a beginning that is no block's, in parts up to larger than two blocks.
        let steps = [(0, 65_483), (0, 9_000), (1, 131_072), (131_071, 1), (77, 300_000), (5, 16_383), (700_001, 1)];
        for (begin, step) in steps {
            std::fs::write(&path, &all[..begin]).unwrap();
            let open = || OpenOptions::new().append(true).open(&path).unwrap();
            let mut file = BlockFile::after(open(), begin as u64);
            for part in all[begin..].chunks(step) {
                file.take(Bytes::copy_from_slice(part)).unwrap();
                let written = std::fs::metadata(&path).unwrap().len();
                assert!(
                    written == begin as u64 || written.is_multiple_of(BLOCK),
                    "{written} bytes are no whole blocks"
                );
            }
            file.into_file().1.unwrap();
            assert!(std::fs::read(&path).unwrap() == all, "from {begin} on by {step}");
        }
        // Large and small ones by turns.
        std::fs::write(&path, b"").unwrap();
        let mut file = BlockFile::after(OpenOptions::new().append(true).open(&path).unwrap(), 0);
        for pair in all.chunks(70_000) {
            let (large, small) = pair.split_at(pair.len().min(61_003));
            file.take(Bytes::copy_from_slice(large)).unwrap();
            file.take(Bytes::copy_from_slice(small)).unwrap();
        }
        file.into_file().1.unwrap();
        assert!(std::fs::read(&path).unwrap() == all, "large and small ones");
    }

    #[test]
    fn nothing_follows_a_part_that_could_not_be_written() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("part");
        std::fs::write(&path, b"").unwrap();
        // Open for reading alone: no write succeeds.
        let mut file = BlockFile::after(File::open(&path).unwrap(), 0);
        let block = Bytes::from(vec![1; BLOCK as usize]);
        file.take(block.slice(1..)).unwrap();
        file.take(block.clone()).unwrap_err();
        file.take(block).unwrap_err();
        file.into_file().1.unwrap_err();
        assert_eq!(std::fs::metadata(&path).unwrap().len(), 0);
    }
}
