//! Another device goes on with a visit; what the first one still has is kept beside the record.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

#[cfg(test)]
mod support;

use serde_json::{Value, json};
use support::{Answer, Bench, Joined, chain, head, payload, public_key, sign};

const VISIT: &str = "visit-1";

/// An office, two devices that joined, and a visit of three events that the first one has sent.
async fn begun() -> (Bench, String, Joined, Joined, Vec<String>) {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let (one, two) = (bench.joined(&cookie, "One", 1).await, bench.joined(&cookie, "Two", 2).await);
    let events = chain(VISIT, &["a", "b", "c"]);
    assert_eq!(send(&bench, &one, 0, &events).await.status, 200);
    (bench, cookie, one, two, events)
}

async fn send(bench: &Bench, device: &Joined, first: u64, events: &[String]) -> Answer {
    let body = json!({ "first": first, "events": events });
    bench.call_as(&device.token, "POST", &format!("/visits/{VISIT}/events"), Some(body)).await
}

async fn fetch(bench: &Bench, device: &Joined, query: &str) -> Answer {
    bench.call_as(&device.token, "GET", &format!("/visits/{VISIT}/events{query}"), None).await
}

async fn hand_over(bench: &Bench, cookie: &str, to: &Joined) -> Answer {
    bench.submit(&format!("/visits/{VISIT}/take-over"), cookie, &format!("device={}", to.device)).await
}

async fn seal(bench: &Bench, device: &Joined, events: &[String]) -> Answer {
    let jws = sign(&device.key, &payload(VISIT, events, true));
    let body = json!({ "jws": jws, "public_key": public_key(&device.key) });
    bench.call_as(&device.token, "PUT", &format!("/visits/{VISIT}/seal"), Some(body)).await
}

/// The chain so far, and one more event on it.
fn then(events: &[String], more: Value) -> Vec<String> {
    let mut event = json!({ "visit": VISIT, "seq": events.len(), "prev": head(events) });
    event.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
    [events, &[event.to_string()]].concat()
}

fn changed(events: &[String], to: &Joined) -> Vec<String> {
    then(events, json!({ "kind": "device-changed", "device_key": public_key(&to.key) }))
}

#[tokio::test]
async fn the_new_device_is_told_fetches_the_visit_and_goes_on() {
    let (bench, cookie, _, two, events) = begun().await;
    let page = bench.page(&format!("/visits/{VISIT}/take-over"), &cookie).await.text();
    assert!(page.contains("The device of One writes this visit now.") && page.contains("Two "), "{page}");
    assert!(page.contains("Last heard: Just now"), "two devices of one name cannot be told apart: {page}");
    let handed = hand_over(&bench, &cookie, &two).await;
    assert_eq!((handed.status.as_u16(), handed.header("location")), (303, "/visits/visit-1"));
    let news = bench.call_as(&two.token, "GET", "/news", None).await.json();
    assert_eq!(news["handed"], json!([{ "visit": VISIT, "next": 3, "head": head(&events) }]));
    let got = fetch(&bench, &two, "?from=1").await.json();
    assert_eq!(got, json!({ "first": 1, "events": &events[1..], "next": 3, "head": head(&events) }));
    assert_eq!(fetch(&bench, &two, "").await.json()["events"], json!(events));
    assert_eq!(fetch(&bench, &two, "?from=99").await.json()["events"], json!([]));
    let longer = changed(&events, &two);
    assert_eq!(send(&bench, &two, 3, &longer[3..]).await.json()["next"], 4);
    let page = bench.page(&format!("/visits/{VISIT}"), &cookie).await.text();
    assert!(page.contains("from One to Two"), "{page}");
}

#[tokio::test]
async fn the_visits_assignment_goes_over_with_it() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let (one, two) = (bench.joined(&cookie, "One", 1).await, bench.joined(&cookie, "Two", 2).await);
    bench.assign(&support::visit::assignment("a-1", "Mill House", "en"));
    let visit = support::visit::Written::begin(VISIT, "a-1");
    send(&bench, &one, 0, &visit.events).await;
    let before = bench.call_as(&two.token, "GET", "/news", None).await.json();
    hand_over(&bench, &cookie, &two).await;
    let path = format!("/news?after={}", before["cursor"].as_str().unwrap());
    let news = bench.call_as(&two.token, "GET", &path, None).await.json();
    assert_eq!((&news["handed"][0]["visit"], &news["assignments"][0]["id"]), (&json!(VISIT), &json!("a-1")));
}

#[tokio::test]
async fn only_the_writer_may_fetch_a_visits_events() {
    let (bench, cookie, one, two, _) = begun().await;
    assert_eq!(fetch(&bench, &two, "").await.status, 403);
    assert_eq!(fetch(&bench, &one, "").await.status, 200);
    hand_over(&bench, &cookie, &two).await;
    assert_eq!(fetch(&bench, &one, "").await.status, 403);
    assert_eq!(fetch(&bench, &two, "?from=x").await.status, 400);
    let unknown = bench.call_as(&two.token, "GET", "/visits/none/events", None).await;
    assert_eq!(unknown.status, 404);
}

