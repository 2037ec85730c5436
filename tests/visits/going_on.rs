//! Two devices, one visit: the office lets the second one go on, and nothing of the first one's is lost.

use axum::body::Body as HttpBody;
use axum::http::{Request as HttpRequest, header};
use coilside_core::action::Action;
use coilside_core::effect::Request;
use coilside_core::field::Field;
use coilside_core::record::file::verify;
use coilside_core::visit::event::{Body, Event};
use coilside_core::visit::state::Mark;
use coilside_office::demo::deliver;
use coilside_office::demo::player::Clock;
use coilside_office::{Office, VisitId as OfficeVisitId};
use coilside_tests::look::notice_lines;
use coilside_tests::scene::Scene;
use coilside_tests::{Technician, assignment};
use tower::ServiceExt as _;

const MINUTE_MS: i64 = 60_000;
const SOAK: &str = "soak-coil";

/// An office with two devices, and a visit that soaks at the first of them.
struct Two {
    office: Office,
    tokens: [String; 2],
    _folder: tempfile::TempDir,
    one: Scene,
    two: Scene,
    runtime: tokio::runtime::Runtime,
}

impl Two {
    fn soaking() -> Two {
        let folder = tempfile::tempdir().unwrap();
        let office = coilside_office::open(folder.path()).unwrap();
        let tokens = ["one", "two"].map(|name| office.add_device(name).unwrap());
        office.put_assignment(&serde_json::to_value(assignment("a1")).unwrap()).unwrap();
        let mut one = Scene::at_step(SOAK, &[]).unwrap();
        one.act(&Action::Start { step: SOAK.into() }).unwrap();
        one.clock.pass_ms(MINUTE_MS);
        let two = Scene::empty(Technician::with_key(23), one.clock.elsewhere("the second")).unwrap();
        let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
        let mut both = Two { office, tokens, _folder: folder, one, two, runtime };
        // The office goes by the keys that devices told it.
        both.deliver(0);
        both.deliver(1);
        both
    }

    /// All that a device has to send goes out, and what is new comes down.
    fn deliver(&mut self, device: usize) {
        let scene = if device == 0 { &mut self.one } else { &mut self.two };
        // The office is asked for news at its own pace.
        scene.clock.pass_ms(40_000);
        let mut clock: Clock = scene.clock.clone();
        let field: &Field = scene.field();
        self.runtime.block_on(deliver(field, &self.office, &mut clock, &self.tokens[device])).unwrap();
        scene.clock = clock;
        let behind = self.one.clock.now().utc_ms - self.two.clock.now().utc_ms;
        let late = if behind > 0 { &mut self.two } else { &mut self.one };
        late.clock.pass_ms(behind.abs());
    }

    fn http(&self, request: HttpRequest<HttpBody>) -> (u16, String, String) {
        self.runtime.block_on(async {
            let answer = self.office.router().oneshot(request).await.unwrap();
            let cookie = answer.headers().get(header::SET_COOKIE).map(|value| value.to_str().unwrap().to_owned());
            let status = answer.status().as_u16();
            let body = axum::body::to_bytes(answer.into_body(), 8 << 20).await.unwrap();
            (status, cookie.unwrap_or_default(), String::from_utf8_lossy(&body).into_owned())
        })
    }

    /// A person at the office lets the device of that number go on.
    fn hand_over(&self, to: usize) {
        let link = self.office.new_link().unwrap();
        let (_, cookie, _) = self.http(HttpRequest::get(link).body(HttpBody::empty()).unwrap());
        let cookie = cookie.split(';').next().unwrap().to_owned();
        let path = format!("/visits/{}/take-over", self.one.visit_id().unwrap());
        let form = HttpRequest::post(&path)
            .header(header::COOKIE, &cookie)
            .header(header::CONTENT_TYPE, "application/x-www-form-urlencoded")
            .header(header::HOST, "office.test")
            .body(HttpBody::from(format!("device={to}")))
            .unwrap();
        let (status, _, page) = self.http(form);
        assert!(status < 400, "{status} {page}");
    }

    /// The record as the office writes it, verified: its events, and the key that sealed it.
    fn verified(&self) -> (Vec<String>, Vec<u8>) {
        let visit = OfficeVisitId::parse(self.one.visit_id().unwrap().as_str()).unwrap();
        let mut file = Vec::new();
        self.office.export_record(&visit, &mut file).unwrap();
        let report = verify::verify(&mut file.as_slice(), &[self.office.public_key()]).unwrap();
        assert!(report.holds(), "{:?}", report.faults);
        assert!(report.is_anchored());
        let holding = report.holding.unwrap();
        (holding.document.events, holding.device_key)
    }
}

fn texts(events: Vec<Vec<u8>>) -> Vec<String> {
    events.into_iter().map(|bytes| String::from_utf8(bytes).unwrap()).collect()
}

fn finding(scene: &mut Scene, text: &str) {
    scene.draft("finding", text).unwrap();
    scene.draft("severity", "soon").unwrap();
    scene.act(&Action::AddFinding).unwrap();
}

/// What the screen asks to look at again is as it was.
fn look_again(scene: &mut Scene) {
    let asked = |scene: &Scene| {
        let buttons = scene.screen().unwrap().notices.into_iter().flat_map(|notice| notice.buttons);
        buttons.map(|button| button.press).find(|press| matches!(press, Action::Recheck { .. }))
    };
    assert!(asked(scene).is_some(), "it is asked");
    while let Some(press) = asked(scene) {
        scene.act(&press).unwrap();
    }
}

