//! Measures: what promises, changes, targets and increments speak of.

use super::side::base_name;
use super::side_name::ends_in_side;
use super::{BodySide, EdgeName, Girth, PieceError};
use serde::{Deserialize, Serialize};
use std::fmt;

/// The unit of a measure.
///
/// ```
/// use blockwright::piece::{Measure, MeasureUnit};
/// assert_eq!(Measure::dart_angle("back", "waist").unit(), MeasureUnit::Degrees);
/// assert_eq!(MeasureUnit::Degrees.symbol(), "°");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "unit"))]
pub enum MeasureUnit {
    /// Millimetres.
    #[serde(rename = "mm")]
    Millimetres,
    /// Degrees.
    #[serde(rename = "deg")]
    Degrees,
}

impl MeasureUnit {
    /// The unit as it is written behind a number.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetres => " mm",
            Self::Degrees => "°",
        }
    }
}

/// What kind of measure it is, and of what; names are those where both sides are alike.
///
/// ```
/// use blockwright::piece::{Measure, MeasureKind};
/// let hip = Measure::girth("hip");
/// assert_eq!(hip.kind(), &MeasureKind::FinishedGirth { girth: "hip".into() });
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum MeasureKind {
    /// Length of an edge as it is sewn, its darts closed, in millimetres.
    EdgeLength {
        /// The piece.
        piece: String,
        /// The edge.
        edge: EdgeName,
    },
    /// Intake of a dart, in millimetres.
    DartIntake {
        /// The piece.
        piece: String,
        /// The dart.
        dart: String,
    },
    /// Angle of a dart about its apex, in degrees.
    DartAngle {
        /// The piece.
        piece: String,
        /// The dart.
        dart: String,
    },
    /// Slope of a shoulder from neck side to shoulder point, darts open, in degrees.
    ShoulderSlope {
        /// The piece.
        piece: String,
    },
    /// Height of a sleeve cap, in millimetres.
    CapHeight {
        /// The piece.
        piece: String,
    },
    /// A girth of the finished garment, in millimetres. On one side of the body: what that side
    /// has of a girth of the trunk, or the girth of that side's limb.
    FinishedGirth {
        /// The girth.
        girth: String,
    },
    /// Width of the finished garment all round along the balance lines of a name, darts closed, in
    /// millimetres: where no girth was asked for. On one side of the body: what that side has of
    /// it, or all of that side's limb.
    LineGirth {
        /// The balance line.
        line: String,
    },
}

/// A measure of a pattern: of what, and on which side of the body where left and right are
/// unlike.
///
/// Written out it reads as in accounts: `back centre_back length`, `back left shoulder slope`.
/// In JSON it is an object with the unique names of the pattern document:
/// `{"kind": "edge_length", "piece": "back left", "edge": "centre_back", "side": "left"}`.
///
/// ```
/// use blockwright::piece::{BodySide, EdgeName, Measure};
/// let centre = Measure::edge_length("back", EdgeName::CENTRE_BACK);
/// assert_eq!(centre.to_string(), "back centre_back length");
/// let left = centre.on(BodySide::Left);
/// assert_eq!(left.to_string(), "back left centre_back length");
/// assert_eq!(left.of_both_sides(), centre);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "measure"))]
#[serde(into = "Written", try_from = "Written")]
pub struct Measure {
    kind: MeasureKind,
    side: Option<BodySide>,
}

impl Measure {
    const fn of_kind(kind: MeasureKind) -> Self {
        Self { kind, side: None }
    }

    /// The sewn length of an edge.
    #[must_use]
    pub fn edge_length(piece: impl Into<String>, edge: EdgeName) -> Self {
        let piece = piece.into();
        Self::of_kind(MeasureKind::EdgeLength { piece, edge })
    }

    /// The intake of a dart.
    #[must_use]
    pub fn dart_intake(piece: impl Into<String>, dart: impl Into<String>) -> Self {
        let (piece, dart) = (piece.into(), dart.into());
        Self::of_kind(MeasureKind::DartIntake { piece, dart })
    }

    /// The angle of a dart.
    #[must_use]
    pub fn dart_angle(piece: impl Into<String>, dart: impl Into<String>) -> Self {
        let (piece, dart) = (piece.into(), dart.into());
        Self::of_kind(MeasureKind::DartAngle { piece, dart })
    }

    /// The slope of a piece's shoulder.
    #[must_use]
    pub fn shoulder_slope(piece: impl Into<String>) -> Self {
        let piece = piece.into();
        Self::of_kind(MeasureKind::ShoulderSlope { piece })
    }

