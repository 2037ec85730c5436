//! The procedures of the door: those that came with the core, and those that a shell found in a folder.

use std::sync::OnceLock;

use super::desk::Desk;
use super::{DoorError, Field};
use crate::effect::{Effect, Request};
use crate::now::Now;
use crate::procedure::check::Verdict;
use crate::procedure::library::{LoadedPack, PackError, built_in, folder_of};
use crate::procedure::read::{Fault, PackFolder, PackRead, TOML, read, read_unproved};
use crate::procedure::{shape, told};
use crate::screen::{Notice, ProcedureLine, Tone, Turn};
use crate::words::Words;

/// The effect's name under which a shell is asked to read its folder of packs. It is of no visit and is not kept.
const READ: &str = "packs";

/// Every procedure at hand.
pub(super) struct Procedures {
    built_in: &'static [LoadedPack],
    /// As a shell handed them in; none until then: it has no folder of them.
    handed_in: Option<Vec<Outside>>,
    /// As they came from the office.
    from_office: Vec<Outside>,
    /// All of both, judged beside each other.
    outside: Vec<Outside>,
}

/// Those that came with the core. Each job in the background of a phone opens the door anew in one process, and to read them is most
/// of what that takes.
fn read_once() -> Result<&'static [LoadedPack], PackError> {
    static READ_PACKS: OnceLock<Vec<LoadedPack>> = OnceLock::new();
    if let Some(packs) = READ_PACKS.get() {
        return Ok(packs);
    }
    let packs = built_in()?;
    Ok(READ_PACKS.get_or_init(|| packs))
}

/// A pack that a shell handed in, or that came from the office.
#[derive(Clone)]
pub(super) struct Outside {
    from: String,
    /// It came from the office: of what is older there than here nobody needs to hear.
    office: bool,
    read: PackRead,
}

impl Procedures {
    pub(super) fn new() -> Result<Procedures, PackError> {
        Ok(Procedures { built_in: read_once()?, handed_in: None, from_office: Vec::new(), outside: Vec::new() })
    }

    /// The procedure of that name for a run that begins now. One from outside goes before the built-in one.
    pub(super) fn find(&self, name: &str) -> Option<&LoadedPack> {
        let outside = self.outside.iter().filter_map(|outside| outside.read.loaded.as_ref());
        outside.chain(self.built_in).find(|loaded| loaded.pack.pack == name)
    }

    /// Every procedure that a run can begin now, one of a name.
    pub(super) fn in_use(&self) -> Vec<&LoadedPack> {
        let outside = self.outside.iter().filter_map(|outside| outside.read.loaded.as_ref());
        let mut used: Vec<&LoadedPack> = Vec::new();
        for loaded in outside.chain(self.built_in) {
            if !used.iter().any(|other| other.pack.pack == loaded.pack.pack) {
                used.push(loaded);
            }
        }
        used
    }

    /// Takes what lies in the shell's folder now in place of what lay there before.
    fn take(&mut self, read: Vec<Outside>) {
        self.handed_in = Some(read);
        self.judge();
    }

    /// Takes what came from the office, beside what came before.
    pub(super) fn take_from_office(&mut self, read: Outside) {
        self.from_office.push(read);
        self.judge();
    }

    /// Whether a procedure of those bytes is at hand.
    pub(super) fn has(&self, digest: &str) -> bool {
        self.of_digest(digest).is_some()
    }

    /// The procedure of those bytes, whether runs would begin with it or not.
    pub(super) fn of_digest(&self, digest: &str) -> Option<&LoadedPack> {
        let outside = self.outside.iter().filter_map(|outside| outside.read.loaded.as_ref());
        outside.chain(self.built_in).find(|loaded| loaded.digest.as_str() == digest)
    }

