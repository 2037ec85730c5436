//! Joining an office: the link or the code that it shows, and what it answers.

use serde::Deserialize;
use serde_json::{Value, json};

use super::access::{Access, is_name, is_plain};
use super::answer::{Answer, Meaning};
use super::request::Draft;

/// A code has so many characters.
const CODE_CHARS: usize = 8;
/// The most characters of a device's name.
const NAME_CHARS_MAX: usize = 80;

/// An attempt to join.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Joining {
    /// The office's address, without a slash at the end.
    pub office: String,
    /// The code, eight characters.
    pub code: String,
    /// What the device calls itself.
    pub name: String,
}

/// The office let the device in.
#[derive(Clone, Debug, PartialEq, Eq, Deserialize)]
pub struct Joined {
    device: Value,
    token: String,
    expires_utc_ms: i64,
}

impl Joined {
    pub(super) fn at(self, office: &str) -> Access {
        let Joined { device, token, expires_utc_ms } = self;
        Access { office: office.to_owned(), device, token, expires_utc_ms }
    }
}

/// Why an attempt to join ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NotJoined {
    /// The code is wrong, was used, or is too old.
    Code,
    /// Too many wrong codes came: the office asks to wait.
    TooMany,
    /// Nobody answered at that address.
    NoAnswer,
    /// Something else than an office answered.
    NotAnOffice,
    /// The office cannot just now.
    Busy,
}

impl NotJoined {
    /// Every kind.
    pub const ALL: [NotJoined; 5] =
        [NotJoined::Code, NotJoined::TooMany, NotJoined::NoAnswer, NotJoined::NotAnOffice, NotJoined::Busy];

    /// Its name in the keys of its words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            NotJoined::Code => "code",
            NotJoined::TooMany => "too-many",
            NotJoined::NoAnswer => "no-answer",
            NotJoined::NotAnOffice => "not-an-office",
            NotJoined::Busy => "busy",
        }
    }
}

/// What is wrong with what was typed: in which field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mistyped {
    /// No code, or not one of eight characters.
    Code,
    /// No address, or not one of the kind `https://office.example`.
    Address,
}

/// Reads what was typed or pasted: the office's whole link, or its address and the code apart.
///
/// # Errors
/// What cannot be read.
pub fn read(code: &str, address: &str, name: &str) -> Result<Joining, Mistyped> {
    let code = code.trim();
    let (office, code) = match code.split_once('#') {
        Some((link, code)) => (link.trim_end_matches('/').strip_suffix("/join").ok_or(Mistyped::Address)?, code),
        None => (address.trim(), code),
    };
    let code = plain_code(code).ok_or(Mistyped::Code)?;
    let office = plain_address(office).ok_or(Mistyped::Address)?;
    Ok(Joining { office, code, name: name.trim().chars().take(NAME_CHARS_MAX).collect() })
}

/// Crockford's base 32 in its one form: capitals, O as 0, I and L as 1, without hyphens and spaces; `ABCD-EFGH`.
fn plain_code(typed: &str) -> Option<String> {
    let letters: Option<String> = typed
        .chars()
        .filter(|c| !c.is_whitespace() && *c != '-')
        .map(|c| match c.to_ascii_uppercase() {
            'O' => Some('0'),
            'I' | 'L' => Some('1'),
            'U' => None,
            other => other.is_ascii_alphanumeric().then_some(other),
        })
        .collect();
    let letters = letters.filter(|letters| letters.len() == CODE_CHARS)?;
    let (first, second) = letters.split_at(CODE_CHARS / 2);
    Some(format!("{first}-{second}"))
}

/// An address of the kind `https://office.example`, also with a port and a path.
fn plain_address(typed: &str) -> Option<String> {
    let typed = typed.trim().trim_end_matches('/');
    let (scheme, rest) = typed.split_once("://")?;
    let scheme = scheme.to_ascii_lowercase();
    let host = rest.split(['/', ':']).next().unwrap_or_default();
    let plain = rest
        .bytes()
        .all(|b| b.is_ascii_alphanumeric() || matches!(b, b'.' | b'-' | b'_' | b':' | b'/' | b'~' | b'[' | b']'));
    (matches!(scheme.as_str(), "http" | "https") && !host.is_empty() && plain && rest.len() <= 200)
        .then(|| format!("{scheme}://{rest}"))
}

pub(super) fn draft(joining: &Joining, device_key: &str) -> Draft {
    let body = json!({ "code": joining.code, "public_key": device_key, "name": joining.name });
    Draft::json("POST", "/api/v1/join", &body)
}

pub(super) fn meaning(answer: &Answer<'_>) -> Meaning {
    let joined = answer.json::<Joined>().filter(|_| answer.status == 201);
    if let Some(joined) = joined.filter(|joined| is_plain(&joined.token) && is_name(&joined.device)) {
        return Meaning::Joined(joined);
    }
    Meaning::NotJoined(match (answer.status, answer.kind().as_deref()) {
        (403, Some("join-code")) => NotJoined::Code,
        (429, _) => NotJoined::TooMany,
        (0, _) => NotJoined::NoAnswer,
        (500.., _) => NotJoined::Busy,
        _ => NotJoined::NotAnOffice,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn joining(office: &str, code: &str) -> Joining {
        Joining { office: office.into(), code: code.into(), name: "Van 2".into() }
    }

    #[test]
    fn the_whole_link_is_enough_and_a_code_alone_needs_the_address() {
        let wanted = Ok(joining("https://office.example", "7K2M-9QXR"));
        assert_eq!(read(" https://office.example/join#7K2M-9QXR\n", "", "Van 2"), wanted);
        assert_eq!(read("7k2m 9qxr", "https://office.example/", " Van 2 "), wanted);
        assert_eq!(read("7K2M9QXR", "", "Van 2"), Err(Mistyped::Address));
        let local = read("http://127.0.0.1:8080/join#00000001", "https://other.example", "Van 2");
        assert_eq!(local, Ok(joining("http://127.0.0.1:8080", "0000-0001")), "the link goes before the field");
        assert_eq!(read("https://a.example/office/join#7K2M-9QXR", "", "").unwrap().office, "https://a.example/office");
    }

    /// Crockford, 'Base 32': O is read as zero, I and L as one, hyphens are left out, U is none of its letters.
    #[test]
    fn letters_that_look_alike_are_read_as_crockford_has_them() {
        assert_eq!(plain_code("oOiI-lLab").as_deref(), Some("0011-11AB"));
        for bad in ["", "7K2M-9QX", "7K2M-9QXRR", "7K2M-9QXU", "7K2M-9QX!", "ñK2M-9QXR"] {
            assert_eq!(plain_code(bad), None, "{bad}");
        }
    }

    #[test]
    fn an_address_that_is_none_is_turned_down() {
        for bad in [
            "office.example",
            "ftp://a.example",
            "https://",
            "https:// a.example",
            "https://a.example\r\nX: y",
            "https://u@a.example",
        ] {
            assert_eq!(plain_address(bad), None, "{bad}");
        }
        assert_eq!(read("https://a.example/elsewhere#7K2M-9QXR", "", ""), Err(Mistyped::Address));
    }
}
