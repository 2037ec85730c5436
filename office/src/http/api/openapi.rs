//! The interface described for programs (OpenAPI 3.1), made from the shapes and addresses themselves. `office/openapi.json`
//! is what it comes to; a test compares.

use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse as _, Response};
use utoipa::openapi::security::{HttpAuthScheme, HttpBuilder, SecurityScheme};
use utoipa::openapi::{ContentBuilder, RefOr, ResponseBuilder};
use utoipa::{Modify, OpenApi};

use super::{devices, joining, news, photos, visits};
use crate::wire::problem::Problem;

/// The document as it is served and kept: JSON, indented, with a line feed at its end.
///
/// # Errors
/// Where it cannot be written as JSON.
pub fn text() -> Result<String, serde_json::Error> {
    Ok(serde_json::to_string_pretty(&Described::openapi())? + "\n")
}

pub(super) async fn document() -> Response {
    let text = text().unwrap_or_default();
    ([(CONTENT_TYPE, "application/json")], text).into_response()
}

#[derive(OpenApi)]
#[openapi(
    info(
        title = "Coilside office",
        version = "1",
        description = "What field devices call. Every request may be repeated without harm. Every answer carries \
                       `Coilside-Clock`, UTC milliseconds by the office's clock; devices send theirs in the same header. \
                       `office/protocol.md` tells the order, the states and what a client does on each refusal.",
    ),
    servers((url = "/api/v1")),
    paths(
        joining::join, joining::nonce, joining::token, devices::register, devices::assignments, news::news, news::pack,
        visits::events, visits::stored, visits::seal, photos::abilities, photos::announce, photos::progress, photos::piece,
        photos::take_back, photos::receipt, photos::ahead,
    ),
    components(schemas(Problem)),
    modifiers(&Everywhere),
)]
struct Described;

/// What every address has in common: how a device shows who it is, and how it is told that it cannot have what it wants.
struct Everywhere;

impl Modify for Everywhere {
    fn modify(&self, openapi: &mut utoipa::openapi::OpenApi) {
        let scheme = HttpBuilder::new().scheme(HttpAuthScheme::Bearer).build();
        let components = openapi.components.get_or_insert_default();
        components.add_security_scheme("device", SecurityScheme::Http(scheme));
        let problem = |words: &str| {
            let schema = utoipa::openapi::Ref::from_schema_name("Problem");
            let content = ContentBuilder::new().schema(Some(schema)).build();
            RefOr::T(ResponseBuilder::new().description(words).content("application/problem+json", content).build())
        };
        let all = openapi.paths.paths.values_mut();
        for operation in all.flat_map(|item| {
            [&mut item.get, &mut item.post, &mut item.put, &mut item.patch, &mut item.delete, &mut item.head]
        }) {
            let Some(operation) = operation else { continue };
            let is_open = operation.security.as_ref().is_some_and(|all| {
                all.iter().any(|one| {
                    serde_json::to_value(one).is_ok_and(|one| one.as_object().is_some_and(|one| one.is_empty()))
                })
            });
            let responses = &mut operation.responses.responses;
            let mut add = |status: &str, words: &str| {
                responses.entry(status.to_owned()).or_insert_with(|| problem(words));
            };
            if operation.request_body.is_some() {
                add("400", "`json`: the body cannot be read.");
                add("413", "`too-long`.");
            }
            if !is_open {
                add("401", "`token`: none, an unknown or an ended one.");
                add("403", "`revoked`: the office hears this device no more.");
            }
            add("503", "The office cannot just now; again after `Retry-After` seconds.");
        }
    }
}
