//! What the program can be asked to do.

use std::error::Error;
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};
use std::{fs, io};

use clap::Parser;
use coilside_core::procedure::measure::Units;
use coilside_office::check_pack::{CheckPack, check};
use coilside_office::{OfficeSettings, demo, open, record_file};
use coilside_web::FieldSettings;

/// The service of heat-pump water heaters, from the door to the owner's summary.
#[derive(Parser, Debug)]
#[command(version, about)]
pub(crate) enum Command {
    /// Start an office and a browser shell with an invented village. Begin here.
    Demo {
        /// Where the demo keeps what it has; made if it is not there.
        #[arg(long, default_value = "coilside-demo")]
        folder: PathBuf,
        /// Forget an earlier demo in that folder and begin anew.
        #[arg(long)]
        fresh: bool,
        /// The office's port on 127.0.0.1; 0 for any.
        #[arg(long, default_value_t = 0)]
        office_port: u16,
        /// The browser shell's port on 127.0.0.1; 0 for any.
        #[arg(long, default_value_t = 0)]
        field_port: u16,
        /// A folder of packs beside the built-in ones: each folder in it is one.
        #[arg(long)]
        packs: Option<PathBuf>,
    },
    /// Start the browser shell of one technician.
    Field {
        /// Where visits, photographs and the device's key lie; made if it is not there.
        #[arg(long)]
        folder: PathBuf,
        /// The port on 127.0.0.1; 0 for the one of the last time, or any.
        #[arg(long, default_value_t = 0)]
        port: u16,
        /// The office's address. Not needed where the device joins by a code; an office that it joined goes before this one.
        #[arg(long)]
        office: Option<String>,
        /// A file that holds the token which that office gave to this device.
        #[arg(long)]
        token_file: Option<PathBuf>,
        /// A rehearsal: waiting times can be skipped, and the record says so. Never for a real visit.
        #[arg(long)]
        rehearsal: bool,
        /// A folder of packs beside the built-in ones: each folder in it is one. Read at the start and on demand.
        #[arg(long)]
        packs: Option<PathBuf>,
    },
    /// Start the office.
    Office {
        /// Where records, photographs and the database lie; made if it is not there.
        #[arg(long)]
        folder: PathBuf,
        /// The port on 127.0.0.1; 0 for any.
        #[arg(long, default_value_t = 8080)]
        port: u16,
        /// Print a new link to sign in once, and stop.
        #[arg(long)]
        new_link: bool,
        /// Let a device in: print its token, and stop. Takes the device's name.
        #[arg(long, value_name = "NAME")]
        new_device: Option<String>,
        /// Show the office's public key, with which others can verify its records, and stop.
        #[arg(long)]
        key: bool,
        /// Set the address under which owners reach the office, for their summaries, and stop.
        #[arg(long, value_name = "URL")]
        set_address: Option<String>,
        /// Set the units of owners' summaries, and stop.
        #[arg(long, value_parser = ["metric", "us"])]
        set_units: Option<String>,
        /// A folder of packs beside the built-in ones, so that their visits are shown in words.
        #[arg(long)]
        packs: Option<PathBuf>,
    },
    /// Verify a record file, with no office and no connection. Ends with code 0 if it holds, 1 if it does not, and 2 if the
    /// file could not be read. Without --office-key the best that can be said is 'self-consistent only'.
    Verify {
        /// The record file.
        file: PathBuf,
        /// The key of an office that you know from elsewhere, or a file that holds it: the record must be vouched for by it.
        /// May be given several times: then one of them is enough.
        #[arg(long, value_name = "KEY")]
        office_key: Vec<String>,
        /// The language in which to tell of it.
        #[arg(long, default_value = "en", value_parser = ["en", "es"])]
        language: String,
    },
    /// Write the record file of a sealed visit. The same visit gives the same bytes.
    Export {
        /// The office's folder.
        #[arg(long)]
        folder: PathBuf,
        /// The visit's name, as its page has it in the address.
        visit: String,
        /// Where to write it; a file that is there is replaced.
        file: PathBuf,
    },
    /// Take over a record file from another office. Ends with code 0 if the visit is here now, 1 if the record was refused,
    /// and 2 if the file could not be read. The same record again changes nothing.
    Import {
        /// This office's folder.
        #[arg(long)]
        folder: PathBuf,
        /// The record file.
        file: PathBuf,
        /// The key of the office that the record comes from, or a file that holds it.
        #[arg(long, value_name = "KEY")]
        office_key: Vec<String>,
        /// Take it over although no office that you named vouches for it.
        #[arg(long)]
        self_consistent: bool,
        /// The language in which to tell why it is refused.
        #[arg(long, default_value = "en", value_parser = ["en", "es"])]
        language: String,
    },
    /// Check packs: are they sound and safe, what do they come to. Ends with code 0 only if all are good.
    CheckPack {
        /// Folders, each a pack with pack.toml and its words. Plain files are left aside, so that `packs/*` can be given.
        #[arg(required = true)]
        folders: Vec<PathBuf>,
        /// The language in which to tell of them.
        #[arg(long, default_value = "en", value_parser = ["en", "es"])]
        language: String,
        /// Draw phases and steps: into this file, or for several packs into this folder.
        #[arg(long, value_name = "FILE")]
        svg: Option<PathBuf>,
    },
}

type Done = Result<(), Box<dyn Error>>;

