//! Whether a result is what the table says it can be.

use std::ops::RangeInclusive;

/// A type that exported functions give, or a field of one, against its bound.
pub(crate) trait Judged<Bound> {
    /// What is wrong with it, if anything is.
    fn wrong(&self, bound: &Bound) -> Option<String>;
}

impl Judged<RangeInclusive<f64>> for f64 {
    fn wrong(&self, bound: &RangeInclusive<f64>) -> Option<String> {
        // A NaN lies in no range, and no range here is without end.
        (!bound.contains(self)).then(|| format!("gave {self:?}, which is not in {bound:?}"))
    }
}

impl Judged<RangeInclusive<f64>> for Option<f64> {
    fn wrong(&self, bound: &RangeInclusive<f64>) -> Option<String> {
        self.as_ref().and_then(|value| value.wrong(bound))
    }
}

impl<const N: usize> Judged<[&str; N]> for String {
    fn wrong(&self, bound: &[&str; N]) -> Option<String> {
        (!bound.contains(&self.as_str())).then(|| format!("gave {self:?}, which is none of {bound:?}"))
    }
}

/// What else has to hold, as a function that tells what is wrong.
pub(crate) struct By<Check>(pub(crate) Check);

impl<T, Check: Fn(&T) -> Option<String>> Judged<By<Check>> for T {
    fn wrong(&self, bound: &By<Check>) -> Option<String> {
        bound.0(self)
    }
}

/// A date from 1900 to 2200, as calendars write it.
pub(crate) fn no_date(text: &String) -> Option<String> {
    let numbers: Vec<u32> = text.split('-').filter_map(|part| part.parse().ok()).collect();
    let good = matches!(numbers[..], [1900..=2200, 1..=12, 1..=31]) && text.len() == 10;
    (!good).then(|| format!("gave {text:?}, which is no date from 1900 to 2200"))
}

/// A yes or no, which can be either.
pub(crate) struct Any;
pub(crate) const ANY: Any = Any;

impl Judged<Any> for bool {
    fn wrong(&self, _: &Any) -> Option<String> {
        None
    }
}
