//! Files that were made to harm whoever opens them: each is refused by name, and nothing is unpacked or swells.

use std::collections::BTreeSet;

use coilside_core::record::file::extract;

use crate::bench::{Visit, files, places, zipped};
use crate::{faults, known};

fn whole() -> Vec<(String, Vec<u8>)> {
    files(&Visit::whole().file()).into_iter().collect()
}

/// What is said of a record with these files beside its own, in this order.
fn with(more: &[(&str, &[u8])]) -> BTreeSet<(&'static str, String)> {
    let own = whole();
    let files: Vec<(&str, &[u8])> =
        own.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).chain(more.iter().copied()).collect();
    let report = known(&zipped(&files));
    faults(&report).into_iter().map(|(rule, part)| (rule, part.to_owned())).collect()
}

fn has(told: &BTreeSet<(&'static str, String)>, rule: &'static str, part: &str) -> bool {
    told.contains(&(rule, part.to_owned()))
}

#[test]
fn names_that_lead_out_of_the_folder_are_refused() {
    for name in
        ["../../etc/cron.d/x", "/etc/passwd", "zz/../../x", "C:\\x", "zz\\..\\x", "zz/", "zz//x", "z z", "zz\0x"]
    {
        let told = with(&[(name, b"x")]);
        let part: String = name.chars().map(|c| if c.is_control() { '?' } else { c }).collect();
        assert!(has(&told, "zip-name", &part), "{name}: {told:?}");
    }
}

#[test]
fn a_terminal_is_not_handed_its_own_commands_by_a_name() {
    let told = with(&[("zz\u{1b}[2J", b"x")]);
    assert!(told.iter().all(|(_, part)| !part.contains('\u{1b}')), "{told:?}");
}

#[test]
fn an_entry_that_is_there_twice_or_out_of_its_place_is_refused() {
    let words = files(&Visit::whole().file())["words/es.ftl"].clone();
    assert!(has(&with(&[("words/es.ftl", &words)]), "zip-twice", "words/es.ftl"));
    assert!(has(&with(&[("words/es.ftl", b"other")]), "zip-twice", "words/es.ftl"));
    assert!(has(&with(&[("README.txt", b"other")]), "zip-order", "README.txt"));
}

#[test]
fn a_file_that_the_record_does_not_name_is_refused() {
    let told = with(&[("words/zz.ftl", b"x")]);
    assert!(has(&told, "not-in-record", "words/zz.ftl") && has(&told, "sums-none", "words/zz.ftl"));
}

#[test]
fn nothing_is_unpacked_so_no_bomb_goes_off() {
    let mut file = Visit::whole().file();
    let place = places(&file).into_iter().find(|place| place.name == "record.json").unwrap();
    // Deflate, and a length of nearly 4 GB.
    file[place.head + 8] = 8;
    file[place.head + 22..place.head + 26].copy_from_slice(&u32::MAX.to_le_bytes());
    let report = known(&file);
    assert!(faults(&report).contains(&("zip-compressed", "record.json")), "{:?}", report.faults);
    // Stored, and said to be longer than the file is.
    let mut file = Visit::whole().file();
    file[place.head + 18..place.head + 26].copy_from_slice(&[0xff; 8]);
    assert!(faults(&known(&file)).contains(&("zip-short", "record.json")));
}

#[test]
fn a_wrong_checksum_is_named() {
    let mut file = Visit::whole().file();
    let place = places(&file).into_iter().find(|place| place.name == "words/en.ftl").unwrap();
    file[place.head + 14] ^= 0x10;
    let report = known(&file);
    assert!(faults(&report).contains(&("zip-crc", "words/en.ftl")), "{:?}", report.faults);
}

#[test]
fn data_before_between_and_behind_the_files_are_refused() {
    let file = Visit::whole().file();
    let all = places(&file);
    let put_in = |at: usize| [&file[..at], b"hidden", &file[at..]].concat();
    assert_eq!(faults(&known(&put_in(0)))[0], ("zip-none", "README.txt"));
    for place in &all {
        let report = known(&put_in(place.end));
        assert_eq!(faults(&report)[0], ("zip-lost", place.name.as_str()));
    }
    assert_eq!(faults(&known(&put_in(file.len()))), [("zip-after", "")]);
    // In front of the end, behind the list.
    let report = known(&put_in(file.len() - 22));
    assert_eq!(faults(&report), [("zip-end", ""), ("zip-after", "")]);
}

#[test]
fn a_list_that_tells_of_other_files_than_are_there_is_refused() {
    // A reader that trusts the list would see other bytes than one that reads the files.
    let own = whole();
    let one: Vec<(&str, &[u8])> = own.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
    let mut other = own.clone();
    other[0].1[0] ^= 1;
    let other: Vec<(&str, &[u8])> = other.iter().map(|(name, bytes)| (name.as_str(), bytes.as_slice())).collect();
    let (one, other) = (zipped(&one), zipped(&other));
    let list = places(&one).last().unwrap().end;
    let report = known(&[&one[..list], &other[list..]].concat());
    assert_eq!(faults(&report), [("zip-list", "README.txt")]);
}

#[test]
fn a_file_of_very_many_entries_is_not_read_to_its_end() {
    let names: Vec<String> = (0..6_000).map(|at| format!("words/{at:05}.ftl")).collect();
    let files: Vec<(&str, &[u8])> = names.iter().map(|name| (name.as_str(), &b""[..])).collect();
    let report = known(&zipped(&files));
    assert!(faults(&report).contains(&("zip-many", "")));
}

#[test]
fn a_file_that_is_too_large_to_be_what_it_says_is_not_taken_into_memory() {
    let large = vec![b' '; 5 << 20];
    let report = known(&zipped(&[("README.txt", &large)]));
    assert!(faults(&report).contains(&("too-large", "README.txt")));
}

#[test]
fn what_is_no_record_at_all_is_told_as_such() {
    for bytes in [&b""[..], b"PK", b"%PDF-1.7", &[0; 4096], b"PK\x05\x06\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0\0"] {
        let report = known(bytes);
        assert_eq!(faults(&report)[0].0, "zip-none");
        assert_eq!(report.visit, None);
    }
}

#[test]
fn only_photographs_are_taken_out_and_each_by_its_digest() {
    let visit = Visit::whole();
    let file = visit.file();
    let mut taken = std::collections::BTreeMap::new();
    extract(&mut file.as_slice(), &mut |digest, bytes| {
        let mut copy = Vec::new();
        bytes.read_to_end(&mut copy)?;
        taken.insert(digest.clone(), copy);
        Ok(())
    })
    .unwrap();
    assert!(taken == visit.shelf.0);
}
