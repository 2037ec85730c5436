//! What can be wrong with an argument.

/// A calculation that was refused, with the argument to look at again.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Error))]
pub enum ScienceError {
    /// A number outside the range in which the calculation holds, or not a number at all.
    #[error("{argument} is {value}: give a value from {least} to {most}")]
    OutOfRange {
        /// The argument's name, its unit last.
        argument: String,
        /// What was given.
        value: f64,
        /// The least value that is taken.
        least: f64,
        /// The greatest value that is taken.
        most: f64,
    },
    /// A word that is not known here.
    #[error("{argument} is \"{value}\": give {expected}")]
    NotUnderstood {
        /// The argument's name.
        argument: String,
        /// What was given.
        value: String,
        /// What would have been understood.
        expected: String,
    },
    /// Nothing was given where something is needed.
    #[error("{argument} is missing: give at least one")]
    Missing {
        /// The argument's name, or the names of those of which one is needed.
        argument: String,
    },
    /// Values that are each in range, for which a calculation by steps did not settle.
    #[error("{calculation} came to no answer: look at the values again")]
    NoAnswer {
        /// What was worked out, and from what.
        calculation: String,
    },
}

impl ScienceError {
    pub(crate) fn out_of_range(argument: &str, value: f64, least: f64, most: f64) -> Self {
        Self::OutOfRange { argument: argument.to_owned(), value, least, most }
    }

    /// The same refusal by the names that a border gives the arguments: pairs of ours and theirs.
    #[cfg(feature = "uniffi")]
    pub(crate) fn renamed(mut self, names: &[(&str, &str)]) -> Self {
        if let Self::OutOfRange { argument, .. } | Self::NotUnderstood { argument, .. } | Self::Missing { argument } =
            &mut self
            && let Some((_, theirs)) = names.iter().find(|(ours, _)| ours == argument)
        {
            *argument = (*theirs).to_owned();
        }
        self
    }

    /// A word that is not known, with what would have been.
    pub(crate) fn word(argument: &str, value: &str, expected: &str) -> Self {
        Self::NotUnderstood {
            argument: argument.to_owned(),
            // A pasted novel need not come back whole.
            value: value.chars().take(80).collect(),
            expected: expected.to_owned(),
        }
    }
}

/// Refuses a number outside `least..=most`; a NaN lies outside every range.
pub(crate) fn within(argument: &str, value: f64, least: f64, most: f64) -> Result<(), ScienceError> {
    if value >= least && value <= most {
        return Ok(());
    }
    Err(ScienceError::out_of_range(argument, value, least, most))
}
