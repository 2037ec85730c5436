//! One visit, for review: what was found, done, left and missing, and whether the record holds.

use axum::extract::{Path, State};
use coilside_core::evidence::Shown;
use coilside_core::id;
use coilside_core::now::Now;
use coilside_core::procedure::measure::{Units, jug};
use coilside_core::procedure::mixing::Concentrate;
use coilside_core::record::notes::{self, amount};
use coilside_core::visit::decide::Gap;
use coilside_core::visit::event::Severity;
use coilside_core::visit::state::{ExcursionEnd, Mark, Mixed, Run};
use coilside_core::words::Words;
use maud::{Markup, html};

use super::visitor::SignedIn;
use super::visits::badge;
use super::{
    Page, PageError, page, used, visit_beside, visit_check, visit_cover, visit_customer, visit_photos, visit_readings,
    visit_results, visit_review, visit_take_over,
};
use crate::app::record::{self, Record};
use crate::app::{customer, day};
use crate::http::blocking::on_shelf;
use crate::ids::VisitId;
use crate::office::Office;
use crate::store::StoreError;

pub(super) async fn show(State(office): State<Office>, SignedIn(visitor): SignedIn, Path(visit): Path<String>) -> Page {
    let visit = VisitId::parse(&visit).map_err(|_| PageError::Missing(visitor.clone()))?;
    let shown = visitor.clone();
    let made = on_shelf(&office, move |store, library, _| -> Result<_, StoreError> {
        let Some(record) = record::read(store, library, &visit)? else { return Ok(None) };
        let words = library.words(shown.language, record.pack.map(|found| found.pack));
        let title = site(words, &record);
        let customer = customer::shown(store, &record);
        Ok(Some(page(&shown, words, &title, body(words, &record, customer.as_ref()))))
    });
    made.await?.ok_or(PageError::Missing(visitor))
}

fn site(words: &Words, record: &Record<'_>) -> String {
    let site = record.assignment.as_ref().map(|assignment| assignment.site.name.clone());
    site.unwrap_or_else(|| words.text("office-no-site"))
}

fn body(words: &Words, record: &Record<'_>, customer: Option<&Shown>) -> Markup {
    html! {
        p.back { a href="/visits" { "← " (words.text("office-visits")) } }
        div.title {
            h1 { (site(words, record)) }
            (badge(words, record.state().name()))
            @if record.trouble() { span.badge.danger { (words.text("office-look")) } }
        }
        (lead(words, record))
        div.columns {
            div.side {
                (visit_check::check(words, record))
                (visit_review::card(words, record))
                (visit_take_over::card(words, record))
                (summary_link(words, record))
                (visit_customer::card(words, record, customer))
                (used::card(words, record))
            }
            div.body {
                (visit_beside::card(words, record))
                (stopped(words, record))
                (addenda(words, record))
                (missing(words, record))
                @for (letter, run) in &record.visit.runs { (unit(words, record, letter, run)) }
            }
        }
    }
}

fn lead(words: &Words, record: &Record<'_>) -> Markup {
    let (opened, last) = (record.visit.opened.as_ref(), record.visit.last.as_ref());
    html! {
        dl.lead {
            @if let (Some(opened), Some(last)) = (opened, last) {
                div { dt { (words.text("office-day-label")) } dd { (day::day(words, opened.utc_ms, opened.offset_min)) } }
                div {
                    dt { (words.text("office-time")) }
                    dd {
                        (time(words, record, opened)) " – " (time(words, record, last))
                        " " span.quiet { (day::zone(last.offset_min)) }
                    }
                }
            }
            div { dt { (words.text("office-column-technician")) } dd { (record.technician) } }
            @if let Some(assignment) = &record.assignment {
                div { dt { (words.text("office-address")) } dd { (assignment.site.address) } }
                div { dt { (words.text("office-owner")) } dd { (assignment.owner.name) " " span.quiet { (assignment.owner.phone) } } }
                div { dt { (words.text("office-reason")) } dd { (assignment.reason) } }
            }
        }
    }
}

/// A time as it was recorded, and beside it the one by the office's clock where the device's was wrong.
fn time(words: &Words, record: &Record<'_>, at: &Now) -> Markup {
    let (recorded, offset_min) = (day::stamp(at.utc_ms, at.offset_min), at.offset_min);
    let right = record.corrected_ms(at).map(|ms| {
        let same_day = day::stamp(ms, offset_min).get(..10) == recorded.get(..10);
        let told = if same_day { day::clock(ms, offset_min) } else { day::stamp(ms, offset_min) };
        words.fill("office-time-right", &[("time", &told)])
    });
    html! {
        (day::clock(at.utc_ms, offset_min))
        @if let Some(right) = right { " " span.right { (right) } }
    }
}

fn summary_link(words: &Words, record: &Record<'_>) -> Markup {
    html! {
        section.card {
            h2 { (words.text("office-summary")) }
            @match &record.summary_token {
                Some(token) => {
                    p { a.button href={ "/s/" (token) } { (words.text("office-summary-open")) } }
                    p.hint { (words.text("office-summary-hint")) }
                }
                None => p.quiet { (words.text("office-summary-none")) },
            }
        }
    }
}

