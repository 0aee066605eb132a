//! Reading measurements, units and texts out of a document, gathering what is wrong.

use super::body::Body;
use super::error::MeasurementError;
use super::file_kind::FileKind;
use super::measurement::{Kind, Measurement};
use super::near_name::nearest;
use super::node::{Key, Node, NodeValue};
use super::problem::{FileCause, FileProblem, Place};
use crate::units::{Angle, Length, Unit, UnitError, rounded};

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

/// Keys that have keys below them.
const TAKE_KEYS: [&str; 10] = [
    "measurements",
    "common",
    "sizes",
    "base",
    "steps",
    "per_size",
    "body",
    "ease",
    "allowance",
    "print",
];

/// Gathers the problems of one document.
#[derive(Debug, Default)]
pub(crate) struct Reader {
    pub(crate) problems: Vec<FileProblem>,
    /// The unit of bare lengths in a job; millimetres where it is not said.
    pub(crate) bare: Option<Unit>,
    /// The bare lengths of a job that were read: what leads there, and the number.
    pub(crate) bare_lengths: Vec<(String, f64)>,
    /// Where the steps of a job stand, in the order in which they are made.
    pub(crate) steps: Vec<Place>,
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
        // The key above, if it takes more keys and has none.
        let mut above = None;
        for (key, value) in entries {
            let mut slots = keys.iter().zip(&mut found);
            if let Some((known, slot)) = slots.find(|(known, _)| **known == key.text) {
                *slot = Some((key, value));
                let empty = value.value == NodeValue::Empty && TAKE_KEYS.contains(known);
                above = empty.then_some((*known, true));
                continue;
            }
            let near = nearest(&key.text, keys.iter().copied());
            let shown: String = key.text.chars().take(40).collect();
            if let (None, Some((known, first))) = (near, above) {
                if first {
                    let (key_text, above) = (shown, known);
                    let cause = FileCause::NotIndented {
                        key: key_text,
                        above,
                    };
                    self.wrong(key.place, path, cause);
                }
                above = Some((known, false));
                continue;
            }
            let hint = near.map_or_else(
                || format!("known are `{}`", keys.join("`, `")),
                |near| format!("did you mean `{near}`?"),
            );
            self.wrong(key.place, path, FileCause::UnknownKey { key: shown, hint });
        }
        found
    }

    /// Refuses a document of another kind than is wanted.
    pub(crate) fn must_be(&mut self, wanted: FileKind, node: &Node) {
        let entries = node.entries().unwrap_or_default();
        let kind = FileKind::by_keys(|name| entries.iter().any(|(key, _)| key.text == name));
        let other = kind.filter(|found| *found != wanted);
        if let Some(found) = other {
            self.wrong(node.place, "", FileCause::OtherFile { found, wanted });
        }
    }

    /// The unit of a bare length of a job; where the job does not say it, the length is noted.
    pub(crate) fn bare_length(&mut self, place: Place, path: &str, number: f64) -> Unit {
        if self.bare.is_none() && place != Place::UNKNOWN && number != 0.0 {
            self.bare_lengths.push((path.to_owned(), number));
        }
        self.bare.unwrap_or_default()
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
        self.unit_named(node)
    }

    /// The unit that stands at a node.
    pub(crate) fn unit_named(&mut self, node: &Node) -> Option<Unit> {
        let text = self.text(node, "unit")?;
        let unit = Unit::from_name(&text);
        if unit.is_none() {
            let unit = text.chars().take(40).collect();
            self.wrong(node.place, "unit", FileCause::BadUnit { unit });
        }
        unit
    }

    /// A mapping from measurement names to values. Without a unit for bare numbers,
    /// names are checked and such numbers left out.
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
        if self.other_unit(values, errors.all(), place, path) {
            return None;
        }
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

/// From so many impossible values on the unit is asked for, not the values.
const MANY: usize = 3;

impl Reader {
    /// Asks once whether another unit was meant, where that explains every impossible value; the
    /// sizes of a table are one such question.
    fn other_unit(
        &mut self,
        values: &Values,
        errors: &[MeasurementError],
        place: Place,
        path: &str,
    ) -> bool {
        let asked = |problem: &FileProblem| matches!(problem.cause, FileCause::OtherUnit { .. });
        let Some(written) = values.unit else {
            return false;
        };
        let impossible: Vec<(Measurement, f64)> = errors
            .iter()
            .filter_map(|error| match error {
                MeasurementError::OutOfRange { measurement, value }
                    if measurement.kind() == Kind::Length =>
                {
                    Some((*measurement, *value))
                }
                _ => None,
            })
            .collect();
        let lengths = values
            .given
            .iter()
            .filter(|g| g.measurement.kind() == Kind::Length);
        if impossible.len() < MANY || 2 * impossible.len() < lengths.count() {
            return false;
        }
        let explains = |unit: &Unit| {
            let factor = unit.mm() / written.mm();
            *unit != written
                && impossible
                    .iter()
                    .all(|(measurement, value)| measurement.range().contains(value * factor))
        };
        let Some(meant) = Unit::ALL.into_iter().find(explains) else {
            return false;
        };
        if self.problems.iter().any(asked) {
            return true;
        }
        let first = impossible
            .first()
            .map_or_else(String::new, |(measurement, value)| {
                format!("{measurement} {}", rounded(written.from_mm(*value), 2))
            });
        let cause = FileCause::OtherUnit {
            count: impossible.len(),
            written,
            meant,
            example: first,
        };
        let given = values.given.first().map_or(place, |given| given.place);
        self.wrong_in(written, given, path, cause);
        true
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
