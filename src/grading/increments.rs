//! What grows by how much from size to size.

use super::points::named_points;
use super::{Align, Graded, GradedSize};
use crate::measurements::Measurement;
use crate::piece::Piece;
use std::fmt::Write as _;

/// What a measure is.
///
/// ```
/// use blockwright::grading::Measures;
/// assert_eq!(Measures::DartIntake.name(), "dart intake");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Measures {
    /// How far a point lies from the aligned point, across the grain.
    Across,
    /// How far a point lies below the aligned point, along the grain; above it, negative.
    Along,
    /// Length of an edge, darts closed.
    Length,
    /// Intake of a dart.
    DartIntake,
    /// A finished girth.
    Girth,
    /// What a finished girth has more than the body.
    Ease,
}

impl Measures {
    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Across => "across",
            Self::Along => "along",
            Self::Length => "length",
            Self::DartIntake => "dart intake",
            Self::Girth => "girth",
            Self::Ease => "ease",
        }
    }
}

/// One measure in every size, in mm.
///
/// ```
/// use blockwright::grading::{Measure, Measures};
/// let measure = Measure {
///     piece: "back".into(), what: "waist dart intake".into(), measures: Measures::DartIntake,
///     values: vec![Some(20.0), Some(17.5), None],
/// };
/// assert_eq!(measure.steps(), [Some(-2.5), None]);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Measure {
    /// The piece; empty for a girth of the garment.
    pub piece: String,
    /// What is measured.
    pub what: String,
    /// How.
    pub measures: Measures,
    /// In every size; none where the size has it not.
    pub values: Vec<Option<f64>>,
}

impl Measure {
    /// From every size to the next; none where one of the two has it not.
    #[must_use]
    pub fn steps(&self) -> Vec<Option<f64>> {
        self.values
            .windows(2)
            .map(|pair| Some(pair[1]? - pair[0]?))
            .collect()
    }

    /// Piece and measure.
    #[must_use]
    pub fn title(&self) -> String {
        if self.piece.is_empty() {
            self.what.clone()
        } else {
            format!("{} {}", self.piece, self.what)
        }
    }
}

/// Every measure in every size.
///
/// ```
/// # use blockwright::draft::Block;
/// # use blockwright::recipe::Recipe;
/// # use blockwright::units::Unit;
/// # use blockwright::measurements::{Body, Measurement, MeasurementErrors, Size, SizeTable};
/// # fn body(bust: f64) -> Result<Body, MeasurementErrors> { Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
/// #     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// # ]) }
/// # let sizes = vec![Size::new("38", body(880.0)?), Size::new("40", body(920.0)?)];
/// use blockwright::grading::{Align, grade};
/// let graded = grade(&Recipe::new("Bodice", Block::Bodice), &SizeTable::new("Two", Unit::Cm, sizes))?;
/// let increments = graded.increments(Align::Nape);
/// assert!(increments.find("back", "underarm across").is_some());
/// assert!(increments.csv().starts_with("piece,measure,38,40,38 to 40\r\n"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Increments {
    /// The labels.
    pub sizes: Vec<String>,
    /// The largest of the steps of height, bust, waist and hip between neighbouring bodies.
    pub body_steps: Vec<f64>,
    /// The measures: piece by piece, then the girths.
    pub measures: Vec<Measure>,
}

impl Graded {
    /// What grows by how much; points are measured from the aligned one.
    #[must_use]
    pub fn increments(&self, align: Align) -> Increments {
        let mut measures = Vec::new();
        for name in self.piece_names() {
            let all: Vec<Vec<Reading>> = self
                .sizes()
                .iter()
                .map(|size| size.pattern().piece(name))
                .map(|piece| piece.map_or_else(Vec::new, |piece| of_piece(piece, align)))
                .collect();
            gather(name, &all, &mut measures);
        }
        let girths: Vec<_> = self.sizes().iter().map(girths).collect();
        gather("", &girths, &mut measures);
        let body_steps = self.sizes().windows(2).map(|pair| {
            let step = |m| (pair[1].body().value(m) - pair[0].body().value(m)).abs();
            Measurement::REQUIRED
                .map(step)
                .into_iter()
                .fold(0.0, f64::max)
        });
        Increments {
            sizes: self.labels().map(str::to_owned).collect(),
            body_steps: body_steps.collect(),
            measures,
        }
    }
}

impl Increments {
    /// The measure of that name on that piece; girths are on none.
    #[must_use]
    pub fn find(&self, piece: &str, what: &str) -> Option<&Measure> {
        self.measures
            .iter()
            .find(|m| m.piece == piece && m.what == what)
    }

    /// As a table of comma-separated values: a measure a row; its value in every size, then its
    /// steps, in mm to a hundredth.
    #[must_use]
    pub fn csv(&self) -> String {
        let mut out = String::from("piece,measure");
        let steps = self
            .sizes
            .windows(2)
            .map(|pair| format!("{} to {}", pair[0], pair[1]));
        for head in self.sizes.iter().cloned().chain(steps) {
            let _ = write!(out, ",{}", field(&head));
        }
        out.push_str("\r\n");
        for measure in &self.measures {
            let _ = write!(out, "{},{}", field(&measure.piece), field(&measure.what));
            for value in measure.values.iter().copied().chain(measure.steps()) {
                out.push(',');
                if let Some(value) = value {
                    // Adding nothing takes the minus off a zero.
                    let _ = write!(out, "{:.2}", (value * 100.0).round() / 100.0 + 0.0);
                }
            }
            out.push_str("\r\n");
        }
        out
    }
}

/// A field, quoted where it must be.
fn field(text: &str) -> String {
    if text.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text.to_owned()
    }
}

type Reading = (String, Measures, f64);

fn of_piece(piece: &Piece, align: Align) -> Vec<Reading> {
    let from = align.on(piece);
    let mut found = Vec::new();
    for (name, at) in named_points(piece) {
        let by = at - from;
        found.push((format!("{name} across"), Measures::Across, by.x));
        found.push((format!("{name} along"), Measures::Along, by.y));
    }
    for edge in piece.outline().edges() {
        if let Some(length) = piece.seam_length(edge.name()) {
            found.push((format!("{} length", edge.name()), Measures::Length, length));
        }
    }
    for dart in piece.darts() {
        let what = format!("{} dart intake", dart.name);
        found.push((what, Measures::DartIntake, dart.intake()));
    }
    found
}

fn girths(size: &GradedSize) -> Vec<Reading> {
    let pattern = size.pattern();
    let mut found = Vec::new();
    for girth in pattern.girths() {
        let finished = pattern.finished(girth);
        let ease = finished - girth.body;
        found.push((
            format!("{} finished", girth.name),
            Measures::Girth,
            finished,
        ));
        found.push((format!("{} ease", girth.name), Measures::Ease, ease));
    }
    found
}

/// Readings of every size as measures, in the order in which they first appear.
fn gather(piece: &str, sizes: &[Vec<Reading>], into: &mut Vec<Measure>) {
    let mut names: Vec<(&str, Measures)> = Vec::new();
    for (what, measures, _) in sizes.iter().flatten() {
        if !names.iter().any(|(name, _)| name == what) {
            names.push((what, *measures));
        }
    }
    into.extend(names.into_iter().map(|(what, measures)| {
        Measure {
            piece: piece.to_owned(),
            what: what.to_owned(),
            measures,
            values: sizes
                .iter()
                .map(|all| all.iter().find(|(name, ..)| name == what).map(|r| r.2))
                .collect(),
        }
    }));
}
