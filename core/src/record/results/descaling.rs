//! When to descale next, worked out from the water and its use: advice, which the maker's interval and terms outrank.
//!
//! What the exchanger showed since the last visit is left out: how far the readings of then are to be trusted is not known here.

use super::once::scaling_index;
use super::read::Readings;
use crate::record::results::Stage;
use crate::science::descaling::{Advice, HeatedUse, Held, advise};
use crate::words::Words;

const YEAR_DAYS: f64 = 365.0;

/// Where the water was measured and its use was asked for.
pub(super) fn descaling(readings: &Readings<'_>) -> Option<Advice> {
    let water = HeatedUse {
        surface_index: scaling_index(readings)?,
        throughput_l_year: YEAR_DAYS * readings.of("water-use", Stage::Once)?.value(),
        hardness_mg_l_caco3: readings.of("supply-hardness", Stage::Once)?.value(),
    };
    advise(&water, None).ok()
}

/// The advice in words, a sentence a line.
#[must_use]
pub fn descaling_told(advice: &Advice, words: &Words) -> Vec<String> {
    let [months, least, most] =
        [advice.months, advice.least_months, advice.most_months].map(|months| months.to_string());
    let when = words.fill("descale-advice", &[("months", &months), ("least", &least), ("most", &most)]);
    let mut lines = vec![when, words.text(advice.reason.key())];
    if advice.held != Held::No {
        lines.push(words.text(advice.held.key()));
    }
    lines.push(words.text("descale-first"));
    lines
}
