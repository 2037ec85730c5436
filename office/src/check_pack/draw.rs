//! The phases and steps of a pack as a drawing: SVG that any browser shows, light and dark, with a title and a
//! description for those who do not see it.

use std::fmt::Write as _;

use coilside_core::procedure::pack::{Pack, Phase, Step};

use super::layout::{Layers, layers};
use super::report::duration;
use super::words::Told;

const STEP_WIDE: f64 = 330.0;
const STEP_HIGH: f64 = 74.0;
const GAP: f64 = 26.0;
const EDGE: f64 = 18.0;
const HEAD: f64 = 34.0;
/// Between the lanes of arrows that pass other rows.
const LANE: f64 = 9.0;
/// About so many letters of a title fit on a line.
const LETTERS: usize = 44;

const STYLE: &str = "svg{background:#fff;font-family:system-ui,sans-serif}\
.phase{fill:#f1f4f6;stroke:#c4ccd2}.name{font-size:17px;font-weight:600;fill:#16202a}\
.step{fill:#fff;stroke:#4a5a68;stroke-width:1.4}.when{stroke-dasharray:6 4}.hazard{fill:none;stroke:#4a5a68}\
.title{font-size:13px;fill:#16202a}.note{font-size:11.5px;fill:#46535f}\
.arrow{fill:none;stroke:#5d6d7a;stroke-width:1.4}.tip{fill:#5d6d7a}.clock{fill:none;stroke:#46535f;stroke-width:1.3}\
@media(prefers-color-scheme:dark){svg{background:#11171c}.phase{fill:#1a232b;stroke:#3b4853}.name,.title{fill:#eef3f6}\
.step{fill:#222d36;stroke:#a9b8c4}.hazard{stroke:#a9b8c4}.note{fill:#b9c6d0}.arrow{stroke:#98a8b4}.tip{fill:#98a8b4}\
.clock{stroke:#b9c6d0}}";

/// A phase with its steps laid out.
struct Laid<'a> {
    phase: &'a Phase,
    steps: Layers,
    wide: f64,
    high: f64,
}

/// The drawing.
pub(super) fn svg(pack: &Pack, told: &Told) -> String {
    let laid: Vec<Laid<'_>> = pack.phases.iter().map(|phase| lay(phase)).collect();
    let phases = layers(&positions(
        &pack.phases,
        |phase| phase.id.as_str(),
        |phase| phase.after.iter().map(|id| id.as_str()).collect(),
    ));
    let places = places(&laid, &phases);
    let wide = places.iter().zip(&laid).map(|((x, _), of)| x + of.wide).fold(0.0, f64::max) + EDGE;
    let high = places.iter().zip(&laid).map(|((_, y), of)| y + of.high).fold(0.0, f64::max) + EDGE;

    let mut svg = String::new();
    let name = told.text("pack");
    let counts = [("phases", pack.phases.len().to_string()), ("steps", pack.steps().count().to_string())];
    let counts: Vec<(&str, &str)> = counts.iter().map(|(name, count)| (*name, count.as_str())).collect();
    let _ = write!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {wide:.0} {high:.0}\" width=\"{wide:.0}\" \
         height=\"{high:.0}\" role=\"img\" aria-labelledby=\"graph-title graph-desc\" lang=\"{}\">\n\
         <title id=\"graph-title\">{}</title>\n<desc id=\"graph-desc\">{}</desc>\n<style>{STYLE}</style>\n\
         <defs><marker id=\"tip\" viewBox=\"0 0 8 8\" refX=\"7\" refY=\"4\" markerWidth=\"8\" markerHeight=\"8\" \
         orient=\"auto\"><path class=\"tip\" d=\"M0 0L8 4L0 8z\"/></marker></defs>\n",
        told.words().language(),
        escaped(&told.fill("check-graph-title", &[("name", &name)])),
        escaped(&told.fill("check-graph-desc", &counts)),
    );
    for (earlier, later) in &phases.arrows {
        // Down the middle of the first column, which every phase has.
        let middle = EDGE + STEP_WIDE / 2.0;
        let ends = places.get(*earlier).zip(laid.get(*earlier)).zip(places.get(*later));
        if let Some((((x, y), from), (to_x, to_y))) = ends {
            down(&mut svg, (x + middle, y + from.high), (to_x + middle, *to_y));
        }
    }
    for ((x, y), of) in places.iter().zip(&laid) {
        draw_phase(&mut svg, told, pack, of, (*x, *y));
    }
    svg.push_str("</svg>\n");
    svg
}

