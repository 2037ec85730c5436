//! What goes into a bucket, worked out from what the label says.
//!
//! A label says it by parts, by a percentage of the ready mix, or by a dose to a litre of water; some say it twice, and
//! add 'about two cups to a bucket'. What the person read off wins over the pack's presets. Where two statements of one
//! label are more than a tenth apart that is told and recorded: which of them was meant nobody here can know.
//! Cups never set an amount: they are no measure, only a witness.
//!
//! A powder counts by weight, a litre of water and of the mix as a kilogram: at usual strengths off by a few percent, to
//! the weak side. Source of the arithmetic: `science::chemistry`.

use serde::{Deserialize, Serialize};
use uom::si::f64::Volume;
use uom::si::ratio::ratio;
use uom::si::volume::{liter, milliliter};

use super::pack::{Form, Mix, Pack};
use crate::id::ReadingId;
use crate::science::chemistry::{self, Dilution};
use crate::visit::state::Run;

/// What a cup may be: the metric one, and the US customary one (half a pint; NIST SP 811, appendix B.8, from memory).
const CUPS_ML: [f64; 2] = [250.0, 236.588];

/// Which way of the label a number is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Said {
    /// Parts of water to one part.
    Parts,
    /// Percent of the ready mix.
    Percent,
    /// So much to a litre of water.
    Dose,
    /// Cups to a bucket.
    Cups,
}

impl Said {
    /// The name in words: `mix-said-<name>`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Said::Parts => "parts",
            Said::Percent => "percent",
            Said::Dose => "dose",
            Said::Cups => "cups",
        }
    }
}

/// How much concentrate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Concentrate {
    /// Of a liquid.
    Litres(f64),
    /// Of a powder.
    Grams(f64),
}

impl Concentrate {
    /// The number as it stands in the log: litres to a millilitre, grams to a gram.
    #[must_use]
    pub fn number(self) -> String {
        match self {
            Concentrate::Litres(litres) => format!("{litres:.3}"),
            Concentrate::Grams(grams) => format!("{grams:.0}"),
        }
    }

    /// Its unit in the log.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Concentrate::Litres(_) => "L",
            Concentrate::Grams(_) => "g",
        }
    }

    /// From the log.
    #[must_use]
    pub fn of(number: &str, code: &str) -> Option<Concentrate> {
        let number = number.parse().ok()?;
        Some(if code == "g" { Concentrate::Grams(number) } else { Concentrate::Litres(number) })
    }
}

/// What does not fit together about a mix. Told and recorded; it stops nothing.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(tag = "note", rename_all = "kebab-case")]
pub enum MixNote {
    /// Two statements of the label are more than a tenth apart: the one that was gone by, and the other with the
    /// concentrate that it asks for, in the mix's own unit.
    LabelContradicts {
        /// Gone by.
        by: Said,
        /// The other.
        other: Said,
        /// What the other asks for.
        asks: String,
    },
    /// Less than fills the loop, litres.
    LessThanLoop {
        /// What fills it.
        loop_l: String,
    },
    /// More than the vessel holds, litres.
    MoreThanVessel {
        /// What it holds.
        vessel_l: String,
    },
}

/// A mix, worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Worked {
    /// Water to take, litres. It goes in first.
    pub water_l: f64,
    /// Concentrate to take.
    pub concentrate: Concentrate,
    /// The ready mix, litres.
    pub total_l: f64,
    /// By which statement of the label.
    pub by: Said,
    /// What does not fit together.
    pub notes: Vec<MixNote>,
}

/// One statement: which, what it makes of the total, and whether a person read it off.
struct Statement {
    said: Said,
    dilution: Dilution,
    given: bool,
}

