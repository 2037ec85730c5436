//! Events arrive once, in order, and nothing that contradicts is dropped.

#[cfg(test)]
mod support;

use support::{Bench, chain, head};

const VISIT: &str = "visit-1";

#[tokio::test]
async fn events_sent_twice_are_stored_once() {
    let bench = Bench::new().await;
    let events = chain(VISIT, &["a", "b", "c"]);
    for _ in 0..2 {
        let answer = bench.send(VISIT, 0, &events).await;
        assert_eq!(answer.status, 200, "{}", answer.text());
        assert_eq!(answer.json()["next"], 3);
        assert_eq!(answer.json()["head"], head(&events));
    }
    assert_eq!(bench.count("event"), 3);
}

#[tokio::test]
async fn events_that_overlap_what_is_stored_add_only_the_new_ones() {
    let bench = Bench::new().await;
    let events = chain(VISIT, &["a", "b", "c", "d"]);
    assert_eq!(bench.send(VISIT, 0, &events[..2]).await.status, 200);
    let answer = bench.send(VISIT, 1, &events[1..]).await;
    assert_eq!((answer.status.as_u16(), answer.json()["next"].as_u64()), (200, Some(4)));
    assert_eq!(bench.count("event"), 4);
}

#[tokio::test]
async fn stored_events_are_the_bytes_that_were_sent() {
    let bench = Bench::new().await;
    let events = chain(VISIT, &["ñandú — 45 °C", "\u{1F4A7}"]);
    bench.send(VISIT, 0, &events).await;
    let db = bench.db();
    let mut query = db.prepare("SELECT bytes FROM event ORDER BY seq").unwrap();
    let stored: Vec<Vec<u8>> = query.query_map([], |row| row.get(0)).unwrap().collect::<Result<_, _>>().unwrap();
    assert_eq!(stored, events.iter().map(|event| event.clone().into_bytes()).collect::<Vec<_>>());
}

#[tokio::test]
async fn a_gap_is_refused_with_the_number_wanted_next() {
    let bench = Bench::new().await;
    let events = chain(VISIT, &["a", "b", "c"]);
    bench.send(VISIT, 0, &events[..1]).await;
    let answer = bench.send(VISIT, 2, &events[2..]).await;
    assert_eq!(answer.status, 409);
    assert_eq!(answer.header("content-type"), "application/problem+json");
    assert_eq!(answer.json()["type"], "urn:coilside:problem:gap");
    assert_eq!(answer.json()["next"], 1);
    assert_eq!(answer.json()["head"], head(&events[..1]));
    assert_eq!(bench.count("event"), 1);
}

#[tokio::test]
async fn a_conflicting_branch_is_refused_and_kept_beside_the_chain() {
    let bench = Bench::new().await;
    let stored = chain(VISIT, &["a", "b", "c"]);
    let other = chain(VISIT, &["a", "B", "C"]);
    bench.send(VISIT, 0, &stored).await;
    for _ in 0..2 {
        let answer = bench.send(VISIT, 0, &other).await;
        assert_eq!(answer.status, 409);
        assert_eq!(answer.json()["conflict_at"], 1);
        assert_eq!(answer.json()["kept"], 3);
        assert_eq!(answer.json()["head"], head(&stored));
    }
    assert_eq!((bench.count("event"), bench.count("branch")), (3, 2));
    // The chain goes on as if nothing had been.
    let longer = chain(VISIT, &["a", "b", "c", "d"]);
    assert_eq!(bench.send(VISIT, 3, &longer[3..]).await.status, 200);
}

#[tokio::test]
async fn a_later_part_of_another_branch_is_a_conflict_too() {
    let bench = Bench::new().await;
    bench.send(VISIT, 0, &chain(VISIT, &["a"])).await;
    let other = chain(VISIT, &["A", "B"]);
    let answer = bench.send(VISIT, 1, &other[1..]).await;
    assert_eq!((answer.status.as_u16(), answer.json()["conflict_at"].as_u64()), (409, Some(1)));
    assert_eq!((bench.count("event"), bench.count("branch")), (1, 1));
}

#[tokio::test]
async fn events_and_branches_cannot_be_changed_or_removed() {
    let bench = Bench::new().await;
    bench.send(VISIT, 0, &chain(VISIT, &["a"])).await;
    bench.send(VISIT, 0, &chain(VISIT, &["b"])).await;
    let db = bench.db();
    for table in ["event", "branch"] {
        assert!(db.execute(&format!("UPDATE {table} SET bytes = x'00'"), []).is_err(), "{table}");
        assert!(db.execute(&format!("DELETE FROM {table}"), []).is_err(), "{table}");
    }
}

#[tokio::test]
async fn what_is_no_chain_of_this_visit_is_refused_whole() {
    let bench = Bench::new().await;
    let good = chain(VISIT, &["a", "b"]);
    let mut broken = good.clone();
    broken[1] = broken[1].replace(&head(&good[..1]), &"1".repeat(64));
    for events in [chain("visit-2", &["a"]), vec!["<html>200 OK</html>".into()], broken] {
        assert_eq!(bench.send(VISIT, 0, &events).await.status, 422, "{events:?}");
    }
    assert_eq!(bench.send("a%2Fb", 0, &good).await.status, 404);
    assert_eq!(bench.post("/visits/visit-1/events", "nonsense".into()).await.status, 400);
    assert_eq!(bench.count("event"), 0);
}

#[tokio::test]
async fn a_stranger_is_turned_away_before_anything_is_read() {
    let mut bench = Bench::new().await;
    bench.token = "not-a-token".into();
    let answer = bench.send(VISIT, 0, &chain(VISIT, &["a"])).await;
    assert_eq!((answer.status.as_u16(), answer.header("www-authenticate")), (401, "Bearer"));
    assert_eq!(bench.count("event"), 0);
}

#[tokio::test]
async fn another_device_cannot_add_to_a_visit() {
    let mut bench = Bench::new().await;
    let events = chain(VISIT, &["a", "b"]);
    bench.send(VISIT, 0, &events[..1]).await;
    bench.token = bench.office.add_device("Phone two").unwrap();
    assert_eq!(bench.send(VISIT, 1, &events[1..]).await.status, 403);
    assert_eq!(bench.count("event"), 1);
}

#[tokio::test]
async fn what_was_acknowledged_is_there_after_reopening() {
    let bench = Bench::new().await;
    let events = chain(VISIT, &["a", "b"]);
    bench.send(VISIT, 0, &events).await;
    let bench = bench.reopened();
    let answer = bench.send(VISIT, 2, &[]).await;
    assert_eq!((answer.json()["next"].as_u64(), answer.json()["head"].as_str()), (Some(2), Some(&*head(&events))));
}

#[tokio::test]
async fn tokens_are_stored_as_hashes_only() {
    let bench = Bench::new().await;
    let db = bench.db();
    let stored: Vec<u8> = db.query_row("SELECT token_hash FROM device", [], |row| row.get(0)).unwrap();
    assert_eq!(stored, coilside_office::Digest::of(bench.token.as_bytes()).as_bytes());
}
