//! The reader of record files on mangled ones: it never panics, never takes one for whole, and uses no more memory than the
//! file has. A seeded stand-in for a fuzzer, on the corpus in `core/tests/record/corpus` and on a whole record.
//! `MANGLED=n cargo test -p coilside-core --test record mangled` runs n rounds.

use std::fs;

use coilside_core::record::file::told::lines;
use coilside_core::words::Words;

use crate::bench::{Visit, places};
use crate::changed::Seeded;
use crate::known;

/// Numbers at which readers stumble.
const EDGES: [u32; 8] = [0, 1, 0x7f, 0xff, 0xffff, 0x7fff_ffff, 0xffff_fffe, 0xffff_ffff];

fn mangle(file: &[u8], heads: &[usize], random: &mut Seeded) -> Vec<u8> {
    let mut bytes = file.to_vec();
    for _ in 0..1 + random.below(6) {
        let head = if heads.is_empty() { 0 } else { heads[random.below(heads.len())] };
        let near = (head + random.below(46)).min(bytes.len().saturating_sub(1));
        let any = random.below(bytes.len().max(1));
        match random.below(7) {
            0 if !bytes.is_empty() => bytes[any] = random.next() as u8,
            1 if !bytes.is_empty() => bytes[near] = random.next() as u8,
            2 if near + 4 <= bytes.len() => {
                bytes[near..near + 4].copy_from_slice(&EDGES[random.below(EDGES.len())].to_le_bytes());
            }
            3 => bytes.truncate(any),
            4 if any < bytes.len() => {
                let upto = (any + random.below(200)).min(bytes.len());
                let piece = bytes[any..upto].to_vec();
                let to = random.below(bytes.len());
                bytes.splice(to..to, piece);
            }
            5 if any < bytes.len() => drop(bytes.drain(any..(any + random.below(100)).min(bytes.len()))),
            _ if near + 4 <= bytes.len() => bytes[near..near + 4].copy_from_slice(b"PK\x03\x04"),
            _ => {}
        }
    }
    bytes
}

#[test]
fn mangled_records_are_never_taken_for_whole_and_always_told_in_words() {
    let rounds = std::env::var("MANGLED").ok().and_then(|n| n.parse().ok()).unwrap_or(400);
    let whole = Visit::whole().file();
    let heads: Vec<usize> = places(&whole).iter().map(|place| place.head).collect();
    let words = Words::new("es", None).unwrap();
    let mut corpus = vec![(whole.clone(), heads)];
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/record/corpus");
    for entry in fs::read_dir(folder).unwrap() {
        corpus.push((fs::read(entry.unwrap().path()).unwrap(), Vec::new()));
    }
    assert!(corpus.len() > 5, "the corpus is not there");
    let mut random = Seeded(42);
    for (file, _) in &corpus[1..] {
        assert!(!known(file).holds(), "what is kept in the corpus is broken");
    }
    for round in 0..rounds {
        let (file, heads) = &corpus[if round % 2 == 0 { 0 } else { random.below(corpus.len()) }];
        let mangled = mangle(file, heads, &mut random);
        let report = known(&mangled);
        assert_eq!(report.holds(), mangled == whole, "round {round}");
        assert!(lines(&report, &words).iter().all(|(_, line)| !line.contains("record-")), "round {round}");
    }
}
