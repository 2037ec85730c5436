//! What does not fit together about a photograph, judged with its doubt. A flag never stops the work.

use coilside_picture::{Look, likeness_apart};
use uom::si::length::meter;

use super::exif::Told;
use super::intake::Prepared;
use super::plate;
use crate::effect::PlaceFix;
use crate::id::{Letter, Slot};
use crate::now::Now;
use crate::science::place::{Place, distance};
use crate::science::verdict::{Limits, Verdict};
use crate::visit::event::{AtSite, PhotoFlag};
use crate::visit::state::{Photo, Visit};

/// Camera and phone may differ by this much, milliseconds.
const TIME_DIFFERS_MS: i64 = 10 * 60_000;
/// The wall clock may be set back by this much before it is told: phones correct themselves by seconds.
const CLOCK_SLACK_MS: i64 = 60_000;
/// The doubt of a place that a camera writes, which tells none itself, metres. Common practice, no source: a fix under
/// eaves or beside a wall is taken as good to 50 m.
const CAMERA_PLACE_DOUBT_M: f64 = 50.0;
/// What still is the site around its place in the register, metres. Common practice, no source: a house with its grounds, and an
/// address found on a map.
pub const SITE_RADIUS_M: f64 = 100.0;
/// A sharpness below is blurred: edges are smeared over some five pixels of a preview of 1600. Common practice, no source.
const BLURRED_BELOW: u32 = 180;
/// More dark pixels than this, permille, is too dark; more burnt out ones than that blown out. Common practice, no source.
const DARK_PERMILLE: u32 = 900;
const BLOWN_PERMILLE: u32 = 350;
/// Likenesses closer than this, in the mean and everywhere, are of one view that did not change. Common practice, no source:
/// the same file at another size or quality stays below 1.
const ALIKE_MEAN: f64 = 2.0;
const ALIKE_MOST: u32 = 8;

/// What the file and the phone tell of themselves.
pub(super) fn judge(told: &Told, look: Option<&Look>, place: Option<&PlaceFix>, now: &Now) -> Vec<PhotoFlag> {
    let mut flags = Vec::new();
    let apart_ms = told.utc_ms(now.offset_min).map(|taken_ms| taken_ms.abs_diff(now.utc_ms));
    let just_now = apart_ms.is_some_and(|apart| apart <= TIME_DIFFERS_MS.unsigned_abs());
    match apart_ms {
        None => flags.push(PhotoFlag::NoTime),
        Some(_) if !just_now => flags.push(PhotoFlag::TimeDiffers),
        Some(_) => {}
    }
    match (told.place, place) {
        (Some(camera), Some(phone)) if are_apart(camera, phone) => flags.push(PhotoFlag::PlaceDiffers),
        // A picture out of the gallery has lost its place on some platforms, and that is no fault: only one that was taken
        // just now should have one.
        (None, None) if just_now => flags.push(PhotoFlag::NoPlace),
        _ => {}
    }
    if let Some(look) = look {
        let judged = [
            (look.sharpness < BLURRED_BELOW, PhotoFlag::Blurred),
            (look.dark_permille > DARK_PERMILLE, PhotoFlag::Dark),
            (look.blown_permille > BLOWN_PERMILLE, PhotoFlag::BlownOut),
        ];
        flags.extend(judged.into_iter().filter(|(is, _)| *is).map(|(_, flag)| flag));
    }
    flags
}

/// Do the camera's place and the phone's lie further apart than their doubt?
fn are_apart((latitude, longitude): (f64, f64), phone: &PlaceFix) -> bool {
    let here = Place { latitude: phone.latitude_deg, longitude: phone.longitude_deg };
    distance(Place { latitude, longitude }, here)
        .is_ok_and(|apart| apart.get::<meter>() > phone.accuracy_m.max(0.0) + CAMERA_PLACE_DOUBT_M)
}

/// What a photograph is set beside.
#[derive(Clone, Copy, Debug)]
pub struct Around<'a> {
    /// The visit so far.
    pub visit: &'a Visit,
    /// The unit that it is of.
    pub unit: &'a Letter,
    /// Its slot.
    pub slot: &'a Slot,
    /// The slot of the same view before the work.
    pub before: Option<&'a Slot>,
    /// The site's place, where the register has one.
    pub site: Option<Place>,
    /// The unit's serial number in the register, where the photograph is of the plate that has it.
    pub serial: Option<&'a str>,
    /// When it came.
    pub now: &'a Now,
}

