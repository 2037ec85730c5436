//! The owner's summary as content: what was done, what changed, what was found, what is next. It stands in sections, in
//! the order in which it is read; the renderings (a page, a PDF) only dress it.

mod answers;
mod cautions;
pub mod chart;
mod cover_told;
pub mod day;
pub mod genuine;
mod html;
pub mod jpeg;
mod next;
mod numbers;
#[cfg(feature = "pdf")]
mod pdf;
mod shown;
mod work;
mod years;

use chrono::NaiveDate;

use crate::evidence::Shown;
use crate::id::{Digest, Letter};
use crate::now::Now;
use crate::procedure::measure::Units;
use crate::procedure::pack::Pack;
use crate::record::results::{Known, Results, results};
use crate::round::Assignment;
use crate::visit::event::Severity;
use crate::visit::state::{Run, Visit};
use crate::words::Words;

pub use chart::Drawing;
pub use genuine::SealMarks;
pub use html::{Dress, STYLE, Way, html, policy};
pub use jpeg::{Picture, Pictures, Source};
pub use next::next_service;
#[cfg(feature = "pdf")]
pub use pdf::{PdfError, pdf};
pub use shown::to_be_shown;
pub use work::photographs_of;

/// What the owner gets, in words of their language.
#[derive(Clone, Debug, PartialEq)]
pub struct Summary {
    /// The language, a BCP 47 tag.
    pub language: String,
    /// The units, which decide the paper: A4, or US letter.
    pub units: Units,
    /// When the visit ended.
    pub at: Option<Now>,
    /// The title.
    pub title: String,
    /// Site and day, then each machine.
    pub lead: Vec<String>,
    /// The sections in reading order. One without content is not there.
    pub sections: Vec<Section>,
    /// The words that a rendering needs: 'before', 'after'.
    pub labels: Labels,
}

/// Words around pictures and charts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Labels {
    /// 'Before'.
    pub before: String,
    /// 'After'.
    pub after: String,
    /// 'No photograph'.
    pub no_photo: String,
    /// How the slider is used.
    pub slide: String,
    /// 'Page { $page } of { $pages }', with the signs `{page}` and `{pages}` to be put in.
    pub page: String,
}

/// A section.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// Its name in renderings and tests.
    pub name: &'static str,
    /// Its heading; the answers to the first questions have none.
    pub title: String,
    /// What stands in it.
    pub parts: Vec<Part>,
}

/// How something should strike the eye. Never the only sign: the words say it too.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tone {
    /// Ordinary.
    Plain,
    /// Less important.
    Quiet,
    /// What it comes to.
    Strong,
    /// As it should be.
    Good,
    /// Wants a look.
    Attention,
    /// Can injure.
    Danger,
}

/// A piece of a section.
#[derive(Clone, Debug, PartialEq)]
pub enum Part {
    /// A paragraph.
    Text(String, Tone),
    /// The first questions, each with its answer.
    Answers(Vec<Answer>),
    /// Lines of equal weight.
    List(Vec<String>),
    /// What was found, the worst first.
    Found(Vec<Found>),
    /// What was done, in order.
    Done(Vec<Done>),
    /// The same view before and after.
    Pair(Pair),
    /// A value as found and as left.
    Changed(Changed),
    /// A reading over the years.
    Years(Years),
    /// What was drawn by hand.
    Ink(Drawing),
    /// A name and what it stands for, a line each.
    Facts(Vec<(String, String)>),
    /// An address to point a camera at.
    Code(String),
    /// A day for the owner's calendar: the words of the link, and the file (RFC 5545).
    Calendar {
        /// The words of the link.
        label: String,
        /// The file.
        ics: String,
    },
}

/// One of the first questions with its answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// 'Is it safe?'
    pub question: String,
    /// The answer. Parts of a contact are parted by ' · ' or lines.
    pub answer: String,
    /// How it should strike the eye.
    pub tone: Tone,
}

