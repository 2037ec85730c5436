//! Devices join by a code, speak under tokens that end, and can be revoked.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "tests")]

#[cfg(test)]
mod support;

use p256::ecdsa::SigningKey;
use serde_json::json;
use support::{Answer, Bench, Joined, public_key, sign_as};

const MINUTE_MS: i64 = 60_000;

fn kind(answer: &Answer) -> (u16, String) {
    let kind =
        answer.json()["type"].as_str().unwrap_or_default().trim_start_matches("urn:coilside:problem:").to_owned();
    (answer.status.as_u16(), kind)
}

fn key(secret: u8) -> SigningKey {
    SigningKey::from_slice(&[secret; 32]).unwrap()
}

async fn nonce(bench: &Bench, device: &str) -> String {
    let answer = bench.call_as("", "GET", &format!("/token?device={device}"), None).await;
    assert_eq!(answer.status, 200, "{}", answer.text());
    answer.json()["nonce"].as_str().unwrap().to_owned()
}

async fn token(bench: &Bench, jws: &str) -> Answer {
    bench.call_as("", "POST", "/token", Some(json!({ "jws": jws }))).await
}

async fn revoke(bench: &Bench, cookie: &str, device: &Joined) {
    let page = bench.page(&format!("/devices/{}/revoke", device.device), cookie).await.text();
    assert!(page.contains("Nothing is lost"), "{page}");
    let answer = bench.submit(&format!("/devices/{}/revoke", device.device), cookie, "").await;
    assert_eq!((answer.status.as_u16(), answer.header("location")), (303, "/devices"));
}

#[tokio::test]
async fn a_code_lets_one_device_in_once_whatever_way_it_is_typed() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let code = bench.new_code(&cookie, "Ines").await;
    let typed = code.to_lowercase().replace('-', " ");
    let answer = bench.join(&typed, &key(1), "Ines's phone").await;
    assert_eq!(answer.status, 201, "{}", answer.text());
    let said = answer.json();
    assert_eq!(said["expires_utc_ms"].as_i64(), Some(support::START_MS + 12 * 60 * MINUTE_MS));
    let token = said["token"].as_str().unwrap();
    assert_eq!(bench.call_as(token, "GET", "/news", None).await.status, 200);
    assert_eq!(kind(&bench.join(&code, &key(2), "Another").await), (403, "join-code".into()));
    // The office vouches for its key from then on (issue 6: records name the office's certificate).
    assert_eq!(bench.count("device WHERE certificate IS NOT NULL AND name = 'Ines'"), 1);
}

#[tokio::test]
async fn a_code_holds_for_ten_minutes_and_a_wrong_one_is_answered_as_an_old_one() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let (early, late) = (bench.new_code(&cookie, "A").await, bench.new_code(&cookie, "B").await);
    bench.let_pass(10 * MINUTE_MS - 1);
    assert_eq!(bench.join(&early, &key(1), "A").await.status, 201);
    bench.let_pass(1);
    let (old, wrong) = (bench.join(&late, &key(2), "B").await, bench.join("0000-0000", &key(2), "B").await);
    assert_eq!(kind(&old), (403, "join-code".into()));
    assert_eq!(old.text(), wrong.text());
}

#[tokio::test]
async fn only_a_codes_hash_is_kept() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let code = bench.new_code(&cookie, "Ines").await;
    let stored: Vec<u8> = bench.db().query_row("SELECT hash FROM join_code", [], |row| row.get(0)).unwrap();
    assert_eq!(stored, coilside_office::Digest::of(code.replace('-', "").as_bytes()).as_bytes());
}

#[tokio::test]
async fn after_ten_wrong_codes_in_a_minute_nobody_joins_for_a_while() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let code = bench.new_code(&cookie, "Ines").await;
    for n in 0..10 {
        assert_eq!(bench.join(&format!("{n:08}"), &key(1), "A").await.status, 403, "{n}");
        bench.let_pass(1000);
    }
    let answer = bench.join(&code, &key(1), "Ines's phone").await;
    assert_eq!(kind(&answer), (429, "join-code".into()));
    let after_s: i64 = answer.header("retry-after").parse().unwrap();
    assert!((1..=60).contains(&after_s), "{after_s}");
    bench.let_pass(after_s * 1000);
    assert_eq!(bench.join(&code, &key(1), "Ines's phone").await.status, 201);
}

