//! The words beside a pack: every one that it needs, in every language, and none that nobody asked for.

use std::collections::{BTreeMap, BTreeSet};

use fluent_bundle::FluentResource;

use super::document::Document;
use super::fault::{Sink, Spot};
use super::{TOML, names::paths, nearest, one_line};
use crate::procedure::pack::Pack;
use crate::words::{LANGUAGES, Words};

/// What the keys of a pack begin with.
const FAMILIES: &[&str] =
    &["condition", "instrument", "reading", "shot", "chemical", "part", "gear", "mix", "excursion", "phase", "step"];
/// Words as long as this that are alike in two languages were hardly translated.
const ALIKE_CHARACTERS: usize = 25;

/// A key that a pack needs or may have.
struct Wanted {
    /// `message` or `message.attribute`.
    key: String,
    /// What needs it, as a path in the document.
    path: String,
    needed: bool,
}

/// Checks the words in every language.
pub(super) fn check(pack: &Pack, document: &Document<'_>, files: &BTreeMap<String, String>, sink: &mut Sink) {
    let wanted = wanted(pack);
    let mut by_language = Vec::new();
    for language in LANGUAGES {
        let file = format!("{language}.ftl");
        match files.get(&file) {
            None => sink.fault(&file, None, "words-file-missing", Vec::new()),
            Some(text) => {
                if let Some(there) = of_file(language, &file, text, &wanted, document, sink) {
                    by_language.push((file, there));
                }
            }
        }
    }
    for name in files.keys().filter(|name| name.ends_with(".ftl")) {
        if !LANGUAGES.iter().any(|language| *name == format!("{language}.ftl")) {
            sink.advise(name, None, "words-not-spoken", vec![("languages", LANGUAGES.join(", "))]);
        }
    }
    for (file, there) in &by_language {
        for (other_file, other) in by_language.iter().filter(|(other_file, _)| other_file != file) {
            compare((file, there), (other_file, other), &wanted, sink);
        }
    }
}

/// Keys with their places and their words.
type There = BTreeMap<String, (Spot, String)>;

/// The words of one file. None where they cannot be read at all.
fn of_file(
    language: &str,
    file: &str,
    text: &str,
    wanted: &[Wanted],
    document: &Document<'_>,
    sink: &mut Sink,
) -> Option<There> {
    if let Err((_, errors)) = FluentResource::try_new(text.to_owned()) {
        for error in errors {
            // From the beginning of the entry that cannot be read.
            let spot = Spot::of(text, error.slice.as_ref().map_or(error.pos.start, |slice| slice.start));
            sink.fault(file, Some(spot), "words-malformed", vec![("detail", one_line(&error.to_string()))]);
        }
        return None;
    }
    let core = Words::new(language, None).ok()?;
    let mut spots: BTreeMap<String, Spot> = BTreeMap::new();
    let mut sound = true;
    for (key, spot) in keys(text) {
        if spots.contains_key(&key) {
            sink.fault(file, Some(spot), "words-twice", vec![("key", key)]);
            sound = false;
            continue;
        }
        let message = key.split('.').next().unwrap_or_default();
        if core.has(message) {
            sink.fault(file, Some(spot), "words-of-core", vec![("key", key.clone())]);
            sound = false;
        } else if !of_pack(message) {
            let values = vec![("key", key.clone()), ("families", FAMILIES.join("-, "))];
            sink.fault(file, Some(spot), "words-foreign", values);
            sound = false;
        }
        spots.insert(key, spot);
    }
    if !sound {
        return None;
    }
    let words = match Words::new(language, Some(text)) {
        Ok(words) => words,
        Err(error) => {
            sink.fault(file, None, "words-malformed", vec![("detail", one_line(&error.to_string()))]);
            return None;
        }
    };
    let mut there = There::new();
    let mut gaps = BTreeSet::new();
    for (key, spot) in spots {
        match words.get(&key) {
            Some(said) if !said.trim().is_empty() => {
                there.insert(key, (spot, said));
            }
            // A message may be there only for its attributes.
            _ if !key.contains('.') && words.has(&key) && !words.has_value(&key) => {}
            _ => {
                gaps.insert(key.clone());
                sink.fault(file, Some(spot), "words-with-values", vec![("key", key)]);
            }
        }
    }
    let wanted: Vec<_> = wanted.iter().filter(|want| !gaps.contains(&want.key)).collect();
    missing(file, &there, &wanted, document, sink);
    Some(there)
}

fn missing(file: &str, there: &There, wanted: &[&Wanted], document: &Document<'_>, sink: &mut Sink) {
    let known: Vec<&str> = there.keys().map(String::as_str).collect();
    let asked: BTreeSet<&str> = wanted.iter().map(|wanted| wanted.key.as_str()).collect();
    for want in wanted.iter().filter(|want| want.needed && !there.contains_key(&want.key)) {
        let at = document.spot(&want.path).map_or_else(|| TOML.to_owned(), |spot| format!("{TOML}:{}", spot.line));
        let mut values = vec![("key", want.key.clone()), ("at", at)];
        let spare = known.iter().copied().filter(|key| !asked.contains(key));
        match nearest(&want.key, spare) {
            Some(near) => {
                values.push(("near", near.to_owned()));
                sink.fault(file, None, "words-missing-near", values);
            }
            None => sink.fault(file, None, "words-missing", values),
        }
    }
    for (key, (spot, _)) in there.iter().filter(|(key, _)| !asked.contains(key.as_str())) {
        sink.advise(file, Some(*spot), "words-unused", vec![("key", key.clone())]);
    }
}

