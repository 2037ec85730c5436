//! The model office's photographs: tus 1.0.0 as `office/protocol.md` has it, in the order of writes that makes 'safe' true.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde_json::{Value, json};

use super::files::Original;
use super::mistakes::Mistake;
use super::office::{Done, ModelOffice, No, Photo, UNFINISHED_MS, later};
use super::parts::{Call, Reply};

fn offset_refusal(offset: u64) -> Reply {
    Reply::problem(409, "offset", json!({ "offset": offset })).with("Upload-Offset", offset)
}

fn other_bytes() -> Reply {
    Reply::problem(460, "digest", Value::Null)
}

fn unknown() -> Reply {
    Reply::problem(404, "not-announced", Value::Null)
}

impl ModelOffice {
    fn part_length(&self, digest: &str) -> u64 {
        self.files.parts.get(digest).map_or(0, super::files::Content::length)
    }

    pub(super) fn announce(&mut self, call: &Call, now_ms: i64) -> Done {
        let metadata = call.header("upload-metadata").unwrap_or_default();
        let coded = metadata.split(',').find_map(|pair| pair.strip_prefix("sha256 "));
        let digest = coded.and_then(|coded| String::from_utf8(STANDARD.decode(coded).ok()?).ok());
        let length = call.header("upload-length").and_then(|text| text.parse::<u64>().ok());
        let (Some(digest), Some(length)) = (digest, length) else {
            return Ok(Reply::problem(400, "metadata", Value::Null));
        };
        if length == 0 {
            return Ok(Reply::problem(413, "length", Value::Null));
        }
        let overdue = |photo: &Photo| !photo.safe && photo.announced_ms + UNFINISHED_MS <= now_ms;
        let swept = self.tables.photos.iter().filter(|(_, photo)| overdue(photo)).map(|(digest, _)| digest.clone());
        for digest in swept.collect::<Vec<_>>() {
            match self.known(&digest, now_ms) {
                Err(No::Says(reply)) if reply.status != 404 => return Ok(reply),
                Err(No::Killed) => return Err(No::Killed),
                _ => {}
            }
        }
        let part = self.part_length(&digest);
        match self.tables.photos.get(&digest) {
            Some(known) if known.length != length && (known.safe || part > 0) => {
                return Ok(Reply::problem(409, "other-length", Value::Null));
            }
            Some(known) if known.safe => {}
            _ => self.note(|tables| {
                tables.photos.insert(digest.clone(), Photo { length, safe: false, announced_ms: now_ms });
            })?,
        }
        Ok(Reply { status: 201, ..Reply::default() })
    }

    /// What was announced; one that is overdue is given up.
    fn known(&mut self, digest: &str, now_ms: i64) -> Result<Photo, No> {
        let photo = self.tables.photos.get(digest).cloned().ok_or_else(unknown)?;
        let overdue = !photo.safe && photo.announced_ms + UNFINISHED_MS <= now_ms;
        if overdue && !self.files.originals.contains_key(digest) {
            self.note(|tables| {
                tables.photos.remove(digest);
            })?;
            self.files.parts.remove(digest);
            return Err(unknown().into());
        }
        Ok(photo)
    }

    /// Brings a photograph as far as its bytes allow, and says how many are here.
    fn settle(&mut self, digest: &str, photo: &Photo) -> Result<u64, No> {
        if photo.safe {
            return Ok(photo.length);
        }
        if let Some(original) = self.files.originals.get(digest) {
            // Its row is missing: the office died between the two. It is looked at once more, and synced once more.
            if !original.content.is(digest, photo.length) {
                self.write()?;
                self.files.originals.remove(digest);
                return Err(other_bytes().into());
            }
            self.sync_original(digest)?;
            self.mark_safe(digest)?;
            return Ok(photo.length);
        }
        let offset = self.part_length(digest);
        if offset >= photo.length {
            self.finish(digest, photo.length)?;
        }
        Ok(offset)
    }

    fn sync_original(&mut self, digest: &str) -> Result<(), No> {
        self.write()?;
        if let Some(original) = self.files.originals.get_mut(digest) {
            original.content.sync();
        }
        self.write()?;
        if let Some(original) = self.files.originals.get_mut(digest) {
            original.named = true;
        }
        Ok(())
    }

    fn mark_safe(&mut self, digest: &str) -> Result<(), No> {
        self.commit(|tables| {
            if let Some(photo) = tables.photos.get_mut(digest) {
                photo.safe = true;
            }
        })
    }

    /// All bytes are here: are they the right ones?
    fn check(&mut self, digest: &str, length: u64) -> Result<(), No> {
        if self.files.parts.get(digest).is_some_and(|part| part.is(digest, length)) {
            return Ok(());
        }
        self.write()?;
        self.files.parts.remove(digest);
        Err(other_bytes().into())
    }

