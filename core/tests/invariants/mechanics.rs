//! Mixes, instruments, settings, acid and metal: decided on a small pack of their own.

use std::collections::BTreeMap;

use coilside_core::action::Action;
use coilside_core::id::Letter;
use coilside_core::now::Now;
use coilside_core::procedure::gate::Missing;
use coilside_core::procedure::library::{PackSource, load};
use coilside_core::procedure::measure::Units;
use coilside_core::procedure::mixing::{MixNote, Said};
use coilside_core::procedure::pack::Pack;
use coilside_core::round::{OwnInstrument, Shared, Technician};
use coilside_core::science::acids::Acid;
use coilside_core::science::materials::{Metal, suits};
use coilside_core::screen::{EngineView, View, VisitView, show};
use coilside_core::store::OutboxCount;
use coilside_core::visit::apply::apply;
use coilside_core::visit::decide::{Circumstances, Refusal, completeness, decide};
use coilside_core::visit::event::{Body, Event, FORMAT, Own};
use coilside_core::visit::fact::{Fact, Value};
use coilside_core::visit::state::{ExcursionEnd, Run, Visit};
use coilside_core::words::{LANGUAGES, Words};

const SMALL: &str = r#"
pack = "small"
format = 1
version = "1"
instrument = [{ id = "ph-meter", error-limit = "0.2" }]
reading = [
    { id = "ph", quantity = "acidity", decimals = 1, instrument = "ph-meter" },
    { id = "parts", quantity = "count", preset = "10" },
    { id = "dose", quantity = "dose", optional = true },
    { id = "total", quantity = "volume", decimals = 1, preset = "2.2" },
]
shot = [{ id = "settings" }]
chemical = [{ id = "descaler", kind = "acid", form = "liquid" }]
mix = [{ id = "bath", chemical = "descaler", parts-water = "parts", dose = "dose", total = "total" }]
excursion = [{ id = "set-point", shot = "settings" }]

[[condition]]
id = "metal"
role = "exchanger-metal"
option = [{ id = "stainless" }, { id = "zinc" }]
[[condition]]
id = "acid"
role = "descaler-acid"
option = [{ id = "citric" }, { id = "hydrochloric" }]

[[phase]]
id = "only"
step = [
    { id = "measure", readings = ["ph"] },
    { id = "mix", readings = ["parts", "dose", "total"], mix = "bath" },
    { id = "soak", mix = "bath", starts = ["vessel=cleaner"], dwell = { least-s = 60, most-s = 600 } },
    { id = "lower", opens = "set-point", shots = ["settings"] },
    { id = "raise", homes = "set-point" },
    { id = "match", asks = ["metal", "acid"], sets = ["exchanger-acid=allowed"] },
    { id = "isolate", sets = ["supply=off"] },
    { id = "prove", sets = ["supply=proved-dead", "further-supplies=none", "stored-charge=waited-out", "gas=clear", "ignition-sources=kept-away"] },
    { id = "tag", sets = ["tag=tagged"] },
    { id = "open-up", sets = ["covers=off"] },
    { id = "dry", sets = ["covers=on", "earth=on", "fan-guard=on", "dampness=dry", "gas=clear", "loop=water"] },
    { id = "power-on", sets = ["supply=on"], acts = ["energise"] },
    { id = "hand-over", sets = ["scald-check=done", "reheat=reached"], acts = ["hand-over"] },
]
"#;

/// One person at one or two units, without a door.
pub(crate) struct Table {
    pack: Pack,
    pub(crate) visit: Visit,
    pub(crate) unit: Letter,
    drafts: BTreeMap<String, String>,
    technician: Technician,
    pub(crate) shares: Option<Vec<Shared>>,
    pub(crate) now: Now,
}

impl Table {
    pub(crate) fn with(letters: &[&str]) -> Table {
        let now = Now { utc_ms: 1_777_881_600_000, offset_min: 120, mono_ms: 1_000, mono_epoch: "boot".into() };
        let mut table = Table {
            pack: load(PackSource { toml: SMALL.to_owned(), words: BTreeMap::new() }).unwrap().pack,
            visit: Visit::default(),
            unit: "A".into(),
            drafts: BTreeMap::new(),
            technician: Technician::default(),
            shares: None,
            now,
        };
        let opened = Body::VisitOpened {
            format: FORMAT,
            device_key: String::new(),
            assignment: "a".into(),
            personal: Default::default(),
        };
        let begun = letters.iter().map(|letter| Body::RunStarted {
            unit: (*letter).into(),
            asset: String::new(),
            label: String::new(),
            pack: "small".into(),
            pack_digest: Default::default(),
            core: String::new(),
        });
        let bodies: Vec<Body> = std::iter::once(opened).chain(begun).collect();
        table.take(&bodies);
        table
    }

