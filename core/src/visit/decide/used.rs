//! What was used up, corrected by hand at the end of a visit.

use super::{Circumstances, Decision, Refusal};
use crate::round::amount::tenths;
use crate::round::used::item_of;
use crate::visit::event::Body;
use crate::visit::state::Visit;
use crate::words::number;

/// More than this of anything is a slip of the finger: a hundred litres, a hundred kilograms, days.
const MOST: f64 = 100_000.0;

/// An amount typed into `used:<item>`, in the units that people see.
pub(super) fn correct(
    visit: &Visit,
    field: &str,
    typed: &str,
    around: &Circumstances<'_>,
) -> Result<Decision, Refusal> {
    let (unit, item, measure) =
        item_of(field, visit, around.unit, around.pack).ok_or_else(|| Refusal::NoSuch { name: field.to_owned() })?;
    let amount = number::parse(typed, 1).map_err(|error| Refusal::Number { field: field.to_owned(), error })?;
    let amount = measure.to_log(amount, around.units);
    if !(0.0..=MOST).contains(&amount) {
        let most = number::write(measure.to_people(MOST, around.units), 0, "en");
        return Err(Refusal::Impossible { field: field.to_owned(), least: "0".into(), most });
    }
    Ok(Decision {
        events: vec![Body::UsedCorrected {
            unit,
            item: item.to_owned(),
            amount: tenths(amount),
            measure: measure.code().to_owned(),
            typed: typed.trim().chars().take(40).collect(),
        }],
        used: vec![field.to_owned()],
        ..Decision::default()
    })
}
