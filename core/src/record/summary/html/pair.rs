//! The same view before and after: under a divide that five radio buttons move, where both pictures have one shape; else
//! side by side. On paper always side by side.

use maud::{Markup, html};

use super::data;
use crate::id::Digest;
use crate::record::summary::jpeg::{Picture, Pictures, Source};
use crate::record::summary::{Labels, Pair, Part};

/// The places of the divide, from 'before' to 'after', as people say them.
const PLACES: [&str; 5] = ["", "¼", "½", "¾", ""];

/// How the slider is used: once, above the first of them.
pub(super) fn how_to(labels: &Labels, pairs: &[Part]) -> Markup {
    let both = |part: &Part| matches!(part, Part::Pair(Pair { before: Some(_), after: Some(_), .. }));
    html! { @if pairs.iter().any(both) { p.quiet.how-to #how-to { (labels.slide) } } }
}

pub(super) fn pair(labels: &Labels, pair: &Pair, name: &str, pictures: &Pictures) -> Markup {
    let shown = |digest: &Option<Digest>| digest.as_ref().and_then(|digest| pictures.get(digest));
    let (before, after) = (shown(&pair.before), shown(&pair.after));
    match (before, after) {
        (Some(one), Some(other)) if alike(one, other) => slider(labels, pair, name, (one, other)),
        (before, after) => html! {
            article.pair {
                h3 { (pair.title) }
                div.sides {
                    (side(before, &labels.before, &pair.title, &labels.no_photo))
                    (side(after, &labels.after, &pair.title, &labels.no_photo))
                }
            }
        },
    }
}

/// Whether one may be laid over the other: their shapes differ by less than a twentieth.
fn alike(one: &Picture, other: &Picture) -> bool {
    let shape = |picture: &Picture| f64::from(picture.width) / f64::from(picture.height);
    (shape(one) / shape(other) - 1.0).abs() < 0.05
}

fn slider(labels: &Labels, pair: &Pair, name: &str, (before, after): (&Picture, &Picture)) -> Markup {
    html! {
        article.pair {
            h3 id={ (name) "-of" } { (pair.title) }
            div.slider role="radiogroup" aria-labelledby={ (name) "-of" } aria-describedby="how-to" {
                @for (at, _) in PLACES.iter().enumerate() {
                    input class={ "at" (at) } type="radio" name=(name) id={ (name) "-" (at) } value=(at) checked[at == 2];
                }
                div.stage {
                    (side(Some(before), &labels.before, &pair.title, ""))
                    (side(Some(after), &labels.after, &pair.title, ""))
                }
                div.track {
                    @for (at, place) in PLACES.iter().enumerate() {
                        label for={ (name) "-" (at) } { @match at { 0 => (labels.before), 4 => (labels.after), _ => { (place) span.hidden { " " (labels.after) } } } }
                    }
                }
            }
        }
    }
}

fn side(picture: Option<&Picture>, label: &str, of: &str, missing: &str) -> Markup {
    html! {
        @match picture {
            Some(picture) => {
                figure {
                    img src=(address(picture)) alt={ (of) ": " (label) } width=(picture.width) height=(picture.height) decoding="async";
                    figcaption { (label) }
                }
            }
            None => { figure { figcaption { (label) } div.no-photo { (missing) } } }
        }
    }
}

fn address(picture: &Picture) -> String {
    match &picture.source {
        Source::Bytes(bytes) => data("image/jpeg", bytes),
        Source::Address(address) => address.clone(),
    }
}
