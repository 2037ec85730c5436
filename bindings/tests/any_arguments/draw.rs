//! Random arguments of a fixed seed: wild ones, and such as the function takes, which it tells by what it refuses.

use std::collections::BTreeMap;

const WILD: [f64; 16] = [
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    f64::MAX,
    f64::MIN,
    f64::MIN_POSITIVE,
    -f64::MIN_POSITIVE,
    5e-324,
    -5e-324,
    1e-310,
    f64::EPSILON,
    0.0,
    -0.0,
    1.0,
    -1.0,
    1e12,
];

/// Where an argument is looked for until the function has said where it may lie.
const UNKNOWN: (f64, f64) = (0.0, 100.0);
const RANGES_KEPT: usize = 8;

/// Arguments that have to fit each other are seldom drawn so by chance: where a visit finds them.
fn usual(name: &str) -> Option<(f64, f64)> {
    Some(match name {
        "inlet_c" | "water_in_c" | "start_c" | "from_c" => (10.0, 40.0),
        "outlet_c" | "water_out_c" | "end_c" | "to_c" | "hot_c" => (41.0, 60.0),
        "condensing_c" => (62.0, 70.0),
        "cold_c" => (5.0, 20.0),
        "source_c" | "air_on_c" => (5.0, 30.0),
        "air_off_c" => (-10.0, 4.0),
        "source_rh" | "air_on_rh" | "air_off_rh" => (0.3, 0.9),
        "pressure_pa" => (9e4, 1.05e5),
        "flow_l_min" => (1.0, 30.0),
        "power_w" => (500.0, 2000.0),
        "heat_w" | "capacity_w" => (2000.0, 9000.0),
        "cop" => (2.0, 5.0),
        "low_pressure_pa" => (2e5, 8e5),
        "high_pressure_pa" => (1e6, 2.5e6),
        "suction_c" => (-10.0, 30.0),
        "discharge_c" => (50.0, 100.0),
        "liquid_c" => (20.0, 50.0),
        "share_to_refrigerant" => (0.5, 1.0),
        "volume_l" | "litres_a_day" => (50.0, 300.0),
        "time_s" => (3000.0, 20_000.0),
        "standing_loss_w" | "price_a_kwh" => (0.1, 50.0),
        "stratification_limit_k" => (0.0, 5.0),
        "area_m2" => (0.1, 2.0),
        "ua_clean_w_k" => (2000.0, 5000.0),
        "error_limit" | "step" | "scatter_u" => (0.0, 0.5),
        "common" => (0.0, 1.0),
        _ => return None,
    })
}

/// SplitMix64 (Steele, Lea, Flood 2014; constants from memory): small, and good enough to scatter test points.
pub(crate) struct Draw {
    state: u64,
    /// Whether this call may have wild arguments.
    wild: bool,
    /// Whether this call's arguments are such as a visit has, where that is known.
    usual: bool,
    /// The ranges told last, by argument.
    told: BTreeMap<String, Vec<(f64, f64)>>,
}

impl Draw {
    /// A stream of its own for each name (FNV-1a), so that a function keeps its points when others are added.
    pub(crate) fn seeded(name: &str) -> Self {
        let state = name
            .bytes()
            .fold(0xcbf2_9ce4_8422_2325, |hash: u64, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3));
        Self { state, wild: false, usual: false, told: BTreeMap::new() }
    }

    /// Begins a call. In half of them no argument is wild, so that many are taken. Gives what `repeat_call` needs.
    pub(crate) fn next_call(&mut self) -> u64 {
        let mark = self.state;
        let kind = self.below(4);
        self.wild = kind < 2;
        self.usual = kind == 2;
        mark
    }

    /// Begins a call again, to see its arguments.
    pub(crate) fn repeat_call(&mut self, mark: u64) {
        self.state = mark;
        self.next_call();
    }

    /// A refusal told a range. Some depend on other arguments, so the last few are kept.
    pub(crate) fn learn(&mut self, argument: &str, least: f64, most: f64) {
        if !(least.is_finite() && most.is_finite() && least <= most) {
            return;
        }
        let told = self.told.entry(argument.to_owned()).or_default();
        // Some functions refuse twice: what no reading can be, then what this calculation cannot take.
        let coarser =
            |coarse: (f64, f64), fine: (f64, f64)| fine.1 > fine.0 && coarse.1 - coarse.0 > 1e4 * (fine.1 - fine.0);
        if told.iter().any(|&fine| coarser((least, most), fine)) {
            return;
        }
        told.retain(|&coarse| !coarser(coarse, (least, most)));
        if told.len() == RANGES_KEPT {
            told.remove(0);
        }
        told.push((least, most));
    }

    pub(crate) fn bits(&mut self) -> u64 {
        self.state = self.state.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let z = (self.state ^ (self.state >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    pub(crate) fn below(&mut self, count: usize) -> usize {
        usize::try_from(self.bits() % u64::try_from(count).unwrap()).unwrap()
    }

    pub(crate) fn one_of<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.below(of.len())]
    }

    pub(crate) fn between(&mut self, least: f64, most: f64) -> f64 {
        let share = (self.bits() >> 11) as f64 / (1u64 << 53) as f64;
        least + share * (most - least)
    }

    /// Whether this argument shall be wild: a third of those of a wild call.
    pub(crate) fn goes_wild(&mut self) -> bool {
        self.wild && self.below(3) == 0
    }

    /// A number for the argument of that name.
    pub(crate) fn number(&mut self, name: &str) -> f64 {
        if self.goes_wild() {
            return match self.below(3) {
                0 => self.one_of(&WILD),
                1 => f64::from_bits(self.bits()),
                _ => self.between(-1e6, 1e6),
            };
        }
        if self.usual
            && let Some((least, most)) = usual(name)
        {
            return self.between(least, most);
        }
        let pick = self.below(RANGES_KEPT);
        let told = self.told.get(name).and_then(|told| told.get(pick % told.len()));
        let (least, most) = told.copied().unwrap_or(UNKNOWN);
        match self.below(16) {
            // The bounds themselves, and close above the lower one, where logarithms and quotients run away.
            0 => least,
            1 => most,
            2..4 => self.between(least, least + 1e-3 * (most - least)),
            _ => self.between(least, most),
        }
    }
}
