//! A file that grows in whole blocks: its parts come in odd sizes, and the system writes aligned blocks in half the time.

use std::fs::File;
use std::io::{self, Write as _};

/// Bytes of a block. Larger ones would only stay longer in memory.
const BLOCK: u64 = 128 * 1024;

/// The file, and what of its last block is not written yet.
#[derive(Debug)]
pub(crate) struct BlockFile {
    file: File,
    /// How far it is written.
    written: u64,
    held: Vec<u8>,
    /// A write failed: how much of the last block the file has is not known, and nothing more may follow it.
    is_torn: bool,
}

impl BlockFile {
    /// Goes on with a file, which is open for appending, behind so many bytes.
    pub(crate) fn after(file: File, written: u64) -> Self {
        Self { file, written, held: Vec::new(), is_torn: false }
    }

    /// Takes the next bytes, and writes the blocks that they fill.
    ///
    /// # Errors
    /// When a block cannot be written, then and from then on.
    pub(crate) fn take(&mut self, mut bytes: &[u8]) -> io::Result<()> {
        while !bytes.is_empty() {
            let room = BLOCK - self.written % BLOCK;
            let left = usize::try_from(room).unwrap_or(usize::MAX).saturating_sub(self.held.len());
            let (now, later) = bytes.split_at_checked(left).unwrap_or((bytes, &[]));
            self.held.extend_from_slice(now);
            bytes = later;
            if self.held.len() as u64 == room {
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
        self.file.write_all(&self.held)?;
        self.is_torn = false;
        self.written += self.held.len() as u64;
        self.held.clear();
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
        for (begin, step) in [(0, 65_483), (1, 131_072), (131_071, 1), (77, 300_000), (700_001, 1)] {
            std::fs::write(&path, &all[..begin]).unwrap();
            let open = || OpenOptions::new().append(true).open(&path).unwrap();
            let mut file = BlockFile::after(open(), begin as u64);
            for part in all[begin..].chunks(step) {
                file.take(part).unwrap();
                let written = std::fs::metadata(&path).unwrap().len();
                assert!(
                    written == begin as u64 || written.is_multiple_of(BLOCK),
                    "{written} bytes are no whole blocks"
                );
            }
            file.into_file().1.unwrap();
            assert!(std::fs::read(&path).unwrap() == all, "from {begin} on by {step}");
        }
    }

    #[test]
    fn nothing_follows_a_part_that_could_not_be_written() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("part");
        std::fs::write(&path, b"").unwrap();
        // Open for reading alone: no write succeeds.
        let mut file = BlockFile::after(File::open(&path).unwrap(), 0);
        let block = vec![1; BLOCK as usize];
        file.take(&block[1..]).unwrap();
        file.take(&block).unwrap_err();
        file.take(&block).unwrap_err();
        file.into_file().1.unwrap_err();
        assert_eq!(std::fs::metadata(&path).unwrap().len(), 0);
    }
}
