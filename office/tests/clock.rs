//! Devices' clocks: noted, and set right beside what they showed.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

#[cfg(test)]
mod support;

use axum::body::Body;
use serde_json::json;
use support::visit::{Written, assignment};
use support::{Answer, Bench, START_MS};

async fn send(bench: &Bench, visit: &Written, clock_ms: i64) -> Answer {
    let body = json!({ "first": 0, "events": visit.events }).to_string();
    let request = bench.request("POST", &format!("/visits/{}/events", visit.id));
    bench.call(request.header("coilside-clock", clock_ms).body(Body::from(body)).unwrap()).await
}

async fn ask(bench: &Bench, clock_ms: i64) {
    let request = bench.request("GET", "/news").header("coilside-clock", clock_ms);
    assert_eq!(bench.call(request.body(Body::empty()).unwrap()).await.status, 200);
}

#[tokio::test]
async fn every_answer_tells_what_the_offices_clock_shows() {
    let bench = Bench::new().await;
    bench.let_pass(77);
    for (method, path) in [("GET", "/news"), ("GET", "/nowhere"), ("DELETE", "/news"), ("OPTIONS", "/photos")] {
        let answer = bench.call_as(&bench.token, method, path, None).await;
        assert_eq!(answer.header("coilside-clock"), (START_MS + 77).to_string(), "{method} {path}");
    }
    assert_eq!(bench.call_as("", "GET", "/news", None).await.header("coilside-clock"), (START_MS + 77).to_string());
}

#[tokio::test]
async fn a_devices_clock_is_noted_once_and_again_when_it_jumps() {
    let bench = Bench::new().await;
    for _ in 0..5 {
        bench.let_pass(1_000);
        ask(&bench, START_MS).await;
    }
    assert_eq!(bench.count("device_clock"), 1, "within two seconds of each other, or held up on the way");
    // Put forward by an hour.
    bench.let_pass(1_000);
    ask(&bench, START_MS + 3_606_000).await;
    assert_eq!(bench.count("device_clock"), 2);
    let behind: i64 = bench
        .db()
        .query_row("SELECT behind_ms FROM device_clock ORDER BY noted_ms DESC LIMIT 1", [], |row| row.get(0))
        .unwrap();
    assert_eq!(behind, -3_600_000);
    let cookie = bench.sign_in().await;
    assert!(bench.page("/devices", &cookie).await.text().contains("1 h 0 min ahead"));
    assert!(bench.page("/devices?lang=es", &cookie).await.text().contains("Adelantado 1 h 0 min"));
}

#[tokio::test]
async fn what_a_device_says_of_its_clock_is_read_or_left_alone() {
    let bench = Bench::new().await;
    for nonsense in ["", "soon", "1e9", "99999999999999999999", "-9223372036854775808"] {
        let request = bench.request("GET", "/news").header("coilside-clock", nonsense);
        assert_eq!(bench.call(request.body(Body::empty()).unwrap()).await.status, 200, "{nonsense}");
    }
    assert_eq!(bench.count("device_clock"), 0);
}

#[tokio::test]
async fn times_by_the_offices_clock_stand_beside_those_of_a_clock_that_was_wrong() {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", "en"));
    let visit = Written::begin("visit-1", "a-1");
    // The visit's events say 08:01 and 08:02 of UTC, which is two hours later there; the clock is 90 minutes ahead.
    bench.let_pass(10 * 60_000);
    let answer = send(&bench, &visit, START_MS + 100 * 60_000).await;
    assert_eq!(answer.status, 200, "{}", answer.text());
    let cookie = bench.sign_in().await;
    let page = bench.page("/visits/visit-1", &cookie).await.text();
    for wanted in ["10:01", "(office 08:31)", "(office 08:32)", "The device's clock was wrong", "By 1 h 30 min ahead."]
    {
        assert!(page.contains(wanted), "no '{wanted}' in {page}");
    }
    let page = bench.page("/visits/visit-1?lang=es", &cookie).await.text();
    assert!(page.contains("(oficina 08:31)") && page.contains("Adelantado 1 h 30 min."), "{page}");
}

#[tokio::test]
async fn a_clock_that_is_wrong_by_less_than_a_minute_is_not_spoken_of() {
    let bench = Bench::new().await;
    let visit = Written::begin("visit-1", "a-1");
    assert_eq!(send(&bench, &visit, START_MS + 59_000).await.status, 200);
    let cookie = bench.sign_in().await;
    let page = bench.page("/visits/visit-1", &cookie).await.text();
    assert!(!page.contains("(office") && !page.contains("clock was wrong"), "{page}");
}

#[tokio::test]
async fn what_a_clock_showed_when_the_events_came_counts_not_what_it_shows_now() {
    let bench = Bench::new().await;
    let visit = Written::begin("visit-1", "a-1");
    assert_eq!(send(&bench, &visit, START_MS - 600_000).await.status, 200);
    // Set right since.
    for _ in 0..9 {
        bench.let_pass(60_000);
        let now = bench.office_now();
        ask(&bench, now).await;
    }
    let cookie = bench.sign_in().await;
    let page = bench.page("/visits/visit-1", &cookie).await.text();
    assert!(page.contains("By 10 min 0 s behind.") && page.contains("(office 10:11)"), "{page}");
    assert!(bench.page("/devices", &cookie).await.text().contains("Right"));
}
