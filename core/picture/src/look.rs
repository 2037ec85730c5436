//! What can be measured in a picture: how sharp it is, how it is exposed, and a likeness that two copies of it share.
//!
//! Sharpness: over a sharp edge neighbouring pixels differ by as much as pixels eight apart do; over a blurred one by less.
//!
//! ```text
//! S = 1000 · 8 Σ (I(x+1) − I(x))² / Σ (I(x+8) − I(x))²
//! an edge smeared by a Gaussian of σ = 0.5, 1, 2, 3, 4, ∞ pixels:   S = 520, 310, 190, 160, 145, 125
//! ```
//! The row follows from ∫ (Φ((x+a)/σ) − Φ(x/σ))² dx = σ (a/σ · erf(a/2σ) + 2/√π · (exp(−a²/4σ²) − 1)), derived here. It is taken
//! across and down, each in the quarter of the tiles where most is to be seen, and the lower of the two counts: a hand
//! that shakes smears one way only. So the background may be soft where the subject is sharp.

use serde::{Deserialize, Serialize};

use crate::picture::Plane;

/// What was measured in a picture, as it stands in the record.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Look {
    /// 125 (smeared) to some 600 (sharp edges) or 1000 (fine texture), 0 where nothing is to be seen: the module tells how.
    pub sharpness: u32,
    /// Pixels that are nearly black, of a thousand.
    pub dark_permille: u32,
    /// Pixels that are burnt out, of a thousand.
    pub blown_permille: u32,
    /// Mean brightness of eight times eight cells, row after row from the top left, two hexadecimal digits each.
    pub likeness: String,
}

/// The shorter side of a picture that is large enough to be judged, pixels.
const SIDE_LEAST: u32 = 200;
/// Tiles have this side, pixels.
const TILE: usize = 48;
/// The two distances whose differences are compared, pixels.
const NEAR: usize = 1;
const FAR: usize = 8;
/// Less than this mean square difference in the best tiles is nothing to be seen: four grey levels.
const SEEN_LEAST: u64 = 16;
/// Brightness below is dark, from above is burnt out, of 255.
const DARK_BELOW: usize = 40;
const BLOWN_FROM: usize = 250;
/// The likeness has this many cells across and down.
const CELLS: usize = 8;

/// Looks at an upright preview; none where it is too small to be judged.
#[must_use]
pub fn look_at(brightness: &Plane) -> Option<Look> {
    if brightness.width.min(brightness.height) < SIDE_LEAST {
        return None;
    }
    let mut histogram = [0_u64; 256];
    for value in &brightness.pixels {
        if let Some(count) = histogram.get_mut(usize::from(*value)) {
            *count += 1;
        }
    }
    let all = (brightness.pixels.len() as u64).max(1);
    let share = |counts: Option<&[u64]>| (counts.unwrap_or_default().iter().sum::<u64>() * 1000 / all) as u32;
    Some(Look {
        sharpness: sharpness(brightness),
        dark_permille: share(histogram.get(..DARK_BELOW)),
        blown_permille: share(histogram.get(BLOWN_FROM..)),
        likeness: likeness(brightness),
    })
}

/// Squared differences of one tile, near and far.
type Tile = (u64, u64);

fn sharpness(brightness: &Plane) -> u32 {
    let rows: Vec<&[u8]> = brightness.rows().collect();
    let across = brightness.width as usize / TILE;
    let count = across * (rows.len() / TILE);
    let (mut sideways, mut down) = (vec![(0, 0); count], vec![(0, 0); count]);
    // Every second row: what is between looks the same, and it is half the work.
    for (at, row) in rows.iter().enumerate().step_by(2) {
        for tile in 0..across {
            let from = tile * TILE;
            let number = at / TILE * across + tile;
            let within = row.get(from..from + TILE).unwrap_or_default();
            let beside = |by: usize| row.get(from + by..).unwrap_or_default();
            let below = |by: usize| rows.get(at + by).and_then(|row| row.get(from..)).unwrap_or_default();
            if row.len() >= from + TILE + FAR {
                add(&mut sideways, number, difference(within, beside(NEAR)), difference(within, beside(FAR)));
            }
            if at + FAR < rows.len() {
                add(&mut down, number, difference(within, below(NEAR)), difference(within, below(FAR)));
            }
        }
    }
    [sideways, down].into_iter().filter_map(ratio).min().unwrap_or(0)
}

fn add(tiles: &mut [Tile], number: usize, near: u64, far: u64) {
    if let Some(tile) = tiles.get_mut(number) {
        *tile = (tile.0 + near, tile.1 + far);
    }
}

fn difference(one: &[u8], other: &[u8]) -> u64 {
    let square = |(a, b): (&u8, &u8)| (i32::from(*a) - i32::from(*b)).pow(2);
    u64::from(one.iter().zip(other).map(square).sum::<i32>().unsigned_abs())
}

