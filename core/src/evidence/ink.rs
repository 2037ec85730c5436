//! What was drawn by hand: strokes of points in a box. Whole numbers only, few points, and a limit on everything.
//!
//! Points that nobody would miss are left out (Ramer, Douglas and Peucker's way): the line that is kept lies nowhere
//! further from what was drawn than a small part of the box's longer side.

use serde::{Deserialize, Serialize};

/// The longest side of a box.
pub(super) const SIDE_MAX: u32 = 4_096;
/// The most strokes.
pub(super) const STROKES_MAX: usize = 200;
/// The most points that are looked at: what a pen of 240 points a second gives in a minute and a half.
pub(super) const POINTS_TAKEN_MAX: usize = 20_000;
/// The most points that are kept.
pub(super) const POINTS_MAX: usize = 4_000;
/// A kept line is off by this part of the box's longer side at most: on the screen of a phone less than a pixel.
const FINE: u32 = 1_600;

/// A point from the upper left corner of the box, to the right and downwards.
pub type Point = (u32, u32);

/// Something drawn by hand.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ink {
    /// How wide the box is.
    pub width: u32,
    /// How high it is.
    pub height: u32,
    /// From where the pen was put down to where it was lifted.
    pub strokes: Vec<Vec<Point>>,
}

/// Why a drawing is not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum InkError {
    /// It is none.
    #[error("the drawing cannot be read; clear it and draw it again")]
    Unreadable,
    /// Nothing is drawn.
    #[error("nothing is drawn yet; draw, or go on without")]
    Nothing,
    /// The box is none, or points lie outside of it.
    #[error("the drawing does not fit its box (sides of 1 to {SIDE_MAX}); clear it and draw it again")]
    Outside,
    /// Too much of it.
    #[error("the drawing has more than {STROKES_MAX} strokes or too many points; clear it and draw less")]
    TooMuch,
    /// The name beside it is too long.
    #[error("the name is too long or has signs that are no letters; write it shorter")]
    Name,
}

impl InkError {
    /// Its name in words and tests.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            InkError::Unreadable => "unreadable",
            InkError::Nothing => "nothing",
            InkError::Outside => "outside",
            InkError::TooMuch => "too-much",
            InkError::Name => "name",
        }
    }
}

impl Ink {
    /// Reads what a shell keeps while somebody draws: this type as JSON, `[[[x, y], …], …]` for the strokes.
    ///
    /// # Errors
    /// Where it is no drawing, lies outside of its box, or is too much.
    pub fn read(text: &str) -> Result<Ink, InkError> {
        if text.trim().is_empty() {
            return Err(InkError::Nothing);
        }
        let mut ink: Ink = serde_json::from_str(text).map_err(|_| InkError::Unreadable)?;
        ink.strokes.retain(|stroke| !stroke.is_empty());
        ink.check(POINTS_TAKEN_MAX)?;
        Ok(ink)
    }

    /// Whether it keeps to the limits, with so many points at most.
    pub(super) fn check(&self, points_most: usize) -> Result<(), InkError> {
        let sides = 1..=SIDE_MAX;
        let inside = |(x, y): &Point| *x <= self.width && *y <= self.height;
        if self.strokes.is_empty() {
            return Err(InkError::Nothing);
        }
        if !sides.contains(&self.width) || !sides.contains(&self.height) {
            return Err(InkError::Outside);
        }
        if self.strokes.len() > STROKES_MAX || self.points() > points_most {
            return Err(InkError::TooMuch);
        }
        if self.strokes.iter().flatten().all(inside) { Ok(()) } else { Err(InkError::Outside) }
    }

    /// How many points it has.
    #[must_use]
    pub fn points(&self) -> usize {
        self.strokes.iter().map(Vec::len).sum()
    }

    /// As path data of SVG, in the units of the box. A dot is a line to where it begins: its round ends are drawn.
    #[must_use]
    pub fn path(&self) -> String {
        let place = |(x, y): &Point| format!("{x} {y}");
        let of = |stroke: &Vec<Point>| {
            let first = stroke.first().map(place).unwrap_or_default();
            let rest: Vec<String> = stroke.iter().skip(1).map(place).collect();
            format!("M{first}L{}", if rest.is_empty() { first.clone() } else { rest.join("L") })
        };
        self.strokes.iter().map(of).collect()
    }

