//! The words of every screen, in Fluent, one folder a language.

pub mod number;

use std::borrow::Cow;
use std::collections::BTreeMap;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};
use unic_langid::LanguageIdentifier;

/// The languages that the core speaks.
pub const LANGUAGES: &[&str] = &["en", "es"];

/// English in letters that no one writes: whatever stays readable on a screen does not come from Fluent. For looking through
/// screens; a private-use tag (RFC 5646, 2.2.1) that no list offers.
pub const PSEUDO: &str = "qps";

/// Whether the core can speak it.
#[must_use]
pub fn is_spoken(language: &str) -> bool {
    language == PSEUDO || LANGUAGES.contains(&language)
}

/// In which language the words of a language are written.
fn written_in(language: &str) -> &str {
    if language == PSEUDO { "en" } else { language }
}

const OWN: &[(&str, &[&str])] = &[
    (
        "en",
        &[
            include_str!("en/canon.ftl"),
            include_str!("en/screens.ftl"),
            include_str!("en/round.ftl"),
            include_str!("en/packs.ftl"),
            include_str!("en/shell.ftl"),
            include_str!("en/record.ftl"),
            include_str!("en/sending.ftl"),
        ],
    ),
    (
        "es",
        &[
            include_str!("es/canon.ftl"),
            include_str!("es/screens.ftl"),
            include_str!("es/round.ftl"),
            include_str!("es/packs.ftl"),
            include_str!("es/shell.ftl"),
            include_str!("es/record.ftl"),
            include_str!("es/sending.ftl"),
        ],
    ),
];

/// The words of one language, with those of a pack where one is open.
pub struct Words {
    language: String,
    bundle: FluentBundle<FluentResource>,
    shell_keys: Vec<String>,
}

/// Why words could not be had.
#[derive(Debug, thiserror::Error)]
pub enum WordsError {
    /// A language that is not there.
    #[error("there are no words in '{0}'; use en or es")]
    Language(String),
    /// Fluent text that cannot be read.
    #[error("the words in '{language}' cannot be read: {detail}")]
    Unreadable {
        /// In which language.
        language: String,
        /// Why.
        detail: String,
    },
}

impl Words {
    /// The core's words in a language, with a pack's own beside them.
    ///
    /// # Errors
    /// Where the language is not there or a file cannot be read.
    pub fn new(language: &str, pack: Option<&str>) -> Result<Words, WordsError> {
        let not_there = || WordsError::Language(language.to_owned());
        let (written, own) = OWN.iter().find(|(tag, _)| *tag == written_in(language)).ok_or_else(not_there)?;
        let unreadable = |detail: String| WordsError::Unreadable { language: language.to_owned(), detail };
        let tag: LanguageIdentifier = written.parse().map_err(|_| not_there())?;
        let mut bundle = FluentBundle::new_concurrent(vec![tag]);
        bundle.set_use_isolating(false);
        if language == PSEUDO {
            bundle.set_transform(Some(disguised));
        }
        for text in own.iter().copied().chain(pack) {
            let resource = FluentResource::try_new(text.to_owned())
                .map_err(|(_, errors)| unreadable(format!("{:?}", errors.first())))?;
            bundle.add_resource(resource).map_err(|errors| unreadable(format!("{:?}", errors.first())))?;
        }
        let shell_keys = own
            .iter()
            .flat_map(|text| text.lines())
            .filter_map(|line| line.split_once(" ="))
            .map(|(key, _)| key)
            .filter(|key| key.starts_with("shell-"))
            .map(str::to_owned)
            .collect();
        Ok(Words { language: language.to_owned(), bundle, shell_keys })
    }

    /// No words at all: each key stands for itself, so that a gap shows.
    #[must_use]
    pub fn none(language: &str) -> Words {
        let bundle = FluentBundle::new_concurrent(Vec::new());
        Words { language: language.to_owned(), bundle, shell_keys: Vec::new() }
    }

    /// The language.
    #[must_use]
    pub fn language(&self) -> &str {
        &self.language
    }

    /// The words of a key, `message` or `message.attribute`; the key itself where there are none, so that a gap shows.
    #[must_use]
    pub fn text(&self, key: &str) -> String {
        self.fill(key, &[])
    }

    /// The words of a key where it has any.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<String> {
        self.look_up(key, &[])
    }

    /// The words of a key with values put in. Numbers come as text, formatted by [`number`].
    #[must_use]
    pub fn fill(&self, key: &str, values: &[(&str, &str)]) -> String {
        self.look_up(key, values).unwrap_or_else(|| key.to_owned())
    }

    /// Whether there is a message of that name, with a value or with attributes only.
    #[must_use]
    pub fn has(&self, message: &str) -> bool {
        self.bundle.has_message(message)
    }

    /// Whether that message has words of its own beside its attributes.
    #[must_use]
    pub fn has_value(&self, message: &str) -> bool {
        self.bundle.get_message(message).is_some_and(|message| message.value().is_some())
    }

    /// The shell's own words by key.
    #[must_use]
    pub fn shell(&self) -> BTreeMap<String, String> {
        self.shell_keys.iter().map(|key| (key.clone(), self.text(key))).collect()
    }

    fn look_up(&self, key: &str, values: &[(&str, &str)]) -> Option<String> {
        let (message, attribute) = key.split_once('.').map_or((key, None), |(m, a)| (m, Some(a)));
        let message = self.bundle.get_message(message)?;
        let pattern = match attribute {
            None => message.value()?,
            Some(name) => message.get_attribute(name)?.value(),
        };
        let mut args = FluentArgs::new();
        for (name, value) in values {
            args.set(*name, (*value).to_owned());
        }
        let mut errors = Vec::new();
        let text = self.bundle.format_pattern(pattern, Some(&args), &mut errors);
        errors.is_empty().then(|| text.into_owned())
    }
}

/// Each letter as one that looks like it. Values that are put in stay as they are.
fn disguised(text: &str) -> Cow<'_, str> {
    const PLAIN: &str = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
    const OTHER: &str = "áƀçđéƒĝĥíĵķĺḿńóṕɋŕśťúṽŵẋýžÁƁÇĐÉƑĜĤÍĴĶĹḾŃÓṔɊŔŚŤÚṼŴẊÝŽ";
    let other = |letter: char| {
        let at = PLAIN.chars().position(|plain| plain == letter)?;
        OTHER.chars().nth(at)
    };
    text.chars().map(|letter| other(letter).unwrap_or(letter)).collect()
}
