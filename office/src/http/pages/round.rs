//! One day of the round: which visits in which order, what is due and covered, and the load list. Prints on a page.

use std::collections::BTreeMap;

use axum::extract::{Query, State};
use chrono::NaiveDate;
use coilside_core::procedure::measure::Units;
use coilside_core::procedure::pack::Pack;
use coilside_core::round::accreditation::{self, Held, held, lapses};
use coilside_core::round::day::{self as core_day, BEGINS_MIN, Planned, day_of, plan};
use coilside_core::round::load::{Job, Load, load};
use coilside_core::round::sheet::{margin_told, numbered, sheets};
use coilside_core::round::{Assignment, Technician, cover, due};
use coilside_core::science::calendar::{add_days, parse_date};
use coilside_core::words::Words;
use maud::{Markup, html};
use serde::Deserialize;

use super::visitor::SignedIn;
use super::{Page, files, page, visit_cover};
use crate::app::day;
use crate::app::due_days;
use crate::app::language::Language;
use crate::app::library::Library;
use crate::app::plan_day::{self, Day};
use crate::http::blocking::on_shelf;
use crate::office::Office;
use crate::store::StoreError;

/// The address's query, as text: what cannot be read counts as not said.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Asked {
    day: String,
    who: String,
}

pub(super) async fn show(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Query(asked): Query<Asked>,
) -> Page {
    let shown = visitor.clone();
    let made = on_shelf(&office, move |store, library, now_ms| -> Result<_, StoreError> {
        let words = library.words(shown.language, None);
        let today = day_of(now_ms, 0).unwrap_or_default();
        let sheet = DaySheet {
            words,
            library,
            language: shown.language,
            on: parse_date(&asked.day).unwrap_or(today),
            who: &asked.who,
            day: plan_day::read(store, library)?,
        };
        Ok(page(&shown, words, &words.text("office-round"), sheet.body()))
    });
    Ok(made.await?)
}

/// The due days of all that is open, for a calendar.
pub(super) async fn due_days(State(office): State<Office>, SignedIn(visitor): SignedIn) -> Page {
    let made = on_shelf(&office, move |store, library, now_ms| -> Result<_, StoreError> {
        let words = library.words(visitor.language, None);
        Ok(due_days::file(&plan_day::read(store, library)?, words, now_ms))
    });
    Ok(files::attachment("text/calendar; charset=utf-8; method=PUBLISH", "due.ics", made.await?))
}

/// Everything that the page is drawn from.
struct DaySheet<'a> {
    words: &'a Words,
    library: &'a Library,
    language: Language,
    on: NaiveDate,
    who: &'a str,
    day: Day,
}