    /// The same with few points. A drawing that has very many is drawn a little less finely, until they are few enough.
    ///
    /// # Errors
    /// Where that does not help.
    pub fn thinned(&self) -> Result<Ink, InkError> {
        let fine = i64::from(self.width.max(self.height).div_ceil(FINE).max(1));
        for off in [fine, fine * 2, fine * 4] {
            let strokes = self.strokes.iter().map(|stroke| thinned(stroke, off)).collect();
            let thin = Ink { strokes, ..*self };
            if thin.points() <= POINTS_MAX {
                return Ok(thin);
            }
        }
        Err(InkError::TooMuch)
    }
}

/// The points of a stroke without which the line would be off by more than `off` somewhere. Its ends always stay.
fn thinned(stroke: &[Point], off: i64) -> Vec<Point> {
    let mut kept = vec![false; stroke.len()];
    let last = stroke.len().saturating_sub(1);
    for end in [0, last] {
        if let Some(kept) = kept.get_mut(end) {
            *kept = true;
        }
    }
    // A list of what is still to be looked at, not a call inside a call: a long stroke must not use up the stack.
    let mut open = vec![(0, last)];
    while let Some((from, to)) = open.pop() {
        let (Some(start), Some(end), Some(between)) = (stroke.get(from), stroke.get(to), stroke.get(from + 1..to))
        else {
            continue;
        };
        let apart = between.iter().enumerate().map(|(at, point)| (from + 1 + at, Apart::of(*point, *start, *end)));
        let furthest = apart.reduce(|one, other| if one.1.is_less(&other.1) { other } else { one });
        if let Some((at, _)) = furthest.filter(|(_, apart)| apart.is_beyond(off)) {
            if let Some(kept) = kept.get_mut(at) {
                *kept = true;
            }
            open.extend([(from, at), (at, to)]);
        }
    }
    stroke.iter().zip(kept).filter_map(|(point, kept)| kept.then_some(*point)).collect()
}

/// How far a point lies from a straight line between two others, squared, as a fraction of whole numbers: no rounding, so
/// that every platform keeps the same points.
#[derive(Clone, Copy, Debug)]
struct Apart {
    above: i128,
    below: i128,
}

impl Apart {
    fn of(point: Point, start: Point, end: Point) -> Apart {
        let of = |(x, y): Point| (i128::from(x), i128::from(y));
        let (p, a, b) = (of(point), of(start), of(end));
        let (along, to) = ((b.0 - a.0, b.1 - a.1), (p.0 - a.0, p.1 - a.1));
        let length = along.0 * along.0 + along.1 * along.1;
        let dot = to.0 * along.0 + to.1 * along.1;
        let square = |(x, y): (i128, i128)| x * x + y * y;
        if dot <= 0 || length == 0 {
            return Apart { above: square(to), below: 1 };
        }
        if dot >= length {
            return Apart { above: square((p.0 - b.0, p.1 - b.1)), below: 1 };
        }
        let across = along.0 * to.1 - along.1 * to.0;
        Apart { above: across * across, below: length }
    }

    const fn is_less(&self, other: &Apart) -> bool {
        self.above * other.below < other.above * self.below
    }

