//! Files to keep, and the style sheet and the icon. Those carry their digest in their address, so browsers may keep them for ever.

use std::sync::LazyLock;

use axum::http::header::{CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE};
use axum::response::{IntoResponse as _, Response};
use coilside_core::record::summary;

use crate::ids::Digest;

const STYLE: &str = include_str!("../../style.css");

/// A coil of four turns between two headers, drawn for inline use: it takes the colour of the text around it.
pub(super) const MARK: &str = r#"<svg viewBox="0 0 32 32" width="32" height="32" aria-hidden="true" focusable="false"><g fill="none" stroke="currentColor" stroke-width="2.6" stroke-linecap="round"><path d="M4 5h19a3.4 3.4 0 0 1 0 6.8H9a3.4 3.4 0 0 0 0 6.8h14a3.4 3.4 0 0 1 0 6.8H4"/></g><circle cx="4.5" cy="5" r="2.4" fill="currentColor"/></svg>"#;

const ICON: &str = r##"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><rect width="32" height="32" rx="7" fill="#08343e"/><path d="M7 9h14a2.8 2.8 0 0 1 0 5.6H11a2.8 2.8 0 0 0 0 5.6h10a2.8 2.8 0 0 1 0 5.6H7" transform="translate(0 -1.4)" fill="none" stroke="#f3ae6e" stroke-width="2.4" stroke-linecap="round"/></svg>"##;

static STYLE_ADDRESS: LazyLock<String> = LazyLock::new(|| address("style.css", STYLE));
static SUMMARY_STYLE_ADDRESS: LazyLock<String> = LazyLock::new(|| address("summary.css", summary::STYLE));

fn address(name: &str, text: &str) -> String {
    let digest = Digest::of(text.as_bytes()).to_string();
    format!("/{name}?v={}", digest.chars().take(12).collect::<String>())
}

pub(super) fn style_address() -> &'static str {
    &STYLE_ADDRESS
}

pub(super) fn summary_style_address() -> &'static str {
    &SUMMARY_STYLE_ADDRESS
}

pub(super) async fn summary_style() -> Response {
    kept("text/css; charset=utf-8", summary::STYLE)
}

pub(super) async fn style() -> Response {
    kept("text/css; charset=utf-8", STYLE)
}

pub(super) async fn icon() -> Response {
    kept("image/svg+xml", ICON)
}

/// A file for whoever asked, under a name; nobody else keeps it.
pub(super) fn attachment(media: &'static str, name: &str, text: String) -> Response {
    let headers = [
        (CONTENT_TYPE, media.to_owned()),
        (CONTENT_DISPOSITION, format!("attachment; filename=\"{name}\"")),
        (CACHE_CONTROL, "no-store".to_owned()),
    ];
    (headers, text).into_response()
}

fn kept(media: &'static str, text: &'static str) -> Response {
    ([(CONTENT_TYPE, media), (CACHE_CONTROL, "public, max-age=31536000, immutable")], text).into_response()
}
