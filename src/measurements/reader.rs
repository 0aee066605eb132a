//! Reading measurements, units and texts out of a document, gathering what is wrong.

use super::body::Body;
use super::error::MeasurementError;
use super::measurement::{Kind, Measurement};
use super::near_name::nearest;
use super::node::{Key, Node, NodeValue};
use super::problem::{FileCause, FileProblem, Place};
use crate::units::{Angle, Length, Unit, UnitError};

/// A value that was read and where its key stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Given {
    pub(super) measurement: Measurement,
    pub(super) value: f64,
    pub(super) place: Place,
}

/// The values of one mapping of measurements, and the measurements that were meant
/// there though their values or names are wrong.
#[derive(Debug, Clone, Default)]
pub(super) struct Values {
    pub(super) given: Vec<Given>,
    pub(super) spoiled: Vec<Measurement>,
    /// The unit of bare numbers, if one is given.
    pub(super) unit: Option<Unit>,
}

/// Gathers the problems of one document.
#[derive(Debug, Default)]
pub(crate) struct Reader {
    pub(crate) problems: Vec<FileProblem>,
}

impl Reader {
    pub(crate) fn wrong(&mut self, place: Place, path: &str, cause: impl Into<FileCause>) {
        self.wrong_in(Unit::Mm, place, path, cause);
    }

    /// Something is wrong with a length that is written in a unit.
    pub(crate) fn wrong_in(
        &mut self,
        unit: Unit,
        place: Place,
        path: &str,
        cause: impl Into<FileCause>,
    ) {
        self.problems.push(FileProblem {
            place,
            path: path.to_owned(),
            cause: cause.into(),
            unit,
        });
    }

    /// Looks up `keys` in a mapping, in their order; names the keys that are not known.
    pub(crate) fn fields<'a, const N: usize>(
        &mut self,
        node: &'a Node,
        path: &str,
        keys: [&'static str; N],
        expected: &'static str,
    ) -> [Option<(&'a Key, &'a Node)>; N] {
        let mut found = [None; N];
        let Some(entries) = node.entries() else {
            self.shape(node, path, expected);
            return found;
        };
        for (key, value) in entries {
            let mut slots = keys.iter().zip(&mut found);
            if let Some((_, slot)) = slots.find(|(known, _)| **known == key.text) {
                *slot = Some((key, value));
                continue;
            }
            let hint = nearest(&key.text, keys.iter().copied()).map_or_else(
                || format!("known are `{}`", keys.join("`, `")),
                |near| format!("did you mean `{near}`?"),
            );
            let shown = key.text.chars().take(40).collect();
            self.wrong(key.place, path, FileCause::UnknownKey { key: shown, hint });
        }
        found
    }

    pub(crate) fn shape(&mut self, node: &Node, path: &str, expected: &'static str) {
        let found = node.shape();
        self.wrong(node.place, path, FileCause::WrongShape { found, expected });
    }

    /// A text; a bare number counts as one.
    pub(crate) fn text(&mut self, node: &Node, path: &str) -> Option<String> {
        match &node.value {
            NodeValue::Text(text) => Some(text.trim().to_owned()),
            NodeValue::Number(number) => Some(number.to_string()),
            _ => {
                self.shape(node, path, "a text");
                None
            }
        }
    }

    /// The unit of a file; a missing one is a problem of `file`.
    pub(super) fn unit(&mut self, field: Option<(&Key, &Node)>, file: &Node) -> Option<Unit> {
        let Some((_, node)) = field else {
            let hint = "write `unit: cm`, `unit: mm` or `unit: in`";
            self.wrong(file.place, "", FileCause::MissingKey { key: "unit", hint });
            return None;
        };
        let text = self.text(node, "unit")?;
        let unit = Unit::from_name(&text);
        if unit.is_none() {
            let unit = text.chars().take(40).collect();
            self.wrong(node.place, "unit", FileCause::BadUnit { unit });
        }
        unit
    }

