//! In by a link that works once, out by a button.

use axum::extract::{Path, State};
use axum::http::StatusCode;
use axum::http::header::SET_COOKIE;
use axum::response::{IntoResponse as _, Redirect};

use super::visitor::{SESSION_COOKIE, SignedIn, Visitor};
use super::{Page, message};
use crate::app::sign_in;
use crate::http::blocking::on_disk;
use crate::http::refusal::Refusal;
use crate::ids::Secret;
use crate::office::Office;

pub(super) async fn enter(State(office): State<Office>, visitor: Visitor, Path(link): Path<String>) -> Page {
    let session = Secret::random().map_err(|_| Refusal::broken())?;
    let text = session.text();
    if !on_disk(&office, move |store, now_ms| sign_in::enter(store, &link, &session, now_ms)).await? {
        // Someone who is in already, and opens the old link again, is simply in.
        if visitor.session.is_some() {
            return Ok(Redirect::to("/visits").into_response());
        }
        return Ok(message(&visitor, StatusCode::GONE, "office-link-used"));
    }
    // Not `Secure`: the office listens on this machine alone, by plain HTTP.
    let seconds = sign_in::SESSION_MS / 1000;
    let cookie = format!("{SESSION_COOKIE}={text}; Path=/; Max-Age={seconds}; HttpOnly; SameSite=Strict");
    Ok(([(SET_COOKIE, cookie)], Redirect::to("/visits")).into_response())
}

pub(super) async fn leave(State(office): State<Office>, SignedIn(mut visitor): SignedIn) -> Page {
    let session = visitor.session.take().unwrap_or_default();
    on_disk(&office, move |store, now_ms| sign_in::leave(store, &session, now_ms)).await?;
    let cookie = format!("{SESSION_COOKIE}=; Path=/; Max-Age=0; HttpOnly; SameSite=Strict");
    let page = message(&visitor, StatusCode::OK, "office-left");
    Ok(([(SET_COOKIE, cookie)], page).into_response())
}
