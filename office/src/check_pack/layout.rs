//! Which things stand in which row when each stands below all that comes before it, and which arrows are worth drawing.

/// Rows of a graph, and its arrows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Layers {
    /// The row of each thing.
    pub(super) row: Vec<usize>,
    /// The place of each thing in its row.
    pub(super) column: Vec<usize>,
    /// How many things stand in each row.
    pub(super) widths: Vec<usize>,
    /// From the earlier thing to the later one; what follows from others is left out.
    pub(super) arrows: Vec<(usize, usize)>,
}

/// Lays out things that come after others. `after[n]` are the things before `n`. Circles were refused before; one that is
/// here all the same is cut where it is met.
pub(super) fn layers(after: &[Vec<usize>]) -> Layers {
    let count = after.len();
    let mut row = vec![0_usize; count];
    // Each round settles at least one row more, so there are no more rounds than things.
    for _ in 0..count {
        for (thing, before) in after.iter().enumerate() {
            let least = before.iter().filter_map(|earlier| row.get(*earlier)).map(|row| row + 1).max().unwrap_or(0);
            if let Some(place) = row.get_mut(thing) {
                *place = (*place).max(least.min(count));
            }
        }
    }
    let rows = row.iter().max().map_or(0, |last| last + 1);
    let mut widths = vec![0_usize; rows];
    let column = row
        .iter()
        .map(|row| {
            let Some(width) = widths.get_mut(*row) else { return 0 };
            *width += 1;
            *width - 1
        })
        .collect();
    let reach = reach(after);
    let implied = |earlier: usize, later: usize| {
        let before = after.get(later).map(Vec::as_slice).unwrap_or_default();
        before.iter().any(|other| *other != earlier && reach.get(*other).is_some_and(|of| of.contains(&earlier)))
    };
    let mut arrows = Vec::new();
    for (later, before) in after.iter().enumerate() {
        arrows.extend(before.iter().filter(|earlier| !implied(**earlier, later)).map(|earlier| (*earlier, later)));
    }
    Layers { row, column, widths, arrows }
}

/// Everything that comes before each thing, near or far.
fn reach(after: &[Vec<usize>]) -> Vec<std::collections::BTreeSet<usize>> {
    (0..after.len())
        .map(|thing| {
            let mut seen = std::collections::BTreeSet::new();
            let mut todo = vec![thing];
            while let Some(at) = todo.pop() {
                let before = after.get(at).map(Vec::as_slice).unwrap_or_default();
                todo.extend(before.iter().filter(|earlier| seen.insert(**earlier)));
            }
            seen
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_thing_stands_below_what_comes_before_it() {
        // 0 → 1 → 3, 0 → 2 → 3, and 0 → 3, which follows from the others.
        let layers = layers(&[vec![], vec![0], vec![0], vec![1, 2, 0]]);
        assert_eq!(layers.row, [0, 1, 1, 2]);
        assert_eq!(layers.column, [0, 0, 1, 0]);
        assert_eq!(layers.widths, [1, 2, 1]);
        assert_eq!(layers.arrows, [(0, 1), (0, 2), (1, 3), (2, 3)]);
    }

    #[test]
    fn a_circle_ends() {
        assert_eq!(layers(&[vec![1], vec![0]]).row.len(), 2);
    }
}
