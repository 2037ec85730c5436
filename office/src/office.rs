//! The office as one thing: opened on a folder, used in process or served on a port.

use std::io::{Read, Seek, Write};
use std::net::{Ipv4Addr, SocketAddr};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{SystemTime, UNIX_EPOCH};

use coilside_core::procedure::measure::Units;
use coilside_core::procedure::read::read;
use coilside_core::round::Technician;

use crate::app::export_record::{self, ExportError};
use crate::app::hand_out_assignments::AssignmentError;
use crate::app::import_record::{self, ImportError, Imported};
use crate::app::library::{Library, LibraryError};
use crate::app::{customer, hand_out_assignments, join, make_summary, prove_key, sign_in};
use crate::connections;
use crate::ids::{Digest, Secret, VisitId};
use crate::store::{Store, StoreError, vouchers};

/// Where the office keeps what it has, and where it listens.
#[derive(Clone, Debug)]
pub struct OfficeSettings {
    /// Made where there is none.
    pub folder: PathBuf,
    /// On 127.0.0.1; 0 takes any free one.
    pub port: u16,
    /// A folder of packs beside the built-in ones, each a folder in it.
    pub packs: Option<PathBuf>,
}

/// The office could not be started or asked.
#[derive(Debug, thiserror::Error)]
pub enum OfficeError {
    /// Disk or database.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// Procedures or words of the program itself.
    #[error(transparent)]
    Library(#[from] LibraryError),
    /// The port.
    #[error("the office cannot listen on port {port}; another program may use it, choose another one")]
    Port {
        /// Which.
        port: u16,
        /// The system's words.
        source: std::io::Error,
    },
    /// The folder of packs.
    #[error("the folder of packs {} cannot be read; see that it is there and that you may read it", folder.display())]
    Packs {
        /// Which.
        folder: PathBuf,
        /// The system's words.
        source: std::io::Error,
    },
    /// No secrets can be made.
    #[error("the system gave no random bytes, so no safe link can be made; try again")]
    Random(#[from] getrandom::Error),
}

/// Says the time: milliseconds since 1970-01-01T00:00Z. Handed in, so that tests can let days go by.
type Clock = Arc<dyn Fn() -> i64 + Send + Sync>;

/// An open office. Clones are the same office.
#[derive(Clone)]
pub struct Office {
    pub(crate) store: Arc<Store>,
    pub(crate) library: Library,
    clock: Clock,
}

/// Opens the office on a folder by the system's clock. Nothing needs to be set up before.
///
/// # Errors
/// When the folder cannot be made or read, or a newer program wrote it.
pub fn open(folder: &Path) -> Result<Office, OfficeError> {
    Office::open_by(folder, system_ms)
}

/// Opens and serves the office until Ctrl-C, printing its address, and a way in at the first start.
///
/// # Errors
/// When the folder or the port cannot be had.
pub async fn serve(settings: OfficeSettings) -> Result<(), OfficeError> {
    let office = open(&settings.folder)?;
    let office = settings.packs.iter().try_fold(office, |office, packs| office.with_packs_in(packs))?;
    let (listener, address) = listen(settings.port).await?;
    println!("Office: http://{address}/");
    if office.is_first_start()? {
        println!("Sign in once with: http://{address}{}", office.new_link()?);
    } else {
        println!("Signed out? `coilside office --new-link` prints a new way in.");
    }
    office.serve_on(listener).await;
    Ok(())
}

/// Takes a port of this machine alone.
async fn listen(port: u16) -> Result<(tokio::net::TcpListener, SocketAddr), OfficeError> {
    let refused = |source| OfficeError::Port { port, source };
    let listener = tokio::net::TcpListener::bind((Ipv4Addr::LOCALHOST, port)).await.map_err(refused)?;
    let address = listener.local_addr().map_err(refused)?;
    Ok((listener, address))
}

impl Office {
    /// Opens the office by another clock than the system's.
    ///
    /// # Errors
    /// As [`open`].
    pub fn open_by(folder: &Path, clock: impl Fn() -> i64 + Send + Sync + 'static) -> Result<Self, OfficeError> {
        let office = Self { store: Arc::new(Store::open(folder)?), library: Library::open()?, clock: Arc::new(clock) };
        office.keep_packs()?;
        prove_key::set_up(&office.store, &Secret::random()?)?;
        Ok(office)
    }

    /// The same office, which also knows the packs in a folder, to show their visits in words. Those that are not sound are
    /// left aside, and the terminal tells which.
    ///
    /// # Errors
    /// When the folder cannot be read.
    pub fn with_packs_in(self, folder: &Path) -> Result<Self, OfficeError> {
        let unreadable = |source| OfficeError::Packs { folder: folder.to_owned(), source };
        let mut sound = Vec::new();
        for pack in coilside_web::pack_folder::all_in(folder).map_err(unreadable)? {
            match read(&pack).loaded {
                Some(loaded) => sound.push(loaded),
                None => println!("Left aside: {0} is no sound pack; `coilside check-pack {0}` tells why.", pack.from),
            }
        }
        let office = Self { library: Library::with(sound)?, ..self };
        office.keep_packs()?;
        Ok(office)
    }

    /// Keeps the bytes of every pack that this program knows: the visits that pinned them outlive the program.
    fn keep_packs(&self) -> Result<(), StoreError> {
        self.store.write(|db| {
            for loaded in self.library.all() {
                vouchers::put_pack(db, Digest::of(&loaded.bytes), &loaded.bytes)?;
            }
            Ok(())
        })
    }

    /// The key with which the office vouches for records, SEC1 uncompressed. Whoever verifies one must know it from elsewhere.
    #[must_use]
    pub fn public_key(&self) -> Vec<u8> {
        self.store.key.public()
    }

    /// Writes the record file of a sealed visit. The same visit gives the same bytes.
    ///
    /// # Errors
    /// When there is no such sealed visit, something of it has not arrived, or it cannot be written.
    pub fn export_record(&self, visit: &VisitId, out: &mut dyn Write) -> Result<(), ExportError> {
        export_record::export(&self.store, visit, self.now_ms(), out)
    }

    /// Erases the name and signature that a customer gave on the spot, where they are here; how many files. Records that are
    /// written from now on say that they are withheld, and hold without them.
    ///
    /// # Errors
    /// When they cannot be erased.
    pub fn erase_customer(&self, visit: &VisitId) -> Result<usize, OfficeError> {
        Ok(customer::erase(&self.store, visit, self.now_ms())?)
    }

    /// Takes over a record file from another office. The same one again changes nothing.
    ///
    /// # Errors
    /// When the record does not hold, none of the `trusted` keys vouches for it and it is not to be taken as
    /// self-consistent, or this office has another content of the visit.
    pub fn import_record<F: Read + Seek>(
        &self,
        file: &mut F,
        trusted: &[Vec<u8>],
        self_consistent: bool,
    ) -> Result<Imported, ImportError> {
        let random = |_| ImportError::Io(std::io::Error::other("the system gave no random bytes"));
        let (no_token, summary) = (Secret::random().map_err(random)?, Secret::random().map_err(random)?);
        let terms = import_record::Terms { trusted, self_consistent };
        import_record::import(&self.store, file, &terms, (&no_token, &summary), self.now_ms())
    }

    /// Serves on a listener until Ctrl-C; requests that run are finished, and what arrived is put onto the disk.
    pub async fn serve_on(self, listener: tokio::net::TcpListener) {
        let stop = async {
            // Where no signal can be had the office runs on until it is killed, which it survives.
            if tokio::signal::ctrl_c().await.is_err() {
                std::future::pending::<()>().await;
            }
        };
        connections::serve(listener, self.router(), stop).await;
        self.keep_what_arrived();
    }

    /// Returns when every photograph whose bytes have come is on the disk, or could not be put there. It blocks.
    pub fn keep_what_arrived(&self) {
        self.store.keep_all_arrived();
    }

    /// All routes; can be called without a port.
    pub fn router(&self) -> axum::Router {
        crate::http::router(self.clone())
    }

    /// No way in was ever made.
    ///
    /// # Errors
    /// When the database cannot be read.
    pub fn is_first_start(&self) -> Result<bool, OfficeError> {
        Ok(sign_in::first_start(&self.store)?)
    }

    /// Makes a way in that works once, and returns its path: `/enter/…`.
    ///
    /// # Errors
    /// When it cannot be written down.
    pub fn new_link(&self) -> Result<String, OfficeError> {
        let secret = Secret::random()?;
        sign_in::new_link(&self.store, &secret, self.now_ms())?;
        Ok(format!("/enter/{}", secret.text()))
    }

    /// Lets a field device in, and returns its token. The office keeps only the token's hash.
    ///
    /// # Errors
    /// When it cannot be written down.
    pub fn add_device(&self, name: &str) -> Result<String, OfficeError> {
        let token = Secret::random()?;
        join::add_device(&self.store, name, &token, self.now_ms())?;
        Ok(token.text())
    }

    /// Keeps an assignment for the devices, in place of an earlier one with its `id`.
    ///
    /// # Errors
    /// When it has no usable `id`, or cannot be written down.
    pub fn put_assignment(&self, doc: &serde_json::Value) -> Result<(), AssignmentError> {
        hand_out_assignments::put(&self.store, doc, self.now_ms())
    }

    /// An assignment is not to be done any more: devices are told. Whoever has begun it goes on. False where there is none.
    ///
    /// # Errors
    /// When it cannot be written down.
    pub fn withdraw_assignment(&self, id: &str) -> Result<bool, OfficeError> {
        Ok(hand_out_assignments::withdraw(&self.store, id, self.now_ms())?)
    }

    /// Keeps who works with the devices of a name (as given to [`Office::add_device`]): their instruments and
    /// accreditations go out with the assignments.
    ///
    /// # Errors
    /// When it cannot be written down.
    pub fn put_technician(&self, device: &str, technician: &Technician) -> Result<(), OfficeError> {
        Ok(hand_out_assignments::put_technician(&self.store, device, technician)?)
    }

    /// Sets whom owners call, as their summaries show it: the firm's name and telephone.
    ///
    /// # Errors
    /// When it cannot be written down.
    pub fn set_contact(&self, text: &str) -> Result<(), OfficeError> {
        Ok(make_summary::set_contact(&self.store, text)?)
    }

    /// Sets the address under which owners reach the office: summaries on paper name it, and carry it as a code.
    ///
    /// # Errors
    /// When it cannot be written down.
    pub fn set_address(&self, text: &str) -> Result<(), OfficeError> {
        Ok(make_summary::set_address(&self.store, text)?)
    }

    /// Sets the units in which summaries are written, which also decide their paper.
    ///
    /// # Errors
    /// When it cannot be written down.
    pub fn set_units(&self, units: Units) -> Result<(), OfficeError> {
        Ok(make_summary::set_units(&self.store, units)?)
    }

    pub(crate) fn now_ms(&self) -> i64 {
        (self.clock)()
    }
}

fn system_ms() -> i64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    i64::try_from(since.as_millis()).unwrap_or(i64::MAX)
}
