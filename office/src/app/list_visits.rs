//! The list of visits: searched, filtered, sorted, in pages.

use coilside_core::round::used::time;

use super::library::Library;
use super::record::{self, Record, State};
use super::unit_history;
use crate::ids::Digest;
use crate::store::listings::{self, ListedUnit, Listing, Order, Wanted};
use crate::store::{Store, StoreError};

/// Rows of one page.
pub(crate) const PAGE_ROWS: u32 = 50;

/// What is asked for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Question {
    /// As typed.
    pub(crate) search: String,
    pub(crate) show: Show,
    pub(crate) order: Order,
    pub(crate) rising: bool,
    /// From 1.
    pub(crate) page: u32,
}

/// Which visits are shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Show {
    #[default]
    All,
    Only(State),
    /// Something to look at.
    Trouble,
    /// Photographs have not come yet.
    Waiting,
}

/// What is shown.
#[derive(Clone, Debug)]
pub(crate) struct VisitList {
    pub(crate) rows: Vec<Listing>,
    /// All that fit the question, on all pages.
    pub(crate) found: u32,
    /// The page shown, and how many there are.
    pub(crate) page: u32,
    pub(crate) pages: u32,
    /// How many visits each filter would show without a search.
    pub(crate) counts: Vec<(Show, u32)>,
}

impl Show {
    /// Every filter, in the order of the page.
    pub(crate) fn all() -> impl Iterator<Item = Show> {
        let states = State::ALL.into_iter().map(Show::Only);
        [Show::All].into_iter().chain(states).chain([Show::Waiting, Show::Trouble])
    }

    /// The name in addresses; empty for all.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Show::All => "",
            Show::Only(state) => state.name(),
            Show::Trouble => "trouble",
            Show::Waiting => "waiting",
        }
    }

    pub(crate) fn parse(name: &str) -> Self {
        Self::all().find(|show| show.name() == name).unwrap_or_default()
    }

    fn wanted(self, search: &str) -> Wanted {
        Wanted {
            words: search.split_whitespace().map(str::to_lowercase).collect(),
            state: if let Show::Only(state) = self { state.name().into() } else { String::new() },
            trouble: self == Show::Trouble,
            waiting: self == Show::Waiting,
        }
    }
}

/// Answers a question about the visits. Rows that are behind are worked out anew first.
pub(crate) fn list(store: &Store, library: &Library, question: &Question) -> Result<VisitList, StoreError> {
    refresh(store, library)?;
    store.read(|db| {
        let wanted = question.show.wanted(&question.search);
        let found = listings::count(db, &wanted)?;
        let pages = found.div_ceil(PAGE_ROWS).max(1);
        let page = question.page.clamp(1, pages);
        let skip = (page - 1) * PAGE_ROWS;
        let rows = listings::page(db, &wanted, question.order, question.rising, skip, PAGE_ROWS)?;
        let counts = Show::all().map(|show| Ok((show, listings::count(db, &show.wanted(""))?)));
        Ok(VisitList { rows, found, page, pages, counts: counts.collect::<Result<_, StoreError>>()? })
    })
}

/// Works out anew what is behind.
pub(crate) fn refresh(store: &Store, library: &Library) -> Result<(), StoreError> {
    if store.read(listings::stale)?.is_empty() {
        return Ok(());
    }
    store.write(|db| {
        for (visit, basis) in listings::stale(db)? {
            if let Some(record) = record::read_from(db, library, &visit)? {
                let photos: Vec<Digest> =
                    record.digests().iter().filter_map(|digest| Digest::parse(digest.as_str()).ok()).collect();
                listings::put(db, &row(&record), basis, &units(&record), &photos)?;
            }
        }
        Ok(())
    })
}

fn row(record: &Record<'_>) -> Listing {
    let opened = record.visit.opened.as_ref();
    let site = record.assignment.as_ref().map(|assignment| &assignment.site);
    Listing {
        visit: record.id.clone(),
        assignment: record.visit.assignment.clone(),
        opened_ms: opened.map_or(0, |now| now.utc_ms),
        offset_min: opened.map_or(0, |now| now.offset_min),
        site: site.map(|site| site.name.clone()).unwrap_or_default(),
        place: site.map(|site| site.address.clone()).unwrap_or_default(),
        units: record.units(),
        technician: record.technician.clone(),
        state: record.state().name().into(),
        missing: u32::try_from(record.missing()).unwrap_or(u32::MAX),
        trouble: record.trouble(),
        photos: 0,
        waiting: 0,
    }
}

/// The units of a visit. Its time on site belongs to them in equal parts.
fn units(record: &Record<'_>) -> Vec<ListedUnit> {
    let runs = &record.visit.runs;
    let share = time(&record.visit).amount() / runs.len().max(1) as f64;
    let listed = runs.iter().map(|(letter, run)| ListedUnit {
        letter: letter.to_string(),
        asset: run.asset.clone(),
        pack: run.pack.clone(),
        minutes: share.round() as u32,
        past: unit_history::past(record, run).and_then(|past| serde_json::to_string(&past).ok()),
    });
    listed.collect()
}