/// What is in one language and not in the other, and what nobody translated.
fn compare(one: (&str, &There), other: (&str, &There), wanted: &[Wanted], sink: &mut Sink) {
    // What is needed was missed already, and of what nobody asks for no second one is wanted.
    let may = |key: &str| wanted.iter().any(|want| !want.needed && want.key == key);
    for (key, (spot, said)) in one.1 {
        match other.1.get(key) {
            None if may(key) => {
                let values = vec![("key", key.clone()), ("other", other.0.to_owned())];
                sink.fault(one.0, Some(*spot), "words-one-language", values);
            }
            Some((_, also)) if one.0 > other.0 && said == also && said.chars().count() >= ALIKE_CHARACTERS => {
                let values = vec![("key", key.clone()), ("other", other.0.to_owned())];
                sink.advise(one.0, Some(*spot), "words-alike", values);
            }
            _ => {}
        }
    }
}

fn of_pack(message: &str) -> bool {
    message == "pack" || message.split_once('-').is_some_and(|(family, _)| FAMILIES.contains(&family))
}

/// Every key of a Fluent file that was found sound, with its place: messages at the edge, attributes set in.
fn keys(text: &str) -> Vec<(String, Spot)> {
    let mut found = Vec::new();
    let mut message = String::new();
    for (number, line) in text.lines().enumerate() {
        let spot = |column| Spot { line: number + 1, column };
        let set_in = line.len() - line.trim_start_matches(' ').len();
        let Some((name, _)) = line.trim_start().split_once('=') else { continue };
        let name = name.trim_end();
        if let Some(attribute) = name.strip_prefix('.').filter(|name| set_in > 0 && is_key(name)) {
            found.push((format!("{message}.{attribute}"), spot(set_in + 1)));
        } else if set_in == 0 && is_key(name) {
            message = name.to_owned();
            found.push((message.clone(), spot(1)));
        }
    }
    found
}

fn is_key(name: &str) -> bool {
    name.starts_with(|c: char| c.is_ascii_alphabetic())
        && name.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_'))
}

/// Every key that the pack needs or may have.
fn wanted(pack: &Pack) -> Vec<Wanted> {
    let mut wanted = Vec::new();
    let mut want = |path: &str, needed: bool, key: String| wanted.push(Wanted { key, path: path.to_owned(), needed });
    want("pack", true, "pack".into());
    want("pack", true, "pack.name".into());
    for (number, condition) in pack.conditions.iter().enumerate() {
        want(&format!("condition[{number}].id"), true, format!("condition-{}", condition.id));
        for (option, it) in condition.options.iter().enumerate() {
            let path = format!("condition[{number}].option[{option}].id");
            want(&path, true, format!("condition-{}-{}", condition.id, it.id));
        }
    }
    let mut each = |kind: &str, ids: Vec<&str>, needed: &[&str], may: &[&str]| {
        for (number, id) in ids.into_iter().enumerate() {
            let path = format!("{kind}[{number}].id");
            let key = format!("{kind}-{id}");
            want(&path, true, key.clone());
            needed.iter().for_each(|attribute| want(&path, true, format!("{key}.{attribute}")));
            may.iter().for_each(|attribute| want(&path, false, format!("{key}.{attribute}")));
        }
    };
    each("instrument", pack.instruments.iter().map(|it| it.id.as_str()).collect(), &[], &[]);
    each("reading", pack.readings.iter().map(|it| it.id.as_str()).collect(), &["hint"], &[]);
    each("shot", pack.shots.iter().map(|it| it.id.as_str()).collect(), &["show"], &[]);
    each("chemical", pack.chemicals.iter().map(|it| it.id.as_str()).collect(), &[], &[]);
    each("part", pack.parts.iter().map(|it| it.id.as_str()).collect(), &[], &[]);
    each("gear", pack.gear.iter().map(|it| it.id.as_str()).collect(), &[], &[]);
    let mix = &["concentrate", "water", "order-1", "order-2", "gear"];
    each("mix", pack.mixes.iter().map(|it| it.id.as_str()).collect(), mix, &["order-3", "order-4"]);
    each("excursion", pack.excursions.iter().map(|it| it.id.as_str()).collect(), &["why"], &[]);
    each("phase", pack.phases.iter().map(|it| it.id.as_str()).collect(), &[], &["owner", "matters"]);
    for (path, step) in paths(pack) {
        let path = format!("{path}.id");
        let key = format!("step-{}", step.id);
        want(&path, true, key.clone());
        want(&path, true, format!("{key}.why"));
        want(&path, false, format!("{key}.how"));
        want(&path, step.dwell.is_some(), format!("{key}.then"));
    }
    wanted
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_found_with_their_lines_and_a_sign_inside_of_words_is_none() {
        let text = "# a = b\npack = One\n    .name = Two = three\n\nstep-a =\n    Long words\n    .why = So\n";
        let found: Vec<_> =
            keys(text).into_iter().map(|(key, spot)| format!("{key}@{}:{}", spot.line, spot.column)).collect();
        assert_eq!(found, ["pack@2:1", "pack.name@3:5", "step-a@5:1", "step-a.why@7:5"]);
    }
}
