//! The card of a mix: how much of what, in which order, and what does not fit together about it.

use super::{Block, MixRow, Tone, View, VisitView};
use crate::procedure::measure::jug;
use crate::procedure::mixing::worked;
use crate::procedure::pack::Mix;
use crate::record::notes::{amount, mix_note};

/// The mix, and below it a line for each thing that does not fit together.
pub(super) fn blocks(view: &View<'_>, visit: &VisitView<'_>, mix: &Mix) -> Vec<Block> {
    let words = view.words;
    let key = format!("mix-{}", mix.id);
    let worked = worked(visit.pack, visit.run, mix);
    let mut rows = Vec::new();
    if let Some(worked) = &worked {
        let water = jug(worked.water_l, view.units, words.language());
        let concentrate = amount(worked.concentrate, view.units, words);
        rows.push(MixRow { label: words.text(&format!("{key}.water")), amount: water });
        rows.push(MixRow { label: words.text(&format!("{key}.concentrate")), amount: concentrate });
    }
    let order = (1..=4).map_while(|n| words.get(&format!("{key}.order-{n}"))).collect();
    let warning = words.get(&format!("{key}.gear"));
    let card = Block::Mix { title: words.text(&key), rows, order, warning };
    let notes = worked.iter().flat_map(|worked| {
        worked.notes.iter().map(|note| Block::Text {
            text: mix_note(note, worked.concentrate, view.units, words),
            level: 0,
            tone: Tone::Attention,
        })
    });
    std::iter::once(card).chain(notes).collect()
}