impl DaySheet<'_> {
    fn body(&self) -> Markup {
        let words = self.words;
        let technician = self.technician();
        let held = technician.and_then(held);
        let plan = plan(&self.day.assignments, &|name| self.pack(name), self.on, BEGINS_MIN);
        let here: Vec<&Assignment> = plan.today.iter().map(|planned| planned.assignment).collect();
        let lapses = lapses(held, &here, self.on);
        let list = self.load(&plan.today);
        let sites: Vec<&str> = here.iter().map(|assignment| assignment.site.name.as_str()).collect();
        html! {
            div.round {
                p.back { a href="/visits" { "← " (words.text("office-visits")) } }
                div.title {
                    h1 { (words.text("office-round")) " · " (day::date(words, self.on)) }
                    p.quiet { @match technician { Some(technician) => (technician.name), None => (words.text("office-round-nobody")) } }
                }
                (self.ways())
                @if !lapses.is_empty() {
                    section.card { h2 { (words.text("lapse-title")) } ul.gaps { @for lapse in &lapses { li.look { (accreditation::told(lapse, words)) } } } }
                }
                @if plan.today.is_empty() { section.message { h2 { (words.text("round-nothing-due")) } } }
                ol.stops { @for planned in &plan.today { li { (self.stop(planned, held)) } } }
                (self.unknown(&here))
                @if !plan.today.is_empty() { (self.load_list(&list, &sites)) }
            }
        }
    }

    fn technician(&self) -> Option<&Technician> {
        let all = &self.day.technicians;
        all.iter().find(|technician| technician.name == self.who).or_else(|| all.first())
    }

    fn pack(&self, name: &str) -> Option<&Pack> {
        self.library.pack_named(name).map(|loaded| &loaded.pack)
    }

    /// The days beside this one, and who else there is.
    fn ways(&self) -> Markup {
        let words = self.words;
        let to = |days: i32, key: &str| {
            let day = add_days(self.on, days).unwrap_or(self.on).to_string();
            html! { a href={ "/round?day=" (day) "&who=" (super::visits::percent(self.who)) } { (words.text(key)) } }
        };
        html! {
            nav.paging aria-label=(words.text("office-round-days")) {
                (to(-1, "office-round-day-before")) (to(1, "office-round-day-after"))
                @for technician in self.day.technicians.iter().filter(|_| self.day.technicians.len() > 1) {
                    a href={ "/round?day=" (self.on) "&who=" (super::visits::percent(&technician.name)) } { (technician.name) }
                }
                a href="/due.ics" { (words.text("office-calendar")) }
            }
        }
    }

    fn stop(&self, planned: &Planned<'_>, held: Held<'_>) -> Markup {
        let (words, assignment) = (self.words, planned.assignment);
        html! {
            section.card {
                h2 { (core_day::clock(planned.leg.begin_min)) " · " (assignment.site.name) }
                p { (assignment.site.address) " · " (assignment.owner.name) " · " (assignment.owner.phone) }
                @for line in core_day::told(planned, self.on, words) { p class=[line.attention.then_some("look")] { (line.text) } }
                @for unit in &assignment.units {
                    h3 { span.unit { (unit.letter) } " " (unit.maker) " " (unit.model) " " (unit.serial) }
                    p { (assignment.reason) }
                    @if let Some(due) = due::due(unit, &assignment.due) {
                        p class=[due.is_past(self.on).then_some("look")] { (due::told(&due, unit.terms.as_ref(), self.on, words)) }
                    }
                    @if let Some(judgement) = cover::planned(unit, &assignment.due, self.pack(&unit.pack), held, self.on) {
                        (visit_cover::lines(words, &judgement))
                    }
                    @for finding in &unit.findings {
                        p.look { (words.fill("round-finding", &[("date", &finding.date), ("text", &finding.text)])) }
                    }
                }
            }
        }
    }

    /// Units for which nothing can be listed.
    fn unknown(&self, here: &[&Assignment]) -> Markup {
        let units = here.iter().flat_map(|assignment| assignment.units.iter().map(move |unit| (assignment, unit)));
        html! {
            @for (assignment, unit) in units.filter(|(_, unit)| self.pack(&unit.pack).is_none()) {
                p.look { (self.words.fill("load-no-pack", &[("site", &assignment.site.name), ("pack", &unit.pack)])) }
            }
        }
    }

    fn load(&self, today: &[Planned<'_>]) -> Load {
        let units =
            || today.iter().flat_map(|planned| planned.assignment.units.iter().map(move |unit| (planned, unit)));
        let known: Vec<BTreeMap<String, String>> = units().map(|(_, unit)| unit.answers()).collect();
        let jobs: Vec<Job<'_>> = units()
            .zip(&known)
            .filter_map(|((planned, unit), known)| {
                let loaded = self.library.pack_named(&unit.pack)?;
                let words = self.library.words(self.language, Some(loaded));
                Some(Job { site: &planned.assignment.site.name, known, pack: &loaded.pack, words })
            })
            .collect();
        load(&jobs)
    }

    fn load_list(&self, load: &Load, visits: &[&str]) -> Markup {
        let words = self.words;
        let sheets = sheets(load, visits, Units::Metric, words);
        html! {
            section.load {
                h2 { (words.text("load-title")) }
                p.quiet { (words.fill("load-of-day", &[("day", &self.on.to_string()), ("count", &visits.len().to_string())])) }
                p { (numbered(visits)) }
                @if load.is_aggressive() { p.look { b { (words.text("load-van")) } " " (words.text("load-van.text")) } }
                div.sheets { @for sheet in &sheets {
                    table {
                        caption { (sheet.caption) }
                        thead { tr { @for column in &sheet.columns { th scope="col" { (column) } } } }
                        tbody { @for row in &sheet.rows {
                            tr { @for (at, cell) in row.iter().enumerate() { @if at == 0 { th scope="row" { (cell) } } @else { td { (cell) } } } }
                        } }
                    }
                } }
                @if !load.chemicals.is_empty() { p.hint { (margin_told(words)) } }
                p.hint { (words.text("load-if-needed")) }
            }
        }
    }
}
