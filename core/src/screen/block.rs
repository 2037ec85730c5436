//! The typed blocks of which every screen is made. A shell draws them and knows nothing of heat pumps.

use serde::{Deserialize, Serialize};

use super::Drawing;
use crate::action::Action;

/// How something should strike the eye. Never the only sign: the words say it too.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Tone {
    /// Ordinary.
    Plain,
    /// Less important.
    Quiet,
    /// As it should be.
    Good,
    /// Wants a look.
    Attention,
    /// Can injure, or cannot be undone.
    Danger,
    /// The one thing to do next.
    Primary,
}

/// One piece of a screen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
#[serde(tag = "block", rename_all = "kebab-case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum Block {
    /// Words. Level 0 is running text, 1 to 3 a heading.
    Text { text: String, level: u8, tone: Tone },
    /// A hazard where it bites. `sign` names the kind of hazard for a pictogram.
    Caution { sign: String, title: String, text: String },
    /// A step with what belongs to it. `state`: see [`StepState`].
    Step { id: String, title: String, why: String, state: StepState, state_text: String, blocks: Vec<Block> },
    /// One thing to tick. Pressing sends `press`; a ticked one can be pressed again to take it back.
    Check { label: String, done: bool, press: Action },
    /// One of several. Choosing sends `Choose{field, option}`.
    Choice { field: String, label: String, options: Vec<ChoiceOption>, chosen: Option<String>, problem: Option<String> },
    /// A number with its unit. Leaving the field sends `Enter`, typing sends `Draft`.
    Number {
        field: String,
        label: String,
        unit: String,
        text: String,
        hint: String,
        /// The value of the visit before, ready to show, with its unit and date.
        before: Option<String>,
        /// What is wrong with what was typed. Nothing that was typed is lost.
        problem: Option<String>,
        /// The value is unusual: the question, to be answered by `Confirm` or by another value.
        question: Option<Question>,
        /// The value as it stands in the record, with unit and doubt; none until taken.
        taken: Option<String>,
        /// Where to say that it cannot be measured; none where it must be.
        could_not: Option<Button>,
    },
    /// Words to type. Leaving the field sends `Draft` too: the action that needs the words takes them.
    TextEntry {
        field: String,
        label: String,
        text: String,
        lines: u8,
        problem: Option<String>,
        /// What was typed is asked back, or `text` was read from a photograph and nobody has said yet that it is right: the
        /// question, to be answered by pressing what it offers or by other words.
        question: Option<Question>,
    },
    /// Something to draw by hand: with a finger, a pen or the mouse, each as good. While somebody draws, a shell keeps the
    /// strokes with `Draft{field, text}`, as JSON: `{"width", "height", "strokes": [[[x, y], …], …]}` in whole numbers from
    /// the upper left corner of a box that is `width` wide and `height` high. Cleared, the text is empty.
    Ink {
        field: String,
        /// What it is for.
        label: String,
        /// What drawing says, and what it does not.
        hint: String,
        width: u32,
        height: u32,
        /// What is drawn so far; once taken, what stands in the record.
        text: String,
        /// It stands in the record: who and when, in words; none until taken. Drawing again takes its place.
        taken: Option<String>,
        problem: Option<String>,
        /// Takes what is drawn.
        press: Button,
        /// The ways to go on without drawing.
        others: Vec<Button>,
    },
    /// A photograph that is wanted. Pressing the button sends `press`.
    Shot {
        slot: String,
        title: String,
        show: String,
        /// What such a photograph shows.
        drawing: Option<Drawing>,
        photos: Vec<PhotoView>,
        /// The picture of the slot's 'before', to frame alike.
        before: Option<PhotoView>,
        press: Button,
        skip: Option<Button>,
    },
    /// A waiting time.
    Dwell {
        title: String,
        state: DwellState,
        state_text: String,
        /// When the least is over, and when the most is; wall time in milliseconds, for a running clock.
        least_at_utc_ms: i64,
        most_at_utc_ms: i64,
        /// The clock times to read aloud or write on the bucket, '14:05'.
        least_clock: String,
        most_clock: String,
        /// The whole span from start to least, milliseconds, for a bar.
        least_ms: i64,
        /// What to do when it is over.
        then: String,
    },
    /// A dilution to prepare.
    Mix {
        title: String,
        rows: Vec<MixRow>,
        /// What goes in first, second, …
        order: Vec<String>,
        warning: Option<String>,
    },
    /// Rows and columns.
    Table { caption: String, columns: Vec<String>, rows: Vec<Vec<String>> },
    /// Bars with their doubt, side by side.
    Chart { caption: String, unit: String, bars: Vec<Bar> },
    /// Lines over two axes.
    Plot { plot: Plot },
    /// Another page. `to` is an address of the shell's own or an absolute one. `summary.html` and `summary.pdf` stand for
    /// what `Field::handover` gives: the shell shows, prints or shares it as its platform does.
    Link { label: String, to: String },
    /// Something to press.
    Button { button: Button },
}

