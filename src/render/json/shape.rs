//! What a document looks like: the types that are written, read, and described by the schema.

use super::FitMapRecord;
use crate::measurements::BodyRecord;
use crate::piece::{BodySide, EaseOn, EdgeRole, Measure, MeasureUnit, NotchKind, Pressed};
use serde::de::{Deserialize, Deserializer, MapAccess, Visitor};
use serde::ser::{Serialize, Serializer};
use serde::{Deserialize as Read, Serialize as Write};
use std::fmt;
use std::marker::PhantomData;

/// The version that is written and read.
pub(super) const VERSION: u32 = 2;

/// The format's name.
pub(super) const FORMAT: &str = "blockwright-pattern";

/// A point: x and y in millimetres, y down the page.
pub(super) type At = [f64; 2];

/// A sewing pattern: pieces, how they are sewn, what was asked of it and how it came about.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "pattern"))]
#[serde(deny_unknown_fields)]
pub(super) struct DocumentShape {
    /// What kind of document this is.
    pub format: FormatName,
    /// The version of the format; another version is refused.
    #[cfg_attr(feature = "schema", schemars(extend("const" = VERSION)))]
    pub version: u32,
    /// The unit of every length.
    pub units: UnitsName,
    /// The title of the job.
    pub title: String,
    /// The block: `bodice`, `skirt`, `bodice_and_skirt`, `dress`, `tunic`, `shirt`.
    pub block: String,
    /// The measurements of the body, by name: lengths in mm, to a thousandth.
    pub body: BodyRecord,
    /// The widths of the seam allowance; null where the pattern has stitching lines only.
    pub allowance: Option<AllowanceShape>,
    /// The pieces; their names differ.
    pub pieces: Vec<PieceShape>,
    /// The seams; their names differ.
    pub seams: Vec<SeamShape>,
    /// The finished girths that were asked for, by name.
    pub girths: Ordered<GirthShape>,
    /// What each alteration changed and kept, in the order in which they were made.
    pub account: Vec<AccountShape>,
    /// What the wearer or cutter should know.
    pub warnings: Vec<WarningShape>,
    /// How the pattern lies on a wearer with whom it was compared.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fit_map: Option<FitMapRecord>,
}

#[derive(Debug, Clone, Copy, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(super) enum FormatName {
    #[serde(rename = "blockwright-pattern")]
    BlockwrightPattern,
}

#[derive(Debug, Clone, Copy, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(super) enum UnitsName {
    #[serde(rename = "mm")]
    Millimetres,
}

/// Widths of the seam allowance in millimetres, 0 to 100. An edge on the fold has none.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "allowance"))]
#[serde(deny_unknown_fields)]
pub(super) struct AllowanceShape {
    /// The width of an edge that is not named.
    pub default: f64,
    /// Widths by the name of the edge: `hem`, `neckline` and so on.
    pub edges: Ordered<f64>,
}

/// A piece.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "piece"))]
#[serde(deny_unknown_fields)]
pub(super) struct PieceShape {
    /// Its name.
    pub name: String,
    /// The side of the body it is for, where left and right are unlike; else null. The name then
    /// ends in the side's word: `back left`.
    pub side: Option<BodySide>,
    /// How it is cut.
    pub cut: CutName,
    /// Whether it is cut with the pattern face down; a piece that is cut once may be.
    pub face_down: bool,
    /// The stitching line, clockwise on the page: each edge starts where the one before it ended.
    pub edges: Vec<EdgeShape>,
    /// The darts, drawn open.
    pub darts: Vec<DartShape>,
    /// Points with a meaning on the body: `bust_point`.
    pub points: Vec<PointShape>,
    /// The grain line, from its lower to its upper end.
    pub grain: [At; 2],
    /// Marks where seams meet.
    pub notches: Vec<NotchShape>,
    /// Lines that lie level on the body: `underarm`, `bust`, `waist`, `hip`.
    pub lines: Vec<LineShape>,
    /// Where the cloth is drilled or marked.
    pub drill_points: Vec<PointShape>,
    /// The line to cut along, closed; null where the pattern has no allowance.
    pub cut_line: Option<String>,
}

/// How a piece is cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "cut"))]
#[serde(rename_all = "snake_case")]
pub(super) enum CutName {
    /// Once, its fold edge on the fold of the cloth.
    Fold,
    /// Twice, the second time mirrored.
    Pair,
    /// Once.
    Single,
}

/// An edge of a piece.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "edge"))]
#[serde(deny_unknown_fields)]
pub(super) struct EdgeShape {
    /// Its name: `neckline`, `side_seam` and so on; those of a piece differ.
    pub name: String,
    /// What becomes of it.
    pub role: EdgeRole,
    /// SVG path data in absolute coordinates: one `M`, then `L`, `Q` or `C`.
    pub path: String,
}

/// A dart.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "dart"))]
#[serde(deny_unknown_fields)]
pub(super) struct DartShape {
    /// Its name; those of a piece differ.
    pub name: String,
    /// The edge it opens on; null when it lies inside the piece.
    pub edge: Option<String>,
    /// Ends of the legs: on the edge, in the outline's order; inside the piece, its widest points.
    pub legs: [At; 2],
    /// Where the legs meet: one apex, or the upper and the lower one.
    #[cfg_attr(feature = "schema", schemars(length(min = 1, max = 2)))]
    pub apexes: Vec<At>,
    /// The side to which the fold is pressed.
    pub press: Pressed,
}

