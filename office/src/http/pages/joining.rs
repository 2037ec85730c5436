//! A device is let in: a code to scan or to type, and what its address shows in a browser that is not Coilside.

use axum::Form;
use axum::extract::State;
use axum::http::HeaderMap;
use axum::http::StatusCode;
use axum::http::header::HOST;
use maud::{Markup, html};
use qrcodegen::{QrCode, QrCodeEcc};
use serde::Deserialize;

use super::visitor::{SignedIn, Visitor};
use super::{Page, message, page};
use crate::app::{join, make_summary};
use crate::http::blocking::on_disk;
use crate::http::refusal::Refusal;
use crate::office::Office;
use crate::store::StoreError;

/// Whose device it will be.
#[derive(Debug, Default, Deserialize)]
#[serde(default)]
pub(super) struct Whose {
    name: String,
}

/// Makes a code and shows it: as a QR, as a link and in large letters. It is shown this once; nobody keeps it.
pub(super) async fn new_code(
    State(office): State<Office>,
    SignedIn(visitor): SignedIn,
    headers: HeaderMap,
    Form(whose): Form<Whose>,
) -> Page {
    let Some(name) = join::name(&whose.name).map(str::to_owned) else {
        return Ok(message(&visitor, StatusCode::UNPROCESSABLE_ENTITY, "office-join-name"));
    };
    let mut random = [0; 5];
    getrandom::fill(&mut random).map_err(|_| Refusal::broken())?;
    let shown = name.clone();
    let made = on_disk(&office, move |store, now_ms| -> Result<_, StoreError> {
        Ok((join::new_code(store, &name, random, now_ms)?, make_summary::firm(store)?.address))
    });
    let (code, address) = made.await?;
    // The address under which owners reach the office, or the one under which this page was asked for.
    let host = headers.get(HOST).and_then(|value| value.to_str().ok()).unwrap_or("127.0.0.1");
    let address = address.unwrap_or_else(|| format!("http://{host}"));
    let link = format!("{address}/join#{code}");
    let words = visitor.words();
    let title = words.fill("office-join-title", &[("name", &shown)]);
    let body = html! {
        p.back { a href="/devices" { "← " (words.text("office-devices")) } }
        section.card.code {
            h1 { (title) }
            p { (words.text("office-join-scan")) }
            div.scan {
                (qr(&link, &words.text("office-join-qr")))
                div {
                    p.quiet { (words.text("office-join-type")) }
                    p.letters { (code) }
                    p.quiet { (words.text("office-join-at")) }
                    p.address { (link) }
                    // The minutes go by in the style sheet: this page has no script.
                    p.left { span.minutes aria-hidden="true" { span { @for minute in (0..=10).rev() { (minute) br; } } } (words.text("office-join-minutes")) }
                    p.hint { (words.text("office-join-once")) }
                }
            }
        }
    };
    Ok(page(&visitor, words, &title, body))
}

/// A QR code of a text, with the quiet zone of four modules that ISO/IEC 18004 asks for.
fn qr(text: &str, label: &str) -> Markup {
    let Ok(code) = QrCode::encode_text(text, QrCodeEcc::Medium) else { return html! {} };
    let size = code.size();
    let mut path = String::new();
    for y in 0..size {
        for x in (0..size).filter(|x| code.get_module(*x, y)) {
            path.push_str(&format!("M{} {}h1v1h-1z", x + 4, y + 4));
        }
    }
    let side = size + 8;
    html! {
        svg.qr viewBox={ "0 0 " (side) " " (side) } role="img" aria-label=(label) shape-rendering="crispEdges" {
            rect width=(side) height=(side) fill="#fff" {}
            path d=(path) fill="#000" {}
        }
    }
}

/// What the link shows where a browser opens it. The code stands behind the '#' and never comes here.
pub(super) async fn open_in_coilside(visitor: Visitor) -> Page {
    Ok(message(&visitor, StatusCode::OK, "office-join-open"))
}