    /// Checked, renamed, file synced, folder synced, and only then the row.
    fn finish(&mut self, digest: &str, length: u64) -> Result<(), No> {
        self.check(digest, length)?;
        self.write()?;
        let content = self.files.parts.remove(digest).unwrap_or_default();
        self.files.originals.insert(digest.to_owned(), Original { content, named: false });
        if self.mistake == Some(Mistake::RowBeforeSync) {
            return self.mark_safe(digest);
        }
        self.sync_original(digest)?;
        self.mark_safe(digest)
    }

    /// What the office does behind its answers: photographs whose last byte came go onto the disk. What fails, or dies here,
    /// is left as it lies.
    pub(super) fn keep_arrived(&mut self) {
        for digest in std::mem::take(&mut self.lined_up) {
            if let Some(photo) = self.tables.photos.get(&digest).cloned() {
                let _ = self.settle(&digest, &photo);
            }
        }
    }

    pub(super) fn progress(&mut self, digest: &str, now_ms: i64) -> Done {
        // A HEAD's answer has no body: of a refusal only the status is left.
        let told = |no| match no {
            No::Says(reply) => No::Says(Reply { body: Vec::new(), ..reply }),
            No::Killed => No::Killed,
        };
        let photo = self.known(digest, now_ms).map_err(told)?;
        let offset = match self.settle(digest, &photo) {
            Ok(offset) => offset,
            Err(No::Says(reply)) if reply.status == 460 => 0,
            Err(no) => return Err(told(no)),
        };
        let reply = Reply { status: 200, ..Reply::default() };
        Ok(reply.with("Upload-Offset", offset).with("Upload-Length", photo.length))
    }

    pub(super) fn receipt(&mut self, digest: &str, now_ms: i64) -> Done {
        let told = |safe: bool| Ok(Reply::json(200, &json!({ "digest": digest, "safe": safe })));
        let photo = match self.known(digest, now_ms) {
            Ok(photo) => photo,
            Err(No::Says(reply)) if reply.status == 404 => return told(false),
            Err(no) => return Err(no),
        };
        if self.mistake == Some(Mistake::ReceiptBeforeSync) && self.lined_up.iter().any(|one| one == digest) {
            return told(true);
        }
        match self.settle(digest, &photo) {
            Err(No::Says(reply)) if reply.status == 460 => told(false),
            Err(no) => Err(no),
            Ok(_) => told(self.tables.photos.get(digest).is_some_and(|photo| photo.safe)),
        }
    }

    pub(super) fn piece(&mut self, digest: &str, call: &Call, now_ms: i64) -> Done {
        let Some((of, from, to)) = call.piece() else { return Ok(Reply::problem(400, "header", Value::Null)) };
        let sent = call.header("upload-offset").and_then(|text| text.parse::<u64>().ok());
        let Some(sent) = sent else { return Ok(Reply::problem(400, "header", Value::Null)) };
        let photo = self.known(digest, now_ms)?;
        let declared = call.request.body.length();
        let went = |offset: u64| Reply { status: 204, ..Reply::default() }.with("Upload-Offset", offset);
        let mut offset = self.part_length(digest);
        let whole = photo.safe || self.files.originals.contains_key(digest);
        if whole || offset >= photo.length {
            offset = match self.settle(digest, &photo) {
                Err(No::Says(reply)) if reply.status == 460 && !whole => 0,
                other => other?,
            };
            return Ok(match declared {
                _ if sent != offset || offset != photo.length => offset_refusal(offset),
                1.. => Reply::problem(413, "length", Value::Null),
                0 => went(offset),
            });
        }
        if sent != offset {
            return Ok(offset_refusal(offset));
        }
        if declared > photo.length - offset {
            return Ok(Reply::problem(413, "length", Value::Null));
        }
        if !self.may_write() {
            // As much as fits is kept.
            let fits = (to - from) / 2;
            self.files.parts.entry(digest.to_owned()).or_default().append(&of, from, from + fits);
            return Ok(later("store", 30));
        }
        self.write()?;
        self.files.parts.entry(digest.to_owned()).or_default().append(&of, from, to);
        offset += to - from;
        if offset == photo.length {
            self.check(digest, photo.length)?;
            self.lined_up.push(digest.to_owned());
            return Ok(went(offset));
        }
        self.write()?;
        if let Some(part) = self.files.parts.get_mut(digest) {
            part.sync();
        }
        Ok(if call.is_whole() { went(offset) } else { later("line", 1) })
    }
}
