//! Lengths in sentences, in the unit of whom they are for.
//!
//! The library writes its messages in millimetres, each length as a number, a blank and `mm`, or two
//! of them with one unit: `from 920 to 980 mm`. Here is the one place that says them in another unit.
//! What stands between backquotes is what somebody wrote, and stays.

use super::unit::Unit;
use super::{Fraction, LengthStyle};

/// A sentence with its millimetres in another unit: centimetres to the same place, inches to the
/// sixteenth, in decimals where a sixteenth would say too little.
///
/// The most that will do is never made more, and the least never less, so that what the sentence
/// advises holds.
///
/// ```
/// use blockwright::units::{Unit, speak};
/// let refused = "50.8 mm is more than this pattern bears; at most 47.3 mm";
/// assert_eq!(speak(refused, Unit::Cm), "5.08 cm is more than this pattern bears; at most 4.73 cm");
/// assert_eq!(speak(refused, Unit::In), "2 in is more than this pattern bears; at most 1 13/16 in");
/// assert_eq!(speak("from 920 to 980 mm", Unit::In), "from 36 1/4 to 38 9/16 in");
/// ```
#[must_use]
pub fn speak(sentence: &str, unit: Unit) -> String {
    if unit == Unit::Mm {
        return sentence.to_owned();
    }
    let mut out = String::with_capacity(sentence.len());
    for (k, part) in sentence.split('`').enumerate() {
        if k > 0 {
            out.push('`');
        }
        if k % 2 == 0 {
            part_in(unit, part, &mut out);
        } else {
            out.push_str(part);
        }
    }
    out
}

/// Words between two numbers that have one unit.
const BETWEEN: [&str; 4] = [" to ", " and ", " or ", " × "];

/// Words before a number that must not be made more, and before one that must not be made less.
const MOST: [&str; 4] = ["at most ", "up to ", "no more than ", "less than "];
const LEAST: [&str; 3] = ["at least ", "no less than ", "more than "];

/// Which way a number may be rounded.
#[derive(Clone, Copy, PartialEq)]
enum Way {
    Nearest,
    Down,
    Up,
}

/// A number as it is written in a sentence.
#[derive(Clone, Copy)]
struct Number<'a> {
    text: &'a str,
    value: f64,
    /// How many decimals it is written with.
    decimals: usize,
    /// Whether it is an area.
    square: bool,
}

impl<'a> Number<'a> {
    /// The number that a text begins with.
    fn at_start(text: &'a str) -> Option<Self> {
        let unsigned = text.trim_start_matches(['+', '-', '−']);
        let digits = |s: &str| s.len() - s.trim_start_matches(|c: char| c.is_ascii_digit()).len();
        let sign = text.len() - unsigned.len();
        let whole = digits(unsigned);
        let after = unsigned.get(whole..)?;
        let decimals = after.strip_prefix('.').map_or(0, digits);
        let mut end = sign + whole + if decimals > 0 { decimals + 1 } else { 0 };
        if let Some(power) = text.get(end..)?.strip_prefix('e') {
            let signless = power.strip_prefix('-').unwrap_or(power);
            let places = digits(signless);
            if places > 0 {
                end += 1 + (power.len() - signless.len()) + places;
            }
        }
        let text = text.get(..end).filter(|_| whole > 0)?;
        let value = text.replace('−', "-").parse().ok()?;
        Some(Self {
            text,
            value,
            decimals,
            square: false,
        })
    }

    fn in_unit(self, unit: Unit, way: Way) -> String {
        let value = match self.square {
            false => unit.from_mm(self.value),
            true => unit.from_mm(unit.from_mm(self.value)),
        };
        if self.text.contains('e') {
            return format!("{value:.1e}");
        }
        let sign = if self.text.starts_with('+') && value > 0.0 {
            "+"
        } else {
            ""
        };
        // Sixteenths of an inch, unless the number is finer than they are.
        let fine = self.decimals > 1 || (self.decimals == 1 && self.value.abs() < SMALL);
        if unit == Unit::In && !fine && !self.square {
            let parts = f64::from(Fraction::Sixteenths.parts());
            let sixteenths = rounded(value * parts, way);
            if sixteenths != 0.0 || self.value == 0.0 {
                let mm = Unit::In.to_mm(sixteenths / parts);
                let text = LengthStyle::Inches(Fraction::Sixteenths).text(mm);
                return format!("{sign}{}", text.trim_end_matches(" in"));
            }
        }
        let more = match unit {
            Unit::Mm => 0,
            Unit::Cm => 1,
            Unit::In => 2 - usize::from(self.decimals == 1),
        };
        let places = self.decimals + more * (1 + usize::from(self.square));
        let scale = (0..places).fold(1.0, |scale, _| scale * 10.0);
        let value = rounded(value * scale, way) / scale + 0.0;
        let text = format!("{value:.places$}");
        let text = match text.contains('.') {
            true => text.trim_end_matches('0').trim_end_matches('.'),
            false => text.as_str(),
        };
        format!("{sign}{text}")
    }
}

/// Below a quarter of an inch tenths of a millimetre matter, in millimetres.
const SMALL: f64 = 6.35;

/// A whole number; what lies within rounding of one is that.
fn rounded(value: f64, way: Way) -> f64 {
    let near = value.round();
    match way {
        _ if (value - near).abs() < 1e-6 => near,
        Way::Nearest => near,
        Way::Down => value.trunc(),
        Way::Up => value.trunc() + value.signum(),
    }
}

