//! What comes before what: nothing waits for itself, and what is compared is taken in its order.

use std::collections::{BTreeMap, BTreeSet};

use super::fault::Found;
use super::names::paths;
use crate::procedure::pack::Pack;

/// Circles, and pictures or readings taken in the wrong order.
pub(super) fn check(pack: &Pack) -> Vec<Found> {
    let mut found = Vec::new();
    let phases: Vec<_> = pack
        .phases
        .iter()
        .enumerate()
        .map(|(number, phase)| {
            let after = phase.after.iter().map(|id| id.as_str()).collect();
            (phase.id.as_str(), format!("phase[{number}].after"), after)
        })
        .collect();
    found.extend(circle(&phases));
    let steps: Vec<_> = paths(pack)
        .map(|(path, step)| {
            let after = step.after.iter().map(|id| id.as_str()).collect();
            (step.id.as_str(), format!("{path}.after"), after)
        })
        .collect();
    found.extend(circle(&steps));

    // The place in the document at which something is first taken: steps are offered in that order.
    let first = |takes: &dyn Fn(&crate::procedure::pack::Step) -> bool| pack.steps().position(|(_, step)| takes(step));
    for (number, shot) in pack.shots.iter().enumerate() {
        let Some(before) = &shot.before else { continue };
        let earlier = first(&|step| step.shots.contains(before));
        let later = first(&|step| step.shots.contains(&shot.id));
        if earlier.zip(later).is_some_and(|(earlier, later)| earlier > later) {
            let values = vec![("id", shot.id.to_string()), ("before", before.to_string())];
            found.push(Found::new(format!("shot[{number}].before"), "shot-order", values));
        }
    }
    for (number, reading) in pack.readings.iter().enumerate() {
        let Some(before) = &reading.as_found else { continue };
        let earlier = first(&|step| step.readings.contains(before));
        let later = first(&|step| step.readings.contains(&reading.id));
        if earlier.zip(later).is_some_and(|(earlier, later)| earlier > later) {
            let values = vec![("id", reading.id.to_string()), ("before", before.to_string())];
            found.push(Found::new(format!("reading[{number}].as-found"), "reading-order", values));
        }
    }
    found
}

/// One finding for a circle, if there is one: whatever waits for itself by way of others.
fn circle(nodes: &[(&str, String, Vec<&str>)]) -> Option<Found> {
    let after: BTreeMap<&str, &Vec<&str>> = nodes.iter().map(|(id, _, after)| (*id, after)).collect();
    for (id, path, _) in nodes {
        let mut seen = BTreeSet::new();
        let mut todo: Vec<(&str, Vec<&str>)> = vec![(id, vec![id])];
        while let Some((at, way)) = todo.pop() {
            for next in after.get(at).into_iter().flat_map(|after| after.iter()) {
                if next == id {
                    let ring: Vec<_> = way.iter().chain([id]).copied().collect();
                    return Some(Found::new(path.clone(), "circle", vec![("ring", ring.join(" → "))]));
                }
                if seen.insert(*next) {
                    todo.push((next, way.iter().copied().chain([*next]).collect()));
                }
            }
        }
    }
    None
}