    fn is_beyond(&self, off: i64) -> bool {
        let off = i128::from(off);
        self.above > off * off * self.below
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn ink(strokes: Vec<Vec<Point>>) -> Ink {
        Ink { width: 1200, height: 480, strokes }
    }

    fn refused(text: &str) -> InkError {
        Ink::read(text).unwrap_err()
    }

    #[test]
    fn a_drawing_is_read_as_a_shell_sends_it_and_empty_strokes_are_left_out() {
        let read = Ink::read(r#"{"width":1200,"height":480,"strokes":[[[1,2],[3,4]],[],[[5,6]]]}"#).unwrap();
        assert_eq!(read, ink(vec![vec![(1, 2), (3, 4)], vec![(5, 6)]]));
    }

    #[test]
    fn what_is_no_drawing_lies_outside_or_is_too_much_is_refused_by_name() {
        for (text, why) in [
            ("", InkError::Nothing),
            (r#"{"width":1200,"height":480,"strokes":[]}"#, InkError::Nothing),
            ("[]", InkError::Unreadable),
            (r#"{"width":1200,"height":480,"strokes":[[[1.5,2]]]}"#, InkError::Unreadable),
            (r#"{"width":1200,"height":480,"strokes":[[[-1,2]]]}"#, InkError::Unreadable),
            (r#"{"width":1200,"height":480,"strokes":[[[1,2,3]]]}"#, InkError::Unreadable),
            (r#"{"width":1200,"height":480,"strokes":[[[1,2]]],"pressure":1}"#, InkError::Unreadable),
            (r#"{"width":1200,"height":480,"strokes":[[[1201,2]]]}"#, InkError::Outside),
            (r#"{"width":0,"height":480,"strokes":[[[0,2]]]}"#, InkError::Outside),
            (r#"{"width":4097,"height":480,"strokes":[[[0,2]]]}"#, InkError::Outside),
        ] {
            assert_eq!(refused(text), why, "{text}");
        }
        let many =
            |strokes: usize, points: usize| serde_json::to_string(&ink(vec![vec![(1, 1); points]; strokes])).unwrap();
        assert_eq!(refused(&many(STROKES_MAX + 1, 1)), InkError::TooMuch);
        assert_eq!(refused(&many(1, POINTS_TAKEN_MAX + 1)), InkError::TooMuch);
        assert!(Ink::read(&many(STROKES_MAX, POINTS_TAKEN_MAX / STROKES_MAX)).is_ok());
    }

    #[test]
    fn points_on_a_straight_line_go_and_its_ends_and_corners_stay() {
        let line: Vec<Point> = (0..100).map(|x| (x * 10, 200)).chain((0..20).map(|y| (990, 200 + y * 10))).collect();
        assert_eq!(ink(vec![line]).thinned().unwrap().strokes, [[(0, 200), (990, 200), (990, 390)]]);
        assert_eq!(ink(vec![vec![(7, 7)]]).thinned().unwrap().strokes, [[(7, 7)]], "a dot stays a dot");
        let there_and_back = vec![(0, 0), (500, 0), (0, 0)];
        assert_eq!(ink(vec![there_and_back.clone()]).thinned().unwrap().strokes, [there_and_back]);
    }

    #[test]
    fn its_path_goes_from_point_to_point_and_a_dot_is_drawn_too() {
        assert_eq!(ink(vec![vec![(1, 2), (3, 4), (5, 6)], vec![(7, 8)]]).path(), "M1 2L3 4L5 6M7 8L7 8");
    }

    #[test]
    fn a_scrawl_without_end_is_thinned_more_and_then_refused() {
        // Every point a corner, far from the one before: nothing can be left out.
        let wild: Vec<Point> = (0..9_000_u32).map(|at| (at * 467 % 1201, at * 211 % 481)).collect();
        assert_eq!(ink(vec![wild]).thinned().unwrap_err(), InkError::TooMuch);
        // A trembling hand: corners of one unit, many of them.
        let trembling: Vec<Point> = (0..9_000_u32).map(|at| (at * 1200 / 9_000, 200 + at % 2 * 2)).collect();
        assert!(ink(vec![trembling]).thinned().unwrap().points() <= POINTS_MAX);
    }

    proptest! {
        #[test]
        fn no_point_that_was_drawn_lies_off_the_line_that_is_kept(
            stroke in proptest::collection::vec((0_u32..=1200, 0_u32..=480), 1..80),
        ) {
            let thin = thinned(&stroke, 1);
            prop_assert!(!thin.is_empty() && thin.first() == stroke.first() && thin.last() == stroke.last());
            // By floating-point numbers, so that the whole ones are not asked about themselves.
            let near = |(x, y): &Point| {
                let dot = |of: &Point| (f64::from(of.0), f64::from(of.1));
                let (x, y) = dot(&(*x, *y));
                let apart = |a: &Point, b: &Point| {
                    let (a, b) = (dot(a), dot(b));
                    let (dx, dy) = (b.0 - a.0, b.1 - a.1);
                    let length = dx * dx + dy * dy;
                    let t = if length == 0.0 { 0.0 } else { (((x - a.0) * dx + (y - a.1) * dy) / length).clamp(0.0, 1.0) };
                    let (nx, ny) = (a.0 + t * dx - x, a.1 + t * dy - y);
                    nx * nx + ny * ny
                };
                let pairs = thin.iter().zip(thin.iter().skip(1));
                pairs.map(|(a, b)| apart(a, b)).chain(thin.first().map(|only| apart(only, only))).any(|off| off <= 1.000_001)
            };
            for point in &stroke {
                prop_assert!(near(point), "{point:?} of {stroke:?} is off {thin:?}");
            }
        }
    }
}
