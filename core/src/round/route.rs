//! The order of the day: fixed times win, the rest by the way. Distances are straight lines on the ellipsoid times a
//! detour, not roads: they tell an order, not an arrival to the minute.
//!
//! Visits with a fixed time stand in the order of their times. The others are put in one by one where the day then ends
//! soonest, but only where no fixed time is missed that could be kept; then each is tried once more at every other place
//! until none makes the day shorter. The same visits give the same order, however they were listed.

use uom::si::length::kilometer;

use crate::science::place::{Place, distance};

/// How much longer a road is than the straight line: common practice, no source (1.2 to 1.4 is told for towns and country).
pub const DETOUR: f64 = 1.3;
/// How fast a van gets along between houses, km/h: common practice, no source.
pub const SPEED_KM_H: f64 = 40.0;
/// Rounds of moving visits about; each makes the day shorter, so it ends by itself long before.
const ROUNDS_MOST: usize = 100;
/// A day is shorter only where it ends so many minutes sooner, or ends as soon with so many kilometres less.
const LESS: f64 = 1e-6;

/// A visit to put into the day.
#[derive(Clone, Debug, PartialEq)]
pub struct Stop {
    /// Its name: decides where nothing else does.
    pub id: String,
    /// Where.
    pub place: Place,
    /// How long it takes, minutes.
    pub minutes: u32,
    /// Not to begin before, and at the latest, minutes since midnight, where a time was agreed.
    pub window_min: Option<(u32, u32)>,
}

/// A visit in the order of the day. Minutes since midnight.
#[derive(Clone, Debug, PartialEq)]
pub struct Leg {
    /// Which.
    pub id: String,
    /// The way there with the detour, km; none for the first where nobody knows where the van stands.
    pub km: Option<f64>,
    /// When one is there.
    pub arrive_min: f64,
    /// When work begins: on arrival, or at the fixed time.
    pub begin_min: f64,
    /// When one leaves.
    pub leave_min: f64,
    /// So many minutes after the latest that was agreed; 0 where it is kept.
    pub late_min: f64,
}

/// The order of a day that begins at `start` at `from_min` minutes since midnight.
#[must_use]
pub fn order(start: Option<Place>, from_min: u32, stops: &[Stop]) -> Vec<Leg> {
    let mut stops: Vec<&Stop> = stops.iter().collect();
    stops.sort_by(|a, b| a.id.cmp(&b.id));
    let day = Day { ways: ways(start, &stops), stops, from_min: f64::from(from_min) };
    let (mut fixed, mut free): (Vec<usize>, Vec<usize>) =
        (0..day.stops.len()).partition(|at| day.window(*at).is_some());
    // Sorting keeps the order of the names among equal times.
    fixed.sort_by_key(|at| day.window(*at));
    let late = day.late(&fixed);
    let mut order = fixed;
    while !free.is_empty() {
        let best = free
            .iter()
            .enumerate()
            .flat_map(|(at, stop)| (0..=order.len()).map(move |place| (at, *stop, place)))
            .filter_map(|(at, stop, place)| {
                let tried = with(&order, stop, place);
                day.keeps(&tried, &late).then(|| (day.cost(&tried), at, tried))
            })
            .reduce(|best, other| if shorter(other.0, best.0) { other } else { best });
        match best {
            Some((_, at, tried)) => {
                free.remove(at);
                order = tried;
            }
            // Cannot happen: after the last fixed time there is always room. Kept so that no visit is ever dropped.
            None => order.append(&mut free),
        }
    }
    day.legs(&day.improved(order, &late))
}

/// The way between two places with the detour, km; none where a place is none.
#[must_use]
pub fn way_km(from: Place, to: Place) -> Option<f64> {
    Some(distance(from, to).ok()?.get::<kilometer>() * DETOUR)
}

/// From the start (row 0) and from each stop (row + 1) to each stop.
fn ways(start: Option<Place>, stops: &[&Stop]) -> Vec<Vec<Option<f64>>> {
    let row = |from: Option<Place>| stops.iter().map(|to| way_km(from?, to.place)).collect();
    [start].into_iter().chain(stops.iter().map(|stop| Some(stop.place))).map(row).collect()
}

fn with(order: &[usize], stop: usize, place: usize) -> Vec<usize> {
    let mut tried = order.to_vec();
    tried.insert(place.min(order.len()), stop);
    tried
}

