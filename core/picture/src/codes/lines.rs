//! Lines through a picture, and the bars and spaces along each.

use crate::picture::Plane;

/// Directions of lines, as cosine and sine in steps of 11.25 degrees over half a turn: a code that is five times as wide as it is
/// high is crossed whole however it lies.
pub(super) const DIRECTIONS: [(f32, f32); 16] = [
    (1.0, 0.0),
    (0.980_785_3, 0.195_090_32),
    (0.923_879_5, 0.382_683_43),
    (0.831_469_6, 0.555_570_23),
    (0.707_106_77, 0.707_106_77),
    (0.555_570_23, 0.831_469_6),
    (0.382_683_43, 0.923_879_5),
    (0.195_090_32, 0.980_785_3),
    (0.0, 1.0),
    (-0.195_090_32, 0.980_785_3),
    (-0.382_683_43, 0.923_879_5),
    (-0.555_570_23, 0.831_469_6),
    (-0.707_106_77, 0.707_106_77),
    (-0.831_469_6, 0.555_570_23),
    (-0.923_879_5, 0.382_683_43),
    (-0.980_785_3, 0.195_090_32),
];

/// So many lines cross the shorter side.
const LINES: f32 = 110.0;
/// A bar differs from its neighbours by at least this, of 255.
const CONTRAST_LEAST: f32 = 12.0;
/// A line of fewer elements holds no code; what has more than that is texture.
const ELEMENTS: std::ops::RangeInclusive<usize> = 20..=4000;

/// Every line of one direction, as brightness at every pixel along it.
pub(super) fn lines(picture: &Plane, (across, down): (f32, f32)) -> impl Iterator<Item = Vec<f32>> + '_ {
    let (width, height) = (picture.width as f32, picture.height as f32);
    let step = (width.min(height) / LINES).max(1.0);
    let reach = libm::sqrtf(width * width + height * height) / 2.0;
    let count = (2.0 * reach / step) as i32;
    (0..=count).map(move |number| {
        let aside = number as f32 * step - reach;
        // The line's point beside the middle of the picture.
        let (x, y) = (width / 2.0 - down * aside, height / 2.0 + across * aside);
        line(picture, (x, y), (across, down), reach)
    })
}

/// What lies within the picture of a line through a point.
fn line(picture: &Plane, (x, y): (f32, f32), (across, down): (f32, f32), reach: f32) -> Vec<f32> {
    // How far it may go both ways until it leaves, by each side of the picture.
    let within = |from: f32, by: f32, side: f32| {
        let last = side - 1.001;
        if by.abs() < 1e-6 {
            let inside = (0.0..=last).contains(&from);
            return if inside { (-reach, reach) } else { (1.0, 0.0) };
        }
        let (one, other) = (-from / by, (last - from) / by);
        (one.min(other), one.max(other))
    };
    let (from_x, to_x) = within(x, across, picture.width as f32);
    let (from_y, to_y) = within(y, down, picture.height as f32);
    let (from, to) = (libm::ceilf(from_x.max(from_y).max(-reach)), to_x.min(to_y).min(reach));
    if from > to {
        return Vec::new();
    }
    let length = (to - from) as usize + 1;
    (0..length)
        .filter_map(|at| {
            let along = from + at as f32;
            bright(picture, x + across * along, y + down * along)
        })
        .collect()
}

/// Brightness between four pixels.
fn bright(picture: &Plane, x: f32, y: f32) -> Option<f32> {
    let (column, row) = (x as usize, y as usize);
    let width = picture.width as usize;
    let at = row * width + column;
    let [a, b] = picture.pixels.get(at..at + 2)?.first_chunk::<2>()?.map(f32::from);
    let (right, below) = (x - column as f32, y - row as f32);
    let upper = a + (b - a) * right;
    let Some([c, d]) = picture.pixels.get(at + width..).and_then(|rest| rest.first_chunk::<2>()) else {
        return Some(upper);
    };
    let (c, d) = (f32::from(*c), f32::from(*d));
    let lower = c + (d - c) * right;
    Some(upper + (lower - upper) * below)
}

