//! The schema of a pattern document, made from the types that are written and read.

use super::shape::DocumentShape;

/// The JSON Schema (draft 2020-12) of a pattern document; needs the feature `schema`.
///
/// ```
/// let schema = blockwright::render::json::schema();
/// assert_eq!(schema["properties"]["version"]["const"], 2);
/// ```
#[must_use]
pub fn schema() -> serde_json::Value {
    schemars::schema_for!(DocumentShape).to_value()
}
