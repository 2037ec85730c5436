//! A device joins the office, and gets tokens that end.

use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A device wants to join.
#[derive(Debug, Deserialize, ToSchema)]
pub(crate) struct JoinIn {
    /// The code that the office showed: eight characters of Crockford's base32, in any case, with hyphens or without.
    #[schema(max_length = 32, example = "7K3M-9QXT")]
    pub(crate) code: String,
    /// Its P-256 key, SEC1, in hexadecimal digits.
    #[schema(pattern = "^0[234][0-9a-fA-F]+$", max_length = 130)]
    pub(crate) public_key: String,
    /// What the device calls itself.
    #[schema(min_length = 1, max_length = 80)]
    pub(crate) name: String,
}

/// A device has joined.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct JoinOut {
    /// The device's name at this office, to ask for tokens with.
    pub(crate) device: String,
    /// The first token.
    pub(crate) token: String,
    /// When it ends.
    pub(crate) expires_utc_ms: i64,
}

/// What a device signs to get a token.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct NonceOut {
    /// Good for one token.
    pub(crate) nonce: String,
    /// When it ends.
    pub(crate) expires_utc_ms: i64,
}

/// A device proves that it holds its key.
#[derive(Debug, Deserialize, ToSchema)]
pub(crate) struct TokenIn {
    /// Compact JWS, ES256, over the canonical JSON of `aud` (`coilside-office`), `device` and `nonce`.
    #[schema(max_length = 4096)]
    pub(crate) jws: String,
}

/// A token.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct TokenOut {
    /// For `Authorization: Bearer …`.
    pub(crate) token: String,
    /// When it ends.
    pub(crate) expires_utc_ms: i64,
}

/// The alphabet of codes: Crockford's base32 (<https://www.crockford.com/base32.html>), without I, L, O and U.
const ALPHABET: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/// How many characters a code has.
const CODE_CHARS: u32 = 8;

/// A code as it is shown, in two groups, out of five random bytes.
pub(crate) fn code(random: [u8; 5]) -> String {
    let number = random.iter().fold(0_u64, |number, byte| number << 8 | u64::from(*byte));
    let digit = |at: u32| ALPHABET.get((number >> (5 * at) & 31) as usize).map_or('0', |byte| char::from(*byte));
    let digits: String = (0..CODE_CHARS).rev().map(digit).collect();
    let (first, second) = digits.split_at(4);
    format!("{first}-{second}")
}

/// A code as it was typed or read, in the form that is hashed; none where it is none. Crockford reads O as 0, I and L as 1.
pub(crate) fn plain(typed: &str) -> Option<String> {
    let one = |c: char| match c.to_ascii_uppercase() {
        'O' => Some('0'),
        'I' | 'L' => Some('1'),
        c if c.is_ascii() && ALPHABET.contains(&(c as u8)) => Some(c),
        _ => None,
    };
    let digits: Option<String> = typed.chars().filter(|c| !matches!(c, '-' | ' ')).map(one).collect();
    digits.filter(|digits| digits.len() == CODE_CHARS as usize)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_is_read_back_as_people_type_it() {
        // 2^40 - 1, and a number whose digits are 0 to 7, by hand.
        assert_eq!(code([255; 5]), "ZZZZ-ZZZZ");
        assert_eq!(code([0x00, 0x44, 0x32, 0x14, 0xc7]), "0123-4567");
        for typed in ["0123-4567", "01234567", "o123 4567", "oI23-4567", " 0L23-4567 "] {
            assert_eq!(plain(typed).as_deref(), Some("01234567"), "{typed}");
        }
        for bad in ["", "0123456", "012345678", "0123-456U", "0123-456é"] {
            assert_eq!(plain(bad), None, "{bad}");
        }
    }
}
