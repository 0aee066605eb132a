//! What grows by how much from size to size.

use super::points::named_points;
use super::{Align, Graded, GradedSize};
use crate::measurements::Measurement;
use crate::piece::{Measure, MeasureKind, Piece};
use crate::units::{Unit, rounded};
use std::fmt::Write as _;

/// What grows from size to size.
///
/// ```
/// use blockwright::grading::Grown;
/// use blockwright::piece::Measure;
/// let dart = Grown::Measure(Measure::dart_intake("back", "waist"));
/// assert_eq!((dart.piece().as_str(), dart.what().as_str()), ("back", "waist dart intake"));
/// assert_eq!(dart.kind(), "dart intake");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Grown {
    /// How far a point lies from the aligned point, across the grain.
    Across {
        /// The piece.
        piece: String,
        /// The point.
        point: String,
    },
    /// How far a point lies below the aligned point, along the grain; above it, negative.
    Along {
        /// The piece.
        piece: String,
        /// The point.
        point: String,
    },
    /// A measure of the pattern: an edge, darts closed, a dart, a finished girth.
    Measure(Measure),
    /// What a finished girth has more than the body.
    Ease {
        /// The girth.
        girth: String,
    },
}

impl Grown {
    /// The piece it is on; empty for a girth of the garment.
    #[must_use]
    pub fn piece(&self) -> String {
        match self {
            Self::Across { piece, .. } | Self::Along { piece, .. } => piece.clone(),
            Self::Measure(measure) => measure.piece().unwrap_or_default(),
            Self::Ease { .. } => String::new(),
        }
    }

    /// What it is, on its piece.
    #[must_use]
    pub fn what(&self) -> String {
        match self {
            Self::Across { point, .. } => format!("{point} across"),
            Self::Along { point, .. } => format!("{point} along"),
            Self::Measure(measure) => {
                let (all, piece) = (measure.to_string(), self.piece());
                let own = all.strip_prefix(&piece).map(str::trim_start);
                own.map(str::to_owned).unwrap_or(all)
            }
            Self::Ease { girth } => format!("{girth} ease"),
        }
    }

    /// What kind of measure it is, in words.
    #[must_use]
    pub const fn kind(&self) -> &'static str {
        match self {
            Self::Across { .. } => "across",
            Self::Along { .. } => "along",
            Self::Measure(measure) => match measure.kind() {
                MeasureKind::EdgeLength { .. } => "length",
                MeasureKind::DartIntake { .. } => "dart intake",
                MeasureKind::DartAngle { .. } => "dart angle",
                MeasureKind::ShoulderSlope { .. } => "slope",
                MeasureKind::CapHeight { .. } => "height",
                MeasureKind::FinishedGirth { .. } | MeasureKind::LineGirth { .. } => "girth",
            },
            Self::Ease { .. } => "ease",
        }
    }

    /// The measure of the pattern, where it is one.
    #[must_use]
    pub const fn measure(&self) -> Option<&Measure> {
        match self {
            Self::Measure(measure) => Some(measure),
            _ => None,
        }
    }

    /// Whether it is a girth of the finished garment.
    pub(super) const fn is_girth(&self) -> bool {
        matches!(self.measure(), Some(m) if matches!(m.kind(), MeasureKind::FinishedGirth { .. }))
    }
}

impl std::fmt::Display for Grown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let text = format!("{} {}", self.piece(), self.what());
        f.pad(text.trim_start())
    }
}

/// One measure in every size, in mm.
///
/// ```
/// use blockwright::grading::{Grown, Increment};
/// use blockwright::piece::Measure;
/// let dart = Increment {
///     of: Grown::Measure(Measure::dart_intake("back", "waist")),
///     values: vec![Some(20.0), Some(17.5), None],
/// };
/// assert_eq!(dart.steps(), [Some(-2.5), None]);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Increment {
    /// What grows.
    pub of: Grown,
    /// In every size; none where the size does not have it.
    pub values: Vec<Option<f64>>,
}

