//! The exported functions as the sources of the core list them: nothing can be exported without standing here.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

const ATTRIBUTE: &str = "#[uniffi::export]";

/// Each function's name with the names of its arguments.
pub(crate) fn exported() -> BTreeMap<String, Vec<String>> {
    let mut functions = BTreeMap::new();
    read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../core/src/science"), &mut functions);
    assert!(functions.len() >= 34, "only {} exported functions were found", functions.len());
    functions
}

fn read(folder: &Path, functions: &mut BTreeMap<String, Vec<String>>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            read(&path, functions);
            continue;
        }
        let source = fs::read_to_string(&path).unwrap();
        // Not one may hide behind another spelling.
        assert_eq!(source.matches("uniffi::export").count(), source.matches(ATTRIBUTE).count(), "{}", path.display());
        for after in source.split(ATTRIBUTE).skip(1) {
            let (name, arguments) =
                signature(after).unwrap_or_else(|| panic!("{}: no function after it", path.display()));
            assert!(functions.insert(name.clone(), arguments).is_none(), "{name} is exported twice");
        }
    }
}

/// The name of the function that a text begins with, and its arguments' names.
fn signature(text: &str) -> Option<(String, Vec<String>)> {
    let (_, rest) = text.split_once("pub fn ")?;
    let (name, rest) = rest.split_once('(')?;
    let (arguments, _) = rest.split_once(')')?;
    let arguments = arguments.split(',').filter_map(|argument| argument.split_once(':'));
    Some((name.to_owned(), arguments.map(|(name, _)| name.trim().to_owned()).collect()))
}