/// The widths of bars and spaces in turn, pixels; the first and the last are what lies before and behind. Where an edge swings
/// by less than `share` of the line's whole range there is none. Empty where there is no code.
pub(super) fn widths(line: &[f32], share: f32) -> Vec<f32> {
    let (least, most) =
        line.iter().fold((f32::MAX, f32::MIN), |(least, most), value| (least.min(*value), most.max(*value)));
    let swing = ((most - least) * share).max(CONTRAST_LEAST);
    if most - least < swing {
        return Vec::new();
    }
    let turns = turns(line, swing);
    if !ELEMENTS.contains(&turns.len()) {
        return Vec::new();
    }
    let edges = turns.windows(2).filter_map(|pair| match pair {
        [from, to] => edge(line, *from, *to),
        _ => None,
    });
    let mut last = 0.0;
    let mut widths: Vec<f32> = edges
        .map(|edge| {
            let width = edge - last;
            last = edge;
            width
        })
        .collect();
    widths.push(line.len() as f32 - last);
    widths
}

/// Where brightness turns, by at least `swing` each time.
fn turns(line: &[f32], swing: f32) -> Vec<usize> {
    let Some(first) = line.first() else { return Vec::new() };
    let mut turns = Vec::new();
    let (mut low, mut high) = ((0, *first), (0, *first));
    // Whether it rises towards a high; not known at first.
    let mut rises: Option<bool> = None;
    for (at, value) in line.iter().copied().enumerate() {
        if value > high.1 {
            high = (at, value);
        }
        if value < low.1 {
            low = (at, value);
        }
        if rises != Some(false) && high.1 - value >= swing {
            turns.push(high.0);
            rises = Some(false);
            low = (at, value);
        } else if rises != Some(true) && value - low.1 >= swing {
            turns.push(low.0);
            rises = Some(true);
            high = (at, value);
        }
    }
    turns.extend(rises.map(|rises| if rises { high.0 } else { low.0 }));
    turns
}

/// Where brightness crosses the middle between two turns.
fn edge(line: &[f32], from: usize, to: usize) -> Option<f32> {
    let middle = (line.get(from)? + line.get(to)?) / 2.0;
    let falls = line.get(from)? > line.get(to)?;
    let past = |value: f32| if falls { value <= middle } else { value >= middle };
    let at = from + line.get(from..=to)?.iter().position(|value| past(*value))?;
    let (before, behind) = (*line.get(at.checked_sub(1)?)?, *line.get(at)?);
    let part = if (behind - before).abs() < f32::EPSILON { 0.5 } else { (middle - before) / (behind - before) };
    Some(at as f32 - 0.5 + part)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_edge_lies_where_half_of_a_pixel_is_covered() {
        // Bars of 3.5 pixels between spaces of 2.5, drawn by coverage.
        let (dark, light) = (20.0_f32, 220.0_f32);
        let mut line = vec![light; 10];
        let mut covered = vec![0.0_f32; 170];
        for bar in 0..24 {
            let (from, to) = (bar as f32 * 6.0 + 2.25, bar as f32 * 6.0 + 5.75);
            for (at, cover) in covered.iter_mut().enumerate() {
                *cover += ((at as f32 + 1.0).min(to) - (at as f32).max(from)).clamp(0.0, 1.0);
            }
        }
        line.extend(covered.iter().map(|cover| light + (dark - light) * cover));
        let widths = widths(&line, 0.3);
        assert_eq!(widths.len(), 49);
        for (at, width) in widths.iter().enumerate().skip(1).take(47) {
            let expected = if at % 2 == 1 { 3.5 } else { 2.5 };
            assert!((width - expected).abs() < 0.3, "{at}: {width}");
        }
    }

    #[test]
    fn lines_stay_within_the_picture_in_every_direction() {
        for (width, height) in [(1, 1), (2, 900), (900, 2), (300, 200)] {
            let picture = Plane { pixels: vec![9; width * height], width: width as u32, height: height as u32 };
            for direction in DIRECTIONS {
                let longest = lines(&picture, direction).map(|line| line.len()).max().unwrap_or(0);
                assert!(longest as f32 <= ((width * width + height * height) as f32).sqrt() + 2.0);
            }
        }
        let picture = Plane { pixels: vec![9; 300 * 200], width: 300, height: 200 };
        let whole: Vec<usize> =
            lines(&picture, (1.0, 0.0)).map(|line| line.len()).filter(|length| *length > 0).collect();
        assert!(whole.len() > 80 && whole.iter().all(|length| *length >= 298), "{whole:?}");
    }

    #[test]
    fn a_flat_or_empty_line_has_no_bars() {
        assert!(widths(&[], 0.3).is_empty());
        assert!(widths(&[128.0; 500], 0.3).is_empty());
    }
}
