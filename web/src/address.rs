//! The token and the port, kept in the folder: a page that is open finds the process again after it was started anew,
//! and gives what was typed in the meantime.

use std::{fs, net::SocketAddr, path::Path};

use serde::{Deserialize, Serialize};
use subtle::ConstantTimeEq;
use tokio::net::TcpListener;

use crate::{error::FieldError, private_file};

const FILE: &str = "address.json";

/// The secret in the page's address.
#[derive(Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(crate) struct Token(String);

impl Token {
    /// 32 random bytes in hex.
    pub(crate) fn new() -> Result<Self, FieldError> {
        let mut bytes = [0_u8; 32];
        getrandom::fill(&mut bytes).map_err(|why| FieldError::Random(why.to_string()))?;
        Ok(Self(bytes.iter().map(|byte| format!("{byte:02x}")).collect()))
    }

    #[cfg(test)]
    pub(crate) fn of(text: &str) -> Self {
        Self(text.into())
    }

    /// Whether `given` is the token, in a time that does not tell how much of it is right.
    pub(crate) fn is(&self, given: &[u8]) -> bool {
        self.0.as_bytes().ct_eq(given).into()
    }

    pub(crate) fn text(&self) -> &str {
        &self.0
    }
}

#[derive(Serialize, Deserialize)]
struct Kept {
    port: u16,
    token: Token,
}

/// Listens on 127.0.0.1 at `port`, or for 0 at the port of the last time if it is free, else at any. Returns the
/// listener, where it listens, and the token.
///
/// # Errors
/// The port is taken or cannot be had, or the folder cannot be written.
pub(crate) async fn listen(folder: &Path, port: u16) -> Result<(TcpListener, SocketAddr, Token), FieldError> {
    let file = folder.join(FILE);
    let kept: Option<Kept> = fs::read(&file).ok().and_then(|bytes| serde_json::from_slice(&bytes).ok());
    let kept = kept.filter(|kept| kept.token.text().len() == 64);
    let listener = match (port, &kept) {
        (0, Some(kept)) => match bind(kept.port).await {
            Err(FieldError::PortTaken { .. } | FieldError::Address { .. }) => bind(0).await?,
            bound => bound?,
        },
        _ => bind(port).await?,
    };
    let address = listener.local_addr().map_err(|why| FieldError::Address { port, why })?;
    let token = kept.map_or_else(Token::new, |kept| Ok(kept.token))?;
    let bytes = serde_json::to_vec(&Kept { port: address.port(), token: token.clone() })
        .map_err(|why| FieldError::of_folder(folder, why.into()))?;
    private_file::write(&file, &bytes).map_err(|why| FieldError::of_folder(folder, why))?;
    Ok((listener, address, token))
}

async fn bind(port: u16) -> Result<TcpListener, FieldError> {
    TcpListener::bind(("127.0.0.1", port)).await.map_err(|why| match why.kind() {
        std::io::ErrorKind::AddrInUse => FieldError::PortTaken { port },
        _ => FieldError::Address { port, why },
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[tokio::test]
    async fn the_same_address_is_used_again_after_a_restart() {
        let folder = tempfile::tempdir().unwrap();
        let (listener, address, token) = listen(folder.path(), 0).await.unwrap();
        assert!(address.ip().is_loopback());
        drop(listener);
        let (_listener, again, same) = listen(folder.path(), 0).await.unwrap();
        assert_eq!((address.port(), token.text()), (again.port(), same.text()));
    }

    #[tokio::test]
    async fn two_folders_have_different_tokens_of_64_hex_digits() {
        let (one, two) = (tempfile::tempdir().unwrap(), tempfile::tempdir().unwrap());
        let (_a, _, first) = listen(one.path(), 0).await.unwrap();
        let (_b, _, second) = listen(two.path(), 0).await.unwrap();
        assert_ne!(first.text(), second.text());
        assert!(first.text().len() == 64 && first.text().bytes().all(|byte| byte.is_ascii_hexdigit()));
        assert!(first.is(first.text().as_bytes()) && !first.is(second.text().as_bytes()) && !first.is(b""));
    }

    #[tokio::test]
    async fn a_port_in_use_is_named_with_what_to_do() {
        let folder = tempfile::tempdir().unwrap();
        let taken = TcpListener::bind(("127.0.0.1", 0)).await.unwrap();
        let port = taken.local_addr().unwrap().port();
        let Err(why) = listen(folder.path(), port).await else { panic!("bound twice") };
        assert!(why.to_string().contains(&format!("Port {port}")), "{why}");
    }
}
