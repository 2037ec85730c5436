//! The load list of a day of five visits, added up by hand.

use std::collections::BTreeMap;

use super::amount::Measure;
use super::load::{Chemical, Counted, Job, load};
use crate::procedure::pack::{ChemicalKind, Pack};

/// A heater with two kinds of cleaner, acid and its neutraliser. What is not about loading is left out.
const HEATER: &str = r#"
pack = "heater"
format = 1
version = "1"
chemical = [
    { id = "descaler", kind = "acid", form = "liquid" },
    { id = "degreaser", kind = "alkali", form = "liquid" },
    { id = "neutral-cleaner", kind = "neutral", form = "liquid" },
    { id = "bicarbonate", kind = "alkali", form = "powder" },
]
part = [{ id = "anode" }, { id = "gasket", count = 2 }, { id = "fuse", spare = true }]
gear = [{ id = "goggles" }, { id = "service-pump" }, { id = "drill" }]
instrument = [{ id = "ph-meter", error-limit = "0.1" }]
reading = [
    { id = "cleaner-parts", quantity = "count", preset = "10" },
    { id = "cleaner-volume", quantity = "volume", preset = "12" },
    { id = "acid-parts", quantity = "count", preset = "10" },
    { id = "acid-volume", quantity = "volume", preset = "2.2" },
    { id = "powder-dose", quantity = "dose", preset = "50" },
    { id = "powder-volume", quantity = "volume", preset = "2.1" },
    { id = "rinse-ph", quantity = "acidity", instrument = "ph-meter" },
]
mix = [
    { id = "degreaser", chemical = "degreaser", parts-water = "cleaner-parts", total = "cleaner-volume" },
    { id = "neutral", chemical = "neutral-cleaner", parts-water = "cleaner-parts", total = "cleaner-volume" },
    { id = "descaler", chemical = "descaler", parts-water = "acid-parts", total = "acid-volume" },
    { id = "neutraliser", chemical = "bicarbonate", dose = "powder-dose", total = "powder-volume" },
]
condition = [
    { id = "first-service", option = [{ id = "yes" }, { id = "no" }] },
    { id = "coil", option = [{ id = "plain" }, { id = "coated" }] },
    { id = "exchanger", option = [{ id = "stainless" }, { id = "copper" }, { id = "no-acid" }] },
]
[[phase]]
id = "work"
step = [
    { id = "look", gear = ["goggles"], parts = ["fuse"] },
    { id = "clean", when = ["coil=plain"], mix = "degreaser" },
    { id = "clean-gently", when = ["coil=coated"], mix = "neutral" },
    { id = "acid", when = ["exchanger=stainless", "exchanger=copper"], mix = "descaler", gear = ["service-pump"] },
    { id = "neutralise", when = ["exchanger=stainless", "exchanger=copper"], mix = "neutraliser", readings = ["rinse-ph"] },
    { id = "first", when = ["first-service=yes"], parts = ["anode"], gear = ["drill"] },
    { id = "close", parts = ["gasket"] },
]
"#;

/// A pool's heater: its water gets hypochlorite.
const POOL: &str = r#"
pack = "pool"
format = 1
version = "1"
chemical = [{ id = "chlorine", kind = "hypochlorite", form = "liquid" }]
gear = [{ id = "goggles" }]
reading = [
    { id = "share", quantity = "share", preset = "5" },
    { id = "volume", quantity = "volume", preset = "10" },
]
mix = [{ id = "shock", chemical = "chlorine", percent = "share", total = "volume" }]
[[phase]]
id = "work"
step = [{ id = "shock", mix = "shock", gear = ["goggles"] }]
"#;

fn counted(name: &str, sure: u32, maybe: u32, sites: &[&str]) -> Counted {
    Counted { name: name.into(), sure, maybe, sites: sites.iter().map(|site| (*site).to_owned()).collect() }
}

fn check(chemical: &Chemical, name: &str, kind: ChemicalKind, measure: Measure, sure: f64, maybe: f64, take: f64) {
    assert_eq!((chemical.name.as_str(), chemical.kind, chemical.measure), (name, kind, measure));
    for (is, by_hand) in [(chemical.sure, sure), (chemical.maybe, maybe), (chemical.take, take)] {
        assert!((is - by_hand).abs() < 1e-6, "{name}: {is}, by hand {by_hand}");
    }
}

