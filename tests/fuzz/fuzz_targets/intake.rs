//! Any bytes through the intake, guided by coverage. `tests/fuzz/run` builds and starts it.
#![no_main]

use coilside_core::evidence::look;
use coilside_core::now::Now;
use libfuzzer_sys::fuzz_target;

// Where a decoder fails inside, the intake says so: only a panic that leaves the intake is a crash, and libfuzzer-sys finds that
// without its hook, which would end the program at the first.
fuzz_target!(init: std::panic::set_hook(Box::new(|_| {})), |bytes: &[u8]| {
    let now = Now { utc_ms: 1_772_352_000_000, offset_min: 120, mono_ms: 0, mono_epoch: "a".into() };
    let _ = look(bytes, None, &now);
});