#[test]
fn the_second_device_goes_on_where_the_first_one_was_and_its_key_seals() {
    let mut both = Two::soaking();
    let before = both.one.visit().unwrap();
    let id = both.one.visit_id().unwrap();
    both.hand_over(2);
    both.deliver(1);
    let told = format!("{:?}", both.two.go("round").unwrap());
    assert!(told.contains("Go on: Mill house") && !told.contains("Start the visit"), "{told}");

    let turn = both.two.act(&Action::Go { to: format!("visit:{id}") }).unwrap();
    let rings = |what: &str| {
        turn.effects.iter().any(|e| matches!(&e.request, Request::WakeAt { text, .. } if text.starts_with(what)))
    };
    assert!(rings("Time is up") && rings("Two minutes left"), "the soak rings here too: {:?}", turn.effects);
    let after = both.two.visit().unwrap();
    assert!(matches!(both.two.run().unwrap().steps.get(SOAK), Some(Mark::Running { .. })));
    assert_eq!(after.device_key, format!("{}", coilside_core::visit::event::hex(&both.two.technician.public_key())));
    let events = both.two.events().unwrap();
    assert_eq!(events[..before.end.next as usize], both.one.events().unwrap()[..]);
    let own: Vec<Body> = (before.end.next..)
        .zip(&events[before.end.next as usize..])
        .map(|(seq, bytes)| Event::from_bytes(bytes, seq).unwrap().body)
        .collect();
    assert!(matches!(own.as_slice(), [.., Body::DeviceChanged { .. }]), "{own:?}");
    assert_eq!(before.runs.len(), after.runs.len());

    both.two.play_on().unwrap();
    both.deliver(1);
    let (sealed, key) = both.verified();
    assert_eq!(sealed, texts(both.two.events().unwrap()));
    assert_eq!(key, both.two.technician.public_key());
}

#[test]
fn what_the_first_device_still_writes_is_kept_beside_the_record_and_then_it_is_told() {
    let mut both = Two::soaking();
    both.hand_over(2);
    // Out of coverage: it does not know yet.
    finding(&mut both.one, "The drain is loose.");
    both.deliver(1);
    both.deliver(0);
    assert_eq!(both.one.screen().unwrap().outbox.value, "all at the office");
    let outbox = format!("{:?}", both.one.go("outbox").unwrap());
    assert!(outbox.contains("kept aside at the office for review"), "{outbox}");
    let round = format!("{:?}", both.one.go("round").unwrap());
    assert!(round.contains("another device goes on") && !round.contains("Go on: Mill house"), "{round}");
    let id = both.one.visit_id().unwrap();
    let screen = both.one.go(&format!("visit:{id}")).unwrap();
    assert!(notice_lines(&screen.notices).iter().any(|line| line.contains("other device")), "{:?}", screen.notices);
    let written = both.one.events().unwrap().len();
    finding(&mut both.one, "One more.");
    assert_eq!(both.one.events().unwrap().len(), written, "no work goes on here");
    let turn = both.one.reopen().unwrap();
    assert!(turn.effects.iter().all(|e| !matches!(e.request, Request::WakeAt { .. })), "nothing rings here");
    assert_eq!(both.one.events().unwrap().len(), written, "nor after a start anew");

    let two = both.two.visit_id();
    assert!(two.is_err(), "nobody opened it there yet: {two:?}");
    both.two.act(&Action::Go { to: format!("visit:{id}") }).unwrap();
    both.two.play_on().unwrap();
    both.deliver(1);
    let (sealed, _) = both.verified();
    assert!(!sealed.iter().any(|event| event.contains("The drain is loose.")));
}

#[test]
fn a_visit_that_comes_back_is_the_offices_and_what_this_device_had_beside_it_stays() {
    let mut both = Two::soaking();
    both.hand_over(2);
    finding(&mut both.one, "The drain is loose.");
    both.deliver(1);
    let id = both.one.visit_id().unwrap();
    both.two.act(&Action::Go { to: format!("visit:{id}") }).unwrap();
    finding(&mut both.two, "The lagging is torn.");
    both.deliver(1);
    both.hand_over(1);
    // The first one still has unsent events of its own: those arrive first, then the visit comes.
    both.deliver(0);
    let events = texts(both.one.events().unwrap());
    assert!(events.iter().any(|event| event.contains("The lagging is torn.")));
    assert!(!events.iter().any(|event| event.contains("The drain is loose.")));
    let key = coilside_core::visit::event::hex(&both.one.technician.public_key());
    assert_eq!(both.one.visit().unwrap().device_key, key.0);
    both.one.act(&Action::Go { to: format!("visit:{id}") }).unwrap();
    // Nobody can tell how long the unit stood alone between two devices: all is looked at again.
    look_again(&mut both.one);
    both.one.play_on().unwrap();
    both.deliver(0);
    let (sealed, by) = both.verified();
    assert_eq!((sealed, by), (texts(both.one.events().unwrap()), both.one.technician.public_key()));
    let kept = texts(both.one.store().unwrap().branch(&id).unwrap());
    assert!(kept.iter().any(|event| event.contains("The drain is loose.")), "{kept:?}");
    // The second one hears of it once it has something to say.
    both.two.clock = both.one.clock.elsewhere("the second");
    finding(&mut both.two, "Late.");
    both.deliver(1);
    let round = format!("{:?}", both.two.go("round").unwrap());
    assert!(round.contains("another device goes on"), "{round}");
}