#[test]
fn the_load_list_of_five_visits_adds_up() {
    let (heater, pool): (Pack, Pack) = (toml::from_str(HEATER).unwrap(), toml::from_str(POOL).unwrap());
    let known = |pairs: &[(&str, &str)]| -> BTreeMap<String, String> {
        pairs.iter().map(|(condition, answer)| ((*condition).to_owned(), (*answer).to_owned())).collect()
    };
    let day = [
        ("Mill", &heater, known(&[("first-service", "no"), ("coil", "plain"), ("exchanger", "stainless")])),
        ("Quay", &heater, known(&[("first-service", "yes"), ("coil", "coated"), ("exchanger", "no-acid")])),
        // Of this one only the register knows that it was served before.
        ("School", &heater, known(&[("first-service", "no")])),
        ("Inn", &heater, known(&[("first-service", "yes"), ("coil", "plain"), ("exchanger", "copper")])),
        ("Pool", &pool, known(&[])),
    ];
    let name = |key: &str| key.to_owned();
    let jobs: Vec<Job<'_>> = day.iter().map(|(site, pack, known)| Job { site, known, pack, name: &name }).collect();
    let load = load(&jobs);

    // Acid. One part to ten of water, 2.2 L in all: 2.2 / 11 = 0.2 L.
    // Sure at Mill and Inn: 2 × 200 = 400 mL. Perhaps at School: 200 mL. None at Quay, none at the pool.
    // A fifth more: 600 × 1.2 = 720 mL.
    check(&load.chemicals[0], "chemical-descaler", ChemicalKind::Acid, Measure::Millilitre, 400.0, 200.0, 720.0);
    assert_eq!(load.chemicals[0].sites, ["Mill", "School", "Inn"]);

    // Bicarbonate. 50 g to a litre, 2.1 L: 105 g, wherever there is acid: 210 g sure, 105 g perhaps.
    // 315 × 1.2 = 378, in steps of ten 380 g.
    check(&load.chemicals[1], "chemical-bicarbonate", ChemicalKind::Alkali, Measure::Gram, 210.0, 105.0, 380.0);

    // Degreaser. One part to ten, 12 L: 12 / 11 = 1.090909 L at plain coils: Mill and Inn 2.181818 L, School perhaps.
    // 3272.727 × 1.2 = 3927.27, in steps of ten 3930 mL.
    let one = 12_000.0 / 11.0;
    check(&load.chemicals[2], "chemical-degreaser", ChemicalKind::Alkali, Measure::Millilitre, 2.0 * one, one, 3930.0);

    // Hypochlorite. 5 % of 10 L: 500 mL. 500 × 1.2 = 600 mL.
    check(&load.chemicals[3], "chemical-chlorine", ChemicalKind::Hypochlorite, Measure::Millilitre, 500.0, 0.0, 600.0);

    // Neutral cleaner. As the degreaser, at coated coils: Quay surely, School perhaps.
    // 2181.818 × 1.2 = 2618.18, in steps of ten 2620 mL.
    check(&load.chemicals[4], "chemical-neutral-cleaner", ChemicalKind::Neutral, Measure::Millilitre, one, one, 2620.0);
    assert_eq!(load.chemicals.len(), 5);

    // Parts. An anode at each first service: Quay and Inn, 2. Two gaskets at each heater: 4 × 2 = 8. A spare fuse for each.
    let heaters = ["Mill", "Quay", "School", "Inn"];
    assert_eq!(
        load.parts,
        [
            counted("part-anode", 2, 0, &["Quay", "Inn"]),
            counted("part-fuse", 0, 4, &heaters),
            counted("part-gasket", 8, 0, &heaters),
        ]
    );
    // Gear comes along once: goggles everywhere, the drill for first services, the pump where there is or may be acid.
    assert_eq!(
        load.gear,
        [
            counted("gear-drill", 1, 0, &["Quay", "Inn"]),
            counted("gear-goggles", 1, 0, &["Mill", "Quay", "School", "Inn", "Pool"]),
            counted("gear-service-pump", 1, 0, &["Mill", "School", "Inn"]),
        ]
    );
    assert_eq!(load.instruments, [counted("instrument-ph-meter", 1, 0, &["Mill", "School", "Inn"])]);
    assert!(load.acid);
}

#[test]
fn what_hangs_on_an_open_question_alone_is_told_as_if_needed() {
    let heater: Pack = toml::from_str(HEATER).unwrap();
    let (known, name) = (BTreeMap::new(), |key: &str| key.to_owned());
    let load = load(&[Job { site: "School", known: &known, pack: &heater, name: &name }]);
    assert_eq!(load.gear[0], counted("gear-drill", 0, 1, &["School"]));
    assert_eq!(load.parts[0], counted("part-anode", 0, 1, &["School"]));
    // Acid that may be needed needs its spill kit for sure.
    assert!(load.acid && load.chemicals[0].sure == 0.0 && load.chemicals[0].maybe > 0.0);
    assert!(super::load::load(&[]).chemicals.is_empty());
}