impl Increment {
    /// From every size to the next; none where one of the two does not have it.
    #[must_use]
    pub fn steps(&self) -> Vec<Option<f64>> {
        let next = self.values.iter().skip(1);
        next.zip(&self.values)
            .map(|(next, this)| Some((*next)? - (*this)?))
            .collect()
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
/// assert!(increments.csv(Unit::Cm).starts_with("piece,measure (cm),38,40,38 to 40\r\n"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Increments {
    /// The labels.
    pub sizes: Vec<String>,
    /// The largest of the steps of height, bust, waist and hip between neighbouring bodies.
    pub body_steps: Vec<f64>,
    /// The measures: piece by piece, then the girths.
    pub measures: Vec<Increment>,
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
            gather(&all, &mut measures);
        }
        let girths: Vec<_> = self.sizes().iter().map(girths).collect();
        gather(&girths, &mut measures);
        let next = self.sizes().iter().skip(1);
        let body_steps = next.zip(self.sizes()).map(|(next, this)| {
            let step = |m| (next.body().value(m) - this.body().value(m)).abs();
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
    pub fn find(&self, piece: &str, what: &str) -> Option<&Increment> {
        self.measures
            .iter()
            .find(|m| m.of.piece() == piece && m.of.what() == what)
    }

    /// As a table of comma-separated values: a measure a row; its value in every size, then its
    /// steps, to a hundredth of a millimetre or a thousandth of a larger unit.
    #[must_use]
    pub fn csv(&self, unit: Unit) -> String {
        let places = if unit == Unit::Mm { 2 } else { 3 };
        let mut out = format!("piece,measure ({unit})");
        let steps = self
            .sizes
            .iter()
            .zip(self.sizes.iter().skip(1))
            .map(|(this, next)| format!("{this} to {next}"));
        for head in self.sizes.iter().cloned().chain(steps) {
            let _ = write!(out, ",{}", field(&head));
        }
        out.push_str("\r\n");
        for measure in &self.measures {
            let of = &measure.of;
            let _ = write!(out, "{},{}", field(&of.piece()), field(&of.what()));
            for value in measure.values.iter().copied().chain(measure.steps()) {
                out.push(',');
                if let Some(value) = value {
                    let value = rounded(unit.from_mm(value), places);
                    let _ = write!(out, "{value:.*}", usize::from(places));
                }
            }
            out.push_str("\r\n");
        }
        out
    }
}

/// A field of a table of comma-separated values, quoted where it must be.
pub(crate) fn field(text: &str) -> String {
    if text.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", text.replace('"', "\"\""))
    } else {
        text.to_owned()
    }
}

type Reading = (Grown, f64);

fn of_piece(piece: &Piece, align: Align) -> Vec<Reading> {
    let from = align.on(piece);
    let name = || piece.name().to_owned();
    let mut found = Vec::new();
    for (point, at) in named_points(piece) {
        let by = at - from;
        let across = Grown::Across {
            piece: name(),
            point: point.clone(),
        };
        let along = Grown::Along {
            piece: name(),
            point,
        };
        found.extend([(across, by.x), (along, by.y)]);
    }
    let lengths = |measure: &Measure| {
        matches!(
            measure.kind(),
            MeasureKind::EdgeLength { .. } | MeasureKind::DartIntake { .. }
        )
    };
    let measures = piece.measures().into_iter();
    found.extend(
        measures
            .filter(|(measure, _)| lengths(measure))
            .map(|(measure, value)| (Grown::Measure(measure), value)),
    );
    found
}

fn girths(size: &GradedSize) -> Vec<Reading> {
    let pattern = size.pattern();
    let mut found = Vec::new();
    for girth in pattern.girths() {
        let finished = pattern.finished(girth);
        let measure = Measure::of_girth(girth);
        let ease = Grown::Ease {
            girth: girth.name.clone(),
        };
        found.push((Grown::Measure(measure), finished));
        found.push((ease, finished - girth.body));
    }
    found
}

/// Readings of every size as measures, in the order in which they first appear.
fn gather(sizes: &[Vec<Reading>], into: &mut Vec<Increment>) {
    let mut all: Vec<&Grown> = Vec::new();
    for (of, _) in sizes.iter().flatten() {
        if !all.contains(&of) {
            all.push(of);
        }
    }
    into.extend(all.into_iter().map(|of| {
        let in_size = |size: &Vec<Reading>| size.iter().find(|(name, _)| name == of).map(|r| r.1);
        Increment {
            of: of.clone(),
            values: sizes.iter().map(in_size).collect(),
        }
    }));
}
