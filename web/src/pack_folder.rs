//! Packs out of folders: the files as they lie there. What they mean is the core's to say.

use std::fs::{self, File};
use std::io::Read as _;
use std::path::{Path, PathBuf};

use coilside_core::procedure::read::{FILE_BYTES_MAX, PackFile, PackFolder, TOML};

/// The pack in a folder: `pack.toml` and every Fluent file. A file that cannot be read is handed on as one that is not
/// there, and the core says what is missing.
#[must_use]
pub fn of(folder: &Path) -> PackFolder {
    let mut paths: Vec<PathBuf> = fs::read_dir(folder)
        .map(|entries| entries.filter_map(|entry| Some(entry.ok()?.path())).filter(|path| is_of_pack(path)).collect())
        .unwrap_or_default();
    paths.sort();
    let files = paths.iter().filter_map(|path| {
        let name = path.file_name()?.to_str()?.to_owned();
        Some(PackFile { name, bytes: bytes_of(path)? })
    });
    PackFolder { from: folder.display().to_string(), files: files.collect() }
}

/// Every pack in a folder of packs: each folder in it that holds a `pack.toml` or words. By name, so that the order is
/// the same everywhere.
///
/// # Errors
/// The folder cannot be read.
pub fn all_in(packs: &Path) -> std::io::Result<Vec<PackFolder>> {
    let mut folders = Vec::new();
    for entry in fs::read_dir(packs)? {
        let path = entry?.path();
        if path.is_dir() {
            folders.push(path);
        }
    }
    folders.sort();
    Ok(folders.iter().map(|path| of(path)).filter(|folder| !folder.files.is_empty()).collect())
}

fn is_of_pack(path: &Path) -> bool {
    let named = path.file_name().is_some_and(|name| name == TOML);
    path.is_file() && (named || path.extension().is_some_and(|extension| extension == "ftl"))
}

fn bytes_of(path: &Path) -> Option<Vec<u8>> {
    let mut bytes = Vec::new();
    // One byte more than may be, so that the core sees that it is too much.
    let most = u64::try_from(FILE_BYTES_MAX).ok()?.saturating_add(1);
    File::open(path).ok()?.take(most).read_to_end(&mut bytes).ok()?;
    Some(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_folder_with_files_of_a_pack_is_one_and_other_files_are_left_alone() {
        let packs = tempfile::tempdir().unwrap();
        for (folder, file) in [("b", "pack.toml"), ("a", "en.ftl"), ("notes", "todo.txt")] {
            fs::create_dir(packs.path().join(folder)).unwrap();
            fs::write(packs.path().join(folder).join(file), "x").unwrap();
        }
        fs::write(packs.path().join("b/picture.png"), "x").unwrap();
        let found = all_in(packs.path()).unwrap();
        let names: Vec<Vec<&str>> =
            found.iter().map(|folder| folder.files.iter().map(|file| file.name.as_str()).collect()).collect();
        assert_eq!(names, [["en.ftl"], ["pack.toml"]]);
        assert!(found[0].from.ends_with("/a"), "{}", found[0].from);
    }
}
