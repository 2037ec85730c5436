//! `coilside check-pack`: is a pack sound, is it safe, what does it come to, and how does it look.

mod draw;
mod layout;
mod report;
mod span;
mod words;

use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::{fs, iter};

use coilside_core::procedure::library::LoadedPack;
use coilside_core::procedure::read::{PackRead, read};
use coilside_core::words::WordsError;
use coilside_web::pack_folder;

use self::words::Told;

/// What to check, and how to tell of it.
#[derive(Clone, Debug)]
pub struct CheckPack {
    /// Folders, each a pack. Plain files among them are left aside, so that `packs/*` can be written.
    pub folders: Vec<PathBuf>,
    /// `en` or `es`.
    pub language: String,
    /// Where to draw the phases and steps: a file for one pack, a folder for several. None draws beside nothing.
    pub svg: Option<PathBuf>,
}

/// Why packs could not be checked at all.
#[derive(Debug, thiserror::Error)]
pub enum CheckError {
    /// Nothing to check.
    #[error("none of these is a folder; give the folder of a pack, with pack.toml in it")]
    NoFolder,
    /// A language that is not spoken.
    #[error(transparent)]
    Words(#[from] WordsError),
    /// Something could not be written.
    #[error("it could not be written: {0}")]
    Write(#[from] io::Error),
}

/// Checks packs and tells of each; true if all of them are sound and proved.
///
/// # Errors
/// Where there is no pack, or something cannot be written.
pub fn check(what: &CheckPack, out: &mut dyn Write) -> Result<bool, CheckError> {
    let folders: Vec<&PathBuf> = what.folders.iter().filter(|path| !path.is_file()).collect();
    if folders.is_empty() {
        return Err(CheckError::NoFolder);
    }
    let mut good = 0;
    for path in &folders {
        let read = read(&pack_folder::of(path));
        let told = Told::new(&what.language, &read)?;
        report::heading(out, &told, path, &read)?;
        report::faults(out, &told, path, &read)?;
        if let Some(loaded) = &read.loaded {
            good += 1;
            report::content(out, &told, loaded)?;
            if let Some(svg) = &what.svg {
                let file = svg_file(svg, loaded, folders.len() > 1);
                write_svg(&file, &draw::svg(&loaded.pack, &told))?;
                writeln!(out, "{}", told.fill("check-drawn", &[("file", &file.display().to_string())]))?;
            }
        }
        writeln!(out)?;
    }
    let told = Told::plain(&what.language)?;
    let counts = [("good", good.to_string()), ("all", folders.len().to_string())];
    let counts: Vec<(&str, &str)> = counts.iter().map(|(name, count)| (*name, count.as_str())).collect();
    writeln!(out, "{}", told.fill("check-end", &counts))?;
    Ok(good == folders.len())
}

/// The file to draw into: as given, or in the given folder under the pack's name.
fn svg_file(given: &Path, loaded: &LoadedPack, several: bool) -> PathBuf {
    let is_folder = several || given.is_dir() || given.extension().is_none();
    if is_folder { given.join(format!("{}.svg", loaded.pack.pack)) } else { given.to_owned() }
}

fn write_svg(file: &Path, svg: &str) -> io::Result<()> {
    if let Some(folder) = file.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        fs::create_dir_all(folder)?;
    }
    fs::write(file, svg)
}

/// The command's words with those of the pack, whether it was loaded or refused.
fn texts_of(read: &PackRead, language: &str) -> String {
    let own = read.words.get(language).or_else(|| read.words.get("en"));
    iter::once(words::of(language)).chain(own.map(String::as_str)).collect::<Vec<_>>().join("\n")
}
