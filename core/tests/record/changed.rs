//! One byte of a record is changed, anywhere: it is noticed, and what was changed is named.

use coilside_core::record::file::told::of_fault;
use coilside_core::record::file::verify::Fault;
use coilside_core::words::Words;

use crate::bench::{Visit, places};
use crate::known;

/// Numbers that look random and are the same on every machine: splitmix64 (S. Vigna, public domain, from memory).
pub(crate) struct Seeded(pub(crate) u64);

impl Seeded {
    pub(crate) fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    pub(crate) fn below(&mut self, bound: usize) -> usize {
        (self.next() % bound as u64) as usize
    }
}

/// Changes one byte and asks whether the report names the file in which it lies, or the ZIP's own part of it.
fn check(file: &[u8], at: usize, to: u8, words: &Words) {
    let mut changed = file.to_vec();
    assert_ne!(changed[at], to);
    changed[at] = to;
    let report = known(&changed);
    assert!(!report.holds(), "byte {at} was changed unseen");
    assert!(report.holding.is_none());
    let place = places(file).into_iter().find(|place| (place.head..place.end).contains(&at));
    let told: Vec<String> = report.faults.iter().map(|fault| of_fault(fault, words)).collect();
    let named = match &place {
        // In a file's bytes: the file is named. Before them: the file, or what its changed name is now.
        Some(place) if at >= place.data => told.iter().any(|line| line.contains(&place.name)),
        Some(place) => {
            told.iter().any(|line| line.contains(&place.name) || line.contains(&format!("byte {}", place.head)))
        }
        // A spoilt sign of four letters is told where the sign begins.
        None => (at - 3..=at).any(|at| told.iter().any(|line| line.contains(&format!("byte {at}")))),
    };
    assert!(named, "byte {at} of {place:?} is not named: {told:#?}");
    assert!(told.iter().all(|line| !line.contains("record-fault")), "{told:?}");
}

#[test]
fn a_thousand_changed_bytes_are_all_noticed_and_named() {
    let file = {
        let mut visit = Visit::whole();
        visit.addendum("Later.");
        visit.seal(crate::bench::DEVICE);
        visit.vouch(crate::bench::OFFICE, crate::bench::DEVICE);
        visit.file()
    };
    let words = Words::new("en", None).unwrap();
    assert!(known(&file).holds());
    let mut random = Seeded(20_260_302);
    for _ in 0..1_000 {
        let at = random.below(file.len());
        let to = file[at] ^ (1 + random.below(255) as u8);
        check(&file, at, to, &words);
    }
}

/// Most bytes of a record are photographs and procedures; of what holds it together every second one is tried.
#[test]
fn what_holds_the_zip_together_and_the_small_files_are_noticed_and_named_byte_by_byte() {
    let file = Visit::whole().file();
    let words = Words::new("en", None).unwrap();
    let mut random = Seeded(7);
    let places = places(&file);
    let own = places.iter().flat_map(|place| place.head..place.data);
    let names = ["SHA256SUMS", "office.jws", "keys/device.jwk", "keys/office-1.jwk", "personal.json"];
    let small =
        places.iter().filter(|place| names.contains(&place.name.as_str())).flat_map(|place| place.data..place.end);
    let list = places.last().unwrap().end..file.len();
    for at in own.chain(small).chain(list).step_by(2) {
        let to = file[at] ^ (1 << random.below(8));
        check(&file, at, to, &words);
    }
}

#[test]
fn a_change_in_an_event_names_the_event() {
    let visit = Visit::whole();
    let file = visit.file();
    let record = places(&file).into_iter().find(|place| place.name == "record.json").unwrap();
    let mut random = Seeded(11);
    for seq in 0..visit.document.events.len() {
        // As it stands inside of record.json: a text in a text.
        let inside = serde_json::to_string(&visit.document.events[seq]).unwrap();
        let inside = inside.trim_matches('"').as_bytes();
        let at = record.data + file[record.data..record.end].windows(inside.len()).position(|w| w == inside).unwrap();
        let mut named = 0;
        for _ in 0..20 {
            let mut changed = file.clone();
            let spot = at + random.below(inside.len());
            // A letter or digit for another: the text stays a text, and the event one that can be read or cannot.
            changed[spot] = if changed[spot] == b'7' { b'8' } else { b'7' };
            let report = known(&changed);
            assert!(!report.holds());
            let of_it = |values: &[(&str, String)]| {
                values.iter().any(|(name, value)| *name == "seq" && *value == seq.to_string())
            };
            let others = report.faults.iter().filter(|fault| fault.rule == "event-altered" && !of_it(&fault.values));
            assert_eq!(others.collect::<Vec<_>>(), Vec::<&Fault>::new(), "event {seq} was changed at {spot}");
            named +=
                usize::from(report.faults.iter().any(|fault| fault.rule.starts_with("event-") && of_it(&fault.values)));
        }
        // Where the change breaks record.json itself (a backslash), no event can be told any more; the file is named.
        assert!(named >= 15, "event {seq} was named {named} times of 20");
    }
}

#[test]
fn a_record_that_is_cut_short_or_goes_on_behind_its_end_is_noticed() {
    let file = Visit::whole().file();
    let mut random = Seeded(3);
    for _ in 0..200 {
        let length = random.below(file.len());
        assert!(!known(&file[..length]).holds(), "{length} of {} bytes", file.len());
    }
    let longer = [file.as_slice(), b"\0"].concat();
    assert_eq!(crate::faults(&known(&longer)), [("zip-after", "")]);
}
