//! One thing that is wrong, with its place. Its words are in `packs.ftl`: `fault-<rule>`, and `.do` for what to do.

use serde::{Deserialize, Serialize};

use crate::words::Words;

/// A place in a text file, both counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Spot {
    /// The line.
    pub line: usize,
    /// The column, in characters.
    pub column: usize,
}

impl Spot {
    /// The place of a byte of a text.
    #[must_use]
    pub fn of(text: &str, byte: usize) -> Spot {
        let before = text.char_indices().take_while(|(at, _)| *at < byte).map(|(_, c)| c);
        let (mut line, mut column) = (1, 1);
        for c in before {
            if c == '\n' {
                line += 1;
                column = 1;
            } else {
                column += 1;
            }
        }
        Spot { line, column }
    }
}

/// Something that is wrong with a pack, or could be better.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// In which file.
    pub file: String,
    /// Where in it, where it has one place.
    pub spot: Option<Spot>,
    /// Which rule, the key of its words.
    pub rule: &'static str,
    /// What goes into the words.
    pub values: Vec<(&'static str, String)>,
}

impl Fault {
    /// Where, `pack.toml:12:5`.
    #[must_use]
    pub fn place(&self) -> String {
        match self.spot {
            Some(Spot { line, column }) => format!("{}:{line}:{column}", self.file),
            None => self.file.clone(),
        }
    }

    /// What is wrong.
    #[must_use]
    pub fn what(&self, words: &Words) -> String {
        said(self.rule, &self.values, "", words)
    }

    /// What to do about it.
    #[must_use]
    pub fn remedy(&self, words: &Words) -> String {
        said(self.rule, &self.values, ".do", words)
    }
}

/// Something found in a pack that is already typed: its path in the document instead of its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::procedure) struct Found {
    /// As `phase[2].step[0].sets[1]`.
    pub(super) path: String,
    /// See [`Fault::rule`].
    pub(super) rule: &'static str,
    /// See [`Fault::values`].
    pub(super) values: Vec<(&'static str, String)>,
}

impl Found {
    pub(super) fn new(path: impl Into<String>, rule: &'static str, values: Vec<(&'static str, String)>) -> Found {
        Found { path: path.into(), rule, values }
    }

    /// What is wrong and what to do, in English: for those who have no document at hand any more.
    pub(in crate::procedure) fn text(&self) -> String {
        Words::new("en", None).map_or_else(
            |_| format!("{}: {}", self.path, self.rule),
            |words| {
                let of = |part| said(self.rule, &self.values, part, &words);
                format!("{}. {}", of("").trim_end_matches('.'), of(".do"))
            },
        )
    }
}

fn said(rule: &str, values: &[(&'static str, String)], part: &str, words: &Words) -> String {
    let values: Vec<(&str, &str)> = values.iter().map(|(name, value)| (*name, value.as_str())).collect();
    words.fill(&format!("fault-{rule}{part}"), &values)
}

/// Where findings gather.
#[derive(Debug, Default)]
pub(super) struct Sink {
    pub(super) faults: Vec<Fault>,
    pub(super) advice: Vec<Fault>,
}

impl Sink {
    pub(super) fn fault(
        &mut self,
        file: &str,
        spot: Option<Spot>,
        rule: &'static str,
        values: Vec<(&'static str, String)>,
    ) {
        self.faults.push(Fault { file: file.to_owned(), spot, rule, values });
    }

    pub(super) fn advise(
        &mut self,
        file: &str,
        spot: Option<Spot>,
        rule: &'static str,
        values: Vec<(&'static str, String)>,
    ) {
        self.advice.push(Fault { file: file.to_owned(), spot, rule, values });
    }

    /// By file and place: `pack.toml` first, since words follow from it.
    pub(super) fn sort(&mut self) {
        let key = |fault: &Fault| (fault.file != super::TOML, fault.file.clone(), fault.spot);
        self.faults.sort_by_key(key);
        self.advice.sort_by_key(key);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_and_columns_are_counted_from_one_in_characters() {
        let text = "a = 1\nñandú = 2\n";
        assert_eq!(Spot::of(text, 0), Spot { line: 1, column: 1 });
        assert_eq!(Spot::of(text, text.find('=').unwrap()), Spot { line: 1, column: 3 });
        assert_eq!(Spot::of(text, text.rfind('=').unwrap()), Spot { line: 2, column: 7 });
    }
}