    fn take(&mut self, bodies: &[Body]) {
        for body in bodies {
            let event = Event {
                visit: "v".into(),
                seq: 0,
                prev: Default::default(),
                time: self.now.clone(),
                body: body.clone(),
            };
            self.visit = apply(std::mem::take(&mut self.visit), &event);
        }
    }

    pub(crate) fn act(&mut self, action: Action) -> Result<Vec<Body>, Refusal> {
        let around = Circumstances {
            unit: &self.unit,
            pack: &self.pack,
            drafts: &self.drafts,
            units: Units::Metric,
            now: &self.now,
            technician: &self.technician,
            serial: None,
            model: None,
            shares: self.shares.as_deref(),
            salt: "",
        };
        let decision = decide(&self.visit, &action, &around)?;
        self.take(&decision.events);
        Ok(decision.events)
    }

    pub(crate) fn done(&mut self, step: &str) -> Result<Vec<Body>, Refusal> {
        self.act(Action::Done { step: step.into() })
    }

    pub(crate) fn all_done(&mut self, steps: &[&str]) {
        for step in steps {
            self.done(step).unwrap();
        }
    }

    fn read(&mut self, reading: &str, text: &str) -> Vec<Body> {
        self.act(Action::Enter { field: format!("read:{reading}"), text: text.into() }).unwrap()
    }

    pub(crate) fn draft(&mut self, field: &str, text: &str) {
        self.drafts.insert(field.into(), text.into());
    }

    pub(crate) fn find_unsafe(&mut self) {
        self.draft("finding", "Cable chafed through");
        self.draft("severity", "unsafe");
        self.act(Action::AddFinding).unwrap();
    }

    pub(crate) fn run(&self) -> &Run {
        self.visit.run(&self.unit).unwrap()
    }

    pub(crate) fn missing(&mut self, step: &str) -> Vec<Missing> {
        match self.done(step) {
            Err(Refusal::Gate { missing, .. }) => missing,
            other => panic!("'{step}' was not refused: {other:?}"),
        }
    }
}

#[test]
fn a_mix_goes_into_the_record_before_its_step_with_what_the_label_contradicts() {
    let mut table = Table::with(&["A"]);
    table.read("parts", "10");
    table.read("dose", "50");
    let events = table.done("mix").unwrap();
    let [Body::MixMade { mix, chemical, water_l, concentrate, measure, notes, .. }, Body::StepDone { .. }] =
        &events[..]
    else {
        panic!("{events:?}")
    };
    assert_eq!((mix.as_str(), chemical.as_str()), ("bath", "descaler"));
    // Two litres of water and 200 mL: common practice, no source. By 50 mL a litre it would be 105 mL.
    assert_eq!((water_l.as_str(), concentrate.as_str(), measure.as_str()), ("2.000", "0.200", "L"));
    let asks = "0.105".to_owned();
    assert_eq!(*notes, [MixNote::LabelContradicts { by: Said::Parts, other: Said::Dose, asks }]);
    assert_eq!(table.run().mixes["bath"].notes, *notes);
    let lines = completeness(&table.visit, &table.pack).1;
    assert!(!lines.iter().any(|line| line.contains("bath")), "a note is no gap: {lines:?}");
}

#[test]
fn a_mix_of_a_waiting_time_is_made_when_that_begins() {
    let mut table = Table::with(&["A"]);
    let events = table.act(Action::Start { step: "soak".into() }).unwrap();
    assert!(matches!(events[..], [Body::MixMade { .. }, Body::StepStarted { .. }]), "{events:?}");
    table.now.utc_ms += 61_000;
    table.now.mono_ms += 61_000;
    let events = table.done("soak").unwrap();
    assert!(matches!(events[..], [Body::StepDone { .. }]), "made once: {events:?}");
}