fn stopped(words: &Words, record: &Record<'_>) -> Markup {
    html! {
        @if let Some(broken) = &record.visit.broken_off {
            section.card.danger {
                h2 { (words.text("office-state-broken-off")) }
                p { (words.fill("leaving-broken-off", &[("reason", &broken.reason)])) }
                @for danger in &broken.dangers { p { (words.text(&format!("danger-{}", danger.name()))) } }
            }
        }
    }
}

/// What was added after the seal.
fn addenda(words: &Words, record: &Record<'_>) -> Markup {
    html! {
        @if !record.visit.addenda.is_empty() {
            section.card {
                h2 { (words.text("addenda-title")) }
                ul { @for addendum in &record.visit.addenda {
                    li { span.quiet { (day::stamp(addendum.at.utc_ms, addendum.at.offset_min)) } " " (addendum.text) }
                } }
            }
        }
    }
}

fn missing(words: &Words, record: &Record<'_>) -> Markup {
    let sealing = record.visit.sealing.as_ref();
    let gaps = record.gaps();
    let none = gaps.iter().all(|(_, gaps)| gaps.is_empty());
    html! {
        section.card {
            h2 { (words.text("office-missing-title")) }
            @if record.pack.is_none() {
                // Without the procedure's words the device's own lines are shown as they were sealed.
                @match sealing {
                    Some(sealing) if sealing.missing.is_empty() => p { (words.text("leaving-complete")) },
                    Some(sealing) => ul { @for line in &sealing.missing { li { (line) } } },
                    None => p.quiet { (words.text("office-missing-later")) },
                }
            } @else if none {
                p { (words.text("leaving-complete")) }
            } @else if sealing.is_none() {
                p.quiet { (words.text("office-missing-later")) }
                details { summary { (words.text("office-missing-so-far")) } (gap_list(words, &gaps, false)) }
            } @else {
                (gap_list(words, &gaps, true))
            }
        }
    }
}

/// `over` tells that the visit is over: what then has no reason should have one.
fn gap_list(words: &Words, gaps: &[(&id::Letter, Vec<Gap>)], over: bool) -> Markup {
    html! {
        ul.gaps {
            @for (letter, gaps) in gaps { @for gap in gaps {
                @let (what, why) = gap_words(words, gap);
                li {
                    span.unit { (letter) } " " (what)
                    @match why {
                        Some(why) => span.quiet { (words.fill("office-because", &[("reason", &why)])) },
                        None => @if over { span.quiet { (words.text("office-no-reason")) } },
                    }
                }
            } }
        }
    }
}

/// What is missing, and why.
fn gap_words(words: &Words, gap: &Gap) -> (String, Option<String>) {
    let named = |key: &str, kind: &str, name: &str| {
        let name = words.text(&format!("{kind}-{name}"));
        words.fill(key, &[("name", &name)])
    };
    match gap {
        Gap::StepOpen { step } => (named("office-gap-step-open", "step", step.as_str()), None),
        Gap::StepSkipped { step, reason } => {
            (named("office-gap-step-skipped", "step", step.as_str()), Some(reason.clone()))
        }
        Gap::Shot { slot, reason } => (named("office-gap-shot", "shot", slot.as_str()), reason.clone()),
        Gap::Reading { reading, reason } => (named("office-gap-reading", "reading", reading.as_str()), reason.clone()),
        Gap::SettingLeft { excursion, reason } => {
            (named("office-gap-setting", "excursion", excursion), Some(reason.clone()))
        }
        Gap::BrokenOff { reason } => (words.text("office-state-broken-off"), Some(reason.clone())),
    }
}

fn unit(words: &Words, record: &Record<'_>, letter: &id::Letter, run: &Run) -> Markup {
    html! {
        section.run {
            h2.unit-title { span.unit { (letter) } " " (run.label) }
            (findings(words, record, run))
            (visit_cover::of_run(words, record, letter))
            (visit_results::of_run(words, record, letter, run))
            (visit_photos::pairs(words, record, run))
            (visit_readings::readings(words, record, run))
            (settings(words, run))
            (mixes(words, record, run))
            (notes(words, run))
            (visit_photos::others(words, record, run))
            (work(words, record, run))
        }
    }
}

fn findings(words: &Words, record: &Record<'_>, run: &Run) -> Markup {
    let tone = |severity| match severity {
        Severity::Note => "plain",
        Severity::Soon => "attention",
        Severity::Unsafe => "danger",
    };
    html! {
        @if !run.findings.is_empty() || !run.happened.is_empty() {
            section.card {
                h3 { (words.text("office-findings")) }
                ul.findings {
                    @for finding in &run.findings {
                        li { span class={ "badge " (tone(finding.severity)) } { (words.text(finding.severity.key())) } " " (finding.text)
                            @if let Some(since) = &finding.since { " " span.quiet { (words.fill("office-finding-since", &[("date", since)])) } }
                            @else { " " span.quiet { (time(words, record, &finding.at)) } }
                            @if let Some(mended) = &finding.mended {
                                " " span.badge.good { (words.fill("finding-mended", &[("words", &mended.words)])) }
                                " " span.quiet { (time(words, record, &mended.at)) }
                            } }
                    }
                    @for danger in &run.happened {
                        li { span.badge.danger { (words.text("office-happened")) } " " (words.text(&format!("danger-{}", danger.name()))) }
                    }
                }
            }
        }
    }
}

