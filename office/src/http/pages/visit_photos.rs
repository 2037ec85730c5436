//! Photographs of a visit: before and after side by side, then the others; each with its time, its place and its flags.

use std::collections::BTreeSet;

use coilside_core::id;
use coilside_core::procedure::measure::Units;
use coilside_core::record::photo::{code_words, flag_words};
use coilside_core::science::place::{Place, distance};
use coilside_core::visit::event::PhotoFlag;
use coilside_core::visit::state::{Photo, Run};
use coilside_core::words::Words;
use maud::{Markup, html};

use crate::app::day;
use crate::app::make_summary::size;
use crate::app::record::Record;

/// The same view before and after the work, each with its own title.
struct Pair<'a> {
    before_title: String,
    after_title: String,
    before: Option<&'a Photo>,
    after: Option<&'a Photo>,
}

impl<'a> Pair<'a> {
    /// Both sides, before first.
    fn sides(&self) -> [(&str, Option<&'a Photo>); 2] {
        [(&self.before_title, self.before), (&self.after_title, self.after)]
    }
}

pub(super) fn pairs(words: &Words, record: &Record<'_>, run: &Run) -> Markup {
    let pairs = pairs_of(words, record, run);
    html! {
        @if !pairs.is_empty() {
            section.card {
                h3 { (words.text("office-before-after")) }
                @for pair in &pairs {
                    div.pair { @for (title, photo) in pair.sides() {
                        @match photo {
                            Some(photo) => (figure(words, record, photo, title)),
                            None => div.no-photo { b { (title) } span { (words.text("office-no-photo")) } },
                        }
                    } }
                }
            }
        }
    }
}

/// The pairs of which at least one side is there, in the order of the procedure.
fn pairs_of<'a>(words: &Words, record: &Record<'_>, run: &'a Run) -> Vec<Pair<'a>> {
    let Some(found) = record.pack else { return Vec::new() };
    let newest = |slot: &str| run.photos.get(slot).and_then(|photos| photos.last());
    let shots = found.pack.pack.shots.iter().filter_map(|shot| Some((shot, shot.before.as_ref()?)));
    shots
        .map(|(shot, before)| Pair {
            before_title: words.text(&format!("shot-{before}")),
            after_title: words.text(&format!("shot-{}", shot.id)),
            before: newest(before.as_str()),
            after: newest(shot.id.as_str()),
        })
        .filter(|pair| pair.before.is_some() || pair.after.is_some())
        .collect()
}

/// Every photograph that the pairs do not show, earlier ones of a slot too.
pub(super) fn others(words: &Words, record: &Record<'_>, run: &Run) -> Markup {
    let pairs = pairs_of(words, record, run);
    let shown: BTreeSet<&str> =
        pairs.iter().flat_map(|pair| [pair.before, pair.after]).flatten().map(|photo| photo.digest.as_str()).collect();
    let others: Vec<(&id::Slot, &Photo)> = run
        .photos
        .iter()
        .flat_map(|(slot, photos)| photos.iter().map(move |photo| (slot, photo)))
        .filter(|(_, photo)| !shown.contains(photo.digest.as_str()))
        .collect();
    html! {
        @if !others.is_empty() {
            section.card {
                h3 { (words.text("office-other-photos")) }
                div.photos { @for (slot, photo) in others {
                    @let title = slot_title(words, record, slot);
                    (figure(words, record, photo, &title))
                } }
            }
        }
    }
}

fn slot_title(words: &Words, record: &Record<'_>, slot: &id::Slot) -> String {
    match (slot.as_str(), record.pack) {
        ("", _) => words.text("office-unplaced"),
        (slot, Some(_)) => words.text(&format!("shot-{slot}")),
        (slot, None) => slot.to_owned(),
    }
}

fn figure(words: &Words, record: &Record<'_>, photo: &Photo, title: &str) -> Markup {
    let here = record.safe.contains(&photo.digest);
    let ahead = record.ahead.contains(&photo.digest);
    let shown = ahead || here && !photo.flags.contains(&PhotoFlag::NoPreview);
    html! {
        figure {
            @if shown {
                a href={ "/photos/" (photo.digest) "/preview" } {
                    img src={ "/photos/" (photo.digest) "/preview" } alt=(title) loading="lazy" decoding="async"
                        width=[size(photo).map(|(width, _)| width)] height=[size(photo).map(|(_, height)| height)];
                }
            } @else {
                div.no-photo { (words.text(if here { "flag-no-preview" } else { "office-photo-waits" })) }
            }
            figcaption {
                b { (title) }
                @if ahead { span.flag { (words.text("office-photo-ahead")) } }
                span { time { (day::clock(photo.at.utc_ms, photo.at.offset_min)) } @if let Some(place) = place(words, record, photo) { " · " (place) } }
                @if !photo.facts.taken.is_empty() && photo.flags.contains(&PhotoFlag::TimeDiffers) {
                    span { (words.fill("office-camera-time", &[("time", &photo.facts.taken)])) }
                }
                @for line in code_words(photo, words) { span { (line) } }
                @for flag in &photo.flags {
                    @if *flag != PhotoFlag::NoPreview { span.flag { (flag_words(photo, *flag, Units::Metric, words)) } }
                }
                @if here { a href={ "/photos/" (photo.digest) "/original" } { (words.text("office-original")) " (" (size_words(photo.bytes)) ")" } }
                span.digest title=(photo.digest) { "SHA-256 " (photo.digest.as_str().get(..12).unwrap_or_default()) "…" }
            }
        }
    }
}

fn size_words(bytes: u64) -> String {
    if bytes < 100_000 { format!("{} kB", bytes.div_ceil(1000)) } else { format!("{:.1} MB", bytes as f64 / 1e6) }
}

/// Where it was taken: how far from the site, or the degrees where the site's place is not known.
fn place(words: &Words, record: &Record<'_>, photo: &Photo) -> Option<String> {
    let numbers: Vec<f64> = photo.facts.phone_place.split(' ').filter_map(|number| number.parse().ok()).collect();
    let (latitude, longitude, doubt_m) = match numbers.as_slice() {
        [latitude, longitude, doubt_m] => (*latitude, *longitude, *doubt_m),
        _ => return Some(words.text("office-no-place")),
    };
    let doubt = format!("{doubt_m:.0}");
    let site = record.assignment.as_ref().map(|assignment| &assignment.site)?;
    let from = Place { latitude: site.latitude_deg, longitude: site.longitude_deg };
    let metres = distance(from, Place { latitude, longitude }).ok()?.value;
    let metres = if metres < 10_000.0 { format!("{metres:.0} m") } else { format!("{:.0} km", metres / 1000.0) };
    Some(words.fill("office-from-site", &[("distance", &metres), ("doubt", &doubt)]))
}
