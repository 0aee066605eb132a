//! What an alteration changed and what it kept, in numbers.

use super::BodySide;
use crate::piece::{EdgeName, Pattern, Piece};

/// One thing measured on a pattern.
#[derive(Debug, Clone, PartialEq)]
struct Reading {
    what: String,
    value: f64,
    unit: Unit,
}

/// The unit of a change.
///
/// ```
/// use blockwright::alterations::Unit;
/// assert_eq!(Unit::Degrees.symbol(), "°");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Unit {
    /// Millimetres.
    Millimetres,
    /// Degrees.
    Degrees,
}

impl Unit {
    /// The unit as it is written behind a number.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Self::Millimetres => " mm",
            Self::Degrees => "°",
        }
    }
}

/// One thing that an alteration changed.
///
/// ```
/// use blockwright::alterations::{Change, Unit};
/// let c = Change { what: "back centre_back length".into(), before: 980.0, after: 955.0, unit: Unit::Millimetres };
/// assert_eq!(c.difference(), -25.0);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Change {
    /// What: piece, edge or dart, and which of its measures.
    pub what: String,
    /// Before the alteration.
    pub before: f64,
    /// After it; NaN when it is no longer there, before it when it was not.
    pub after: f64,
    /// Unit of both.
    pub unit: Unit,
}

impl Change {
    /// After less before.
    #[must_use]
    pub fn difference(&self) -> f64 {
        self.after - self.before
    }
}

/// The account of one alteration.
///
/// ```
/// use blockwright::alterations::Account;
/// fn kept(account: &Account) -> usize { account.kept.len() }
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Account {
    /// The alteration's name.
    pub alteration: String,
    /// The amount in `unit`, where the alteration has one.
    pub amount: Option<f64>,
    /// Unit of the amount.
    pub unit: Unit,
    /// Everything that is different.
    pub changes: Vec<Change>,
    /// What was promised to stay, and did.
    pub kept: Vec<String>,
}

/// Differences smaller than this are rounding, in millimetres or degrees.
const SAME: f64 = 5e-4;

/// Everything that differs between two patterns: sewn lengths of edges, intakes and angles of
/// darts, finished girths, shoulder slopes, heights of sleeve caps.
#[must_use]
pub fn changes(before: &Pattern, after: &Pattern) -> Vec<Change> {
    let (old, new) = (readings(before), readings(after));
    let mut found: Vec<Change> = Vec::new();
    // A piece that became unlike on its two sides is compared with what both sides were.
    let divided = |what: &str| new.iter().any(|r| whole(&r.what).as_deref() == Some(what));
    for reading in &old {
        let now = new.iter().find(|r| r.what == reading.what);
        if now.is_none() && divided(&reading.what) {
            continue;
        }
        let value = now.map_or(f64::NAN, |r| r.value);
        if value.is_nan() || (value - reading.value).abs() > SAME {
            found.push(Change {
                what: reading.what.clone(),
                before: reading.value,
                after: value,
                unit: reading.unit,
            });
        }
    }
    for reading in &new {
        if old.iter().any(|r| r.what == reading.what) {
            continue;
        }
        let whole = whole(&reading.what);
        let was = old.iter().find(|r| Some(&r.what) == whole.as_ref());
        let before = was.map_or(f64::NAN, |r| r.value);
        if before.is_nan() || (before - reading.value).abs() > SAME {
            found.push(Change {
                what: reading.what.clone(),
                before,
                after: reading.value,
                unit: reading.unit,
            });
        }
    }
    found
}

/// The name that a measure of one side had when both sides were alike.
fn whole(what: &str) -> Option<String> {
    BodySide::BOTH.into_iter().find_map(|side| {
        let word = format!(" {}", side.name());
        let at = what.find(&word)?;
        let rest = &what[at + word.len()..];
        (rest.is_empty() || rest.starts_with(' ')).then(|| format!("{}{rest}", &what[..at]))
    })
}

/// A measure of a pattern by the name it has in accounts, `back centre_back length` for example.
#[must_use]
pub fn reading(pattern: &Pattern, what: &str) -> Option<f64> {
    readings(pattern)
        .into_iter()
        .find(|r| r.what == what)
        .map(|r| r.value)
}

fn readings(pattern: &Pattern) -> Vec<Reading> {
    let mut found = Vec::new();
    let mut add = |what: String, value: f64, unit: Unit| found.push(Reading { what, value, unit });
    for piece in pattern.pieces() {
        let name = piece.name();
        for edge in piece.outline().edges() {
            let length = piece.seam_length(edge.name()).unwrap_or(f64::NAN);
            add(
                format!("{name} {} length", edge.name()),
                length,
                Unit::Millimetres,
            );
        }
        for dart in piece.darts() {
            add(
                format!("{name} {} dart intake", dart.name),
                dart.intake(),
                Unit::Millimetres,
            );
            let angle = dart.angle().to_degrees();
            add(
                format!("{name} {} dart angle", dart.name),
                angle,
                Unit::Degrees,
            );
        }
        if let Some(slope) = shoulder_slope(piece) {
            add(
                format!("{name} shoulder slope"),
                slope.to_degrees(),
                Unit::Degrees,
            );
        }
        if let Some(cap) = piece.outline().edge(&EdgeName::SLEEVE_CAP) {
            add(
                format!("{name} cap height"),
                cap.curve().bounds().height(),
                Unit::Millimetres,
            );
        }
    }
    for girth in pattern.girths() {
        add(
            format!("{} finished", girth.name),
            pattern.finished(girth),
            Unit::Millimetres,
        );
    }
    found
}

/// Slope of a piece's shoulder from neck side to shoulder point, darts open, in radians.
#[must_use]
pub fn shoulder_slope(piece: &Piece) -> Option<f64> {
    let shoulder = piece.outline().edge(&EdgeName::SHOULDER)?.curve();
    let chord = shoulder.end() - shoulder.start();
    Some(chord.y.atan2(chord.x))
}