fn settings(words: &Words, run: &Run) -> Markup {
    html! {
        @if !run.excursions.is_empty() {
            section.card {
                h3 { (words.text("office-settings")) }
                div.scroll tabindex="0" role="group" aria-label=(words.text("office-settings")) { table {
                    thead { tr {
                        th scope="col" { (words.text("office-setting")) } th scope="col" { (words.text("office-setting-home")) }
                        th scope="col" { (words.text("office-setting-away")) } th scope="col" { (words.text("office-setting-now")) }
                    } }
                    tbody { @for (id, excursion) in &run.excursions {
                        tr {
                            th scope="row" { (words.text(&format!("excursion-{id}"))) }
                            td { (excursion.home) }
                            td { (excursion.away) @if !excursion.reason.is_empty() { " " span.quiet { (excursion.reason) } } }
                            td { @match &excursion.end {
                                ExcursionEnd::Open => span.badge.danger { (words.text("office-setting-open")) },
                                ExcursionEnd::Home { shows, answered } if !answered.is_empty() => {
                                    span.badge.attention { (words.text("office-setting-differs")) } " " (shows) " " span.quiet { (answered) }
                                },
                                ExcursionEnd::Home { shows, .. } => { span.badge.good { (words.text("office-setting-back")) } " " (shows) },
                                ExcursionEnd::Left { reason } => { span.badge.attention { (words.text("office-setting-left")) } " " (reason) },
                            } }
                        }
                    } }
                } }
            }
        }
    }
}

/// What was mixed, as the device told it.
fn mixes(words: &Words, record: &Record<'_>, run: &Run) -> Markup {
    let language = words.language();
    let water = |mixed: &Mixed| jug(mixed.water_l.parse().unwrap_or_default(), Units::Metric, language);
    let concentrate = |mixed: &Mixed| {
        let took = Concentrate::of(&mixed.concentrate, &mixed.measure);
        took.map(|took| amount(took, Units::Metric, words)).unwrap_or_default()
    };
    html! {
        @if !run.mixes.is_empty() {
            section.card {
                h3 { (words.text("office-mixes")) }
                div.scroll tabindex="0" role="group" aria-label=(words.text("office-mixes")) { table.readings {
                    thead { tr {
                        th scope="col" { (words.text("office-mix")) } th scope="col" { (words.text("office-water")) }
                        th scope="col" { (words.text("office-concentrate")) } th scope="col" { (words.text("office-time")) }
                    } }
                    tbody { @for (id, mixed) in &run.mixes { tr {
                        th scope="row" { (words.get(&format!("mix-{id}")).unwrap_or_else(|| id.clone())) }
                        td.number { (water(mixed)) } td.number { (concentrate(mixed)) }
                        td { (time(words, record, &mixed.at)) }
                    } } }
                } }
            }
        }
    }
}

/// What stands in the record beside its gaps.
fn notes(words: &Words, run: &Run) -> Markup {
    let notes = notes::notes(run, Units::Metric, words);
    html! {
        @if !notes.is_empty() {
            section.card {
                h3 { (words.text("leaving-notes")) }
                ul.findings { @for note in &notes { li { span.badge.attention { (words.text("office-note")) } " " (note) } } }
            }
        }
    }
}

/// The work in the order in which it was marked.
fn work(words: &Words, record: &Record<'_>, run: &Run) -> Markup {
    let title = |step: &id::StepId| {
        if record.pack.is_some() { words.text(&format!("step-{step}")) } else { step.to_string() }
    };
    html! {
        details.card {
            summary { (words.fill("office-work", &[("n", &run.order.len().to_string())])) }
            ol.work {
                @for step in &run.order { @if let Some(mark) = run.steps.get(step) {
                    @let (at, tone, key, words_of_person) = mark_words(mark);
                    li {
                        time { (time(words, record, at)) }
                        span.what { (title(step)) @if let Some(text) = words_of_person { span.quiet { (text) } } }
                        @if tone != "good" { span class={ "badge " (tone) } { (words.text(key)) } }
                    }
                } }
            }
        }
    }
}

fn mark_words(mark: &Mark) -> (&coilside_core::now::Now, &'static str, &'static str, Option<&str>) {
    match mark {
        Mark::Running { since, .. } => (since, "plain", "office-mark-running", None),
        Mark::Done { at, late: true, .. } => (at, "attention", "office-mark-late", None),
        Mark::Done { at, .. } => (at, "good", "office-mark-done", None),
        Mark::Skipped { at, reason } => (at, "attention", "office-mark-skipped", Some(reason)),
        Mark::Happened { at, words } => (at, "danger", "office-happened", Some(words)),
    }
}
