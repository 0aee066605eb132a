//! A set of measurements of one wearer, and the file it is kept in.

use super::body::Body;
use super::file_kind::FileKind;
use super::node::{Key, Node};
use super::problem::{FileCause, FileErrors, FileProblem};
use super::reader::Reader;
use crate::units::Unit;
use serde::de::{Deserialize, Deserializer, Error as _};

/// The measurements of one wearer.
///
/// # The file
///
/// ```yaml
/// name: Ada                  # required
/// unit: cm                   # required: cm, mm or in; the unit of bare numbers
/// source: measured in March  # optional: who took them, or where they come from
/// notes: left shoulder lower # optional
/// measurements:              # required
///   height: 168
///   bust_girth: 36 1/2 in    # a value may carry its own unit
///   waist_girth: 76
///   hip_girth: 100
///   shoulder_slope: 23       # degrees
/// ```
///
/// ```
/// # #[cfg(feature = "yaml")] {
/// use blockwright::measurements::{Measurement, MeasurementSet};
///
/// let set = MeasurementSet::parse(
///     "name: Ada\n\
///      unit: cm\n\
///      measurements: {height: 168, bust_girth: 36 1/2 in, waist_girth: 76, hip_girth: 100}\n",
/// )?;
/// assert_eq!(set.name(), "Ada");
/// assert_eq!(set.body().value(Measurement::BustGirth), 927.1);
/// # }
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct MeasurementSet {
    name: String,
    unit: Unit,
    source: Option<String>,
    notes: Option<String>,
    body: Body,
}

impl MeasurementSet {
    /// What the wearer of a set without a name is called.
    pub const UNNAMED: &'static str = "unnamed wearer";

    /// A set of this name; `unit` is the one it is reported in.
    #[must_use]
    pub fn new(name: impl Into<String>, unit: Unit, body: Body) -> Self {
        Self {
            name: name.into(),
            unit,
            source: None,
            notes: None,
            body,
        }
    }

    /// Reads a set file; needs the feature `yaml`.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place.
    #[cfg(feature = "yaml")]
    pub fn parse(text: &str) -> Result<Self, FileErrors> {
        Self::read(&Node::parse(text)?, true)
    }

    /// Reads a set written as JSON, with the same keys.
    ///
    /// ```
    /// use blockwright::measurements::{Measurement, MeasurementSet};
    /// let set = MeasurementSet::from_json(
    ///     r#"{"name": "Ada", "unit": "cm", "measurements":
    ///         {"height": 168, "bust_girth": "36 1/2 in", "waist_girth": 76, "hip_girth": 100}}"#,
    /// )?;
    /// assert_eq!(set.body().value(Measurement::BustGirth), 927.1);
    /// # Ok::<(), blockwright::measurements::FileErrors>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem.
    pub fn from_json(text: &str) -> Result<Self, FileErrors> {
        Self::read(&Node::from_json(text)?, true)
    }

    /// Reads a set written inside another document, where `name` may be left out.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem and its place.
    pub(crate) fn from_node(node: &Node) -> Result<Self, FileErrors> {
        Self::read(node, false)
    }

    pub(super) fn read(node: &Node, wants_name: bool) -> Result<Self, FileErrors> {
        let mut reader = Reader::default();
        reader.must_be(FileKind::Set, node);
        let keys = ["name", "unit", "source", "notes", "measurements"];
        let expected = "a mapping with `name`, `unit` and `measurements`";
        let [name, unit, source, notes, measurements] = reader.fields(node, "", keys, expected);
        if node.entries().is_none()
            && let Some(errors) = FileErrors::gathered(std::mem::take(&mut reader.problems))
        {
            return Err(errors);
        }
        let mut text = |field: Option<(&Key, &Node)>| {
            field.and_then(|(key, node)| reader.text(node, &key.text))
        };
        let (named, source, notes) = (text(name), text(source), text(notes));
        if name.is_none() && wants_name {
            let hint = "write `name:` and what the wearer is called";
            reader.wrong(node.place, "", FileCause::MissingKey { key: "name", hint });
        }
        let unit = reader.unit(unit, node);
        let body = match measurements {
            Some((key, values)) => {
                let path = "measurements";
                let read = reader.measurements(values, path, unit);
                // Without a unit nothing bare was read: what is missing is not known.
                unit.and_then(|_| reader.body(&read, key.place, path))
            }
            None => {
                let hint = "write `measurements:` and below it one measurement a line";
                let key = "measurements";
                reader.wrong(node.place, "", FileCause::MissingKey { key, hint });
                None
            }
        };
        match (FileErrors::gathered(reader.problems), unit, body) {
            (None, Some(unit), Some(body)) => Ok(Self {
                name: named.unwrap_or_else(|| Self::UNNAMED.to_owned()),
                unit,
                source,
                notes,
                body,
            }),
            (Some(errors), ..) => Err(errors),
            (None, ..) => Err(FileErrors::one(FileProblem {
                unit: Unit::Mm,
                place: node.place,
                path: String::new(),
                cause: FileCause::WrongShape {
                    found: node.shape(),
                    expected,
                },
            })),
        }
    }

    /// What the wearer is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The unit of the file, in which it is reported.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.unit
    }

    /// Who took the measurements, or where they come from.
    #[must_use]
    pub fn source(&self) -> Option<&str> {
        self.source.as_deref()
    }

    /// What else is to be known.
    #[must_use]
    pub fn notes(&self) -> Option<&str> {
        self.notes.as_deref()
    }

    /// The body.
    #[must_use]
    pub const fn body(&self) -> &Body {
        &self.body
    }
}

/// From a mapping as in a file; the name may be left out, the places of problems are not known.
impl<'de> Deserialize<'de> for MeasurementSet {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::from_node(&Node::deserialize(deserializer)?).map_err(D::Error::custom)
    }
}

/// From a mapping with `unit` and `measurements`, as a [`MeasurementSet`].
impl<'de> Deserialize<'de> for Body {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        MeasurementSet::deserialize(deserializer).map(|set| set.body)
    }
}
