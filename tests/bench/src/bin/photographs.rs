//! Takes in photographs for the tests and benches in Python: names of files on stdin, a line each. Each is put into the shelf
//! in the folder given, taken in as at the door, and answered with a line of JSON: what it tells, or why it was refused; the
//! nanoseconds that it took from the file to stored, judged and previewed; and the most memory that the process held so far.
//!
//! `photographs FOLDER [UTC_MS OFFSET_MIN] <names`

use std::error::Error;
use std::io::Write as _;
use std::path::Path;

use coilside_core::evidence::prepare;
use coilside_core::now::Now;
use coilside_core::store::shelf::FolderShelf;
use serde_json::json;

fn main() -> Result<(), Box<dyn Error>> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [folder, rest @ ..] = words.as_slice() else { return Err("which folder?".into()) };
    let number = |at: usize| rest.get(at).map_or(Ok(0), |word| word.parse::<i64>());
    let now = Now { utc_ms: number(0)?, offset_min: number(1)? as i32, mono_ms: 0, mono_epoch: "a".into() };
    let shelf = FolderShelf::new(Path::new(folder))?;
    for name in std::io::stdin().lines() {
        let incoming = shelf.incoming_path("photograph")?;
        std::fs::copy(name?, &incoming)?;
        let begun = std::time::Instant::now();
        let prepared = prepare(&shelf, "photograph", false, None, &now);
        let ns = begun.elapsed().as_nanos() as u64;
        let answer = match prepared {
            Ok(prepared) => json!({
                "digest": prepared.digest,
                "media": prepared.media,
                "facts": prepared.facts,
                "flags": prepared.flags,
                "preview": shelf.preview_path(&prepared.digest),
                "original": shelf.original_path(&prepared.digest),
                "ns": ns,
                "held_kb": held_kb()?,
            }),
            Err(error) => json!({ "refused": error.to_string(), "held_kb": held_kb()? }),
        };
        let mut out = std::io::stdout().lock();
        writeln!(out, "{answer}")?;
        out.flush()?;
    }
    Ok(())
}

/// The most memory that this process held, kilobytes, as Linux counts it.
fn held_kb() -> Result<u64, Box<dyn Error>> {
    let status = std::fs::read_to_string("/proc/self/status")?;
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:")).ok_or("no VmHWM")?;
    Ok(line.trim().trim_end_matches(" kB").parse()?)
}
