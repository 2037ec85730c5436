//! Times Coilside's science on inputs that `tests/bench/run.py` gives, and returns the results, so that peers can be compared on
//! both: `coilside-bench CASE [REFRIGERANT] <numbers`, one input a line, answers `{"ns": …, "values": […]}`. The time is that of
//! one call in the fastest round over all inputs; each round calls them one after another, each result kept from being optimised
//! away.

use coilside_core::science::quantity::{celsius, to_celsius};
use coilside_core::science::refrigerant::Refrigerant;
use coilside_core::science::{ScienceError, air};
use std::error::Error;
use std::hint::black_box;
use std::io::Read;
use std::time::{Duration, Instant};
use uom::si::f64::Pressure;
use uom::si::pressure::pascal;

/// How long rounds are repeated.
const PATIENCE: Duration = Duration::from_secs(2);

/// Up to three numbers.
type Input = [f64; 3];

fn main() -> Result<(), Box<dyn Error>> {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let mut text = String::new();
    std::io::stdin().read_to_string(&mut text)?;
    let inputs = text.lines().map(input).collect::<Result<Vec<Input>, _>>()?;
    let answer = match words.as_slice() {
        ["dew_temperature", name] => {
            let refrigerant = Refrigerant::named(name)?;
            timed(&inputs, |[p, ..]| Ok(to_celsius(refrigerant.dew_temperature(Pressure::new::<pascal>(p))?)))
        }
        ["saturation", name] => {
            let refrigerant = Refrigerant::named(name)?;
            timed(&inputs, |[t_c, ..]| {
                Ok(black_box(refrigerant.saturation(celsius(t_c))?).dew_pressure.get::<pascal>())
            })
        }
        ["wet_bulb"] => timed(&inputs, |[t_c, humidity, p]| {
            Ok(to_celsius(air::wet_bulb(celsius(t_c), humidity, Pressure::new::<pascal>(p))?))
        }),
        ["air_from_humidity"] => timed(&inputs, |[t_c, humidity, p]| {
            let air = air::from_humidity(celsius(t_c), humidity, Pressure::new::<pascal>(p))?;
            Ok(to_celsius(black_box(air).wet_bulb))
        }),
        _ => return Err(format!("no such case: {}", words.join(" ")).into()),
    }?;
    println!("{answer}");
    Ok(())
}

fn input(line: &str) -> Result<Input, Box<dyn Error>> {
    let mut numbers = line.split_whitespace().map(str::parse::<f64>);
    let mut next = || numbers.next().unwrap_or(Ok(0.0));
    Ok([next()?, next()?, next()?])
}

fn timed(
    inputs: &[Input],
    one: impl Fn(Input) -> Result<f64, ScienceError>,
) -> Result<serde_json::Value, Box<dyn Error>> {
    let values = inputs.iter().map(|input| one(*input)).collect::<Result<Vec<f64>, _>>()?;
    let (begun, mut fastest) = (Instant::now(), Duration::MAX);
    while begun.elapsed() < PATIENCE {
        let round = Instant::now();
        for input in inputs {
            let _ = black_box(one(black_box(*input)));
        }
        fastest = fastest.min(round.elapsed());
    }
    Ok(serde_json::json!({ "ns": fastest.as_secs_f64() * 1e9 / inputs.len() as f64, "values": values }))
}
