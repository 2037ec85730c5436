//! What is going to happen in a world, drawn from its seed before it begins: what people do, and which troubles come when.
//! Not every world has every kind of trouble: what hides behind another one is found too.

use super::wire::Weather;
use crate::random::Random;

/// What a person does.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Act {
    Write,
    Shoot(u64),
    Seal,
    Hurry,
}

/// What goes wrong.
#[derive(Clone, Debug)]
pub(crate) enum Trouble {
    /// A phone's program dies at its so-manieth write from then on, or some time after.
    PhoneDies {
        phone: usize,
        writes: u32,
        boots: bool,
    },
    /// The office does; with its power or without.
    OfficeDies {
        writes: u32,
        power: bool,
        away_ms: i64,
    },
    /// A phone's disk is full for so long.
    PhoneFull {
        phone: usize,
        for_ms: i64,
    },
    OfficeFull {
        for_ms: i64,
    },
    /// A phone's wall clock jumps.
    ClockJumps {
        phone: usize,
        by_ms: i64,
    },
    /// So much time goes by at once: a night, a week.
    TimePasses {
        ms: i64,
    },
    /// The office lets a phone in no more.
    Revoked {
        phone: usize,
    },
    /// The office takes an assignment back: news for everybody.
    News,
    /// The network of a phone is another one.
    Weather {
        phone: usize,
        weather: Weather,
    },
}

/// All of it.
pub(crate) struct Plan {
    pub(crate) phones: usize,
    /// A phone that was started with a token that never ends, instead of joining.
    pub(crate) scripted: Vec<bool>,
    pub(crate) acts: Vec<(i64, usize, Act)>,
    pub(crate) troubles: Vec<(i64, Trouble)>,
    /// When all troubles are over.
    pub(crate) calm_ms: i64,
}

/// How much happens in a world.
#[derive(Clone, Copy)]
pub(crate) struct Size {
    pub(crate) phones_most: u64,
    pub(crate) acts_most: i64,
    /// The longest photograph, bytes.
    pub(crate) photo_bytes_most: i64,
    pub(crate) troubles_most: i64,
    /// Whether the office's power may fail, with what was not synced, and weeks go by.
    pub(crate) power: bool,
    pub(crate) scripts: bool,
}

impl Plan {
    pub(crate) fn draw(size: &Size, random: &mut Random) -> Plan {
        let phones = 1 + random.below(size.phones_most) as usize;
        let calm_ms = random.pick(&[120_000, 600_000, 1_800_000]);
        let mut acts = Vec::new();
        let mut troubles = Vec::new();
        for phone in 0..phones {
            for _ in 0..random.between(2, size.acts_most) {
                let act = match random.below(10) {
                    0 => Act::Seal,
                    1 => Act::Hurry,
                    2 | 3 => Act::Shoot(random.pick(&[1, 900, 30_000, size.photo_bytes_most]) as u64),
                    _ => Act::Write,
                };
                acts.push((random.between(0, calm_ms), phone, act));
            }
            troubles.push((0, Trouble::Weather { phone, weather: Weather::any(random) }));
        }
        for _ in 0..random.below(5) {
            troubles.push((random.between(1, calm_ms), Trouble::News));
        }
        let kinds: Vec<u64> = (0..8).filter(|_| random.chance(500)).collect();
        let (mut revoked, mut nights) = (0, 0);
        for _ in 0..random.between(0, size.troubles_most) {
            let Some(at) = (!kinds.is_empty()).then(|| random.pick(&kinds)) else { break };
            let phone = random.below(phones as u64) as usize;
            let for_ms = random.pick(&[2_000, 60_000, 300_000]);
            let trouble = match at {
                0 => Trouble::PhoneDies { phone, writes: random.below(5) as u32, boots: random.chance(500) },
                1 => {
                    let power = size.power && random.chance(500);
                    Trouble::OfficeDies { writes: random.below(6) as u32, power, away_ms: for_ms }
                }
                2 => Trouble::PhoneFull { phone, for_ms },
                3 => Trouble::OfficeFull { for_ms },
                4 => {
                    let by_ms = random.pick(&[-86_400_000, -3_600_000, -5_000, 5_000, 3_600_000, 200_000_000]);
                    Trouble::ClockJumps { phone, by_ms }
                }
                5 if size.power && nights < 1 && random.chance(300) => {
                    nights += 1;
                    Trouble::TimePasses { ms: random.pick(&[11 * 3_600_000, 13 * 3_600_000, 8 * 86_400_000]) }
                }
                6 if revoked < 2 => {
                    revoked += 1;
                    Trouble::Revoked { phone }
                }
                _ => Trouble::Weather { phone, weather: Weather::any(random) },
            };
            troubles.push((random.between(1, calm_ms), trouble));
        }
        let scripted = (0..phones).map(|_| size.scripts && random.chance(250)).collect();
        Plan { phones, scripted, acts, troubles, calm_ms }
    }
}
