//! The owner's summary on the spot: from what lies on the device, without the office.

use std::fs;

use super::desk::words_for;
use super::{DoorError, Field};
use crate::id::Digest;
use crate::record::seal;
use crate::record::summary::{Dress, Picture, Pictures, SealMarks, Sources, Summary, html, summary};
use crate::round::day::day_of;
use crate::words::LANGUAGES;

/// What is handed to the owner. A shell shows it, prints it or gives it to what its platform shares files with.
#[derive(Clone, Debug)]
pub struct Handover {
    /// The content, in the owner's language.
    pub summary: Summary,
    /// The previews that it shows, without what cameras write beside them.
    pub pictures: Pictures,
}

impl Handover {
    /// The summary as a page that needs nothing else.
    #[must_use]
    pub fn page(&self) -> String {
        html(&self.summary, &self.pictures, &Dress::default())
    }

    /// The summary as a PDF.
    ///
    /// # Errors
    /// Where it cannot be made.
    #[cfg(feature = "pdf")]
    pub fn paper(&self) -> Result<Vec<u8>, crate::record::summary::PdfError> {
        crate::record::summary::pdf(&self.summary, &self.pictures)
    }
}

impl Field {
    /// The owner's summary of the visit that is open, once it is sealed. `office` is the address of the office that the
    /// shell was started with, unless the device joined one: once the seal has arrived there, the summary carries the way to the office's own copy.
    ///
    /// # Errors
    /// Where no sealed visit is open, or the store cannot be read.
    pub fn handover(&self, office: Option<&str>) -> Result<Handover, DoorError> {
        let (summary, pictures) = {
            let desk = self.desk();
            let seat = desk.seat.as_ref().filter(|seat| seat.sealed);
            let seat = seat.ok_or(DoorError::NoSuch { what: "sealed visit", name: desk.place.clone() })?;
            let visit = &seat.visit;
            let spoken = Some(seat.assignment.owner.language.as_str()).filter(|tag| LANGUAGES.contains(tag));
            let words = words_for(spoken.unwrap_or(desk.words.language()), Some(&seat.pack))?;
            let sealed = desk.store.seal(&visit.id)?.map(|jws| seal::open(&jws, &desk.public_key)).transpose()?;
            let joined = desk.sender.access().map(|access| access.office.as_str());
            let address = joined.or(office).zip(desk.store.setting(&summary_of(visit.id.as_str()))?);
            let address = address.map(|(office, path)| format!("{}{path}", office.trim_end_matches('/')));
            let at = visit.last.as_ref().and_then(|at| day_of(at.utc_ms, at.offset_min));
            let shown = desk.shown(visit);
            let made = summary(&Sources {
                visit,
                assignment: &seat.assignment,
                pack: &seat.pack.pack,
                words: &words,
                units: desk.units,
                contact: None,
                day: at.unwrap_or_default(),
                seal: sealed.map(|sealed| SealMarks::of(&Digest(sealed.last), &desk.public_key)),
                address: address.as_deref(),
                shown: shown.as_ref(),
            });
            let shown: Vec<Digest> = made.photographs().cloned().collect();
            (made, shown)
        };
        // A picture that this device cannot show is left out, and the summary says so.
        let of = |digest: Digest| {
            let jpeg = fs::read(self.preview(&digest)).ok()?;
            Some((digest, Picture::embedded(&jpeg)?))
        };
        Ok(Handover { summary, pictures: pictures.into_iter().filter_map(of).collect() })
    }
}

/// The setting that holds where the office shows a visit's summary.
pub(super) fn summary_of(visit: &str) -> String {
    format!("summary:{visit}")
}