    /// A mapping from measurement names to values. Without a unit for bare numbers,
    /// names are checked and such numbers passed over.
    pub(super) fn measurements(&mut self, node: &Node, path: &str, unit: Option<Unit>) -> Values {
        let mut values = Values {
            unit,
            ..Values::default()
        };
        self.each_measurement(
            node,
            path,
            &mut values,
            |reader, measurement, node, path| reader.value(measurement, node, path, unit, false),
        );
        values
    }

    /// Walks a mapping from measurement names, reading each value with `read`.
    pub(super) fn each_measurement(
        &mut self,
        node: &Node,
        path: &str,
        values: &mut Values,
        mut read: impl FnMut(&mut Self, Measurement, &Node, &str) -> Option<f64>,
    ) {
        let Some(entries) = node.entries() else {
            let expected = "a mapping such as `bust_girth: 92`, one measurement a line";
            self.shape(node, path, expected);
            values.spoiled.extend(Measurement::ALL);
            return;
        };
        for (key, node) in entries {
            match key.text.parse::<Measurement>() {
                Err(unknown) => {
                    values.spoiled.extend(unknown.nearest);
                    self.wrong(key.place, path, unknown);
                }
                Ok(measurement) => {
                    let at = join(path, measurement.name());
                    match read(self, measurement, node, &at) {
                        Some(value) => values.given.push(Given {
                            measurement,
                            value,
                            place: key.place,
                        }),
                        None => values.spoiled.push(measurement),
                    }
                }
            }
        }
    }

    /// One value in mm or radians; `signed` admits a negative one.
    pub(super) fn value(
        &mut self,
        measurement: Measurement,
        node: &Node,
        path: &str,
        unit: Option<Unit>,
        signed: bool,
    ) -> Option<f64> {
        let read = match (&node.value, measurement.kind(), unit) {
            (NodeValue::Number(_), Kind::Length, None) => return None,
            (NodeValue::Number(number), Kind::Length, Some(unit)) => {
                Length::new(*number, unit).map(Length::mm)
            }
            (NodeValue::Text(text), Kind::Length, unit) => {
                match Length::parse_signed(text, unit) {
                    // The unit of the file is already reported as wrong.
                    Err(UnitError::MissingUnit { .. }) if unit.is_none() => return None,
                    read => read.map(Length::mm),
                }
            }
            (NodeValue::Number(number), Kind::Angle, _) => {
                Angle::from_degrees(*number).map(Angle::radians)
            }
            (NodeValue::Text(text), Kind::Angle, _) => text.parse().map(Angle::radians),
            _ => {
                self.shape(node, path, "a number, or a number with its unit");
                return None;
            }
        };
        let read = read.and_then(|value| match measurement.kind() {
            _ if signed || value >= 0.0 => Ok(value),
            Kind::Length => Err(UnitError::Negative { value, unit: "mm" }),
            Kind::Angle => Err(UnitError::Negative {
                value: value.to_degrees(),
                unit: "degrees",
            }),
        });
        match read {
            Ok(value) => Some(value),
            Err(error) => {
                self.wrong_in(unit.unwrap_or(Unit::Mm), node.place, path, error);
                None
            }
        }
    }

    /// The body of these values. What is wrong with it is reported at the value, or at
    /// `place` for a value that is missing.
    pub(super) fn body(&mut self, values: &Values, place: Place, path: &str) -> Option<Body> {
        let taken = values.given.iter().map(|g| (g.measurement, g.value));
        let errors = match Body::from_taken(taken) {
            Ok(body) => return Some(body),
            Err(errors) => errors,
        };
        for error in errors.all() {
            let measurement = error.measurement();
            if matches!(error, MeasurementError::Missing { .. })
                && values.spoiled.contains(&measurement)
            {
                continue;
            }
            // The last one: of two, the second is the one too many.
            let given = values.given.iter().rfind(|g| g.measurement == measurement);
            let place = given.map_or(place, |given| given.place);
            self.wrong_in(values.unit.unwrap_or(Unit::Mm), place, path, error.clone());
        }
        None
    }
}

/// A key below a path.
pub(crate) fn join(path: &str, key: &str) -> String {
    if path.is_empty() {
        key.to_owned()
    } else {
        format!("{path}.{key}")
    }
}
