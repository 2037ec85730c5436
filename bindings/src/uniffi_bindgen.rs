//! Writes the Kotlin, Swift or Python bindings from the compiled library: `uniffi-bindgen LANGUAGE LIBRARY FOLDER`.

use std::error::Error;

use uniffi_bindgen::bindings::{GenerateOptions, TargetLanguage, generate};

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [language, library, folder] = arguments.as_slice() else {
        return Err("call it as: uniffi-bindgen LANGUAGE LIBRARY FOLDER".into());
    };
    let language = match language.as_str() {
        "kotlin" => TargetLanguage::Kotlin,
        "swift" => TargetLanguage::Swift,
        "python" => TargetLanguage::Python,
        other => return Err(format!("no bindings are written for {other}; choose kotlin, swift or python").into()),
    };
    Ok(generate(GenerateOptions {
        languages: vec![language],
        source: library.into(),
        out_dir: folder.into(),
        config_override: None,
        format: false,
        crate_filter: None,
        metadata_no_deps: false,
    })?)
}
