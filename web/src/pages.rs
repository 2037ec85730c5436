//! The files of the page, inside the program: a fresh build needs nothing beside it.

use axum::{
    extract::{Path, State},
    http::header,
    response::{IntoResponse, Response},
};

use crate::{door::Shell, problem::Problem};

const INDEX: &str = include_str!("../page/index.html");
/// Where the words go in.
const WORDS: &str = "id=\"words\">{}";

macro_rules! files {
    ($($name:literal),* $(,)?) => { &[$(($name, include_str!(concat!("../page/", $name)))),*] };
}

const FILES: &[(&str, &str)] = files![
    "announce.js",
    "blocks/all.js",
    "blocks/button.js",
    "blocks/data.js",
    "blocks/dwell.js",
    "blocks/ink.js",
    "blocks/number.js",
    "blocks/pick.js",
    "blocks/plot.js",
    "blocks/shot.js",
    "blocks/step.js",
    "blocks/text.js",
    "dialogs.js",
    "dom.js",
    "door.js",
    "effects/alarm.js",
    "effects/awake.js",
    "effects/charge.js",
    "effects/network.js",
    "effects/photo.js",
    "effects/place.js",
    "fields.js",
    "glyphs.js",
    "hold.js",
    "icon.svg",
    "layout.js",
    "main.js",
    "previews.js",
    "session.js",
    "signs.js",
    "style.css",
    "words.js",
];

/// The page, with the shell's words in it, so that it has words even for 'this address is not complete'.
pub(crate) async fn index(State(shell): State<Shell>) -> Response {
    let words = serde_json::to_string(&shell.words().await).unwrap_or_else(|_| "{}".to_owned());
    // Inside a script element only `<` can end it.
    let page = INDEX.replace(WORDS, &format!("id=\"words\">{}", words.replace('<', "\\u003c")));
    ([(header::CONTENT_TYPE, "text/html; charset=utf-8")], page).into_response()
}

pub(crate) async fn file(Path(path): Path<String>) -> Result<Response, Problem> {
    let (name, text) = FILES.iter().find(|(name, _)| *name == path).ok_or_else(Problem::unknown)?;
    let kind = match name.rsplit('.').next() {
        Some("css") => "text/css; charset=utf-8",
        Some("svg") => "image/svg+xml",
        _ => "text/javascript; charset=utf-8",
    };
    Ok(([(header::CONTENT_TYPE, kind)], *text).into_response())
}

#[cfg(test)]
mod tests {
    use std::{collections::BTreeSet, fs, path::Path};

    use super::*;

    fn collect(folder: &Path, below: &str, found: &mut BTreeSet<String>) {
        for entry in fs::read_dir(folder).unwrap().map(Result::unwrap) {
            let name = format!("{below}{}", entry.file_name().to_str().unwrap());
            if entry.file_type().unwrap().is_dir() {
                collect(&entry.path(), &format!("{name}/"), found);
            } else if !name.ends_with(".d.ts") && name != "index.html" {
                found.insert(name);
            }
        }
    }

    #[test]
    fn every_file_of_the_page_is_in_the_program() {
        let mut found = BTreeSet::new();
        collect(&Path::new(env!("CARGO_MANIFEST_DIR")).join("page"), "", &mut found);
        let embedded: BTreeSet<String> = FILES.iter().map(|(name, _)| (*name).to_owned()).collect();
        assert_eq!(embedded, found);
    }

    #[test]
    fn the_page_has_one_place_for_its_words() {
        assert_eq!(INDEX.matches(WORDS).count(), 1);
    }
}
