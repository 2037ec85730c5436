//! The devices that send visits: whose they are, when they were heard, what their clocks show; and letting one in or out.

use axum::extract::{Path, State};
use axum::response::{IntoResponse as _, Redirect};
use coilside_core::words::Words;
use maud::{Markup, html};

use super::visitor::{SignedIn, Visitor};
use super::{Page, PageError, page};
use crate::app::list_devices::{self, Listed};
use crate::app::{day, join};
use crate::http::blocking::{on_disk, on_shelf};
use crate::office::Office;
use crate::store::StoreError;
use crate::store::devices::{self, Device, DeviceId, Known};

pub(super) async fn list(State(office): State<Office>, SignedIn(visitor): SignedIn) -> Page {
    let now_ms = office.now_ms();
    let all = on_shelf(&office, move |store, library, _| list_devices::all(store, library)).await?;
    let words = visitor.words();
    let body = html! {
        div.title { h1 { (words.text("office-devices")) } p.quiet { (words.fill("office-found", &[("n", &all.len().to_string())])) } }
        (let_join(words, &all))
        @if all.is_empty() { section.message { h2 { (words.text("office-devices-none")) } p { (words.text("office-devices-none.do")) } } }
        ul.devices { @for listed in &all { li { (card(words, listed, now_ms)) } } }
    };
    Ok(page(&visitor, words, &words.text("office-devices"), body))
}

/// Asks whose device it will be. Names that are known are offered: devices of one name are one technician's.
fn let_join(words: &Words, all: &[Listed]) -> Markup {
    let mut names: Vec<&str> = all.iter().map(|listed| listed.known.device.name.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    html! {
        form.search.join action="/devices/join" method="post" {
            h2 { (words.text("office-join")) }
            label for="join-name" { (words.text("office-join-whose")) }
            input #join-name name="name" type="text" required maxlength=(join::NAME_CHARS_MAX) list="join-names" autocomplete="off";
            datalist #join-names { @for name in names { option value=(name) {} } }
            button { (words.text("office-join")) }
        }
    }
}

fn card(words: &Words, listed: &Listed, now_ms: i64) -> Markup {
    let (known, device) = (&listed.known, &listed.known.device);
    let term = |key: &str, text: &str| html! { div { dt { (words.text(key)) } dd { (text) } } };
    html! {
        section.card.device {
            div.title {
                h2 { (device.name) }
                @if device.revoked { span.badge.danger { (words.text("office-device-revoked")) } }
                @else if device.public_key.is_none() { span.badge.attention { (words.text("office-device-no-key")) } }
            }
            dl.lead {
                @if !known.calls_itself.is_empty() { (term("office-device-itself", &known.calls_itself)) }
                (term("office-device-joined", &day::day(words, known.joined_ms, 0)))
                (term("office-device-heard", &last_heard(words, known, now_ms)))
                (term("office-device-clock", &clock(words, listed.behind_ms)))
                (term("office-device-coming", &coming(words, known.photos_waiting)))
            }
            @if device.revoked {
                p.hint { (words.text("office-device-revoked.hint")) }
            } @else {
                p { a.button.quiet href={ "/devices/" (device.id) "/revoke" } {
                    (words.text("office-revoke")) span.unseen { " " (device.name) }
                } }
            }
        }
    }
}

/// How long ago a device was last heard: what tells two of one name apart.
pub(super) fn last_heard(words: &Words, known: &Known, now_ms: i64) -> String {
    known.heard_ms.map_or_else(|| words.text("office-device-never"), |at| ago(words, now_ms - at))
}

/// How long ago, roughly.
fn ago(words: &Words, ms: i64) -> String {
    let minutes = ms / 60_000;
    let (key, n) = match minutes {
        ..1 => return words.text("office-just-now"),
        1..120 => ("office-minutes-ago", minutes),
        120..2880 => ("office-hours-ago", minutes / 60),
        _ => ("office-days-ago", minutes / 1440),
    };
    words.fill(key, &[("n", &n.to_string())])
}

fn clock(words: &Words, behind_ms: Option<i64>) -> String {
    match behind_ms {
        None => words.text("office-clock-unknown"),
        Some(ms) if ms.saturating_abs() <= 2_000 => words.text("office-clock-right"),
        Some(ms) if ms > 0 => words.fill("office-clock-behind", &[("time", &span(words, ms))]),
        Some(ms) => words.fill("office-clock-ahead", &[("time", &span(words, ms))]),
    }
}

/// A span of time in its two largest units.
pub(super) fn span(words: &Words, ms: i64) -> String {
    let s = ms.saturating_abs() / 1000;
    let (key, large, small) = match s {
        ..60 => return words.fill("office-seconds", &[("s", &s.to_string())]),
        60..3600 => ("office-minutes-seconds", s / 60, s % 60),
        3600..172_800 => ("office-hours-minutes", s / 3600, s / 60 % 60),
        _ => ("office-days-hours", s / 86_400, s / 3600 % 24),
    };
    words.fill(key, &[("large", &large.to_string()), ("small", &small.to_string())])
}

fn coming(words: &Words, photos: u64) -> String {
    match photos {
        0 => words.text("office-device-nothing-coming"),
        n => words.fill("office-device-photos-coming", &[("n", &n.to_string())]),
    }
}

/// What revoking does, before it is done.
pub(super) async fn ask_to_revoke(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Path(device): Path<String>,
) -> Page {
    let device = found(&office, &visitor, &device).await?;
    let words = visitor.words();
    let title = words.fill("office-revoke-title", &[("name", &device.name)]);
    let body = html! {
        p.back { a href="/devices" { "← " (words.text("office-devices")) } }
        section.card.ask {
            h1 { (title) }
            p { (words.text("office-revoke-means")) }
            p { (words.text("office-revoke-keeps")) }
            form action={ "/devices/" (device.id) "/revoke" } method="post" {
                button.danger { (words.text("office-revoke")) }
                a href="/devices" { (words.text("office-leave-as-it-is")) }
            }
        }
    };
    Ok(page(&visitor, words, &title, body))
}

pub(super) async fn revoke(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    Path(device): Path<String>,
) -> Page {
    let device = found(&office, &visitor, &device).await?;
    on_disk(&office, move |store, now_ms| join::revoke(store, device.id, now_ms)).await?;
    Ok(Redirect::to("/devices").into_response())
}

async fn found(office: &Office, visitor: &Visitor, device: &str) -> Result<Device, PageError> {
    let missing = || PageError::Missing(visitor.clone());
    let id = DeviceId::parse(device).ok_or_else(missing)?;
    let known = on_disk(office, move |store, _| -> Result<_, StoreError> { store.read(|db| devices::by_id(db, id)) });
    known.await?.ok_or_else(missing)
}
