//! A seal is taken only when it holds for the device and the chain.

#[cfg(test)]
mod support;

use coilside_core::round::{News, OwnInstrument, Technician};
use p256::ecdsa::SigningKey;
use serde_json::json;
use support::{Bench, chain, payload, sign};

const VISIT: &str = "visit-1";

#[tokio::test]
async fn a_seal_that_holds_is_taken_and_may_be_repeated() {
    let bench = Bench::new().await;
    let events = chain(VISIT, &["a", "b"]);
    bench.send(VISIT, 0, &events).await;
    for _ in 0..2 {
        let answer = bench.seal(VISIT, &events, true).await;
        assert_eq!(answer.status, 200, "{}", answer.text());
        assert_eq!(answer.json()["sealed"], true);
    }
}

#[tokio::test]
async fn a_seal_before_its_events_is_refused_until_they_came() {
    let bench = Bench::new().await;
    let events = chain(VISIT, &["a", "b"]);
    bench.send(VISIT, 0, &events[..1]).await;
    let answer = bench.seal(VISIT, &events, true).await;
    assert_eq!((answer.status.as_u16(), answer.json()["next"].as_u64()), (409, Some(1)));
    bench.send(VISIT, 1, &events[1..]).await;
    assert_eq!(bench.seal(VISIT, &events, true).await.status, 200);
}

#[tokio::test]
async fn a_seal_of_another_chain_key_visit_or_content_is_refused() {
    let bench = Bench::new().await;
    let events = chain(VISIT, &["a", "b"]);
    bench.send(VISIT, 0, &events).await;
    assert_eq!(bench.seal(VISIT, &chain(VISIT, &["a", "B"]), true).await.status, 409);

    let payload = payload(VISIT, &events, true);
    let stranger = SigningKey::from_slice(&[9; 32]).unwrap();
    let path = format!("/visits/{VISIT}/seal");
    let body = json!({ "jws": sign(&stranger, &payload), "public_key": bench.public_key() });
    assert_eq!(bench.put(&path, body).await.status, 422);
    let strangers = support::hex(stranger.verifying_key().to_sec1_point(false).as_bytes());
    let body = json!({ "jws": sign(&stranger, &payload), "public_key": strangers });
    assert_eq!(bench.put(&path, body).await.status, 403);

    let other = support::payload("visit-2", &events, true);
    let body = json!({ "jws": sign(&bench.key, &other), "public_key": bench.public_key() });
    assert_eq!(bench.put(&path, body).await.status, 422);

    assert_eq!(bench.seal(VISIT, &events, true).await.status, 200);
    assert_eq!(bench.seal(VISIT, &events, false).await.status, 409);
    assert_eq!(bench.seal(VISIT, &events, true).await.status, 200);
}

#[tokio::test]
async fn a_device_without_a_key_cannot_seal() {
    let bench = Bench::without_key();
    let events = chain(VISIT, &["a"]);
    bench.send(VISIT, 0, &events).await;
    assert_eq!(bench.seal(VISIT, &events, true).await.status, 409);
}

#[tokio::test]
async fn the_first_key_of_a_device_stays() {
    let bench = Bench::new().await;
    let again = json!({ "public_key": bench.public_key(), "name": "Phone one" });
    assert_eq!(bench.put("/device", again).await.status, 200);
    let other = SigningKey::from_slice(&[9; 32]).unwrap();
    let other = support::hex(other.verifying_key().to_sec1_point(false).as_bytes());
    assert_eq!(bench.put("/device", json!({ "public_key": other, "name": "Phone one" })).await.status, 409);
    assert_eq!(bench.put("/device", json!({ "public_key": "00", "name": "Phone one" })).await.status, 422);
}

#[tokio::test]
async fn assignments_are_handed_out_as_they_were_put() {
    let bench = Bench::new().await;
    let doc = json!({ "id": "a-1", "due": "2026-03-02", "site": { "name": "Guest house" } });
    bench.office.put_assignment(&doc).unwrap();
    assert_eq!(bench.get("/assignments").await.json(), json!({ "assignments": [doc] }));
    assert!(bench.office.put_assignment(&json!({ "due": "2026-03-02" })).is_err());
}

#[tokio::test]
async fn a_technicians_instruments_go_out_with_the_assignments_to_their_own_devices_only() {
    let bench = Bench::new().await;
    let own = OwnInstrument {
        kind: "ph-meter".into(),
        name: "Pocket pH meter".into(),
        serial: "PH-1".into(),
        error_limit: "0.1".into(),
        calibrated_until: "2026-01-31".into(),
    };
    let technician = Technician { name: "I. Fallow".into(), instruments: vec![own], ..Technician::default() };
    bench.office.put_technician("Somebody else's phone", &technician).unwrap();
    assert_eq!(bench.get("/assignments").await.json(), json!({ "assignments": [] }));
    bench.office.put_technician("Phone one", &technician).unwrap();
    let news: News = serde_json::from_value(bench.get("/assignments").await.json()).unwrap();
    assert_eq!(news.technician, Some(technician));
}
