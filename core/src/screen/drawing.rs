//! Line drawings of what a photograph must show: our own, as plain lines that any shell can draw.

use serde::{Deserialize, Serialize};

use super::PlotPoint;
use crate::procedure::pack::View;
use crate::words::Words;

/// A drawing in a box four wide and three high.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct Drawing {
    /// What it shows, for whoever does not see it.
    pub text: String,
    /// Its lines.
    pub lines: Vec<DrawingLine>,
}

/// One line of a drawing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Record))]
pub struct DrawingLine {
    /// Its corners; a closed line ends where it began.
    pub points: Vec<PlotPoint>,
    /// What must be seen in the photograph, against what only stands around it.
    pub wanted: bool,
}

/// The grid on which the drawings stand: across and down, from the upper left.
const ACROSS: i16 = 40;
const DOWN: i16 = 30;
/// Corners of a circle.
const ROUND: u8 = 24;

/// The drawing of a view, with its words.
pub(super) fn drawing(view: View, words: &Words) -> Drawing {
    let mut pen = Pen::default();
    match view {
        View::Plate => pen.plate(),
        View::Face => pen.face(),
        View::Wiring => pen.wiring(),
        View::Display => pen.display(),
        View::Whole => pen.whole(),
        View::Feet => pen.feet(),
        View::Surface => pen.surface(),
        View::Hoses => pen.hoses(),
        View::Strip => pen.strip(),
        View::Lock => pen.lock(),
        View::Part => pen.part(),
    }
    Drawing { text: words.text(&format!("view-{}", view.name())), lines: pen.lines }
}

/// Where a place of the grid lies in the box.
fn point(across: f64, down: f64) -> PlotPoint {
    PlotPoint { x: across / f64::from(ACROSS), y: 1.0 - down / f64::from(DOWN) }
}

#[derive(Default)]
struct Pen {
    lines: Vec<DrawingLine>,
}

impl Pen {
    fn line(&mut self, wanted: bool, corners: &[(i16, i16)]) {
        let points = corners.iter().map(|(x, y)| point(f64::from(*x), f64::from(*y))).collect();
        self.lines.push(DrawingLine { points, wanted });
    }

    fn rectangle(&mut self, wanted: bool, (left, top): (i16, i16), (right, bottom): (i16, i16)) {
        self.line(wanted, &[(left, top), (right, top), (right, bottom), (left, bottom), (left, top)]);
    }

    fn circle(&mut self, wanted: bool, (x, y): (i16, i16), radius: i16) {
        let corner = |at: u8| {
            let turn = core::f64::consts::TAU * f64::from(at) / f64::from(ROUND);
            let (across, down) = (f64::from(radius) * libm::cos(turn), f64::from(radius) * libm::sin(turn));
            point(f64::from(x) + across, f64::from(y) + down)
        };
        self.lines.push(DrawingLine { points: (0..=ROUND).map(corner).collect(), wanted });
    }

    /// Lines side by side, from one to another across.
    fn uprights(&mut self, wanted: bool, across: impl Iterator<Item = i16>, top: i16, bottom: i16) {
        for x in across {
            self.line(wanted, &[(x, top), (x, bottom)]);
        }
    }

    /// Lines below each other, all of them.
    fn rows(&mut self, wanted: bool, down: impl Iterator<Item = i16>, left: i16, right: i16) {
        for y in down {
            self.line(wanted, &[(left, y), (right, y)]);
        }
    }

    /// A plate that fills the picture: four corners, lines of writing, the number.
    fn plate(&mut self) {
        self.rectangle(true, (4, 4), (36, 26));
        for corner in [(6, 6), (34, 6), (6, 24), (34, 24)] {
            self.circle(false, corner, 1);
        }
        self.rows(false, [10, 13].into_iter(), 9, 31);
        self.rectangle(true, (9, 17), (31, 22));
        self.uprights(true, (11..30).step_by(2), 18, 21);
    }

    /// The face of a coil, straight on, edge to edge.
    fn face(&mut self) {
        self.rectangle(true, (3, 3), (37, 27));
        self.uprights(true, (5..37).step_by(2), 4, 26);
        self.rows(false, [9, 15, 21].into_iter(), 3, 37);
    }

    /// An open lid with the terminals behind it.
    fn wiring(&mut self) {
        self.line(false, &[(8, 6), (3, 2), (3, 24), (8, 26)]);
        self.rectangle(true, (8, 6), (36, 26));
        for x in [13, 19, 25, 31] {
            self.rectangle(true, (x - 2, 13), (x + 2, 18));
            self.circle(true, (x, 15), 1);
            self.line(true, &[(x, 18), (x, 23)]);
        }
        self.line(true, &[(13, 23), (31, 23)]);
        self.line(true, &[(22, 23), (22, 26)]);
    }

