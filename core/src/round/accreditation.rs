//! What the technician may do, until when, and which visits a lapse means.

use chrono::NaiveDate;

use super::assignment::Assignment;
use super::technician::{Accreditation, Technician};
use crate::science::calendar::{days_between, parse_date};
use crate::words::Words;

/// From so many days before it lapses an accreditation is told: time for a course (common practice, no source).
pub const SOON_DAYS: i64 = 60;

/// The technician's accreditations; none where they are not known here.
pub type Held<'a> = Option<&'a [Accreditation]>;

/// What the technician holds. Of one who is nobody in particular nothing is known.
#[must_use]
pub fn held(technician: &Technician) -> Held<'_> {
    let unknown = technician.name.is_empty() && technician.accreditations.is_empty();
    (!unknown).then_some(technician.accreditations.as_slice())
}

/// Whether an accreditation holds on a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Holding {
    /// For good.
    Always,
    /// Until and with this day, so many days from the one asked for.
    Until {
        /// Its last day.
        on: NaiveDate,
        /// Days left.
        days: i64,
    },
    /// This was its last day, so many days before the one asked for.
    Lapsed {
        /// Its last day.
        on: NaiveDate,
        /// Days since.
        days: i64,
    },
    /// The technician has none of that name, or one whose last day cannot be read.
    None,
    /// Nobody said which accreditations there are.
    NotKnown,
}

/// Whether the accreditation of that name holds on a day. Of several of one name the last one counts.
#[must_use]
pub fn holding(held: Held<'_>, name: &str, day: NaiveDate) -> Holding {
    let Some(held) = held else { return Holding::NotKnown };
    let of_name = || held.iter().filter(|one| one.name == name);
    if of_name().any(|one| one.valid_until.is_empty()) {
        return Holding::Always;
    }
    let ends = of_name().filter_map(|one| parse_date(&one.valid_until).ok());
    match ends.max() {
        None => Holding::None,
        Some(on) => match days_between(day, on) {
            days @ 0.. => Holding::Until { on, days },
            days => Holding::Lapsed { on, days: -days },
        },
    }
}

/// An accreditation that lapsed or lapses soon, or is not there, with the sites whose terms ask for it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lapse {
    /// Its name.
    pub name: String,
    /// How it stands.
    pub holding: Holding,
    /// The sites, in the order of the assignments.
    pub sites: Vec<String>,
}

/// What is to be told of accreditations before the round: those that some visit needs and that lapsed, lapse soon or are
/// not there; and those that lapse although no visit of these needs them.
#[must_use]
pub fn lapses(held: Held<'_>, assignments: &[&Assignment], today: NaiveDate) -> Vec<Lapse> {
    let Some(accreditations) = held else { return Vec::new() };
    let needed = |name: &str| -> Vec<String> {
        let needs = |assignment: &&&Assignment| {
            let mut terms = assignment.units.iter().filter_map(|unit| unit.terms.as_ref());
            terms.any(|terms| terms.accreditations.iter().any(|needed| needed == name))
        };
        assignments.iter().filter(needs).map(|assignment| assignment.site.name.clone()).collect()
    };
    let asked = assignments
        .iter()
        .flat_map(|assignment| &assignment.units)
        .filter_map(|unit| unit.terms.as_ref())
        .flat_map(|terms| terms.accreditations.iter().cloned());
    let mut names: Vec<String> = asked.chain(accreditations.iter().map(|one| one.name.clone())).collect();
    names.sort();
    names.dedup();
    let told = |holding: &Holding| match holding {
        Holding::Always => false,
        Holding::Until { days, .. } => *days <= SOON_DAYS,
        Holding::Lapsed { .. } | Holding::None | Holding::NotKnown => true,
    };
    names
        .into_iter()
        .map(|name| Lapse { holding: holding(held, &name, today), sites: needed(&name), name })
        .filter(|lapse| told(&lapse.holding))
        .collect()
}

/// A lapse in words, with the visits that it means.
#[must_use]
pub fn told(lapse: &Lapse, words: &Words) -> String {
    let name = lapse.name.as_str();
    let is = match lapse.holding {
        Holding::Until { on, days } => {
            words.fill("lapse-soon", &[("name", name), ("on", &on.to_string()), ("days", &days.to_string())])
        }
        Holding::Lapsed { on, .. } => words.fill("lapse-lapsed", &[("name", name), ("on", &on.to_string())]),
        Holding::Always | Holding::None | Holding::NotKnown => words.fill("lapse-none", &[("name", name)]),
    };
    let means = match (lapse.sites.is_empty(), lapse.holding) {
        (true, _) => "lapse-means-nothing",
        (false, Holding::Until { .. }) => "lapse-means-soon",
        (false, _) => "lapse-means",
    };
    format!("{is} {}", words.fill(means, &[("sites", &lapse.sites.join(", "))]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::round::terms::Terms;
    use crate::round::{AssignedUnit, Site};

    fn assignment(site: &str, needs: &[&str]) -> Assignment {
        let terms = Terms { accreditations: needs.iter().map(|name| (*name).into()).collect(), ..Terms::default() };
        Assignment {
            id: site.into(),
            site: Site { name: site.into(), ..Site::default() },
            units: vec![AssignedUnit { terms: Some(terms), ..AssignedUnit::default() }],
            ..Assignment::default()
        }
    }

    #[test]
    fn a_lapse_is_told_with_the_visits_that_it_means() {
        let today = parse_date("2026-05-04").unwrap();
        let card = |name: &str, expires: &str| Accreditation {
            name: name.into(),
            number: String::new(),
            valid_until: expires.into(),
        };
        let held = [card("Height", "2026-05-03"), card("Electrics", "2026-06-01"), card("Gas", "2027-06-01")];
        let (mill, quay) = (assignment("Mill", &["Height", "Gas"]), assignment("Quay", &["Height", "Welding"]));
        let told = lapses(Some(&held), &[&mill, &quay], today);
        let said: Vec<(&str, usize)> = told.iter().map(|lapse| (lapse.name.as_str(), lapse.sites.len())).collect();
        assert_eq!(said, [("Electrics", 0), ("Height", 2), ("Welding", 1)]);
        assert_eq!(told[1].holding, Holding::Lapsed { on: parse_date("2026-05-03").unwrap(), days: 1 });
        assert_eq!(told[2].holding, Holding::None);
        assert!(lapses(None, &[&mill], today).is_empty());
    }

    #[test]
    fn the_last_day_still_counts_and_the_newest_card_wins() {
        let today = parse_date("2026-05-04").unwrap();
        let card =
            |expires: &str| Accreditation { name: "Gas".into(), number: String::new(), valid_until: expires.into() };
        let on = |held: &[Accreditation]| holding(Some(held), "Gas", today);
        assert!(matches!(on(&[card("2026-05-04")]), Holding::Until { days: 0, .. }));
        assert!(matches!(on(&[card("2026-05-03"), card("2027-05-03")]), Holding::Until { .. }));
        assert_eq!(on(&[card("never")]), Holding::None);
        assert_eq!(on(&[card("2025-01-01"), card("")]), Holding::Always);
    }
}
