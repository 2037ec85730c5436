//! Ctrl-C at the office in the middle of a photograph: it finishes what it is doing, and leaves nothing that it answered undone.

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::TcpStream;
use std::time::{Duration, Instant};

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use coilside_core::visit::event::sha256;
use rusqlite::Connection;

use crate::process::{Process, output, text};
use crate::random::Random;

const PATIENCE: Duration = Duration::from_secs(30);

/// A connection that stays open, and speaks HTTP/1.1 by hand: so a piece can be stopped half-way.
struct Line {
    stream: TcpStream,
    token: String,
}

impl Line {
    fn to(host: &str, token: &str) -> Line {
        let stream = TcpStream::connect(host).unwrap();
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
        Line { stream, token: token.to_owned() }
    }

    fn begin(&mut self, request: &str, headers: &str) {
        let common = format!("Host: office.test\r\nTus-Resumable: 1.0.0\r\nAuthorization: Bearer {}\r\n", self.token);
        self.stream.write_all(format!("{request} HTTP/1.1\r\n{common}{headers}\r\n").as_bytes()).unwrap();
    }

    /// The status of the answer; its body is read over.
    fn answer(&mut self) -> u16 {
        let mut reader = BufReader::new(&mut self.stream);
        let (mut status, mut length) = (0, 0);
        for number in 0.. {
            let mut line = String::new();
            reader.read_line(&mut line).unwrap();
            if number == 0 {
                status = line.split(' ').nth(1).and_then(|code| code.parse().ok()).unwrap_or(0);
            }
            if let Some((_, bytes)) = line.to_ascii_lowercase().split_once("content-length:") {
                length = bytes.trim().parse().unwrap();
            }
            if line.trim().is_empty() {
                break;
            }
        }
        reader.read_exact(&mut vec![0; length]).unwrap();
        status
    }
}

#[test]
fn an_office_that_is_stopped_finishes_the_photograph_that_is_coming_and_has_it_on_its_disk() {
    let folder = tempfile::tempdir().unwrap();
    let root = folder.path().join("office");
    let token = output(&["office", "--folder", text(&root), "--new-device", "stop test"]);
    let mut office = Process::new(&["office", "--folder", text(&root), "--port", "0"]);
    let address = office.start();
    let host = address.trim_start_matches("http://").trim_end_matches('/').to_owned();

    let mut random = Random::of(7);
    let bytes: Vec<u8> = (0..300_000).map(|_| random.below(256) as u8).collect();
    let (now, later) = bytes.split_at(100_000);
    let digest = sha256(&bytes).0;
    let mut line = Line::to(&host, &token);
    line.begin(
        "POST /api/v1/photos",
        &format!(
            "Upload-Length: {}\r\nUpload-Metadata: sha256 {}\r\nContent-Length: 0\r\n",
            bytes.len(),
            STANDARD.encode(&digest)
        ),
    );
    assert_eq!(line.answer(), 201);
    line.begin(
        &format!("PATCH /api/v1/photos/{digest}"),
        &format!(
            "Upload-Offset: 0\r\nContent-Type: application/offset+octet-stream\r\nContent-Length: {}\r\n",
            bytes.len()
        ),
    );
    line.stream.write_all(now).unwrap();
    // Somebody is connected and asks nothing: that must not keep the office up.
    let idle = TcpStream::connect(&host).unwrap();

    let part = root.join("parts").join(format!("{digest}.part"));
    let until = Instant::now() + PATIENCE;
    while !part.exists() {
        assert!(Instant::now() < until, "the piece is not being taken");
        std::thread::sleep(Duration::from_millis(10));
    }
    office.interrupt();
    while TcpStream::connect(&host).is_ok() {
        assert!(Instant::now() < until, "it still takes connections");
        std::thread::sleep(Duration::from_millis(10));
    }
    line.stream.write_all(later).unwrap();
    assert_eq!(line.answer(), 204);
    assert!(office.ends_well(PATIENCE), "it ends, and without an error");
    drop(idle);

    assert!(std::fs::read(root.join("photos").join(&digest[..2]).join(&digest)).unwrap() == bytes);
    let safe = "SELECT count(*) FROM photo WHERE safe_ms IS NOT NULL";
    assert_eq!(
        Connection::open(root.join("office.db")).unwrap().query_row(safe, [], |row| row.get::<_, i64>(0)),
        Ok(1)
    );
}
