//! The schema of a job; words, keys and names are those that the reader knows.

use crate::allowance::Allowances;
use crate::alterations::CATALOGUE;
use crate::draft::{Block, Fit, Side, SleeveLength};
use crate::job::{PageTurn, PaperSize, PrintTarget};
use crate::measurements::{SchemaLabel, SchemaLength, SetInDocument, by_name, one_of};
use crate::piece::BodySide;
use crate::signs::SIGNS;
use crate::units::Unit;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema, schema_for};
use std::borrow::Cow;
use std::collections::BTreeMap;

/// The JSON Schema (draft 2020-12) of a job, read by [`JobFile::from_json`](crate::job::JobFile); needs the
/// feature `schema`. The words of a job may be written in any case there; the schema has them in
/// small letters.
///
/// ```
/// let schema = blockwright::job::schema();
/// assert_eq!(schema["required"], serde_json::json!(["title", "block"]));
/// ```
#[must_use]
pub fn schema() -> serde_json::Value {
    schema_for!(JobShape).to_value()
}

/// A type whose schema is one of some words.
macro_rules! words {
    ($($(#[$doc:meta])* $name:ident $as:literal: $words:expr;)+) => {$(
        $(#[$doc])*
        struct $name;

        impl JsonSchema for $name {
            fn schema_name() -> Cow<'static, str> {
                $as.into()
            }

            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                one_of($words)
            }
        }
    )+};
}

words! {
    BlockName "block_name": Block::ALL.map(Block::name);
    FitName "fit": [Fit::Close, Fit::Regular, Fit::Loose].map(Fit::name);
    SleeveName "sleeve": ["none"].into_iter().chain([SleeveLength::Short, SleeveLength::Long].map(SleeveLength::name));
    SideName "side": [Side::Shaped, Side::Straight].map(Side::name);
    PaperName "paper": PaperSize::ALL.map(PaperSize::name);
    TurnName "orientation": PageTurn::ALL.map(PageTurn::name);
    TargetName "print_for": PrintTarget::ALL.map(PrintTarget::name);
    NoneWord "none": ["none"];
    ObservedPlace "observed_place": SIGNS.iter().flat_map(|sign| [sign.at, sign.name]);
    UnitName "job_unit": Unit::ALL.map(Unit::name);
    BodySideName "body_side": BodySide::BOTH.map(BodySide::name);
}

#[cfg(feature = "toile")]
words! {
    ClothName "cloth_name": crate::toile::Fabric::NAMED.map(|(name, _)| name);
}

/// A job: what a pattern is made from, and how it is printed. Lengths are mm unless they carry a
/// unit.
#[derive(JsonSchema)]
#[schemars(rename = "job", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct JobShape {
    /// What the work is called; it stands on every piece.
    title: SchemaLabel,
    /// The unit of lengths that carry none; left out, millimetres.
    unit: Option<UnitName>,
    /// Written on every piece.
    size: Option<SchemaLabel>,
    /// Written on every piece: `2026-03-14`.
    date: Option<String>,
    block: Blocks,
    /// A body; left out where a table of sizes or of people is given beside the job, and where a
    /// block of one's own knows its body.
    body: Option<BodyShape>,
    /// Another wearer, with whom the pattern is compared: the path of her measurement set, or a set.
    wearer: Option<WearerShape>,
    ease: Option<EaseShape>,
    /// From waist to hem.
    length: Option<SchemaLength>,
    sleeve: Option<SleeveName>,
    /// By how much the sleeve cap is longer than the armscye.
    cap_ease: Option<SchemaLength>,
    /// Whether the waist is shaped with darts; dress, tunic and shirt.
    waist_darts: Option<bool>,
    /// The side seam of the same blocks.
    side: Option<SideName>,
    /// Made in this order.
    alterations: Option<AlterationsShape>,
    /// What was pinned away or opened on a toile: the steps follow, in a fitter's order.
    #[schemars(length(max = 40))]
    observed: Option<Vec<ObservedShape>>,
    allowance: Option<AllowanceShape>,
    print: Option<PrintShape>,
    /// Whether the pieces are also written as DXF.
    dxf: Option<bool>,
    /// Whether every alteration is also shown on paper, as PDF.
    demonstration: Option<bool>,
    /// Whether the wearer's name and measurements are left out of every file that is handed on.
    private: Option<bool>,
    /// In which cloth a toile on screen is sewn.
    #[cfg(feature = "toile")]
    cloth: Option<ClothShape>,
}

/// A cloth by its name, or by what was measured.
#[cfg(feature = "toile")]
#[derive(JsonSchema)]
#[schemars(untagged, rename = "cloth")]
#[expect(dead_code, reason = "read by the derived schema only")]
enum ClothShape {
    Named(ClothName),
    Own(OwnClothShape),
}

#[cfg(feature = "toile")]
#[derive(JsonSchema)]
#[schemars(rename = "own_cloth", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct OwnClothShape {
    /// In g/m².
    #[schemars(range(min = 20, max = 1000))]
    weight: f64,
    /// Half of what a strip must hang over an edge to sink by 41.5 degrees.
    bending_length: SchemaLength,
    /// Stiffness against stretch, in N/m.
    #[schemars(range(min = 10, max = 100_000))]
    stretch: Option<f64>,
}

