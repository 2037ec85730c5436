//! One exported function: how to call it on drawn arguments, and what its result must be.

use crate::argument::Argument;
use crate::draw::Draw;
use coilside_core::science::ScienceError;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// What a call came to.
pub(crate) enum Answer {
    /// A result, with what is wrong with it.
    Taken(Option<String>),
    Refused(ScienceError),
    Panicked,
}

/// A function of any number of arguments.
pub(crate) trait Exported<Arguments, Output> {
    fn called(&self, names: &[String], draw: &mut Draw) -> Result<Output, ScienceError>;
    /// The arguments that the same draw gives, by name.
    fn shown(&self, names: &[String], draw: &mut Draw) -> String;
}

macro_rules! exported {
    ($($argument:ident)+) => {
        impl<Function, Output, $($argument: Argument),+> Exported<($($argument,)+), Output> for Function
        where
            Function: Fn($($argument),+) -> Result<Output, ScienceError>,
        {
            fn called(&self, names: &[String], draw: &mut Draw) -> Result<Output, ScienceError> {
                let mut names = names.iter();
                self($($argument::drawn(names.next().unwrap(), draw)),+)
            }

            fn shown(&self, names: &[String], draw: &mut Draw) -> String {
                let mut names = names.iter();
                let shown = [$({
                    let name = names.next().unwrap();
                    format!("{name}: {:?}", $argument::drawn(name, draw))
                }),+];
                shown.join(", ")
            }
        }
    };
}
exported!(A);
exported!(A B);
exported!(A B C);
exported!(A B C D);
exported!(A B C D E);
exported!(A B C D E F);
exported!(A B C D E F G);
exported!(A B C D E F G H);
exported!(A B C D E F G H I);
exported!(A B C D E F G H I J);
exported!(A B C D E F G H I J K);
exported!(A B C D E F G H I J K L);

type Tried = Box<dyn Fn(&[String], &mut Draw) -> Result<Option<String>, ScienceError>>;
type Shown = Box<dyn Fn(&[String], &mut Draw) -> String>;

/// A line of the table.
pub(crate) struct Law {
    pub(crate) name: &'static str,
    tried: Tried,
    shown: Shown,
}

impl Law {
    pub(crate) fn new<Arguments, Output>(
        name: &'static str,
        function: impl Exported<Arguments, Output> + Copy + 'static,
        wrong: impl Fn(&Output) -> Option<String> + 'static,
    ) -> Self {
        Self {
            name,
            tried: Box::new(move |names, draw| Ok(wrong(&function.called(names, draw)?))),
            shown: Box::new(move |names, draw| function.shown(names, draw)),
        }
    }

    /// Calls the function on the next draw.
    pub(crate) fn tried(&self, names: &[String], draw: &mut Draw) -> Answer {
        match catch_unwind(AssertUnwindSafe(|| (self.tried)(names, draw))) {
            Ok(Ok(wrong)) => Answer::Taken(wrong),
            Ok(Err(error)) => Answer::Refused(error),
            Err(_) => Answer::Panicked,
        }
    }

    pub(crate) fn shown(&self, names: &[String], draw: &mut Draw) -> String {
        (self.shown)(names, draw)
    }
}

/// What is wrong with a refusal: it must name an argument of the function, and a range that can be met.
pub(crate) fn wrong_with_refusal(error: &ScienceError, names: &[String]) -> Option<String> {
    if let ScienceError::OutOfRange { value, least, most, .. } = error
        && (least.is_nan() || most.is_nan() || (value > least && value < most))
    {
        return Some(format!("says \"{error}\", which is no reason"));
    }
    let (ScienceError::OutOfRange { argument, .. }
    | ScienceError::NotUnderstood { argument, .. }
    | ScienceError::Missing { argument }) = error
    else {
        // No answer: each value was in range, and none is to blame.
        return None;
    };
    // "date (its year)" and "lower or upper" name arguments among other words.
    let named = argument.split(' ').any(|word| names.iter().any(|name| name == word));
    (!named).then(|| format!("refused {argument}, which is none of {names:?}"))
}