#[tokio::test]
async fn what_the_first_device_still_has_is_kept_beside_the_record_for_good() {
    let (bench, cookie, one, two, events) = begun().await;
    hand_over(&bench, &cookie, &two).await;
    let going_on = changed(&events, &two);
    send(&bench, &two, 3, &going_on[3..]).await;
    let late = then(&then(&events, json!({ "kind": "note", "text": "d" })), json!({ "kind": "note", "text": "<e>" }));
    for _ in 0..2 {
        let answer = send(&bench, &one, 3, &late[3..]).await;
        assert_eq!(answer.status, 409);
        let told = answer.json();
        assert_eq!(told["type"], "urn:coilside:problem:taken-over");
        assert_eq!((&told["next"], &told["head"], &told["kept"]), (&json!(4), &json!(head(&going_on)), &json!(5)));
    }
    assert_eq!((bench.count("event"), bench.count("branch")), (4, 2));
    // One more, and one that does not follow what is kept: it is told from where to send.
    let longer = then(&late, json!({ "kind": "note", "text": "f" }));
    assert_eq!(send(&bench, &one, 5, &longer[5..]).await.json()["kept"], 6);
    let far = then(&then(&longer, json!({ "kind": "note" })), json!({ "kind": "note" }));
    assert_eq!(send(&bench, &one, 7, &far[7..]).await.json()["kept"], 6);
    assert_eq!(bench.count("branch"), 3);
    // After a kill it is still there, and a page shows it.
    let bench = bench.reopened();
    assert_eq!(bench.count("branch"), 3);
    for (language, wanted) in [("en", "Kept beside the record"), ("es", "Guardado junto al registro")] {
        let page = bench.page(&format!("/visits/{VISIT}?lang={language}"), &cookie).await.text();
        assert!(page.contains(wanted) && page.contains("text: &lt;e&gt;"), "{page}");
    }
}

#[tokio::test]
async fn events_that_were_here_before_the_handing_over_are_no_branch() {
    let (bench, cookie, one, two, events) = begun().await;
    hand_over(&bench, &cookie, &two).await;
    for (first, sent) in [(0, &events[..]), (2, &events[2..]), (3, &events[3..])] {
        let answer = send(&bench, &one, first, sent).await;
        assert_eq!((answer.status.as_u16(), &answer.json()["kept"]), (409, &json!(3)), "{first}");
    }
    assert_eq!(bench.count("branch"), 0);
}

#[tokio::test]
async fn the_last_device_that_the_record_names_seals_it_and_no_other() {
    let (bench, cookie, one, two, events) = begun().await;
    hand_over(&bench, &cookie, &two).await;
    let unnamed = then(&events, json!({ "kind": "note", "text": "d" }));
    let named = changed(&events, &two);
    // The first device seals its own account: kept, and nothing else.
    let answer = seal(&bench, &one, &events).await;
    assert_eq!(
        (answer.status.as_u16(), answer.json()["type"].as_str()),
        (409, Some("urn:coilside:problem:taken-over"))
    );
    assert_eq!((bench.count("seal"), bench.count("branch_seal")), (0, 1));
    // The second one without having said that it goes on.
    assert_eq!(seal(&bench, &two, &events).await.json()["type"], "urn:coilside:problem:other-writer");
    assert_eq!(send(&bench, &two, 3, &named[3..]).await.status, 200);
    assert_eq!(seal(&bench, &two, &unnamed).await.status, 409);
    let answer = seal(&bench, &two, &named).await;
    assert_eq!(answer.status, 200, "{}", answer.text());
    let page = bench.page(&format!("/visits/{VISIT}"), &cookie).await.text();
    assert!(!page.contains("Let another device go on"), "{page}");
    assert_eq!(hand_over(&bench, &cookie, &one).await.status, 409);
}

#[tokio::test]
async fn a_record_that_names_another_key_than_the_sealing_devices_is_refused() {
    let (bench, cookie, one, two, events) = begun().await;
    hand_over(&bench, &cookie, &two).await;
    let wrong = changed(&events, &one);
    send(&bench, &two, 3, &wrong[3..]).await;
    assert_eq!(seal(&bench, &two, &wrong).await.json()["type"], "urn:coilside:problem:other-writer");
    assert_eq!(bench.count("seal"), 0);
}

#[tokio::test]
async fn a_visit_goes_back_to_its_first_device_which_then_writes_it_again() {
    let (bench, cookie, one, two, events) = begun().await;
    hand_over(&bench, &cookie, &two).await;
    let with_two = changed(&events, &two);
    send(&bench, &two, 3, &with_two[3..]).await;
    hand_over(&bench, &cookie, &one).await;
    let back = changed(&with_two, &one);
    assert_eq!(send(&bench, &one, 4, &back[4..]).await.status, 200);
    let late = then(&with_two, json!({ "kind": "note" }));
    assert_eq!(send(&bench, &two, 4, &late[4..]).await.json()["kept"], 5);
    let news = bench.call_as(&two.token, "GET", "/news", None).await.json();
    assert_eq!(news["handed"], json!([]), "it is not the second one's any more");
    assert_eq!(seal(&bench, &one, &back).await.status, 200);
}

#[tokio::test]
async fn a_visit_goes_only_to_a_device_that_is_heard_and_has_a_key() {
    let (bench, cookie, _, two, _) = begun().await;
    bench.office.add_device("No key").unwrap();
    bench.submit(&format!("/devices/{}/revoke", two.device), &cookie, "").await;
    let page = bench.page(&format!("/visits/{VISIT}/take-over"), &cookie).await.text();
    assert!(!page.contains(">Two ") && !page.contains("No key"), "{page}");
    assert_eq!(hand_over(&bench, &cookie, &two).await.status, 404);
    for device in ["4", "77", "x", ""] {
        let answer = bench.submit(&format!("/visits/{VISIT}/take-over"), &cookie, &format!("device={device}")).await;
        assert_eq!(answer.status, 404, "{device}");
    }
    assert_eq!(bench.submit(&format!("/visits/{VISIT}/take-over"), "", "device=1").await.status, 401);
    assert_eq!(bench.count("handover"), 0);
}
