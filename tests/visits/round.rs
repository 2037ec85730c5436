//! The day around the visits: what is due and covered, in which order, the load list, history, what was used.

use coilside_core::action::Action;
use coilside_core::round::cover::{Reason, Verdict};
use coilside_core::round::{
    Accreditation, Appointment, Assignment, OpenFinding, PastReading, Spot, Technician as Who, Terms,
};
use coilside_core::screen::{Block, Screen, Tone};
use coilside_core::visit::event::{Body, Event, Severity};
use coilside_tests::assignment;
use coilside_tests::look::{field_block, notice_lines};
use coilside_tests::scene::Scene;
use coilside_tests::texts::Keys;

const CARD: &str = "Electrical work";

fn terms() -> Terms {
    Terms {
        id: "t".into(),
        name: "Five Years".into(),
        interval_months: 12,
        grace_days: 30,
        first_within_months: None,
        accreditations: vec![CARD.into()],
        shots: vec!["coil-after".into()],
        readings: vec!["insulation".into(), "tap-hot".into()],
    }
}

/// On the day of the scenes, 2026-05-04, it is due for 14 days, and cover ends in 16.
fn covered(id: &str) -> Assignment {
    let mut assigned = assignment(id);
    let unit = &mut assigned.units[0];
    unit.terms = Some(terms());
    unit.last_service = Some("2025-04-20".into());
    unit.history = flows();
    unit.findings =
        vec![OpenFinding { severity: Severity::Soon, text: "Anode at its end.".into(), date: "2025-04-20".into() }];
    assigned
}

fn flows() -> Vec<PastReading> {
    let years = [
        ("2021-05-03", "10.9"),
        ("2022-05-02", "10.4"),
        ("2023-05-08", "10.1"),
        ("2024-05-06", "9.9"),
        ("2025-05-05", "9.6"),
    ];
    let of = |(date, value): &(&str, &str)| PastReading {
        reading: "flow-found".into(),
        value: (*value).into(),
        unit: "L/min".into(),
        date: (*date).into(),
    };
    years.iter().map(of).collect()
}

fn who(valid_until: &str) -> Who {
    let card = Accreditation { name: CARD.into(), number: "1".into(), valid_until: valid_until.into() };
    Who { name: "I. Fallow".into(), accreditations: vec![card], ..Who::default() }
}

fn texts(screen: &Screen) -> Vec<(String, Tone)> {
    let text = |block: &Block| match block {
        Block::Text { text, tone, .. } => Some((text.clone(), *tone)),
        _ => None,
    };
    screen.blocks.iter().filter_map(text).collect()
}

fn said(screen: &Screen) -> String {
    texts(screen).into_iter().map(|(text, _)| text).collect::<Vec<_>>().join("\n")
}

fn no_bare_key(screen: &Screen) {
    let keys = Keys::of_the_sources().unwrap();
    assert_eq!(keys.faults(screen), Vec::<String>::new());
}

#[test]
fn the_round_tells_what_is_due_and_what_is_left_of_cover_and_what_a_lapsed_card_means() {
    let mut scene = Scene::before(&[]).unwrap();
    scene.field().assigned(&[covered("a1")]).unwrap();
    // Nobody said what the technician may do: that is told as not known.
    assert!(said(&scene.screen().unwrap()).contains("is not known here"));
    scene.field().worked_by(&who("2026-05-01")).unwrap();
    let screen = scene.screen().unwrap();
    let due =
        texts(&screen).into_iter().find(|(text, _)| text.starts_with("Due 14 days ago, cover ends in 16.")).unwrap();
    assert_eq!(due.1, Tone::Attention);
    assert!(said(&screen).contains("By the terms “Five Years”: not all that they ask for is there. The desk decides."));
    assert!(said(&screen).contains("Still open since 2025-04-20: Anode at its end."));
    let notices = notice_lines(&screen.notices).join("\n");
    assert!(
        notices.contains("“Electrical work” lapsed on 2026-05-01.") && notices.contains("at: Mill house"),
        "{notices}"
    );
    no_bare_key(&screen);
    scene.act(&Action::Set { setting: "language".into(), value: "es".into() }).unwrap();
    let screen = scene.go("round").unwrap();
    assert!(said(&screen).contains("Venció hace 14 días, la cobertura termina en 16."));
    no_bare_key(&screen);
    // With a card that holds for long nothing is said of it.
    scene.field().worked_by(&who("2028-05-01")).unwrap();
    assert!(scene.screen().unwrap().notices.is_empty());
}

fn at(id: &str, name: &str, longitude: f64, appointment: Option<(&str, &str)>) -> Assignment {
    let mut assigned = assignment(id);
    (assigned.site.name, assigned.site.latitude_deg, assigned.site.longitude_deg) = (name.into(), 1.5, longitude);
    assigned.start = Some(Spot { latitude_deg: 1.5, longitude_deg: 2.5 });
    assigned.units[0].past_minutes = vec![60, 60, 60];
    assigned.appointment = appointment.map(|(from, until)| Appointment {
        day: "2026-05-04".into(),
        from: from.into(),
        until: until.into(),
    });
    assigned
}

