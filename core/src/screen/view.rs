//! Everything that a screen is drawn from, and the choice of the screen.

use std::collections::BTreeMap;

use super::{
    Button, EngineView, Live, Notice, ProcedureLine, Progress, Screen, Tone, close, frame, history, join, load,
    notices, outbox, procedures, reasons, results, round, settings, sheets, used, work,
};
use crate::action::Action;
use crate::evidence::Shown;
use crate::id::{Letter, VisitId};
use crate::now::Now;
use crate::procedure::gate::{Applies, applies};
use crate::procedure::library::LoadedPack;
use crate::procedure::measure::Units;
use crate::procedure::pack::Pack;
use crate::record::results::Known;
use crate::round::{AssignedUnit, Assignment, Review, Technician};
use crate::store::{Coming, OutboxCount};
use crate::visit::decide::Refusal;
use crate::visit::event::Severity;
use crate::visit::state::{Run, Visit};
use crate::words::Words;

/// Everything that a screen is drawn from.
pub struct View<'a> {
    /// Which screen.
    pub place: &'a str,
    /// The words, with those of the open visit's pack.
    pub words: &'a Words,
    /// The units that people see.
    pub units: Units,
    /// When.
    pub now: &'a Now,
    /// The device's charge, per cent; none while it charges or where it is not known.
    pub charge_percent: Option<u8>,
    /// How much waits.
    pub outbox: OutboxCount,
    /// How sending stands.
    pub engine: &'a EngineView,
    /// What was just refused or told.
    pub notices: &'a [Notice],
    /// The visit that is open.
    pub visit: Option<VisitView<'a>>,
    /// Assignments that no visit answers yet.
    pub due: &'a [Assignment],
    /// Visits of this device.
    pub visits: &'a [VisitLine],
    /// Visits of other devices that this one is to go on with and that are not whole here yet.
    pub coming: &'a [Coming],
    /// The packs that are known, to plan with.
    pub packs: &'a [&'a LoadedPack],
    /// The words with those of each pack, in the same order: on the load list only.
    pub pack_words: &'a [Words],
    /// Who works with this device.
    pub technician: &'a Technician,
    /// Procedures at hand and refused, on their own screen.
    pub procedures: &'a [ProcedureLine],
    /// Whether the shell has a folder of packs to read.
    pub procedures_folder: bool,
}

impl<'a> View<'a> {
    /// The pack of that name.
    pub(super) fn pack(&self, name: &str) -> Option<&'a Pack> {
        self.packs.iter().map(|loaded| &loaded.pack).find(|pack| pack.pack == name)
    }
}

/// The visit that is open, for its screens.
pub struct VisitView<'a> {
    /// The visit.
    pub visit: &'a Visit,
    /// The unit that is shown.
    pub unit: &'a Letter,
    /// Its run.
    pub run: &'a Run,
    /// Its pack.
    pub pack: &'a Pack,
    /// Its assignment.
    pub assignment: &'a Assignment,
    /// Who works, with their own instruments.
    pub technician: &'a Technician,
    /// Half-typed texts.
    pub drafts: &'a BTreeMap<String, String>,
    /// What is wrong with fields.
    pub problems: &'a BTreeMap<String, Refusal>,
    /// The record is sealed.
    pub sealed: bool,
    /// Another device goes on with it.
    pub elsewhere: bool,
    /// And everything of it is at the office.
    pub safe: bool,
    /// Something was added after the seal and waits for its signature.
    pub unsigned: bool,
    /// Whom it was shown to, on the screen of leaving only; none also where that was erased.
    pub shown: Option<&'a Shown>,
}

impl<'a> VisitView<'a> {
    /// The unit as the office assigned it.
    pub(super) fn assigned(&self) -> Option<&'a AssignedUnit> {
        self.assignment.units.iter().find(|unit| unit.letter == self.unit.as_str())
    }

    /// Whether it is known what flows in its circuit, so that readings at it say something.
    pub(super) fn knows_refrigerant(&self) -> bool {
        self.assigned().is_some_and(|unit| Known::of(unit).refrigerant.is_some())
    }
}

/// A visit in the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct VisitLine {
    /// Which.
    pub id: VisitId,
    /// Where.
    pub site: String,
    /// When it began.
    pub opened_utc_ms: i64,
    /// Sealed.
    pub sealed: bool,
    /// Another device goes on with it.
    pub elsewhere: bool,
    /// Everything of it is at the office.
    pub safe: bool,
    /// What the office said of it last.
    pub review: Option<Review>,
}