    /// The height of a sleeve's cap.
    #[must_use]
    pub fn cap_height(piece: impl Into<String>) -> Self {
        let piece = piece.into();
        Self::of_kind(MeasureKind::CapHeight { piece })
    }

    /// A finished girth.
    #[must_use]
    pub fn girth(girth: impl Into<String>) -> Self {
        let girth = girth.into();
        Self::of_kind(MeasureKind::FinishedGirth { girth })
    }

    /// The finished girth of a girth that may belong to one side.
    #[must_use]
    pub fn of_girth(girth: &Girth) -> Self {
        Self::girth(girth.base_name()).maybe_on(girth.side)
    }

    /// The width all round along the balance lines of a name.
    ///
    /// ```
    /// use blockwright::piece::Measure;
    /// assert_eq!(Measure::line_girth("elbow").to_string(), "elbow line girth");
    /// ```
    #[must_use]
    pub fn line_girth(line: impl Into<String>) -> Self {
        let line = line.into();
        Self::of_kind(MeasureKind::LineGirth { line })
    }

    pub(super) fn maybe_on(self, side: Option<BodySide>) -> Self {
        Self { side, ..self }
    }

    /// The same measure on one side of the body.
    #[must_use]
    pub fn on(&self, side: BodySide) -> Self {
        self.clone().maybe_on(Some(side))
    }

    /// The same measure where both sides are alike.
    #[must_use]
    pub fn of_both_sides(&self) -> Self {
        self.clone().maybe_on(None)
    }

    /// What kind it is, and of what.
    #[must_use]
    pub const fn kind(&self) -> &MeasureKind {
        &self.kind
    }

    /// The side of the body; none where it is the same on both or goes round the body.
    #[must_use]
    pub const fn side(&self) -> Option<BodySide> {
        self.side
    }

    /// The unique name of the piece it is on; none for a girth.
    ///
    /// ```
    /// use blockwright::piece::{BodySide, Measure};
    /// let slope = Measure::shoulder_slope("front").on(BodySide::Right);
    /// assert_eq!(slope.piece().as_deref(), Some("front right"));
    /// assert_eq!(Measure::girth("bust").piece(), None);
    /// ```
    #[must_use]
    pub fn piece(&self) -> Option<String> {
        self.base_piece().map(|piece| unique(piece, self.side))
    }

    /// What the piece is called where both sides are alike.
    pub(super) fn base_piece(&self) -> Option<&str> {
        match &self.kind {
            MeasureKind::EdgeLength { piece, .. }
            | MeasureKind::DartIntake { piece, .. }
            | MeasureKind::DartAngle { piece, .. }
            | MeasureKind::ShoulderSlope { piece }
            | MeasureKind::CapHeight { piece } => Some(piece),
            MeasureKind::FinishedGirth { .. } | MeasureKind::LineGirth { .. } => None,
        }
    }

    /// Its unit.
    #[must_use]
    pub const fn unit(&self) -> MeasureUnit {
        match self.kind {
            MeasureKind::DartAngle { .. } | MeasureKind::ShoulderSlope { .. } => {
                MeasureUnit::Degrees
            }
            _ => MeasureUnit::Millimetres,
        }
    }
}

fn unique(name: &str, side: Option<BodySide>) -> String {
    side.map_or_else(|| name.to_owned(), |side| side.name_of(name))
}

impl fmt::Display for Measure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let of = |name: &str| unique(name, self.side);
        let text = match &self.kind {
            MeasureKind::EdgeLength { piece, edge } => format!("{} {edge} length", of(piece)),
            MeasureKind::DartIntake { piece, dart } => format!("{} {dart} dart intake", of(piece)),
            MeasureKind::DartAngle { piece, dart } => format!("{} {dart} dart angle", of(piece)),
            MeasureKind::ShoulderSlope { piece } => format!("{} shoulder slope", of(piece)),
            MeasureKind::CapHeight { piece } => format!("{} cap height", of(piece)),
            MeasureKind::FinishedGirth { girth } => format!("{} finished", of(girth)),
            MeasureKind::LineGirth { line } => format!("{} line girth", of(line)),
        };
        f.pad(&text)
    }
}

