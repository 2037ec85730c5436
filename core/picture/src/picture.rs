//! A picture at reduced size as planes of brightness and colour (JFIF's Y, Cb, Cr, full range), and what is done with them.

use fast_image_resize::images::{TypedImage, TypedImageRef};
use fast_image_resize::pixels::U8;
use fast_image_resize::{FilterType, ResizeAlg, ResizeOptions, Resizer};

use crate::at_once::at_once;

/// One plane, row after row without gaps.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plane {
    /// Brightness or colour, 0 to 255.
    pub pixels: Vec<u8>,
    /// Pixels across.
    pub width: u32,
    /// Pixels down.
    pub height: u32,
}

/// A picture; without colour where it has none. Colour may be coarser than brightness.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Picture {
    /// Brightness, Y.
    pub y: Plane,
    /// Cb and Cr.
    pub colour: Option<[Plane; 2]>,
}

impl Plane {
    /// At another size, by Lanczos with three lobes; the same where the size is. None where a side is 0.
    pub(crate) fn at_size(&self, width: u32, height: u32) -> Option<Plane> {
        if (self.width, self.height) == (width, height) {
            return Some(self.clone());
        }
        let mut pixels = vec![0; width as usize * height as usize];
        // The kind of pixel is said as a type: only its code is built then, and not that of a dozen others.
        let from = TypedImageRef::<U8>::from_buffer(self.width, self.height, &self.pixels).ok()?;
        let mut to = TypedImage::<U8>::from_buffer(width, height, &mut pixels).ok()?;
        let lanczos = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(FilterType::Lanczos3)).use_alpha(false);
        Resizer::new().resize_typed(&from, &mut to, &lanczos).ok()?;
        Some(Plane { pixels, width, height })
    }

    /// Rows from the top.
    pub(crate) fn rows(&self) -> std::slice::ChunksExact<'_, u8> {
        self.pixels.chunks_exact(self.width.max(1) as usize)
    }

    /// Turned upright: `orientation` as EXIF counts, 1 to 8 (CIPA DC-008, Orientation); anything else leaves it.
    fn upright(self, orientation: u32) -> Plane {
        let mirrored = |row: &[u8], out: &mut Vec<u8>| out.extend(row.iter().rev());
        let mut out = Vec::with_capacity(self.pixels.len());
        match orientation {
            2 => self.rows().for_each(|row| mirrored(row, &mut out)),
            3 => out.extend(self.pixels.iter().rev()),
            4 => self.rows().rev().for_each(|row| out.extend_from_slice(row)),
            5..=8 => return self.on_its_side(matches!(orientation, 7 | 8), matches!(orientation, 6 | 7)),
            _ => return self,
        }
        Plane { pixels: out, ..self }
    }

    /// Columns become rows: from the right, and each from below.
    fn on_its_side(self, from_right: bool, from_below: bool) -> Plane {
        let (width, height) = (self.width as usize, self.height as usize);
        let mut out = Vec::with_capacity(self.pixels.len());
        for x in 0..width {
            let x = if from_right { width - 1 - x } else { x };
            let column = self.pixels.get(x..).unwrap_or_default().iter().step_by(width).take(height);
            if from_below { out.extend(column.rev()) } else { out.extend(column) }
        }
        Plane { pixels: out, width: self.height, height: self.width }
    }
}

impl Picture {
    /// Made to fit into a square of `side` pixels, with colour at half the size of brightness, and turned upright: `orientation` as
    /// EXIF counts. None where a side is 0.
    #[must_use]
    pub fn fitted(self, side: u32, orientation: u32) -> Option<Picture> {
        let (width, height) = fit(self.y.width, self.y.height, side);
        let (half_width, half_height) = (width.div_ceil(2), height.div_ceil(2));
        let coarser = |plane: &Plane| Some(plane.at_size(half_width, half_height)?.upright(orientation));
        let (colour, y) = at_once(
            || self.colour.as_ref().map(|[blue, red]| Some([coarser(blue)?, coarser(red)?])),
            || Some(self.y.at_size(width, height)?.upright(orientation)),
        );
        let colour = match colour {
            Some(colour) => Some(colour?),
            None => None,
        };
        Some(Picture { y: y?, colour })
    }
}

/// The largest size of the same shape whose longer side is at most `side`; never enlarged.
#[must_use]
pub fn fit(width: u32, height: u32, side: u32) -> (u32, u32) {
    let longer = u64::from(width.max(height));
    if longer <= u64::from(side) {
        return (width, height);
    }
    let scaled = |length: u32| ((u64::from(length) * u64::from(side) + longer / 2) / longer).max(1) as u32;
    (scaled(width), scaled(height))
}

/// Takes rows of RGB one after another and keeps them as planes, each brightness the mean of `by` × `by` pixels and
/// each colour that of twice as many: a picture is never held whole.
pub(crate) struct Gather {
    by: usize,
    y: Sums,
    blue: Sums,
    red: Sums,
}

impl Gather {
    /// For pictures of this size. `by` is at least 1.
    pub(crate) fn new(width: u32, height: u32, by: u32) -> Gather {
        let by = by.max(1) as usize;
        let sums = |by: usize| Sums::new(width as usize, height as usize, by);
        Gather { by, y: sums(by), blue: sums(2 * by), red: sums(2 * by) }
    }

