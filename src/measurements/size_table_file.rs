//! Reading a size table from YAML or JSON. The shape of the file stands at [`SizeTable`].

use std::collections::BTreeSet;

use super::file_kind::FileKind;
use super::measurement::Measurement;
use super::node::{Key, Node, NodeValue};
use super::problem::{FileCause, FileErrors, Place};
use super::reader::{Given, Reader, Values, join};
use super::size_table::{Size, SizeTable};
use crate::units::Unit;
use serde::de::{Deserialize, Deserializer, Error as _};

/// More sizes than any range has; keeps a hostile file from asking for millions.
const MOST_SIZES: usize = 1000;

impl SizeTable {
    /// Reads a size table written as YAML; needs the feature `yaml`.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place; a body that cannot
    /// be is reported at the size it belongs to.
    #[cfg(feature = "yaml")]
    pub fn parse(text: &str) -> Result<Self, FileErrors> {
        Self::from_node(&Node::parse(text)?)
    }

    /// Reads a size table written as JSON, with the same keys.
    ///
    /// ```
    /// use blockwright::measurements::SizeTable;
    /// let table = SizeTable::from_json(
    ///     r#"{"name": "Range", "unit": "cm", "common": {"height": 168}, "sizes":
    ///         {"38": {"bust_girth": 88, "waist_girth": 72, "hip_girth": 96},
    ///          "40": {"bust_girth": 92, "waist_girth": 76, "hip_girth": 100}}}"#,
    /// )?;
    /// assert_eq!(table.labels().collect::<Vec<_>>(), ["38", "40"]);
    /// # Ok::<(), blockwright::measurements::FileErrors>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem.
    pub fn from_json(text: &str) -> Result<Self, FileErrors> {
        Self::from_node(&Node::from_json(text)?)
    }

    /// Reads a size table written inside another document.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem and its place.
    pub(crate) fn from_node(node: &Node) -> Result<Self, FileErrors> {
        let mut reader = Reader::default();
        reader.must_be(FileKind::Table, node);
        let keys = [
            "name", "unit", "source", "notes", "common", "sizes", "base", "steps",
        ];
        let expected = "a mapping with `name`, `unit` and `sizes`";
        let [name, unit, source, notes, common, sizes, base, steps] =
            reader.fields(node, "", keys, expected);
        let mut text = |field: Option<(&Key, &Node)>| {
            field.and_then(|(key, node)| reader.text(node, &key.text))
        };
        let (named, source, notes) = (text(name), text(source), text(notes));
        if name.is_none() && node.entries().is_some() {
            let hint = "write `name:` and what the table is called";
            reader.wrong(node.place, "", FileCause::MissingKey { key: "name", hint });
        }
        let unit = match node.entries() {
            Some(_) => reader.unit(unit, node),
            None => None,
        };
        let common = common.map_or_else(Values::default, |(_, node)| {
            reader.measurements(node, "common", unit)
        });
        let rows = match (sizes, base, steps) {
            (Some((key, sizes)), None, None) => in_full(&mut reader, key, sizes, unit),
            (None, Some(base), Some(steps)) => by_steps(&mut reader, base, steps, unit),
            _ if node.entries().is_none() => Vec::new(),
            _ => {
                let hint = "write either `sizes:`, or both `base:` and `steps:`";
                let key = "sizes";
                reader.wrong(node.place, "", FileCause::MissingKey { key, hint });
                Vec::new()
            }
        };
        let mut sizes: Vec<Size> = Vec::new();
        let mut seen = BTreeSet::new();
        for row in rows {
            if !seen.insert(row.label.clone()) {
                let (label, problem) = (row.label, "stands twice; keep one");
                reader.wrong(row.place, "", FileCause::BadLabel { label, problem });
                continue;
            }
            let mut values = row.values;
            for given in &common.given {
                if !values
                    .given
                    .iter()
                    .any(|g| g.measurement == given.measurement)
                {
                    values.given.push(*given);
                }
            }
            values.spoiled.extend(&common.spoiled);
            // Without a unit nothing bare was read: what is missing is not known.
            if unit.is_some()
                && let Some(body) = reader.body(&values, row.place, &join("sizes", &row.label))
            {
                sizes.push(Size::new(row.label, body));
            }
        }
        if let Some(errors) = FileErrors::gathered(reader.problems) {
            return Err(errors);
        }
        Ok(Self {
            name: named.unwrap_or_default(),
            unit: unit.unwrap_or_default(),
            source,
            notes,
            sizes,
        })
    }
}

/// A size as read, before the values common to all are added.
struct Row {
    label: String,
    place: Place,
    values: Values,
}

fn in_full(reader: &mut Reader, key: &Key, sizes: &Node, unit: Option<Unit>) -> Vec<Row> {
    let expected = "a mapping from size labels to measurements";
    let Some(entries) = sizes.entries().filter(|entries| !entries.is_empty()) else {
        reader.shape(sizes, &key.text, expected);
        return Vec::new();
    };
    if entries.len() > MOST_SIZES {
        let cause = FileCause::TooMany {
            what: "sizes",
            found: entries.len(),
            most: MOST_SIZES,
        };
        reader.wrong(sizes.place, &key.text, cause);
        return Vec::new();
    }
    entries
        .iter()
        .map(|(label, node)| Row {
            label: label.text.trim().to_owned(),
            place: label.place,
            values: reader.measurements(node, &join(&key.text, &label.text), unit),
        })
        .collect()
}