#[tokio::test]
async fn what_is_no_key_or_no_name_uses_no_code_up() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let code = bench.new_code(&cookie, "Ines").await;
    for body in [
        json!({ "code": code, "public_key": "04ab", "name": "phone" }),
        json!({ "code": code, "public_key": public_key(&key(1)), "name": " " }),
    ] {
        assert_eq!(bench.call_as("", "POST", "/join", Some(body)).await.status, 422);
    }
    assert_eq!(bench.join(&code, &key(1), "phone").await.status, 201);
}

#[tokio::test]
async fn a_known_key_joins_as_the_same_device_and_its_earlier_tokens_end() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let first = bench.joined(&cookie, "Ines", 1).await;
    let again = bench.joined(&cookie, "Ines+F", 1).await;
    assert_eq!(first.device, again.device);
    assert_eq!(bench.call_as(&first.token, "GET", "/news", None).await.status, 401);
    assert_eq!(bench.call_as(&again.token, "GET", "/news", None).await.status, 200);
    assert_eq!(bench.count("device WHERE name = 'Ines F'"), 1);
}

#[tokio::test]
async fn a_token_ends_after_twelve_hours_and_the_key_gets_another_one() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let device = bench.joined(&cookie, "Ines", 1).await;
    bench.let_pass(12 * 60 * MINUTE_MS - 1);
    assert_eq!(bench.call_as(&device.token, "GET", "/news", None).await.status, 200);
    bench.let_pass(1);
    let ended = bench.call_as(&device.token, "GET", "/news", None).await;
    assert_eq!(kind(&ended), (401, "token".into()));
    let answer = token(&bench, &device.proof(&nonce(&bench, &device.device).await)).await;
    assert_eq!(answer.status, 200, "{}", answer.text());
    let fresh = answer.json()["token"].as_str().unwrap().to_owned();
    assert_eq!(bench.call_as(&fresh, "GET", "/news", None).await.status, 200);
}

#[tokio::test]
async fn a_nonce_gives_one_token_within_five_minutes_to_its_own_device() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let (one, two) = (bench.joined(&cookie, "One", 1).await, bench.joined(&cookie, "Two", 2).await);
    let used = nonce(&bench, &one.device).await;
    assert_eq!(token(&bench, &one.proof(&used)).await.status, 200);
    assert_eq!(kind(&token(&bench, &one.proof(&used)).await), (401, "token".into()), "used twice");
    let others = nonce(&bench, &two.device).await;
    assert_eq!(kind(&token(&bench, &one.proof(&others)).await), (401, "token".into()), "another device's");
    let old = nonce(&bench, &one.device).await;
    bench.let_pass(5 * MINUTE_MS);
    assert_eq!(kind(&token(&bench, &one.proof(&old)).await), (401, "token".into()), "too old");
    assert_eq!(kind(&token(&bench, &one.proof("made-up")).await), (401, "token".into()));
    // Asking writes nothing.
    assert_eq!(bench.count("used_nonce"), 1);
}

#[tokio::test]
async fn a_proof_by_another_key_or_for_somebody_else_gives_no_token() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let device = bench.joined(&cookie, "Ines", 1).await;
    let fresh = nonce(&bench, &device.device).await;
    let said = json!({ "aud": "coilside-office", "device": device.device, "nonce": fresh });
    let foreign = sign_as(&key(9), "coilside-token+json", &said);
    assert_eq!(kind(&token(&bench, &foreign).await), (401, "token".into()));
    let elsewhere = json!({ "aud": "another-office", "device": device.device, "nonce": fresh });
    let elsewhere = sign_as(&device.key, "coilside-token+json", &elsewhere);
    assert_eq!(kind(&token(&bench, &elsewhere).await), (422, "proof".into()));
    assert_eq!(kind(&token(&bench, "a.b.c").await), (422, "proof".into()));
    assert_eq!(token(&bench, &device.proof(&fresh)).await.status, 200, "none of them used the nonce up");
}

#[tokio::test]
async fn a_device_that_nobody_knows_gets_nothing_to_sign() {
    let bench = Bench::new().await;
    for device in ["", "99", "x", "-1", "1'"] {
        let answer = bench.call_as("", "GET", &format!("/token?device={device}"), None).await;
        assert_eq!(kind(&answer), (401, "token".into()), "{device}");
    }
    assert_eq!(bench.call_as("", "GET", "/token", None).await.status, 401);
}

