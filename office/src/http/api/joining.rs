//! A device joins by a code, and gets tokens by proving that it holds its key. No token is needed here.

use axum::extract::{RawQuery, State};
use axum::http::StatusCode;

use super::Answer;
use super::body::{Json, asked};
use crate::app::{join, prove_key};
use crate::http::blocking::on_disk;
use crate::http::refusal::Refusal;
use crate::ids::Secret;
use crate::office::Office;
use crate::wire::joining::{JoinIn, JoinOut, NonceOut, TokenIn, TokenOut};
use crate::wire::problem::Problem;

/// Join by a code that the office showed. It holds once, for ten minutes. A key that is known joins as the same device again.
#[utoipa::path(
    post, path = "/join", tag = "joining", request_body = JoinIn, security(()),
    responses(
        (status = 201, body = JoinOut),
        (status = 403, description = "`join-code`: wrong, used or too old; nobody is told which.", body = Problem, content_type = "application/problem+json"),
        (status = 422, description = "`device`: no key, or no name.", body = Problem, content_type = "application/problem+json"),
        (status = 429, description = "`join-code`: too many wrong codes in a minute.", body = Problem, content_type = "application/problem+json",
            headers(("Retry-After" = u32, description = "Seconds."))),
    )
)]
pub(super) async fn join(State(office): State<Office>, Json(sent): Json<JoinIn>) -> Answer<JoinOut> {
    let (token, no_token) = (fresh()?, fresh()?);
    let text = token.text();
    let joined = on_disk(&office, move |store, now_ms| join::join(store, &sent, (&token, &no_token), now_ms)).await?;
    let (device, expires_utc_ms) = (joined.device.to_string(), joined.expires_ms);
    Ok((StatusCode::CREATED, axum::Json(JoinOut { device, token: text, expires_utc_ms })))
}

/// Ask for something to sign. It holds once, for five minutes.
#[utoipa::path(
    get, path = "/token", tag = "joining", security(()),
    params(("device" = String, Query, description = "The device's name at this office, as `POST /join` gave it.")),
    responses(
        (status = 200, body = NonceOut),
        (status = 401, description = "`token`: no such device.", body = Problem, content_type = "application/problem+json"),
        (status = 403, description = "`revoked`.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn nonce(State(office): State<Office>, RawQuery(query): RawQuery) -> Answer<NonceOut> {
    let fresh = fresh()?;
    let device = asked(query.as_deref(), "device").unwrap_or_default().to_owned();
    let made = on_disk(&office, move |store, now_ms| prove_key::nonce(store, &device, &fresh, now_ms)).await?;
    let (nonce, expires_utc_ms) = made;
    Ok((StatusCode::OK, axum::Json(NonceOut { nonce, expires_utc_ms })))
}

/// Get a token for the signed nonce. It ends after twelve hours.
#[utoipa::path(
    post, path = "/token", tag = "joining", request_body = TokenIn, security(()),
    responses(
        (status = 200, body = TokenOut),
        (status = 401, description = "`token`: no such device, no such nonce, or not its key.", body = Problem, content_type = "application/problem+json"),
        (status = 403, description = "`revoked`.", body = Problem, content_type = "application/problem+json"),
        (status = 422, description = "`proof`: no such JWS.", body = Problem, content_type = "application/problem+json"),
    )
)]
pub(super) async fn token(State(office): State<Office>, Json(sent): Json<TokenIn>) -> Answer<TokenOut> {
    let token = fresh()?;
    let text = token.text();
    let expires = on_disk(&office, move |store, now_ms| prove_key::token(store, &sent.jws, &token, now_ms));
    let expires_utc_ms = expires.await?;
    Ok((StatusCode::OK, axum::Json(TokenOut { token: text, expires_utc_ms })))
}

fn fresh() -> Result<Secret, Refusal> {
    Secret::random().map_err(|_| Refusal::broken())
}
