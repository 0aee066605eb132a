//! Everything that accounts and promises measure on a pattern, by name.

use crate::piece::{EdgeName, Pattern, Piece};

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

/// One thing measured on a pattern.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Reading {
    pub(super) what: String,
    pub(super) value: f64,
    pub(super) unit: Unit,
}

/// Everything that accounts tell of a pattern: sewn lengths of edges, intakes and angles of
/// darts, shoulder slopes, heights of sleeve caps, finished girths.
///
/// Measured once, asked often.
///
/// ```
/// use blockwright::alterations::Readings;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let readings = Readings::of(&pattern);
/// assert!(readings.get("back centre_back length").is_some_and(|length| length > 500.0));
/// assert_eq!(readings.get("back armscye length"), None);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Readings(Vec<Reading>);

impl Readings {
    /// Measures a pattern.
    #[must_use]
    pub fn of(pattern: &Pattern) -> Self {
        let mut found = Vec::new();
        let mut add = |what: String, value: f64, unit: Unit| {
            found.push(Reading { what, value, unit });
        };
        for piece in pattern.pieces() {
            of_piece(piece, &mut add);
        }
        for girth in pattern.girths() {
            let finished = pattern.finished(girth);
            add(
                format!("{} finished", girth.name),
                finished,
                Unit::Millimetres,
            );
        }
        Self(found)
    }

    /// A measure by the name it has in accounts, `back centre_back length` for example, in
    /// millimetres or degrees.
    #[must_use]
    pub fn get(&self, what: &str) -> Option<f64> {
        self.find(what).map(|r| r.value)
    }

    pub(super) fn find(&self, what: &str) -> Option<&Reading> {
        self.0.iter().find(|r| r.what == what)
    }

    pub(super) fn iter(&self) -> std::slice::Iter<'_, Reading> {
        self.0.iter()
    }
}

/// A measure of a pattern by the name it has in accounts, `back centre_back length` for example.
///
/// ```
/// use blockwright::alterations::reading;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), Some(600.0))?;
/// assert!(reading(&pattern, "hip finished").is_some_and(|hip| hip > 900.0));
/// assert_eq!(reading(&pattern, "back shoulder length"), None);
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[must_use]
pub fn reading(pattern: &Pattern, what: &str) -> Option<f64> {
    Readings::of(pattern).get(what)
}

fn of_piece(piece: &Piece, add: &mut impl FnMut(String, f64, Unit)) {
    let name = piece.name();
    for edge in piece.outline().edges() {
        let length = piece.seam_length(edge.name()).unwrap_or(f64::NAN);
        let what = format!("{name} {} length", edge.name());
        add(what, length, Unit::Millimetres);
    }
    for dart in piece.darts() {
        let (intake, angle) = (dart.intake(), dart.angle().to_degrees());
        let what = |measure: &str| format!("{name} {} dart {measure}", dart.name);
        add(what("intake"), intake, Unit::Millimetres);
        add(what("angle"), angle, Unit::Degrees);
    }
    if let Some(slope) = shoulder_slope(piece) {
        let what = format!("{name} shoulder slope");
        add(what, slope.to_degrees(), Unit::Degrees);
    }
    if let Some(cap) = piece.outline().edge(&EdgeName::SLEEVE_CAP) {
        let height = cap.curve().bounds().height();
        add(format!("{name} cap height"), height, Unit::Millimetres);
    }
}

/// Slope of a piece's shoulder from neck side to shoulder point, darts open, in radians.
///
/// ```
/// use blockwright::alterations::shoulder_slope;
/// use blockwright::draft::{Ease, Figure, Fit, bodice, skirt};
/// let (figure, ease) = (Figure::cylinder(900.0), Ease::of(Fit::Regular));
/// let front = bodice(&figure, &ease)?.piece("front").and_then(shoulder_slope);
/// assert!(front.is_some_and(|slope| slope > 0.0));
/// assert_eq!(skirt(&figure, &ease, None)?.piece("front").and_then(shoulder_slope), None);
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[must_use]
pub fn shoulder_slope(piece: &Piece) -> Option<f64> {
    let shoulder = piece.outline().edge(&EdgeName::SHOULDER)?.curve();
    let chord = shoulder.end() - shoulder.start();
    Some(chord.atan2())
}
