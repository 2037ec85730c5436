//! Carries what the core wants sent to the office, and its answers back. What to send, when to repeat and what an
//! answer means is the core's to say.

use std::{
    fs::File,
    io::{self, Read, Seek, SeekFrom},
    time::Duration,
};

use coilside_core::sync::{SendBody, SendRequest};
use tokio::task::JoinSet;
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

/// The way to the office: the one that the process was started with, or the one that the core names where the device joined.
#[derive(Clone)]
pub(crate) struct Office {
    /// Without a slash at the end; none where the process was started without one.
    address: Option<String>,
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
    pub(crate) fn new(address: Option<&str>, device_token: Option<String>) -> Result<Self, FieldError> {
        let address = address.map(proper).transpose()?;
        let config = Agent::config_builder()
            .http_status_as_error(false)
            .max_redirects(0)
            .max_redirects_will_error(false)
            .timeout_connect(Some(CONNECT_MAX))
            .timeout_global(Some(REQUEST_MAX))
            .user_agent(concat!("coilside/", env!("CARGO_PKG_VERSION")))
            .build();
        Ok(Self { address, device_token, agent: config.new_agent() })
    }

    /// Whether the process was started with an office.
    pub(crate) const fn is_known(&self) -> bool {
        self.address.is_some()
    }

    /// Sends one request and waits for its answer.
    fn send(&self, request: &SendRequest) -> Reply {
        let answer = self.try_send(request);
        answer.unwrap_or_else(|why| Reply { status: 0, body: why.into_bytes(), headers: vec![] })
    }

