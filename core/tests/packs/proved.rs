//! Every pack that comes with the core is proved.

use coilside_core::procedure::check::{Verdict, prove};
use coilside_core::procedure::library::built_in;

#[test]
fn every_built_in_pack_is_proved() {
    for loaded in built_in().unwrap() {
        let started = std::time::Instant::now();
        let proof = prove(&loaded.pack);
        println!(
            "{}: {} starts, straight {:?}, mended {:?}, with pauses {}, {:?}",
            proof.pack,
            proof.starts,
            proof.straight,
            proof.mended,
            proof.paused,
            started.elapsed()
        );
        assert_eq!(proof.verdict, Verdict::Proved, "{}", proof.pack);
    }
}
