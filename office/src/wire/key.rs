//! Device keys on the wire: P-256 points in SEC1 form, in hexadecimal digits.

use p256::ecdsa::VerifyingKey;

use crate::ids::unhex;

/// A key that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("the key is not a P-256 point in SEC1 form, in hexadecimal digits")]
pub(crate) struct NotAKey;

/// Reads a key of either SEC1 form, into the one form in which keys are stored and compared: uncompressed, 65 bytes.
pub(crate) fn read(hex_digits: &str) -> Result<Vec<u8>, NotAKey> {
    let bytes = unhex(hex_digits).ok_or(NotAKey)?;
    let key = VerifyingKey::from_sec1_bytes(&bytes).map_err(|_| NotAKey)?;
    Ok(key.to_sec1_point(false).as_bytes().to_vec())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The key of RFC 7515, appendix A.3: its coordinates in hexadecimal digits.
    const X: &str = "7fcdce2770f6c45d4183cbee6fdb4b7b580733357be9ef13bacf6e3c7bd15445";
    const Y: &str = "c7f144cd1bbd9b7e872cdfedb9eeb9f4b3695d6ea90b24ad8a4623288588e5ad";

    #[test]
    fn both_forms_of_the_key_of_rfc_7515_are_the_same_key() {
        let whole = read(&format!("04{X}{Y}")).unwrap();
        // SEC1, section 2.3.3: 03 stands for an odd second coordinate.
        assert_eq!(read(&format!("03{X}")).unwrap(), whole);
        assert_eq!(whole.len(), 65);
    }

    #[test]
    fn what_is_no_point_of_the_curve_is_refused() {
        let off_the_curve = format!("04{X}{}", Y.replace('c', "d"));
        for bad in ["", "04", "zz", &off_the_curve] {
            assert_eq!(read(bad), Err(NotAKey), "{bad}");
        }
    }
}