    fn try_send(&self, request: &SendRequest) -> Result<Reply, String> {
        let origin = request.origin.as_ref().or(self.address.as_ref()).ok_or("this device has no office")?;
        let mut head = Request::builder().method(request.method.as_str()).uri(format!("{origin}{}", request.path));
        for (name, value) in &request.headers {
            head = head.header(name, value);
        }
        // The token of the office that the process was started with is for that office alone.
        if let Some(token) = self.device_token.as_ref().filter(|_| request.origin.is_none()) {
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

/// # Errors
/// The address is not `http://…` or `https://…` with a host.
fn proper(address: &str) -> Result<String, FieldError> {
    let wrong = || FieldError::Office(address.to_owned());
    let uri: Uri = address.parse().map_err(|_| wrong())?;
    if !matches!(uri.scheme_str(), Some("http" | "https")) || uri.host().is_none_or(str::is_empty) {
        return Err(wrong());
    }
    Ok(address.trim_end_matches('/').to_owned())
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
    let mut out = JoinSet::new();
    loop {
        // Where the core cannot take an answer now, it hands the request out again: the office takes it twice without harm.
        if begin(&shell, &office, &mut out).await {
            pause = PAUSE_SHORT;
        }
        tokio::select! {
            Some(_) = out.join_next() => pause = PAUSE_SHORT,
            () = tokio::time::sleep(pause) => pause = (pause * 2).min(PAUSE_LONG),
            () = shell.hurry() => pause = PAUSE_SHORT,
        }
    }
}

/// Begins what the core wants sent now, each request beside the others. Returns whether there was anything.
async fn begin(shell: &Shell, office: &Office, out: &mut JoinSet<()>) -> bool {
    // What is to be signed comes before anything else; the key never leaves this process.
    if let Ok(Some(asked)) = shell.ask(|core, _| Ok(core.next_sign())).await {
        let signature = shell.signature(&asked.bytes);
        let _ = shell.ask(move |core, _| core.signed(&asked.id, &signature)).await;
    }
    let network = shell.network(office.is_known());
    let Ok(requests) = shell.ask(move |core, now| core.next_requests(network, now)).await else { return false };
    let any = !requests.is_empty();
    for request in requests {
        out.spawn(carry(shell.clone(), office.clone(), request));
    }
    any
}

/// Carries one request to the office and its answer back.
async fn carry(shell: Shell, office: Office, request: SendRequest) {
    let sent = tokio::task::spawn_blocking(move || {
        let reply = office.send(&request);
        (request.id, reply)
    });
    let Ok((id, reply)) = sent.await else { return };
    let _ = shell.ask(move |core, now| core.answered(id, reply.status, reply.body, reply.headers, now)).await;
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use base64::{Engine, engine::general_purpose::STANDARD};
    use coilside_core::sync::SignAsked;

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
        SendRequest { id: id.into(), origin: None, method: method.into(), path: "/api/v1/it".into(), headers, body }
    }

    /// Sends what there is, and waits until all of it was answered.
    async fn sent(core: &Arc<StubCore>, office: &Office) -> bool {
        let mut out = JoinSet::new();
        let any = begin(&shell(core.clone()), office, &mut out).await;
        while out.join_next().await.is_some() {}
        any
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
        let office = Office::new(Some(&format!("{}/", mirror().await)), Some("secret".into())).unwrap();
        assert!(sent(&core, &office).await);
        let mut answers = core.answers.lock().unwrap();
        answers.sort_by(|one, other| one.0.cmp(&other.0));
        assert_eq!(answers.iter().map(|answer| answer.0.as_str()).collect::<Vec<_>>(), ["ask", "events", "part"]);
        let seen = |at: usize| answers[at].3.iter().find(|(name, _)| name == "x-seen").unwrap().1.clone();
        assert_eq!((answers[1].1, answers[1].2.as_slice()), (200, b"one\ntwo".as_slice()));
        assert_eq!(seen(1), "POST Bearer secret 7 7 -");
        assert_eq!(answers[2].2.as_slice(), b"3456".as_slice());
        assert_eq!(seen(2), "PATCH Bearer secret 7 4 -");
        assert_eq!(answers[0].1, 200);
    }

    #[tokio::test]
    async fn an_office_that_was_joined_is_asked_in_place_of_the_one_of_the_start_and_never_gets_its_token() {
        let folder = tempfile::tempdir().unwrap();
        let core = Arc::new(StubCore::new(folder.path()));
        let joined = SendRequest { origin: Some(mirror().await), ..request("joined", "GET", SendBody::Empty) };
        core.to_send.lock().unwrap().push(joined);
        let gone = TcpListener::bind(("127.0.0.1", 0)).await.unwrap().local_addr().unwrap();
        let office = Office::new(Some(&format!("http://{gone}")), Some("secret".into())).unwrap();
        sent(&core, &office).await;
        let answers = core.answers.lock().unwrap();
        assert_eq!(answers[0].1, 200);
        assert!(answers[0].3.iter().any(|(name, line)| name == "x-seen" && line.starts_with("GET - 7")), "{answers:?}");
    }

    #[tokio::test]
    async fn what_the_token_needs_is_signed_here_by_the_devices_key() {
        use p256::ecdsa::{Signature, VerifyingKey, signature::Verifier};
        let folder = tempfile::tempdir().unwrap();
        let core = Arc::new(StubCore::new(folder.path()));
        *core.to_sign.lock().unwrap() = Some(SignAsked { id: "token/1".into(), bytes: b"header.payload".to_vec() });
        sent(&core, &Office::new(None, None).unwrap()).await;
        let (id, base64) = core.signed.lock().unwrap().take().unwrap();
        let key = crate::key::DeviceKey::of(folder.path()).unwrap();
        let signature = Signature::from_slice(&STANDARD.decode(base64).unwrap()).unwrap();
        VerifyingKey::from_sec1_bytes(&key.public()).unwrap().verify(b"header.payload", &signature).unwrap();
        assert_eq!(id, "token/1");
    }

    #[tokio::test]
    async fn no_office_is_status_0_with_the_reason() {
        let folder = tempfile::tempdir().unwrap();
        let core = Arc::new(StubCore::new(folder.path()));
        core.to_send.lock().unwrap().push(request("events", "POST", SendBody::Bytes(vec![1])));
        let gone = TcpListener::bind(("127.0.0.1", 0)).await.unwrap().local_addr().unwrap();
        let office = Office::new(Some(&format!("http://{gone}")), None).unwrap();
        sent(&core, &office).await;
        let answers = core.answers.lock().unwrap();
        assert_eq!(answers[0].1, 0);
        assert!(!answers[0].2.is_empty(), "the reason is told");
    }

    #[test]
    fn an_office_without_a_proper_address_is_refused_at_the_start() {
        for address in ["office.example", "ftp://office.example", "http://", ""] {
            assert!(matches!(Office::new(Some(address), None), Err(FieldError::Office(_))), "{address}");
        }
    }
}
