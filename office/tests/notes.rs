//! What stands in a record beside its gaps, as the office and the owner read it.

#[cfg(test)]
mod support;

use coilside_core::procedure::danger::Danger;
use coilside_core::procedure::mixing::{MixNote, Said};
use coilside_core::visit::event::{Body, Own, Severity};
use support::Bench;
use support::visit::{Written, assignment};

async fn begun() -> (Bench, Written) {
    let bench = Bench::new().await;
    bench.assign(&assignment("a-1", "Mill House", "en"));
    (bench, Written::begin("visit-1", "a-1"))
}

async fn page(bench: &Bench, language: &str) -> String {
    let cookie = bench.sign_in().await;
    bench.page(&format!("/visits/visit-1?lang={language}"), &cookie).await.text().replace('\u{a0}', " ")
}

async fn summary(bench: &Bench) -> String {
    bench.page(&bench.summary_path("visit-1"), "").await.text().replace('\u{a0}', " ")
}

fn noted(visit: &mut Written) {
    visit.add(Body::MixMade {
        unit: "A".into(),
        mix: "descaler".into(),
        chemical: "descaler".into(),
        water_l: "2.000".into(),
        concentrate: "0.200".into(),
        measure: "L".into(),
        notes: vec![MixNote::LabelContradicts { by: Said::Parts, other: Said::Cups, asks: "0.100".into() }],
    });
    let own =
        Own { name: "Pocket meter".into(), serial: "PH-1".into(), calibrated_until: "2026-01-31".into(), lapsed: true };
    visit.add(Body::ReadingTaken {
        letter: "A".into(),
        reading: "supply-ph".into(),
        value: "7.4".into(),
        measure: "[pH]".into(),
        typed: "7.4".into(),
        instrument: "ph-meter".into(),
        error_limit: "0.1".into(),
        unusual: false,
        own: Some(own),
    });
    visit.add(Body::ExcursionOpened {
        unit: "A".into(),
        excursion: "set-point".into(),
        home: "55 °C".into(),
        away: "40 °C".into(),
        reason: "Owner was away".into(),
    });
    visit.add(Body::ExcursionHome {
        unit: "A".into(),
        excursion: "set-point".into(),
        shows: "50 °C".into(),
        answered: "Owner wants 50".into(),
    });
}

#[tokio::test]
async fn a_contradicting_label_a_lapsed_instrument_and_an_odd_read_back_stand_on_the_visits_page() {
    let (bench, mut visit) = begun().await;
    noted(&mut visit);
    visit.freeze(true, &[]);
    visit.send_sealed(&bench).await;
    let english = page(&bench, "en").await;
    for wanted in [
        "The label contradicts itself: by its parts it takes 200 mL, by its cups to the bucket 100 mL.",
        "Measured with Pocket meter (PH-1): its calibration ended on 2026-01-31.",
        "calibration ended on 2026-01-31",
        "was 55 °C, now shows 50 °C. Reason: Owner wants 50",
        "Owner was away",
        "Back, reads otherwise",
        "2.0 L",
    ] {
        assert!(english.contains(wanted), "no '{wanted}' in {english}");
    }
    let spanish = page(&bench, "es").await;
    for wanted in ["La etiqueta se contradice", "calibración terminada el 2026-01-31", "Mezclas"] {
        assert!(spanish.contains(wanted), "no '{wanted}' in {spanish}");
    }
    assert!(english.contains("Complete"), "a note leaves the record complete");
    assert!(summary(&bench).await.contains("now shows 50 °C"), "the owner is told of the setting");
}

#[tokio::test]
async fn a_mended_finding_is_told_as_mended_and_the_unit_as_safe() {
    let (bench, mut visit) = begun().await;
    visit.find(Severity::Unsafe, "Cable chafed through.");
    visit.add(Body::FindingMended { unit: "A".into(), finding: 0, words: "New cable.".into() });
    visit.freeze(true, &[]);
    visit.send_sealed(&bench).await;
    assert!(page(&bench, "en").await.contains("Mended: New cable."));
    let owner = summary(&bench).await;
    assert!(owner.contains("Yes. What was unsafe is mended"), "{owner}");
    assert!(owner.contains("Cable chafed through. Mended: New cable."), "{owner}");
    assert!(!owner.contains("Do not use the unit."), "{owner}");
}

/// What the owner reads first after a break-off that left these dangers.
async fn broken_off(dangers: &[Danger]) -> (String, String) {
    let (bench, mut visit) = begun().await;
    visit.add(Body::BrokenOff { reason: "Called away".into(), dangers: dangers.to_vec() });
    visit.freeze(false, &[]);
    visit.send_sealed(&bench).await;
    (summary(&bench).await, page(&bench, "en").await)
}

#[tokio::test]
async fn a_break_off_that_leaves_danger_behind_says_so_to_the_owner_and_the_office() {
    let (owner, office) = broken_off(&[Danger::AcidPastValves, Danger::LeftUntagged]).await;
    assert!(owner.contains("could not be left safe"), "{owner}");
    assert!(office.contains("no lock and tag hang on the isolator"), "{office}");
    let (owner, _) = broken_off(&[Danger::LeftUntagged]).await;
    assert!(owner.contains("Nobody may switch the unit on") && !owner.contains("could not be left safe"), "{owner}");
    let (owner, _) = broken_off(&[]).await;
    assert!(owner.contains("Leave the unit switched off until we come back."), "{owner}");
}