/// Something that was done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Done {
    /// At which units, where there are several.
    pub units: Vec<Letter>,
    /// What.
    pub what: String,
    /// Why it matters.
    pub matters: String,
}

/// The same view before and after.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pair {
    /// Of what.
    pub title: String,
    /// Before the work.
    pub before: Option<Digest>,
    /// After the work.
    pub after: Option<Digest>,
}

/// A value as found and as left.
#[derive(Clone, Debug, PartialEq)]
pub struct Changed {
    /// Of what.
    pub label: String,
    /// As found, with range and unit.
    pub found: String,
    /// As left, with range and unit.
    pub left: String,
    /// What it means, where that can be told.
    pub meaning: String,
    /// Both ranges over one scale, where both are there.
    pub chart: Option<Drawing>,
}

/// A reading over the years.
#[derive(Clone, Debug, PartialEq)]
pub struct Years {
    /// Of what.
    pub label: String,
    /// Month and value with its unit, the oldest first.
    pub values: Vec<(String, String)>,
    /// Where it goes, where that can be told.
    pub meaning: String,
    /// The values over time.
    pub chart: Drawing,
}

/// Something that was found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// How much it matters.
    pub severity: Severity,
    /// How much it matters, in words.
    pub severity_text: String,
    /// In the technician's words.
    pub text: String,
}

/// Everything that the summary is made from.
pub struct Sources<'a> {
    /// The visit.
    pub visit: &'a Visit,
    /// Its assignment.
    pub assignment: &'a Assignment,
    /// The pinned pack.
    pub pack: &'a Pack,
    /// Words in the owner's language, the pack's among them.
    pub words: &'a Words,
    /// The owner's units.
    pub units: Units,
    /// Whom to call: the firm's name and telephone. None where that is not known here.
    pub contact: Option<&'a str>,
    /// The day of the visit, where it was.
    pub day: NaiveDate,
    /// What marks the sealed record; none before the seal.
    pub seal: Option<SealMarks>,
    /// The address under which the office shows this summary, where it is known.
    pub address: Option<&'a str>,
    /// Whom it was shown to on the spot, where they gave name or signature and these were not erased.
    pub shown: Option<&'a Shown>,
}

impl Sources<'_> {
    /// The unit's letter before a line, where there are several units.
    fn of_unit(&self, unit: &Letter, line: String) -> String {
        if self.visit.runs.len() > 1 { format!("{unit}: {line}") } else { line }
    }
}

/// A unit's run with what its readings come to.
struct Worked<'a> {
    unit: &'a Letter,
    run: &'a Run,
    results: Results,
}

/// The summary of a visit.
#[must_use]
pub fn summary(from: &Sources<'_>) -> Summary {
    let words = from.words;
    let worked = |(unit, run)| Worked { unit, run, results: results(from.pack, run, &Known::default()) };
    let worked: Vec<Worked<'_>> = from.visit.runs.iter().map(worked).collect();
    let stopped = from.visit.broken_off.is_some();
    let lines = |lines: Vec<String>| if lines.is_empty() { Vec::new() } else { vec![Part::List(lines)] };
    let sections = [
        ("first", work::first(from)),
        ("answers", vec![Part::Answers(answers::answers(from))]),
        ("found", work::found(from)),
        ("done", work::done(from)),
        ("pictures", work::pairs(from)),
        ("numbers", numbers::numbers(from, &worked)),
        ("years", years::years(from)),
        ("gaps", work::gaps_told(from)),
        ("settings", lines(work::settings(from))),
        ("cover", lines(cover_told::cover(from))),
        ("cautions", lines(cautions::cautions(from))),
        ("next", next::next(from, &worked)),
        ("shown", shown::shown(from)),
        ("genuine", genuine::genuine(from)),
    ];
    let section = |(name, parts): (&'static str, Vec<Part>)| {
        let title = if name == "answers" { String::new() } else { words.text(&format!("summary-section-{name}")) };
        (!parts.is_empty()).then_some(Section { name, title, parts })
    };
    Summary {
        language: words.language().to_owned(),
        units: from.units,
        at: from.visit.last.clone(),
        title: words.text(if stopped { "summary-title-stopped" } else { "summary-title" }),
        lead: work::lead(from),
        sections: sections.into_iter().filter_map(section).collect(),
        labels: Labels {
            before: words.text("summary-before"),
            after: words.text("summary-after"),
            no_photo: words.text("summary-no-photo"),
            slide: words.text("summary-slide"),
            page: words.fill("summary-page", &[("page", "{page}"), ("pages", "{pages}")]),
        },
    }
}

