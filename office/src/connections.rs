//! The office's connections. They are taken here, and not by axum, for one number: how much of a request is read at once.

use std::io;
use std::time::Duration;

use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::TokioIo;
use hyper_util::server::graceful::GracefulShutdown;
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};

/// So many bytes of a request are read at once. Each connection holds a few such parts, and what is read is hashed and written
/// while it is still in the processor's cache; hyper alone would take 400 KiB.
const READ_BYTES_MAX: usize = 128 * 1024;

/// The system has no more files to give, most likely: others will be closed.
const REST: Duration = Duration::from_secs(1);

/// Serves until `stop` comes to its end, and finishes the requests that run then.
pub(crate) async fn serve(listener: TcpListener, router: Router, stop: impl Future<Output = ()>) {
    let running = GracefulShutdown::new();
    let mut stop = std::pin::pin!(stop);
    loop {
        tokio::select! {
            () = &mut stop => break,
            taken = listener.accept() => match taken {
                Ok((stream, _)) => connected(stream, router.clone(), &running),
                Err(error) if is_of_one_connection(&error) => {}
                Err(_) => tokio::time::sleep(REST).await,
            },
        }
    }
    drop(listener);
    running.shutdown().await;
}

fn connected(stream: TcpStream, router: Router, running: &GracefulShutdown) {
    let connection = http1::Builder::new()
        .max_buf_size(READ_BYTES_MAX)
        .serve_connection(TokioIo::new(stream), TowerToHyperService::new(router));
    let connection = running.watch(connection);
    tokio::spawn(async move {
        // A line that broke is nothing to tell anyone here: whoever sent asks again.
        let _ = connection.await;
    });
}

/// It went while it was being taken; the next one is not concerned.
fn is_of_one_connection(error: &io::Error) -> bool {
    use io::ErrorKind::{ConnectionAborted, ConnectionRefused, ConnectionReset};
    matches!(error.kind(), ConnectionRefused | ConnectionAborted | ConnectionReset)
}