/// Something to press.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Button {
    /// Its words.
    pub label: String,
    /// How it should strike the eye.
    pub tone: Tone,
    /// What pressing sends.
    pub press: Action,
    /// Must be held for a second and a half, since it cannot be taken back.
    pub hold: bool,
}

/// Where a step stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum StepState {
    /// May be done now.
    Open,
    /// Something is missing first; the block says what.
    Gated,
    /// Its waiting time runs.
    Running,
    /// Done.
    Done,
    /// Left out, with a reason.
    Skipped,
}

/// Where a waiting time stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum DwellState {
    /// Not begun.
    Waiting,
    /// The least is not over.
    Running,
    /// Between least and most: go on.
    Ready,
    /// Past the most.
    Over,
    /// Ended by its step.
    Ended,
}

/// One of several to choose.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct ChoiceOption {
    /// What `Choose` sends.
    pub value: String,
    /// Its words.
    pub label: String,
}

/// A value that is asked about, and the way to say that it is meant.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Question {
    /// The question.
    pub text: String,
    /// 'Yes, it is so'.
    pub confirm: Button,
}

/// A photograph ready to show. The shell finds its preview by the digest.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PhotoView {
    /// SHA-256 of the original, lower-case hex.
    pub digest: String,
    /// For a person who does not see it, and below the picture.
    pub caption: String,
    /// What was read in it, in words.
    pub read: Vec<String>,
    /// What does not fit together (time, place), in words.
    pub flags: Vec<String>,
}

/// A line of a dilution.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct MixRow {
    /// What.
    pub label: String,
    /// How much, with its unit.
    pub amount: String,
}

/// One bar of a chart.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Bar {
    /// What it stands for.
    pub label: String,
    /// Its length in the chart's unit.
    pub value: f64,
    /// Its expanded uncertainty (k = 2) in the chart's unit; 0 draws none.
    pub doubt: f64,
    /// The value and its doubt in words.
    pub text: String,
}

/// Lines over two axes. Every coordinate lies in 0…1, `y` upwards, so that a shell only has to stretch them.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Plot {
    /// What it shows, above it.
    pub caption: String,
    /// The same in words, for a person who does not see it.
    pub text: String,
    /// Of what the axis to the right is, with its unit.
    pub x_title: String,
    /// Of what the axis upwards is, with its unit.
    pub y_title: String,
    /// Marks at the axis to the right.
    pub x_ticks: Vec<Tick>,
    /// Marks at the axis upwards.
    pub y_ticks: Vec<Tick>,
    /// In the order in which they are drawn.
    pub lines: Vec<PlotLine>,
}

/// A mark at an axis of a plot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Tick {
    /// Where, 0…1 along the axis.
    pub at: f64,
    /// Its number.
    pub text: String,
}

/// How a line of a plot is drawn; the styles differ without colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
pub enum LineStyle {
    /// Thin: what lies behind.
    Plain,
    /// Thick: what it is about.
    Strong,
    /// Thick and broken: what it is compared with.
    Dashed,
}

/// One line of a plot.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PlotLine {
    /// What it stands for; lines of one label and style after each other are one thing in parts.
    pub label: String,
    /// How it is drawn.
    pub style: LineStyle,
    /// From point to point.
    pub points: Vec<PlotPoint>,
}

/// A point of a plot.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct PlotPoint {
    /// To the right, 0…1.
    pub x: f64,
    /// Upwards, 0…1.
    pub y: f64,
}