impl Summary {
    /// The section of that name.
    #[must_use]
    pub fn section(&self, name: &str) -> Option<&Section> {
        self.sections.iter().find(|section| section.name == name)
    }

    /// Digests of the photographs that it shows.
    pub fn photographs(&self) -> impl Iterator<Item = &Digest> {
        let parts = self.sections.iter().flat_map(|section| &section.parts);
        let pairs = parts.filter_map(|part| if let Part::Pair(pair) = part { Some(pair) } else { None });
        pairs.flat_map(|pair| [&pair.before, &pair.after]).flatten()
    }

    /// Every word that a reader meets, in reading order: what a rendering must show, no more and no less. Words inside
    /// charts are among them. The link to a calendar file is not: paper has none.
    #[must_use]
    pub fn words(&self) -> Vec<&str> {
        let mut words = vec![self.title.as_str()];
        words.extend(self.lead.iter().map(String::as_str));
        for section in &self.sections {
            words.push(&section.title);
            section.parts.iter().for_each(|part| self.words_of(part, &mut words));
        }
        words.retain(|text| !text.is_empty());
        words
    }

    fn words_of<'a>(&'a self, part: &'a Part, words: &mut Vec<&'a str>) {
        let (before, after) = (self.labels.before.as_str(), self.labels.after.as_str());
        match part {
            Part::Text(text, _) => words.push(text),
            Part::Answers(answers) => words.extend(
                answers
                    .iter()
                    .flat_map(|answer| std::iter::once(answer.question.as_str()).chain(lines_of(&answer.answer))),
            ),
            Part::List(lines) => words.extend(lines.iter().map(String::as_str)),
            Part::Found(found) => {
                words.extend(found.iter().flat_map(|found| [found.severity_text.as_str(), &found.text]));
            }
            Part::Done(done) => {
                for done in done {
                    words.extend(done.units.iter().map(Letter::as_str));
                    words.extend([done.what.as_str(), &done.matters]);
                }
            }
            Part::Pair(pair) => {
                words.push(&pair.title);
                for (side, label) in [(&pair.before, before), (&pair.after, after)] {
                    words.push(label);
                    words.extend(side.is_none().then_some(self.labels.no_photo.as_str()));
                }
            }
            Part::Changed(changed) => {
                words.extend([changed.label.as_str(), before, &changed.found, after, &changed.left, &changed.meaning]);
                words.extend(changed.chart.iter().flat_map(Drawing::words));
            }
            Part::Years(years) => {
                words.push(&years.label);
                words.extend(years.chart.words());
                words.extend(years.values.iter().flat_map(|(day, value)| [day.as_str(), value]));
                words.push(&years.meaning);
            }
            Part::Facts(facts) => words.extend(facts.iter().flat_map(|(name, value)| [name.as_str(), value])),
            Part::Code(address) => words.push(address),
            Part::Ink(_) | Part::Calendar { .. } => {}
        }
    }
}

/// The parts of an answer, one a line.
pub(crate) fn lines_of(answer: &str) -> impl Iterator<Item = &str> {
    answer.split(['\n', '·']).map(str::trim).filter(|part| !part.is_empty())
}