/// The screen of a view.
#[must_use]
pub fn show(view: &View<'_>) -> Screen {
    let Some(visit) = &view.visit else {
        return match view.place {
            "settings" => settings::show(view),
            "outbox" => outbox::show(view),
            "join" => join::show(view),
            "load" => load::show(view),
            "procedures" => procedures::show(view),
            _ => round::show(view),
        };
    };
    let place = view.place;
    match place.split_once(':') {
        Some(("phase", id)) => work::phase(view, visit, id),
        Some(("why" | "skip" | "happened" | "left", _)) => reasons::show(view, visit, place),
        _ => match place {
            "round" => round::show(view),
            "settings" => settings::show(view),
            "outbox" => outbox::show(view),
            "join" => join::show(view),
            "load" => load::show(view),
            "history" => history::show(view, visit),
            "used" => used::show(view, visit),
            "procedures" => procedures::show(view),
            "phases" => work::phases(view, visit),
            "photographs" => sheets::photographs(view, visit),
            "readings" => sheets::readings(view, visit),
            "details" => results::details(view, visit),
            "findings" => sheets::findings(view, visit),
            "leaving" => close::leaving(view, visit),
            "break-off" => reasons::show(view, visit, place),
            "emergency" => close::emergency(view, visit),
            _ => work::now(view, visit),
        },
    }
}

/// The ways that are the same everywhere.
fn of_program(view: &View<'_>) -> impl Iterator<Item = Button> {
    [
        ("menu-round", "round"),
        ("menu-outbox", "outbox"),
        ("menu-procedures", "procedures"),
        ("menu-settings", "settings"),
    ]
    .into_iter()
    .map(|(key, place)| go(view, key, place))
}

/// The frame of a screen that belongs to no visit. Where one is open the menu leads back to it.
pub(super) fn bare(view: &View<'_>, title: &str) -> Screen {
    let words = view.words;
    let way_back = view.visit.iter().map(|_| go(view, "menu-now", "now"));
    Screen {
        place: view.place.to_owned(),
        language: words.language().to_owned(),
        title: words.text(title),
        subtitle: String::new(),
        unit: None,
        progress: None,
        strip: view.visit.iter().flat_map(|visit| frame::away(view, visit)).collect(),
        notices: view.notices.to_vec(),
        blocks: Vec::new(),
        foot: Vec::new(),
        menu: way_back.chain(of_program(view)).collect(),
        outbox: outbox_line(view),
    }
}

/// How a finding strikes the eye.
pub(super) const fn tone_of(severity: Severity) -> Tone {
    match severity {
        Severity::Note => Tone::Plain,
        Severity::Soon => Tone::Attention,
        Severity::Unsafe => Tone::Danger,
    }
}

/// The frame of a visit's screens: letter, strip, notices, menu.
pub(super) fn of_visit(view: &View<'_>, visit: &VisitView<'_>, title: String) -> Screen {
    let mut screen = bare(view, "menu-round");
    screen.title = title;
    screen.subtitle.clone_from(&visit.assignment.site.name);
    screen.unit = Some(visit.unit.0.clone());
    screen.progress = Some(progress(view, visit));
    screen.strip = frame::strip(view, visit);
    screen.notices = notices::of_visit(view, visit);
    let mut menu: Vec<Button> = ["now", "phases", "photographs", "readings", "history", "findings", "used", "leaving"]
        .iter()
        .map(|place| go(view, &format!("menu-{place}"), place))
        .collect();
    for (letter, _) in visit.visit.runs.iter().filter(|(letter, _)| *letter != visit.unit) {
        let label = view.words.fill("menu-unit", &[("letter", letter.as_str())]);
        menu.push(Button { label, tone: Tone::Plain, press: Action::Go { to: format!("unit:{letter}") }, hold: false });
    }
    menu.push(Button { tone: Tone::Danger, ..go(view, "menu-emergency", "emergency") });
    menu.push(go(view, "menu-break-off", "break-off"));
    menu.extend(of_program(view));
    screen.menu = menu;
    screen
}

/// A button that leads to a place.
pub(super) fn go(view: &View<'_>, key: &str, place: &str) -> Button {
    Button { label: view.words.text(key), tone: Tone::Plain, press: Action::Go { to: place.to_owned() }, hold: false }
}

fn progress(view: &View<'_>, visit: &VisitView<'_>) -> Progress {
    let concerns = visit.pack.steps().filter(|(_, step)| applies(step, visit.run) != Applies::No);
    let (mut done, mut total) = (0, 0);
    for (_, step) in concerns {
        total += 1;
        done += u32::from(visit.run.is_behind(step.id.as_str()));
    }
    let text = view.words.fill("progress", &[("done", &done.to_string()), ("total", &total.to_string())]);
    Progress { done, total, text }
}

fn outbox_line(view: &View<'_>) -> Live {
    let words = view.words;
    let label = words.text("outbox-label");
    let waiting = view.outbox;
    if view.engine.standing.revoked {
        return Live { label, value: words.text("outbox-revoked"), tone: Tone::Attention };
    }
    if waiting.stuck > 0 {
        return Live { label, value: words.text("outbox-stuck"), tone: Tone::Attention };
    }
    if waiting.is_empty() {
        return Live { label, value: words.text("outbox-empty"), tone: Tone::Good };
    }
    let photos = waiting.photos.to_string();
    let value = if waiting.photos > 0 {
        words.fill("outbox-waiting-photos", &[("photos", &photos)])
    } else {
        words.text("outbox-waiting")
    };
    Live { label, value, tone: Tone::Quiet }
}
