//! The real office in a folder in memory, called without a port.

use std::collections::VecDeque;
use std::io;
use std::path::PathBuf;
use std::pin::Pin;
use std::rc::Rc;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, Ordering};
use std::task::{Context, Poll};

use axum::Router;
use axum::body::{Body, Bytes as Frame};
use axum::http::Request;
use coilside_core::sync::SendBody;
use coilside_core::visit::event::{hex, sha256};
use coilside_office::Office as Real;
use http_body_util::BodyExt as _;
use rusqlite::Connection;
use tower::ServiceExt as _;

use super::parts::{Call, Office, OfficeDisk, Reply, Stop};
use super::rehearsal;

/// What is wrong with its database just now.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Fault {
    None,
    Dies,
    Full,
}

/// The real office.
pub(crate) struct RealOffice {
    folder: tempfile::TempDir,
    clock: Arc<AtomicI64>,
    open: Option<(Real, Router)>,
    cookie: String,
    fault: Fault,
    runtime: tokio::runtime::Runtime,
    view: OfficeDisk,
    version: u64,
    seen: u64,
}

/// The parts of a body that may break off.
struct Parts(VecDeque<io::Result<Frame>>);

impl futures_core::Stream for Parts {
    type Item = io::Result<Frame>;

    fn poll_next(mut self: Pin<&mut Self>, _: &mut Context<'_>) -> Poll<Option<Self::Item>> {
        Poll::Ready(self.0.pop_front())
    }
}

impl RealOffice {
    pub(crate) fn new(now_ms: i64) -> RealOffice {
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
        let mut office = RealOffice {
            folder: coilside_tests::folder().unwrap(),
            clock: Arc::new(AtomicI64::new(now_ms)),
            open: None,
            cookie: String::new(),
            fault: Fault::None,
            runtime,
            view: OfficeDisk::default(),
            version: 1,
            seen: 0,
        };
        office.start(now_ms);
        rehearsal::set_up(&office.db());
        office
    }

    fn db(&self) -> Connection {
        Connection::open(self.folder.path().join("office.db")).unwrap()
    }

    /// A token that never ends.
    pub(crate) fn script(&self, name: &str) -> String {
        self.open.as_ref().unwrap().0.add_device(name).unwrap()
    }

    fn call(&self, request: Request<Body>) -> Reply {
        let router = self.open.as_ref().unwrap().1.clone();
        self.runtime.block_on(async {
            let (parts, body) = router.oneshot(request).await.unwrap().into_parts();
            let header = |(name, value): (&axum::http::HeaderName, &axum::http::HeaderValue)| {
                (name.as_str().to_owned(), value.to_str().unwrap_or_default().to_owned())
            };
            let headers = parts.headers.iter().map(header).collect();
            Reply { status: parts.status.as_u16(), headers, body: body.collect().await.unwrap().to_bytes().to_vec() }
        })
    }

    fn submit(&self, path: &str, form: String) -> Reply {
        let request = Request::post(path)
            .header("cookie", &self.cookie)
            .header("content-type", "application/x-www-form-urlencoded")
            .header("host", "office.test");
        self.call(request.body(Body::from(form)).unwrap())
    }

    fn original(&self, digest: &str) -> PathBuf {
        self.folder.path().join("photos").join(&digest[..2]).join(digest)
    }
}

fn body(call: &Call) -> Body {
    let came = call.came as usize;
    let bytes = match &call.request.body {
        SendBody::Empty => return Body::empty(),
        SendBody::Bytes(bytes) => bytes[..came].to_vec(),
        SendBody::File { path, from, .. } => std::fs::read(path).unwrap()[*from as usize..][..came].to_vec(),
    };
    let mut parts: VecDeque<_> = bytes.chunks(20_000).map(|part| Ok(Frame::copy_from_slice(part))).collect();
    if !call.is_whole() {
        parts.push_back(Err(io::Error::other("the line broke")));
    }
    Body::from_stream(Parts(parts))
}

impl Office for RealOffice {
    fn start(&mut self, now_ms: i64) {
        self.clock.store(now_ms, Ordering::SeqCst);
        // Triggers also refuse what would change nothing, as much of an office's start does: it has room for that.
        let full = self.fault == Fault::Full;
        if self.fault != Fault::None {
            rehearsal::let_write(&self.db(), None);
        }
        if self.fault == Fault::Dies {
            self.fault = Fault::None;
        }
        let clock = Arc::clone(&self.clock);
        let office = Real::open_by(self.folder.path(), move || clock.load(Ordering::SeqCst)).unwrap();
        let router = office.router();
        let link = office.new_link().unwrap();
        self.open = Some((office, router));
        let entered = self.call(Request::get(link).body(Body::empty()).unwrap());
        let cookie = entered.header("set-cookie").unwrap_or_default();
        self.cookie = cookie.split(';').next().unwrap_or_default().to_owned();
        if full {
            rehearsal::let_write(&self.db(), Some(0));
        }
    }