fn sites(screen: &Screen) -> Vec<String> {
    let site = |block: &Block| match block {
        Block::Text { text, level: 3, .. } => Some(text.clone()),
        _ => None,
    };
    screen.blocks.iter().filter_map(site).collect()
}

#[test]
fn the_day_goes_by_fixed_times_and_then_by_the_way_and_says_what_cannot_be_kept() {
    let scene = Scene::before(&[]).unwrap();
    // It is ten o'clock where the scene is. Far lies 33 km off, near 3 km.
    let far = at("a2", "Far", 2.8, Some(("11:00", "11:30")));
    let near = at("a1", "Near", 2.53, None);
    let later = Assignment { planned: Some("2026-05-05".into()), ..at("a3", "Tomorrow", 2.5, None) };
    scene.field().assigned(&[far, near.clone(), later.clone()]).unwrap();
    let screen = scene.screen().unwrap();
    assert_eq!(sites(&screen), ["Far", "Near", "Tomorrow"]);
    let text = said(&screen);
    assert!(
        text.contains("There about 11:05 after 43.4 km, done about 12:05.") && text.contains("Agreed: 11:00 to 11:30."),
        "{text}"
    );
    assert!(text.contains("straight lines times 1.3"), "{text}");
    // Half past ten cannot be kept: it is told, and nothing else is done before it.
    let far = at("a2", "Far", 2.8, Some(("10:00", "10:30")));
    scene.field().assigned(&[far, near, later]).unwrap();
    let screen = scene.screen().unwrap();
    let late = texts(&screen).into_iter().find(|(text, _)| text.starts_with("Cannot be kept")).unwrap();
    assert_eq!(
        late,
        ("Cannot be kept: agreed until 10:30, there at 11:05 at the earliest. Call the owner.".into(), Tone::Attention)
    );
    assert_eq!(sites(&screen), ["Far", "Near", "Tomorrow"]);
    no_bare_key(&screen);
}

#[test]
fn the_load_list_is_reached_from_the_round_and_has_its_words() {
    let mut scene = Scene::before(&[]).unwrap();
    let to_load = Action::Go { to: "load".into() };
    let offers = |screen: &Screen| {
        screen.blocks.iter().any(|block| matches!(block, Block::Button { button } if button.press == to_load))
    };
    assert!(offers(&scene.screen().unwrap()));
    for language in ["en", "es"] {
        scene.act(&Action::Set { setting: "language".into(), value: language.into() }).unwrap();
        let screen = scene.go("load").unwrap();
        assert_eq!(screen.place, "load");
        no_bare_key(&screen);
        let tables: Vec<&String> = screen
            .blocks
            .iter()
            .filter_map(|block| if let Block::Table { caption, .. } = block { Some(caption) } else { None })
            .collect();
        assert!(tables.contains(&&scene.text(language, "load-instruments")), "{tables:?}");
    }
    // A procedure that is not there is told and hides nothing else.
    let mut strange = assignment("a9");
    strange.units[0].pack = "flying-machine".into();
    scene.field().assigned(&[strange]).unwrap();
    assert!(said(&scene.go("load").unwrap()).contains("flying-machine"));
}

#[test]
fn history_tells_open_findings_and_where_the_readings_go() {
    let mut scene = Scene::before(&[]).unwrap();
    scene.field().assigned(&[covered("a1")]).unwrap();
    scene.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
    for language in ["en", "es"] {
        scene.act(&Action::Set { setting: "language".into(), value: language.into() }).unwrap();
        let screen = scene.go("history").unwrap();
        no_bare_key(&screen);
        assert!(said(&screen).contains("Anode at its end."));
        let falls = scene.text(language, "history-falls");
        let told = screen.blocks.iter().any(
            |block| matches!(block, Block::Table { rows, .. } if rows.iter().any(|row| row.last() == Some(&falls))),
        );
        assert!(told, "{:?}", screen.blocks);
        let charts = screen.blocks.iter().filter(|block| matches!(block, Block::Chart { bars, .. } if bars.len() == 5));
        assert_eq!(charts.count(), 1);
    }
}

#[test]
fn what_a_past_visit_left_open_stands_until_this_one_mends_it() {
    let mut scene = Scene::before(&[]).unwrap();
    let mut assigned = covered("a1");
    let found = |severity, text: &str| OpenFinding { severity, text: text.into(), date: "2025-04-20".into() };
    assigned.units[0].findings =
        vec![found(Severity::Note, "Two fins combed."), found(Severity::Unsafe, "Cable chafed through.")];
    scene.field().assigned(&[assigned]).unwrap();
    scene.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
    let run = scene.run().unwrap();
    assert_eq!(run.findings.len(), 1, "a note asks for nothing");
    assert_eq!(run.findings[0].since.as_deref(), Some("2025-04-20"));
    assert!(said(&scene.go("findings").unwrap()).contains("Cable chafed through. (open since 2025-04-20)"));
    scene.go("now").unwrap();
    scene.play_to("tell-owner").unwrap();
    let refused = scene.act(&Action::Done { step: "tell-owner".into() }).unwrap().screen;
    let told = scene.text("en", "danger-hand-over-unsafe");
    assert!(notice_lines(&refused.notices).contains(&told), "an old danger holds the hand-over as a new one does");
    scene.draft("mended:0", "New cable").unwrap();
    scene.go("findings").unwrap();
    scene.act(&Action::MendFinding { finding: "0".into() }).unwrap();
    scene.go("now").unwrap();
    scene.act(&Action::Done { step: "tell-owner".into() }).unwrap();
    assert!(scene.run().unwrap().is_behind("tell-owner"));
}

