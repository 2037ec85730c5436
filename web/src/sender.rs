//! Carries what the core wants sent to the office, and its answers back. What to send, when to repeat and what an
//! answer means is the core's to say.

use std::{
    fs::File,
    io::{self, Read, Seek, SeekFrom},
    time::Duration,
};

use coilside_core::sync::{SendBody, SendRequest};
use ureq::{
    Agent, SendBody as Outgoing,
    http::{Request, Response, Uri},
};

use crate::{door::Shell, error::FieldError};

/// The pause while there is work to do.
const PAUSE_SHORT: Duration = Duration::from_millis(200);
/// The longest pause.
const PAUSE_LONG: Duration = Duration::from_secs(5);
/// The longest that connecting may take.
const CONNECT_MAX: Duration = Duration::from_secs(10);
/// The longest that one whole request may take. Photographs go in parts, so that this is enough on a slow line; the
/// core gives an unanswered request up a little later.
const REQUEST_MAX: Duration = Duration::from_secs(80);
/// The most that is read of an answer, bytes.
const ANSWER_BYTES_MAX: u64 = 1_000_000;

/// The office, as this device reaches it.
#[derive(Clone)]
pub(crate) struct Office {
    /// Without a slash at the end.
    address: String,
    device_token: Option<String>,
    agent: Agent,
}

/// What came back. Status 0: no answer, and the body says why.
struct Reply {
    status: u16,
    body: Vec<u8>,
    headers: Vec<(String, String)>,
}

impl Office {
    /// # Errors
    /// The address is not `http://…` or `https://…` with a host.
    pub(crate) fn new(address: &str, device_token: Option<String>) -> Result<Self, FieldError> {
        let wrong = || FieldError::Office(address.to_owned());
        let uri: Uri = address.parse().map_err(|_| wrong())?;
        if !matches!(uri.scheme_str(), Some("http" | "https")) || uri.host().is_none_or(str::is_empty) {
            return Err(wrong());
        }
        let config = Agent::config_builder()
            .http_status_as_error(false)
            .max_redirects(0)
            .max_redirects_will_error(false)
            .timeout_connect(Some(CONNECT_MAX))
            .timeout_global(Some(REQUEST_MAX))
            .user_agent(concat!("coilside/", env!("CARGO_PKG_VERSION")))
            .build();
        let address = address.trim_end_matches('/').to_owned();
        Ok(Self { address, device_token, agent: config.new_agent() })
    }

    /// Sends one request and waits for its answer.
    fn send(&self, request: &SendRequest) -> Reply {
        let answer = self.try_send(request);
        answer.unwrap_or_else(|why| Reply { status: 0, body: why.into_bytes(), headers: vec![] })
    }

    fn try_send(&self, request: &SendRequest) -> Result<Reply, String> {
        let mut head =
            Request::builder().method(request.method.as_str()).uri(format!("{}{}", self.address, request.path));
        for (name, value) in &request.headers {
            head = head.header(name, value);
        }
        if let Some(token) = &self.device_token {
            head = head.header("Authorization", format!("Bearer {token}"));
        }
        let text = |why: &dyn std::fmt::Display| why.to_string();
        let answer = match &request.body {
            SendBody::Empty => self.agent.run(head.body(Outgoing::none()).map_err(|why| text(&why))?),
            SendBody::Bytes(bytes) => self.agent.run(head.body(bytes.as_slice()).map_err(|why| text(&why))?),
            SendBody::File { path, from, length } => {
                let part = part_of(path, *from, *length).map_err(|why| text(&why))?;
                let head = head.header("Content-Length", length.to_string());
                self.agent.run(head.body(Outgoing::from_owned_reader(part)).map_err(|why| text(&why))?)
            }
        };
        read(answer.map_err(|why| text(&why))?)
    }
}

fn part_of(path: &std::path::Path, from: u64, length: u64) -> io::Result<impl Read + 'static> {
    let mut file = File::open(path)?;
    file.seek(SeekFrom::Start(from))?;
    Ok(file.take(length))
}

fn read(answer: Response<ureq::Body>) -> Result<Reply, String> {
    let (parts, mut body) = answer.into_parts();
    let body = body.with_config().limit(ANSWER_BYTES_MAX).read_to_vec().map_err(|why| why.to_string())?;
    let header = |(name, value): (&ureq::http::HeaderName, &ureq::http::HeaderValue)| {
        Some((name.as_str().to_owned(), value.to_str().ok()?.to_owned()))
    };
    Ok(Reply { status: parts.status.as_u16(), body, headers: parts.headers.iter().filter_map(header).collect() })
}

