//! A plot of the core as a drawing in the page.

use coilside_core::screen::{LineStyle, Plot, PlotLine};
use maud::{Markup, html};

/// Where the axes lie in the drawing's own units, with room for their words.
const WIDE: f64 = 400.0;
const HIGH: f64 = 340.0;
const LEFT: f64 = 56.0;
const RIGHT: f64 = 388.0;
const TOP: f64 = 34.0;
const BOTTOM: f64 = 280.0;

fn across(x: f64) -> String {
    format!("{:.1}", LEFT + x * (RIGHT - LEFT))
}

fn down(y: f64) -> String {
    format!("{:.1}", BOTTOM - y * (BOTTOM - TOP))
}

const fn class(style: LineStyle) -> &'static str {
    match style {
        LineStyle::Plain => "plain",
        LineStyle::Strong => "strong",
        LineStyle::Dashed => "dashed",
    }
}

/// The lines over their axes, with a key below. The lines differ in width and in being broken, not by colour alone.
pub(super) fn plot(plot: &Plot) -> Markup {
    html! {
        p { b { (plot.caption) } }
        svg.plot viewBox={ "0 0 " (WIDE) " " (HIGH) } role="img" aria-label=(plot.text) {
            @for tick in &plot.x_ticks {
                path.grid d={ "M" (across(tick.at)) " " (down(0.0)) "V" (down(1.0)) } {}
                text x=(across(tick.at)) y=(BOTTOM + 22.0) text-anchor="middle" { (tick.text) }
            }
            @for tick in &plot.y_ticks {
                path.grid d={ "M" (across(0.0)) " " (down(tick.at)) "H" (across(1.0)) } {}
                text x=(LEFT - 8.0) y=(down(tick.at)) text-anchor="end" dominant-baseline="central" { (tick.text) }
            }
            path.axes d={ "M" (across(0.0)) " " (down(1.0)) "V" (down(0.0)) "H" (across(1.0)) } {}
            text x=(RIGHT) y=(HIGH - 12.0) text-anchor="end" { (plot.x_title) }
            text x="4" y="18" { (plot.y_title) }
            @for line in &plot.lines { path class=(class(line.style)) d=(way(line)) {} }
        }
        ul.key aria-hidden="true" {
            @for line in named(&plot.lines) {
                li {
                    svg.plot viewBox="0 0 44 12" { path class=(class(line.style)) d="M2 6H42" {} }
                    (line.label)
                }
            }
        }
    }
}

fn way(line: &PlotLine) -> String {
    let point = |(at, point): (usize, &coilside_core::screen::PlotPoint)| {
        format!("{}{} {}", if at == 0 { "M" } else { "L" }, across(point.x), down(point.y))
    };
    line.points.iter().enumerate().map(point).collect()
}

/// Each label once: a thing may be drawn in parts.
fn named(lines: &[PlotLine]) -> Vec<&PlotLine> {
    let mut named: Vec<&PlotLine> = Vec::new();
    for line in lines {
        if named.iter().all(|other| other.label != line.label) {
            named.push(line);
        }
    }
    named
}
