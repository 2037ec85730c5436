//! What is computed for every point of a chart does not allocate.

use coilside_core::science::air;
use coilside_core::science::quantity::celsius;
use coilside_core::science::refrigerant::{CircuitReadings, Line, Refrigerant, gas_cooler_pressure, high_side};
use std::hint::black_box;
use uom::si::f64::{Length, Pressure};
use uom::si::length::meter;
use uom::si::pressure::pascal;

fn allocations(of: impl FnOnce()) -> u64 {
    allocation_counter::measure(of).count_total
}

#[test]
fn the_counter_counts() {
    assert_eq!(allocations(|| drop(black_box(vec![1_u8]))), 1);
}

#[test]
fn refrigerants_do_not_allocate() {
    let pressure = Pressure::new::<pascal>(1.2e6);
    let line = Line { gauge_pressure: pressure, temperature: celsius(20.0), altitude: Length::new::<meter>(800.0) };
    for name in Refrigerant::ALL.map(Refrigerant::as_str) {
        let counted = allocations(|| {
            let refrigerant = Refrigerant::named(black_box(name)).unwrap();
            black_box(refrigerant.saturation(celsius(20.0)).unwrap());
            black_box(refrigerant.saturation_temperatures(pressure).unwrap());
            black_box(line.superheat(refrigerant).unwrap());
            black_box(line.subcooling(refrigerant).unwrap());
            black_box(high_side(refrigerant, &line, celsius(15.0)).unwrap());
            black_box(refrigerant.dome(celsius(-20.0)).unwrap());
        });
        assert_eq!(counted, 0, "{name}");
    }
    let read = CircuitReadings {
        low_pressure: Pressure::new::<pascal>(4e5),
        high_pressure: Pressure::new::<pascal>(2e6),
        suction: celsius(3.0),
        discharge: Some(celsius(85.0)),
        liquid: celsius(50.0),
    };
    let counted = allocations(|| {
        black_box(Refrigerant::R290.cycle(&read).unwrap());
    });
    assert_eq!(counted, 0);
    let counted = allocations(|| {
        black_box(gas_cooler_pressure(celsius(0.0), celsius(40.0)).unwrap());
    });
    assert_eq!(counted, 0);
}

#[test]
fn air_does_not_allocate() {
    let pressure = Pressure::new::<pascal>(95_000.0);
    let counted = allocations(|| {
        let air = air::from_humidity(celsius(25.0), 0.5, pressure).unwrap();
        black_box(air::from_wet_bulb(celsius(25.0), air.wet_bulb, pressure).unwrap());
    });
    assert_eq!(counted, 0);
}
