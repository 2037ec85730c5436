//! The load list: what a day's visits take along. Chemicals with a margin, acids, hypochlorite and alkalis apart; parts;
//! gear and instruments. What depends on a question that nobody has answered yet is told as 'if needed'.

use std::collections::{BTreeMap, BTreeSet};

use super::amount::{Measure, concentrate, preset};
use crate::id::ConditionId;
use crate::procedure::gate::{Applies, applies};
use crate::procedure::pack::{ChemicalKind, Pack, Step};
use crate::visit::state::Run;

/// So much more of each chemical than its mixes take, as a share of it: common practice, no source.
pub const MARGIN: f64 = 0.2;
/// Chemicals are measured out in steps of so many millilitres or grams, rounded up.
const STEP: f64 = 10.0;

/// As packs name them among their gear.
const SPILL_KIT: &str = "spill-kit";
const EYEWASH: &str = "eyewash";

/// A unit that is served on the day.
pub struct Job<'a> {
    /// Where.
    pub site: &'a str,
    /// What is known of it, by condition.
    pub known: &'a BTreeMap<String, String>,
    /// Its pack.
    pub pack: &'a Pack,
    /// The pack's words by key.
    pub name: &'a dyn Fn(&str) -> String,
}

/// What goes into the van.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Load {
    /// Chemicals, acids first; what must be apart stands apart.
    pub chemicals: Vec<Chemical>,
    /// Parts.
    pub parts: Vec<Counted>,
    /// Gear, once each however many visits need it.
    pub gear: Vec<Counted>,
    /// Instruments, once each.
    pub instruments: Vec<Counted>,
    /// Some visit works or may work with acid: a spill kit and an eyewash come along.
    pub acid: bool,
    /// The gear of the packs names a spill kit already.
    pub names_spill_kit: bool,
    /// The gear of the packs names an eyewash already.
    pub names_eyewash: bool,
}

/// A chemical.
#[derive(Clone, Debug, PartialEq)]
pub struct Chemical {
    /// Its name in words.
    pub name: String,
    /// What it must be kept apart from follows from this.
    pub kind: ChemicalKind,
    /// In what the amounts are.
    pub measure: Measure,
    /// What the mixes take that will be made.
    pub sure: f64,
    /// What those take that may be made.
    pub maybe: f64,
    /// What to take along: both with the margin, rounded up.
    pub take: f64,
    /// For which sites, in the order of the day.
    pub sites: Vec<String>,
}

/// Something that is counted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Counted {
    /// Its name in words.
    pub name: String,
    /// So many will be needed; 0 where it is only taken along in case.
    pub sure: u32,
    /// So many more may be.
    pub maybe: u32,
    /// For which sites, in the order of the day.
    pub sites: Vec<String>,
}

/// What is known of a step before the visit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Need {
    /// It depends on a question without an answer yet.
    Maybe,
    /// It will be done.
    Sure,
}

/// The steps of a pack that concern or may concern a unit, by what is known of it.
pub fn steps<'a>(pack: &'a Pack, known: &BTreeMap<String, String>) -> Vec<(&'a Step, Need)> {
    let answers = known.iter().map(|(condition, answer)| (ConditionId(condition.clone()), answer.clone())).collect();
    let run = Run { conditions: answers, ..Run::default() };
    pack.steps()
        .filter_map(|(_, step)| match applies(step, &run) {
            Applies::Yes => Some((step, Need::Sure)),
            Applies::Ask { .. } => Some((step, Need::Maybe)),
            Applies::No => None,
        })
        .collect()
}