/// Some pack is not good; why stands in the report.
#[derive(Debug, thiserror::Error)]
#[error("not every pack is good; see above")]
struct NotAllGood;

impl Command {
    pub(crate) async fn run(self) -> Done {
        match self {
            Command::Demo { folder, fresh, office_port, field_port, packs } => {
                run_demo(&folder, fresh, office_port, field_port, packs).await
            }
            Command::Field { folder, port, office, token_file, rehearsal, packs } => {
                let device_token = token_file.map(fs::read_to_string).transpose()?.map(|token| token.trim().to_owned());
                Ok(coilside_web::serve(FieldSettings { folder, port, office, device_token, rehearsal, packs }).await?)
            }
            Command::Office { folder, key: true, .. } => {
                println!("{}", record_file::key_lines(&open(&folder)?));
                Ok(())
            }
            Command::Office { folder, port, new_link, new_device, set_address, set_units, packs, key: false } => {
                let settings = OfficeSettings { folder, port, packs };
                match (set_address, set_units) {
                    (None, None) => run_office(settings, new_link, new_device).await,
                    (address, units) => set_up(&settings, address, units),
                }
            }
            Command::Verify { file, office_key, language } => {
                Ok(record_file::check(&file, &record_file::keys(&office_key)?, &language, &mut io::stdout().lock())?)
            }
            Command::Export { folder, visit, file } => {
                record_file::export(&open(&folder)?, &visit, &file)?;
                println!("Written: {}", file.display());
                Ok(())
            }
            Command::Import { folder, file, office_key, self_consistent, language } => {
                let keys = record_file::keys(&office_key)?;
                let office = open(&folder)?;
                let out = &mut io::stdout().lock();
                let came = record_file::import(&office, &file, &keys, self_consistent, &language, out)?;
                let how = if came.known { "Was here already, nothing was changed" } else { "Taken over" };
                println!("{how}: visit {}, {} events, {} new photographs", came.visit, came.events, came.photographs);
                Ok(())
            }
            Command::CheckPack { folders, language, svg } => {
                let all_good = check(&CheckPack { folders, language, svg }, &mut io::stdout().lock())?;
                if all_good { Ok(()) } else { Err(NotAllGood.into()) }
            }
        }
    }
}

async fn run_office(settings: OfficeSettings, new_link: bool, new_device: Option<String>) -> Done {
    if new_link {
        println!("{}", open(&settings.folder)?.new_link()?);
        return Ok(());
    }
    if let Some(name) = new_device {
        println!("{}", open(&settings.folder)?.add_device(&name)?);
        return Ok(());
    }
    Ok(coilside_office::serve(settings).await?)
}

fn set_up(settings: &OfficeSettings, address: Option<String>, units: Option<String>) -> Done {
    let office = open(&settings.folder)?;
    if let Some(address) = address {
        office.set_address(&address)?;
    }
    if let Some(units) = units {
        office.set_units(if units == "us" { Units::Us } else { Units::Metric })?;
    }
    Ok(())
}

async fn run_demo(folder: &Path, fresh: bool, office_port: u16, field_port: u16, packs: Option<PathBuf>) -> Done {
    if fresh && folder.exists() {
        remove_demo(folder)?;
    }
    let token_file = folder.join("device-token");
    let office = open(&folder.join("office"))?;
    let office = packs.iter().try_fold(office, |office, packs| office.with_packs_in(packs))?;
    if !token_file.exists() {
        println!("Drawing the village and playing two visits of the past …");
        let token = demo::set_up(&office, folder, now_utc_ms()?).await?;
        fs::write(&token_file, token)?;
    }
    let listener = tokio::net::TcpListener::bind(("127.0.0.1", office_port)).await?;
    let office_address = format!("http://{}", listener.local_addr()?);
    office.set_address(&office_address)?;
    let link = office.new_link()?;
    let field = coilside_web::start(FieldSettings {
        folder: folder.join("field"),
        port: field_port,
        office: Some(office_address.clone()),
        device_token: Some(fs::read_to_string(&token_file)?.trim().to_owned()),
        rehearsal: true,
        packs,
    })
    .await?;
    println!("Technician: {}", field.address());
    println!("Office:     {office_address}{link}   (signs you in once; then {office_address}/)");
    println!("It is a rehearsal: a running waiting time has a button to skip it.");
    println!("Everything in it is invented. It lies in {}; Ctrl-C stops it.", folder.display());
    let stop = async {
        // Where no signal can be had the demo runs until it is killed, which it survives.
        if tokio::signal::ctrl_c().await.is_err() {
            std::future::pending::<()>().await;
        }
    };
    let serving = tokio::spawn(office.serve_on(listener));
    field.until(stop).await?;
    serving.abort();
    Ok(())
}

/// Removes a demo's folder, and nothing that is none.
fn remove_demo(folder: &Path) -> io::Result<()> {
    let is_demo = folder.join("device-token").exists() || folder.join("office").exists();
    if !is_demo {
        let why = format!("{} is not the folder of a demo; choose another one", folder.display());
        return Err(io::Error::new(io::ErrorKind::InvalidInput, why));
    }
    fs::remove_dir_all(folder)
}

fn now_utc_ms() -> Result<i64, Box<dyn Error>> {
    Ok(i64::try_from(SystemTime::now().duration_since(UNIX_EPOCH)?.as_millis())?)
}