    /// The next row: three bytes a pixel, or four of which the last is not looked at.
    pub(crate) fn row(&mut self, row: &[u8], bytes_a_pixel: usize) {
        let by = self.by;
        for (n, pixels) in row.chunks(bytes_a_pixel * 2 * by).enumerate() {
            let (mut blue_sum, mut red_sum, mut count) = (0_u32, 0_u32, 0_u32);
            for (m, cell) in pixels.chunks(bytes_a_pixel * by).enumerate() {
                let (mut y_sum, mut y_count) = (0_u32, 0_u32);
                for pixel in cell.chunks_exact(bytes_a_pixel) {
                    let Some([r, g, b]) = pixel.first_chunk::<3>().map(|rgb| rgb.map(i32::from)) else { continue };
                    // ITU-T T.871 (JFIF), 7, in 16 bits behind the point.
                    y_sum += ((19_595 * r + 38_470 * g + 7_471 * b + 32_768) >> 16) as u32;
                    blue_sum += ((-11_059 * r - 21_709 * g + 32_768 * b + 8_421_375) >> 16) as u32;
                    red_sum += ((32_768 * r - 27_439 * g - 5_329 * b + 8_421_375) >> 16) as u32;
                    y_count += 1;
                }
                self.y.add(2 * n + m, y_sum, y_count);
                count += y_count;
            }
            self.blue.add(n, blue_sum, count);
            self.red.add(n, red_sum, count);
        }
        self.y.row_done();
        self.blue.row_done();
        self.red.row_done();
    }

    /// What was gathered.
    pub(crate) fn picture(self) -> Picture {
        Picture { y: self.y.plane(), colour: Some([self.blue.plane(), self.red.plane()]) }
    }
}

/// Sums of one plane's cells over rows.
struct Sums {
    by: usize,
    rows: usize,
    cells: Vec<(u32, u32)>,
    pixels: Vec<u8>,
}

impl Sums {
    fn new(width: usize, height: usize, by: usize) -> Sums {
        let cells = width.div_ceil(by);
        Sums { by, rows: 0, cells: vec![(0, 0); cells], pixels: Vec::with_capacity(cells * height.div_ceil(by)) }
    }

    fn add(&mut self, cell: usize, sum: u32, count: u32) {
        if let Some(cell) = self.cells.get_mut(cell) {
            *cell = (cell.0 + sum, cell.1 + count);
        }
    }

    fn row_done(&mut self) {
        self.rows += 1;
        if self.rows == self.by {
            self.close();
        }
    }

    fn close(&mut self) {
        self.pixels.extend(self.cells.iter().map(|(sum, count)| ((sum + count / 2) / (*count).max(1)).min(255) as u8));
        self.cells.fill((0, 0));
        self.rows = 0;
    }

    fn plane(mut self) -> Plane {
        if self.rows > 0 {
            self.close();
        }
        let width = self.cells.len();
        let height = self.pixels.len() / width.max(1);
        Plane { pixels: self.pixels, width: width as u32, height: height as u32 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plane(rows: &[&[u8]]) -> Plane {
        Plane { pixels: rows.concat(), width: rows[0].len() as u32, height: rows.len() as u32 }
    }

    /// A letter that no turn leaves alone, as EXIF's eight orientations store it. Source: CIPA DC-008 (Exif 2.32), the
    /// row and column that the stored 0th row and 0th column are.
    #[test]
    fn all_eight_orientations_are_turned_to_the_same_picture() {
        let upright = plane(&[&[1, 2, 3], &[4, 5, 6]]);
        let stored: [&[&[u8]]; 8] = [
            &[&[1, 2, 3], &[4, 5, 6]],
            &[&[3, 2, 1], &[6, 5, 4]],
            &[&[6, 5, 4], &[3, 2, 1]],
            &[&[4, 5, 6], &[1, 2, 3]],
            &[&[1, 4], &[2, 5], &[3, 6]],
            &[&[3, 6], &[2, 5], &[1, 4]],
            &[&[6, 3], &[5, 2], &[4, 1]],
            &[&[4, 1], &[5, 2], &[6, 3]],
        ];
        for (orientation, rows) in (1..).zip(stored) {
            assert_eq!(plane(rows).upright(orientation), upright, "orientation {orientation}");
        }
    }

    #[test]
    fn a_picture_keeps_its_shape_and_is_never_enlarged() {
        assert_eq!(fit(4000, 3000, 1600), (1600, 1200));
        assert_eq!(fit(3000, 4000, 1600), (1200, 1600));
        assert_eq!(fit(1600, 7, 1600), (1600, 7));
        assert_eq!(fit(100_000, 1, 1600), (1600, 1), "a line stays a line");
    }

    #[test]
    fn gathered_rows_are_means_of_their_cells_and_odd_edges_count_what_is_there() {
        let mut gather = Gather::new(3, 3, 2);
        for row in [[0_u8, 100, 200], [100, 200, 200], [40, 40, 10]] {
            let rgb: Vec<u8> = row.iter().flat_map(|value| [*value; 3]).collect();
            gather.row(&rgb, 3);
        }
        let picture = gather.picture();
        assert_eq!(picture.y, plane(&[&[100, 200], &[40, 10]]));
        let [blue, red] = picture.colour.unwrap();
        assert_eq!((blue, red), (plane(&[&[128]]), plane(&[&[128]])), "grey has no colour");
    }
}
