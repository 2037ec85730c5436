//! Headers that every answer carries.

use axum::Router;
use axum::http::HeaderValue;
use axum::http::header::{CACHE_CONTROL, CONTENT_SECURITY_POLICY, HeaderName, REFERRER_POLICY, X_CONTENT_TYPE_OPTIONS};
use tower_http::set_header::SetResponseHeaderLayer;

/// Nothing from elsewhere, no script at all, no frame around, forms only to ourselves.
pub(super) const POLICY: &str = "default-src 'none'; style-src 'self'; img-src 'self'; form-action 'self'; \
                                 base-uri 'none'; frame-ancestors 'none'";

const ROBOTS: HeaderName = HeaderName::from_static("x-robots-tag");
const RESOURCE: HeaderName = HeaderName::from_static("cross-origin-resource-policy");

pub(super) fn on_every_answer(router: Router) -> Router {
    let always = |name, value| SetResponseHeaderLayer::overriding(name, HeaderValue::from_static(value));
    let unless_set = |name, value| SetResponseHeaderLayer::if_not_present(name, HeaderValue::from_static(value));
    router
        .layer(always(CONTENT_SECURITY_POLICY, POLICY))
        .layer(always(X_CONTENT_TYPE_OPTIONS, "nosniff"))
        // The summary's address opens it, so it must not travel on.
        .layer(always(REFERRER_POLICY, "no-referrer"))
        .layer(always(ROBOTS, "noindex, nofollow"))
        .layer(always(RESOURCE, "same-origin"))
        .layer(unless_set(CACHE_CONTROL, "no-store"))
}
