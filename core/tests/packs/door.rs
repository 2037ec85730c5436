//! The same actions once more through the door, with its store and screens.

use coilside_core::action::Action;
use coilside_core::field::{Field, Setup};
use coilside_core::id::Letter;
use coilside_core::now::Now;
use coilside_core::round::{AssignedUnit, Assignment, Owner, Site};
use coilside_core::visit::apply::replay;
use p256::ecdsa::SigningKey;

use crate::engine::Engine;

fn assignment(pack: &str) -> Assignment {
    Assignment {
        id: "a1".into(),
        due: "2026-05-04".into(),
        reason: "Yearly service".into(),
        site: Site {
            name: "Mill house".into(),
            address: "1 Mill Lane, Lower Weir".into(),
            latitude_deg: 1.5,
            longitude_deg: 2.5,
            note: String::new(),
        },
        owner: Owner { name: "A. Weaver".into(), phone: "555 0100".into(), language: "en".into() },
        units: vec![AssignedUnit {
            letter: "A".into(),
            unit: "U-A".into(),
            maker: "Invented".into(),
            model: "Model One".into(),
            serial: String::new(),
            pack: pack.into(),
            ..AssignedUnit::default()
        }],
        ..Assignment::default()
    }
}

/// Does every action that the engine kept at a door in a folder of its own, looks every now and then whether the door's log
/// means the same there, and always at the end. How many actions that were.
pub(crate) fn do_again(engine: &Engine<'_>) -> usize {
    let kept = engine.kept.clone().unwrap();
    let memory = std::path::Path::new("/dev/shm");
    let folder = if memory.is_dir() { tempfile::tempdir_in(memory) } else { tempfile::tempdir() }.unwrap();
    let start = kept
        .first()
        .map_or_else(|| Now { utc_ms: 0, offset_min: 0, mono_ms: 0, mono_epoch: "".into() }, |first| first.0.clone());
    let key = SigningKey::from_slice(&[7; 32]).unwrap();
    let field = Field::open(Setup {
        folder: folder.path().to_str().unwrap().to_owned(),
        entropy: vec![7; 32],
        now: start.clone(),
        language: None,
        public_key: key.verifying_key().to_sec1_point(false).as_bytes().to_vec(),
    })
    .unwrap();
    field.assigned(&[assignment(&engine.pack.pack)]).unwrap();
    let mut count = 0;
    let mut act = |action: Action, now: &Now| {
        count += 1;
        field.act(&format!("act-{count}"), &action, now).unwrap();
        count
    };
    act(Action::StartVisit { assignment: "a1".into() }, &start);
    let mut replayed = Engine::new(engine.pack);
    let visit = field.current_visit().unwrap();
    let mut acts = 0;
    for (now, action, drafts) in &kept {
        for (field, text) in drafts {
            act(Action::Draft { field: field.clone(), text: text.clone() }, now);
        }
        acts = act(action.clone(), now);
        replayed.at(now.clone());
        let words: Vec<_> = drafts.iter().map(|(field, text)| (field.clone(), text.as_str())).collect();
        replayed.act(action, &words).unwrap();
        let events = field.events(&visit).unwrap();
        let here = replay(&visit, events.iter().map(Vec::as_slice)).unwrap();
        let (here, there) = (here.run(&Letter("A".into())).unwrap(), replayed.run());
        assert_eq!((here.facts, here.lapsed), (there.facts, there.lapsed), "after {action:?}");
        assert_eq!((&here.order, &here.conditions), (&there.order, &there.conditions), "after {action:?}");
    }
    acts as usize
}