    /// Judges what comes from outside beside each other. A sound pack that is older than another one of its
    /// name, or there twice, is refused all the same: nobody shall wonder which of two is used.
    fn judge(&mut self) {
        let mut taken: Vec<Outside> = Vec::new();
        let mut read: Vec<Outside> = self.handed_in.iter().flatten().chain(&self.from_office).cloned().collect();
        // The latest version of a name first, so that each later one is judged by it.
        let version = |outside: &Outside| shape::version(&outside.read.version);
        read.sort_by(|one, other| one.read.name.cmp(&other.read.name).then(version(other).cmp(&version(one))));
        for mut outside in read {
            let name = outside.read.name.clone();
            let of_name = |read: &PackRead| read.loaded.is_some() && read.name == name;
            let rival = taken.iter().find(|other| of_name(&other.read)).map(|other| other.read.version.clone());
            let own = self.built_in.iter().find(|loaded| loaded.pack.pack == name);
            let own = own.map(|loaded| loaded.pack.version.clone());
            let fault = if rival.as_ref() == Some(&outside.read.version) {
                Some(("pack-twice", outside.read.version.clone()))
            } else {
                let older = |other: &String| shape::version(other) > version(&outside);
                rival.or(own).filter(older).map(|other| ("pack-older", other))
            };
            if let Some((rule, than)) = fault.filter(|_| outside.read.loaded.is_some()) {
                if outside.office {
                    continue;
                }
                let values = vec![("id", name.clone()), ("version", than)];
                outside.read.faults.push(Fault { file: TOML.to_owned(), spot: None, rule, values });
                outside.read.loaded = None;
            }
            taken.push(outside);
        }
        self.outside = taken;
    }

    /// A line for each procedure: those in use first, then what was refused and why.
    pub(super) fn lines(&self, language: &str) -> Vec<ProcedureLine> {
        let outside = self.outside.iter();
        let mut lines: Vec<ProcedureLine> = outside.map(|outside| of_outside(outside, language)).collect();
        let replaced =
            |loaded: &&LoadedPack| self.find(&loaded.pack.pack).is_some_and(|used| used.digest == loaded.digest);
        lines.extend(self.built_in.iter().filter(replaced).map(|loaded| ProcedureLine {
            title: title(loaded.source.words.get(language), &loaded.pack.pack, language),
            name: loaded.pack.pack.clone(),
            version: loaded.pack.version.clone(),
            from: None,
            refused: Vec::new(),
        }));
        lines.sort_by(|one, other| (one.is_refused(), &one.title).cmp(&(other.is_refused(), &other.title)));
        lines
    }

    /// Whether a shell has a folder of packs.
    pub(super) const fn has_folder(&self) -> bool {
        self.handed_in.is_some()
    }
}

fn of_outside(outside: &Outside, language: &str) -> ProcedureLine {
    let read = &outside.read;
    let own = read.words.get(language).or_else(|| read.words.get("en"));
    let refused = if read.loaded.is_some() { Vec::new() } else { why(read, own, language) };
    ProcedureLine {
        title: title(own, &read.name, language),
        name: read.name.clone(),
        version: read.version.clone(),
        from: Some(outside.from.clone()),
        refused,
    }
}

/// What a pack calls itself; its name where its words cannot be read.
fn title(own: Option<&String>, name: &str, language: &str) -> String {
    let words = own.and_then(|own| Words::new(language, Some(own)).ok());
    words.and_then(|words| words.get("pack")).unwrap_or_else(|| name.to_owned())
}

/// Why a pack was refused: file, line and reason of each fault, and the checker's ways into danger.
fn why(read: &PackRead, own: Option<&String>, language: &str) -> Vec<String> {
    let with_own = own.and_then(|own| Words::new(language, Some(own)).ok());
    let Some(words) = with_own.or_else(|| Words::new(language, None).ok()) else { return Vec::new() };
    let told = |fault: &Fault| format!("{}: {} {}", fault.place(), fault.what(&words), fault.remedy(&words));
    let mut lines: Vec<String> = read.faults.iter().map(told).collect();
    if let Some(Verdict::Refused(examples)) = read.proof.as_ref().map(|proof| &proof.verdict) {
        for (number, example) in examples.iter().enumerate() {
            let number = (number + 1).to_string();
            let fault = told::fault(example, &words);
            lines.push(words.fill("proof-refused", &[("number", &number), ("fault", &fault)]));
            let moves = told::moves(example, &words);
            lines.extend(moves.iter().enumerate().map(|(number, one)| format!("{}. {one}", number + 1)));
        }
    }
    lines
}

/// Which version proves packs: another one proves them anew.
const PROVED_BY: &str = env!("CARGO_PKG_VERSION");

/// Reads what came from the office as strictly as what lies in a folder, and proves it. What this version proved before is
/// not proved again.
pub(super) fn of_office(bytes: &[u8], from: &str, proved_by: &str) -> Outside {
    let folder = folder_of(bytes, from).unwrap_or_else(|| PackFolder { from: from.to_owned(), files: Vec::new() });
    let read = if proved_by == PROVED_BY { read_unproved(&folder) } else { read(&folder) };
    Outside { from: folder.from, office: true, read }
}