/// A measure as it stands in JSON.
#[derive(Debug, Clone, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(tag = "kind", rename_all = "snake_case", deny_unknown_fields)]
enum Written {
    EdgeLength {
        piece: String,
        edge: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<BodySide>,
    },
    DartIntake {
        piece: String,
        dart: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<BodySide>,
    },
    DartAngle {
        piece: String,
        dart: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<BodySide>,
    },
    ShoulderSlope {
        piece: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<BodySide>,
    },
    CapHeight {
        piece: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<BodySide>,
    },
    FinishedGirth {
        girth: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<BodySide>,
    },
    LineGirth {
        line: String,
        #[serde(default, skip_serializing_if = "Option::is_none")]
        side: Option<BodySide>,
    },
}

impl From<Measure> for Written {
    fn from(measure: Measure) -> Self {
        let side = measure.side;
        let of = |name: String| unique(&name, side);
        match measure.kind {
            MeasureKind::EdgeLength { piece, edge } => Self::EdgeLength {
                piece: of(piece),
                edge: edge.to_string(),
                side,
            },
            MeasureKind::DartIntake { piece, dart } => Self::DartIntake {
                piece: of(piece),
                dart,
                side,
            },
            MeasureKind::DartAngle { piece, dart } => Self::DartAngle {
                piece: of(piece),
                dart,
                side,
            },
            MeasureKind::ShoulderSlope { piece } => Self::ShoulderSlope {
                piece: of(piece),
                side,
            },
            MeasureKind::CapHeight { piece } => Self::CapHeight {
                piece: of(piece),
                side,
            },
            MeasureKind::FinishedGirth { girth } => Self::FinishedGirth {
                girth: of(girth),
                side,
            },
            MeasureKind::LineGirth { line } => Self::LineGirth { line, side },
        }
    }
}

impl TryFrom<Written> for Measure {
    type Error = PieceError;

    fn try_from(written: Written) -> Result<Self, PieceError> {
        let of = |kind, name: &str, side| {
            ends_in_side(kind, name, side).map(|()| base_name(name, side).to_owned())
        };
        let (measure, side) = match written {
            Written::EdgeLength { piece, edge, side } => {
                let piece = of("piece", &piece, side)?;
                (Self::edge_length(piece, EdgeName::new(edge)), side)
            }
            Written::DartIntake { piece, dart, side } => {
                (Self::dart_intake(of("piece", &piece, side)?, dart), side)
            }
            Written::DartAngle { piece, dart, side } => {
                (Self::dart_angle(of("piece", &piece, side)?, dart), side)
            }
            Written::ShoulderSlope { piece, side } => {
                (Self::shoulder_slope(of("piece", &piece, side)?), side)
            }
            Written::CapHeight { piece, side } => {
                (Self::cap_height(of("piece", &piece, side)?), side)
            }
            Written::FinishedGirth { girth, side } => {
                (Self::girth(of("girth", &girth, side)?), side)
            }
            Written::LineGirth { line, side } => (Self::line_girth(line), side),
        };
        Ok(measure.maybe_on(side))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{BodySide, EdgeName, Measure};

    #[test]
    fn every_kind_comes_back_from_json() {
        let all = [
            Measure::edge_length("back", EdgeName::HEM),
            Measure::dart_intake("skirt back", "waist"),
            Measure::dart_angle("front", "bust"),
            Measure::shoulder_slope("front"),
            Measure::cap_height("sleeve"),
            Measure::girth("upper_arm"),
            Measure::line_girth("elbow"),
        ];
        for measure in all {
            for one in [measure.clone(), measure.on(BodySide::Left)] {
                let text = serde_json::to_string(&one).unwrap();
                assert_eq!(
                    serde_json::from_str::<Measure>(&text).unwrap(),
                    one,
                    "{text}"
                );
                assert_eq!(text.contains("side"), one.side().is_some(), "{text}");
            }
        }
    }

    #[test]
    fn a_side_and_a_name_that_contradict_each_other_are_refused() {
        let text = r#"{"kind": "cap_height", "piece": "sleeve right", "side": "left"}"#;
        let error = serde_json::from_str::<Measure>(text)
            .unwrap_err()
            .to_string();
        assert!(error.contains("must end in ` left`"), "{error}");
        // A piece that only happens to be called so belongs to both sides.
        let text = r#"{"kind": "cap_height", "piece": "sleeve right"}"#;
        let measure: Measure = serde_json::from_str(text).unwrap();
        assert_eq!(measure, Measure::cap_height("sleeve right"));
        assert_ne!(measure, Measure::cap_height("sleeve").on(BodySide::Right));
    }
}
