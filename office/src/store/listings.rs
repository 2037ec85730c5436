//! Rows of the list of visits, worked out from the events and always rebuildable.

use rusqlite::{Connection, Row, params, params_from_iter, types::Value};

use super::StoreError;
use crate::ids::{Digest, VisitId};

/// The version of the code that works rows out. Raised when they mean something else; old rows are then made anew.
const MAKER: i64 = 2;

/// A visit as the list shows it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Listing {
    pub(crate) visit: VisitId,
    pub(crate) assignment: String,
    /// When its first event was written, by the device's clock.
    pub(crate) opened_ms: i64,
    pub(crate) offset_min: i32,
    pub(crate) site: String,
    /// The address.
    pub(crate) place: String,
    pub(crate) units: String,
    /// Whose device it came from.
    pub(crate) technician: String,
    /// A name of `State`.
    pub(crate) state: String,
    /// What a complete record would have beside.
    pub(crate) missing: u32,
    /// The chain breaks, the seal does not hold, or branches are kept.
    pub(crate) trouble: bool,
    /// Photographs of the visit, and how many of them are not here yet.
    pub(crate) photos: u32,
    pub(crate) waiting: u32,
}

/// A unit that a visit served.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct ListedUnit {
    pub(crate) letter: String,
    /// The unit in the register.
    pub(crate) asset: String,
    pub(crate) pack: String,
    /// Its share of the time on site; 0 where it is not known.
    pub(crate) minutes: u32,
    /// What the visit says about it, as `app::unit_history` writes it; none where the office cannot vouch for it.
    pub(crate) past: Option<String>,
}

/// From what a row was worked out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Basis {
    pub(crate) next: u64,
    pub(crate) sealed: bool,
    pub(crate) branches: u64,
}

/// Which rows are wanted. Empty texts want all.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Wanted {
    /// Words that must all be there, lower case.
    pub(crate) words: Vec<String>,
    pub(crate) state: String,
    pub(crate) trouble: bool,
    pub(crate) waiting: bool,
}

/// The columns that the list can be sorted by.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) enum Order {
    #[default]
    Date,
    Site,
    Technician,
    State,
    Missing,
    Waiting,
}

/// Visits whose row is missing or was worked out from something else than what is stored now.
pub(crate) fn stale(db: &Connection) -> Result<Vec<(VisitId, Basis)>, StoreError> {
    let sql = "SELECT id, next, sealed, branches FROM (
                   SELECT v.id, v.next, EXISTS (SELECT 1 FROM seal s WHERE s.visit = v.id) AS sealed,
                          (SELECT count(*) FROM branch b WHERE b.visit = v.id) AS branches
                   FROM visit v)
               WHERE NOT EXISTS (SELECT 1 FROM listing l WHERE l.visit = id AND l.at_next = next
                   AND l.at_sealed = sealed AND l.at_branches = branches AND l.maker = ?1)";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([MAKER], |row| {
        Ok((row.get(0)?, Basis { next: row.get(1)?, sealed: row.get(2)?, branches: row.get(3)? }))
    })?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Writes a row, the visit's units and its photographs. `row.photos` and `row.waiting` are counted on reading.
pub(crate) fn put(
    db: &Connection,
    row: &Listing,
    basis: Basis,
    units: &[ListedUnit],
    photos: &[Digest],
) -> Result<(), StoreError> {
    db.prepare_cached("DELETE FROM listing WHERE visit = ?1")?.execute([&row.visit])?;
    let sql = "INSERT INTO listing (visit, at_next, at_sealed, at_branches, maker, assignment, opened_ms, offset_min,
                   site, place, units, technician, state, missing, trouble, searched)
               VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16)";
    let searched = [&row.site, &row.place, &row.units, &row.technician].map(|text| text.to_lowercase()).join("\n");
    let searched = format!("{searched}\n{}", row.visit);
    db.prepare_cached(sql)?.execute(params![
        row.visit,
        basis.next,
        basis.sealed,
        basis.branches,
        MAKER,
        row.assignment,
        row.opened_ms,
        row.offset_min,
        row.site,
        row.place,
        row.units,
        row.technician,
        row.state,
        row.missing,
        row.trouble,
        searched
    ])?;
    let mut unit = db.prepare_cached(
        "INSERT INTO listed_unit (visit, letter, asset, pack, minutes, past) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
    )?;
    for ListedUnit { letter, asset, pack, minutes, past } in units {
        unit.execute(params![row.visit, letter, asset, pack, minutes, past])?;
    }
    let mut photo = db.prepare_cached("INSERT OR IGNORE INTO listed_photo (visit, digest) VALUES (?1, ?2)")?;
    for digest in photos {
        photo.execute(params![row.visit, digest])?;
    }
    Ok(())
}

/// Forgets the rows that show an assignment, so that they are made anew.
pub(crate) fn forget_assignment(db: &Connection, assignment: &str) -> Result<(), StoreError> {
    db.prepare_cached("DELETE FROM listing WHERE assignment = ?1")?.execute([assignment])?;
    Ok(())
}

