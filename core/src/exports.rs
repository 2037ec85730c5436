//! The door for Kotlin, Swift and Python: plain data in and out, every call synchronous, no callbacks.

use std::collections::HashMap;
use std::io::Write as _;
use std::sync::Arc;

use crate::action::Action;
use crate::effect::Outcome;
use crate::evidence::plate::{Plate, told};
use crate::evidence::{PHOTO_BYTES_MAX, codes_in};
use crate::field::{DoorError, Field, RecordError, Setup};
use crate::id::{Digest, VisitId};
use crate::now::Now;
use crate::procedure::read::PackFolder;
use crate::round::Assignment;
use crate::screen::Turn;
use crate::store::StoreError;
use crate::store::shelf::ShelfError;
use crate::sync::{Network, SendBody, SendRequest};
use crate::visit::event::{PhotoCode, Symbology};

/// What a shell hands in at opening.
#[derive(Clone, Debug, uniffi::Record)]
pub struct DoorSetup {
    /// Where everything lies.
    pub folder: String,
    /// Fresh random bytes, at least 32.
    pub entropy: Vec<u8>,
    /// When.
    pub now: Now,
    /// The language where the person has chosen none yet.
    pub language: Option<String>,
    /// The device's public P-256 key, SEC1 uncompressed.
    pub public_key: Vec<u8>,
}

/// Why the door did not do what it was asked; nothing was lost. `detail` says what to do.
#[derive(Debug, thiserror::Error, uniffi::Error)]
#[allow(missing_docs, reason = "a variant's line tells its fields")]
pub enum DoorFault {
    /// The disk is full.
    #[error("{detail}")]
    Full { detail: String },
    /// Another program has the folder.
    #[error("{detail}")]
    InUse { detail: String },
    /// What was named is not there.
    #[error("{detail}")]
    NoSuch { detail: String },
    /// Anything else.
    #[error("{detail}")]
    Failed { detail: String },
}

impl From<DoorError> for DoorFault {
    fn from(error: DoorError) -> Self {
        let detail = error.to_string();
        match error {
            DoorError::Store(StoreError::Full) | DoorError::Shelf(ShelfError::Full { .. }) => {
                DoorFault::Full { detail }
            }
            DoorError::Store(StoreError::InUse) => DoorFault::InUse { detail },
            DoorError::NoSuch { .. } => DoorFault::NoSuch { detail },
            _ => DoorFault::Failed { detail },
        }
    }
}

/// A header of a request or an answer.
#[derive(Clone, Debug, uniffi::Record)]
pub struct Header {
    /// Its name.
    pub name: String,
    /// Its value.
    pub value: String,
}

/// A request for the shell to send to the office.
#[derive(Clone, Debug, uniffi::Record)]
pub struct Sending {
    /// To be handed back with the answer.
    pub id: String,
    /// GET, POST, PUT, PATCH, HEAD.
    pub method: String,
    /// The office's address where this device joined it. None: the one that the shell was started with, with its token.
    pub origin: Option<String>,
    /// Path at the office, from `/api/v1` on.
    pub path: String,
    /// Headers; where there is an `origin` the authorization is among them.
    pub headers: Vec<Header>,
    /// The body; empty where `file` is there.
    pub body: Vec<u8>,
    /// A slice of a file as the body.
    pub file: Option<FileSlice>,
}

/// What the shell is asked to sign (ECDSA P-256 with SHA-256), so that the office knows the device.
#[derive(Clone, Debug, uniffi::Record)]
pub struct Signing {
    /// To be handed back with the signature.
    pub id: String,
    /// The bytes to sign.
    pub bytes: Vec<u8>,
}

/// A slice of a file.
#[derive(Clone, Debug, uniffi::Record)]
pub struct FileSlice {
    /// The file.
    pub path: String,
    /// The first byte.
    pub from: u64,
    /// How many bytes.
    pub length: u64,
}

/// A code that was read in a photograph.
#[derive(Clone, Debug, uniffi::Record)]
pub struct CodeRead {
    /// What kind it is, as the log writes it: `qr`, `gs1-128`, …
    pub symbology: String,
    /// What it says, control characters and all.
    pub text: String,
    /// It says more than this.
    pub cut: bool,
}

/// What the codes of a plate tell together.
#[derive(Clone, Debug, uniffi::Record)]
pub struct PlateTold {
    /// The serial number, where one is named and no other.
    pub serial: Option<String>,
    /// The model, in the same way.
    pub model: Option<String>,
}