/// For each thing the places of those that it comes after.
fn positions<'a, T>(
    things: &'a [T],
    id: impl Fn(&'a T) -> &'a str,
    after: impl Fn(&'a T) -> Vec<&'a str>,
) -> Vec<Vec<usize>> {
    let ids: Vec<&str> = things.iter().map(id).collect();
    let place = |name: &str| ids.iter().position(|id| *id == name);
    things.iter().map(|thing| after(thing).into_iter().filter_map(place).collect()).collect()
}

fn lay(phase: &Phase) -> Laid<'_> {
    let after = |step: &'_ Step| -> Vec<String> { step.after.iter().map(|id| id.to_string()).collect() };
    let ids: Vec<String> = phase.steps.iter().map(|step| step.id.to_string()).collect();
    let places: Vec<Vec<usize>> = phase
        .steps
        .iter()
        .map(|step| after(step).iter().filter_map(|name| ids.iter().position(|id| id == name)).collect())
        .collect();
    let steps = layers(&places);
    let columns = steps.widths.iter().copied().max().unwrap_or(1);
    let lanes = steps.arrows.iter().filter(|(from, to)| is_long(&steps, *from, *to)).count();
    let wide = number(columns) * (STEP_WIDE + GAP) - GAP + 2.0 * EDGE + number(lanes) * LANE;
    let high = HEAD + number(steps.widths.len()) * (STEP_HIGH + GAP) - GAP + EDGE;
    Laid { phase, steps, wide, high }
}

