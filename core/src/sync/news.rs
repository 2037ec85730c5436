//! When the office is asked for news, and from where they go on.

use super::request::Draft;
use crate::now::Now;
use crate::round::News;

/// How often the office is asked while nothing else waits, and while something does, milliseconds.
const EVERY_MS: i64 = 30_000;
const EVERY_BUSY_MS: i64 = 120_000;

/// Asking for news.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Asking {
    cursor: Option<String>,
    /// When they last came.
    last: Option<Now>,
    /// There are more than came.
    more: bool,
}

impl Asking {
    pub(super) fn after(cursor: Option<String>) -> Asking {
        Asking { cursor, ..Asking::default() }
    }

    pub(super) fn cursor(&self) -> Option<String> {
        self.cursor.clone()
    }

    pub(super) fn soon(&mut self) {
        self.last = None;
    }

    pub(super) fn is_due(&self, something_waits: bool, now: &Now) -> bool {
        let every_ms = if something_waits { EVERY_BUSY_MS } else { EVERY_MS };
        self.more || self.last.as_ref().is_none_or(|last| now.since(last).longest_ms > every_ms)
    }

    pub(super) fn draft(&self) -> Draft {
        Draft::get(match &self.cursor {
            Some(cursor) => format!("/api/v1/news?after={}", escaped(cursor)),
            None => "/api/v1/news".to_owned(),
        })
    }

    /// A page came. Only one that goes on has more behind it: the same page again and again is asked for at leisure.
    pub(super) fn came(&mut self, news: &News, now: &Now) {
        self.more = news.more && !news.cursor.is_empty() && self.cursor.as_ref() != Some(&news.cursor);
        if !news.cursor.is_empty() {
            self.cursor = Some(news.cursor.clone());
        }
        self.last = Some(now.clone());
    }
}

/// A cursor in an address: everything but the unreserved letters of RFC 3986, 2.3, as percent and two digits.
fn escaped(cursor: &str) -> String {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_' | b'~');
    cursor.bytes().map(|b| if plain(b) { char::from(b).to_string() } else { format!("%{b:02X}") }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_that_repeats_itself_is_not_asked_for_at_once() {
        let now = Now { utc_ms: 0, offset_min: 0, mono_ms: 0, mono_epoch: "a".into() };
        let mut asking = Asking::default();
        let page = |cursor: &str, more| News { cursor: cursor.into(), more, ..News::default() };
        assert!(asking.is_due(true, &now));
        asking.came(&page("a/1", true), &now);
        assert!(asking.is_due(true, &now), "there is more");
        asking.came(&page("a/1", true), &now);
        assert!(!asking.is_due(false, &now), "the same again");
        asking.came(&page("a/2", false), &now);
        assert_eq!((asking.is_due(false, &now), asking.cursor().as_deref()), (false, Some("a/2")));
        assert_eq!(escaped("a/2&b=ñ"), "a%2F2%26b%3D%C3%B1");
    }
}