/// The codes in a photograph of a plate.
///
/// # Errors
/// Where the file cannot be read or is longer than a photograph may be.
#[uniffi::export]
pub fn codes_in_photograph(path: String) -> Result<Vec<CodeRead>, DoorFault> {
    let failed = |detail: String| DoorFault::Failed { detail };
    let length = std::fs::metadata(&path).map_err(|error| failed(format!("{path}: {error}")))?.len();
    if length > PHOTO_BYTES_MAX {
        return Err(failed(format!("{path} has {length} bytes, more than {PHOTO_BYTES_MAX}; take a smaller one")));
    }
    let bytes = std::fs::read(&path).map_err(|error| failed(format!("{path}: {error}")))?;
    Ok(codes_in(&bytes).into_iter().map(CodeRead::from).collect())
}

/// What the codes of a plate tell. A kind that is not known counts as QR: a text that says what it is.
#[uniffi::export]
pub fn plate_told(codes: Vec<CodeRead>) -> PlateTold {
    let codes: Vec<PhotoCode> = codes.into_iter().map(PhotoCode::from).collect();
    let Plate { serial, model } = told(&codes);
    PlateTold { serial, model }
}

impl From<PhotoCode> for CodeRead {
    fn from(code: PhotoCode) -> Self {
        let symbology = serde_json::to_value(code.symbology).ok();
        let symbology = symbology.and_then(|name| name.as_str().map(str::to_owned)).unwrap_or_default();
        CodeRead { symbology, text: code.text, cut: code.cut }
    }
}

impl From<CodeRead> for PhotoCode {
    fn from(code: CodeRead) -> Self {
        let symbology = serde_json::from_value(code.symbology.into()).unwrap_or(Symbology::Qr);
        PhotoCode { symbology, text: code.text, cut: code.cut }
    }
}

/// The core of one device.
#[derive(uniffi::Object)]
pub struct Door {
    field: Field,
}

#[uniffi::export]
impl Door {
    /// Opens what lies in a folder, or begins there.
    ///
    /// # Errors
    /// Where the folder cannot be used, is in use, or was written by a later version.
    #[uniffi::constructor]
    pub fn open(setup: DoorSetup) -> Result<Arc<Door>, DoorFault> {
        let DoorSetup { folder, entropy, now, language, public_key } = setup;
        Ok(Arc::new(Door { field: Field::open(Setup { folder, entropy, now, language, public_key })? }))
    }