/// Rows of phases from top to bottom, each phase beside the others of its row.
fn places(laid: &[Laid<'_>], phases: &Layers) -> Vec<(f64, f64)> {
    let mut places = vec![(EDGE, EDGE); laid.len()];
    let mut top = EDGE;
    for row in 0..phases.widths.len() {
        let (mut left, mut tallest) = (EDGE, 0.0_f64);
        for (number, of) in laid.iter().enumerate().filter(|(number, _)| phases.row.get(*number) == Some(&row)) {
            if let Some(place) = places.get_mut(number) {
                *place = (left, top);
            }
            left += of.wide + GAP;
            tallest = tallest.max(of.high);
        }
        top += tallest + GAP;
    }
    places
}

fn is_long(steps: &Layers, from: usize, to: usize) -> bool {
    let row = |step: usize| steps.row.get(step).copied().unwrap_or_default();
    row(to) > row(from) + 1
}

fn draw_phase(svg: &mut String, told: &Told, pack: &Pack, of: &Laid<'_>, (x, y): (f64, f64)) {
    let name = told.text(&format!("phase-{}", of.phase.id));
    let _ = writeln!(
        svg,
        "<g><rect class=\"phase\" x=\"{x:.1}\" y=\"{y:.1}\" width=\"{:.1}\" height=\"{:.1}\" rx=\"8\"/>\
         <text class=\"name\" x=\"{:.1}\" y=\"{:.1}\">{}</text>",
        of.wide,
        of.high,
        x + EDGE,
        y + 23.0,
        escaped(&name)
    );
    let corner = |step: usize| {
        let column = of.steps.column.get(step).copied().unwrap_or_default();
        let row = of.steps.row.get(step).copied().unwrap_or_default();
        (x + EDGE + number(column) * (STEP_WIDE + GAP), y + HEAD + number(row) * (STEP_HIGH + GAP))
    };
    let mut lanes = 0;
    let lanes_from = x + of.wide - EDGE;
    let long = of.steps.arrows.iter().filter(|(from, to)| is_long(&of.steps, *from, *to)).count();
    for (from, to) in &of.steps.arrows {
        let ((from_x, from_y), (to_x, to_y)) = (corner(*from), corner(*to));
        if is_long(&of.steps, *from, *to) {
            let lane = lanes_from - number(long - lanes) * LANE + LANE;
            lanes += 1;
            let (start, end) = (from_y + STEP_HIGH / 2.0, to_y + STEP_HIGH / 2.0);
            let _ = writeln!(
                svg,
                "<path class=\"arrow\" marker-end=\"url(#tip)\" d=\"M{:.1} {start:.1}H{lane:.1}V{end:.1}H{:.1}\"/>",
                from_x + STEP_WIDE,
                to_x + STEP_WIDE
            );
        } else {
            down(svg, (from_x + STEP_WIDE / 2.0, from_y + STEP_HIGH), (to_x + STEP_WIDE / 2.0, to_y));
        }
    }
    for (place, step) in of.phase.steps.iter().enumerate() {
        draw_step(svg, told, pack, of.phase, step, corner(place));
    }
    svg.push_str("</g>\n");
}

/// An arrow from one box down to the next.
fn down(svg: &mut String, (x, y): (f64, f64), (to_x, to_y): (f64, f64)) {
    let half = (to_y - y) / 2.0;
    let _ = writeln!(
        svg,
        "<path class=\"arrow\" marker-end=\"url(#tip)\" d=\"M{x:.1} {y:.1}C{x:.1} {:.1} {to_x:.1} {:.1} {to_x:.1} {to_y:.1}\"/>",
        y + half,
        to_y - half
    );
}

fn draw_step(svg: &mut String, told: &Told, pack: &Pack, phase: &Phase, step: &Step, (x, y): (f64, f64)) {
    let when = if step.when.is_empty() { "" } else { " when" };
    let _ = write!(
        svg,
        "<g><rect class=\"step{when}\" x=\"{x:.1}\" y=\"{y:.1}\" width=\"{STEP_WIDE}\" height=\"{STEP_HIGH}\" rx=\"5\"/>"
    );
    if step.alone {
        let (wide, high) = (STEP_WIDE - 6.0, STEP_HIGH - 6.0);
        let _ = write!(
            svg,
            "<rect class=\"hazard\" x=\"{:.1}\" y=\"{:.1}\" width=\"{wide}\" height=\"{high}\" rx=\"3\"/>",
            x + 3.0,
            y + 3.0
        );
    }
    let mut line = y + 20.0;
    for part in wrapped(&told.text(&format!("step-{}", step.id)), LETTERS, 2) {
        let _ = write!(svg, "<text class=\"title\" x=\"{:.1}\" y=\"{line:.1}\">{}</text>", x + 12.0, escaped(&part));
        line += 16.0;
    }
    let mut notes = vec![step.id.to_string()];
    let answers: Vec<_> = step.when.iter().map(|when| format!("{}={}", when.condition, when.option)).collect();
    if !answers.is_empty() {
        notes.push(told.fill("check-graph-when", &[("when", &answers.join(" / "))]));
    }
    // What comes before in other phases is told instead of drawn: the arrows would cross everything.
    let own = |id: &str| phase.steps.iter().any(|other| other.id.as_str() == id);
    let others: Vec<_> = step.after.iter().map(|id| id.as_str()).filter(|id| !own(id)).collect();
    if !others.is_empty() && others.iter().all(|id| pack.step(id).is_some()) {
        notes.push(told.fill("check-graph-after", &[("steps", &others.join(", "))]));
    }
    let note = wrapped(&notes.join(" · "), LETTERS + 8, 1).into_iter().next().unwrap_or_default();
    let _ = write!(
        svg,
        "<text class=\"note\" x=\"{:.1}\" y=\"{:.1}\">{}</text>",
        x + 12.0,
        y + STEP_HIGH - 22.0,
        escaped(&note)
    );
    if let Some(dwell) = step.dwell {
        let (least, most) = (duration(told, u64::from(dwell.least_s)), duration(told, u64::from(dwell.most_s)));
        let text = told.fill("check-graph-wait", &[("least", &least), ("most", &most)]);
        let (clock_x, clock_y) = (x + 17.0, y + STEP_HIGH - 11.0);
        let _ = write!(
            svg,
            "<circle class=\"clock\" cx=\"{clock_x:.1}\" cy=\"{clock_y:.1}\" r=\"5\"/>\
             <path class=\"clock\" d=\"M{clock_x:.1} {:.1}V{clock_y:.1}H{:.1}\"/>\
             <text class=\"note\" x=\"{:.1}\" y=\"{:.1}\">{}</text>",
            clock_y - 3.5,
            clock_x + 3.0,
            x + 28.0,
            y + STEP_HIGH - 7.0,
            escaped(&text)
        );
    }
    svg.push_str("</g>\n");
}

/// Words on at most so many lines; the last one ends in an ellipsis where they do not fit.
fn wrapped(text: &str, letters: usize, lines_max: usize) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= letters => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    let cut = lines.len() > lines_max;
    lines.truncate(lines_max);
    if let Some(last) = lines.last_mut().filter(|last| cut || last.chars().count() > letters) {
        let kept: String = last.chars().take(letters.saturating_sub(1)).collect();
        *last = format!("{}…", kept.trim_end());
    }
    lines
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// A count as a length; counts here are far below where that would lose anything.
fn number(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::MAX, f64::from)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn titles_that_are_too_long_end_in_an_ellipsis() {
        assert_eq!(wrapped("one two three", 8, 2), ["one two", "three"]);
        assert_eq!(wrapped("one two three four", 8, 2), ["one two", "three…"]);
        assert_eq!(wrapped("extraordinarily", 8, 1), ["extraor…"]);
    }
}