fn meter(until: &str) -> Technician {
    let own = OwnInstrument {
        kind: "ph-meter".into(),
        name: "Pocket meter".into(),
        serial: "PH-1".into(),
        error_limit: "0.05".into(),
        calibrated_until: until.into(),
    };
    Technician { instruments: vec![own], ..Technician::default() }
}

#[test]
fn an_own_instrument_brings_its_own_error_and_a_lapsed_one_is_flagged_and_not_widened() {
    // The visit's day is 2026-05-04.
    for (until, lapsed) in [("2026-05-03", true), ("2026-05-04", false), ("", false)] {
        let mut table = Table::with(&["A"]);
        table.technician = meter(until);
        table.read("ph", "7.4");
        let taken = &table.run().readings["ph"];
        assert_eq!(taken.error_limit, "0.05", "{until}");
        let own = Own { name: "Pocket meter".into(), serial: "PH-1".into(), calibrated_until: until.into(), lapsed };
        assert_eq!(taken.own, Some(own));
    }
    let mut table = Table::with(&["A"]);
    table.read("ph", "7.4");
    assert_eq!((table.run().readings["ph"].error_limit.as_str(), &table.run().readings["ph"].own), ("0.2", &None));
}

#[test]
fn a_setting_is_photographed_before_its_change_is_noted() {
    let mut table = Table::with(&["A"]);
    table.draft("home:set-point", "55 °C");
    table.draft("away:set-point", "40 °C");
    let open = Action::OpenExcursion { excursion: "set-point".into() };
    let refused = table.act(open.clone()).unwrap_err();
    let wants = vec![Missing::Shot { slot: "settings".into() }];
    assert_eq!(refused, Refusal::Gate { step: "lower".into(), missing: wants });
    table.draft("why:shot:settings", "Display is dark");
    table.act(Action::CouldNot { field: "shot:settings".into() }).unwrap();
    table.draft("because:set-point", "Owner is away");
    table.act(open).unwrap();
    assert_eq!(table.run().excursions["set-point"].reason, "Owner is away");
}

fn away() -> Table {
    let mut table = Table::with(&["A"]);
    table.draft("home:set-point", "55 °C");
    table.draft("away:set-point", "40 °C");
    table.draft("why:shot:settings", "Display is dark");
    table.act(Action::CouldNot { field: "shot:settings".into() }).unwrap();
    table.act(Action::OpenExcursion { excursion: "set-point".into() }).unwrap();
    table
}

#[test]
fn a_read_back_that_differs_is_asked_about_and_taken_only_with_an_answer() {
    let home = Action::BringHome { excursion: "set-point".into() };
    let end = |table: &Table| table.run().excursions["set-point"].end.clone();
    let mut table = away();
    table.draft("back:set-point", "50 °C");
    let refused = table.act(home.clone()).unwrap_err();
    assert!(matches!(&refused, Refusal::ReadBack { home, shows, .. } if home == "55 °C" && shows == "50 °C"));
    assert_eq!(end(&table), ExcursionEnd::Open);
    table.draft("differs:set-point", "Owner wants 50");
    table.act(home.clone()).unwrap();
    assert_eq!(end(&table), ExcursionEnd::Home { shows: "50 °C".into(), answered: "Owner wants 50".into() });
    let mut table = away();
    table.draft("back:set-point", "55°C");
    table.act(home).unwrap();
    assert_eq!(end(&table), ExcursionEnd::Home { shows: "55°C".into(), answered: String::new() });
}

#[test]
fn no_acid_is_called_allowed_that_the_table_of_materials_forbids() {
    let answer = |table: &mut Table, condition: &str, option: &str| {
        table.act(Action::Choose { field: format!("condition:{condition}"), option: option.into() }).unwrap();
    };
    let mut table = Table::with(&["A"]);
    assert!(table.missing("match").contains(&Missing::AcidUnknown));
    answer(&mut table, "metal", "zinc");
    answer(&mut table, "acid", "citric");
    assert!(matches!(table.missing("match")[..], [Missing::AcidForbidden { .. }]));
    // Saying that it happened does not make it suit.
    table.draft("happened:match", "Acid was matched");
    table.act(Action::Happened { step: "match".into() }).unwrap();
    assert_eq!(table.run().facts.get(&Fact::ExchangerAcid), None);

    let mut table = Table::with(&["A"]);
    answer(&mut table, "metal", "stainless");
    answer(&mut table, "acid", "citric");
    table.done("match").unwrap();
    assert_eq!(table.run().facts.get(&Fact::ExchangerAcid), Some(&Value::Allowed));
}