/// A part of a sentence without backquotes.
fn part_in(unit: Unit, part: &str, out: &mut String) {
    let mut rest = part;
    let mut before = ' ';
    while let Some(next) = rest.chars().next() {
        let starts = next.is_ascii_digit() || ['+', '-', '−', '('].contains(&next);
        let apart = before.is_whitespace() || ['(', '±', '≈'].contains(&before);
        if starts
            && apart
            && let Some((numbers, after)) = lengths_of(rest)
        {
            let ways = ways(out, &numbers);
            if next == '(' {
                out.push(next);
            }
            for ((number, between), way) in numbers.iter().zip(ways) {
                out.push_str(&number.in_unit(unit, way));
                out.push_str(between);
            }
            out.push_str(unit.name());
            (rest, before) = (after, 'm');
            continue;
        }
        out.push(next);
        before = next;
        rest = rest.get(next.len_utf8()..).unwrap_or("");
    }
}

/// The lengths at the start of a text that have one unit, each with what is written after it, and the
/// text after the unit.
fn lengths_of(text: &str) -> Option<(Vec<(Number<'_>, &'static str)>, &str)> {
    let mut numbers = Vec::new();
    let mut rest = text.strip_prefix('(').unwrap_or(text);
    let place = rest.len() < text.len();
    loop {
        let number = Number::at_start(rest)?;
        rest = rest.get(number.text.len()..)?;
        let (ends, goes_on) = if place {
            (") mm", [", "].as_slice())
        } else {
            (" mm", BETWEEN.as_slice())
        };
        if let Some(after) = rest.strip_prefix(ends)
            && !after.starts_with(char::is_alphabetic)
        {
            let square = after.starts_with('²');
            let number = Number { square, ..number };
            numbers.push((number, if place { ") " } else { " " }));
            return Some((numbers, after));
        }
        let between = goes_on.iter().find(|words| rest.starts_with(**words))?;
        rest = rest.strip_prefix(between)?;
        numbers.push((number, between));
    }
}

/// Which way each of some numbers may be rounded, by the words before them: bounds are rounded
/// inward.
fn ways(before: &str, numbers: &[(Number<'_>, &str)]) -> Vec<Way> {
    if let [(low, " to " | " and "), (high, _)] = numbers
        && low.value < high.value
    {
        return vec![Way::Up, Way::Down];
    }
    let way = if MOST.iter().any(|words| before.ends_with(words)) {
        Way::Down
    } else if LEAST.iter().any(|words| before.ends_with(words)) {
        Way::Up
    } else {
        Way::Nearest
    };
    vec![way; numbers.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_are_said_in_the_unit_and_to_the_place_that_matters() {
        for (mm, cm, inches) in [
            ("1270 mm", "127 cm", "50 in"),
            ("by +12.5 mm", "by +1.25 cm", "by +1/2 in"),
            ("by -0.4 mm", "by -0.04 cm", "by -0.02 in"),
            ("within 0.01 mm", "within 0.001 cm", "within 0.0004 in"),
            ("0 mm", "0 cm", "0 in"),
            // Bounds are rounded inward.
            (
                "give 1 to 60 mm",
                "give 0.1 to 6 cm",
                "give 1/16 to 2 5/16 in",
            ),
            ("at least 100 mm", "at least 10 cm", "at least 3 15/16 in"),
            ("at least 101 mm", "at least 10.1 cm", "at least 4 in"),
            ("at most 101 mm", "at most 10.1 cm", "at most 3 15/16 in"),
            (
                "from 980 to 920 mm",
                "from 98 to 92 cm",
                "from 38 9/16 to 36 1/4 in",
            ),
            // Places and areas.
            (
                "at (12.7, -25.4) mm",
                "at (1.27, -2.54) cm",
                "at (1/2, -1) in",
            ),
            ("12.3 mm²", "0.123 cm²", "0.019 in²"),
            ("reaches 1.0e9 mm", "reaches 1.0e8 cm", "reaches 3.9e7 in"),
            // No lengths.
            ("step 2 of 3", "step 2 of 3", "step 2 of 3"),
            (
                "2 mmm, A4 mm and mm",
                "2 mmm, A4 mm and mm",
                "2 mmm, A4 mm and mm",
            ),
            (
                "`40 mm` is no angle",
                "`40 mm` is no angle",
                "`40 mm` is no angle",
            ),
        ] {
            assert_eq!(speak(mm, Unit::Mm), mm);
            assert_eq!(speak(mm, Unit::Cm), cm);
            assert_eq!(speak(mm, Unit::In), inches);
            // Said once, nothing is left to be said.
            assert_eq!(speak(&speak(mm, Unit::In), Unit::In), inches);
        }
    }

    #[test]
    fn what_is_advised_holds() {
        for tenths in 1..4000 {
            let mm = f64::from(tenths) / 10.0;
            for (words, is_most) in [("at most", true), ("at least", false)] {
                let said = speak(&format!("{words} {mm:.1} mm"), Unit::In);
                let message = said.trim_start_matches(words).trim();
                let message = super::super::Length::parse(message, None).unwrap().mm();
                assert!(
                    message != mm && (message < mm) == is_most || (message - mm).abs() < 1e-6,
                    "{said}"
                );
                assert!((message - mm).abs() < 1.6, "{said}: {mm}");
            }
        }
    }
}
