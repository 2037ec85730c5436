//! The words on screens: every one is there, none is a bare key.

use std::collections::BTreeSet;
use std::path::Path;

use coilside_core::screen::Screen;
use serde_json::Value;

/// Fields of a screen that machines read, not people.
const MACHINE: &[&str] = &[
    "place", "language", "id", "field", "slot", "sign", "digest", "press", "state", "tone", "block", "value", "to",
    "chosen",
];

/// Every key of the core's and the packs' Fluent files.
pub struct Keys(BTreeSet<String>);

impl Keys {
    /// Reads them from the sources, all languages together.
    ///
    /// # Errors
    /// Where a file cannot be read.
    pub fn of_the_sources() -> std::io::Result<Keys> {
        let mut keys = BTreeSet::new();
        let core = Path::new(env!("CARGO_MANIFEST_DIR")).join("../core");
        for folder in [core.join("src/words"), core.join("packs")] {
            collect(&folder, &mut keys)?;
        }
        Ok(Keys(keys))
    }

    /// How many there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.0.len()
    }

    /// What is wrong with a screen's words: bare keys, empty places in patterns, question marks of a lost letter.
    #[must_use]
    pub fn faults(&self, screen: &Screen) -> Vec<String> {
        let mut faults = Vec::new();
        let value = serde_json::to_value(screen).unwrap_or(Value::Null);
        if value.is_null() {
            faults.push("the screen cannot be written as JSON".to_owned());
        }
        self.walk(&value, "", &mut faults);
        faults.iter().map(|fault| format!("at '{}' ({}): {fault}", screen.place, screen.language)).collect()
    }

    fn walk(&self, value: &Value, at: &str, faults: &mut Vec<String>) {
        match value {
            Value::String(text) => {
                if let Some(fault) = self.fault(text) {
                    faults.push(format!("{at}: {fault} in “{text}”"));
                }
            }
            Value::Array(values) => values.iter().for_each(|value| self.walk(value, at, faults)),
            Value::Object(fields) => {
                for (name, value) in fields.iter().filter(|(name, _)| !MACHINE.contains(&name.as_str())) {
                    self.walk(value, &format!("{at}/{name}"), faults);
                }
            }
            _ => {}
        }
    }

    fn fault(&self, text: &str) -> Option<&'static str> {
        if self.0.contains(text) {
            return Some("a bare key");
        }
        if text.contains("{ $") || text.contains("{$") {
            return Some("a value that was not put in");
        }
        if text.contains("???") || text.contains('\u{fffd}') {
            return Some("a lost letter");
        }
        let words =
            || text.split([' ', '\u{a0}', ',', ';', ':', '“', '”', '(', ')']).map(|word| word.trim_end_matches('.'));
        words().any(|word| is_keylike(word) && (self.0.contains(word) || has_family(word))).then_some("a key")
    }
}

/// Every text on a screen that is for people.
#[must_use]
pub fn all(screen: &Screen) -> Vec<String> {
    fn gather(value: &Value, texts: &mut Vec<String>) {
        match value {
            Value::String(text) => texts.push(text.clone()),
            Value::Array(values) => values.iter().for_each(|value| gather(value, texts)),
            Value::Object(fields) => {
                let people = fields.iter().filter(|(name, _)| !MACHINE.contains(&name.as_str()));
                people.for_each(|(_, value)| gather(value, texts));
            }
            _ => {}
        }
    }
    let mut texts = Vec::new();
    gather(&serde_json::to_value(screen).unwrap_or(Value::Null), &mut texts);
    texts
}

/// The words of a text that have a letter of the plain alphabet.
pub fn readable(text: &str) -> impl Iterator<Item = String> + '_ {
    text.split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| word.contains(|letter: char| letter.is_ascii_alphabetic()))
        .map(str::to_owned)
}

/// Lower case with hyphens, as keys are written.
fn is_keylike(word: &str) -> bool {
    word.contains('-')
        && word.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || matches!(c, '-' | '.'))
        && !word.starts_with('-')
        && !word.ends_with('-')
}

/// Begins as the keys of a family do: also a key that no file has shows up by that.
fn has_family(word: &str) -> bool {
    const FAMILIES: &[&str] = &[
        "step",
        "shot",
        "reading",
        "phase",
        "condition",
        "excursion",
        "mix",
        "instrument",
        "fact",
        "need",
        "danger",
        "caution",
        "act",
        "missing",
        "problem",
        "refused",
        "ask",
        "menu",
        "outbox",
        "procedures",
        "fault",
        "proof",
        "dwell",
        "state",
        "flag",
        "emergency",
        "severity",
        "summary",
        "result",
        "column",
        "wake",
        "sealed",
        "leaving",
        "round",
        "foot",
        "photo",
        "customer",
    ];
    word.split_once('-').is_some_and(|(family, _)| FAMILIES.contains(&family))
}

fn collect(folder: &Path, keys: &mut BTreeSet<String>) -> std::io::Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            collect(&path, keys)?;
        } else if path.extension().is_some_and(|extension| extension == "ftl") {
            keys.extend(keys_of(&std::fs::read_to_string(path)?));
        }
    }
    Ok(())
}

/// The keys of a Fluent file: messages, and attributes as `message.attribute`.
#[must_use]
pub fn keys_of(ftl: &str) -> BTreeSet<String> {
    let mut keys = BTreeSet::new();
    let mut message = String::new();
    for line in ftl.lines() {
        let Some((left, _)) = line.split_once('=') else { continue };
        let name = left.trim();
        if let Some(attribute) = name.strip_prefix('.').filter(|_| line.starts_with(' ')) {
            keys.insert(format!("{message}.{attribute}"));
        } else if !line.starts_with([' ', '#']) && !name.is_empty() {
            message = name.to_owned();
            keys.insert(message.clone());
        }
    }
    keys
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bare_key_is_found_alone_and_inside_a_text() {
        let keys = Keys::of_the_sources().unwrap();
        assert!(keys.count() > 500, "only {} keys were found", keys.count());
        for bad in ["menu-round", "Not yet: step-add-acid", "step-that-no-file-has", "Wait { $least }", "ask-why.how"] {
            assert!(keys.fault(bad).is_some(), "{bad}");
        }
        for good in ["Round", "Off-peak supply", "A clamp-on meter.", "AB-1042", "12.5 °C", "2026-05-04 10:00"] {
            assert_eq!(keys.fault(good), None, "{good}");
        }
    }
}
