//! Days for a calendar of any program: RFC 5545 (iCalendar), written so that it reads everywhere.

use chrono::{DateTime, Days, NaiveDate};

/// A line holds no more octets than this before it is folded (RFC 5545, 3.1).
const LINE_OCTETS: usize = 75;
/// Names the writer (RFC 5545, 3.7.3).
const WRITER: &str = "-//Coilside//Due days//EN";

/// A day with its reason.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The same for the same thing ever after, so that a calendar replaces what it knew: letters, digits, `-`, `@` and `.`.
    pub uid: String,
    /// The whole day.
    pub on: NaiveDate,
    /// In one line.
    pub title: String,
    /// What there is to know.
    pub text: String,
    /// Where; empty where it does not matter or must not be told.
    pub place: String,
    /// A reminder so many days before.
    pub remind_days: Option<u32>,
}

/// The entries as an iCalendar file (`text/calendar; charset=utf-8`), made at a time in milliseconds since 1970.
#[must_use]
pub fn calendar(entries: &[Entry], made_utc_ms: i64) -> String {
    let made = DateTime::from_timestamp_millis(made_utc_ms).unwrap_or_default().format("%Y%m%dT%H%M%SZ").to_string();
    let mut out = String::new();
    let mut line = |text: String| fold(&text, &mut out);
    for text in ["BEGIN:VCALENDAR", "VERSION:2.0"] {
        line(text.to_owned());
    }
    line(format!("PRODID:{WRITER}"));
    line("METHOD:PUBLISH".to_owned());
    for entry in entries {
        line("BEGIN:VEVENT".to_owned());
        line(format!("UID:{}", escape(&entry.uid)));
        line(format!("DTSTAMP:{made}"));
        line(format!("DTSTART;VALUE=DATE:{}", entry.on.format("%Y%m%d")));
        // The end of a day is the beginning of the next one (3.6.1).
        let next = entry.on.checked_add_days(Days::new(1)).unwrap_or(entry.on);
        line(format!("DTEND;VALUE=DATE:{}", next.format("%Y%m%d")));
        // A due day does not make anybody busy.
        line("TRANSP:TRANSPARENT".to_owned());
        line(format!("SUMMARY:{}", escape(&entry.title)));
        if !entry.text.is_empty() {
            line(format!("DESCRIPTION:{}", escape(&entry.text)));
        }
        if !entry.place.is_empty() {
            line(format!("LOCATION:{}", escape(&entry.place)));
        }
        if let Some(days) = entry.remind_days {
            for text in ["BEGIN:VALARM", "ACTION:DISPLAY"] {
                line(text.to_owned());
            }
            line(format!("TRIGGER:-P{days}D"));
            line(format!("DESCRIPTION:{}", escape(&entry.title)));
            line("END:VALARM".to_owned());
        }
        line("END:VEVENT".to_owned());
    }
    line("END:VCALENDAR".to_owned());
    out
}

/// As a TEXT value (3.3.11). Control characters other than a new line have no place in one.
fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for one in text.replace("\r\n", "\n").chars() {
        match one {
            '\\' | ';' | ',' => out.extend(['\\', one]),
            '\n' => out.push_str("\\n"),
            one if one.is_control() => {}
            one => out.push(one),
        }
    }
    out
}

/// Folds a line between characters, never inside of one.
fn fold(text: &str, out: &mut String) {
    let mut octets = 0;
    for one in text.chars() {
        if octets + one.len_utf8() > LINE_OCTETS {
            out.push_str("\r\n ");
            octets = 1;
        }
        out.push(one);
        octets += one.len_utf8();
    }
    out.push_str("\r\n");
}

#[cfg(test)]
mod tests {
    use super::*;

    fn entry() -> Entry {
        Entry {
            uid: "u-1@office".into(),
            on: NaiveDate::from_ymd_opt(2027, 2, 28).unwrap(),
            title: "Service; hot water, coil".into(),
            text: "Línea uno\nlínea \\ dos".into(),
            place: String::new(),
            remind_days: Some(14),
        }
    }

    /// RFC 5545: 3.1 for lines, 3.3.11 for texts, 3.6.1 for the end of a day.
    #[test]
    fn a_day_is_written_as_the_standard_has_it() {
        let text = calendar(&[entry()], 1_772_494_200_000);
        for wanted in [
            "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:",
            "DTSTAMP:20260302T233000Z\r\n",
            "DTSTART;VALUE=DATE:20270228\r\nDTEND;VALUE=DATE:20270301\r\n",
            "SUMMARY:Service\\; hot water\\, coil\r\n",
            "DESCRIPTION:Línea uno\\nlínea \\\\ dos\r\n",
            "TRIGGER:-P14D\r\n",
        ] {
            assert!(text.contains(wanted), "no {wanted:?} in {text}");
        }
        assert!(!text.contains("LOCATION"), "an empty place is left out");
        assert!(text.ends_with("END:VCALENDAR\r\n"));
    }

    #[test]
    fn no_line_is_longer_than_the_standard_allows_and_no_character_is_cut() {
        let long = Entry { text: "ñ".repeat(200) + "\u{7}\r\nend", ..entry() };
        let text = calendar(&[long], 0);
        assert!(text.split("\r\n").all(|line| line.len() <= LINE_OCTETS));
        let unfolded = text.replace("\r\n ", "");
        assert!(unfolded.contains(&format!("DESCRIPTION:{}\\nend\r\n", "ñ".repeat(200))));
    }
}
