//! What a request holds, taken out with problem details instead of the framework's plain words.

use axum::body::Bytes;
use axum::extract::{FromRequest, FromRequestParts, Path, Request};
use axum::http::request::Parts;
use serde::de::DeserializeOwned;

use crate::http::refusal::Refusal;
use crate::office::Office;

/// A JSON body.
pub(super) struct Json<T>(pub(super) T);

impl<T: DeserializeOwned> FromRequest<Office> for Json<T> {
    type Rejection = Refusal;

    async fn from_request(request: Request, office: &Office) -> Result<Self, Refusal> {
        let Whole(bytes) = Whole::from_request(request, office).await?;
        serde_json::from_slice(&bytes)
            .map(Json)
            .map_err(|why| Refusal::stuck(400, "json", "The body cannot be read", format!("it should be JSON: {why}")))
    }
}

/// A body's bytes, all of them.
pub(super) struct Whole(pub(super) Bytes);

impl FromRequest<Office> for Whole {
    type Rejection = Refusal;

    async fn from_request(request: Request, office: &Office) -> Result<Self, Refusal> {
        Bytes::from_request(request, office).await.map(Whole).map_err(|why| {
            let (status, why) = (why.status().as_u16(), why.body_text());
            match status {
                413 => Refusal::stuck(413, "too-long", "The body is too long", why),
                _ => Refusal::later("line", "The body did not come whole", why, 1),
            }
        })
    }
}

/// The one name in an address.
pub(super) struct Named(pub(super) String);

impl FromRequestParts<Office> for Named {
    type Rejection = Refusal;

    async fn from_request_parts(parts: &mut Parts, office: &Office) -> Result<Self, Refusal> {
        let name = <Path<String> as FromRequestParts<Office>>::from_request_parts(parts, office).await;
        name.map(|Path(name)| Named(name))
            .map_err(|why| Refusal::stuck(404, "address", "There is nothing here", why.body_text()))
    }
}

/// A value of the address's query; none where it is not there. Percent-encoding of plain names changes nothing, so none is
/// undone: whatever holds some is no name of ours.
pub(super) fn asked<'a>(query: Option<&'a str>, name: &str) -> Option<&'a str> {
    let pairs = query.unwrap_or_default().split('&');
    pairs.filter_map(|pair| pair.split_once('=')).find(|(key, _)| *key == name).map(|(_, value)| value)
}
