//! Pairs of functions that lead back to where they began, through the border.

use crate::draw::Draw;
use coilside_core::science::exports::{air, electrical, exchanger, heat, scaling, surroundings};

const POINTS: usize = 2000;

fn near(got: f64, wanted: f64, share: f64) {
    assert!((got - wanted).abs() <= share * wanted.abs(), "got {got}, wanted {wanted}");
}

#[test]
fn the_dew_point_leads_back_to_the_humidity() {
    let mut draw = Draw::seeded("dew point");
    for _ in 0..POINTS {
        let (dry_c, rh, pa) = (draw.between(-50.0, 60.0), draw.between(0.001, 1.0), draw.between(5e4, 1.2e5));
        let dew_c = air::air_from_humidity(dry_c, rh, pa).unwrap().dew_point_c;
        let pressure = |c| surroundings::water_vapour_pressure_pa(c).unwrap();
        near(pressure(dew_c) / pressure(dry_c), rh, 1e-9);
    }
}

#[test]
fn a_display_step_is_limits_of_half_a_step() {
    let mut draw = Draw::seeded("step");
    for _ in 0..POINTS {
        let step = draw.between(0.0, 1000.0);
        let limits = heat::uncertainty_from_limits(step / 2.0).unwrap();
        near(heat::uncertainty_from_resolution(step).unwrap(), limits, 1e-14);
    }
}

#[test]
fn both_scaling_indices_tell_the_same_saturation() {
    let mut draw = Draw::seeded("scaling");
    for _ in 0..POINTS {
        let (ph, c) = (draw.between(4.0, 11.0), draw.between(0.0, 95.0));
        let (ca, alk, tds) = (draw.between(1.0, 2000.0), draw.between(1.0, 2000.0), draw.between(1.0, 10_000.0));
        let langelier = scaling::langelier_index(ph, c, ca, alk, tds).unwrap();
        let ryznar = scaling::ryznar_index(ph, c, ca, alk, tds).unwrap();
        assert!((ryznar - (ph - 2.0 * langelier)).abs() < 1e-12);
    }
}

#[test]
fn conductance_times_mean_difference_is_the_heat() {
    let mut draw = Draw::seeded("heat");
    for _ in 0..POINTS {
        let (cold_in, gap, rise) = (draw.between(-40.0, 80.0), draw.between(0.02, 40.0), draw.between(0.0, 30.0));
        let (hot_out, hot_in, cold_out) =
            (cold_in + gap, cold_in + gap + rise, cold_in + rise * draw.between(0.0, 0.9));
        let watts = draw.between(0.0, 1e6);
        let ua = exchanger::ua_w_k(watts, hot_in, hot_out, cold_in, cold_out).unwrap();
        near(ua * exchanger::lmtd_k(hot_in, hot_out, cold_in, cold_out).unwrap(), watts, 1e-12);
    }
}

#[test]
fn insulation_brought_to_40_c_can_be_brought_back() {
    let mut draw = Draw::seeded("insulation");
    for _ in 0..POINTS {
        let (mohm, c) = (draw.between(0.0, 3e4), draw.between(30.0, 50.0));
        let there = electrical::insulation_at_40c_mohm(mohm, c).unwrap();
        near(electrical::insulation_at_40c_mohm(there, 80.0 - c).unwrap(), mohm, 1e-12);
    }
}
