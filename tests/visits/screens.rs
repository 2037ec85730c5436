//! The screens of one English visit as a person reads them, compared with the recorded ones in `screens.txt`.
//! `UPDATE_SCREENS=1` writes them anew: then read the difference as a technician would.

use std::collections::BTreeSet;
use std::fmt::Write as _;
use std::path::Path;

use coilside_core::screen::{Block, Button, Notice, Screen, StepState};
use coilside_office::demo::player::Move;
use coilside_tests::scene::Scene;

/// Everything that a person reads on a screen of the work; steps that were shown in full before stand as one line.
fn written(screen: &Screen, seen: &mut BTreeSet<String>) -> String {
    let mut text = String::new();
    let progress = screen.progress.as_ref().map(|progress| progress.text.clone()).unwrap_or_default();
    let unit = screen.unit.clone().unwrap_or_default();
    let _ = writeln!(text, "=== {} | {} | unit {unit} | {progress}", screen.place, screen.title);
    if !screen.strip.is_empty() {
        let strip: Vec<_> = screen.strip.iter().map(|live| format!("{}: {}", live.label, live.value)).collect();
        let _ = writeln!(text, "strip  {}", strip.join(" | "));
    }
    for notice in &screen.notices {
        write_notice(&mut text, notice);
    }
    for block in &screen.blocks {
        match block {
            Block::Step { id, title, why, state, state_text, blocks } => {
                let _ = writeln!(text, "step   [{state_text}] {title}");
                if seen.insert(format!("{id} {state:?} {}", *state == StepState::Running && blocks.len() > 2)) {
                    let _ = writeln!(text, "       why: {why}");
                    blocks.iter().for_each(|block| write_block(&mut text, block));
                }
            }
            other => write_block(&mut text, other),
        }
    }
    for button in &screen.foot {
        let _ = writeln!(text, "foot   {}", labelled(button));
    }
    text
}

fn write_notice(text: &mut String, notice: &Notice) {
    let _ = writeln!(text, "notice {:?}: {}", notice.tone, notice.title);
    notice.lines.iter().for_each(|line| {
        let _ = writeln!(text, "       {line}");
    });
    notice.buttons.iter().for_each(|button| {
        let _ = writeln!(text, "       {}", labelled(button));
    });
}

fn labelled(button: &Button) -> String {
    format!("[{}]{}", button.label, if button.hold { " (hold)" } else { "" })
}

fn write_block(text: &mut String, block: &Block) {
    let _ = match block {
        Block::Text { text: words, .. } => writeln!(text, "       {words}"),
        Block::Caution { title, text: words, .. } => writeln!(text, "       ! {title}: {words}"),
        Block::Check { label, done, .. } => writeln!(text, "       [{}] {label}", if *done { "x" } else { " " }),
        Block::Choice { label, options, .. } => {
            let options: Vec<_> = options.iter().map(|option| option.label.as_str()).collect();
            writeln!(text, "       ? {label} ( {} )", options.join(" / "))
        }
        Block::Number { label, unit, text: typed, hint, before, could_not, .. } => {
            let before = before.as_ref().map(|before| format!(" {before}.")).unwrap_or_default();
            let could_not = could_not.as_ref().map(|button| format!(" {}", labelled(button))).unwrap_or_default();
            writeln!(text, "       # {label} [{typed}] {unit} - {hint}{before}{could_not}")
        }
        Block::TextEntry { label, text: typed, .. } => writeln!(text, "       > {label} [{typed}]"),
        Block::Ink { label, hint, press, others, .. } => {
            let others: Vec<_> = others.iter().map(labelled).collect();
            writeln!(text, "       / {label}: {hint} {} {}", labelled(press), others.join(" "))
        }
        Block::Shot { title, show, before, skip, .. } => {
            let before = if before.is_some() { " (beside: the picture before)" } else { "" };
            let skip = skip.as_ref().map(|button| format!(" {}", labelled(button))).unwrap_or_default();
            writeln!(text, "       o {title}: {show}{before}{skip}")
        }
        Block::Dwell { state_text, least_clock, most_clock, then, .. } => {
            writeln!(text, "       ~ {state_text} From {least_clock} to {most_clock}. Then: {then}")
        }
        Block::Mix { title, rows, order, warning } => {
            let rows: Vec<_> = rows.iter().map(|row| format!("{} {}", row.label, row.amount)).collect();
            let warning = warning.clone().unwrap_or_default();
            writeln!(text, "       % {title}: {} | {} | {warning}", rows.join(", "), order.join(" "))
        }
        Block::Button { button } => writeln!(text, "       {}", labelled(button)),
        other => writeln!(text, "       {other:?}"),
    };
}

#[test]
fn the_screens_of_the_work_are_the_recorded_ones() {
    let answers = [("condition:sea", "near"), ("condition:first-service", "yes"), ("condition:casing", "plastic")];
    let mut scene = Scene::begun(&answers).unwrap();
    let (mut seen, mut last, mut all) = (BTreeSet::new(), String::new(), String::new());
    scene
        .play_with(|player, moved| {
            let screen = player.screen();
            let headline = headline(screen);
            if moved.is_none_or(|moved| *moved != Move::Sealed)
                && matches!(screen.place.as_str(), "now" | "leaving")
                && headline != last
            {
                last = headline;
                all.push_str(&written(screen, &mut seen));
                all.push('\n');
            }
            moved == Some(&Move::Sealed)
        })
        .unwrap();
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("visits/screens.txt");
    if std::env::var_os("UPDATE_SCREENS").is_some() {
        std::fs::write(&path, &all).unwrap();
    }
    let recorded = std::fs::read_to_string(&path).unwrap();
    for (number, (is, was)) in all.lines().zip(recorded.lines()).enumerate() {
        assert_eq!(is, was, "line {} of screens.txt; UPDATE_SCREENS=1 writes it anew", number + 1);
    }
    assert_eq!(all.lines().count(), recorded.lines().count(), "UPDATE_SCREENS=1 writes screens.txt anew");
}

/// What makes it another screen to a person: title, steps with their states, notices, the buttons below.
fn headline(screen: &Screen) -> String {
    let mut text = format!("{} {}", screen.place, screen.title);
    for block in &screen.blocks {
        if let Block::Step { id, state, .. } = block {
            let _ = write!(text, " {id} {state:?}");
        }
    }
    screen.notices.iter().for_each(|notice| write_notice(&mut text, notice));
    screen.foot.iter().for_each(|button| text.push_str(&button.label));
    text
}
