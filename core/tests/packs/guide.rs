//! The guide for writers of packs says what the core does: its tables are made from the code, its example is a pack.

use std::fmt::Write as _;
use std::fs;

use coilside_core::procedure::danger::Danger;
use coilside_core::procedure::shape::{self, EVERY, Kind};
use coilside_core::visit::fact::Fact;
use coilside_core::words::Words;

use super::here;

/// A fact's words.
fn facts(words: &Words) -> String {
    let mut text = "| fact | values | what it is |\n| --- | --- | --- |\n".to_owned();
    for fact in Fact::ALL {
        let values: Vec<_> = fact.values().iter().map(|value| format!("`{}`", value.word())).collect();
        let lapses = if fact.lapses() { " ⏸" } else { "" };
        let name = fact.name();
        let _ = writeln!(text, "| `{name}`{lapses} | {} | {} |", values.join(" "), words.text(&format!("fact-{name}")));
    }
    text
}

fn dangers(words: &Words) -> String {
    let mut text = "| danger | what it is |\n| --- | --- |\n".to_owned();
    for danger in Danger::ALL {
        let _ = writeln!(text, "| `{}` | {} |", danger.name(), words.text(&format!("danger-{}", danger.name())));
    }
    text
}

fn hazards(words: &Words) -> String {
    let mut text = "| hazard | what it is |\n| --- | --- |\n".to_owned();
    for hazard in shape::HAZARDS {
        let _ = writeln!(text, "| `{hazard}` | {} |", words.text(&format!("caution-{hazard}")));
    }
    text
}

fn acts(words: &Words) -> String {
    let mut text = "| act | what it is |\n| --- | --- |\n".to_owned();
    for act in shape::ACTS {
        let _ = writeln!(text, "| `{act}` | {} |", words.text(&format!("act-{act}")));
    }
    text
}

fn tables() -> String {
    let mut text = String::new();
    for table in EVERY {
        let _ = writeln!(text, "**`{}`** {}\n", table.name, table.says);
        text.push_str("| field | holds | meaning |\n| --- | --- | --- |\n");
        for field in table.fields {
            let needed = if field.needed { " *" } else { "" };
            let _ = writeln!(text, "| `{}`{needed} | {} | {} |", field.name, holds(&field.kind), field.says);
        }
        text.push('\n');
    }
    text.trim_end().to_owned() + "\n"
}

fn holds(kind: &Kind) -> String {
    match kind {
        Kind::Name => "a name".to_owned(),
        Kind::NameOf(what) => format!("the name of a `{what}`"),
        Kind::Version => "`\"1.0.0\"`".to_owned(),
        Kind::Whole(least, most) if least == most => format!("`{least}`"),
        Kind::Whole(least, most) => format!("whole number, {least} to {most}"),
        Kind::Flag => "`true` or `false`".to_owned(),
        Kind::Decimal => "a decimal number as text".to_owned(),
        Kind::Range => "two decimal numbers as text".to_owned(),
        Kind::OneOf(words) if words.len() > 5 => "one of a list, see below".to_owned(),
        Kind::OneOf(words) => words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", "),
        Kind::Role(words) => words.iter().map(|word| format!("`{word}`")).collect::<Vec<_>>().join(", "),
        Kind::Holds => "`\"fact=value\"`".to_owned(),
        Kind::Fact => "a fact".to_owned(),
        Kind::When => "`\"condition=answer\"`".to_owned(),
        Kind::List(of) => format!("list: {}", holds(of)),
        Kind::Table(table) => format!("a `{}`", table.name),
        Kind::Tables(table, _) => format!("tables `[[{}]]`", table.name),
    }
}

fn quantities() -> String {
    let mut text = String::new();
    for quantity in shape::QUANTITIES {
        let known: coilside_core::procedure::pack::Quantity =
            serde_json::from_value(serde_json::Value::String((*quantity).to_owned())).unwrap();
        let unit = known.symbol(coilside_core::procedure::measure::Units::Metric);
        let unit = if unit.is_empty() { String::new() } else { format!(" ({unit})") };
        let _ = write!(text, "{}`{quantity}`{unit}", if text.is_empty() { "" } else { ", " });
    }
    text + "\n"
}

fn example(name: &str, language: &str) -> String {
    let text = fs::read_to_string(here("tests/packs/small").join(name)).unwrap();
    format!("```{language}\n{}\n```\n", text.trim_end())
}

/// The guide with every made part made anew.
fn made(guide: &str) -> String {
    let words = Words::new("en", None).unwrap();
    let parts = [
        ("tables", tables()),
        ("quantities", quantities()),
        ("facts", facts(&words)),
        ("acts", acts(&words)),
        ("dangers", dangers(&words)),
        ("hazards", hazards(&words)),
        ("example-toml", example("pack.toml", "toml")),
        ("example-words", example("en.ftl", "ftl")),
    ];
    let mut guide = guide.to_owned();
    for (name, part) in parts {
        let (begin, end) = (format!("<!-- {name} -->\n"), format!("<!-- end of {name} -->"));
        let (before, rest) = guide.split_once(&begin).unwrap_or_else(|| panic!("the guide has no {begin}"));
        let (_, after) = rest.split_once(&end).unwrap_or_else(|| panic!("the guide has no {end}"));
        guide = format!("{before}{begin}{part}{end}{after}");
    }
    guide
}

#[test]
fn the_tables_and_the_example_of_the_guide_are_those_of_this_core() {
    let path = here("packs/README.md");
    let guide = fs::read_to_string(&path).unwrap();
    let made = made(&guide);
    if std::env::var_os("UPDATE_GUIDE").is_some() {
        fs::write(&path, &made).unwrap();
    }
    let guide = fs::read_to_string(&path).unwrap();
    assert!(guide == made, "it is stale: UPDATE_GUIDE=1 cargo test -p coilside-core --test packs writes it anew");
}
