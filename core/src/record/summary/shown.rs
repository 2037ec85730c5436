//! That the customer was shown it on the spot: before, what is shown to them; afterwards, who said so.

use super::chart::Shape;
use super::{Drawing, Part, Sources, Tone, work};
use crate::id::Letter;

/// What a customer is shown before they sign: what was done, found, and not done. A heading and its lines, each.
#[must_use]
pub fn to_be_shown(from: &Sources<'_>) -> Vec<(String, Vec<String>)> {
    let parts = |name: &str, parts: Vec<Part>| {
        let lines: Vec<String> = parts.into_iter().flat_map(lines).collect();
        (!lines.is_empty()).then(|| (from.words.text(&format!("customer-shown-{name}")), lines))
    };
    let all = [
        parts("first", work::first(from)),
        parts("found", work::found(from)),
        parts("done", work::done(from)),
        parts("gaps", work::gaps_told(from)),
    ];
    all.into_iter().flatten().collect()
}

fn lines(part: Part) -> Vec<String> {
    match part {
        Part::Text(text, _) => vec![text],
        Part::List(lines) => lines,
        Part::Found(found) => found.into_iter().map(|one| format!("{}: {}", one.severity_text, one.text)).collect(),
        Part::Done(done) => {
            let at = |units: &[Letter]| {
                let letters: Vec<&str> = units.iter().map(Letter::as_str).collect();
                if letters.is_empty() { String::new() } else { format!("{}: ", letters.join(", ")) }
            };
            done.into_iter().map(|one| format!("{}{}", at(&one.units), one.what)).collect()
        }
        _ => Vec::new(),
    }
}

/// Whom it was shown to, with the signature; nothing where neither was given.
pub(super) fn shown(from: &Sources<'_>) -> Vec<Part> {
    let Some(shown) = from.shown else { return Vec::new() };
    let name = shown.name.as_str();
    let said = if name.is_empty() { "summary-shown-unnamed" } else { "summary-shown" };
    let mut parts = vec![Part::Text(from.words.fill(said, &[("name", name)]), Tone::Plain)];
    if let Some(ink) = shown.ink() {
        let point = |(x, y): (u32, u32)| (f64::from(x), f64::from(y));
        let shape = |stroke: Vec<(u32, u32)>| Shape::Stroke { points: stroke.into_iter().map(point).collect() };
        let key = if name.is_empty() { "summary-shown-drawing-unnamed" } else { "summary-shown-drawing" };
        parts.push(Part::Ink(Drawing {
            width: f64::from(ink.width),
            height: f64::from(ink.height),
            shapes: ink.strokes.into_iter().map(shape).collect(),
            text: from.words.fill(key, &[("name", name)]),
        }));
    }
    parts
}