impl Outside {
    /// The version that proved it; none where it is refused.
    pub(super) fn proved_by(&self) -> &'static str {
        if self.read.loaded.is_some() { PROVED_BY } else { "" }
    }
}

impl Field {
    /// Takes the packs that lie in a shell's folder now, in place of those that lay there before. Each is read strictly and
    /// proved; one that is not sound or not safe is refused and listed with the reason. Runs that have begun keep theirs.
    /// A visit that waited for a pack begins if it is there now.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn packs(&self, folders: &[PackFolder], now: &Now) -> Result<Turn, DoorError> {
        // Proving takes its time: nobody waits for the door meanwhile.
        let read = folders
            .iter()
            .map(|folder| Outside { from: folder.from.clone(), office: false, read: read(folder) })
            .collect();
        self.desk().take_packs(read, now)
    }
}

impl Desk {
    fn take_packs(&mut self, read: Vec<Outside>, now: &Now) -> Result<Turn, DoorError> {
        self.procedures.take(read);
        self.packs_changed(now)
    }

    /// A visit that waited for a pack begins if it is there now.
    pub(super) fn packs_changed(&mut self, now: &Now) -> Result<Turn, DoorError> {
        if let Some((action_id, assignment)) = self.wanted.take()
            && self.missing_pack(&assignment)?.is_none()
        {
            self.notices.clear();
            return self.start_visit(&action_id, &assignment, now);
        }
        if std::mem::take(&mut self.asked_for_packs) {
            let lines = self.procedures.lines(self.words().language());
            let refused = lines.iter().filter(|line| line.is_refused()).count();
            let counts = [("good", (lines.len() - refused).to_string()), ("refused", refused.to_string())];
            let counts: Vec<(&str, &str)> = counts.iter().map(|(name, count)| (*name, count.as_str())).collect();
            let tone = if refused == 0 { Tone::Good } else { Tone::Attention };
            let title = self.words().fill("procedures-were-read", &counts);
            self.tell(Notice { tone, title, lines: Vec::new(), buttons: Vec::new() });
        }
        self.turn(Vec::new(), now)
    }

    /// Asks the shell for what lies in its folder.
    pub(super) fn read_packs(&mut self, now: &Now) -> Result<Turn, DoorError> {
        self.asked_for_packs = true;
        self.turn(vec![Effect { id: READ.to_owned(), request: Request::ReadPacks }], now)
    }

    /// The pack that an assignment asks for and that is not here.
    pub(super) fn missing_pack(&self, assignment: &str) -> Result<Option<String>, DoorError> {
        let assignment = self.store.assignment(assignment)?;
        let units = assignment.into_iter().flat_map(|(assignment, _)| assignment.units);
        let mut missing = units.map(|unit| unit.pack).filter(|pack| self.procedures.find(pack).is_none());
        Ok(missing.next())
    }

    /// A visit cannot begin without its procedure: it is told, the shell looks whether it lies in its folder by now, and
    /// the visit begins by itself if it does.
    pub(super) fn want_pack(
        &mut self,
        action_id: &str,
        assignment: &str,
        pack: &str,
        now: &Now,
    ) -> Result<Turn, DoorError> {
        self.wanted = Some((action_id.to_owned(), assignment.to_owned()));
        let words = self.words();
        let notice = Notice {
            tone: Tone::Attention,
            title: words.fill("procedures-not-here", &[("pack", pack)]),
            lines: vec![words.text("procedures-not-here.do")],
            buttons: vec![crate::screen::Button {
                label: words.text("menu-procedures"),
                tone: Tone::Plain,
                press: crate::action::Action::Go { to: "procedures".to_owned() },
                hold: false,
            }],
        };
        self.tell(notice);
        self.turn(vec![Effect { id: READ.to_owned(), request: Request::ReadPacks }], now)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_door_that_is_opened_again_reads_no_pack_anew() {
        let (first, second) = (Procedures::new().unwrap(), Procedures::new().unwrap());
        assert!(std::ptr::eq(first.built_in, second.built_in));
        assert_eq!(first.in_use().len(), built_in().unwrap().len());
    }
}
