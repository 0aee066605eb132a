//! Reading what is to be written on the pieces: title, size, date.

use super::definition::LONGEST_TITLE;
use super::one_line::one_line;
use crate::measurements::{FileCause, Node, Reader};

/// The most characters of a size or a date.
const LONGEST: usize = 40;

pub(super) fn title(reader: &mut Reader, node: &Node) -> Option<String> {
    let hint = "it stands on every piece, so write a few words";
    line(reader, node, "title", LONGEST_TITLE, hint)
}

pub(super) fn size(reader: &mut Reader, node: &Node) -> Option<String> {
    let hint = "write it as it is to stand on every piece, such as `40`, or leave it out";
    line(reader, node, "size", LONGEST, hint)
}

/// A date as it is to be written. One that looks like a date of the standard (ISO 8601) must be
/// one; anything else is taken as it is.
pub(super) fn date(reader: &mut Reader, node: &Node) -> Option<String> {
    let hint = "write it as `2026-03-14` or in words, such as `March 2026`, or leave it out";
    let text = line(reader, node, "date", LONGEST, hint)?;
    if is_there(&text) {
        return Some(text);
    }
    let problem = format!("there is no day {text}");
    reader.wrong(node.place, "date", FileCause::Senseless { problem, hint });
    None
}

fn line(
    reader: &mut Reader,
    node: &Node,
    what: &'static str,
    longest: usize,
    hint: &'static str,
) -> Option<String> {
    let text = one_line(&reader.text(node, what)?);
    let problem = if text.is_empty() {
        format!("the {what} is empty")
    } else if text.chars().count() > longest {
        format!("the {what} is longer than {longest} characters")
    } else {
        return Some(text);
    };
    reader.wrong(node.place, what, FileCause::Senseless { problem, hint });
    None
}

/// Whether a text is no date of the form year-month-day, or one that the calendar has.
fn is_there(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let digits =
        |part: &str, count| part.len() == count && part.bytes().all(|b| b.is_ascii_digit());
    let [year, month, day] = parts.as_slice() else {
        return true;
    };
    if !(digits(year, 4) && digits(month, 2) && digits(day, 2)) {
        return true;
    }
    let number = |part: &str| part.parse::<u32>().unwrap_or(0);
    let (year, month, day) = (number(year), number(month), number(day));
    let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let days = match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => 0,
    };
    (1..=days).contains(&day)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_of_the_calendar() {
        for text in [
            "2026-02-28",
            "2024-02-29",
            "2000-02-29",
            "2026-12-31",
            "March 2026",
        ] {
            assert!(is_there(text), "{text}");
        }
        for text in [
            "2026-02-29",
            "1900-02-29",
            "2026-13-01",
            "2026-04-31",
            "2026-00-10",
            "2026-01-00",
        ] {
            assert!(!is_there(text), "{text}");
        }
        // Not of that form, so taken as words.
        assert!(is_there("1-2-3") && is_there("14-03-2026"));
    }
}
