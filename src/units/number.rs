//! Numbers as they are written on a tape, a tape table or a dress form: decimals with
//! a point or a comma, whole numbers with a fraction, fractions of one character.

use super::error::{UnitError, quoted};

/// Brings the many ways to write a mark to one: typographic primes, quotes, dashes,
/// spaces and one-character fractions.
pub(super) fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.trim().chars() {
        match c {
            '′' | '’' | '‘' | '`' => out.push('\''),
            '″' | '”' | '“' => out.push('"'),
            '⁄' | '∕' => out.push('/'),
            '−' | '–' | '‐' | '‑' => out.push('-'),
            '½' => out.push_str(" 1/2"),
            '¼' => out.push_str(" 1/4"),
            '¾' => out.push_str(" 3/4"),
            '⅛' => out.push_str(" 1/8"),
            '⅜' => out.push_str(" 3/8"),
            '⅝' => out.push_str(" 5/8"),
            '⅞' => out.push_str(" 7/8"),
            '⅓' => out.push_str(" 1/3"),
            '⅔' => out.push_str(" 2/3"),
            c if c.is_whitespace() => out.push(' '),
            c => out.extend(c.to_lowercase()),
        }
    }
    out.trim().replace("''", "\"")
}

/// Splits a plain text into its sign, its number and what follows the number.
/// `true` is negative.
pub(super) fn split(plain: &str) -> (bool, &str, &str) {
    let (negative, rest) = match plain.strip_prefix('-') {
        Some(rest) => (true, rest),
        None => (false, plain.strip_prefix('+').unwrap_or(plain)),
    };
    let end = rest
        .find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '/' | ' ' | '-')))
        .unwrap_or(rest.len());
    let (number, tail) = rest.split_at(end);
    (negative, number.trim(), tail.trim())
}

/// The value of an unsigned number in plain form: `92`, `92.5`, `92,5`, `36 1/2`,
/// `36-1/2` or `1/2`. `text` is what the error quotes.
pub(super) fn value(number: &str, text: &str) -> Result<f64, UnitError> {
    let not_a_number = || UnitError::NotANumber { text: quoted(text) };
    let parts: Vec<&str> = number.split([' ', '-']).filter(|p| !p.is_empty()).collect();
    if number.matches('-').count() > 1 || number.starts_with('-') || number.ends_with('-') {
        return Err(not_a_number());
    }
    match parts.as_slice() {
        [one] if one.contains('/') => {
            let (upper, lower) = fraction(one, text)?;
            Ok(upper / lower)
        }
        [one] => decimal(one, text),
        [whole, part] if part.contains('/') && is_digits(whole) => {
            let (upper, lower) = fraction(part, text)?;
            if upper >= lower {
                return Err(UnitError::BadFraction { text: quoted(text) });
            }
            Ok(decimal(whole, text)? + upper / lower)
        }
        _ => Err(not_a_number()),
    }
}

fn is_digits(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit())
}

fn fraction(part: &str, text: &str) -> Result<(f64, f64), UnitError> {
    let bad = || UnitError::BadFraction { text: quoted(text) };
    let (upper, lower) = part.split_once('/').ok_or_else(bad)?;
    // Four digits are more than any tape carries and keep the quotient exact enough.
    if !is_digits(upper) || !is_digits(lower) || upper.len() > 4 || lower.len() > 4 {
        return Err(bad());
    }
    let upper: f64 = upper.parse().map_err(|_| bad())?;
    let lower: f64 = lower.parse().map_err(|_| bad())?;
    if lower == 0.0 {
        return Err(bad());
    }
    Ok((upper, lower))
}

fn decimal(number: &str, text: &str) -> Result<f64, UnitError> {
    let not_a_number = || UnitError::NotANumber { text: quoted(text) };
    if !number.bytes().any(|b| b.is_ascii_digit()) {
        return Err(not_a_number());
    }
    if let Some((whole, part)) = number.split_once(',') {
        if !is_digits(whole) || !is_digits(part) {
            // More than one mark: thousands are parted, and decimals perhaps.
            let marks_only = number
                .bytes()
                .all(|b| b.is_ascii_digit() || b == b',' || b == b'.');
            return Err(if marks_only {
                UnitError::AmbiguousComma { text: quoted(text) }
            } else {
                not_a_number()
            });
        }
        if part.len() == 3 && whole.len() <= 3 && !whole.starts_with('0') {
            return Err(UnitError::AmbiguousComma { text: quoted(text) });
        }
        return format!("{whole}.{part}")
            .parse()
            .map_err(|_| not_a_number());
    }
    number.parse().map_err(|_| not_a_number())
}
