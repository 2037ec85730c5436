//! What a file is, by its first bytes, and how large a picture it says it holds: read before anything is decoded.

/// What a file is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A JPEG with its frame; none where no frame header was found.
    Jpeg(Option<Frame>),
    /// PNG.
    Png,
    /// WebP.
    WebP,
    /// HEIC or AVIF: only the platform can decode it.
    Heic(&'static str),
}

impl Kind {
    /// The media type.
    #[must_use]
    pub const fn media(&self) -> &'static str {
        match self {
            Kind::Jpeg(_) => "image/jpeg",
            Kind::Png => "image/png",
            Kind::WebP => "image/webp",
            Kind::Heic(media) => media,
        }
    }
}

/// A JPEG's frame header: ITU-T T.81, B.2.2.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Frame {
    /// Pixels across.
    pub(crate) width: u32,
    /// Pixels down.
    pub(crate) height: u32,
    /// Colours for each pixel.
    pub(crate) components: u8,
    /// The low four bits of its marker: 0 to 2 are baseline, extended and progressive.
    pub(crate) process: u8,
    /// Bits a sample.
    pub(crate) precision: u8,
    /// Samples of all components for each pixel of the first, in sixteenths.
    pub(crate) samples_16: u64,
}

impl Frame {
    /// A decoder must hold every coefficient of it at once.
    pub(crate) const fn is_progressive(&self) -> bool {
        self.process == 2
    }
}

/// Tells a file by its first bytes: none is no picture that is taken.
#[must_use]
pub fn kind(bytes: &[u8]) -> Option<Kind> {
    if bytes.starts_with(&[0xff, 0xd8, 0xff]) {
        return Some(Kind::Jpeg(frame(bytes)));
    }
    if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
        return Some(Kind::Png);
    }
    if bytes.starts_with(b"RIFF") && bytes.get(8..12) == Some(b"WEBP") {
        return Some(Kind::WebP);
    }
    // ISO/IEC 23008-12 and AV1's AVIF name their brands in the file type box of ISO/IEC 14496-12.
    match bytes.get(4..12)? {
        b"ftypheic" | b"ftypheix" | b"ftyphevc" | b"ftypheim" | b"ftypmif1" | b"ftypmsf1" => {
            Some(Kind::Heic("image/heic"))
        }
        b"ftypavif" => Some(Kind::Heic("image/avif")),
        _ => None,
    }
}

/// Walks the segments up to the frame header.
fn frame(bytes: &[u8]) -> Option<Frame> {
    let mut at = 2_usize;
    loop {
        let [lead, marker] = *bytes.get(at..at.checked_add(2)?)?.first_chunk::<2>()?;
        if lead != 0xff {
            return None;
        }
        match marker {
            // Fill bytes; markers that stand alone.
            0xff => at += 1,
            0x01 | 0xd0..=0xd8 => at += 2,
            // The scan or the end, and no frame before it.
            0xd9 | 0xda => return None,
            _ => {
                let length = usize::from(u16::from_be_bytes(*bytes.get(at + 2..)?.first_chunk::<2>()?));
                let segment = bytes.get(at + 4..(at + 2).checked_add(length)?)?;
                // C4, C8 and CC are tables and extensions, no frames.
                if matches!(marker, 0xc0..=0xcf) && !matches!(marker, 0xc4 | 0xc8 | 0xcc) {
                    return read_frame(marker & 0x0f, segment);
                }
                at += 2 + length;
            }
        }
    }
}

fn read_frame(process: u8, segment: &[u8]) -> Option<Frame> {
    let [precision, h1, h0, w1, w0, components] = *segment.first_chunk::<6>()?;
    let sampling = segment.get(6..)?.chunks_exact(3).take(usize::from(components));
    let areas: Vec<u64> =
        sampling.filter_map(|one| one.get(1)).map(|hv| u64::from(hv >> 4) * u64::from(hv & 15)).collect();
    let most = areas.iter().copied().max().filter(|most| *most > 0)?;
    (areas.len() == usize::from(components)).then(|| Frame {
        width: u32::from(u16::from_be_bytes([w1, w0])),
        height: u32::from(u16::from_be_bytes([h1, h0])),
        components,
        process,
        precision,
        samples_16: areas.iter().sum::<u64>() * 16 / most,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_frame_is_found_behind_other_segments_and_tells_its_size_and_sampling() {
        // SOI, APP0 of four bytes, a fill byte, then a progressive frame of 4000 × 3000 with 4:2:0 (ITU-T T.81, B.2.2).
        let mut bytes = vec![0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 2, 0xff, 0xff, 0xc2, 0, 17, 8];
        bytes.extend(3000_u16.to_be_bytes());
        bytes.extend(4000_u16.to_be_bytes());
        bytes.extend([3, 1, 0x22, 0, 2, 0x11, 1, 3, 0x11, 1]);
        let Some(Kind::Jpeg(Some(frame))) = kind(&bytes) else { panic!("no frame") };
        assert_eq!((frame.width, frame.height, frame.components), (4000, 3000, 3));
        assert!(frame.is_progressive());
        assert_eq!(frame.samples_16, 24, "one and a half samples a pixel");
    }

    #[test]
    fn segments_that_lead_nowhere_end_the_search() {
        for bytes in [&[0xff, 0xd8, 0xff][..], &[0xff, 0xd8, 0xff, 0xe0, 0xff, 0xff], &[0xff, 0xd8, 0xff, 0xe0, 0, 0]] {
            assert_eq!(kind(bytes), Some(Kind::Jpeg(None)));
        }
    }

    #[test]
    fn pictures_that_only_a_platform_decodes_are_named_for_what_they_are() {
        assert_eq!(kind(b"\0\0\0\x18ftypheic\0\0\0\0").map(|kind| kind.media()), Some("image/heic"));
        assert_eq!(kind(b"\0\0\0\x18ftypavif\0\0\0\0").map(|kind| kind.media()), Some("image/avif"));
        assert_eq!(kind(b"\0\0\0\x18ftypisom\0\0\0\0"), None, "a film is no photograph");
    }
}