/// What the jobs of a day take along, in their order.
#[must_use]
pub fn load(jobs: &[Job<'_>]) -> Load {
    let mut sums = Sums::default();
    for job in jobs {
        sums.add(job);
    }
    sums.load()
}

/// Sites in order, each once.
#[derive(Default)]
struct Sites(Vec<String>);

impl Sites {
    fn add(&mut self, site: &str) {
        if self.0.last().is_none_or(|last| last != site) && !self.0.iter().any(|known| known == site) {
            self.0.push(site.to_owned());
        }
    }
}

#[derive(Default)]
struct Sum<T> {
    sure: T,
    maybe: T,
    sites: Sites,
}

/// Sums by name in words: one id may be another thing in another pack.
#[derive(Default)]
struct Sums {
    chemicals: BTreeMap<(ChemicalKind, String, Measure), Sum<f64>>,
    parts: BTreeMap<String, Sum<u32>>,
    gear: BTreeMap<String, Sum<u32>>,
    instruments: BTreeMap<String, Sum<u32>>,
    acid: bool,
    spill_kit: bool,
    eyewash: bool,
}

impl Sums {
    fn add(&mut self, job: &Job<'_>) {
        let steps = steps(job.pack, job.known);
        for (step, need) in &steps {
            self.chemical(job, step, *need);
            for id in &step.parts {
                let Some(part) = job.pack.parts.iter().find(|part| part.id == *id) else { continue };
                let sum = self.parts.entry((job.name)(&format!("part-{id}"))).or_default();
                let sure = *need == Need::Sure && !part.spare;
                *(if sure { &mut sum.sure } else { &mut sum.maybe }) += part.count;
                sum.sites.add(job.site);
            }
        }
        let has = |id: &str| steps.iter().any(|(step, _)| step.gear.iter().any(|gear| gear == id));
        self.spill_kit |= has(SPILL_KIT);
        self.eyewash |= has(EYEWASH);
        once(&mut self.gear, job, "gear", steps.iter().flat_map(|(step, need)| each(&step.gear, *need)));
        let instruments = steps.iter().flat_map(|(step, need)| {
            let of = |id: &crate::id::ReadingId| job.pack.reading(id.as_str())?.instrument.clone();
            step.readings.iter().filter_map(of).map(|id| (id, *need)).collect::<Vec<_>>()
        });
        once(&mut self.instruments, job, "instrument", instruments);
    }

    fn chemical(&mut self, job: &Job<'_>, step: &Step, need: Need) {
        let Some(mix) = step.mix.as_ref().and_then(|id| job.pack.mix(id)) else { return };
        let Some(id) = &mix.chemical else { return };
        let Some(chemical) = job.pack.chemicals.iter().find(|known| known.id == *id) else { return };
        let Some((amount, measure)) = concentrate(job.pack, mix, &|reading| preset(job.pack, reading)) else { return };
        self.acid |= chemical.kind == ChemicalKind::Acid;
        let key = (chemical.kind, (job.name)(&format!("chemical-{id}")), measure);
        let sum = self.chemicals.entry(key).or_default();
        *(if need == Need::Sure { &mut sum.sure } else { &mut sum.maybe }) += amount;
        sum.sites.add(job.site);
    }

    fn load(self) -> Load {
        let chemicals = self.chemicals.into_iter().map(|((kind, name, measure), sum)| {
            let take = libm::ceil((sum.sure + sum.maybe) * (1.0 + MARGIN) / STEP - 1e-9) * STEP;
            Chemical { name, kind, measure, sure: sum.sure, maybe: sum.maybe, take, sites: sum.sites.0 }
        });
        let counted = |sums: BTreeMap<String, Sum<u32>>| -> Vec<Counted> {
            let line = |(name, sum): (String, Sum<u32>)| Counted {
                name,
                sure: sum.sure,
                maybe: sum.maybe,
                sites: sum.sites.0,
            };
            sums.into_iter().map(line).collect()
        };
        Load {
            chemicals: chemicals.collect(),
            parts: counted(self.parts),
            gear: counted(self.gear),
            instruments: counted(self.instruments),
            acid: self.acid,
            names_spill_kit: self.spill_kit,
            names_eyewash: self.eyewash,
        }
    }
}

fn each(ids: &[String], need: Need) -> Vec<(String, Need)> {
    ids.iter().map(|id| (id.clone(), need)).collect()
}

/// Adds what comes along once and goes home again: one of it does for the whole day.
fn once(sums: &mut BTreeMap<String, Sum<u32>>, job: &Job<'_>, kind: &str, named: impl Iterator<Item = (String, Need)>) {
    let named: BTreeSet<(String, Need)> = named.collect();
    for (id, need) in named {
        let sum = sums.entry((job.name)(&format!("{kind}-{id}"))).or_default();
        sum.sure = sum.sure.max(u32::from(need == Need::Sure));
        sum.maybe = u32::from(sum.sure == 0);
        sum.sites.add(job.site);
    }
}
