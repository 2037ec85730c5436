//! A drawing as inline SVG, in the colours of the page.

use maud::{Markup, html};

use crate::record::summary::chart::{Anchor, DOT, Drawing, Pen, Shape, WORDS_SIZE};

pub(super) fn svg(drawing: &Drawing) -> Markup {
    html! {
        svg.chart viewBox={ "0 0 " (drawing.width) " " (drawing.height) } role="img" aria-label=(drawing.text) {
            @for shape in &drawing.shapes {
                @match shape {
                    Shape::Line { from, to, pen } => path class=(class(*pen)) d={ "M" (place(*from)) "L" (place(*to)) } {},
                    Shape::Stroke { points } => path.stroke d=(stroke(points)) {},
                    Shape::Dot { at, ring } => circle class=(if *ring { "ring" } else { "dot" }) cx=(number(at.0)) cy=(number(at.1)) r=(DOT) {},
                    Shape::Words { at, anchor, text } => text x=(number(at.0)) y=(number(at.1 + WORDS_SIZE * 0.35)) font-size=(WORDS_SIZE) text-anchor=(end(*anchor)) { (text) },
                }
            }
        }
    }
}

/// From point to point. A dot is a line to where it begins: its round ends are drawn.
fn stroke(points: &[(f64, f64)]) -> String {
    let Some(first) = points.first() else { return String::new() };
    let ways = points.iter().skip(1).chain((points.len() == 1).then_some(first));
    ways.fold(format!("M{}", place(*first)), |path, point| format!("{path}L{}", place(*point)))
}

fn place((x, y): (f64, f64)) -> String {
    format!("{} {}", number(x), number(y))
}

fn number(value: f64) -> String {
    format!("{value:.1}")
}

const fn class(pen: Pen) -> &'static str {
    match pen {
        Pen::Grid => "grid",
        Pen::Found => "found-line",
        Pen::Left => "left-line",
    }
}

const fn end(anchor: Anchor) -> &'static str {
    match anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    }
}
