//! Delivers what a door has to send to an office in the same process, without a port.

use std::fs::File;
use std::io::{Read as _, Seek as _, SeekFrom};

use axum::body::Body;
use axum::http::{Request, header};
use coilside_core::field::{DoorError, Field};
use coilside_core::sync::{Network, SendBody, SendRequest};
use tower::ServiceExt as _;

use super::player::Clock;
use crate::office::Office;

/// A day of tries: more than any visit needs.
const TRIES_MOST: u32 = 20_000;
/// The longest answer read, bytes.
const ANSWER_BYTES_MAX: usize = 8 << 20;

/// Why it did not all arrive.
#[derive(Debug, thiserror::Error)]
pub enum DeliverError {
    /// The door failed.
    #[error(transparent)]
    Door(#[from] DoorError),
    /// A request could not be put together.
    #[error("a request could not be made: {0}")]
    Request(String),
    /// It did not end.
    #[error("not everything reached the office: {0}")]
    Unfinished(String),
}

/// Sends until nothing waits any more.
///
/// # Errors
/// Where something stays stuck, or the door fails.
pub async fn deliver(field: &Field, office: &Office, clock: &mut Clock, token: &str) -> Result<(), DeliverError> {
    let router = office.router();
    for _ in 0..TRIES_MOST {
        let requests = field.next_requests(Network::default(), &clock.now())?;
        if requests.is_empty() {
            let outbox = field.screen(&clock.now())?.screen.outbox;
            match outbox.tone {
                coilside_core::screen::Tone::Good => return Ok(()),
                coilside_core::screen::Tone::Attention => return Err(DeliverError::Unfinished(outbox.value)),
                _ => clock.pass_ms(1_000),
            }
            continue;
        }
        for request in requests {
            let answer = router.clone().oneshot(http(&request, token)?).await.unwrap_or_else(|never| match never {});
            let status = answer.status().as_u16();
            let headers: Vec<(String, String)> = answer
                .headers()
                .iter()
                .filter_map(|(name, value)| Some((name.to_string(), value.to_str().ok()?.to_owned())))
                .collect();
            let body = axum::body::to_bytes(answer.into_body(), ANSWER_BYTES_MAX)
                .await
                .map_err(|error| DeliverError::Request(error.to_string()))?;
            field.answered(&request.id, status, &headers, &body, &clock.now())?;
            clock.pass_ms(20);
        }
    }
    Err(DeliverError::Unfinished("no end in sight".into()))
}

fn http(request: &SendRequest, token: &str) -> Result<Request<Body>, DeliverError> {
    let failed = |error: &dyn std::fmt::Display| DeliverError::Request(error.to_string());
    let body = match &request.body {
        SendBody::Empty => Body::empty(),
        SendBody::Bytes(bytes) => Body::from(bytes.clone()),
        SendBody::File { path, from, length } => {
            let mut file = File::open(path).map_err(|error| failed(&error))?;
            file.seek(SeekFrom::Start(*from)).map_err(|error| failed(&error))?;
            let mut bytes = Vec::new();
            file.take(*length).read_to_end(&mut bytes).map_err(|error| failed(&error))?;
            Body::from(bytes)
        }
    };
    let mut http = Request::builder()
        .method(request.method.as_str())
        .uri(&request.path)
        .header(header::AUTHORIZATION, format!("Bearer {token}"));
    // The player's clock shows the day of the visit that is played, which says nothing about any device's.
    for (name, value) in request.headers.iter().filter(|(name, _)| !name.eq_ignore_ascii_case("coilside-clock")) {
        http = http.header(name, value);
    }
    http.body(body).map_err(|error| failed(&error))
}
