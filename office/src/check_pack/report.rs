//! What is told of a pack, as plain text.

use std::io::{self, Write};
use std::path::Path;

use coilside_core::procedure::check::{Proof, Verdict};
use coilside_core::procedure::library::LoadedPack;
use coilside_core::procedure::measure::Units;
use coilside_core::procedure::pack::{Pack, Reading};
use coilside_core::procedure::read::{Fault, PackRead};
use coilside_core::procedure::told;

use super::span::span;
use super::words::Told;

/// The pack's name, version and folder.
pub(super) fn heading(out: &mut dyn Write, told: &Told, path: &Path, read: &PackRead) -> io::Result<()> {
    let name = told.words().get("pack").unwrap_or_else(|| read.name.clone());
    let name = if name == "pack" { read.name.clone() } else { name };
    let values = [("name", name.as_str()), ("version", &read.version), ("folder", &path.display().to_string())];
    let line = told.fill("check-pack", &values);
    writeln!(out, "{}\n{}", line.trim(), "=".repeat(line.trim().chars().count()))
}

/// Everything that is wrong or could be better, each with its place, then what the checker says.
pub(super) fn faults(out: &mut dyn Write, told: &Told, path: &Path, read: &PackRead) -> io::Result<()> {
    let mut line = |kind: &str, fault: &Fault| {
        let words = told.words();
        let place = path.join(fault.place());
        writeln!(out, "{}: {}: {}", place.display(), told.text(kind), fault.what(words))?;
        writeln!(out, "    {}", fault.remedy(words))
    };
    for fault in &read.faults {
        line("check-fault", fault)?;
    }
    for fault in &read.advice {
        line("check-advice", fault)?;
    }
    if read.proof.is_some() {
        writeln!(out, "{}", told.text("check-sound"))?;
    }
    if let Some(proof) = &read.proof {
        proved(out, told, proof)?;
    }
    writeln!(out, "{}", told.text(if read.loaded.is_some() { "check-good" } else { "check-bad" }))
}

fn proved(out: &mut dyn Write, told: &Told, proof: &Proof) -> io::Result<()> {
    match &proof.verdict {
        Verdict::Proved => {
            let numbers = [
                ("states", grouped(proof.states())),
                ("transitions", grouped(proof.transitions())),
                ("starts", grouped(proof.starts)),
            ];
            let numbers: Vec<(&str, &str)> = numbers.iter().map(|(name, value)| (*name, value.as_str())).collect();
            writeln!(out, "{}", told.fill("check-proved", &numbers))?;
            writeln!(out, "{}", told.fill("check-proved-paused", &[("states", &grouped(proof.paused))]))
        }
        Verdict::Refused(examples) => {
            for (number, example) in examples.iter().enumerate() {
                let fault = told::fault(example, told.words());
                let number = (number + 1).to_string();
                writeln!(out, "{}", told.fill("check-refused", &[("number", &number), ("fault", &fault)]))?;
                writeln!(out, "{}", told.text("check-way"))?;
                for (number, one) in told::moves(example, told.words()).iter().enumerate() {
                    writeln!(out, "{:>4}. {one}", number + 1)?;
                }
            }
            Ok(())
        }
        // Told already, with the faults.
        Verdict::TooLarge(_) => Ok(()),
    }
}

/// A whole number with a thin gap between thousands, which both languages read alike (ISO 80000-1).
fn grouped(number: u64) -> String {
    let digits = number.to_string();
    let first = digits.len() % 3;
    let mut text = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && at % 3 == first {
            text.push('\u{202f}');
        }
        text.push(digit);
    }
    text
}

/// What a pack consists of and how long it takes.
pub(super) fn content(out: &mut dyn Write, told: &Told, loaded: &LoadedPack) -> io::Result<()> {
    let pack = &loaded.pack;
    let counts = [("phases", pack.phases.len().to_string()), ("steps", pack.steps().count().to_string())];
    let counts: Vec<(&str, &str)> = counts.iter().map(|(name, count)| (*name, count.as_str())).collect();
    writeln!(out, "{}", told.fill("check-steps", &counts))?;
    writeln!(out, "{}", time(told, pack))?;
    let mut list = |heading: &str, lines: Vec<String>| {
        if lines.is_empty() {
            return writeln!(out, "{}: {}", told.text(heading), told.text("check-none"));
        }
        writeln!(out, "{} ({}):", told.text(heading), lines.len())?;
        lines.iter().try_for_each(|line| writeln!(out, "  {line}"))
    };
    let questions = pack.conditions.iter().map(|condition| {
        let id = condition.id.as_str();
        let answers = condition.options.iter().map(|option| told.text(&format!("condition-{id}-{}", option.id)));
        format!("{} {}", told.named("condition", id), answers.collect::<Vec<_>>().join(" / "))
    });
    list("check-questions", questions.collect())?;
    list("check-shots", pack.shots.iter().map(|shot| told.named("shot", shot.id.as_str())).collect())?;
    list("check-readings", pack.readings.iter().map(|reading| of_reading(told, reading)).collect())?;
    list("check-mixes", pack.mixes.iter().map(|mix| told.named("mix", &mix.id)).collect())?;
    list("check-chemicals", pack.chemicals.iter().map(|chemical| told.named("chemical", &chemical.id)).collect())?;
    let parts = pack.parts.iter().map(|part| {
        let spare = if part.spare { format!(", {}", told.text("check-spare")) } else { String::new() };
        format!("{} × {}{spare}", part.count, told.named("part", &part.id))
    });
    list("check-parts", parts.collect())?;
    list("check-gear", pack.gear.iter().map(|gear| told.named("gear", &gear.id)).collect())?;
    list("check-settings", pack.excursions.iter().map(|one| told.named("excursion", one.id.as_str())).collect())
}

fn of_reading(told: &Told, reading: &Reading) -> String {
    let name = told.named("reading", reading.id.as_str());
    let unit = reading.quantity.symbol(Units::Metric);
    let bounds = match (&reading.least, &reading.most) {
        (Some(least), Some(most)) => format!("{least} … {most}"),
        _ => String::new(),
    };
    let measured =
        [bounds.as_str(), unit].iter().filter(|part| !part.is_empty()).copied().collect::<Vec<_>>().join(" ");
    if measured.is_empty() { name } else { format!("{name}, {measured}") }
}

fn time(told: &Told, pack: &Pack) -> String {
    let span = span(pack);
    let (least, most) = (duration(told, span.least_s), duration(told, span.most_s));
    let key = if span.exact { "check-time" } else { "check-time-more" };
    told.fill(key, &[("least", &least), ("most", &most)])
}

/// A time for people, in minutes or in hours and minutes, rounded up: a day is planned with it.
pub(super) fn duration(told: &Told, seconds: u64) -> String {
    let minutes = seconds.div_ceil(60);
    let (hours, rest) = (minutes / 60, minutes % 60);
    if hours == 0 {
        return told.fill("check-minutes", &[("minutes", &minutes.to_string())]);
    }
    if rest == 0 {
        return told.fill("check-hours-even", &[("hours", &hours.to_string())]);
    }
    told.fill("check-hours", &[("hours", &hours.to_string()), ("minutes", &rest.to_string())])
}