fn events(scene: &Scene) -> Vec<Body> {
    let events = scene.events().unwrap();
    events.iter().enumerate().map(|(seq, bytes)| Event::from_bytes(bytes, seq as u64).unwrap().body).collect()
}

#[test]
fn the_seal_writes_down_what_the_terms_ask_for_beside_what_is_there() {
    let mut scene = Scene::before(&[]).unwrap();
    scene.field().assigned(&[covered("a1")]).unwrap();
    scene.field().worked_by(&who("2026-12-31")).unwrap();
    scene.act(&Action::StartVisit { assignment: "a1".into() }).unwrap();
    scene.play_on().unwrap();
    let bodies = events(&scene);
    let at = bodies.iter().position(|body| matches!(body, Body::CoverJudged { .. })).unwrap();
    assert!(matches!(bodies[at + 1], Body::SealPrepared { .. }), "it stands under the seal");
    let judged = &scene.visit().unwrap().cover["A"];
    assert_eq!((judged.verdict, judged.terms.as_str()), (Verdict::AsAsked, "Five Years"));
    assert_eq!(
        judged.reasons,
        [
            Reason::InGrace { days: 14, end: "2026-05-20".into() },
            Reason::Accredited { name: CARD.into(), until: "2026-12-31".into() },
            Reason::Evidence { count: 3 },
        ]
    );
}

#[test]
fn a_visit_without_terms_is_not_judged() {
    let mut scene = Scene::begun(&[]).unwrap();
    scene.play_on().unwrap();
    assert!(!events(&scene).iter().any(|body| matches!(body, Body::CoverJudged { .. })));
}

#[test]
fn what_was_used_is_corrected_by_hand_and_both_stand_in_the_record() {
    let mut scene = Scene::at_step("tell-owner", &[]).unwrap();
    let taken = |screen: &Screen| match field_block(screen, "used:time") {
        Some(Block::Number { hint, taken, problem, text, .. }) => {
            (hint.clone(), taken.clone(), problem.clone(), text.clone())
        }
        other => panic!("{other:?}"),
    };
    let screen = scene.go("used").unwrap();
    no_bare_key(&screen);
    let (hint, none, _, _) = taken(&screen);
    assert!(hint.starts_with("Worked out: ") && none.is_none(), "{hint}");
    // Half typed it changes nothing; what is no number stays with its reason.
    scene.draft("used:time", "9").unwrap();
    assert!(!events(&scene).iter().any(|body| matches!(body, Body::UsedCorrected { .. })));
    let turn = scene.enter("used:time", "nine").unwrap();
    assert_eq!(taken(&turn.screen).2.as_deref(), Some("“nine” is not a number. Use digits, with a comma or a point."));
    let turn = scene.enter("used:time", "-5").unwrap();
    assert!(taken(&turn.screen).2.is_some_and(|problem| problem.contains("That cannot be")));
    let turn = scene.enter("used:time", "95").unwrap();
    assert_eq!(taken(&turn.screen).1.as_deref(), Some("Corrected: 95\u{a0}min"));
    match scene.last_event().unwrap().body {
        Body::UsedCorrected { unit, item, amount, measure, typed } => {
            assert_eq!((unit.as_str(), item.as_str(), amount.as_str(), measure.as_str()), ("-", "time", "95", "min"));
            assert_eq!(typed, "95");
        }
        other => panic!("{other:?}"),
    }
    // What the procedure does not have cannot be used.
    assert!(!scene.enter("used:part-moon", "1").unwrap().screen.notices.is_empty());
    scene.go("now").unwrap();
    scene.play_on().unwrap();
    let sealed = scene.go("used").unwrap();
    let row = vec!["Time on site".to_owned(), "95\u{a0}min".to_owned()];
    assert!(sealed.blocks.iter().any(|block| matches!(block, Block::Table { rows, .. } if rows.contains(&row))));
}

#[test]
fn of_a_visit_that_was_stopped_it_can_still_be_told_what_was_used() {
    let mut scene = Scene::begun(&[]).unwrap();
    scene.draft("break-off", "Called away").unwrap();
    scene.act(&Action::BreakOff).unwrap();
    scene.go("used").unwrap();
    scene.enter("used:time", "12").unwrap();
    assert!(matches!(scene.last_event().unwrap().body, Body::UsedCorrected { .. }));
}
