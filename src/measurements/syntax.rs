//! What is wrong with a text that is no YAML, in the words of whoever wrote it: the parser names the
//! place, the line itself says the cause.

use super::problem::{FileCause, FileProblem, Place};
use crate::units::Unit;

/// The cause and the cure of one fault of a text.
struct Fault {
    place: Place,
    cause: String,
    cure: &'static str,
}

/// The problem of a text that the parser refused at a place, with its own words.
pub(super) fn syntax_problem(text: &str, place: Place, parser: &str) -> FileProblem {
    let Fault { place, cause, cure } = fault(text, place, parser);
    let mut snippet = format!("{place}: {cause}; {cure}");
    if let Some(line) = line_of(text, place.line) {
        let before: String = line
            .chars()
            .take(usize::try_from(place.column.saturating_sub(1)).unwrap_or(0))
            .map(|c| if c == '\t' { '\t' } else { ' ' })
            .collect();
        let number = place.line;
        let room = " ".repeat(number.to_string().len());
        snippet.push_str(&format!("\n  {number} | {line}\n  {room} | {before}^"));
    }
    FileProblem {
        unit: Unit::Mm,
        place,
        path: String::new(),
        cause: FileCause::Syntax {
            message: cause,
            cure,
            snippet,
        },
    }
}

fn fault(text: &str, place: Place, parser: &str) -> Fault {
    let at = |place, cause: String, cure| Fault { place, cause, cure };
    let quoted = parser.split('`').nth(1).unwrap_or_default();
    if parser.contains("stands twice") || parser.contains("duplicate mapping key") {
        let cause = format!("`{quoted}` stands twice");
        return at(place, cause, "keep one of the two");
    }
    if parser.contains("too complex")
        || parser.contains("budget")
        || parser.contains("depth")
        || parser.contains("recursion")
    {
        let cause = "the file is too large or too complex".to_owned();
        return at(place, cause, "a job or a table needs a hundredth of that");
    }
    if parser.contains("unclosed quote") {
        let cause = "a quote is opened here and not closed".to_owned();
        return at(place, cause, "write the closing quote");
    }
    let here = [place.line, place.line.saturating_sub(1), place.line + 1];
    for line in here {
        let written = line_of(text, line).unwrap_or_default();
        let indent = indent(written);
        if let Some(tab) = written.chars().take(indent).position(|c| c == '\t') {
            let (column, cause) = (tab as u64 + 1, "a tab stands before this line".to_owned());
            return at(Place { line, column }, cause, "use spaces");
        }
    }
    if let Some(open) = open_bracket(text, place.line) {
        let cause = "a bracket is opened here and not closed".to_owned();
        return at(open, cause, "write the closing bracket");
    }
    let above = (1..place.line).rev().find(|line| {
        let text = line_of(text, *line).unwrap_or_default().trim();
        !text.is_empty() && !text.starts_with('#')
    });
    let lines = [Some(place.line), above];
    for line in lines.into_iter().flatten() {
        let written = line_of(text, line).unwrap_or_default();
        if let Some(column) = value_with_colon(written) {
            let cause = "a second colon stands in this line".to_owned();
            let cure = "put the text behind the first colon between quotes: `title: \"A: b\"`";
            return at(Place { line, column }, cause, cure);
        }
        if let Some((column, written)) = colon_without_space(written) {
            let cause = format!("no space follows the colon in `{written}`");
            return at(
                Place { line, column },
                cause,
                "write a space after every colon",
            );
        }
    }
    let written = line_of(text, place.line).unwrap_or_default();
    let above = above.and_then(|line| line_of(text, line));
    if above.is_some_and(|above| indent(above) < indent(written) && has_value(above)) {
        let column = indent(written) as u64 + 1;
        let cause = "this line begins further right than the one above, which has its value";
        return at(
            Place { column, ..place },
            cause.to_owned(),
            "let both begin in the same column",
        );
    }
    if !written.contains(':') && !written.trim_start().starts_with('-') {
        let cause = "this line has no colon".to_owned();
        return at(place, cause, "write a name, a colon, a space and the value");
    }
    let sign = written
        .chars()
        .nth(usize::try_from(place.column.saturating_sub(1)).unwrap_or(0));
    if let Some(sign) = sign.filter(|sign| "@`%&*!|>".contains(*sign)) {
        let cause = format!("no text begins with {sign}");
        return at(place, cause, "put the text between quotes");
    }
    let cause = "this line cannot be read".to_owned();
    let cure = "write a name, a colon, a space and the value; what belongs to a name stands below \
                it, two spaces further right";
    at(place, cause, cure)
}

fn line_of(text: &str, line: u64) -> Option<&str> {
    let before = usize::try_from(line.checked_sub(1)?).ok()?;
    text.lines().nth(before)
}

/// How many blanks and tabs a line begins with.
fn indent(line: &str) -> usize {
    line.chars().take_while(|c| matches!(c, ' ' | '\t')).count()
}

/// A line without its indentation, the dash of a list item and its comment, and the column at which
/// the rest begins.
fn content(line: &str) -> (u64, &str) {
    let start = line.trim_start_matches([' ', '\t', '-']);
    let column = line.chars().count() - start.chars().count();
    let end = start.find(" #").unwrap_or(start.len());
    let rest = start.get(..end).unwrap_or(start).trim_end();
    (column as u64 + 1, rest)
}

/// The key of a line and what follows its colon.
fn key_of(content: &str) -> Option<(&str, &str)> {
    let (key, rest) = content.split_once(':')?;
    let plain = |c: char| c.is_alphanumeric() || matches!(c, '_' | '-' | ' ' | '.');
    (!key.is_empty() && key.chars().all(plain)).then_some((key, rest))
}

fn has_value(line: &str) -> bool {
    let (_, content) = content(line);
    key_of(content).is_some_and(|(_, value)| !value.trim().is_empty())
}

/// Where the second colon of a line stands, if a plain value has one.
fn value_with_colon(line: &str) -> Option<u64> {
    let (column, content) = content(line);
    let (key, value) = key_of(content)?;
    if value
        .trim_start()
        .starts_with(['"', '\'', '{', '[', '|', '>'])
    {
        return None;
    }
    let second = value.find(": ").or_else(|| {
        let last = value.len().checked_sub(1)?;
        value.ends_with(':').then_some(last)
    })?;
    let before = value.get(..second)?.chars().count();
    Some(column + (key.chars().count() + 1 + before) as u64)
}

/// A line whose colon has no space behind it, `bust_girth:101`, and the column of the colon.
fn colon_without_space(line: &str) -> Option<(u64, String)> {
    let (column, content) = content(line);
    let (key, value) = key_of(content)?;
    if value.is_empty() || value.starts_with([' ', '\t']) {
        return None;
    }
    let shown: String = content.chars().take(40).collect();
    Some((column + key.chars().count() as u64, shown))
}

/// The last bracket that is open before a line, outside quotes and comments.
fn open_bracket(text: &str, before: u64) -> Option<Place> {
    let mut open = Vec::new();
    for (row, line) in (1..before).zip(text.lines()) {
        let mut quote = None;
        let mut last = ' ';
        for (column, sign) in (1..).zip(line.chars()) {
            match (quote, sign) {
                (Some(q), sign) if q == sign => quote = None,
                (Some(_), _) => {}
                (None, '"' | '\'') if !last.is_alphanumeric() => quote = Some(sign),
                (None, '#') if last == ' ' => break,
                (None, '[' | '{') => open.push(Place { line: row, column }),
                (None, ']' | '}') => {
                    open.pop();
                }
                (None, _) => {}
            }
            last = sign;
        }
    }
    open.pop()
}