fn by_steps(
    reader: &mut Reader,
    (_, base): (&Key, &Node),
    (_, steps): (&Key, &Node),
    unit: Option<Unit>,
) -> Vec<Row> {
    let expected = "a mapping with `label` and `measurements`";
    let [label, measurements] = reader.fields(base, "base", ["label", "measurements"], expected);
    let expected = "a mapping with `labels` and `per_size`";
    let [labels, per_size] = reader.fields(steps, "steps", ["labels", "per_size"], expected);
    let mut wanted = |field: Option<_>, node: &Node, key, hint| {
        if field.is_none() && node.entries().is_some() {
            reader.wrong(node.place, "", FileCause::MissingKey { key, hint });
        }
    };
    wanted(
        label,
        base,
        "base.label",
        "write which of the labels the base is",
    );
    let hint = "write the measurements of the base";
    wanted(measurements, base, "base.measurements", hint);
    wanted(
        labels,
        steps,
        "steps.labels",
        "write the labels, smallest first",
    );
    let hint = "write by how much each measurement changes";
    wanted(per_size, steps, "steps.per_size", hint);
    let (Some((_, label)), Some((_, measurements)), Some((_, list)), Some((_, per_size))) =
        (label, measurements, labels, per_size)
    else {
        return Vec::new();
    };
    let values = reader.measurements(measurements, "base.measurements", unit);
    let base_label = reader.text(label, "base.label");
    let labels = labels_of(reader, list);
    let Some((base_label, labels)) = base_label.zip(labels) else {
        return Vec::new();
    };
    let Some(base_index) = labels.iter().position(|(text, _)| *text == base_label) else {
        let problem = "is not among the labels; add it to `steps.labels`";
        let cause = FileCause::BadLabel {
            label: base_label,
            problem,
        };
        reader.wrong(label.place, "base.label", cause);
        return Vec::new();
    };
    let changes = changes(reader, per_size, labels.len(), unit, &values);
    labels
        .into_iter()
        .enumerate()
        .map(|(index, (label, place))| Row {
            label,
            place,
            values: Values {
                unit,
                given: values
                    .given
                    .iter()
                    .map(|given| Given {
                        value: given.value + change(&changes, given.measurement, base_index, index),
                        // What is wrong with a size is reported at its own label.
                        place: if index == base_index {
                            given.place
                        } else {
                            place
                        },
                        ..*given
                    })
                    .collect(),
                spoiled: values.spoiled.clone(),
            },
        })
        .collect()
}

fn labels_of(reader: &mut Reader, node: &Node) -> Option<Vec<(String, Place)>> {
    let expected = "a list of at most a thousand labels, such as `[\"36\", \"38\"]`";
    match &node.value {
        NodeValue::List(items) if !items.is_empty() && items.len() <= MOST_SIZES => items
            .iter()
            .map(|item| {
                let label = reader.text(item, "steps.labels")?;
                Some((label, item.place))
            })
            .collect(),
        _ => {
            reader.shape(node, "steps.labels", expected);
            None
        }
    }
}

/// What each measurement changes by over each gap between two labels, in mm or radians.
fn changes(
    reader: &mut Reader,
    node: &Node,
    labels: usize,
    unit: Option<Unit>,
    base: &Values,
) -> Vec<(Measurement, Vec<f64>)> {
    let gaps = labels.saturating_sub(1);
    let mut found = Vec::new();
    let read = |reader: &mut Reader, measurement, node: &Node, path: &str| {
        let steps = match &node.value {
            NodeValue::List(items) if items.len() == gaps => items
                .iter()
                .map(|item| reader.value(measurement, item, path, unit, true))
                .collect::<Option<Vec<f64>>>()?,
            NodeValue::List(items) => {
                let (given, needed) = (items.len(), gaps);
                let problem = format!(
                    "{given} steps given, {needed} needed, one between each two of {labels} labels"
                );
                let hint = "write one step for each, or a single one for all";
                reader.wrong(node.place, path, FileCause::Senseless { problem, hint });
                return None;
            }
            _ => vec![reader.value(measurement, node, path, unit, true)?; gaps],
        };
        if !base.given.iter().any(|g| g.measurement == measurement)
            && !base.spoiled.contains(&measurement)
        {
            let hint = "a step needs its measurement in `base.measurements`";
            let key = measurement.name();
            reader.wrong(node.place, path, FileCause::MissingKey { key, hint });
        }
        found.push((measurement, steps));
        Some(0.0)
    };
    let mut seen = Values::default();
    reader.each_measurement(node, "steps.per_size", &mut seen, read);
    found
}

/// The change of a measurement from the base to the label at `index`.
fn change(
    changes: &[(Measurement, Vec<f64>)],
    measurement: Measurement,
    base: usize,
    index: usize,
) -> f64 {
    let steps = changes.iter().find(|(m, _)| *m == measurement);
    let Some((_, steps)) = steps else { return 0.0 };
    let sum = |from: usize, to: usize| -> f64 {
        steps.iter().skip(from).take(to.saturating_sub(from)).sum()
    };
    if index >= base {
        sum(base, index)
    } else {
        -sum(index, base)
    }
}

/// From a mapping as in a file; the places of problems are not known.
impl<'de> Deserialize<'de> for SizeTable {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::from_node(&Node::deserialize(deserializer)?).map_err(D::Error::custom)
    }
}