    /// A display whose figures can be read, its keys around it.
    fn display(&mut self) {
        self.rectangle(false, (5, 4), (35, 26));
        self.rectangle(true, (9, 7), (31, 18));
        self.line(true, &[(14, 9), (14, 16)]);
        self.line(true, &[(18, 9), (23, 9), (23, 12), (18, 12), (18, 16), (23, 16)]);
        self.circle(true, (27, 10), 1);
        for x in [13, 20, 27] {
            self.circle(false, (x, 22), 2);
        }
    }

    /// The whole unit from the front, with what stands beside it.
    fn whole(&mut self) {
        self.line(false, &[(2, 27), (38, 27)]);
        self.rectangle(true, (8, 6), (32, 25));
        self.circle(true, (16, 15), 7);
        self.circle(true, (16, 15), 2);
        self.uprights(true, [26, 28, 30].into_iter(), 9, 21);
        self.line(false, &[(32, 20), (37, 20), (37, 27)]);
        self.rows(false, [26].into_iter(), 10, 30);
    }

    /// Feet, bolts and pads, with the ground around them.
    fn feet(&mut self) {
        self.rectangle(false, (6, 3), (34, 14));
        for x in [11, 29] {
            self.line(true, &[(x - 3, 14), (x - 3, 18), (x + 3, 18), (x + 3, 14)]);
            self.rectangle(true, (x - 4, 18), (x + 4, 21));
            self.circle(true, (x, 16), 1);
        }
        self.line(false, &[(2, 21), (38, 21)]);
        self.line(false, &[(2, 26), (38, 26)]);
    }

    /// A surface from near, with something beside it that tells how large it is.
    fn surface(&mut self) {
        self.rectangle(false, (3, 3), (37, 27));
        self.line(true, &[(9, 12), (13, 8), (18, 10), (22, 8), (25, 13), (20, 17), (12, 16), (9, 12)]);
        self.rectangle(true, (8, 21), (32, 25));
        self.uprights(true, (10..32).step_by(2), 21, 23);
    }

    /// Two ports, two hoses, the vessel: all in one picture.
    fn hoses(&mut self) {
        self.rectangle(false, (3, 3), (13, 27));
        self.circle(true, (13, 9), 2);
        self.circle(true, (13, 17), 2);
        self.line(true, &[(15, 9), (30, 9), (30, 17)]);
        self.line(true, &[(15, 17), (20, 17), (24, 14), (26, 14), (26, 20)]);
        self.line(true, &[(22, 17), (24, 27), (34, 27), (36, 17), (22, 17)]);
        self.rows(true, [20].into_iter(), 23, 35);
    }

    /// A test strip beside its scale.
    fn strip(&mut self) {
        self.rectangle(true, (8, 4), (13, 26));
        self.rows(true, [8, 12].into_iter(), 8, 13);
        for top in [4, 8, 12, 16, 20] {
            self.rectangle(true, (20, top), (32, top + 3));
        }
    }

    /// The isolator, locked, with its tag to be read.
    fn lock(&mut self) {
        self.rectangle(false, (4, 4), (20, 26));
        self.circle(true, (12, 11), 4);
        self.line(true, &[(12, 7), (12, 15)]);
        self.line(true, &[(10, 20), (10, 17), (14, 17), (14, 20)]);
        self.rectangle(true, (8, 20), (16, 25));
        self.line(true, &[(16, 22), (22, 16)]);
        self.rectangle(true, (22, 10), (36, 24));
        self.rows(true, [14, 17, 20].into_iter(), 25, 33);
    }

    /// A part taken out, whole, on a plain ground.
    fn part(&mut self) {
        self.rectangle(false, (3, 3), (37, 27));
        self.line(true, &[(9, 12), (28, 12), (28, 9), (32, 9), (32, 21), (28, 21), (28, 18), (9, 18), (9, 12)]);
        self.uprights(true, [13, 17, 21, 25].into_iter(), 12, 18);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_view_has_its_drawing_in_the_box_and_its_words_in_both_languages() {
        for language in ["en", "es"] {
            let words = Words::new(language, None).unwrap();
            let mut seen = Vec::new();
            for view in View::ALL {
                let drawn = drawing(view, &words);
                assert!(
                    drawn.lines.iter().any(|line| line.wanted) && drawn.lines.iter().any(|line| line.points.len() > 1)
                );
                let inside = |point: &PlotPoint| (0.0..=1.0).contains(&point.x) && (0.0..=1.0).contains(&point.y);
                assert!(drawn.lines.iter().flat_map(|line| &line.points).all(inside), "{view:?} leaves its box");
                assert!(!drawn.text.starts_with("view-"), "no words for {view:?} in {language}");
                assert!(!seen.contains(&drawn.lines), "{view:?} looks like another one");
                seen.push(drawn.lines);
            }
        }
    }
}
