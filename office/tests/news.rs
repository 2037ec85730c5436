//! What comes down: assignments, reviews, procedures, by a cursor.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

#[cfg(test)]
mod support;

use coilside_office::Digest;
use serde_json::{Value, json};
use support::visit::{Written, assignment};
use support::{Answer, Bench};

async fn news(bench: &Bench, after: &str) -> Value {
    let path = if after.is_empty() { "/news".to_owned() } else { format!("/news?after={after}") };
    let answer = bench.get(&path).await;
    assert_eq!(answer.status, 200, "{}", answer.text());
    answer.json()
}

fn cursor(news: &Value) -> &str {
    news["cursor"].as_str().unwrap()
}

fn ids(news: &Value) -> Vec<&str> {
    news["assignments"].as_array().unwrap().iter().map(|doc| doc["id"].as_str().unwrap()).collect()
}

fn nothing_in(news: &Value) -> bool {
    let empty = |name: &str| news[name].as_array().unwrap().is_empty();
    ["assignments", "withdrawn", "reviews", "packs", "handed"].into_iter().all(empty) && news["more"] == false
}

async fn say(bench: &Bench, cookie: &str, visit: &str, form: &str) -> Answer {
    bench.submit(&format!("/visits/{visit}/review"), cookie, form).await
}

#[tokio::test]
async fn an_assignment_is_told_once_and_again_when_it_changed() {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", "en"));
    let first = news(&bench, "").await;
    assert_eq!(ids(&first), ["a-1"]);
    assert_eq!(news(&bench, "").await, first, "the same cursor gives the same page");
    assert!(nothing_in(&news(&bench, cursor(&first)).await));
    bench.assign(&assignment("a-1", "Mill House", "en"));
    assert!(nothing_in(&news(&bench, cursor(&first)).await), "the same again is no news");
    bench.assign(&assignment("a-1", "Old Mill House", "en"));
    let second = news(&bench, cursor(&first)).await;
    assert_eq!(second["assignments"][0]["site"]["name"], "Old Mill House");
    assert_eq!(ids(&news(&bench, "").await), ["a-1"], "from the start it is told once, as it is now");
}

#[tokio::test]
async fn what_the_office_has_learnt_about_a_unit_makes_its_next_assignment_news() {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", "en"));
    bench.assign(&assignment("a-2", "Mill House", "en"));
    let first = news(&bench, "").await;
    let mut visit = Written::begin("visit-1", "a-1");
    visit.read("air-on-found", "17.5", "0.5");
    visit.freeze(true, &[]);
    visit.send_sealed(&bench).await;
    let second = news(&bench, cursor(&first)).await;
    assert_eq!(ids(&second), ["a-2"]);
    assert_eq!(second["assignments"][0]["units"][0]["last_service"], "2026-03-02");
    assert_eq!(second["withdrawn"], json!([]), "its own visit ended the other one");
}

#[tokio::test]
async fn an_assignment_that_is_withdrawn_or_begun_by_another_device_goes_from_the_round() {
    let mut bench = Bench::new().await;
    for id in ["a-1", "a-2", "a-3"] {
        bench.assign(&assignment(id, "Mill House", "en"));
    }
    let first = news(&bench, "").await;
    assert_eq!(ids(&first), ["a-1", "a-2", "a-3"]);
    assert!(bench.office.withdraw_assignment("a-1").unwrap());
    assert!(!bench.office.withdraw_assignment("a-9").unwrap());
    let own = std::mem::replace(&mut bench.token, bench.office.add_device("Phone two").unwrap());
    bench.send("visit-2", 0, &Written::begin("visit-2", "a-2").events).await;
    bench.token = own;
    let second = news(&bench, cursor(&first)).await;
    assert_eq!((&second["withdrawn"], ids(&second)), (&json!(["a-1", "a-2"]), vec![]));
    assert_eq!(bench.get("/assignments").await.json()["assignments"].as_array().unwrap().len(), 1);
    bench.assign(&assignment("a-1", "Mill House", "en"));
    let third = news(&bench, cursor(&second)).await;
    assert_eq!((ids(&third), &third["withdrawn"]), (vec!["a-1"], &json!([])));
}

