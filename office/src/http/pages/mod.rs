//! Pages for people: the office's, behind a sign-in, and the owner's summary, behind an address that nobody can guess.

mod devices;
mod files;
mod frame;
mod joining;
mod photos;
mod plot;
mod record_file;
mod round;
mod sign_in;
mod summary;
mod used;
mod visit;
mod visit_beside;
mod visit_check;
mod visit_cover;
mod visit_customer;
mod visit_photos;
mod visit_readings;
mod visit_results;
mod visit_review;
mod visit_take_over;
mod visitor;
mod visits;

use axum::Router;
use axum::http::StatusCode;
use axum::http::header::SET_COOKIE;
use axum::response::{Html, IntoResponse as _, Response};
use axum::routing::{get, post};
use coilside_core::words::Words;
use maud::{DOCTYPE, Markup, html};

use super::refusal::Refusal;
use crate::app::language::Language;
use crate::app::library::Library;
use crate::office::Office;
use frame::Frame;
use visitor::Visitor;

pub(super) fn routes() -> Router<Office> {
    Router::new()
        .route("/", get(visits::to_visits))
        .route("/enter/{secret}", get(sign_in::enter))
        .route("/leave", post(sign_in::leave))
        .route("/visits", get(visits::list))
        .route("/visits/{visit}", get(visit::show))
        .route("/visits/{visit}/review", post(visit_review::say))
        .route("/visits/{visit}/take-over", get(visit_take_over::ask).post(visit_take_over::hand_over))
        .route("/visits/{visit}/used.csv", get(used::of_visit))
        .route("/visits/{visit}/record.zip", get(record_file::download))
        .route("/visits/{visit}/erase-signature", post(visit_customer::erase))
        .route("/used.csv", get(used::of_days))
        .route("/round", get(round::show))
        .route("/devices", get(devices::list))
        .route("/devices/join", post(joining::new_code))
        .route("/devices/{device}/revoke", get(devices::ask_to_revoke).post(devices::revoke))
        .route("/join", get(joining::open_in_coilside))
        .route("/due.ics", get(round::due_days))
        .route("/photos/{digest}/preview", get(photos::preview))
        .route("/photos/{digest}/original", get(photos::original))
        .route("/s/{token}", get(summary::show))
        .route("/s/{token}/photos/{digest}", get(summary::photo))
        .route("/s/{token}/summary.html", get(summary::file))
        .route("/s/{token}/next.ics", get(summary::next))
        .route("/summary.css", get(files::summary_style))
        .route("/style.css", get(files::style))
        .route("/icon.svg", get(files::icon))
        .merge(papers())
        .fallback(nothing_here)
}

#[cfg(feature = "pdf")]
fn papers() -> Router<Office> {
    Router::new().route("/s/{token}/summary.pdf", get(summary::paper))
}

#[cfg(not(feature = "pdf"))]
fn papers() -> Router<Office> {
    Router::new()
}

/// A page cannot be shown: why, in words of the visitor's language.
#[derive(Debug)]
enum PageError {
    /// Nobody is signed in.
    SignIn(Visitor),
    /// There is no such page.
    Missing(Visitor),
    /// A summary that does not exist, or not any more.
    NoSummary(Visitor),
    /// Our own fault, or the disk's.
    Later(Refusal),
}

impl From<Refusal> for PageError {
    fn from(refusal: Refusal) -> Self {
        PageError::Later(refusal)
    }
}

impl axum::response::IntoResponse for PageError {
    fn into_response(self) -> Response {
        match self {
            PageError::SignIn(visitor) => message(&visitor, StatusCode::UNAUTHORIZED, "office-sign-in"),
            PageError::Missing(visitor) => message(&visitor, StatusCode::NOT_FOUND, "office-missing"),
            PageError::NoSummary(visitor) => message(&visitor, StatusCode::NOT_FOUND, "office-no-summary"),
            PageError::Later(refusal) => later(refusal),
        }
    }
}

/// A page of few words: a title, and what to do.
fn message(visitor: &Visitor, status: StatusCode, key: &str) -> Response {
    let words = visitor.words();
    let body = html! {
        section.message {
            h1 { (words.text(key)) }
            p { (words.text(&format!("{key}.do"))) }
        }
    };
    (status, page(visitor, words, &words.text(key), body)).into_response()
}

/// An office page in its frame. A language that was asked for is remembered.
fn page(visitor: &Visitor, words: &Words, title: &str, body: Markup) -> Response {
    let page = Html(Frame { visitor, words, title }.around(body).into_string());
    match visitor.chosen {
        None => page.into_response(),
        Some(language) => {
            let (name, tag) = (visitor::LANGUAGE_COOKIE, language.tag());
            let cookie = format!("{name}={tag}; Path=/; Max-Age=31536000; HttpOnly; SameSite=Lax");
            ([(SET_COOKIE, cookie)], page).into_response()
        }
    }
}

/// Said when disk or database fail, and so perhaps nothing is known of the visitor: in every language.
fn later(refusal: Refusal) -> Response {
    let status = refusal.status();
    let Ok(library) = Library::open() else { return refusal.into_response() };
    let body = html! {
        (DOCTYPE)
        html lang=(Language::default().tag()) {
            (frame::head("Coilside"))
            body.office { main { @for language in Language::ALL {
                @let words = library.words(language, None);
                section.message lang=(language.tag()) { h1 { (words.text("office-later")) } p { (words.text("office-later.do")) } }
            } } }
        }
    };
    (status, Html(body.into_string())).into_response()
}

async fn nothing_here(visitor: Visitor) -> PageError {
    PageError::Missing(visitor)
}

type Page = Result<Response, PageError>;
