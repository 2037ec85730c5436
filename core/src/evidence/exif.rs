//! What a camera wrote into its file: time, offset, place, orientation.

use std::io::Cursor;

use ::exif::{In, Rational, Reader, Tag, Value};
use chrono::{DateTime, FixedOffset, NaiveDateTime};

/// What EXIF tells. Absent is absent: nothing is guessed here.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Told {
    /// 1 to 8, or 0.
    pub(super) orientation: u32,
    /// DateTimeOriginal as written.
    pub(super) taken: String,
    /// OffsetTimeOriginal as written.
    pub(super) offset: String,
    /// Degrees north and east.
    pub(super) place: Option<(f64, f64)>,
}

impl Told {
    /// The moment that EXIF tells, UTC milliseconds; `offset_min` is used where the camera wrote no offset.
    pub(super) fn utc_ms(&self, offset_min: i32) -> Option<i64> {
        let naive = NaiveDateTime::parse_from_str(&self.taken, "%Y:%m:%d %H:%M:%S").ok()?;
        let offset = parse_offset(&self.offset).or_else(|| FixedOffset::east_opt(offset_min * 60))?;
        let moment: DateTime<FixedOffset> = naive.and_local_timezone(offset).single()?;
        Some(moment.timestamp_millis())
    }
}

fn parse_offset(text: &str) -> Option<FixedOffset> {
    let (sign, rest) = match text.trim().split_at_checked(1)? {
        ("+", rest) => (1, rest),
        ("-", rest) => (-1, rest),
        _ => return None,
    };
    let (hours, minutes) = rest.split_once(':')?;
    let (hours, minutes): (u8, u8) = (hours.parse().ok()?, minutes.parse().ok()?);
    // No place on Earth is further from UTC than 14 hours.
    let (hours, minutes) = (hours <= 14 && minutes < 60).then(|| (i32::from(hours), i32::from(minutes)))?;
    FixedOffset::east_opt(sign * (hours * 3600 + minutes * 60))
}

/// Reads EXIF leniently: a real camera's sloppy fields do not hide the sound ones.
pub(super) fn read(bytes: &[u8]) -> Told {
    let mut reader = Reader::new();
    reader.continue_on_error(true);
    let parsed = match reader.read_from_container(&mut Cursor::new(bytes)) {
        Ok(parsed) => Some(parsed),
        Err(error) => error.distill_partial_result(|_| {}).ok(),
    };
    let Some(parsed) = parsed else { return Told::default() };
    let text = |tag| {
        let field = parsed.get_field(tag, In::PRIMARY)?;
        let Value::Ascii(lines) = &field.value else { return None };
        let first = lines.first()?;
        Some(String::from_utf8_lossy(first).trim_matches(['\0', ' ']).chars().take(40).collect::<String>())
    };
    let degrees = |tag, sign_tag, [positive, negative]: [&str; 2], most: f64| {
        let field = parsed.get_field(tag, In::PRIMARY)?;
        let Value::Rational(parts) = &field.value else { return None };
        if parts.first()?.denom == 0 {
            return None;
        }
        let mut parts = parts.iter().map(part);
        let degrees = parts.next()??;
        let (minutes, seconds) = (parts.next().unwrap_or(Some(0.0))?, parts.next().unwrap_or(Some(0.0))?);
        let value = degrees + minutes / 60.0 + seconds / 3600.0;
        let side = text(sign_tag)?;
        let sign = if side.eq_ignore_ascii_case(positive) { 1.0 } else { -1.0 };
        let known = sign > 0.0 || side.eq_ignore_ascii_case(negative);
        (known && minutes <= 60.0 && seconds <= 60.0 && value <= most).then_some(sign * value)
    };
    let latitude = degrees(Tag::GPSLatitude, Tag::GPSLatitudeRef, ["N", "S"], 90.0);
    let longitude = degrees(Tag::GPSLongitude, Tag::GPSLongitudeRef, ["E", "W"], 180.0);
    Told {
        orientation: parsed
            .get_field(Tag::Orientation, In::PRIMARY)
            .and_then(|field| field.value.get_uint(0))
            .filter(|orientation| (1..=8).contains(orientation))
            .unwrap_or(0),
        taken: text(Tag::DateTimeOriginal).unwrap_or_default(),
        offset: text(Tag::OffsetTimeOriginal).unwrap_or_default(),
        // Cameras without a fix write zeros: nobody services anything where the equator crosses Greenwich's meridian.
        place: latitude.zip(longitude).filter(|place| *place != (0.0, 0.0)),
    }
}

/// One part of a place. Nothing over nothing is how some cameras write a part that they leave out; anything else over
/// nothing is no number, and then there is no place.
fn part(part: &Rational) -> Option<f64> {
    match (part.num, part.denom) {
        (0, 0) => Some(0.0),
        (_, 0) => None,
        _ => Some(part.to_f64()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(taken: &str, offset: &str) -> Told {
        Told { taken: taken.into(), offset: offset.into(), ..Told::default() }
    }

    #[test]
    fn the_cameras_own_offset_wins_over_the_phones() {
        // 2026-03-01 10:00:00 at +02:00 is 08:00 UTC.
        assert_eq!(told("2026:03:01 10:00:00", "+02:00").utc_ms(-300), Some(1_772_352_000_000));
        assert_eq!(told("2026:03:01 10:00:00", "").utc_ms(120), Some(1_772_352_000_000));
    }

    #[test]
    fn a_time_that_is_none_tells_nothing() {
        assert_eq!(told("0000:00:00 00:00:00", "").utc_ms(0), None);
        assert_eq!(told("yesterday", "+02:00").utc_ms(0), None);
    }
}
