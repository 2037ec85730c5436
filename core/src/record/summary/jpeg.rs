//! Previews as owners get them: JPEG bytes without what cameras write beside the picture (place, time, device). The
//! picture itself is not decoded: its bytes stay as they are.

use std::collections::BTreeMap;

use crate::id::Digest;

/// The previews of a summary, by the digest of their originals.
pub type Pictures = BTreeMap<Digest, Picture>;

/// A preview that a rendering shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Where it is.
    pub source: Source,
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
}

/// Where a preview's bytes are.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Source {
    /// Here, ready to embed.
    Bytes(Vec<u8>),
    /// At an address that the page may load from.
    Address(String),
}

impl Picture {
    /// A preview to embed, without its metadata; none where the bytes are no JPEG that can be followed.
    #[must_use]
    pub fn embedded(jpeg: &[u8]) -> Option<Picture> {
        let (bytes, (width, height)) = stripped(jpeg)?;
        Some(Picture { source: Source::Bytes(bytes), width, height })
    }
}

/// Markers of ITU-T T.81, table B.1.
const START: u8 = 0xd8;
const END: u8 = 0xd9;
const SCAN: u8 = 0xda;
const COMMENT: u8 = 0xfe;
/// APP0 says how dense, APP14 how colours are coded: both are needed to show the picture as it is.
const KEPT: [u8; 2] = [0xe0, 0xee];

/// The bytes without comments, without application segments that carry words and without what was appended (a second
/// picture, a film); and width and height.
fn stripped(jpeg: &[u8]) -> Option<(Vec<u8>, (u32, u32))> {
    let mut rest = jpeg.strip_prefix(&[0xff, START])?;
    let mut kept = vec![0xff, START];
    let mut size = None;
    loop {
        let (&[0xff, marker], after) = rest.split_first_chunk::<2>()? else { return None };
        match marker {
            // Fill bytes before a marker (T.81, B.1.1.2).
            0xff => rest = rest.get(1..)?,
            END => {
                kept.extend([0xff, END]);
                return Some((kept, size?));
            }
            marker => {
                let length = usize::from(u16::from_be_bytes(*after.first_chunk::<2>()?));
                let segment = after.get(..length).filter(|_| length >= 2)?;
                size = frame_size(marker, segment).or(size);
                let told = matches!(marker, 0xe0..=0xef) && !KEPT.contains(&marker) || marker == COMMENT;
                if !told {
                    kept.extend([0xff, marker]);
                    kept.extend_from_slice(segment);
                }
                rest = after.get(length..)?;
                if marker == SCAN {
                    let (coded, next) = rest.split_at_checked(coded_length(rest)?)?;
                    kept.extend_from_slice(coded);
                    rest = next;
                }
            }
        }
    }
}

/// Width and height, where the segment is a frame header: SOF0 to SOF15 without DHT, JPG and DAC.
fn frame_size(marker: u8, segment: &[u8]) -> Option<(u32, u32)> {
    if !matches!(marker, 0xc0..=0xcf) || matches!(marker, 0xc4 | 0xc8 | 0xcc) {
        return None;
    }
    // After length and precision: height, then width.
    let [high, low, wide_high, wide_low] = *segment.get(3..)?.first_chunk::<4>()?;
    let (height, width) = (u16::from_be_bytes([high, low]), u16::from_be_bytes([wide_high, wide_low]));
    (width > 0 && height > 0).then_some((width.into(), height.into()))
}

/// How long the coded part of a scan is: up to the next marker that is neither a stuffed byte nor a restart.
fn coded_length(coded: &[u8]) -> Option<usize> {
    coded.windows(2).position(|two| matches!(two, [0xff, next] if !matches!(next, 0x00 | 0xd0..=0xd7)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn jpeg() -> Vec<u8> {
        let picture = image::RgbImage::from_fn(20, 10, |x, _| image::Rgb([(x * 12) as u8, 90, 30]));
        let mut bytes = Vec::new();
        image::codecs::jpeg::JpegEncoder::new(&mut bytes).encode_image(&picture).unwrap();
        bytes
    }

    /// With an Exif segment (CIPA DC-008) and a comment put in, and a film behind the end.
    fn talkative() -> Vec<u8> {
        let plain = jpeg();
        let segment = |marker: u8, body: &[u8]| {
            let mut segment = vec![0xff, marker];
            segment.extend(u16::try_from(body.len() + 2).unwrap().to_be_bytes());
            segment.extend_from_slice(body);
            segment
        };
        let mut bytes = plain[..2].to_vec();
        bytes.extend(segment(0xe1, b"Exif\0\0SECRET place"));
        bytes.extend(segment(0xfe, b"SECRET comment"));
        bytes.extend(segment(0xed, b"SECRET caption"));
        bytes.extend_from_slice(&plain[2..]);
        bytes.extend_from_slice(b"SECRET film");
        bytes
    }

    #[test]
    fn what_a_camera_tells_beside_the_picture_is_gone_and_the_picture_is_the_same() {
        let picture = Picture::embedded(&talkative()).unwrap();
        assert_eq!((picture.width, picture.height), (20, 10));
        let Source::Bytes(bytes) = picture.source else { panic!("not embedded") };
        assert!(!bytes.windows(6).any(|six| six == b"SECRET") && !bytes.windows(4).any(|four| four == b"Exif"));
        assert_eq!(bytes, jpeg(), "nothing else was touched");
    }

    #[test]
    fn what_is_no_jpeg_or_ends_early_is_not_embedded() {
        assert_eq!(Picture::embedded(b"GIF89a"), None);
        let whole = jpeg();
        for length in 0..200 {
            assert_eq!(Picture::embedded(&whole[..length]), None, "{length}");
        }
    }
}