fn shorter((end, km): (f64, f64), (best_end, best_km): (f64, f64)) -> bool {
    end < best_end - LESS || (end < best_end + LESS && km < best_km - LESS)
}

struct Day<'a> {
    stops: Vec<&'a Stop>,
    ways: Vec<Vec<Option<f64>>>,
    from_min: f64,
}

impl Day<'_> {
    fn window(&self, stop: usize) -> Option<(u32, u32)> {
        self.stops.get(stop)?.window_min
    }

    fn legs(&self, order: &[usize]) -> Vec<Leg> {
        let (mut legs, mut row, mut clock) = (Vec::with_capacity(order.len()), 0, self.from_min);
        for at in order {
            let Some(stop) = self.stops.get(*at) else { continue };
            let km = self.ways.get(row).and_then(|row| row.get(*at)).copied().flatten();
            let arrive_min = clock + km.unwrap_or_default() / SPEED_KM_H * 60.0;
            let (earliest, latest) =
                stop.window_min.map_or((0.0, f64::INFINITY), |(from, until)| (f64::from(from), f64::from(until)));
            let begin_min = arrive_min.max(earliest);
            let leave_min = begin_min + f64::from(stop.minutes);
            let late_min = (begin_min - latest).max(0.0);
            legs.push(Leg { id: stop.id.clone(), km, arrive_min, begin_min, leave_min, late_min });
            (row, clock) = (at + 1, leave_min);
        }
        legs
    }

    /// By how much each fixed time is missed, by stop.
    fn late(&self, order: &[usize]) -> Vec<(usize, f64)> {
        let legs = self.legs(order);
        let pairs = order.iter().copied().zip(legs.iter().map(|leg| leg.late_min));
        pairs.filter(|(at, _)| self.window(*at).is_some()).collect()
    }

    /// No fixed time is missed by more than without the other visits, and they keep their order.
    fn keeps(&self, order: &[usize], late: &[(usize, f64)]) -> bool {
        let now = self.late(order);
        now.len() == late.len()
            && now.iter().zip(late).all(|((at, is), (was_at, was))| at == was_at && *is <= was + LESS)
    }

    /// When the day ends, and the way in all.
    fn cost(&self, order: &[usize]) -> (f64, f64) {
        let legs = self.legs(order);
        let km = legs.iter().filter_map(|leg| leg.km).sum();
        (legs.last().map_or(self.from_min, |leg| leg.leave_min), km)
    }

    /// Moves one visit at a time, and turns stretches round, while that makes the day shorter.
    fn improved(&self, mut order: Vec<usize>, late: &[(usize, f64)]) -> Vec<usize> {
        for _ in 0..ROUNDS_MOST {
            let best = self
                .neighbours(&order)
                .filter(|tried| self.keeps(tried, late))
                .map(|tried| (self.cost(&tried), tried))
                .reduce(|best, other| if shorter(other.0, best.0) { other } else { best });
            match best {
                Some((cost, tried)) if shorter(cost, self.cost(&order)) => order = tried,
                _ => break,
            }
        }
        order
    }

    fn neighbours<'o>(&self, order: &'o [usize]) -> impl Iterator<Item = Vec<usize>> + 'o {
        let n = order.len();
        let moved = (0..n).flat_map(move |from| {
            (0..n).filter(move |to| *to != from).map(move |to| {
                let mut tried = order.to_vec();
                let stop = tried.remove(from);
                tried.insert(to, stop);
                tried
            })
        });
        let turned = (0..n).flat_map(move |from| {
            (from + 2..=n).map(move |to| {
                let mut tried = order.to_vec();
                if let Some(stretch) = tried.get_mut(from..to) {
                    stretch.reverse();
                }
                tried
            })
        });
        moved.chain(turned)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn stop(id: &str, east: f64, minutes: u32, window_min: Option<(u32, u32)>) -> Stop {
        Stop { id: id.into(), place: Place { latitude: 0.0, longitude: east }, minutes, window_min }
    }

    fn ids(legs: &[Leg]) -> Vec<&str> {
        legs.iter().map(|leg| leg.id.as_str()).collect()
    }

    #[test]
    fn without_fixed_times_the_way_decides() {
        let start = Some(Place { latitude: 0.0, longitude: 0.0 });
        let stops = [stop("a", 0.3, 60, None), stop("b", 0.1, 60, None), stop("c", 0.2, 60, None)];
        assert_eq!(ids(&order(start, 480, &stops)), ["b", "c", "a"]);
    }

    #[test]
    fn a_fixed_time_wins_over_the_way() {
        let start = Some(Place { latitude: 0.0, longitude: 0.0 });
        // The far one is agreed for half past eight: it comes first although the near one lies on the way.
        let stops = [stop("far", 0.2, 60, Some((510, 525))), stop("near", 0.1, 60, None)];
        let legs = order(start, 480, &stops);
        assert_eq!(ids(&legs), ["far", "near"]);
        // 0.2° of the equator are 22.264 km (geographiclib); with the detour 28.943 km, at 40 km/h 43.4 minutes.
        assert!((legs[0].km.unwrap() - 28.943).abs() < 1e-3, "{legs:?}");
        assert!((legs[0].arrive_min - (480.0 + 43.415)).abs() < 1e-2);
        assert!(legs[0].late_min == 0.0 && legs[0].begin_min == legs[0].arrive_min);
        // Later in the day there is time for the near one before.
        let later = [stop("far", 0.2, 60, Some((700, 720))), stop("near", 0.1, 60, None)];
        assert_eq!(ids(&order(start, 480, &later)), ["near", "far"]);
    }

    #[test]
    fn a_time_that_cannot_be_kept_is_told_and_makes_no_other_late() {
        let start = Some(Place { latitude: 0.0, longitude: 0.0 });
        let stops = [stop("a", 1.0, 60, Some((490, 500))), stop("b", 0.0, 30, None)];
        let legs = order(start, 480, &stops);
        assert_eq!(ids(&legs), ["a", "b"]);
        assert!(legs[0].late_min > 100.0);
    }

    #[test]
    fn a_day_without_a_known_start_begins_where_it_is_best() {
        let legs = order(None, 480, &[stop("b", 0.1, 30, None), stop("a", 0.0, 30, None)]);
        assert_eq!((legs[0].km, legs[0].arrive_min), (None, 480.0));
        assert!(legs[1].km.is_some());
        assert_eq!(order(None, 480, &[]), []);
    }

    fn any_stop() -> impl Strategy<Value = Stop> {
        (0..1000u32, -0.3..0.3f64, -0.3..0.3f64, 0..120u32, prop::option::of((480..1000u32, 0..90u32))).prop_map(
            |(id, latitude, longitude, minutes, window)| Stop {
                id: format!("{id:04}"),
                place: Place { latitude, longitude },
                minutes,
                window_min: window.map(|(from, wide)| (from, from + wide)),
            },
        )
    }

    proptest! {
        #[test]
        fn no_fixed_time_is_missed_that_the_fixed_ones_alone_would_keep(stops in prop::collection::vec(any_stop(), 0..8)) {
            let mut stops = stops;
            stops.sort_by(|a, b| a.id.cmp(&b.id));
            stops.dedup_by(|a, b| a.id == b.id);
            let start = Some(Place { latitude: 0.0, longitude: 0.0 });
            let fixed: Vec<Stop> = stops.iter().filter(|stop| stop.window_min.is_some()).cloned().collect();
            let (alone, all) = (order(start, 480, &fixed), order(start, 480, &stops));
            prop_assert_eq!(all.len(), stops.len());
            for leg in &alone {
                let with = all.iter().find(|other| other.id == leg.id).unwrap();
                prop_assert!(with.late_min <= leg.late_min + 1e-6, "{} {}", with.late_min, leg.late_min);
            }
            for pair in all.windows(2) {
                prop_assert!(pair[0].leave_min <= pair[1].arrive_min + 1e-9);
            }
        }

        #[test]
        fn the_order_does_not_depend_on_how_the_visits_were_listed(stops in prop::collection::vec(any_stop(), 0..7), turn in 0..7usize) {
            let mut stops = stops;
            stops.sort_by(|a, b| a.id.cmp(&b.id));
            stops.dedup_by(|a, b| a.id == b.id);
            let mut other = stops.clone();
            other.reverse();
            if !other.is_empty() {
                let turn = turn % other.len();
                other.rotate_left(turn);
            }
            prop_assert_eq!(order(None, 480, &stops), order(None, 480, &other));
        }
    }
}