    fn kill(&mut self, _: bool) {
        self.version += 1;
        let open = self.open.take();
        rehearsal::killed(self.folder.path(), "office.db", || drop(open));
        if self.fault == Fault::Dies {
            self.dies_at_write(None);
        }
    }

    fn dies_at_write(&mut self, writes: Option<u32>) {
        if self.fault != Fault::Full {
            self.fault = if writes.is_some() { Fault::Dies } else { Fault::None };
            rehearsal::let_write(&self.db(), writes);
        }
    }

    fn fill(&mut self, full: bool) {
        self.fault = if full { Fault::Full } else { Fault::None };
        rehearsal::let_write(&self.db(), full.then_some(0));
    }

    fn take(&mut self, call: &Call, now_ms: i64) -> Result<Reply, Stop> {
        self.clock.store(now_ms, Ordering::SeqCst);
        self.version += 1;
        let mut request = Request::builder().method(call.request.method.as_str()).uri(&call.request.path);
        for (name, value) in &call.request.headers {
            request = request.header(name, value);
        }
        if call.request.body != SendBody::Empty {
            request = request.header("Content-Length", call.request.body.length());
        }
        let reply = self.call(request.body(body(call)).unwrap());
        // What it does behind its answer is done before anything else happens to it.
        self.open.as_ref().unwrap().0.keep_what_arrived();
        if self.fault == Fault::Dies && reply.status >= 500 && rehearsal::has_come(&self.db()) {
            return Err(Stop::Killed);
        }
        // A body that ended too soon: nobody is there any more to hear the answer.
        Ok(if call.is_whole() || call.piece().is_some() { reply } else { Reply::default() })
    }

    fn link(&mut self, now_ms: i64) -> Option<String> {
        self.clock.store(now_ms, Ordering::SeqCst);
        let page = self.submit("/devices/join", "name=Phone".to_owned());
        let text = String::from_utf8(page.body).ok()?;
        let (_, rest) = text.split_once("class=\"letters\">")?;
        Some(format!("https://office.example/join#{}", rest.split('<').next()?))
    }

    fn revoke(&mut self, key: &str, now_ms: i64) {
        self.clock.store(now_ms, Ordering::SeqCst);
        let db = self.db();
        let mut query = db.prepare("SELECT id, public_key FROM device WHERE public_key IS NOT NULL").unwrap();
        let rows = query.query_map([], |row| Ok((row.get::<_, i64>(0)?, row.get::<_, Vec<u8>>(1)?))).unwrap();
        let found = rows.map(Result::unwrap).find(|(_, known)| hex(known).0 == key);
        if let Some((device, _)) = found {
            self.submit(&format!("/devices/{device}/revoke"), String::new());
        }
    }

    fn withdraw(&mut self, _: &str, _: i64) {}

    fn disk(&mut self) -> (&OfficeDisk, u64) {
        if self.seen != self.version {
            self.seen = self.version;
            let db = self.db();
            let mut view = OfficeDisk::default();
            let mut query = db.prepare("SELECT visit, bytes FROM event ORDER BY visit, seq").unwrap();
            let rows = query.query_map([], |row| Ok((row.get::<_, String>(0)?, row.get::<_, Vec<u8>>(1)?))).unwrap();
            for (visit, bytes) in rows.map(Result::unwrap) {
                view.logs.entry(visit).or_default().push(Rc::new(bytes));
            }
            let mut query = db.prepare("SELECT visit, jws FROM seal").unwrap();
            let rows = query.query_map([], |row| Ok((row.get(0)?, row.get(1)?))).unwrap();
            view.seals = rows.map(Result::unwrap).collect();
            let mut query = db.prepare("SELECT digest FROM photo WHERE safe_ms IS NOT NULL").unwrap();
            let rows = query.query_map([], |row| row.get::<_, Vec<u8>>(0)).unwrap();
            for digest in rows.map(|row| hex(&row.unwrap()).0) {
                let known = self.view.photos.get(&digest) == Some(&true);
                let right = known || std::fs::read(self.original(&digest)).is_ok_and(|b| sha256(&b).0 == digest);
                view.photos.insert(digest, right);
            }
            self.view = view;
        }
        (&self.view, self.version)
    }
}
