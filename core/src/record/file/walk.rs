//! Reads the ZIP of a record file from its first byte to its last, once, without going back: what stands there must be what
//! the files' names, lengths and CRCs say, and nothing else.

use std::io::{self, Read};

use super::verify::Fault;
use super::zip::{ENTRIES_MAX, Entry, LISTED, LOCAL, LOCAL_BYTES, NAME_MAX, is_plain, list};
use super::{PHOTOGRAPHS, README};
use crate::id::Digest;

/// Hands each file over in order, and returns what is wrong with the ZIP itself. What is no file of a plain name is passed over.
///
/// # Errors
/// Where the input cannot be read.
pub(super) fn walk(
    input: &mut dyn Read,
    take: &mut dyn FnMut(&str, &mut dyn Read) -> io::Result<()>,
) -> io::Result<Vec<Fault>> {
    let mut walk = Walk { input, at: 0, entries: Vec::new(), found: Vec::new(), faults: Vec::new() };
    walk.all(take)?;
    Ok(walk.faults)
}

/// Copies each photograph to where its digest belongs, until one cannot be written. Verify the file before.
///
/// # Errors
/// Where the input cannot be read or a photograph not be written.
pub fn extract(input: &mut dyn Read, keep: &mut dyn FnMut(&Digest, &mut dyn Read) -> io::Result<()>) -> io::Result<()> {
    let mut take = |name: &str, bytes: &mut dyn Read| {
        let digest = name.strip_prefix(PHOTOGRAPHS).and_then(|file| file.split_once('.')).map(|(digest, _)| digest);
        digest.map_or(Ok(()), |digest| keep(&Digest(digest.to_owned()), bytes))
    };
    walk(input, &mut take).map(drop)
}

struct Walk<'a> {
    input: &'a mut dyn Read,
    at: u64,
    /// As the words before each file tell it.
    entries: Vec<Entry>,
    /// CRC of each as it was read.
    found: Vec<u32>,
    faults: Vec<Fault>,
}

/// A file's bytes as they pass.
struct Passing<'a> {
    input: io::Take<&'a mut dyn Read>,
    crc: crc32fast::Hasher,
    read: u64,
}

impl Read for Passing<'_> {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let read = self.input.read(into)?;
        self.crc.update(into.get(..read).unwrap_or_default());
        self.read += read as u64;
        Ok(read)
    }
}

