//! Who may call: only the page that this process serves, under the name under which it serves it, with its token.

use axum::{
    extract::{Request, State},
    http::{HeaderMap, HeaderName, HeaderValue, header},
    middleware::Next,
    response::{IntoResponse, Response},
};

use crate::{door::Shell, problem::Problem};

/// Nothing from elsewhere, no inline script or style, no frame, no form.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; \
                      form-action 'none'; base-uri 'none'; frame-ancestors 'none'; require-trusted-types-for 'script'";

const ANSWER_HEADERS: [(HeaderName, HeaderValue); 7] = [
    (header::CONTENT_SECURITY_POLICY, HeaderValue::from_static(POLICY)),
    (header::CACHE_CONTROL, HeaderValue::from_static("no-store")),
    (header::X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff")),
    (header::REFERRER_POLICY, HeaderValue::from_static("no-referrer")),
    (HeaderName::from_static("cross-origin-opener-policy"), HeaderValue::from_static("same-origin")),
    (HeaderName::from_static("cross-origin-resource-policy"), HeaderValue::from_static("same-origin")),
    (
        HeaderName::from_static("permissions-policy"),
        HeaderValue::from_static(
            "camera=(self), geolocation=(self), screen-wake-lock=(self), microphone=(), payment=(), usb=()",
        ),
    ),
];

/// Refuses every call that names another host (a foreign name that was made to point here) or comes from a page of
/// another origin, and puts the protecting headers on every answer.
pub(crate) async fn origin(State(shell): State<Shell>, request: Request, next: Next) -> Response {
    let mut response = if is_ours(request.headers(), shell.authority()) {
        next.run(request).await
    } else {
        Problem::foreign().into_response()
    };
    let headers = response.headers_mut();
    for (name, value) in ANSWER_HEADERS {
        // A summary stands for itself, under a policy of its own.
        if name != header::CONTENT_SECURITY_POLICY || !headers.contains_key(&name) {
            headers.insert(name, value);
        }
    }
    response
}

fn is_ours(headers: &HeaderMap, authority: &str) -> bool {
    let host = headers.get(header::HOST).is_some_and(|host| host.as_bytes() == authority.as_bytes());
    let origin = headers
        .get(header::ORIGIN)
        .is_none_or(|origin| origin.as_bytes().strip_prefix(b"http://") == Some(authority.as_bytes()));
    // A browser says by itself where a call comes from. `none`: a person opened the address.
    let site = headers
        .get("sec-fetch-site")
        .is_none_or(|site| matches!(site.as_bytes(), b"same-origin" | b"none") || is_visit(headers));
    host && origin && site
}

/// A link elsewhere may lead a person to the page; it reads nothing of it.
fn is_visit(headers: &HeaderMap) -> bool {
    headers.get("sec-fetch-mode").is_some_and(|mode| mode.as_bytes() == b"navigate")
        && headers.get("sec-fetch-dest").is_some_and(|what| what.as_bytes() == b"document")
}

/// Refuses calls of the door without the token.
pub(crate) async fn token(State(shell): State<Shell>, request: Request, next: Next) -> Response {
    let given = request.headers().get("x-coilside-token").map_or(&[][..], HeaderValue::as_bytes);
    if shell.token().is(given) { next.run(request).await } else { Problem::token().into_response() }
}

#[cfg(test)]
mod tests {
    use axum::http::{Method, StatusCode};

    use crate::stub::{AUTHORITY, Caller, TOKEN};

    async fn status(headers: &[(&str, &str)]) -> StatusCode {
        let mut all = vec![("x-coilside-token", TOKEN), ("x-coilside-window", "one")];
        all.extend_from_slice(headers);
        Caller::new().with(Method::GET, "/door/screen", &all, "").await.status
    }

    #[tokio::test]
    async fn another_host_name_is_refused_even_with_the_token() {
        for host in ["evil.example", "localhost:4000", "127.0.0.1", "127.0.0.1:4001", ""] {
            assert_eq!(status(&[("host", host)]).await, StatusCode::FORBIDDEN, "{host}");
        }
        assert_eq!(status(&[("host", AUTHORITY)]).await, StatusCode::OK);
    }

    #[tokio::test]
    async fn another_origin_is_refused_even_with_the_token() {
        for origin in ["http://evil.example", "null", "https://127.0.0.1:4000", "http://127.0.0.1:4000.evil.example"] {
            assert_eq!(status(&[("origin", origin)]).await, StatusCode::FORBIDDEN, "{origin}");
        }
        assert_eq!(status(&[("origin", "http://127.0.0.1:4000")]).await, StatusCode::OK);
        assert_eq!(status(&[("sec-fetch-site", "cross-site")]).await, StatusCode::FORBIDDEN);
        assert_eq!(status(&[("sec-fetch-site", "same-origin")]).await, StatusCode::OK);
    }
}
