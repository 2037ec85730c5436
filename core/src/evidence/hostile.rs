//! Any bytes at all, and the kept corpus of `tests/fuzz` broken in any way: intake answers and never panics.

use std::path::PathBuf;

use proptest::prelude::*;

use super::look;
use crate::effect::PlaceFix;
use crate::now::Now;

fn corpus() -> Vec<Vec<u8>> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../tests/fuzz/corpus/intake");
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.sort();
    files.iter().map(|file| std::fs::read(file).unwrap()).collect()
}

/// One way to break a file.
#[derive(Clone, Debug)]
enum Break {
    Set(prop::sample::Index, u8),
    Cut(prop::sample::Index),
    Repeat(prop::sample::Index, prop::sample::Index),
    Join(prop::sample::Index),
}

fn breaks() -> impl Strategy<Value = Break> {
    prop_oneof![
        6 => (any::<prop::sample::Index>(), any::<u8>()).prop_map(|(at, byte)| Break::Set(at, byte)),
        1 => any::<prop::sample::Index>().prop_map(Break::Cut),
        1 => (any::<prop::sample::Index>(), any::<prop::sample::Index>()).prop_map(|(from, to)| Break::Repeat(from, to)),
        1 => any::<prop::sample::Index>().prop_map(Break::Join),
    ]
}

fn broken(mut bytes: Vec<u8>, ways: &[Break], others: &[Vec<u8>]) -> Vec<u8> {
    for way in ways {
        if bytes.is_empty() {
            break;
        }
        match way {
            Break::Set(at, byte) => {
                let at = at.index(bytes.len());
                bytes[at] = *byte;
            }
            Break::Cut(at) => bytes.truncate(at.index(bytes.len())),
            Break::Repeat(from, to) => {
                let (from, to) = (from.index(bytes.len()), to.index(bytes.len()));
                let part = bytes[from.min(to)..from.max(to)].to_vec();
                bytes.splice(from..from, part);
            }
            Break::Join(other) => bytes.extend_from_slice(&others[other.index(others.len())]),
        }
    }
    bytes
}

/// Takes it in, and checks what must hold of anything that is taken.
fn taken_in(bytes: &[u8]) {
    let now = Now { utc_ms: 1_772_352_000_000, offset_min: 120, mono_ms: 0, mono_epoch: "a".into() };
    let place = PlaceFix { latitude_deg: 50.0, longitude_deg: 8.0, accuracy_m: 9.0, age_ms: 0 };
    let Ok((prepared, preview)) = look(bytes, Some(&place), &now) else { return };
    assert_eq!(prepared.bytes, bytes.len() as u64);
    assert_eq!(preview.is_none(), prepared.flags.contains(&crate::visit::event::PhotoFlag::NoPreview));
    assert!(preview.is_none_or(|preview| image::load_from_memory(&preview).is_ok()), "a preview can be shown");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1500, ..ProptestConfig::default() })]

    #[test]
    fn intake_answers_to_any_broken_file(
        which in any::<prop::sample::Index>(),
        ways in prop::collection::vec(breaks(), 0..8),
    ) {
        let corpus = corpus();
        taken_in(&broken(which.get(&corpus).clone(), &ways, &corpus));
    }

    #[test]
    fn intake_answers_to_any_bytes(
        head in prop::sample::select(vec![&b""[..], b"\xff\xd8\xff\xe1", b"\x89PNG\r\n\x1a\n", b"RIFF\x10\0\0\0WEBPVP8 ", b"\0\0\0\x18ftypheic"]),
        rest in prop::collection::vec(any::<u8>(), 0..600),
    ) {
        taken_in(&[head, &rest].concat());
    }
}

#[test]
fn every_file_of_the_kept_corpus_is_answered() {
    let corpus = corpus();
    assert!(corpus.len() >= 20, "the corpus is there");
    corpus.iter().for_each(|bytes| taken_in(bytes));
}
