//! Starts the browser shell and keeps it running.

use std::{future::Future, path::PathBuf, sync::Arc};

use tokio::{net::TcpListener, task::JoinHandle};

use crate::{
    address,
    clock::Clock,
    core_door::CoreDoor,
    door::{Shell, router},
    error::FieldError,
    incoming,
    key::DeviceKey,
    lock::FolderLock,
    sender::{self, Office},
};

/// How to run the browser shell.
#[derive(Clone, Debug)]
pub struct FieldSettings {
    /// Where the visits, the photographs and the device's key lie. Made if it is not there.
    pub folder: PathBuf,
    /// The port on 127.0.0.1; 0 for the one of the last time, or any.
    pub port: u16,
    /// The office's address, `https://office.example`; none to send nothing.
    pub office: Option<String>,
    /// What the office gave this device to be known by.
    pub device_token: Option<String>,
}

/// A browser shell that listens.
pub struct Running {
    listener: TcpListener,
    shell: Shell,
    office: Option<Office>,
    address: String,
    warning: String,
    _lock: FolderLock,
}

impl Running {
    /// What to open in the browser, with its token: `http://127.0.0.1:PORT/?t=…`.
    #[must_use]
    pub fn address(&self) -> &str {
        &self.address
    }

    /// What the person who started the process should know about its key.
    #[must_use]
    pub fn warning(&self) -> &str {
        &self.warning
    }

    /// Serves until `stop`.
    ///
    /// # Errors
    /// The listener failed.
    pub async fn until(self, stop: impl Future<Output = ()> + Send + 'static) -> Result<(), FieldError> {
        let _sending = self.office.map(|office| Sending(tokio::spawn(sender::run(self.shell.clone(), office))));
        axum::serve(self.listener, router(self.shell)).with_graceful_shutdown(stop).await.map_err(FieldError::Ended)
    }
}

/// Stops with the process's serving.
struct Sending(JoinHandle<()>);

impl Drop for Sending {
    fn drop(&mut self) {
        self.0.abort();
    }
}
