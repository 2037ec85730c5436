//! Who looks at a page: signed in or not, and in which language.

use axum::extract::FromRequestParts;
use axum::http::header::{ACCEPT_LANGUAGE, COOKIE};
use axum::http::request::Parts;
use coilside_core::words::Words;

use super::PageError;
use crate::app::language::Language;
use crate::app::library::Library;
use crate::app::sign_in;
use crate::http::blocking::on_disk;
use crate::office::Office;

pub(super) const SESSION_COOKIE: &str = "coilside-session";
pub(super) const LANGUAGE_COOKIE: &str = "coilside-language";

/// Someone who looks at a page.
#[derive(Clone)]
pub(super) struct Visitor {
    /// The language of the page.
    pub(super) language: Language,
    /// The language was asked for in this address: it is remembered from now on.
    pub(super) chosen: Option<Language>,
    /// The session's secret, where the session holds.
    pub(super) session: Option<String>,
    /// The page's own address: path, and query without the language.
    pub(super) path: String,
    pub(super) query: String,
    library: Library,
}

impl std::fmt::Debug for Visitor {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Visitor").field("path", &self.path).finish_non_exhaustive()
    }
}

/// A visitor who is signed in. A handler that takes one cannot be reached by anyone else.
pub(super) struct SignedIn(pub(super) Visitor);

impl Visitor {
    /// The office's own words in the visitor's language.
    pub(super) fn words(&self) -> &Words {
        self.library.words(self.language, None)
    }

    /// The same in another language.
    pub(super) fn words_in(&self, language: Language) -> &Words {
        self.library.words(language, None)
    }

    /// This page in another language.
    pub(super) fn in_language(&self, language: Language) -> String {
        let and = if self.query.is_empty() { "" } else { "&" };
        format!("{}?{}{and}lang={}", self.path, self.query, language.tag())
    }
}

impl FromRequestParts<Office> for Visitor {
    type Rejection = PageError;

    async fn from_request_parts(parts: &mut Parts, office: &Office) -> Result<Self, PageError> {
        let header = |name| parts.headers.get(name).and_then(|value| value.to_str().ok()).unwrap_or_default();
        let (path, query) = (parts.uri.path(), parts.uri.query().unwrap_or_default());
        let (asked, rest): (Vec<&str>, Vec<&str>) =
            query.split('&').filter(|pair| !pair.is_empty()).partition(|pair| pair.starts_with("lang="));
        let chosen = asked.last().and_then(|pair| Language::parse(pair.trim_start_matches("lang=")));
        let remembered = || cookie(header(COOKIE), LANGUAGE_COOKIE).and_then(Language::parse);
        let preferred = || Language::of_header(header(ACCEPT_LANGUAGE));
        let session = cookie(header(COOKIE), SESSION_COOKIE).map(str::to_owned);
        let mut visitor = Visitor {
            language: chosen.or_else(remembered).or_else(preferred).unwrap_or_default(),
            chosen,
            session: None,
            path: path.to_owned(),
            query: rest.join("&"),
            library: office.library.clone(),
        };
        if let Some(secret) = session {
            let kept = secret.clone();
            let holds = on_disk(office, move |store, now_ms| sign_in::holds(store, &secret, now_ms)).await?;
            visitor.session = holds.then_some(kept);
        }
        Ok(visitor)
    }
}

impl FromRequestParts<Office> for SignedIn {
    type Rejection = PageError;

    async fn from_request_parts(parts: &mut Parts, office: &Office) -> Result<Self, PageError> {
        let visitor = <Visitor as FromRequestParts<Office>>::from_request_parts(parts, office).await?;
        if visitor.session.is_some() { Ok(SignedIn(visitor)) } else { Err(PageError::SignIn(visitor)) }
    }
}

fn cookie<'a>(header: &'a str, name: &str) -> Option<&'a str> {
    header.split(';').find_map(|pair| pair.trim().strip_prefix(name)?.strip_prefix('='))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_cookie_is_found_among_others_and_not_by_half_its_name() {
        let header = "coilside-language=es; coilside-session=abc; x=y";
        assert_eq!(cookie(header, SESSION_COOKIE), Some("abc"));
        assert_eq!(cookie(header, "coilside"), None);
        assert_eq!(cookie("", SESSION_COOKIE), None);
    }
}
