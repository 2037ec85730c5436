//! Readings: typed text becomes a value with its unit, or a clear reason why not.

use super::{Circumstances, Decision, Refusal, words};
use crate::evidence::plate::alike;
use crate::procedure::measure::Units;
use crate::procedure::pack::{MODEL_ROLE, Quantity, Reading, SERIAL_ROLE};
use crate::visit::event::{Body, Own};
use crate::visit::state::Visit;
use crate::words::number;

/// The longest text of a read-off, characters.
const TEXT_MAX: usize = 200;

fn find<'a>(field: &str, around: &Circumstances<'a>) -> Result<&'a Reading, Refusal> {
    field
        .strip_prefix("read:")
        .and_then(|id| around.pack.reading(id))
        .ok_or_else(|| Refusal::NoSuch { name: field.to_owned() })
}

pub(super) fn enter(
    visit: &Visit,
    field: &str,
    typed: &str,
    confirmed: bool,
    around: &Circumstances<'_>,
) -> Result<Decision, Refusal> {
    let reading = find(field, around)?;
    let (value, unusual) = if reading.quantity == Quantity::Text {
        let text: String = typed.trim().chars().take(TEXT_MAX).collect();
        if text.is_empty() {
            return Err(Refusal::Words { field: field.to_owned() });
        }
        let other = other_unit(reading, field, &text, around);
        if let Some(refusal) = other.clone().filter(|_| !confirmed) {
            return Err(refusal);
        }
        (text, other.is_some())
    } else {
        number_in(reading, field, typed, confirmed, around.units)?
    };
    let instrument = reading.instrument.clone().unwrap_or_default();
    // The technician's own instrument knows its error better than the pack, which names what is typical of its kind.
    let day = visit.opened.as_ref().unwrap_or(around.now).day();
    let own = around.technician.instrument(&instrument, &day);
    let typical =
        || around.pack.instruments.iter().find(|known| known.id == instrument).map(|known| &known.error_limit);
    let error_limit = own.map(|own| &own.error_limit).or_else(typical).cloned().unwrap_or_default();
    let own = own.map(|own| Own {
        name: own.name.clone(),
        serial: own.serial.clone(),
        calibrated_until: own.calibrated_until.clone(),
        lapsed: own.lapsed_on(&day),
    });
    Ok(Decision {
        events: vec![Body::ReadingTaken {
            letter: around.unit.clone(),
            reading: reading.id.clone(),
            value,
            measure: reading.quantity.code().to_owned(),
            typed: typed.trim().chars().take(TEXT_MAX).collect(),
            instrument,
            error_limit,
            unusual,
            own,
        }],
        used: vec![field.to_owned()],
        ..Decision::default()
    })
}

/// Whether a serial number or model is another one than the register's.
fn other_unit(reading: &Reading, field: &str, read: &str, around: &Circumstances<'_>) -> Option<Refusal> {
    let register = match reading.role.as_deref()? {
        SERIAL_ROLE => around.serial?,
        MODEL_ROLE => around.model?,
        _ => return None,
    };
    (!alike(register, read)).then(|| Refusal::OtherUnit {
        field: field.to_owned(),
        register: register.to_owned(),
        read: read.to_owned(),
    })
}

fn number_in(
    reading: &Reading,
    field: &str,
    typed: &str,
    confirmed: bool,
    units: Units,
) -> Result<(String, bool), Refusal> {
    let quantity = reading.quantity;
    let value =
        number::parse(typed, reading.decimals).map_err(|error| Refusal::Number { field: field.to_owned(), error })?;
    let value = quantity.to_log(value, units);
    let limit = |text: &Option<String>| text.as_ref().and_then(|text| text.parse::<f64>().ok());
    let (least, most) = (limit(&reading.least), limit(&reading.most));
    if least.is_some_and(|least| value < least) || most.is_some_and(|most| value > most) {
        let shown = |text: &Option<String>| text.clone().unwrap_or_default();
        return Err(Refusal::Impossible {
            field: field.to_owned(),
            least: shown(&reading.least),
            most: shown(&reading.most),
        });
    }
    let mut unusual = false;
    if let Some([from, to]) = &reading.usual {
        let outside =
            from.parse::<f64>().is_ok_and(|from| value < from) || to.parse::<f64>().is_ok_and(|to| value > to);
        if outside && !confirmed {
            return Err(Refusal::Unusual { field: field.to_owned(), from: from.clone(), to: to.clone() });
        }
        unusual = outside;
    }
    // A finer value than the step of the reading is kept: more was read off than was asked for.
    let typed_decimals = typed.trim().split_once([',', '.']).map_or(0, |(_, rest)| rest.len().min(6)) as u8;
    let decimals = quantity.log_decimals(typed_decimals, units);
    let value = format!("{value:.*}", usize::from(decimals));
    Ok((value, unusual))
}

pub(super) fn could_not(field: &str, around: &Circumstances<'_>) -> Result<Decision, Refusal> {
    let why = format!("why:{field}");
    let reason = words(&why, around)?;
    let event = if let Some(slot) = field.strip_prefix("shot:") {
        let shot = around.pack.shot(slot).ok_or_else(|| Refusal::NoSuch { name: field.to_owned() })?;
        Body::ShotMissed { unit: around.unit.clone(), slot: shot.id.clone(), reason }
    } else {
        Body::ReadingMissed { unit: around.unit.clone(), reading: find(field, around)?.id.clone(), reason }
    };
    Ok(Decision { events: vec![event], used: vec![why], go: Some("now".into()), ..Decision::default() })
}