#[tokio::test]
async fn what_the_office_says_about_a_visit_comes_down_to_its_own_device_alone() {
    let mut bench = Bench::new().await;
    let visit = Written::begin("visit-1", "a-1");
    bench.send("visit-1", 0, &visit.events).await;
    let first = news(&bench, "").await;
    let cookie = bench.sign_in().await;
    let asked = say(&bench, &cookie, "visit-1", "outcome=question&words=Which+valve%3F%0D%0AThe+left+one%3F").await;
    assert_eq!((asked.status.as_u16(), asked.header("location")), (303, "/visits/visit-1#review"));
    bench.let_pass(60_000);
    assert_eq!(say(&bench, &cookie, "visit-1", "outcome=accepted&words=").await.status, 303);
    let second = news(&bench, cursor(&first)).await;
    assert_eq!(
        second["reviews"],
        json!([
            { "visit": "visit-1", "outcome": "question", "words": "Which valve?\nThe left one?", "utc_ms": support::START_MS },
            { "visit": "visit-1", "outcome": "accepted", "words": "", "utc_ms": support::START_MS + 60_000 },
        ])
    );
    let page = bench.page("/visits/visit-1", &cookie).await.text();
    assert!(page.contains("Which valve?") && page.contains("Checked"), "{page}");
    bench.token = bench.office.add_device("Phone two").unwrap();
    assert_eq!(news(&bench, "").await["reviews"], json!([]));
}

#[tokio::test]
async fn a_question_needs_words_and_a_sign_in() {
    let bench = Bench::new().await;
    bench.send("visit-1", 0, &Written::begin("visit-1", "a-1").events).await;
    let cookie = bench.sign_in().await;
    let long = format!("outcome=question&words={}", "x".repeat(2001));
    for (cookie, form, status) in [
        (cookie.as_str(), "outcome=question&words=+", 422),
        (&cookie, &long, 422),
        (&cookie, "outcome=praised&words=x", 404),
        ("", "outcome=question&words=x", 401),
    ] {
        assert_eq!(say(&bench, cookie, "visit-1", form).await.status, status, "{form}");
    }
    assert_eq!(say(&bench, &cookie, "nowhere", "outcome=question&words=x").await.status, 404);
    assert_eq!(bench.count("review"), 0);
}

#[tokio::test]
async fn procedures_are_told_and_their_bytes_are_those_of_their_digest() {
    let bench = Bench::new().await;
    let first = news(&bench, "").await;
    let packs = first["packs"].as_array().unwrap();
    assert!(packs.iter().any(|pack| pack["id"] == support::visit::PACK), "{packs:?}");
    for pack in packs {
        let digest = pack["digest"].as_str().unwrap();
        let answer = bench.get(&format!("/packs/{digest}")).await;
        assert_eq!(Digest::of(&answer.body).to_string(), digest);
        assert_eq!(answer.body.len() as u64, pack["bytes"].as_u64().unwrap());
        let base64 =
            base64::Engine::encode(&base64::engine::general_purpose::STANDARD, Digest::of(&answer.body).as_bytes());
        assert_eq!(answer.header("repr-digest"), format!("sha-256=:{base64}:"));
    }
    assert_eq!(bench.get(&format!("/packs/{}", Digest::of(b"?"))).await.status, 404);
    assert_eq!(bench.get("/packs/nonsense").await.status, 404);
    assert!(nothing_in(&news(&bench, cursor(&first)).await));
}

#[tokio::test]
async fn many_news_come_in_pages_and_none_twice() {
    let bench = Bench::new().await;
    for n in 0..450 {
        bench.assign(&assignment(&format!("a-{n:03}"), "Mill House", "en"));
    }
    let (mut after, mut told, mut pages) = (String::new(), Vec::new(), 0);
    loop {
        let page = news(&bench, &after).await;
        told.extend(ids(&page).into_iter().map(str::to_owned));
        pages += 1;
        after = cursor(&page).to_owned();
        if page["more"] == false {
            break;
        }
    }
    assert!(pages >= 3, "{pages}");
    assert_eq!(told.len(), 450);
    told.dedup();
    assert_eq!(told.len(), 450);
    assert!(nothing_in(&news(&bench, &after).await));
}

#[tokio::test]
async fn a_cursor_that_the_office_never_gave_is_refused_or_finds_nothing() {
    let bench = Bench::new().await;
    for bad in ["-1", "x", "1.5", "%27", "99999999999999999999"] {
        let answer = bench.get(&format!("/news?after={bad}")).await;
        assert_eq!((answer.status.as_u16(), answer.header("content-type")), (400, "application/problem+json"), "{bad}");
    }
    let far = news(&bench, "999999").await;
    assert!(nothing_in(&far) && cursor(&far) == "999999");
}
