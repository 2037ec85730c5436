//! The network of a world: what becomes of a request and of its answer.

use coilside_core::sync::{Link, SendRequest};

use super::parts::Reply;
use crate::random::Random;

/// What a hotel's or a provider's network says instead of the office.
const PAGE: &[u8] = b"<!doctype html><title>Welcome to the hotel's network</title>";
/// A shell gives a request up after this time (`web/src/sender.rs`).
const SHELL_GIVES_UP_MS: i64 = 80_000;

/// How the network is at a place. Chances are of a thousand.
#[derive(Clone, Debug)]
pub(crate) struct Weather {
    pub(crate) link: Link,
    pub(crate) latency_ms: i64,
    pub(crate) bytes_per_s: u64,
    pub(crate) lost: u64,
    pub(crate) broken: u64,
    pub(crate) answer_lost: u64,
    pub(crate) twice: u64,
    pub(crate) late: u64,
    pub(crate) proxy: u64,
    pub(crate) spoilt: u64,
    pub(crate) portal: bool,
    /// The system lets the app run for so long, every so often.
    pub(crate) window: Option<(i64, i64)>,
}

impl Weather {
    /// The house's own network.
    pub(crate) const fn fair() -> Weather {
        Weather {
            link: Link::Unmetered,
            latency_ms: 40,
            bytes_per_s: 1_000_000,
            lost: 0,
            broken: 0,
            answer_lost: 0,
            twice: 0,
            late: 0,
            proxy: 0,
            spoilt: 0,
            portal: false,
            window: None,
        }
    }

    /// Any other one.
    pub(crate) fn any(random: &mut Random) -> Weather {
        let mut some = |most: u64| if random.chance(400) { random.below(most) } else { 0 };
        let (lost, broken, answer_lost, twice) = (some(500), some(500), some(500), some(400));
        let (late, proxy, spoilt) = (some(300), some(400), some(500));
        Weather {
            link: random.pick(&[Link::Unmetered, Link::Metered, Link::Metered, Link::None]),
            latency_ms: random.pick(&[30, 200, 800, 4_000]),
            bytes_per_s: random.pick(&[2_000, 8_000, 100_000, 1_000_000]),
            lost,
            broken,
            answer_lost,
            twice,
            late,
            proxy,
            spoilt,
            portal: random.chance(120),
            window: random.chance(150).then_some((300_000, 30_000)),
        }
    }
}

/// How the answer to a request comes back.
#[derive(Clone, Debug)]
pub(crate) enum Back {
    /// Not at all.
    Never,
    /// The phone hears after so long that there is none.
    None(i64),
    /// Something else answers.
    Instead(i64, Reply),
    /// The office's, so long after it was given; spoilt in some way; and once more later.
    Office { after_ms: i64, spoilt: Option<u64>, again_ms: Option<i64> },
}

/// What becomes of a request: when it arrives at the office, with how many bytes of its body, and what comes back.
pub(crate) struct Trip {
    pub(crate) arrivals: Vec<(i64, u64)>,
    pub(crate) back: Back,
}

fn page(status: u16) -> Reply {
    Reply { status, headers: vec![("content-type".into(), "text/html".into())], body: PAGE.to_vec() }
}

