//! A visit with every pack in a language of disguised letters: what stays readable on a screen was not put there by Fluent.
//! It must be data then: the assignment's, the technician's, a unit, a name of a substance.

use std::collections::{BTreeMap, BTreeSet};

use coilside_core::action::Action;
use coilside_core::screen::Screen;
use coilside_core::words::PSEUDO;
use coilside_office::demo::player::Move;
use coilside_tests::assignment_of;
use coilside_tests::look::packs;
use coilside_tests::scene::Scene;
use coilside_tests::texts::{all, readable};

/// Every place that a visit can show.
const PLACES: &[&str] = &[
    "phases",
    "photographs",
    "readings",
    "findings",
    "leaving",
    "break-off",
    "emergency",
    "outbox",
    "procedures",
    "settings",
    "load",
    "history",
    "used",
    "details",
];

/// Symbols of units (SI brochure, 9th edition; US customary), of substances (ISO 817), and languages by their own names.
const SYMBOLS: &[&str] = &[
    "C", "F", "K", "W", "kW", "kWh", "V", "A", "mA", "Pa", "kPa", "bar", "psi", "MΩ", "µF", "L", "mL", "kB", "MB",
    "min", "h", "m", "cm", "mm", "pH", "µS", "mg", "g", "gal", "gpm", "US", "fl", "oz", "in", "ft", "dGH", "R290",
    "R744", "COP", "UTC", "English", "Español",
];

/// Parts of what the technician types: serial numbers, and modes as a controller shows them.
const TYPED: &[&str] = &["AB", "C", "ECO", "BOOST"];

#[test]
fn no_word_on_any_screen_escaped_fluent() {
    let mut escaped: BTreeMap<String, String> = BTreeMap::new();
    for pack in packs() {
        let name = &pack.pack.pack;
        let data = serde_json::to_string(&assignment_of("a1", name)).unwrap();
        let mut known: BTreeSet<String> = readable(&data).chain(TYPED.iter().map(|word| (*word).to_owned())).collect();
        // A pack's own name is that of its folder, in every language.
        known.extend(packs().iter().flat_map(|pack| readable(&pack.pack.pack).collect::<Vec<_>>()));
        known.extend(SYMBOLS.iter().map(|symbol| (*symbol).to_owned()));
        let mut scene = Scene::before_of(name, &[]).unwrap();
        scene.act(&Action::Set { setting: "language".into(), value: PSEUDO.into() }).unwrap();
        let mut screens: Vec<Screen> = vec![scene.screen().unwrap()];
        scene.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
        for place in PLACES {
            screens.push(scene.go(place).unwrap());
        }
        scene.go("now").unwrap();
        scene
            .play_with(|player, moved| {
                screens.push(player.screen().clone());
                moved == Some(&Move::Sealed)
            })
            .unwrap();
        for place in PLACES {
            screens.push(scene.go(place).unwrap());
        }
        assert!(screens.len() > 100, "{name}: only {} screens", screens.len());
        for screen in &screens {
            assert_eq!(screen.language, PSEUDO);
            for text in all(screen) {
                for word in readable(&text).filter(|word| !known.contains(word)) {
                    escaped.entry(word).or_insert_with(|| format!("{name}, {}: {text}", screen.place));
                }
            }
        }
    }
    assert!(escaped.is_empty(), "{escaped:#?}");
}