/// Sends for as long as the process lives. A failure here never holds up the door.
pub(crate) async fn run(shell: Shell, office: Office) {
    let mut pause = PAUSE_SHORT;
    loop {
        let sent = round(&shell, &office).await;
        pause = if sent { PAUSE_SHORT } else { (pause * 2).min(PAUSE_LONG) };
        tokio::select! {
            () = tokio::time::sleep(pause) => {}
            () = shell.hurry(), if !sent => pause = PAUSE_SHORT,
        }
    }
}

/// Sends what the core wants sent now. Returns whether there was anything.
async fn round(shell: &Shell, office: &Office) -> bool {
    let Ok(requests) = shell.ask(|core, now| core.next_requests(now)).await else { return false };
    let any = !requests.is_empty();
    for request in requests {
        let office = office.clone();
        let sent = tokio::task::spawn_blocking(move || {
            let reply = office.send(&request);
            (request.id, reply)
        });
        let Ok((id, reply)) = sent.await else { continue };
        let told = shell.ask(move |core, now| core.answered(id, reply.status, reply.body, reply.headers, now)).await;
        if told.is_err() {
            // Unanswered, the core hands the request out again: the office takes it twice without harm.
            return false;
        }
    }
    any
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use axum::{Router, body::Bytes, http::HeaderMap, http::Method, routing::any};
    use tokio::net::TcpListener;

    use super::*;
    use crate::stub::{StubCore, shell};

    /// An office that answers with what it was sent, in one line.
    async fn mirror() -> String {
        let echo = |method: Method, headers: HeaderMap, body: Bytes| async move {
            let told = |name: &str| headers.get(name).map_or("-", |value| value.to_str().unwrap()).to_owned();
            let line = format!(
                "{method} {} {} {} {}",
                told("authorization"),
                told("x-part"),
                told("content-length"),
                told("transfer-encoding")
            );
            ([("x-seen", line)], body)
        };
        let listener = TcpListener::bind(("127.0.0.1", 0)).await.unwrap();
        let address = format!("http://{}", listener.local_addr().unwrap());
        tokio::spawn(async move { axum::serve(listener, Router::new().route("/api/v1/{*path}", any(echo))).await });
        address
    }

    fn request(id: &str, method: &str, body: SendBody) -> SendRequest {
        let headers = vec![("x-part".to_owned(), "7".to_owned())];
        SendRequest { id: id.into(), method: method.into(), path: "/api/v1/it".into(), headers, body }
    }

    #[tokio::test]
    async fn events_and_parts_of_files_arrive_to_the_byte_and_their_answers_come_back() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("photo");
        std::fs::write(&file, b"0123456789").unwrap();
        let core = Arc::new(StubCore::new(folder.path()));
        core.to_send.lock().unwrap().extend([
            request("events", "POST", SendBody::Bytes(b"one\ntwo".to_vec())),
            request("part", "PATCH", SendBody::File { path: file, from: 3, length: 4 }),
            request("ask", "GET", SendBody::Empty),
        ]);
        let office = Office::new(&format!("{}/", mirror().await), Some("secret".into())).unwrap();
        assert!(round(&shell(core.clone()), &office).await);
        let answers = core.answers.lock().unwrap();
        let seen = |at: usize| answers[at].3.iter().find(|(name, _)| name == "x-seen").unwrap().1.clone();
        assert_eq!((answers[0].1, answers[0].2.as_slice()), (200, b"one\ntwo".as_slice()));
        assert_eq!(seen(0), "POST Bearer secret 7 7 -");
        assert_eq!((answers[1].0.as_str(), answers[1].2.as_slice()), ("part", b"3456".as_slice()));
        assert_eq!(seen(1), "PATCH Bearer secret 7 4 -");
        assert_eq!(answers[2].1, 200);
    }

    #[tokio::test]
    async fn no_office_is_status_0_with_the_reason() {
        let folder = tempfile::tempdir().unwrap();
        let core = Arc::new(StubCore::new(folder.path()));
        core.to_send.lock().unwrap().push(request("events", "POST", SendBody::Bytes(vec![1])));
        let gone = TcpListener::bind(("127.0.0.1", 0)).await.unwrap().local_addr().unwrap();
        let office = Office::new(&format!("http://{gone}"), None).unwrap();
        round(&shell(core.clone()), &office).await;
        let answers = core.answers.lock().unwrap();
        assert_eq!(answers[0].1, 0);
        assert!(!answers[0].2.is_empty(), "the reason is told");
    }

    #[test]
    fn an_office_without_a_proper_address_is_refused_at_the_start() {
        for address in ["office.example", "ftp://office.example", "http://", ""] {
            assert!(matches!(Office::new(address, None), Err(FieldError::Office(_))), "{address}");
        }
    }
}