/// In the quarter where most is to be seen; none where that is nothing.
fn ratio(mut tiles: Vec<Tile>) -> Option<u32> {
    tiles.sort_unstable_by_key(|tile| std::cmp::Reverse(tile.1));
    tiles.truncate(tiles.len().div_ceil(4));
    let (near, far) = tiles.iter().fold((0, 0), |(near, far), tile| (near + tile.0, far + tile.1));
    let looked_at = (tiles.len() * TILE * TILE / 2) as u64;
    (far > looked_at * SEEN_LEAST).then(|| (near * 8 * 1000 / far) as u32)
}

/// Mean brightness of eight times eight cells, two hexadecimal digits each.
fn likeness(brightness: &Plane) -> String {
    let (width, height) = (brightness.width as usize, brightness.height as usize);
    let mut sums = [[(0_u64, 0_u64); CELLS]; CELLS];
    for (at, row) in brightness.rows().enumerate() {
        let Some(line) = sums.get_mut(at * CELLS / height.max(1)) else { continue };
        for (n, cell) in line.iter_mut().enumerate() {
            let part = row.get(width * n / CELLS..width * (n + 1) / CELLS).unwrap_or_default();
            cell.0 += part.iter().map(|value| u64::from(*value)).sum::<u64>();
            cell.1 += part.len() as u64;
        }
    }
    sums.iter().flatten().map(|(sum, count)| format!("{:02x}", (sum + count / 2) / (*count).max(1))).collect()
}

/// How far apart two likenesses are: the mean and the largest difference of their cells, grey levels of 255. None where one
/// of them is none.
#[must_use]
pub fn likeness_apart(one: &str, other: &str) -> Option<(f64, u32)> {
    let read = |text: &str| -> Option<Vec<u8>> {
        (0..CELLS * CELLS).map(|n| u8::from_str_radix(text.get(2 * n..2 * n + 2)?, 16).ok()).collect()
    };
    let (one, other) = (read(one)?, read(other)?);
    let apart: Vec<u32> = one.iter().zip(&other).map(|(a, b)| u32::from(a.abs_diff(*b))).collect();
    Some((f64::from(apart.iter().sum::<u32>()) / apart.len() as f64, apart.iter().copied().max()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An edge between 60 and 190 down the middle of every tile, smeared by a Gaussian of `sigma` pixels.
    fn edges(sigma: f64) -> Plane {
        let (width, height) = (480_u32, 480_u32);
        let value = |x: u32| {
            let from_edge = f64::from(x % 48) - 23.5;
            let side = if (x / 48).is_multiple_of(2) { 1.0 } else { -1.0 };
            (125.0 + side * 65.0 * libm::erf(from_edge / (sigma * core::f64::consts::SQRT_2))).round() as u8
        };
        let row: Vec<u8> = (0..width).map(value).collect();
        Plane { pixels: row.repeat(height as usize), width, height }
    }

    #[test]
    fn a_smeared_edge_is_as_sharp_as_its_integral_says() {
        // The table of the module's head, without the pixels' own rounding.
        for (sigma, expected) in [(1.0, 314), (2.0, 194), (3.0, 159)] {
            let sharpness = look_at(&edges(sigma)).unwrap().sharpness;
            assert!(sharpness.abs_diff(expected) <= 12, "σ = {sigma}: {sharpness}, not {expected}");
        }
    }

    #[test]
    fn a_hand_that_shakes_one_way_is_noticed_although_the_other_way_is_sharp() {
        let smeared = edges(4.0);
        let mut both = smeared.clone();
        for (y, row) in both.pixels.chunks_exact_mut(480).enumerate() {
            let add = if y / 48 % 2 == 0 { 40 } else { 0 };
            row.iter_mut().for_each(|value| *value = value.saturating_add(add));
        }
        assert!(look_at(&both).unwrap().sharpness < 180);
    }

    #[test]
    fn exposure_is_the_share_of_pixels_that_tell_nothing() {
        let mut pixels = vec![0_u8; 300 * 300];
        pixels[..9_000].fill(255);
        let look = look_at(&Plane { pixels, width: 300, height: 300 }).unwrap();
        assert_eq!((look.dark_permille, look.blown_permille), (900, 100));
    }

    #[test]
    fn likeness_is_small_between_copies_and_none_of_what_is_no_likeness() {
        let (one, other) = (likeness(&edges(1.0)), likeness(&edges(1.5)));
        assert!(likeness_apart(&one, &other).unwrap().0 < 1.0);
        assert_eq!(likeness_apart(&one, ""), None);
        assert_eq!(likeness_apart(&one, "ñ"), None);
    }

    #[test]
    fn a_picture_too_small_to_be_judged_is_not_judged() {
        assert_eq!(look_at(&Plane { pixels: vec![7; 100 * 900], width: 100, height: 900 }), None);
    }
}
