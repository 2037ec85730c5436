//! The parts of a summary as boxes of words, lines and pictures, each with its place in the structure that a screen reader
//! follows.

use std::num::NonZeroU16;

use krilla::tagging::{ListNumbering, Node as TagNode, Tag, TagGroup, TagKind, TagTree};

use super::draw::Marks;
use super::text::{Fonts, Weight};
use crate::id::Digest;
use crate::record::summary::chart::{Anchor, DOT, Drawing, Pen, Shape, WORDS_SIZE};
use crate::record::summary::jpeg::{Picture, Pictures};
use crate::record::summary::{Answer, Changed, Done, Found, Labels, Pair, Part, Summary, Tone, Years, lines_of};
use crate::visit::event::Severity;

/// Colours on paper, each at least 4.5 to 1 against white (WCAG 2.2, 1.4.3).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Ink {
    Black,
    Soft,
    Line,
    Lead,
    Good,
    Attention,
    Danger,
    Found,
}

/// A box: it stands on one page, unparted.
#[derive(Default)]
pub(super) struct Laid {
    pub(super) high: f32,
    /// Free space above, unless it begins a page.
    pub(super) space: f32,
    /// The next box stays on its page.
    pub(super) keeps_next: bool,
    /// A bar at its left.
    pub(super) bar: Option<Ink>,
    pub(super) items: Vec<Item>,
}

/// A piece of a box, at a place from its upper left corner. What belongs to no leaf of the structure is decoration.
pub(super) struct Item {
    pub(super) leaf: Option<usize>,
    pub(super) at: (f32, f32),
    pub(super) what: What,
}

pub(super) enum What {
    /// Words; the place is the start of their base line.
    Words { text: String, weight: Weight, size: f32, ink: Ink },
    /// A line to another place.
    Stroke { to: (f32, f32), width: f32, ink: Ink },
    /// A dot: filled, or a ring.
    Dot { radius: f32, ring: bool, ink: Ink },
    /// A line from point to point; the place is the first of them.
    Path { on: Vec<(f32, f32)>, width: f32, ink: Ink },
    /// A preview.
    Picture { digest: Digest, width: f32, height: f32 },
    /// An address as a code.
    Code { address: String, side: f32 },
}

enum Node {
    Group(TagKind, Vec<Node>),
    Leaf(usize),
}

/// All boxes with their structure.
pub(super) struct Layout {
    pub(super) boxes: Vec<Laid>,
    plan: Vec<Node>,
}

impl Layout {
    /// The structure with what was drawn for each leaf.
    pub(super) fn tree(&self, language: &str, marks: &Marks) -> TagTree {
        let mut tree = TagTree::new().with_lang(Some(language.to_owned()));
        self.plan.iter().flat_map(|node| tags(node, marks)).for_each(|node| tree.push(node));
        tree
    }
}

fn tags(node: &Node, marks: &Marks) -> Vec<TagNode> {
    match node {
        Node::Leaf(leaf) => marks.of(*leaf).map(|mark| TagNode::Leaf(*mark)).collect(),
        Node::Group(tag, children) => {
            let children: Vec<TagNode> = children.iter().flat_map(|child| tags(child, marks)).collect();
            vec![TagNode::Group(TagGroup::with_children(tag.clone(), children))]
        }
    }
}

const BODY: f32 = 12.5;
const LINE: f32 = 1.38;
/// From the top of a line to its base line, in parts of the size.
const BASE: f32 = 1.05;
const INDENT: f32 = 15.0;
/// A unit's letter before a line.
const LETTER: f32 = 16.0;
/// A box up to here is a line or a few: alone at the top of a page it looks lost.
const LITTLE: f32 = 60.0;
/// How wide what was drawn by hand is drawn.
const PEN: f32 = 1.5;

#[derive(Clone, Copy)]
struct Style {
    size: f32,
    weight: Weight,
    ink: Ink,
}

const fn style(size: f32, weight: Weight, ink: Ink) -> Style {
    Style { size, weight, ink }
}

const PLAIN: Style = style(BODY, Weight::Regular, Ink::Black);
const BOLD: Style = style(BODY, Weight::Bold, Ink::Black);
const SOFT: Style = style(BODY, Weight::Regular, Ink::Soft);
const ANSWER: f32 = 16.0;

