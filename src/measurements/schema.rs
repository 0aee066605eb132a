//! The schemas of measurement sets and size tables; keys and units are those that the readers know.

use super::Measurement;
use crate::units::Unit;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema, schema_for};
use std::borrow::Cow;
use std::collections::BTreeMap;

/// The JSON Schema (draft 2020-12) of a measurement set; needs the feature `schema`.
///
/// ```
/// let schema = blockwright::measurements::set_schema();
/// assert!(schema["$defs"]["measurements"]["properties"]["bust_girth"].is_object());
/// ```
#[must_use]
pub fn set_schema() -> serde_json::Value {
    schema_for!(SetFile).to_value()
}

/// The JSON Schema (draft 2020-12) of a size table; needs the feature `schema`.
///
/// ```
/// let schema = blockwright::measurements::table_schema();
/// assert!(schema["properties"]["sizes"].is_object());
/// ```
#[must_use]
pub fn table_schema() -> serde_json::Value {
    schema_for!(TableFile).to_value()
}

/// A length: a number, or a text with its unit such as `36 1/2 in` or `2 cm`.
#[derive(JsonSchema)]
#[schemars(untagged, rename = "length")]
#[expect(dead_code, reason = "read by the derived schema only")]
pub(crate) enum SchemaLength {
    Number(f64),
    WithUnit(String),
}

/// A label, such as that of a size: text, or a number such as 40.
#[derive(JsonSchema)]
#[schemars(untagged, rename = "label")]
#[expect(dead_code, reason = "read by the derived schema only")]
pub(crate) enum SchemaLabel {
    Text(String),
    Number(f64),
}

/// An object that may have these keys and no others, each with a value of that schema.
pub(crate) fn by_name<'a>(names: impl IntoIterator<Item = &'a str>, value: &Schema) -> Schema {
    let properties: serde_json::Map<_, _> = names
        .into_iter()
        .map(|name| (name.to_owned(), value.clone().to_value()))
        .collect();
    json_schema!({"type": "object", "properties": properties, "additionalProperties": false})
}

/// One of these words.
pub(crate) fn one_of<'a>(words: impl IntoIterator<Item = &'a str>) -> Schema {
    let words: Vec<&str> = words.into_iter().collect();
    json_schema!({"type": "string", "enum": words})
}

/// Measurements by name; a bare number is in the unit of the file, `shoulder_slope` in degrees.
struct Measurements;

impl JsonSchema for Measurements {
    fn schema_name() -> Cow<'static, str> {
        "measurements".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let value = generator.subschema_for::<SchemaLength>();
        by_name(Measurement::ALL.iter().map(|m| m.name()), &value)
    }
}

/// By how much each measurement changes from size to size: one step, or a list of them.
struct Steps;

impl JsonSchema for Steps {
    fn schema_name() -> Cow<'static, str> {
        "steps_by_measurement".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let value = generator.subschema_for::<Step>();
        by_name(Measurement::ALL.iter().map(|m| m.name()), &value)
    }
}

#[derive(JsonSchema)]
#[schemars(untagged, rename = "step")]
#[expect(dead_code, reason = "read by the derived schema only")]
enum Step {
    Same(SchemaLength),
    Each(Vec<SchemaLength>),
}

/// The unit of bare numbers.
struct UnitName;

impl JsonSchema for UnitName {
    fn schema_name() -> Cow<'static, str> {
        "unit".into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        one_of([Unit::Mm, Unit::Cm, Unit::In].map(Unit::name))
    }
}

/// The measurements of one wearer.
#[derive(JsonSchema)]
#[schemars(rename = "measurement_set", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct SetFile {
    /// What the wearer is called.
    name: SchemaLabel,
    unit: UnitName,
    /// Who took the measurements, or where they come from.
    source: Option<SchemaLabel>,
    /// What else is to be known.
    notes: Option<SchemaLabel>,
    measurements: Measurements,
}

/// A measurement set inside another document, where the name may be left out.
#[derive(JsonSchema)]
#[schemars(rename = "set_in_job", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
pub(crate) struct SetInDocument {
    name: Option<SchemaLabel>,
    unit: UnitName,
    source: Option<SchemaLabel>,
    notes: Option<SchemaLabel>,
    measurements: Measurements,
}

/// Bodies by size: all in full under `sizes`, or a `base` and the `steps` from it.
#[derive(JsonSchema)]
#[schemars(rename = "size_table", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct TableFile {
    /// What the table is called.
    name: SchemaLabel,
    unit: UnitName,
    source: Option<SchemaLabel>,
    notes: Option<SchemaLabel>,
    /// What all sizes share.
    common: Option<Measurements>,
    /// Measurements by the label of the size.
    sizes: Option<BTreeMap<String, Measurements>>,
    base: Option<Base>,
    steps: Option<Range>,
}

#[derive(JsonSchema)]
#[schemars(rename = "base", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct Base {
    label: SchemaLabel,
    measurements: Measurements,
}

#[derive(JsonSchema)]
#[schemars(rename = "steps", deny_unknown_fields)]
#[expect(dead_code, reason = "read by the derived schema only")]
struct Range {
    /// All labels, the smallest first.
    labels: Vec<SchemaLabel>,
    per_size: Steps,
}
