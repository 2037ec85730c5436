//! Routes, headers and pages. Nothing is decided here.

mod api;
mod blocking;
mod caller;
mod headers;
mod pages;
mod refusal;

pub(crate) use api::openapi;

use axum::Router;

use crate::office::Office;

pub(crate) fn router(office: Office) -> Router {
    let router = Router::new().nest("/api/v1", api::routes(&office)).merge(pages::routes()).with_state(office);
    headers::on_every_answer(router)
}
