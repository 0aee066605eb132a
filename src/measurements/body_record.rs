//! The measurements of a body as a document holds them.

use super::body::Body;
use super::measurement::{Kind, Measurement};
use super::show::rounded;
use super::{Measured, MeasurementErrors, Source};
use serde::de::{Deserializer, Error, MapAccess, Visitor};
use serde::{Deserialize, Serialize, Serializer};
use std::fmt;

/// The measurements of a body as they were when a pattern was made for it: what was taken, and
/// the estimates of the rest at that time.
///
/// Lengths are rounded to a thousandth of a millimetre, `shoulder_slope` to a thousandth of a
/// degree.
///
/// ```
/// use blockwright::measurements::{Body, BodyRecord, Measurement};
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let record = BodyRecord::from(&body);
/// assert_eq!(record.to_body()?, body);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct BodyRecord {
    entries: Vec<(Measurement, Entry)>,
}

impl BodyRecord {
    /// A record that says nothing of the body.
    #[must_use]
    pub const fn nothing() -> Self {
        Self {
            entries: Vec::new(),
        }
    }

    /// What was taken: mm, or radians.
    pub fn taken(&self) -> impl Iterator<Item = (Measurement, f64)> + '_ {
        let entries = self.entries.iter();
        let taken = entries.filter(|(_, entry)| entry.source == SourceName::Taken);
        taken.map(|(measurement, entry)| {
            let value = match measurement.kind() {
                Kind::Length => entry.value,
                Kind::Angle => entry.value.to_radians(),
            };
            (*measurement, value)
        })
    }

    /// The body of what was taken, with today's estimates of the rest.
    ///
    /// # Errors
    /// When what was taken makes no body.
    pub fn to_body(&self) -> Result<Body, MeasurementErrors> {
        Body::from_taken(self.taken())
    }
}

impl From<&Body> for BodyRecord {
    fn from(body: &Body) -> Self {
        let entry = |(measurement, measured)| (measurement, Entry::new(measurement, measured));
        Self {
            entries: body.iter().map(entry).collect(),
        }
    }
}

impl Serialize for Body {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        BodyRecord::from(self).serialize(serializer)
    }
}

/// Where a value came from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "source"))]
#[serde(rename_all = "snake_case")]
enum SourceName {
    Taken,
    Estimated,
}

/// The unit of a value that is no length.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "angle_unit"))]
enum AngleUnit {
    #[serde(rename = "deg")]
    Degrees,
}

/// A measurement of the body: mm unless a unit stands beside it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "measured"))]
#[serde(deny_unknown_fields)]
struct Entry {
    /// The value.
    value: f64,
    /// Whether it was taken or estimated.
    source: SourceName,
    /// Standard deviation of an estimate.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    spread: Option<f64>,
    /// The unit of an angle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    unit: Option<AngleUnit>,
}

impl Entry {
    fn new(measurement: Measurement, measured: Measured) -> Self {
        let (source, spread) = match measured.source {
            Source::Taken => (SourceName::Taken, None),
            Source::Estimated { spread } => {
                (SourceName::Estimated, Some(rounded(measurement, spread)))
            }
        };
        let is_angle = measurement.kind() == Kind::Angle;
        Self {
            value: rounded(measurement, measured.value),
            source,
            spread,
            unit: is_angle.then_some(AngleUnit::Degrees),
        }
    }
}

impl Serialize for BodyRecord {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.entries.iter().map(|(m, entry)| (m.name(), entry)))
    }
}

impl<'de> Deserialize<'de> for BodyRecord {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(Entries)
    }
}

struct Entries;

impl<'de> Visitor<'de> for Entries {
    type Value = BodyRecord;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("measurements by name")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut access: A) -> Result<BodyRecord, A::Error> {
        let mut entries = Vec::new();
        while let Some((name, entry)) = access.next_entry::<String, Entry>()? {
            let measurement: Measurement = name.parse().map_err(A::Error::custom)?;
            if (entry.unit == Some(AngleUnit::Degrees)) != (measurement.kind() == Kind::Angle) {
                return Err(A::Error::custom(format!(
                    "{name} is not in the unit of such a measurement; lengths have none, angles have `deg`"
                )));
            }
            entries.push((measurement, entry));
        }
        Ok(BodyRecord { entries })
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for BodyRecord {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> std::borrow::Cow<'static, str> {
        "body".into()
    }

    /// An object that may have any measurement under its name, and nothing else.
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let entry = generator.subschema_for::<Entry>();
        let names = Measurement::ALL.iter().map(|m| m.name().to_owned());
        let properties: serde_json::Map<String, serde_json::Value> =
            names.map(|name| (name, entry.clone().to_value())).collect();
        schemars::json_schema!({
            "type": "object",
            "properties": properties,
            "additionalProperties": false,
        })
    }
}
