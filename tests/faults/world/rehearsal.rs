//! Faults in a database of ours, from the outside: triggers let so many more rows be written, then refuse every further one.
//! A program whose next write fails and that is ended then is one that died at that write: the transaction did not happen.

use std::path::Path;

use rusqlite::Connection;

/// With what the triggers refuse.
pub(crate) const REFUSES: &str = "this write is rehearsed to fail";

/// Puts the triggers into a database, on each of its own tables.
pub(crate) fn set_up(db: &Connection) {
    let mut query = db
        .prepare(
            "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name <> 'rehearsal'",
        )
        .unwrap();
    let tables: Vec<String> = query.query_map([], |row| row.get(0)).unwrap().map(Result::unwrap).collect();
    db.execute_batch("CREATE TABLE IF NOT EXISTS rehearsal (left INTEGER NOT NULL)").unwrap();
    db.execute("INSERT INTO rehearsal SELECT -1 WHERE NOT EXISTS (SELECT 1 FROM rehearsal)", []).unwrap();
    for table in tables {
        for doing in ["INSERT", "UPDATE", "DELETE"] {
            db.execute_batch(&format!(
                "CREATE TRIGGER IF NOT EXISTS rehearsed_before_{table}_{doing} BEFORE {doing} ON {table}
                 WHEN (SELECT left FROM rehearsal) = 0 BEGIN SELECT RAISE(ABORT, '{REFUSES}'); END;
                 CREATE TRIGGER IF NOT EXISTS rehearsed_after_{table}_{doing} AFTER {doing} ON {table}
                 WHEN (SELECT left FROM rehearsal) > 0 BEGIN UPDATE rehearsal SET left = left - 1; END;"
            ))
            .unwrap();
        }
    }
}

/// So many more rows can be written; none: as many as anybody likes.
pub(crate) fn let_write(db: &Connection, rows: Option<u32>) {
    db.execute("UPDATE rehearsal SET left = ?1", [rows.map_or(-1, i64::from)]).unwrap();
}

/// Whether nothing more can be written.
pub(crate) fn has_come(db: &Connection) -> bool {
    db.query_row("SELECT left FROM rehearsal", [], |row| row.get::<_, i64>(0)).unwrap() == 0
}

/// The database with what stands in its log of writes, copied as it lies there: what a killed program leaves.
pub(crate) fn copy(folder: &Path, name: &str, to: &Path) {
    for tail in ["", "-wal"] {
        let file = format!("{name}{tail}");
        let _ = std::fs::remove_file(to.join(&file));
        if folder.join(&file).is_file() {
            std::fs::copy(folder.join(&file), to.join(&file)).unwrap();
        }
    }
}

/// Ends a program as a kill does: closing tidies the log of writes up, and a kill leaves it.
pub(crate) fn killed(folder: &Path, name: &str, close: impl FnOnce()) {
    let aside = coilside_tests::folder().unwrap();
    copy(folder, name, aside.path());
    close();
    for tail in ["", "-wal", "-shm"] {
        let _ = std::fs::remove_file(folder.join(format!("{name}{tail}")));
    }
    copy(aside.path(), name, folder);
}