#[tokio::test]
async fn a_revoked_device_is_told_so_at_every_call_and_can_join_again() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let device = bench.joined(&cookie, "Ines", 1).await;
    let fresh = nonce(&bench, &device.device).await;
    revoke(&bench, &cookie, &device).await;
    for (method, path) in [
        ("GET", "/news"),
        ("GET", "/assignments"),
        ("POST", "/visits/v/events"),
        ("PUT", "/visits/v/seal"),
        ("PUT", "/device"),
        ("GET", "/visits/v/events"),
        ("POST", "/photos"),
    ] {
        let answer = bench.call_as(&device.token, method, path, None).await;
        assert_eq!(kind(&answer), (403, "revoked".into()), "{method} {path}");
    }
    let path = format!("/token?device={}", device.device);
    assert_eq!(kind(&bench.call_as("", "GET", &path, None).await), (403, "revoked".into()));
    assert_eq!(kind(&token(&bench, &device.proof(&fresh)).await), (403, "revoked".into()));
    let again = bench.joined(&cookie, "Ines", 1).await;
    assert_eq!(again.device, device.device);
    assert_eq!(bench.call_as(&again.token, "GET", "/news", None).await.status, 200);
}

#[tokio::test]
async fn a_token_that_never_ends_is_revoked_too() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let answer = bench.submit("/devices/1/revoke", &cookie, "").await;
    assert_eq!(answer.status, 303);
    assert_eq!(kind(&bench.get("/news").await), (403, "revoked".into()));
}

#[tokio::test]
async fn the_pages_of_devices_need_a_sign_in_and_the_links_page_none() {
    let bench = Bench::new().await;
    assert_eq!(bench.page("/devices", "").await.status, 401);
    assert_eq!(bench.submit("/devices/join", "", "name=x").await.status, 401);
    assert_eq!(bench.submit("/devices/1/revoke", "", "").await.status, 401);
    assert_eq!((bench.count("join_code"), bench.get("/news").await.status.as_u16()), (0, 200));
    for language in ["en", "es"] {
        let page = bench.page(&format!("/join?lang={language}"), "").await;
        assert_eq!(page.status, 200);
        assert!(page.text().contains("Coilside") && !page.text().contains("office-"), "{}", page.text());
    }
}

#[tokio::test]
async fn the_code_is_shown_to_scan_to_type_and_as_a_link_without_a_script() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    for (language, minutes) in [("en", "minutes left, of ten"), ("es", "minutos quedan, de diez")] {
        let page = bench.submit(&format!("/devices/join?lang={language}"), &cookie, "name=In%C3%A9s").await.text();
        let (_, code) = page.split_once("class=\"letters\">").unwrap();
        let code = &code[..9];
        for wanted in ["<svg class=\"qr\"", &format!("http://office.test/join#{code}"), "Inés", minutes] {
            assert!(page.contains(wanted), "no '{wanted}' in {page}");
        }
        assert!(!page.contains("<script") && !page.contains("style="), "{page}");
    }
    assert_eq!(bench.submit("/devices/join", &cookie, "name=+").await.status, 422);
    bench.office.set_address("https://office.example/").unwrap();
    let page = bench.submit("/devices/join", &cookie, "name=x").await.text();
    assert!(page.contains("https://office.example/join#"), "{page}");
}

#[tokio::test]
async fn the_list_of_devices_tells_whose_they_are_and_which_are_revoked() {
    let bench = Bench::new().await;
    let cookie = bench.sign_in().await;
    let device = bench.joined(&cookie, "Ines+Fallow", 1).await;
    bench.call_as(&device.token, "GET", "/news", None).await;
    bench.let_pass(3 * MINUTE_MS);
    let page = bench.page("/devices", &cookie).await.text();
    for wanted in ["Ines Fallow", "2 March 2026", "3 min ago", "Not known", "Nothing that is known", "Revoke"] {
        assert!(page.contains(wanted), "no '{wanted}' in {page}");
    }
    revoke(&bench, &cookie, &device).await;
    for (language, word) in [("en", "Revoked"), ("es", "Revocado")] {
        let page = bench.page(&format!("/devices?lang={language}"), &cookie).await.text();
        assert!(page.contains(word) && !page.contains("office-"), "{page}");
    }
    assert_eq!(bench.page("/devices/77/revoke", &cookie).await.status, 404);
}
