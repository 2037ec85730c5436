//! Charts as drawings that any rendering can draw: lines, dots and words at places. Two kinds: ranges as found and as left
//! over one scale, and a reading over the years. Their scales need not begin at zero: nothing is told by a length, only
//! by places.

/// A drawing in units of its own, `y` downwards.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// How wide.
    pub width: f64,
    /// How high.
    pub height: f64,
    /// In the order in which they are drawn.
    pub shapes: Vec<Shape>,
    /// The same in words, for a person who does not see it.
    pub text: String,
}

/// A piece of a drawing.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A straight line.
    Line {
        /// From.
        from: (f64, f64),
        /// To.
        to: (f64, f64),
        /// With what.
        pen: Pen,
    },
    /// A line from point to point, drawn by hand.
    Stroke {
        /// A single one is a dot.
        points: Vec<(f64, f64)>,
    },
    /// A dot: filled, or a ring.
    Dot {
        /// Its middle.
        at: (f64, f64),
        /// A ring with the ground inside.
        ring: bool,
    },
    /// Words.
    Words {
        /// The middle of their height.
        at: (f64, f64),
        /// Which end stands there.
        anchor: Anchor,
        /// The words.
        text: String,
    },
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pen {
    /// What lies behind.
    Grid,
    /// A range as found.
    Found,
    /// A range as left, and what is new.
    Left,
}

/// Which end of words stands at their place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Their start.
    Start,
    /// Their middle.
    Middle,
    /// Their end.
    End,
}

impl Drawing {
    /// The words in it, in the order in which they are drawn.
    pub fn words(&self) -> impl Iterator<Item = &str> {
        self.shapes
            .iter()
            .filter_map(|shape| if let Shape::Words { text, .. } = shape { Some(text.as_str()) } else { None })
    }
}

/// The size of words in a drawing, in its units.
pub const WORDS_SIZE: f64 = 14.0;
/// The radius of a dot.
pub const DOT: f64 = 5.5;

const WIDTH: f64 = 360.0;

/// A value and how far off it can be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Range {
    pub(super) value: f64,
    pub(super) doubt: f64,
}

/// The words of both rows.
pub(super) struct Rows<'a> {
    pub(super) before: &'a str,
    pub(super) after: &'a str,
    pub(super) text: String,
}

/// Ranges as found and as left, one above the other. `tick` writes a number of the scale with its unit.
pub(super) fn ranges(found: Range, left: Range, rows: Rows<'_>, tick: &dyn Fn(f64, u8) -> String) -> Drawing {
    const FROM: f64 = 104.0;
    const TO: f64 = WIDTH - 30.0;
    let ends = [found, left].map(|range| (range.value - range.doubt, range.value + range.doubt));
    let scale =
        Scale::over(ends.iter().fold((f64::MAX, f64::MIN), |(low, high), end| (low.min(end.0), high.max(end.1))), 3);
    let x = |value: f64| FROM + scale.share(value) * (TO - FROM);
    let mut shapes = Vec::new();
    for mark in scale.marks() {
        shapes.push(line((x(mark), 8.0), (x(mark), 82.0), Pen::Grid));
    }
    for (y, range, pen, label) in [(26.0, found, Pen::Found, rows.before), (62.0, left, Pen::Left, rows.after)] {
        shapes.push(words((0.0, y), Anchor::Start, label.to_owned()));
        let (low, high) = (x(range.value - range.doubt), x(range.value + range.doubt));
        shapes.push(line((low, y), (high, y), pen));
        if range.doubt > 0.0 {
            shapes.extend([low, high].map(|end| line((end, y - 7.0), (end, y + 7.0), pen)));
        }
        shapes.push(Shape::Dot { at: (x(range.value), y), ring: pen == Pen::Found });
    }
    let named: Vec<(f64, String)> =
        scale.marks().into_iter().map(|mark| (x(mark), tick(mark, scale.decimals))).collect();
    let every = named_marks(&named);
    for (at, text) in named.into_iter().step_by(every) {
        shapes.push(words((at, 96.0), Anchor::Middle, text));
    }
    Drawing { width: WIDTH, height: 106.0, shapes, text: rows.text }
}

/// Every how many marks are named: words of neighbours must not touch, and of many marks every other one is enough.
fn named_marks(named: &[(f64, String)]) -> usize {
    // A digit is a bit more than half as wide as it is high, and wider than most letters.
    const LETTER: f64 = WORDS_SIZE * 0.58;
    const APART: f64 = 10.0;
    let widest = named.iter().map(|(_, text)| text.chars().count()).max().unwrap_or(0) as f64 * LETTER;
    let between = match named {
        [(one, _), (other, _), ..] => other - one,
        _ => return 1,
    };
    let fits = libm::ceil((widest + APART) / between).clamp(1.0, named.len() as f64) as usize;
    if named.len() > 4 { fits.max(2) } else { fits }
}