#[test]
fn every_verdict_reason_and_note_has_words_in_both_languages() {
    for language in LANGUAGES {
        let words = Words::new(language, None).unwrap();
        let mut keys = Vec::new();
        for acid in ["hydrochloric", "citric", "phosphoric", "sulfamic"] {
            for metal in Metal::ALL {
                let (verdict, reason) = suits(Acid::parse(acid).unwrap(), metal);
                keys.extend([format!("acid-{}", verdict.name()), format!("acid-reason-{}", reason.name())]);
            }
        }
        for said in [Said::Parts, Said::Percent, Said::Dose, Said::Cups] {
            keys.push(format!("mix-said-{}", said.name()));
        }
        let parts = [("acid", "a"), ("metal", "m"), ("reason", "r")];
        for key in keys {
            assert_ne!(words.fill(&key, &parts), key, "{language}");
        }
    }
}

/// Every text of the phase's screen, and of its mixes.
fn screen(table: &Table, units: Units) -> String {
    let ftl = "condition-metal-zinc = Galvanised steel\ncondition-metal-stainless = Stainless steel\n\
               condition-acid-citric = Citric acid\ncondition-acid-hydrochloric = Hydrochloric acid\n\
               mix-bath = Bath\n    .water = Water\n    .concentrate = Descaler\n    .order-1 = Water first.\n";
    let words = Words::new("en", Some(ftl)).unwrap();
    let assignment = super::bench::assignment("a", &["A"]);
    let problems = BTreeMap::new();
    let visit = VisitView {
        visit: &table.visit,
        unit: &table.unit,
        run: table.run(),
        pack: &table.pack,
        assignment: &assignment,
        technician: &table.technician,
        drafts: &table.drafts,
        problems: &problems,
        sealed: false,
        elsewhere: false,
        safe: false,
        unsigned: false,
        shown: None,
    };
    let shown = show(&View {
        charge_percent: None,
        place: "phase:only",
        words: &words,
        units,
        now: &table.now,
        outbox: OutboxCount::default(),
        engine: &EngineView::default(),
        notices: &[],
        visit: Some(visit),
        due: &[],
        visits: &[],
        coming: &[],
        packs: &[],
        pack_words: &[],
        technician: &table.technician,
        procedures: &[],
        procedures_folder: false,
    });
    format!("{:?}", shown.blocks).replace("\\u{a0}", " ")
}

#[test]
fn the_card_of_a_mix_tells_amounts_in_either_units_and_what_the_label_contradicts() {
    let mut table = Table::with(&["A"]);
    table.read("parts", "10");
    let plain = screen(&table, Units::Metric);
    assert!(plain.contains("2.0 L") && plain.contains("200 mL") && !plain.contains("contradicts"), "{plain}");
    table.read("dose", "50");
    let told = screen(&table, Units::Metric);
    let line = "The label contradicts itself: by its parts it takes 200 mL, by its dose to a litre 110 mL.";
    assert!(told.contains(line), "{told}");
    let us = screen(&table, Units::Us);
    assert!(us.contains("6.8 fl oz") && us.contains("68 fl oz"), "{us}");
    let (water, acid) = (told.find("2.0 L").unwrap(), told.find("200 mL").unwrap());
    assert!(water < acid, "water stands first");
}

#[test]
fn the_step_that_calls_an_acid_allowed_shows_the_verdict() {
    let answer = |table: &mut Table, condition: &str, option: &str| {
        table.act(Action::Choose { field: format!("condition:{condition}"), option: option.into() }).unwrap();
    };
    let mut table = Table::with(&["A"]);
    assert!(screen(&table, Units::Metric).contains("It is not known which acid this is"));
    answer(&mut table, "acid", "hydrochloric");
    answer(&mut table, "metal", "stainless");
    let shown = screen(&table, Units::Metric);
    let verdict = "Hydrochloric acid on Stainless steel: forbidden. Its chloride pits";
    assert_eq!(shown.matches(verdict).count(), 1, "{shown}");
    answer(&mut table, "acid", "citric");
    assert!(screen(&table, Units::Metric).contains("Citric acid on Stainless steel: allowed."));
}
