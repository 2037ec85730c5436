//! Boxes on pages: a box is never parted, a heading never stands without what follows it.

use super::Sheet;
use super::parts::Laid;

/// For each page, which boxes stand on it and how far down.
pub(super) fn onto_pages(boxes: &[Laid], sheet: Sheet) -> Vec<Vec<(usize, f32)>> {
    let mut pages = vec![Vec::new()];
    let mut y = sheet.margin;
    let mut at = 0;
    while at < boxes.len() {
        // A run of boxes that hold together: each says whether the next one stays with it.
        let run = 1 + boxes.iter().skip(at).take_while(|of| of.keeps_next).count();
        let run = run.min(boxes.len() - at);
        let held = || boxes.iter().enumerate().skip(at).take(run);
        let fresh = pages.last().is_none_or(Vec::is_empty);
        let high: f32 = held().map(|(index, of)| of.high + if fresh && index == at { 0.0 } else { of.space }).sum();
        if !fresh && y + high > sheet.bottom() {
            pages.push(Vec::new());
            y = sheet.margin;
        }
        for (index, of) in held() {
            let top_of_page = pages.last().is_none_or(Vec::is_empty);
            // A run that is higher than a page is parted after all.
            if !top_of_page && y + of.space + of.high > sheet.bottom() {
                pages.push(Vec::new());
                y = sheet.margin;
            }
            let top_of_page = pages.last().is_none_or(Vec::is_empty);
            y += if top_of_page { 0.0 } else { of.space };
            if let Some(page) = pages.last_mut() {
                page.push((index, y));
            }
            y += of.high;
        }
        at += run;
    }
    pages
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;
    use crate::procedure::measure::Units;

    fn boxes(of: &[(f32, bool)]) -> Vec<Laid> {
        of.iter()
            .map(|(high, keeps_next)| Laid { high: *high, space: 9.0, keeps_next: *keeps_next, ..Laid::default() })
            .collect()
    }

    proptest! {
        #[test]
        fn every_box_stands_on_one_page_within_its_margins_and_no_heading_ends_a_page(
            of in prop::collection::vec((5.0_f32..180.0, prop::bool::weighted(0.25)), 1..90)
        ) {
            // No two headings in a row: a run of two boxes always fits a page.
            let mut of = of;
            for at in 1..of.len() {
                if of[at - 1].1 { of[at].1 = false; }
            }
            if let Some(last) = of.last_mut() { last.1 = false; }
            let boxes = boxes(&of);
            let sheet = Sheet::of(Units::Us);
            let pages = onto_pages(&boxes, sheet);
            let placed: Vec<usize> = pages.iter().flatten().map(|(index, _)| *index).collect();
            prop_assert_eq!(placed, (0..boxes.len()).collect::<Vec<_>>());
            for page in &pages {
                for (index, y) in page {
                    prop_assert!(*y >= sheet.margin && y + boxes[*index].high <= sheet.bottom() + 0.01);
                }
                let last = page.last().map(|(index, _)| &boxes[*index]);
                prop_assert!(last.is_some_and(|last| !last.keeps_next), "a heading ends a page");
            }
        }
    }
}