/// What the visit tells of a photograph: whether it shows what others show, the clock, and where it was taken.
#[must_use]
pub fn judged_beside(prepared: &Prepared, around: &Around<'_>) -> (Vec<PhotoFlag>, Option<AtSite>) {
    let mut flags = Vec::new();
    let others = || around.visit.photos().filter(|(unit, slot, _)| (*unit, *slot) != (around.unit, around.slot));
    let is_before = |unit: &Letter, slot: &Slot| unit == around.unit && Some(slot) == around.before;
    let same = |photo: &Photo| photo.digest == prepared.digest;
    if others().any(|(_, _, photo)| same(photo)) {
        flags.push(PhotoFlag::SameAsOther);
    }
    let alike = |photo: &Photo| same(photo) || are_alike(prepared.facts.look.as_ref(), photo.facts.look.as_ref());
    if others().any(|(unit, slot, photo)| is_before(unit, slot) && alike(photo)) {
        flags.push(PhotoFlag::SameAsBefore);
    }
    if others().any(|(unit, slot, photo)| !is_before(unit, slot) && !same(photo) && alike(photo)) {
        flags.push(PhotoFlag::LooksLikeOther);
    }
    if around.visit.last.as_ref().is_some_and(|last| was_set_back(last, around.now)) {
        flags.push(PhotoFlag::ClockSetBack);
    }
    let serial = plate::told(&prepared.facts.codes).serial;
    if around.serial.zip(serial).is_some_and(|(register, read)| !plate::alike(register, &read)) {
        flags.push(PhotoFlag::OtherSerial);
    }
    let at_site = around.site.and_then(|site| at_site(prepared, site));
    match at_site.as_ref().map(|at| at.verdict.as_str()) {
        Some(AtSite::ELSEWHERE) => flags.push(PhotoFlag::Elsewhere),
        Some(AtSite::TOO_CLOSE) => flags.push(PhotoFlag::PlaceUnsure),
        _ => {}
    }
    (flags, at_site)
}

fn are_alike(one: Option<&Look>, other: Option<&Look>) -> bool {
    one.zip(other)
        .and_then(|(one, other)| likeness_apart(&one.likeness, &other.likeness))
        .is_some_and(|(mean, most)| mean <= ALIKE_MEAN && most <= ALIKE_MOST)
}

/// Did the wall clock go back, or on by less than time that certainly went by?
fn was_set_back(last: &Now, now: &Now) -> bool {
    let wall_ms = now.utc_ms.saturating_sub(last.utc_ms);
    wall_ms.saturating_add(CLOCK_SLACK_MS) < now.since(last).proven_ms
}