/// A block, bodice and skirt joined at the waist, or a block of one's own: then none of the keys
/// from `ease` to `side` is written.
#[derive(JsonSchema)]
#[schemars(untagged, rename = "blocks")]
#[expect(dead_code, reason = "read by the derived schema only")]
enum Blocks {
    One(BlockName),
    Joined(#[schemars(length(min = 1, max = 2))] Vec<BlockName>),
    Own(OwnBlockShape),
}

#[derive(JsonSchema)]
#[schemars(rename = "own_block", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct OwnBlockShape {
    /// The path of a pattern document, or of a drawing.
    file: String,
    /// What block a drawing is.
    kind: Option<DrawnKind>,
    /// Names of paths of a drawing whose ids are others, by these.
    edges: Option<BTreeMap<String, String>>,
}

#[derive(JsonSchema)]
#[schemars(untagged, rename = "drawn_kind")]
#[expect(dead_code, reason = "read by the derived schema only")]
enum DrawnKind {
    One(BlockName),
    Joined(#[schemars(length(min = 1, max = 2))] Vec<BlockName>),
}

/// The path of a measurement set, a set, or a size of a table.
#[derive(JsonSchema)]
#[schemars(untagged, rename = "body")]
#[expect(dead_code, reason = "read by the derived schema only")]
enum BodyShape {
    Path(String),
    Here(SetInDocument),
    Table(OfTable),
}

#[derive(JsonSchema)]
#[schemars(untagged, rename = "wearer")]
#[expect(dead_code, reason = "read by the derived schema only")]
enum WearerShape {
    Path(String),
    Here(SetInDocument),
}

#[derive(JsonSchema)]
#[schemars(rename = "size_of_table", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct OfTable {
    /// The path of the table.
    table: String,
    /// Left out where a block is fitted to a wearer: then the nearest is taken.
    size: Option<SchemaLabel>,
    /// Other sizes, by measurement.
    sizes: Option<BTreeMap<String, SchemaLabel>>,
}

#[derive(JsonSchema)]
#[schemars(untagged, rename = "ease")]
#[expect(dead_code, reason = "read by the derived schema only")]
enum EaseShape {
    Fit(FitName),
    ByPlace(EaseByPlace),
}

#[derive(JsonSchema)]
#[schemars(rename = "ease_by_place", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct EaseByPlace {
    fit: Option<FitName>,
    bust: Option<SchemaLength>,
    waist: Option<SchemaLength>,
    hip: Option<SchemaLength>,
    back_width: Option<SchemaLength>,
    upper_arm: Option<SchemaLength>,
    wrist: Option<SchemaLength>,
    armscye_depth: Option<SchemaLength>,
}

/// A note: one of `pinned`, `opened` and `marked`.
#[derive(JsonSchema)]
#[schemars(rename = "observed", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct ObservedShape {
    place: ObservedPlace,
    /// How much was pinned away.
    pinned: Option<SchemaLength>,
    /// How far the slit toile opened.
    opened: Option<SchemaLength>,
    /// How far off the right place was marked.
    marked: Option<SchemaLength>,
    side: Option<BodySideName>,
}

#[derive(JsonSchema)]
#[schemars(untagged, rename = "alterations")]
#[expect(dead_code, reason = "read by the derived schema only")]
enum AlterationsShape {
    None(NoneWord),
    List(#[schemars(length(max = 100))] Vec<AlterationShape>),
}

/// One alteration of the catalogue and its settings.
struct AlterationShape;

impl JsonSchema for AlterationShape {
    fn schema_name() -> Cow<'static, str> {
        "alteration".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        let names: Vec<&str> = CATALOGUE.iter().map(|entry| entry.name).collect();
        let settings: serde_json::Map<_, _> = CATALOGUE
            .iter()
            .map(|entry| {
                let object =
                    serde_json::json!({"type": ["object", "null"], "description": entry.says});
                (entry.name.to_owned(), object)
            })
            .collect();
        json_schema!({"anyOf": [
            {"type": "string", "enum": names},
            {"type": "object", "properties": settings, "additionalProperties": false,
             "minProperties": 1, "maxProperties": 1},
        ]})
    }
}

/// One width all round, `usual`, `none`, or widths by place, 0 to 100 mm.
#[derive(JsonSchema)]
#[schemars(untagged, rename = "allowance")]
#[expect(dead_code, reason = "read by the derived schema only")]
enum AllowanceShape {
    Width(SchemaLength),
    ByPlace(Widths),
}

struct Widths;

impl JsonSchema for Widths {
    fn schema_name() -> Cow<'static, str> {
        "widths".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let value = generator.subschema_for::<SchemaLength>();
        by_name(Allowances::PLACES.into_iter().chain(["default"]), &value)
    }
}

#[derive(JsonSchema)]
#[schemars(rename = "print", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct PrintShape {
    paper: Option<PaperName>,
    /// 12 to 50 mm.
    margin: Option<SchemaLength>,
    /// 8 to 50 mm.
    overlap: Option<SchemaLength>,
    orientation: Option<TurnName>,
    /// Whether the sizes of a nest have colours besides their dashes.
    colour: Option<bool>,
    /// The path of a TrueType font for scripts that the built-in one lacks.
    font: Option<String>,
    /// What the pattern is put onto.
    #[schemars(rename = "for")]
    target: Option<TargetName>,
}

#[cfg(test)]
mod tests {
    use super::super::file::KEYS;
    use super::schema;

    /// A key that only the reader knows, or only the schema, would make one of them wrong.
    #[test]
    fn the_schema_has_the_keys_of_the_reader() {
        let schema = schema();
        let mut known: Vec<&str> = schema["properties"]
            .as_object()
            .map(|keys| keys.keys().map(String::as_str).collect())
            .unwrap_or_default();
        let mut read = KEYS.to_vec();
        known.sort_unstable();
        read.sort_unstable();
        assert_eq!(known, read);
    }
}