impl Walk<'_> {
    fn fault(&mut self, rule: &'static str, part: &str, at: u64) {
        self.faults.push(Fault::new(rule, part).with("at", at));
    }

    /// The next bytes, fewer where the input ends.
    fn next(&mut self, count: usize) -> io::Result<Vec<u8>> {
        let mut bytes = Vec::with_capacity(count.min(64 * 1024));
        self.input.take(count as u64).read_to_end(&mut bytes)?;
        self.at += bytes.len() as u64;
        Ok(bytes)
    }

    fn last(&self) -> String {
        self.entries.last().map_or_else(|| README.to_owned(), |entry| entry.name.clone())
    }

    fn all(&mut self, take: &mut dyn FnMut(&str, &mut dyn Read) -> io::Result<()>) -> io::Result<()> {
        loop {
            let at = self.at;
            let sign = self.next(4)?;
            if sign == LISTED && !self.entries.is_empty() {
                return self.list(at);
            }
            if sign != LOCAL {
                let last = self.last();
                let rule = match (sign.len(), self.entries.is_empty()) {
                    (0..4, false) => "zip-short",
                    (_, true) => "zip-none",
                    (_, false) => "zip-lost",
                };
                self.fault(rule, &last, at);
                return Ok(());
            }
            if self.entries.len() >= ENTRIES_MAX {
                self.fault("zip-many", "", at);
                return Ok(());
            }
            if !self.file(at, take)? {
                return Ok(());
            }
        }
    }

    /// One file. False where it cannot be told where the next one begins.
    fn file(&mut self, at: u64, take: &mut dyn FnMut(&str, &mut dyn Read) -> io::Result<()>) -> io::Result<bool> {
        let head = [LOCAL.to_vec(), self.next(LOCAL_BYTES - 4)?].concat();
        let last = self.last();
        let (Some(method), Some(crc), Some(stored), Some(length), Some(name), Some(extra)) =
            (small(&head, 8), large(&head, 14), large(&head, 18), large(&head, 22), small(&head, 26), small(&head, 28))
        else {
            self.fault("zip-short", &last, at);
            return Ok(false);
        };
        let letters = self.next(usize::from(name).min(NAME_MAX + 1))?;
        let name = String::from_utf8_lossy(&letters).into_owned();
        // A name is told as it stands there, without what a terminal would take for its own.
        let told: String = name.chars().map(|c| if c.is_control() { '?' } else { c }).collect();
        if method != 0 || stored != length {
            self.fault("zip-compressed", &told, at);
            return Ok(false);
        }
        if letters.len() > NAME_MAX || extra != 0 {
            self.fault("zip-head", &told, at);
            return Ok(false);
        }
        let entry = Entry { name, crc, length };
        let plain = is_plain(&entry.name);
        let after = self.entries.last().map(|last| last.name.cmp(&entry.name));
        match after {
            _ if !plain => self.fault("zip-name", &told, at),
            Some(std::cmp::Ordering::Equal) => self.fault("zip-twice", &told, at),
            Some(std::cmp::Ordering::Greater) => self.fault("zip-order", &told, at),
            _ => {}
        }
        if entry.local() != [head, letters].concat() {
            self.fault("zip-head", &told, at);
        }
        let taken = plain && after != Some(std::cmp::Ordering::Equal);
        let input: &mut dyn Read = &mut *self.input;
        let mut passing = Passing { input: input.take(u64::from(length)), crc: crc32fast::Hasher::new(), read: 0 };
        if taken {
            take(&entry.name, &mut passing)?;
        }
        io::copy(&mut passing, &mut io::sink())?;
        let (read, found) = (passing.read, passing.crc.finalize());
        self.at += read;
        if read < u64::from(length) {
            self.fault("zip-short", &told, self.at);
            return Ok(false);
        }
        if found != crc {
            self.fault("zip-crc", &told, at);
        }
        self.entries.push(entry);
        self.found.push(found);
        Ok(true)
    }

    /// The list and the end of it all; `at` is where it begins, its first four bytes are read already.
    fn list(&mut self, at: u64) -> io::Result<()> {
        // Where a file or its checksum was altered, told already, the list may go with either.
        let found = self.entries.iter().zip(&self.found).map(|(entry, crc)| Entry { crc: *crc, ..entry.clone() });
        let found: Vec<Entry> = found.collect();
        let (Some(parts), Some(others)) = (list(&self.entries), list(&found)) else {
            self.fault("zip-many", "", at);
            return Ok(());
        };
        let mut read = LISTED.to_vec();
        for ((name, expected), (_, other)) in parts.into_iter().zip(others) {
            let part = name.unwrap_or_default();
            let begins = self.at - read.len() as u64;
            let missing = expected.len().saturating_sub(read.len());
            read.extend(self.next(missing)?);
            if read.len() < expected.len() {
                self.fault("zip-short", &self.last(), self.at);
                return Ok(());
            }
            if read != expected && read != other {
                let differs = read.iter().zip(&expected).take_while(|(one, other)| one == other).count();
                let rule = if part.is_empty() { "zip-end" } else { "zip-list" };
                self.fault(rule, &part, begins + differs as u64);
            }
            read.clear();
        }
        let at = self.at;
        if !self.next(1)?.is_empty() {
            self.fault("zip-after", "", at);
        }
        Ok(())
    }
}

fn small(bytes: &[u8], at: usize) -> Option<u16> {
    bytes.get(at..at + 2)?.try_into().ok().map(u16::from_le_bytes)
}

fn large(bytes: &[u8], at: usize) -> Option<u32> {
    bytes.get(at..at + 4)?.try_into().ok().map(u32::from_le_bytes)
}