pub(super) fn lay_out(summary: &Summary, pictures: &Pictures, fonts: &Fonts, width: f32) -> Layout {
    let mut setter =
        Setter { fonts, pictures, labels: &summary.labels, width, boxes: Vec::new(), plan: Vec::new(), leaves: 0 };
    setter.heading(1, &summary.title, 21.0, 0.0, true);
    for line in &summary.lead {
        setter.paragraph(line, SOFT, 3.0, None);
    }
    for section in &summary.sections {
        if !section.title.is_empty() {
            setter.heading(2, &section.title, 16.0, 20.0, true);
        }
        let first = setter.boxes.len();
        for part in &section.parts {
            setter.part(part);
        }
        setter.keep_the_last_company(first);
    }
    Layout { boxes: setter.boxes, plan: setter.plan }
}

struct Setter<'a> {
    fonts: &'a Fonts,
    pictures: &'a Pictures,
    labels: &'a Labels,
    width: f32,
    boxes: Vec<Laid>,
    plan: Vec<Node>,
    leaves: usize,
}

impl Setter<'_> {
    fn leaf(&mut self) -> usize {
        self.leaves += 1;
        self.leaves - 1
    }

    /// Sets words into a box and gives their leaf and how high they are.
    fn set(&mut self, into: &mut Vec<Item>, text: &str, style: Style, at: (f32, f32), width: f32) -> (Node, f32) {
        let leaf = self.leaf();
        let lines = self.fonts.face(style.weight).lines(text, style.size, width);
        let high = style.size * LINE;
        for (row, line) in lines.iter().enumerate() {
            let y = at.1 + row as f32 * high + style.size * BASE;
            let what = What::Words { text: line.clone(), weight: style.weight, size: style.size, ink: style.ink };
            into.push(Item { leaf: Some(leaf), at: (at.0, y), what });
        }
        (Node::Leaf(leaf), lines.len() as f32 * high)
    }

    /// A section's last lines are not alone on their page.
    fn keep_the_last_company(&mut self, first: usize) {
        if let Some([.., before, last]) = self.boxes.get_mut(first..)
            && last.high < LITTLE
        {
            before.keeps_next = true;
        }
    }

    fn heading(&mut self, level: u16, text: &str, size: f32, space: f32, keeps_next: bool) {
        let mut items = Vec::new();
        let (leaf, high) = self.set(&mut items, text, style(size, Weight::Bold, Ink::Black), (0.0, 0.0), self.width);
        self.boxes.push(Laid { high: high + 3.0, space, keeps_next, items, bar: None });
        self.plan.push(Node::Group(tag_of_heading(level, text), vec![leaf]));
    }

    /// A paragraph. A long one may part between its lines, but never after the first or before the last.
    fn paragraph(&mut self, text: &str, style: Style, space: f32, bar: Option<Ink>) {
        let node = self.flowing(text, style, space, bar, if bar.is_some() { INDENT } else { 0.0 });
        self.plan.push(Node::Group(Tag::P.into(), vec![node]));
    }

    fn flowing(&mut self, text: &str, style: Style, space: f32, bar: Option<Ink>, x: f32) -> Node {
        let mut items = Vec::new();
        let (leaf, high) = self.set(&mut items, text, style, (x, 0.0), self.width - x);
        let rows = items.len();
        if rows <= 5 {
            self.boxes.push(Laid { high, space, keeps_next: false, bar, items });
            return leaf;
        }
        let row_high = style.size * LINE;
        for (row, mut item) in items.into_iter().enumerate() {
            item.at.1 = style.size * BASE;
            let keeps_next = row == 0 || row + 2 == rows;
            let space = if row == 0 { space } else { 0.0 };
            self.boxes.push(Laid { high: row_high, space, keeps_next, bar, items: vec![item] });
        }
        leaf
    }

    fn part(&mut self, part: &Part) {
        match part {
            Part::Text(text, Tone::Danger) => self.paragraph(text, BOLD, 6.0, Some(Ink::Danger)),
            Part::Text(text, Tone::Strong) => self.paragraph(text, BOLD, 5.0, None),
            Part::Text(text, Tone::Quiet) => self.paragraph(text, SOFT, 5.0, None),
            Part::Text(text, _) => self.paragraph(text, PLAIN, 5.0, None),
            Part::Answers(answers) => answers.iter().for_each(|answer| self.answer(answer)),
            Part::List(lines) => self.list(lines),
            Part::Found(found) => self.found(found),
            Part::Done(done) => self.done(done),
            Part::Pair(pair) => self.pair(pair),
            Part::Changed(changed) => self.changed(changed),
            Part::Years(years) => self.years(years),
            Part::Ink(drawing) => self.ink(drawing),
            Part::Facts(facts) => facts.iter().for_each(|(name, value)| self.fact(name, value)),
            Part::Code(address) => self.code(address),
            // Paper has no links to files.
            Part::Calendar { .. } => {}
        }
    }

    fn answer(&mut self, answer: &Answer) {
        let ink = match answer.tone {
            Tone::Good => Ink::Good,
            Tone::Attention => Ink::Attention,
            Tone::Danger => Ink::Danger,
            _ => Ink::Lead,
        };
        let words = if matches!(answer.tone, Tone::Good | Tone::Danger) { ink } else { Ink::Black };
        let (mut items, width) = (Vec::new(), self.width - INDENT);
        let (question, mut y) = self.set(&mut items, &answer.question, SOFT, (INDENT, 2.0), width);
        let mut said = Vec::new();
        for line in lines_of(&answer.answer) {
            let (node, high) = self.set(&mut items, line, style(ANSWER, Weight::Bold, words), (INDENT, 2.0 + y), width);
            said.push(node);
            y += high;
        }
        self.boxes.push(Laid { high: y + 4.0, space: 10.0, keeps_next: false, bar: Some(ink), items });
        self.plan.extend([question].into_iter().chain(said).map(|node| Node::Group(Tag::P.into(), vec![node])));
    }

    fn list(&mut self, lines: &[String]) {
        let mut rows = Vec::new();
        for line in lines {
            let first = self.boxes.len();
            let node = self.flowing(line, PLAIN, 5.0, None, INDENT);
            if let Some(of) = self.boxes.get_mut(first) {
                let what = What::Dot { radius: 2.3, ring: false, ink: Ink::Lead };
                of.items.insert(0, Item { leaf: None, at: (4.0, BODY * 0.72), what });
            }
            rows.push(row(vec![node]));
        }
        self.plan.push(Node::Group(Tag::L(ListNumbering::Disc).into(), rows));
    }

    fn found(&mut self, found: &[Found]) {
        let mut rows = Vec::new();
        for found in found {
            let ink = match found.severity {
                Severity::Unsafe => Ink::Danger,
                Severity::Soon => Ink::Attention,
                Severity::Note => Ink::Lead,
            };
            let mut items = Vec::new();
            let head = style(BODY, Weight::Bold, if found.severity == Severity::Unsafe { ink } else { Ink::Black });
            let (how, high) = self.set(&mut items, &found.severity_text, head, (INDENT, 0.0), self.width - INDENT);
            self.boxes.push(Laid { high, space: 8.0, keeps_next: true, bar: Some(ink), items });
            let text = self.flowing(&found.text, PLAIN, 0.0, Some(ink), INDENT);
            rows.push(row(vec![how, text]));
        }
        self.plan.push(Node::Group(Tag::L(ListNumbering::None).into(), rows));
    }

    fn done(&mut self, done: &[Done]) {
        let mut rows = Vec::new();
        for done in done {
            let (mut items, mut nodes, mut x) = (Vec::new(), Vec::new(), 0.0);
            for unit in &done.units {
                let letter = style(BODY, Weight::Bold, Ink::Lead);
                let (node, _) = self.set(&mut items, &format!("{unit} "), letter, (x, 0.0), 60.0);
                nodes.push(node);
                x += LETTER;
            }
            let (what, mut high) = self.set(&mut items, &done.what, BOLD, (x, 0.0), self.width - x);
            nodes.push(what);
            if !done.matters.is_empty() {
                let (matters, more) = self.set(&mut items, &done.matters, SOFT, (x, high), self.width - x);
                nodes.push(matters);
                high += more;
            }
            self.boxes.push(Laid { high, space: 7.0, keeps_next: false, bar: None, items });
            rows.push(row(nodes));
        }
        self.plan.push(Node::Group(Tag::L(ListNumbering::None).into(), rows));
    }

    /// Both pictures side by side under their title.
    fn pair(&mut self, pair: &Pair) {
        const GAP: f32 = 14.0;
        const HIGH_MOST: f32 = 240.0;
        let column = (self.width - GAP) / 2.0;
        let mut items = Vec::new();
        let (title, top) = self.set(&mut items, &pair.title, BOLD, (0.0, 0.0), self.width);
        let mut nodes = vec![Node::Group(tag_of_heading(3, &pair.title), vec![title])];
        let (mut lowest, labels) = (0.0_f32, self.labels);
        for (x, digest, label) in [(0.0, &pair.before, &labels.before), (column + GAP, &pair.after, &labels.after)] {
            let (caption, caption_high) = self.set(&mut items, label, BOLD, (x, top + 3.0), column);
            let y = top + 6.0 + caption_high;
            nodes.push(Node::Group(Tag::P.into(), vec![caption]));
            let shown = digest.as_ref().and_then(|digest| Some((digest, self.pictures.get(digest)?)));
            let high = match shown {
                Some((digest, picture)) => {
                    let (width, height) = fitted(picture, column, HIGH_MOST);
                    let leaf = self.leaf();
                    let what = What::Picture { digest: digest.clone(), width, height };
                    items.push(Item { leaf: Some(leaf), at: (x, y), what });
                    let alt = format!("{}: {label}", pair.title);
                    nodes.push(Node::Group(Tag::Figure(Some(alt)).into(), vec![Node::Leaf(leaf)]));
                    height
                }
                None => {
                    let (missing, high) = self.set(&mut items, &labels.no_photo, SOFT, (x, y), column);
                    nodes.push(Node::Group(Tag::P.into(), vec![missing]));
                    high
                }
            };
            lowest = lowest.max(y + high);
        }
        self.boxes.push(Laid { high: lowest, space: 12.0, keeps_next: false, bar: None, items });
        self.plan.extend(nodes);
    }

    /// Words at the left, the chart at the right.
    fn changed(&mut self, changed: &Changed) {
        let words = if changed.chart.is_some() { self.width * 0.46 } else { self.width };
        let (mut items, labels) = (Vec::new(), self.labels);
        let (title, mut y) = self.set(&mut items, &changed.label, BOLD, (0.0, 6.0), words);
        let mut nodes = vec![Node::Group(tag_of_heading(3, &changed.label), vec![title])];
        y += 6.0;
        for (label, value) in [(&labels.before, &changed.found), (&labels.after, &changed.left)] {
            let (name, _) = self.set(&mut items, label, SOFT, (0.0, y), 66.0);
            let (of, high) = self.set(&mut items, value, BOLD, (66.0, y), words - 66.0);
            nodes.push(Node::Group(Tag::P.into(), vec![name, of]));
            y += high;
        }
        if !changed.meaning.is_empty() {
            let (meaning, high) = self.set(&mut items, &changed.meaning, PLAIN, (0.0, y), words);
            nodes.push(Node::Group(Tag::P.into(), vec![meaning]));
            y += high;
        }
        if let Some(chart) = &changed.chart {
            let x = self.width * 0.5;
            let (node, high) = self.chart(&mut items, chart, (x, 8.0), self.width - x);
            nodes.push(node);
            y = y.max(8.0 + high);
        }
        self.ruled(items, y);
        self.plan.extend(nodes);
    }

    fn years(&mut self, years: &Years) {
        let (mut items, words, x) = (Vec::new(), self.width * 0.46, self.width * 0.5);
        let (title, high) = self.set(&mut items, &years.label, BOLD, (0.0, 6.0), words);
        let (chart, chart_high) = self.chart(&mut items, &years.chart, (x, 8.0), self.width - x);
        let mut nodes = vec![Node::Group(tag_of_heading(3, &years.label), vec![title]), chart];
        let mut y = 6.0 + high;
        for (day, value) in &years.values {
            let (name, name_high) = self.set(&mut items, day, SOFT, (0.0, y), 122.0);
            let (of, high) = self.set(&mut items, value, BOLD, (122.0, y), words - 122.0);
            nodes.push(Node::Group(Tag::P.into(), vec![name, of]));
            y += high.max(name_high);
        }
        if !years.meaning.is_empty() {
            let (meaning, high) = self.set(&mut items, &years.meaning, PLAIN, (0.0, y), words);
            nodes.push(Node::Group(Tag::P.into(), vec![meaning]));
            y += high;
        }
        self.ruled(items, y.max(8.0 + chart_high));
        self.plan.extend(nodes);
    }

    /// A box under a thin line.
    fn ruled(&mut self, mut items: Vec<Item>, high: f32) {
        let what = What::Stroke { to: (self.width, 0.0), width: 0.6, ink: Ink::Line };
        items.insert(0, Item { leaf: None, at: (0.0, 0.0), what });
        self.boxes.push(Laid { high, space: 9.0, keeps_next: false, bar: None, items });
    }

    fn chart(&mut self, into: &mut Vec<Item>, drawing: &Drawing, at: (f32, f32), width: f32) -> (Node, f32) {
        let leaf = self.leaf();
        let scale = width / drawing.width as f32;
        let place = |(x, y): (f64, f64)| (at.0 + x as f32 * scale, at.1 + y as f32 * scale);
        for shape in &drawing.shapes {
            let (at, what) = match shape {
                Shape::Line { from, to, pen } => {
                    let (width, ink) = match pen {
                        Pen::Grid => (0.6, Ink::Line),
                        Pen::Found => (1.8, Ink::Found),
                        Pen::Left => (1.8, Ink::Lead),
                    };
                    (place(*from), What::Stroke { to: place(*to), width, ink })
                }
                Shape::Stroke { points } => {
                    let mut places = points.iter().map(|point| place(*point));
                    let Some(first) = places.next() else { continue };
                    let on: Vec<(f32, f32)> = places.collect();
                    let dot = What::Dot { radius: PEN / 2.0, ring: false, ink: Ink::Black };
                    (first, if on.is_empty() { dot } else { What::Path { on, width: PEN, ink: Ink::Black } })
                }
                Shape::Dot { at, ring } => {
                    let ink = if *ring { Ink::Found } else { Ink::Lead };
                    (place(*at), What::Dot { radius: DOT as f32 * scale, ring: *ring, ink })
                }
                Shape::Words { at, anchor, text } => {
                    let face = self.fonts.face(Weight::Regular);
                    let (text, size) = (face.fitted(text), WORDS_SIZE as f32 * scale);
                    let back = match anchor {
                        Anchor::Start => 0.0,
                        Anchor::Middle => 0.5,
                        Anchor::End => 1.0,
                    };
                    let (x, y) = place(*at);
                    let left = x - face.width(&text, size) * back;
                    // A space behind, so that words that stand apart are read apart.
                    let what = What::Words { text: format!("{text} "), weight: Weight::Regular, size, ink: Ink::Black };
                    ((left, y + size * 0.36), what)
                }
            };
            into.push(Item { leaf: Some(leaf), at, what });
        }
        let figure = Node::Group(Tag::Figure(Some(drawing.text.clone())).into(), vec![Node::Leaf(leaf)]);
        (figure, drawing.height as f32 * scale)
    }

    /// A signature over a thin line, as on paper.
    fn ink(&mut self, drawing: &Drawing) {
        const WIDE: f32 = 210.0;
        let mut items = Vec::new();
        let (node, high) = self.chart(&mut items, drawing, (0.0, 0.0), WIDE);
        let what = What::Stroke { to: (WIDE, high), width: 0.8, ink: Ink::Soft };
        items.insert(0, Item { leaf: None, at: (0.0, high), what });
        self.boxes.push(Laid { high: high + 2.0, space: 6.0, keeps_next: false, bar: None, items });
        self.plan.push(node);
    }

    fn fact(&mut self, name: &str, value: &str) {
        let mut items = Vec::new();
        let (name, high) = self.set(&mut items, name, SOFT, (0.0, 0.0), self.width);
        let (value, more) = self.set(&mut items, value, BOLD, (0.0, high), self.width);
        self.boxes.push(Laid { high: high + more, space: 7.0, keeps_next: false, bar: None, items });
        self.plan.push(Node::Group(Tag::P.into(), vec![name, value]));
    }

    fn code(&mut self, address: &str) {
        const SIDE: f32 = 104.0;
        let mut items =
            vec![Item { leaf: None, at: (0.0, 0.0), what: What::Code { address: address.to_owned(), side: SIDE } }];
        let (node, high) = self.set(&mut items, address, PLAIN, (SIDE + 14.0, SIDE * 0.3), self.width - SIDE - 14.0);
        self.boxes.push(Laid { high: SIDE.max(SIDE * 0.3 + high), space: 7.0, keeps_next: false, bar: None, items });
        self.plan.push(Node::Group(Tag::P.into(), vec![node]));
    }
}

fn tag_of_heading(level: u16, text: &str) -> TagKind {
    Tag::Hn(NonZeroU16::new(level).unwrap_or(NonZeroU16::MIN), Some(text.to_owned())).into()
}

/// A row of a list: its body with a paragraph for each leaf.
fn row(leaves: Vec<Node>) -> Node {
    let paragraphs = leaves.into_iter().map(|leaf| Node::Group(Tag::P.into(), vec![leaf])).collect();
    Node::Group(Tag::LI.into(), vec![Node::Group(Tag::LBody.into(), paragraphs)])
}

/// As wide as the column, unless it would be too high.
fn fitted(picture: &Picture, column: f32, high_most: f32) -> (f32, f32) {
    let shape = picture.height as f32 / picture.width as f32;
    let height = column * shape;
    if height > high_most { (high_most / shape, high_most) } else { (column, height) }
}