/// A named point.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "point"))]
#[serde(deny_unknown_fields)]
pub(super) struct PointShape {
    /// Its name, or what it marks.
    pub name: String,
    /// Where it is.
    pub at: At,
}

/// A notch.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "notch"))]
#[serde(deny_unknown_fields)]
pub(super) struct NotchShape {
    /// Notches of one name on the two sides of a seam meet.
    pub name: String,
    /// The edge it is on.
    pub edge: String,
    /// Distance from the start of the edge, along the edge with its darts open.
    pub at: f64,
    /// Cut once or twice.
    pub kind: NotchKind,
}

/// A balance line.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "line"))]
#[serde(deny_unknown_fields)]
pub(super) struct LineShape {
    /// Its name; those of a piece differ.
    pub name: String,
    /// SVG path data, from the fold toward the side seam.
    pub path: String,
}

/// Two runs of edges that are sewn to each other.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "seam"))]
#[serde(deny_unknown_fields)]
pub(super) struct SeamShape {
    /// Its name.
    pub name: String,
    /// The side of the body it is on, where left and right are unlike; else null.
    pub side: Option<BodySide>,
    /// One side, in the order in which it is sewn.
    pub a: Vec<EdgeRefShape>,
    /// The other side, in the order in which it is sewn.
    pub b: Vec<EdgeRefShape>,
    /// By how much one side is longer and eased in.
    pub ease: f64,
    /// Which side that is; null when the ease is zero.
    pub ease_on: Option<EaseOn>,
}

/// An edge of a piece in a seam.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "seam_edge"))]
#[serde(deny_unknown_fields)]
pub(super) struct EdgeRefShape {
    /// The piece.
    pub piece: String,
    /// The edge.
    pub edge: String,
    /// Whether the seam runs along it against the direction of its path.
    pub against: bool,
}

/// A finished girth or width.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "girth"))]
#[serde(deny_unknown_fields)]
pub(super) struct GirthShape {
    /// The side of the body whose limb it goes round, where left and right are unlike; else null.
    pub side: Option<BodySide>,
    /// The body's measurement.
    pub body: f64,
    /// The ease added.
    pub ease: f64,
    /// As the sewn garment has it, measured on the pieces; to a ten-thousandth.
    pub finished: f64,
    /// Whether it goes round a limb: then it is measured on one piece of a pair.
    pub limb: bool,
    /// Along what it is measured.
    pub runs: Vec<RunShape>,
}

/// A part of a girth on one piece.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "run"))]
#[serde(deny_unknown_fields)]
pub(super) struct RunShape {
    /// The piece.
    pub piece: String,
    /// Whether it is measured along an edge or a balance line.
    pub along: AlongName,
    /// The name of that edge or line.
    pub name: String,
}

#[derive(Debug, Clone, Copy, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "along"))]
#[serde(rename_all = "snake_case")]
pub(super) enum AlongName {
    Edge,
    Line,
}

/// The account of one alteration.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "account"))]
#[serde(deny_unknown_fields)]
pub(super) struct AccountShape {
    /// The alteration's name.
    pub alteration: String,
    /// By how much, where it has an amount.
    pub amount: Option<f64>,
    /// The unit of the amount.
    pub unit: MeasureUnit,
    /// Everything that is different.
    pub changes: Vec<ChangeShape>,
    /// What was promised to stay, and did.
    pub kept: Vec<String>,
    /// The same, each as a measure for programs.
    pub kept_measures: Vec<Measure>,
}

/// One thing that an alteration changed.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "change"))]
#[serde(deny_unknown_fields)]
pub(super) struct ChangeShape {
    /// Piece, edge or dart, and which of its measures.
    pub what: String,
    /// The same for programs.
    pub measure: Measure,
    /// Before the alteration; null where it was not there.
    pub before: Option<f64>,
    /// After it; null where it is no longer there.
    pub after: Option<f64>,
}

/// A warning.
#[derive(Debug, Clone, PartialEq, Write, Read)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "warning"))]
#[serde(deny_unknown_fields)]
pub(super) struct WarningShape {
    /// A short code in snake case, for programs.
    pub code: String,
    /// A sentence with its numbers, for people.
    pub text: String,
}

/// An object whose keys are names, in the order in which they are written.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Ordered<V>(pub Vec<(String, V)>);

impl<V: Serialize> Serialize for Ordered<V> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(key, value)| (key, value)))
    }
}

impl<'de, V: Deserialize<'de>> Deserialize<'de> for Ordered<V> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(Entries(PhantomData))
    }
}

struct Entries<V>(PhantomData<V>);

impl<'de, V: Deserialize<'de>> Visitor<'de> for Entries<V> {
    type Value = Ordered<V>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut access: A) -> Result<Self::Value, A::Error> {
        let mut entries = Vec::new();
        while let Some(entry) = access.next_entry()? {
            entries.push(entry);
        }
        Ok(Ordered(entries))
    }
}

#[cfg(feature = "schema")]
impl<V: schemars::JsonSchema> schemars::JsonSchema for Ordered<V> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        format!("by_name_{}", V::schema_name()).into()
    }

    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        std::collections::BTreeMap::<String, V>::json_schema(generator)
    }
}
