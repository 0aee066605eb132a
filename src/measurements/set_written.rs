//! Measurement sets written with the keys of a file, so that what was read goes out as it came in.

use super::measurement::{Kind, Measurement};
use super::{Body, MeasurementSet};
use crate::units::{Angle, Length, Unit};
use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};

/// With the keys of a file: `name`, `unit`, `measurements`, and `source` and `notes` if there are
/// any. What was not taken is estimated anew when it is read.
///
/// ```
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 927.1),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let set = MeasurementSet::new("Ada", Unit::In, body);
/// let text = serde_json::to_string(&set)?;
/// assert!(text.contains("\"unit\":\"in\"") && text.contains("\"bust_girth\":36.5,"), "{text}");
/// assert_eq!(MeasurementSet::from_json(&text)?, set);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
impl Serialize for MeasurementSet {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("name", self.name())?;
        map.serialize_entry("unit", self.unit().name())?;
        if let Some(source) = self.source() {
            map.serialize_entry("source", source)?;
        }
        if let Some(notes) = self.notes() {
            map.serialize_entry("notes", notes)?;
        }
        let values = Taken {
            body: self.body(),
            unit: self.unit(),
        };
        map.serialize_entry("measurements", &values)?;
        map.end()
    }
}

#[cfg(feature = "yaml")]
impl MeasurementSet {
    /// The set as a file in YAML, which reads as the same set; needs the feature `yaml`.
    ///
    /// ```
    /// use blockwright::measurements::MeasurementSet;
    /// let text = "name: Ada\nunit: in\nmeasurements:\n  height: 66.0\n  bust_girth: 36.5\n  \
    ///             waist_girth: 30.0\n  hip_girth: 39.5\n";
    /// assert_eq!(MeasurementSet::parse(text)?.to_yaml(), text);
    /// # Ok::<(), blockwright::measurements::FileErrors>(())
    /// ```
    #[must_use]
    pub fn to_yaml(&self) -> String {
        yaml_text(self)
    }
}

/// What is written with the keys of a file, in YAML.
#[cfg(feature = "yaml")]
pub(crate) fn yaml_text(written: &impl Serialize) -> String {
    // Mappings with names for keys, texts and finite numbers: nothing that YAML cannot hold.
    serde_yaml::to_string(written).unwrap_or_default()
}

/// The values taken, by name.
struct Taken<'a> {
    body: &'a Body,
    unit: Unit,
}

impl Serialize for Taken<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        for (measurement, value) in self.body.taken() {
            map.serialize_entry(measurement.name(), &written(measurement, value, self.unit))?;
        }
        map.end()
    }
}

/// A value as it is written.
#[derive(Serialize)]
#[serde(untagged)]
enum Written {
    /// In the unit of the set, or in degrees.
    Bare(f64),
    /// With its unit.
    WithUnit(String),
}

/// The shortest number that reads as the value; where none does, the value in the unit in which it
/// is held.
fn written(measurement: Measurement, value: f64, unit: Unit) -> Written {
    let (number, read, held): (f64, &dyn Fn(f64) -> Option<f64>, &str) = match measurement.kind() {
        Kind::Length => (
            unit.from_mm(value),
            &|number| Length::new(number, unit).ok().map(Length::mm),
            "mm",
        ),
        Kind::Angle => (
            value.to_degrees(),
            &|degrees| Angle::from_degrees(degrees).ok().map(Angle::radians),
            "rad",
        ),
    };
    let mut shortened = (0..=MOST_DECIMALS).filter_map(|decimals| {
        let short: f64 = format!("{number:.decimals$}").parse().ok()?;
        (read(short) == Some(value)).then_some(short)
    });
    shortened.next().map_or_else(
        || Written::WithUnit(format!("{value} {held}")),
        Written::Bare,
    )
}

/// More decimals than a number of a body has in double precision.
const MOST_DECIMALS: usize = 17;