/// Values over time: years since the first, and the value. `tick` writes a number of the scale with its unit.
pub(super) fn years(points: &[(f64, f64, String)], text: String, tick: &dyn Fn(f64, u8) -> String) -> Drawing {
    const FROM: f64 = 96.0;
    const TO: f64 = WIDTH - 24.0;
    const TOP: f64 = 14.0;
    const BOTTOM: f64 = 130.0;
    const LABEL: f64 = 40.0;
    let values = points.iter().map(|(_, value, _)| *value);
    let scale =
        Scale::over(values.fold((f64::MAX, f64::MIN), |(low, high), value| (low.min(value), high.max(value))), 3);
    let first = points.first().map_or(0.0, |(at, ..)| *at);
    let span = points.last().map_or(1.0, |(at, ..)| *at - first).max(1e-6);
    let place =
        |at: f64, value: f64| (FROM + (at - first) / span * (TO - FROM), BOTTOM - scale.share(value) * (BOTTOM - TOP));
    let mut shapes = Vec::new();
    for mark in scale.marks() {
        let (_, y) = place(first, mark);
        shapes.push(line((FROM - 10.0, y), (TO + 10.0, y), Pen::Grid));
        shapes.push(words((FROM - 16.0, y), Anchor::End, tick(mark, scale.decimals)));
    }
    let places: Vec<(f64, f64)> = points.iter().map(|(at, value, _)| place(*at, *value)).collect();
    for (one, other) in places.iter().zip(places.iter().skip(1)) {
        shapes.push(line(*one, *other, Pen::Found));
    }
    let last = places.len().saturating_sub(1);
    shapes.extend(places.iter().enumerate().map(|(at, place)| Shape::Dot { at: *place, ring: at != last }));
    let mut free = f64::MAX;
    let mut labels: Vec<Shape> = Vec::new();
    // From the newest back, so that this year is always named.
    for ((x, _), (.., year)) in places.iter().zip(points).rev() {
        if free - x >= LABEL {
            labels.push(words((*x, BOTTOM + 18.0), Anchor::Middle, year.clone()));
            free = *x;
        }
    }
    shapes.extend(labels.into_iter().rev());
    Drawing { width: WIDTH, height: BOTTOM + 30.0, shapes, text }
}

const fn line(from: (f64, f64), to: (f64, f64), pen: Pen) -> Shape {
    Shape::Line { from, to, pen }
}

const fn words(at: (f64, f64), anchor: Anchor, text: String) -> Shape {
    Shape::Words { at, anchor, text }
}

/// A scale with marks at round numbers that holds all values.
struct Scale {
    low: f64,
    high: f64,
    step: f64,
    decimals: u8,
}

impl Scale {
    /// With about so many steps between its marks.
    fn over((low, high): (f64, f64), steps: u32) -> Scale {
        let widest = (high - low).max(low.abs().max(high.abs()) * 1e-3).max(1e-6);
        let rough = widest / f64::from(steps);
        let power = libm::pow(10.0, libm::floor(libm::log10(rough)));
        let step = [1.0, 2.0, 5.0, 10.0].map(|of| of * power).into_iter().find(|step| *step >= rough).unwrap_or(rough);
        let (low, high) = (libm::floor(low / step) * step, libm::ceil(high / step) * step);
        let high = if high > low { high } else { low + step };
        let decimals = (0..6_u8).find(|places| libm::pow(10.0, -f64::from(*places)) <= step * 1.000_001).unwrap_or(6);
        Scale { low, high, step, decimals }
    }

    fn share(&self, value: f64) -> f64 {
        (value - self.low) / (self.high - self.low)
    }

    fn marks(&self) -> Vec<f64> {
        let count = libm::round((self.high - self.low) / self.step) as u32;
        (0..=count.min(6)).map(|at| self.low + f64::from(at) * self.step).collect()
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    proptest! {
        #[test]
        fn a_scale_holds_its_values_between_a_few_round_marks(low in -1e4_f64..1e4, more in 0.0_f64..1e4) {
            let scale = Scale::over((low, low + more), 3);
            let marks = scale.marks();
            prop_assert!((2..=6).contains(&marks.len()), "{marks:?}");
            prop_assert!(scale.low <= low + 1e-6 && low + more <= marks.last().unwrap() + 1e-6, "{marks:?}");
        }

        #[test]
        fn no_dot_and_no_line_lies_outside_of_its_drawing(found in -50.0_f64..9e3, left in -50.0_f64..9e3, doubt in 0.0_f64..2e3) {
            let rows = Rows { before: "Before", after: "After", text: String::new() };
            let of = |value| Range { value, doubt };
            let drawing = ranges(of(found), of(left), rows, &|value, _| value.to_string());
            for shape in &drawing.shapes {
                let places = match shape {
                    Shape::Line { from, to, .. } => vec![*from, *to],
                    Shape::Stroke { points } => points.clone(),
                    Shape::Dot { at, .. } | Shape::Words { at, .. } => vec![*at],
                };
                for (x, y) in places {
                    prop_assert!((0.0..=drawing.width).contains(&x) && (0.0..=drawing.height).contains(&y), "{shape:?}");
                }
            }
        }
    }

    #[test]
    fn names_of_neighbouring_marks_never_touch() {
        for unit in ["W", "gal/min", "veces más"] {
            let rows = Rows { before: "Before", after: "After", text: String::new() };
            let (found, left) = (Range { value: 2.4, doubt: 0.1 }, Range { value: 2.6, doubt: 0.1 });
            let drawing = ranges(found, left, rows, &|value, _| format!("{value:.1} {unit}"));
            let named = drawing.shapes.iter().filter_map(|shape| match shape {
                Shape::Words { at, anchor: Anchor::Middle, text } => {
                    Some((at.0, text.chars().count() as f64 * WORDS_SIZE * 0.58))
                }
                _ => None,
            });
            let named: Vec<(f64, f64)> = named.collect();
            assert!(!named.is_empty());
            for pair in named.windows(2) {
                assert!(pair[1].0 - pair[0].0 >= (pair[0].1 + pair[1].1) / 2.0 + 4.0, "{unit}: {named:?}");
            }
        }
    }

    #[test]
    fn the_newest_year_is_always_named() {
        let points: Vec<(f64, f64, String)> =
            (0..30).map(|year| (f64::from(year), 9.0, (1996 + year).to_string())).collect();
        let drawing = years(&points, String::new(), &|value, _| value.to_string());
        let named: Vec<&str> = drawing.words().filter(|text| text.len() == 4).collect();
        assert_eq!(named.last(), Some(&"2025"));
        assert!(named.len() < 10, "{named:?}");
    }
}