/// Works a mix out from the readings so far and the pack's presets; none where a number is missing or out of range.
#[must_use]
pub fn worked(pack: &Pack, run: &Run, mix: &Mix) -> Option<Worked> {
    let value = |id: &ReadingId| {
        let preset = || pack.reading(id.as_str())?.preset.as_ref()?.parse().ok().map(|value| (value, false));
        run.number(id.as_str()).map(|value: f64| (value, true)).or_else(preset)
    };
    let total_l = value(&mix.total)?.0;
    let total = Volume::new::<liter>(total_l);
    let ways = [(Said::Parts, &mix.parts_water), (Said::Percent, &mix.percent), (Said::Dose, &mix.dose)];
    let statements: Vec<Statement> = ways
        .into_iter()
        .filter_map(|(said, reading)| {
            let (number, given) = value(reading.as_ref()?)?;
            let dilution = match said {
                Said::Parts => chemistry::dilute(1.0, number, total),
                Said::Percent => chemistry::dilute_in(number, 100.0, total),
                _ => chemistry::dilute(number, 1000.0, total),
            };
            Some(Statement { said, dilution: dilution.ok()?, given })
        })
        .collect();
    let base = statements.iter().find(|statement| statement.given).or_else(|| statements.first())?;
    let powder = mix.chemical.as_ref().and_then(|id| pack.chemicals.iter().find(|chemical| chemical.id == *id));
    let powder = powder.is_some_and(|chemical| chemical.form == Form::Powder);
    let amount = |share: f64| {
        let litres = share * total_l;
        if powder { Concentrate::Grams(litres * 1000.0) } else { Concentrate::Litres(litres) }
    };
    let share = base.dilution.fraction;
    let mut notes = Vec::new();
    let mut contradicts = |other: Said, by_other: f64| {
        notes.push(MixNote::LabelContradicts { by: base.said, other, asks: amount(by_other).number() });
    };
    for other in statements.iter().filter(|other| other.given && other.said != base.said) {
        if !chemistry::shares_agree(share, other.dilution.fraction) {
            contradicts(other.said, other.dilution.fraction.get::<ratio>());
        }
    }
    if let (Some(cups), Some(bucket)) = (&mix.cups, &mix.bucket)
        && let (Some((cups, true)), Some((bucket_l, _))) = (value(cups), value(bucket))
        && let Some(by_cups) = cups_apart(share.get::<ratio>(), cups, bucket_l)
    {
        contradicts(Said::Cups, by_cups);
    }
    let litres = |id: &Option<ReadingId>| value(id.as_ref()?).map(|(litres, _)| litres);
    if let Some(loop_l) = litres(&mix.fills).filter(|loop_l| total_l < *loop_l) {
        notes.push(MixNote::LessThanLoop { loop_l: format!("{loop_l:.1}") });
    }
    if let Some(vessel_l) = litres(&mix.vessel).filter(|vessel_l| total_l > *vessel_l) {
        notes.push(MixNote::MoreThanVessel { vessel_l: format!("{vessel_l:.1}") });
    }
    Some(Worked {
        water_l: base.dilution.water.get::<liter>(),
        concentrate: amount(share.get::<ratio>()),
        total_l,
        by: base.said,
        notes,
    })
}

