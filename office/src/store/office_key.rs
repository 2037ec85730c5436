//! The office's own key, as a file that only its user may read: with it the office vouches for devices and receipts.

use std::fs::{self, OpenOptions};
use std::io::{self, Write as _};
use std::path::Path;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use p256::ecdsa::signature::Signer as _;
use p256::ecdsa::{Signature, SigningKey};
use p256::pkcs8::{DecodePrivateKey as _, EncodePrivateKey as _, LineEnding};

use super::StoreError;
use super::folder::failed;

/// A P-256 key. Its signatures follow RFC 6979: the same bytes are always signed alike, and so a record file too.
pub(crate) struct OfficeKey(SigningKey);

impl OfficeKey {
    /// Reads the key file, or makes one: PKCS#8 in PEM, mode 0600. A file that holds no key is never overwritten.
    pub(super) fn of(path: &Path) -> Result<Self, StoreError> {
        match fs::read_to_string(path) {
            Ok(pem) => {
                keep_private(path).map_err(|why| failed("made private", path, why))?;
                let key = SigningKey::from_pkcs8_pem(&pem);
                key.map(Self).map_err(|why| failed("read as a key", path, io::Error::other(why.to_string())))
            }
            Err(why) if why.kind() == io::ErrorKind::NotFound => {
                Self::make(path).map_err(|why| failed("made", path, why))
            }
            Err(why) => Err(failed("read", path, why)),
        }
    }

    fn make(path: &Path) -> io::Result<Self> {
        let key = loop {
            let mut bytes = [0; 32];
            getrandom::fill(&mut bytes).map_err(io::Error::other)?;
            // A number that is no key is drawn about once in 2^32 times.
            if let Ok(key) = SigningKey::from_slice(&bytes) {
                break key;
            }
        };
        let pem = key.to_pkcs8_pem(LineEnding::LF).map_err(|why| io::Error::other(why.to_string()))?;
        let part = path.with_extension("part");
        let _ = fs::remove_file(&part);
        let mut options = OpenOptions::new();
        options.write(true).create_new(true);
        #[cfg(unix)]
        std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
        let mut file = options.open(&part)?;
        file.write_all(pem.as_bytes())?;
        file.sync_all()?;
        fs::rename(&part, path)?;
        Ok(Self(key))
    }

    /// The public half: SEC 1, uncompressed, 65 bytes.
    pub(crate) fn public(&self) -> Vec<u8> {
        self.0.verifying_key().to_sec1_point(false).as_bytes().to_vec()
    }

    /// Signs a JWS signing input; base64 of r‖s.
    pub(crate) fn sign(&self, input: &str) -> String {
        let signature: Signature = self.0.sign(input.as_bytes());
        STANDARD.encode(signature.to_bytes())
    }
}

#[cfg(unix)]
fn keep_private(path: &Path) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt as _;
    fs::set_permissions(path, fs::Permissions::from_mode(0o600))
}

#[cfg(not(unix))]
fn keep_private(_: &Path) -> io::Result<()> {
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[cfg(unix)]
    #[test]
    fn the_key_file_is_its_owners_only_stays_and_is_never_overwritten() {
        use std::os::unix::fs::PermissionsExt as _;
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("office-key.pem");
        let first = OfficeKey::of(&path).unwrap();
        assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o600);
        fs::set_permissions(&path, fs::Permissions::from_mode(0o644)).unwrap();
        let again = OfficeKey::of(&path).unwrap();
        assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o600);
        assert_eq!((first.public(), first.sign("x")), (again.public(), again.sign("x")));
        fs::write(&path, "not a key").unwrap();
        assert!(OfficeKey::of(&path).is_err());
        assert_eq!(fs::read_to_string(&path).unwrap(), "not a key");
    }
}