/// At the site, elsewhere, or too close to call: the phone's own place before the camera's.
fn at_site(prepared: &Prepared, site: Place) -> Option<AtSite> {
    let numbers = |text: &str| text.split(' ').map(str::parse::<f64>).collect::<Result<Vec<f64>, _>>().ok();
    let (phone, camera) = (numbers(&prepared.facts.phone_place), numbers(&prepared.facts.exif_place));
    let (latitude, longitude, doubt_m) = match (phone.as_deref(), camera.as_deref()) {
        // The phone tells the radius that holds the true place two times in three: twice that is taken as its doubt.
        (Some([latitude, longitude, accuracy_m]), _) => (*latitude, *longitude, 2.0 * accuracy_m.max(1.0)),
        (_, Some([latitude, longitude])) => (*latitude, *longitude, CAMERA_PLACE_DOUBT_M),
        _ => return None,
    };
    let apart_m = distance(Place { latitude, longitude }, site).ok()?.get::<meter>();
    let verdict = Limits::new(None, Some(SITE_RADIUS_M)).ok()?.judge(apart_m, doubt_m / 2.0, 2.0).ok()?;
    let verdict = match verdict {
        Verdict::Pass => AtSite::HERE,
        Verdict::Fail => AtSite::ELSEWHERE,
        Verdict::TooCloseToCall => AtSite::TOO_CLOSE,
    };
    let whole = |metres: f64| metres.round().clamp(0.0, 4e7) as u32;
    Some(AtSite { verdict: verdict.to_owned(), apart_m: whole(apart_m), doubt_m: whole(doubt_m) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::visit::event::{PhotoFacts, sha256};

    /// Metres of a degree of latitude at 50 degrees north, from memory of WGS 84.
    const DEGREE_M: f64 = 111_200.0;

    fn now() -> Now {
        Now { utc_ms: 1_772_352_000_000, offset_min: 120, mono_ms: 1_000_000, mono_epoch: "a".into() }
    }

    fn told(taken: &str, place: Option<(f64, f64)>) -> Told {
        Told { taken: taken.into(), offset: "+02:00".into(), place, ..Told::default() }
    }

    fn phone(accuracy_m: f64) -> PlaceFix {
        PlaceFix { latitude_deg: 50.0, longitude_deg: 8.0, accuracy_m, age_ms: 0 }
    }

    fn prepared(bytes: &[u8], likeness: &str, phone_place: &str) -> Prepared {
        let look = Some(Look { sharpness: 400, dark_permille: 0, blown_permille: 0, likeness: likeness.into() });
        let facts = PhotoFacts { look, phone_place: phone_place.into(), ..PhotoFacts::default() };
        Prepared { digest: sha256(bytes), bytes: 1, media: "image/jpeg".into(), facts, flags: Vec::new() }
    }

    #[test]
    fn a_camera_that_was_elsewhere_than_the_phone_is_flagged_and_one_beside_it_is_not() {
        let flagged = |latitude| {
            let told = told("", Some((latitude, 8.0)));
            judge(&told, None, Some(&phone(10.0)), &now()).contains(&PhotoFlag::PlaceDiffers)
        };
        assert!(!flagged(50.0 + 40.0 / DEGREE_M), "40 m lie within the doubt");
        assert!(flagged(50.0 + 100.0 / DEGREE_M), "100 m do not");
        let nowhere = judge(&Told::default(), None, Some(&phone(10.0)), &now());
        assert!(!nowhere.contains(&PhotoFlag::PlaceDiffers), "no place is no disagreement");
    }

    #[test]
    fn a_place_is_missed_in_a_photograph_of_this_moment_and_not_in_one_of_the_gallery() {
        // now() is 2026-03-01 10:00 at +02:00.
        assert_eq!(judge(&told("2026:03:01 10:03:00", None), None, None, &now()), [PhotoFlag::NoPlace]);
        assert_eq!(judge(&told("2026:02:01 10:03:00", None), None, None, &now()), [PhotoFlag::TimeDiffers]);
        assert_eq!(judge(&told("", None), None, None, &now()), [PhotoFlag::NoTime]);
        assert_eq!(judge(&told("2026:03:01 10:03:00", None), None, Some(&phone(9.0)), &now()), []);
    }

    #[test]
    fn poor_pictures_are_named() {
        let flags = |sharpness, dark_permille, blown_permille| {
            let look = Look { sharpness, dark_permille, blown_permille, likeness: String::new() };
            judge(&told("2026:03:01 10:00:00", Some((1.0, 2.0))), Some(&look), None, &now())
        };
        assert_eq!(flags(250, 100, 100), []);
        assert_eq!(flags(150, 100, 100), [PhotoFlag::Blurred]);
        assert_eq!(flags(0, 990, 0), [PhotoFlag::Blurred, PhotoFlag::Dark]);
        assert_eq!(flags(250, 0, 500), [PhotoFlag::BlownOut]);
    }

    #[test]
    fn the_site_is_judged_with_the_doubt_of_the_place() {
        let judged = |metres: f64, accuracy_m: f64| {
            let place = format!("{:.5} 8.00000 {accuracy_m:.0}", 50.0 + metres / DEGREE_M);
            at_site(&prepared(b"x", "", &place), Place { latitude: 50.0, longitude: 8.0 }).unwrap()
        };
        assert_eq!(judged(30.0, 10.0), AtSite { verdict: "at-site".into(), apart_m: 30, doubt_m: 20 });
        assert_eq!(judged(400.0, 10.0).verdict, "elsewhere");
        assert_eq!(judged(110.0, 10.0).verdict, "too-close-to-call");
        assert_eq!(judged(30.0, 500.0).verdict, "too-close-to-call", "a place known to a kilometre tells nothing");
    }

    #[test]
    fn the_same_view_is_found_by_its_likeness_and_the_same_file_by_its_digest() {
        let (dim, bright) = ("40".repeat(64), "42".repeat(64));
        let first = prepared(b"first", &dim, "");
        let mut visit = Visit::default();
        let (unit, before, after) = (Letter("A".into()), Slot("coil-before".into()), Slot("coil-after".into()));
        let photo = Photo {
            digest: first.digest.clone(),
            bytes: 1,
            media: first.media.clone(),
            facts: first.facts.clone(),
            flags: Vec::new(),
            at: now(),
        };
        visit.runs.entry(unit.clone()).or_default().photos.insert(before.clone(), vec![photo]);
        let flags = |prepared: &Prepared, slot: &Slot, before| {
            let around = Around { visit: &visit, unit: &unit, slot, before, site: None, serial: None, now: &now() };
            judged_beside(prepared, &around).0
        };
        assert_eq!(flags(&first, &after, Some(&before)), [PhotoFlag::SameAsOther, PhotoFlag::SameAsBefore]);
        assert_eq!(flags(&prepared(b"again", &bright, ""), &after, Some(&before)), [PhotoFlag::SameAsBefore]);
        assert_eq!(flags(&prepared(b"again", &bright, ""), &after, None), [PhotoFlag::LooksLikeOther]);
        assert_eq!(flags(&prepared(b"other", &"60".repeat(64), ""), &after, Some(&before)), []);
        assert_eq!(flags(&prepared(b"again", &bright, ""), &before, None), [], "another try for the same slot");
    }

    #[test]
    fn a_clock_that_goes_back_is_told_and_one_that_corrects_itself_by_seconds_is_not() {
        let later = |wall_ms: i64, mono_ms: i64| Now {
            utc_ms: now().utc_ms + wall_ms,
            mono_ms: now().mono_ms + mono_ms,
            ..now()
        };
        assert!(was_set_back(&now(), &later(-3_600_000, 5_000)));
        assert!(was_set_back(&now(), &later(60_000, 600_000)), "nine minutes are missing");
        assert!(!was_set_back(&now(), &later(-20_000, 5_000)));
        let rebooted = Now { mono_epoch: "b".into(), mono_ms: 5, ..later(-3_600_000, 0) };
        assert!(was_set_back(&now(), &rebooted), "after a boot the wall clock alone tells it");
    }
}