/// The share that the cups ask for, where neither kind of cup agrees with the label's other word.
fn cups_apart(share: f64, cups: f64, bucket_l: f64) -> Option<f64> {
    let bucket = Volume::new::<liter>(bucket_l);
    let checks: Vec<_> = CUPS_ML
        .iter()
        .filter_map(|cup_ml| {
            let cup = Volume::new::<milliliter>(*cup_ml);
            chemistry::label_check(share, 1.0 - share, bucket, cups, cup).ok()
        })
        .collect();
    let apart = !checks.is_empty() && checks.iter().all(|check| !check.agree);
    apart.then(|| checks.first().map(|check| check.by_measures.get::<ratio>())).flatten()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::now::Now;
    use crate::visit::state::Taken;

    const PACK: &str = r#"
        pack = "p"
        format = 1
        version = "1"
        reading = [
            { id = "parts", quantity = "count", preset = "10" },
            { id = "percent", quantity = "share", optional = true },
            { id = "dose", quantity = "dose", optional = true },
            { id = "total", quantity = "volume", preset = "2.2" },
            { id = "cups", quantity = "count", optional = true },
            { id = "bucket", quantity = "volume", optional = true },
            { id = "loop", quantity = "volume", optional = true },
            { id = "vessel", quantity = "volume", optional = true },
        ]
        chemical = [
            { id = "acid", kind = "acid", form = "liquid" },
            { id = "soda", kind = "alkali", form = "powder" },
        ]
        [[mix]]
        id = "wet"
        chemical = "acid"
        parts-water = "parts"
        percent = "percent"
        dose = "dose"
        total = "total"
        cups = "cups"
        bucket = "bucket"
        loop = "loop"
        vessel = "vessel"
        [[mix]]
        id = "dry"
        chemical = "soda"
        parts-water = "parts"
        percent = "percent"
        dose = "dose"
        total = "total"
        [[phase]]
        id = "work"
        step = [{ id = "s" }]
    "#;

    fn mix(id: &str, read: &[(&str, &str)]) -> Worked {
        let pack: Pack = toml::from_str(PACK).unwrap();
        let mut run = Run::default();
        for (id, value) in read {
            let taken = Taken {
                value: (*value).into(),
                measure: String::new(),
                instrument: String::new(),
                error_limit: String::new(),
                unusual: false,
                own: None,
                at: Now { utc_ms: 0, offset_min: 0, mono_ms: 0, mono_epoch: "a".into() },
                times: 1,
            };
            run.readings.insert((*id).into(), taken);
        }
        worked(&pack, &run, pack.mix(id).unwrap()).unwrap()
    }

    fn near(concentrate: Concentrate, expect: f64) -> bool {
        let (Concentrate::Litres(number) | Concentrate::Grams(number)) = concentrate;
        (number - expect).abs() < 1e-9
    }

    /// Two litres of water and 200 mL of acid for a small exchanger: common practice, no source.
    #[test]
    fn a_small_exchanger_takes_two_litres_of_water_and_200_ml_of_acid() {
        let mix = mix("wet", &[]);
        assert!((mix.water_l - 2.0).abs() < 1e-9 && near(mix.concentrate, 0.2), "{mix:?}");
        assert_eq!((mix.by, mix.notes), (Said::Parts, vec![]));
    }

    /// A degreaser 1:10 in 10 to 15 litres: common practice, no source.
    #[test]
    fn a_degreaser_of_1_to_10_takes_a_litre_and_more_in_10_to_15_litres() {
        for (total, concentrate) in [("10", 10.0 / 11.0), ("15", 15.0 / 11.0)] {
            let mix = mix("wet", &[("parts", "10"), ("total", total)]);
            assert!(near(mix.concentrate, concentrate), "{mix:?}");
        }
    }

    /// That 'about two cups' contradicts it: common practice, no source.
    #[test]
    fn about_two_cups_to_a_bucket_of_ten_litres_contradict_1_to_10_and_four_agree() {
        let of = |cups| mix("wet", &[("parts", "10"), ("total", "11"), ("cups", cups), ("bucket", "10")]).notes;
        let [MixNote::LabelContradicts { by: Said::Parts, other: Said::Cups, asks }] = &of("2")[..] else { panic!() };
        // Two cups of 250 mL in 10.5 L, or in 10 L: the reading nearer to the ratio is 0.5 L of 10, so 0.55 of 11.
        assert_eq!(asks, "0.550");
        assert_eq!(of("4"), []);
    }

    #[test]
    fn parts_percentage_and_dose_of_one_strength_come_to_the_same() {
        let by = |reading: &str, value: &str| mix("wet", &[(reading, value), ("total", "11")]);
        for (reading, value, said) in
            [("parts", "9", Said::Parts), ("percent", "10", Said::Percent), ("dose", "111.1111111", Said::Dose)]
        {
            let mix = by(reading, value);
            assert_eq!(mix.by, said, "what was read wins over the preset");
            let Concentrate::Litres(litres) = mix.concentrate else { panic!() };
            assert!((litres - 1.1).abs() < 1e-6 && (mix.water_l - 9.9).abs() < 1e-6, "{mix:?}");
        }
    }

    #[test]
    fn two_words_of_a_label_within_a_tenth_agree_and_a_preset_contradicts_nobody() {
        assert_eq!(mix("wet", &[("parts", "10"), ("percent", "10")]).notes, [], "1:10 and 1 in 10");
        assert_eq!(mix("wet", &[("percent", "20")]).notes, [], "the preset of 1:10 is not the label's");
        let apart = mix("wet", &[("parts", "10"), ("dose", "50")]).notes;
        assert!(matches!(apart[..], [MixNote::LabelContradicts { other: Said::Dose, .. }]), "{apart:?}");
    }

    #[test]
    fn a_powder_is_weighed() {
        let mix = mix("dry", &[("dose", "50"), ("total", "2.1")]);
        assert!((mix.water_l - 2.0).abs() < 1e-9 && near(mix.concentrate, 100.0), "{mix:?}");
        assert_eq!((mix.concentrate.number().as_str(), mix.concentrate.code()), ("100", "g"));
    }

    #[test]
    fn too_little_for_the_loop_and_too_much_for_the_vessel_are_told() {
        let note = |total| mix("wet", &[("total", total), ("loop", "2.0"), ("vessel", "10")]).notes;
        assert_eq!(note("1.9"), [MixNote::LessThanLoop { loop_l: "2.0".into() }]);
        assert_eq!(note("2.0"), []);
        assert_eq!(note("10.5"), [MixNote::MoreThanVessel { vessel_l: "10.0".into() }]);
    }
}
