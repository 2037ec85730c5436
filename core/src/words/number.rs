//! Numbers as people write and read them: decimal comma and point are both read; the language decides what is written.

/// Why typed text is no number.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum NumberError {
    /// Nothing was typed.
    #[error("nothing was typed")]
    Empty,
    /// There is something that is no digit.
    #[error("'{0}' is not a number")]
    NotANumber(String),
    /// `1,200` can mean two things.
    #[error("'{0}' can mean two numbers; write it without the separator")]
    Ambiguous(String),
}

/// Reads a number with a decimal comma or point. `decimals` tells how many make sense: where none do, a single separator
/// before three digits is refused instead of guessed at.
///
/// # Errors
/// Where the text is empty, no number, or can mean two numbers.
pub fn parse(typed: &str, decimals: u8) -> Result<f64, NumberError> {
    let text: String = typed.trim().chars().filter(|c| !matches!(c, ' ' | '\u{a0}' | '\u{202f}' | '\'')).collect();
    let text = text.replace('\u{2212}', "-");
    if text.is_empty() {
        return Err(NumberError::Empty);
    }
    let separators = text.chars().filter(|c| matches!(c, ',' | '.')).count();
    let digits = text.trim_start_matches(['-', '+']);
    if separators > 1 {
        return Err(NumberError::Ambiguous(typed.trim().to_owned()));
    }
    if let Some((whole, rest)) = digits.split_once([',', '.'])
        && decimals == 0
        && rest.len() == 3
        && !whole.is_empty()
        && whole != "0"
    {
        return Err(NumberError::Ambiguous(typed.trim().to_owned()));
    }
    let plain = !digits.is_empty() && digits.chars().all(|c| c.is_ascii_digit() || matches!(c, ',' | '.'));
    let not_a_number = || NumberError::NotANumber(typed.trim().to_owned());
    if !plain || digits.len() > 15 || !digits.contains(|c: char| c.is_ascii_digit()) {
        return Err(not_a_number());
    }
    text.replace(',', ".").parse().map_err(|_| not_a_number())
}

/// Writes a number with so many decimals, in the language's way.
#[must_use]
pub fn write(value: f64, decimals: u8, language: &str) -> String {
    localise(&format!("{value:.*}", usize::from(decimals)), language)
}

/// Turns decimal text of the log into the language's way.
#[must_use]
pub fn localise(decimal: &str, language: &str) -> String {
    let text = if decimal.trim_start_matches('-').chars().all(|c| matches!(c, '0' | '.')) {
        decimal.trim_start_matches('-').to_owned()
    } else {
        decimal.replace('-', "\u{2212}")
    };
    if language == "es" { text.replace('.', ",") } else { text }
}

/// Typed words in which a number and its degree or percent sign do not part at the end of a line.
#[must_use]
pub fn unbroken(text: &str) -> String {
    ["°", "%"].iter().fold(text.to_owned(), |text, sign| text.replace(&format!(" {sign}"), &format!("\u{a0}{sign}")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comma_and_point_are_both_read() {
        for (typed, value) in
            [("12,5", 12.5), (" 12.5 ", 12.5), ("-3", -3.0), ("\u{2212}3,25", -3.25), ("1 200", 1200.0)]
        {
            assert_eq!(parse(typed, 1), Ok(value), "{typed}");
        }
    }

    #[test]
    fn letters_are_refused_with_what_was_typed() {
        assert_eq!(parse("12o5", 1), Err(NumberError::NotANumber("12o5".into())));
        assert_eq!(parse("NaN", 1), Err(NumberError::NotANumber("NaN".into())));
        assert_eq!(parse("1e5", 1), Err(NumberError::NotANumber("1e5".into())));
        assert_eq!(parse("-", 1), Err(NumberError::NotANumber("-".into())));
    }

    #[test]
    fn a_thousands_separator_is_not_guessed_at() {
        assert_eq!(parse("1,200", 0), Err(NumberError::Ambiguous("1,200".into())));
        assert_eq!(parse("1.200,5", 1), Err(NumberError::Ambiguous("1.200,5".into())));
    }

    #[test]
    fn a_typed_temperature_stays_on_one_line() {
        assert_eq!(unbroken("55 °C by day, 60 % by night"), "55\u{a0}°C by day, 60\u{a0}% by night");
    }

    #[test]
    fn minus_zero_is_written_as_zero() {
        assert_eq!(write(-0.01, 1, "en"), "0.0");
        assert_eq!(write(-1.25, 1, "es"), "\u{2212}1,2");
    }
}
