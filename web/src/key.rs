//! The device's signing key, as a file. A phone keeps it in hardware; a computer of the office may not be able to.

use std::{
    fs, io,
    path::{Path, PathBuf},
};

use base64::{Engine, engine::general_purpose::STANDARD};
use coilside_core::effect::Outcome;
use p256::{
    ecdsa::{Signature, SigningKey, signature::Signer},
    pkcs8::{DecodePrivateKey, EncodePrivateKey, LineEnding},
};

use crate::{error::FieldError, private_file};

const FILE: &str = "device-key.pem";

/// A P-256 key that signs for this device.
pub(crate) struct DeviceKey {
    signing: SigningKey,
    file: PathBuf,
    was_open: bool,
}

impl DeviceKey {
    /// Reads the key of `folder`, or makes one: PKCS#8 in PEM, readable by this user only.
    ///
    /// # Errors
    /// The folder or its disk, or a key file that holds no P-256 key: it is never overwritten.
    pub(crate) fn of(folder: &Path) -> Result<Self, FieldError> {
        let file = folder.join(FILE);
        match fs::read_to_string(&file) {
            Ok(pem) => Self::read(file, &pem),
            Err(why) if why.kind() == io::ErrorKind::NotFound => Self::make(file),
            Err(why) => Err(FieldError::Key { file, why: why.to_string() }),
        }
    }

    fn read(file: PathBuf, pem: &str) -> Result<Self, FieldError> {
        let signing = match SigningKey::from_pkcs8_pem(pem) {
            Ok(signing) => signing,
            Err(why) => return Err(FieldError::Key { file, why: why.to_string() }),
        };
        match private_file::make_private(&file) {
            Ok(was_open) => Ok(Self { signing, file, was_open }),
            Err(why) => Err(FieldError::Key { file, why: why.to_string() }),
        }
    }

    fn make(file: PathBuf) -> Result<Self, FieldError> {
        let signing = new_key()?;
        let pem = signing
            .to_pkcs8_pem(LineEnding::LF)
            .map_err(|why| FieldError::Key { file: file.clone(), why: why.to_string() })?;
        private_file::write(&file, pem.as_bytes()).map_err(|why| FieldError::of_folder(&file, why))?;
        Ok(Self { signing, file, was_open: false })
    }

    /// The public half: SEC 1, uncompressed, 65 bytes.
    pub(crate) fn public(&self) -> Vec<u8> {
        self.signing.verifying_key().to_sec1_point(false).as_bytes().to_vec()
    }

    /// What to tell the person who started the process.
    pub(crate) fn warning(&self) -> String {
        let file = self.file.display();
        let closed = if self.was_open { " Others could read it; now only you can." } else { "" };
        format!(
            "software key: {file} signs the records of this device. Whoever reads it can sign in its name: keep it private.{closed}"
        )
    }

    /// Signs bytes given in base64 (ECDSA with SHA-256): answers a request of the core.
    pub(crate) fn sign(&self, bytes_base64: &str) -> Outcome {
        match STANDARD.decode(bytes_base64) {
            Ok(bytes) => Outcome::Signature { base64: self.signature(&bytes) },
            Err(why) => Outcome::Failed { why: format!("the bytes to sign are not base64: {why}") },
        }
    }

    /// The signature over bytes, base64 of r‖s.
    pub(crate) fn signature(&self, bytes: &[u8]) -> String {
        let signature: Signature = self.signing.sign(bytes);
        STANDARD.encode(signature.to_bytes())
    }
}

/// A scalar is drawn until it is in range; a second draw is needed about once in 2^32 times.
fn new_key() -> Result<SigningKey, FieldError> {
    loop {
        let mut bytes = [0_u8; 32];
        getrandom::fill(&mut bytes).map_err(|why| FieldError::Random(why.to_string()))?;
        if let Ok(signing) = SigningKey::from_slice(&bytes) {
            return Ok(signing);
        }
    }
}

#[cfg(test)]
mod tests {
    use p256::ecdsa::{VerifyingKey, signature::Verifier};

    use super::*;

    #[cfg(unix)]
    fn mode(path: &Path) -> u32 {
        use std::os::unix::fs::PermissionsExt;
        fs::metadata(path).unwrap().permissions().mode() & 0o777
    }

    #[cfg(unix)]
    #[test]
    fn the_key_file_is_readable_by_its_owner_only_and_is_closed_again_when_it_was_open() {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().unwrap();
        let first = DeviceKey::of(folder.path()).unwrap();
        let file = folder.path().join(FILE);
        assert_eq!(mode(&file), 0o600);
        fs::set_permissions(&file, fs::Permissions::from_mode(0o644)).unwrap();
        let second = DeviceKey::of(folder.path()).unwrap();
        assert_eq!(mode(&file), 0o600);
        assert!(second.warning().contains("Others could read it"));
        assert_eq!(first.public(), second.public());
    }

    #[test]
    fn a_signature_holds_under_the_public_key_and_not_for_other_bytes() {
        let folder = tempfile::tempdir().unwrap();
        let key = DeviceKey::of(folder.path()).unwrap();
        let Outcome::Signature { base64 } = key.sign(&STANDARD.encode(b"the last hash")) else {
            panic!("no signature")
        };
        let signature = Signature::from_slice(&STANDARD.decode(base64).unwrap()).unwrap();
        let public = VerifyingKey::from_sec1_bytes(&key.public()).unwrap();
        assert_eq!(key.public().len(), 65);
        public.verify(b"the last hash", &signature).unwrap();
        assert!(public.verify(b"another hash", &signature).is_err());
    }

    #[test]
    fn a_broken_key_file_is_refused_and_left_as_it_is() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join(FILE);
        fs::write(&file, "not a key").unwrap();
        assert!(matches!(DeviceKey::of(folder.path()), Err(FieldError::Key { .. })));
        assert_eq!(fs::read_to_string(&file).unwrap(), "not a key");
    }
}