impl Weather {
    /// Draws what becomes of a request.
    pub(crate) fn trip(&self, request: &SendRequest, random: &mut Random) -> Trip {
        let bytes = request.body.length();
        let way_ms = self.latency_ms + random.below(self.latency_ms as u64 + 1) as i64;
        let carried_ms = |bytes: u64| (bytes * 1_000 / self.bytes_per_s) as i64;
        let silence = if random.chance(500) { Back::None(SHELL_GIVES_UP_MS) } else { Back::Never };
        if self.portal {
            let status = random.pick(&[200, 200, 200, 302, 403, 404, 511]);
            return Trip { arrivals: Vec::new(), back: Back::Instead(way_ms, page(status)) };
        }
        if random.chance(self.lost) {
            let back = if random.chance(500) { Back::None(way_ms) } else { silence };
            return Trip { arrivals: Vec::new(), back };
        }
        if random.chance(self.proxy) {
            let reply = match random.below(3) {
                0 => page(502),
                1 => page(504),
                _ => page(503).with("Retry-After", random.pick(&[5, 60, 900])),
            };
            return Trip { arrivals: Vec::new(), back: Back::Instead(way_ms, reply) };
        }
        let here_ms = way_ms + carried_ms(bytes);
        if here_ms >= SHELL_GIVES_UP_MS {
            // The shell gives up while it still sends.
            let came = (SHELL_GIVES_UP_MS - way_ms).max(0) as u64 * self.bytes_per_s / 1_000;
            let arrivals = vec![(SHELL_GIVES_UP_MS, came.min(bytes))];
            return Trip { arrivals, back: Back::None(SHELL_GIVES_UP_MS) };
        }
        if random.chance(self.broken) {
            let came = random.below(bytes + 1);
            let at_ms = way_ms + carried_ms(came);
            return Trip { arrivals: vec![(at_ms, came)], back: Back::None(at_ms) };
        }
        let mut arrivals = vec![(here_ms, bytes)];
        if random.chance(self.twice) {
            arrivals.push((here_ms + random.pick(&[1, 2_000, 100_000]), bytes));
        }
        if random.chance(self.answer_lost) {
            let back = if random.chance(500) { Back::None(here_ms + way_ms) } else { silence };
            return Trip { arrivals, back };
        }
        let late_ms = if random.chance(self.late) { random.pick(&[10_000, 95_000, 200_000]) } else { 0 };
        let spoilt = random.chance(self.spoilt).then(|| random.below(SPOILT_WAYS));
        let again_ms = random.chance(self.twice).then(|| random.pick(&[1, 5_000, 120_000]));
        Trip { arrivals, back: Back::Office { after_ms: way_ms + late_ms, spoilt, again_ms } }
    }
}

const SPOILT_WAYS: u64 = 21;

/// The office's answer as something between spoils it. `earlier` is an answer to another request of this phone.
pub(crate) fn spoil(honest: &Reply, way: u64, earlier: Option<&Reply>) -> Reply {
    let named = |name: &str, value: &str| vec![(name.to_owned(), value.to_owned())];
    let offset = |value: &str| Reply { headers: named("Upload-Offset", value), ..honest.clone() };
    let changed = |change: &dyn Fn(&mut serde_json::Map<String, serde_json::Value>)| {
        let Ok(serde_json::Value::Object(mut said)) = serde_json::from_slice(&honest.body) else { return page(200) };
        change(&mut said);
        Reply { body: serde_json::Value::Object(said).to_string().into_bytes(), ..honest.clone() }
    };
    match way {
        1 => Reply { headers: named("content-type", "text/html; charset=utf-8"), ..honest.clone() },
        2 => {
            let most = honest.body.len().saturating_sub(1);
            Reply { body: honest.body[..most].to_vec(), ..honest.clone() }
        }
        3 => Reply::default(),
        4 => Reply::problem(500, "fault", serde_json::Value::Null),
        5 => page(302),
        6 => Reply { body: Vec::new(), ..honest.clone() },
        7 => page(407),
        8 => changed(&|said| {
            for key in ["head", "digest", "visit"] {
                if said.contains_key(key) {
                    said.insert(key.to_owned(), "ab".repeat(32).into());
                }
            }
        }),
        9 => changed(&|said| {
            for (_, value) in said.iter_mut().filter(|(_, value)| value.is_boolean()) {
                *value = false.into();
            }
        }),
        10 => changed(&|said| {
            if said.contains_key("next") {
                said.insert("next".to_owned(), 9_999.into());
            }
        }),
        11 => offset("99999999999999999999"),
        12 => offset("-1"),
        13 => offset("0"),
        14 => Reply { headers: Vec::new(), ..honest.clone() },
        15 => Reply { status: 101, ..Reply::default() },
        16 => Reply { status: 429, headers: named("Retry-After", "Thu, 99 Nov"), body: Vec::new() },
        17 => Reply::problem(403, "another-device", serde_json::Value::Null),
        18 => Reply::problem(409, "conflict", serde_json::json!({ "next": 1, "head": "cd".repeat(32) })),
        19 => Reply::problem(503, "store", serde_json::Value::Null).with("Retry-After", 3_600),
        20 => earlier.cloned().unwrap_or_else(|| page(200)),
        _ => page(200),
    }
}
