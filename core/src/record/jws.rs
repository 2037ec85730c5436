//! A compact JWS (RFC 7515) with ES256 over canonical JSON (RFC 8785). Any JOSE library can check one.

use base64::Engine as _;
use base64::engine::general_purpose::{STANDARD, URL_SAFE_NO_PAD};
use p256::ecdsa::signature::Verifier as _;
use p256::ecdsa::{Signature, VerifyingKey};
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::json;

/// Why a JWS is none.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum JwsError {
    /// Not canonical.
    #[error("the content could not be written: {0}")]
    Unwritable(String),
    /// Not a compact JWS of ours.
    #[error("it cannot be read: {0}")]
    Unreadable(&'static str),
    /// Not signed by that key.
    #[error("the signature does not belong to this content and key")]
    Signature,
}

/// The protected header: the algorithm and, by `typ`, what the payload is.
fn header(typ: &str) -> String {
    format!(r#"{{"alg":"ES256","typ":"{typ}"}}"#)
}

/// The bytes to sign: `BASE64URL(header).BASE64URL(payload)`.
///
/// # Errors
/// Where the payload has no canonical form.
pub fn signing_input(typ: &str, payload: &impl Serialize) -> Result<String, JwsError> {
    let canonical =
        serde_json_canonicalizer::to_vec(payload).map_err(|error| JwsError::Unwritable(error.to_string()))?;
    Ok(format!("{}.{}", URL_SAFE_NO_PAD.encode(header(typ)), URL_SAFE_NO_PAD.encode(canonical)))
}

/// Puts a signature (base64 of DER or of raw r‖s) under a signing input, after checking it against the key.
///
/// # Errors
/// Where the signature does not belong to the input and the key.
pub fn close(signing_input: &str, signature_base64: &str, public_key: &[u8]) -> Result<String, JwsError> {
    let bytes = STANDARD
        .decode(signature_base64.trim())
        .or_else(|_| URL_SAFE_NO_PAD.decode(signature_base64.trim()))
        .map_err(|_| JwsError::Unreadable("the signature is not base64"))?;
    let signature = Signature::from_slice(&bytes)
        .or_else(|_| Signature::from_der(&bytes))
        .map_err(|_| JwsError::Unreadable("the signature is neither DER nor r‖s"))?;
    check(signing_input, &signature, public_key)?;
    Ok(format!("{signing_input}.{}", URL_SAFE_NO_PAD.encode(signature.to_bytes())))
}

fn check(signing_input: &str, signature: &Signature, public_key: &[u8]) -> Result<(), JwsError> {
    let key =
        VerifyingKey::from_sec1_bytes(public_key).map_err(|_| JwsError::Unreadable("the key is no P-256 point"))?;
    key.verify(signing_input.as_bytes(), signature).map_err(|_| JwsError::Signature)
}

/// Checks a compact JWS against a key (SEC1) and returns what it says. `typ` is what its payload must be. It has one form
/// only: header, base64 and payload must be the bytes that [`signing_input`] would write.
///
/// # Errors
/// Where it cannot be read or was not signed by that key.
pub fn open<T: DeserializeOwned + Serialize>(jws: &str, typ: &str, public_key: &[u8]) -> Result<T, JwsError> {
    let (input, signature) = jws.rsplit_once('.').ok_or(JwsError::Unreadable("it is not a compact JWS"))?;
    let signature = URL_SAFE_NO_PAD
        .decode(signature)
        .ok()
        .and_then(|bytes| Signature::from_slice(&bytes).ok())
        .ok_or(JwsError::Unreadable("its signature is not r‖s"))?;
    let said = peek(jws, typ)?;
    check(input, &signature, public_key)?;
    Ok(said)
}

/// What a compact JWS says, whoever signed it: to name what is wrong with one that does not open.
///
/// # Errors
/// Where it cannot be read.
pub fn peek<T: DeserializeOwned + Serialize>(jws: &str, typ: &str) -> Result<T, JwsError> {
    let mut parts = jws.split('.');
    let (Some(head), Some(payload), Some(_), None) = (parts.next(), parts.next(), parts.next(), parts.next()) else {
        return Err(JwsError::Unreadable("it is not a compact JWS"));
    };
    if URL_SAFE_NO_PAD.decode(head).ok().as_deref() != Some(header(typ).as_bytes()) {
        return Err(JwsError::Unreadable("its header is not the one that belongs there"));
    }
    let payload = URL_SAFE_NO_PAD.decode(payload).map_err(|_| JwsError::Unreadable("its payload is not base64url"))?;
    serde_json::from_slice(&payload).map_err(|_| JwsError::Unreadable("its payload is not what belongs there"))
}

/// A P-256 public key (SEC1, uncompressed) as a JSON Web Key (RFC 7517), in canonical form; none where it is no such key.
#[must_use]
pub fn jwk(public_key: &[u8]) -> Option<String> {
    VerifyingKey::from_sec1_bytes(public_key).ok()?;
    let (first, point) = public_key.split_first()?;
    if *first != 4 || point.len() != 64 {
        return None;
    }
    let (x, y) = point.split_at(32);
    let key = json!({ "crv": "P-256", "kty": "EC", "x": URL_SAFE_NO_PAD.encode(x), "y": URL_SAFE_NO_PAD.encode(y) });
    serde_json_canonicalizer::to_string(&key).ok()
}

/// Reads lower-case hexadecimal digits, as keys stand in events; none where they are something else.
#[must_use]
pub fn unhex(text: &str) -> Option<Vec<u8>> {
    let nibble = |digit: u8| match digit {
        b'0'..=b'9' => Some(digit - b'0'),
        b'a'..=b'f' => Some(digit - b'a' + 10),
        _ => None,
    };
    let pair = |pair: &[u8]| match pair {
        [high, low] => Some(nibble(*high)? * 16 + nibble(*low)?),
        _ => None,
    };
    text.as_bytes().chunks(2).map(pair).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 7515, appendix A.3: the example of a JWS with ES256. Its key is that of A.3.1, its parts those of A.3.1 and A.3.2.
    const INPUT: &str = "eyJhbGciOiJFUzI1NiJ9.eyJpc3MiOiJqb2UiLA0KICJleHAiOjEzMDA4MTkzODAsDQogImh0dHA6Ly9leGFtcGxlLmNvbS9pc19yb290Ijp0cnVlfQ";
    const SIGNATURE: &str = "DtEhU3ljbEg8L38VWAfUAqOyKAM6-Xx-F4GawxaepmXFCgfTjDxw5djxLa8ISlSApmWQxfKTUJqPP3-Kg6NU1Q";
    const X: &str = "f83OJ3D2xF1Bg8vub9tLe1gHMzV76e8Tus9uPHvRVEU";
    const Y: &str = "x_FEzRu9m36HLN_tue659LNpXW6pCyStikYjKIWI5a0";

    fn rfc_key() -> Vec<u8> {
        let part = |text: &str| URL_SAFE_NO_PAD.decode(text).unwrap();
        [vec![4], part(X), part(Y)].concat()
    }

    #[test]
    fn the_example_of_rfc_7515_a_3_holds_under_its_key_and_not_when_a_bit_of_it_changes() {
        let signature = Signature::from_slice(&URL_SAFE_NO_PAD.decode(SIGNATURE).unwrap()).unwrap();
        assert_eq!(check(INPUT, &signature, &rfc_key()), Ok(()));
        assert_eq!(check(&INPUT.replace("MTkz", "MTkx"), &signature, &rfc_key()), Err(JwsError::Signature));
        assert_eq!(close(INPUT, SIGNATURE, &rfc_key()).unwrap(), format!("{INPUT}.{SIGNATURE}"));
        assert_eq!(
            jwk(&rfc_key()).unwrap(),
            format!(r#"{{"crv":"P-256","kty":"EC","x":"{X}","y":"{Y}"}}"#),
            "the key of A.3.1, without its private half"
        );
    }

    /// Key, header and content of another thing are not taken for ours.
    #[test]
    fn a_jws_of_another_type_is_not_read() {
        let jws = format!("{INPUT}.{SIGNATURE}");
        assert!(matches!(
            open::<serde_json::Value>(&jws, "coilside-seal+json", &rfc_key()),
            Err(JwsError::Unreadable(_))
        ));
    }

    #[test]
    fn hexadecimal_digits_are_read_in_lower_case_only() {
        assert_eq!(unhex("00ff1a"), Some(vec![0, 255, 26]));
        for bad in ["0", "0G", "FF", "é"] {
            assert_eq!(unhex(bad), None, "{bad}");
        }
    }
}
