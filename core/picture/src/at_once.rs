//! Two things at once, where there are threads.

use std::thread;

/// Does both, `beside` on a thread of its own, and returns what came of them. Where no thread is to be had (WebAssembly, a system
/// that is out of them) it does one after the other.
pub fn at_once<A: Send, B>(beside: impl Fn() -> A + Sync, here: impl FnOnce() -> B) -> (A, B) {
    let beside = &beside;
    thread::scope(|scope| {
        let running = thread::Builder::new().spawn_scoped(scope, beside);
        let there = here();
        let done = running.ok().and_then(|running| running.join().ok());
        (done.unwrap_or_else(beside), there)
    })
}