/// Forgets a visit's row, so that it is made anew.
pub(crate) fn forget(db: &Connection, visit: &VisitId) -> Result<(), StoreError> {
    db.prepare_cached("DELETE FROM listing WHERE visit = ?1")?.execute([visit])?;
    Ok(())
}

/// Every visit with the time and zone of its beginning, the oldest first.
pub(crate) fn opened(db: &Connection) -> Result<Vec<(VisitId, i64, i32)>, StoreError> {
    let sql = "SELECT visit, opened_ms, offset_min FROM listing ORDER BY opened_ms, visit";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?)))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// What the visits to a unit say about it, the oldest first.
pub(crate) fn past(db: &Connection, asset: &str) -> Result<Vec<String>, StoreError> {
    let sql = "SELECT u.past FROM listed_unit u JOIN listing l ON l.visit = u.visit
               WHERE u.asset = ?1 AND u.past IS NOT NULL ORDER BY l.opened_ms, l.visit, u.letter";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map([asset], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

/// Minutes on site of the newest complete visits to units of one pack, the newest first.
pub(crate) fn minutes(db: &Connection, pack: &str, most: u32) -> Result<Vec<u32>, StoreError> {
    let sql = "SELECT u.minutes FROM listed_unit u JOIN listing l ON l.visit = u.visit
               WHERE u.pack = ?1 AND u.minutes > 0 AND l.state = 'complete'
               ORDER BY l.opened_ms DESC, l.visit LIMIT ?2";
    let mut query = db.prepare_cached(sql)?;
    let rows = query.query_map(params![pack, most], |row| row.get(0))?;
    Ok(rows.collect::<Result<_, _>>()?)
}

const PHOTOS: &str = "(SELECT count(*) FROM listed_photo p WHERE p.visit = l.visit)";
const WAITING: &str = "(SELECT count(*) FROM listed_photo p WHERE p.visit = l.visit AND NOT EXISTS
    (SELECT 1 FROM photo o WHERE o.digest = p.digest AND o.safe_ms IS NOT NULL))";

/// How many rows are wanted.
pub(crate) fn count(db: &Connection, wanted: &Wanted) -> Result<u32, StoreError> {
    let (condition, values) = conditions(wanted);
    let sql = format!("SELECT count(*) FROM listing l WHERE {condition}");
    Ok(db.prepare_cached(&sql)?.query_row(params_from_iter(values), |row| row.get(0))?)
}

/// The wanted rows of one page.
pub(crate) fn page(
    db: &Connection,
    wanted: &Wanted,
    order: Order,
    rising: bool,
    skip: u32,
    take: u32,
) -> Result<Vec<Listing>, StoreError> {
    let (condition, mut values) = conditions(wanted);
    values.extend([Value::from(take), Value::from(skip)]);
    let by = match order {
        Order::Date => "l.opened_ms",
        Order::Site => "l.site COLLATE NOCASE",
        Order::Technician => "l.technician COLLATE NOCASE",
        Order::State => "l.state",
        Order::Missing => "l.missing",
        Order::Waiting => "waiting",
    };
    let way = if rising { "ASC" } else { "DESC" };
    let sql = format!(
        "SELECT visit, assignment, opened_ms, offset_min, site, place, units, technician, state, missing, trouble,
                {PHOTOS} AS photos, {WAITING} AS waiting
         FROM listing l WHERE {condition} ORDER BY {by} {way}, l.opened_ms DESC, l.visit LIMIT ? OFFSET ?"
    );
    let mut query = db.prepare_cached(&sql)?;
    let rows = query.query_map(params_from_iter(values), read)?;
    Ok(rows.collect::<Result<_, _>>()?)
}

fn read(row: &Row<'_>) -> rusqlite::Result<Listing> {
    Ok(Listing {
        visit: row.get(0)?,
        assignment: row.get(1)?,
        opened_ms: row.get(2)?,
        offset_min: row.get(3)?,
        site: row.get(4)?,
        place: row.get(5)?,
        units: row.get(6)?,
        technician: row.get(7)?,
        state: row.get(8)?,
        missing: row.get(9)?,
        trouble: row.get(10)?,
        photos: row.get(11)?,
        waiting: row.get(12)?,
    })
}

/// The condition's text holds no value of the request: those are bound.
fn conditions(wanted: &Wanted) -> (String, Vec<Value>) {
    let mut parts = vec!["1".to_owned()];
    let mut values = Vec::new();
    for word in &wanted.words {
        parts.push("instr(l.searched, ?) > 0".into());
        values.push(Value::from(word.clone()));
    }
    if !wanted.state.is_empty() {
        parts.push("l.state = ?".into());
        values.push(Value::from(wanted.state.clone()));
    }
    if wanted.trouble {
        parts.push("l.trouble".into());
    }
    if wanted.waiting {
        parts.push(format!("{WAITING} > 0"));
    }
    (parts.join(" AND "), values)
}
