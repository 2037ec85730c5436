//! What a phone's camera would write into a photograph of the demo: time, zone and place, as EXIF.

use std::io::Cursor;

use chrono::DateTime;
use coilside_core::effect::PlaceFix;
use coilside_core::now::Now;
use exif::experimental::Writer;
use exif::{Field, In, Rational, Tag, Value};

/// The JPEG with EXIF in its first segment; unchanged where that cannot be written.
pub(super) fn shoot(jpeg: &[u8], now: &Now, place: PlaceFix) -> Vec<u8> {
    with_exif(jpeg, now, &place).unwrap_or_else(|| jpeg.to_vec())
}

fn with_exif(jpeg: &[u8], now: &Now, place: &PlaceFix) -> Option<Vec<u8>> {
    let local = DateTime::from_timestamp_millis(now.utc_ms + i64::from(now.offset_min) * 60_000)?;
    let sign = if now.offset_min < 0 { '-' } else { '+' };
    let offset = format!("{sign}{:02}:{:02}", now.offset_min.abs() / 60, now.offset_min.abs() % 60);
    let text = |text: String| Value::Ascii(vec![text.into_bytes()]);
    let half =
        |value: f64, positive: &str, negative: &str| text(if value < 0.0 { negative } else { positive }.to_owned());
    let fields = [
        (Tag::DateTimeOriginal, text(local.format("%Y:%m:%d %H:%M:%S").to_string())),
        (Tag::OffsetTimeOriginal, text(offset)),
        (Tag::GPSLatitudeRef, half(place.latitude_deg, "N", "S")),
        (Tag::GPSLatitude, degrees(place.latitude_deg)),
        (Tag::GPSLongitudeRef, half(place.longitude_deg, "E", "W")),
        (Tag::GPSLongitude, degrees(place.longitude_deg)),
    ]
    .map(|(tag, value)| Field { tag, ifd_num: In::PRIMARY, value });
    let mut writer = Writer::new();
    fields.iter().for_each(|field| writer.push_field(field));
    let mut tiff = Cursor::new(Vec::new());
    writer.write(&mut tiff, false).ok()?;
    let tiff = tiff.into_inner();

    let start = jpeg.strip_prefix(&[0xff, 0xd8])?;
    let length = u16::try_from(tiff.len() + 8).ok()?;
    let mut bytes = vec![0xff, 0xd8, 0xff, 0xe1];
    bytes.extend(length.to_be_bytes());
    bytes.extend(b"Exif\0\0");
    bytes.extend(tiff);
    bytes.extend(start);
    Some(bytes)
}

/// Degrees, minutes and hundredths of seconds, without the sign.
fn degrees(value: f64) -> Value {
    let seconds_100 = (value.abs() * 360_000.0).round() as u32;
    let part = |num, denom| Rational { num, denom };
    Value::Rational(vec![
        part(seconds_100 / 360_000, 1),
        part(seconds_100 / 6_000 % 60, 1),
        part(seconds_100 % 6_000, 100),
    ])
}

#[cfg(test)]
mod tests {
    use coilside_core::evidence::plate::told;
    use coilside_core::evidence::{codes_in, look};

    use super::*;

    #[test]
    fn a_drawn_photograph_tells_its_time_and_place_as_a_cameras_does() {
        let now = Now { utc_ms: 1_772_352_000_000, offset_min: 120, mono_ms: 0, mono_epoch: "a".into() };
        let place = PlaceFix { latitude_deg: -1.234_5, longitude_deg: 2.345_6, accuracy_m: 5.0, age_ms: 0 };
        let drawn = super::super::draw::photograph("tag", &["X"], 1);
        let (prepared, _) = look(&shoot(&drawn, &now, place), None, &now).unwrap();
        assert_eq!(prepared.facts.taken, "2026:03:01 10:00:00");
        assert_eq!(prepared.facts.offset, "+02:00");
        assert_eq!(prepared.facts.exif_place, "-1.23450 2.34560");
        assert_eq!(prepared.flags, []);
    }

    #[test]
    fn a_drawn_nameplate_carries_the_units_serial_number_and_model_as_a_code() {
        for slot in ["nameplate", "serial-plate"] {
            let drawn = super::super::draw::photograph(slot, &["Tarnwick", "Add-On 9", "TW9-20417", "230 V  50 Hz"], 1);
            let plate = told(&codes_in(&drawn));
            assert_eq!(
                (plate.serial.as_deref(), plate.model.as_deref()),
                (Some("TW9-20417"), Some("Add-On 9")),
                "{slot}"
            );
        }
        let drawn = super::super::draw::photograph("tag", &["DO NOT", "SWITCH ON", "I. FALLOW"], 1);
        assert_eq!(codes_in(&drawn), []);
    }
}