    /// The screen, with every request that is still open.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn opened(&self, now: Now) -> Result<Turn, DoorFault> {
        Ok(self.field.opened(&now)?)
    }

    /// Does an action. A repeated `action_id` comes to what it came to the first time.
    ///
    /// # Errors
    /// Where the store fails; a refusal stands on the screen.
    pub fn act(&self, action_id: String, action: Action, now: Now) -> Result<Turn, DoorFault> {
        Ok(self.field.act(&action_id, &action, &now)?)
    }

    /// Takes the outcome of a request.
    ///
    /// # Errors
    /// Where the store fails or the request is not known.
    pub fn done(&self, effect_id: String, outcome: Outcome, now: Now) -> Result<Turn, DoorFault> {
        Ok(self.field.done(&effect_id, &outcome, &now)?)
    }

    /// The screen as it is now.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn screen(&self, now: Now) -> Result<Turn, DoorFault> {
        Ok(self.field.screen(&now)?)
    }

    /// The shell's own words, keys `shell-*`.
    pub fn words(&self) -> HashMap<String, String> {
        self.field.words().into_iter().collect()
    }

    /// Takes assignments, a JSON array.
    ///
    /// # Errors
    /// Where they cannot be read or written.
    pub fn assigned(&self, assignments_json: String) -> Result<(), DoorFault> {
        let assignments: Vec<Assignment> = serde_json::from_str(&assignments_json)
            .map_err(|error| DoorFault::Failed { detail: format!("the assignments cannot be read: {error}") })?;
        Ok(self.field.assigned(&assignments)?)
    }

    /// Takes the device's charge, per cent; none while it charges or where it is not known.
    pub fn charged(&self, percent: Option<u8>) {
        self.field.charged(percent);
    }

    /// Takes the packs that lie in the shell's folder now, in place of those that lay there before.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn packs(&self, folders: Vec<PackFolder>, now: Now) -> Result<Turn, DoorFault> {
        Ok(self.field.packs(&folders, &now)?)
    }

    /// Where to put the original bytes of an effect's photograph: write beside it, sync, rename.
    ///
    /// # Errors
    /// Where the id is none.
    pub fn incoming_path(&self, effect_id: String) -> Result<String, DoorFault> {
        Ok(self.field.incoming(&effect_id)?.to_string_lossy().into_owned())
    }

    /// Where a photograph's preview lies.
    pub fn preview_path(&self, digest: String) -> String {
        self.field.preview(&Digest(digest)).to_string_lossy().into_owned()
    }

    /// The owner's summary of the sealed visit that is open, as a page that needs nothing else: to show, to print and to
    /// share. `office` is the office's address as owners reach it.
    ///
    /// # Errors
    /// Where no sealed visit is open.
    pub fn summary_page(&self, office: Option<String>) -> Result<String, DoorFault> {
        Ok(self.field.handover(office.as_deref())?.page())
    }

    /// The stored bytes of a visit's events, as text.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn events(&self, visit: String) -> Result<Vec<String>, DoorFault> {
        let events = self.field.events(&VisitId(visit))?;
        Ok(events.iter().map(|bytes| String::from_utf8_lossy(bytes).into_owned()).collect())
    }

    /// Writes the record file of a sealed visit to a path; a file that is there is replaced. With `personal` the owner's and
    /// site's data go into it.
    ///
    /// # Errors
    /// Where the visit is not sealed, something of it is not there, or the file cannot be written.
    pub fn write_record(&self, visit: String, personal: bool, path: String) -> Result<(), DoorFault> {
        let failed = |why: std::io::Error| DoorFault::Failed { detail: format!("{path} could not be written: {why}") };
        let mut file = std::io::BufWriter::new(std::fs::File::create(&path).map_err(failed)?);
        self.field.write_record(&VisitId(visit), personal, &mut file).map_err(|error| match error {
            RecordError::Door(error) => error.into(),
            RecordError::Write(error) => DoorFault::Failed { detail: error.to_string() },
        })?;
        file.flush().and_then(|()| file.get_ref().sync_all()).map_err(failed)
    }

    /// The visit that the screen is about.
    pub fn current_visit(&self) -> Option<String> {
        self.field.current_visit().map(|visit| visit.0)
    }

    /// The requests to send to the office now, beside each other, over what carries them.
    ///
    /// # Errors
    /// Where the store cannot be read.
    pub fn next_requests(&self, network: Network, now: Now) -> Result<Vec<Sending>, DoorFault> {
        let requests = self.field.next_requests(network, &now)?;
        Ok(requests
            .into_iter()
            .map(|request| {
                let (body, file) = match request.body {
                    SendBody::Empty => (Vec::new(), None),
                    SendBody::Bytes(bytes) => (bytes, None),
                    SendBody::File { path, from, length } => {
                        (Vec::new(), Some(FileSlice { path: path.to_string_lossy().into_owned(), from, length }))
                    }
                };
                let headers = request.headers.into_iter().map(|(name, value)| Header { name, value }).collect();
                let SendRequest { id, origin, method, path, .. } = request;
                Sending { id, method, origin, path, headers, body, file }
            })
            .collect())
    }

    /// What is to be signed with the device's key before anything else can be sent: answered by `signed`.
    pub fn next_sign(&self) -> Option<Signing> {
        self.field.next_sign().map(|asked| Signing { id: asked.id, bytes: asked.bytes })
    }

    /// Takes that signature, base64 of DER or of raw r‖s.
    ///
    /// # Errors
    /// Where it is not made by this device's key.
    pub fn signed(&self, id: String, signature_base64: String) -> Result<(), DoorFault> {
        Ok(self.field.signed(&id, &signature_base64)?)
    }

    /// Takes the office's answer; `status` 0 tells that there was none.
    ///
    /// # Errors
    /// Where the store cannot be written.
    pub fn answered(
        &self,
        request_id: String,
        status: u16,
        headers: Vec<Header>,
        body: Vec<u8>,
        now: Now,
    ) -> Result<(), DoorFault> {
        let headers: Vec<(String, String)> = headers.into_iter().map(|header| (header.name, header.value)).collect();
        Ok(self.field.answered(&request_id, status, &headers, &body, &now)?)
    }
}
