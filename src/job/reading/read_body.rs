//! Reading whose measurements a job means: a set, or sizes of a table.

#[cfg(feature = "fit")]
use crate::fit::{NearestSize, nearest_size};
use crate::job::ResolveError;
use crate::measurements::{
    Body, FileCause, FileErrors, Measurement, MeasurementSet, Node, NodeValue, Place, Reader,
    SizeTable, join,
};

/// Where the measurements are.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::job) enum JobBody {
    File {
        path: String,
        place: Place,
    },
    Here(Box<MeasurementSet>),
    /// One size of a table, and single measurements of other sizes. Without a size where the one
    /// nearest to a wearer is to be found.
    Table {
        path: String,
        place: Place,
        size: Option<String>,
        size_place: Option<Place>,
        others: Vec<(Measurement, String)>,
    },
}

impl JobBody {
    pub(in crate::job) fn path(&self) -> Option<&str> {
        match self {
            Self::File { path, .. } | Self::Table { path, .. } => Some(path),
            Self::Here(_) => None,
        }
    }

    /// The size of the table that was chosen.
    pub(in crate::job) fn size(&self) -> Option<&str> {
        match self {
            Self::Table { size, .. } => size.as_deref(),
            Self::File { .. } | Self::Here(_) => None,
        }
    }

    /// Where that size is written.
    pub(in crate::job) fn size_place(&self) -> Option<Place> {
        match self {
            Self::Table { size_place, .. } => *size_place,
            Self::File { .. } | Self::Here(_) => None,
        }
    }

    pub(in crate::job) fn place(&self) -> Option<Place> {
        match self {
            Self::File { place, .. } | Self::Table { place, .. } => Some(*place),
            Self::Here(_) => None,
        }
    }

    /// The whole table, where none of its sizes is named.
    #[cfg(feature = "fit")]
    pub(in crate::job) fn whole_table(
        &self,
        text: Option<&str>,
    ) -> Result<Option<SizeTable>, FileErrors> {
        match (self, text) {
            (Self::Table { size: None, .. }, Some(text)) => table_in(text).map(Some),
            _ => Ok(None),
        }
    }

    /// The same with the size that is nearest to a wearer, if none is named, and how it was found.
    #[cfg(feature = "fit")]
    pub(in crate::job) fn nearest_to(
        self,
        text: Option<&str>,
        wearer: &Body,
    ) -> Result<(Self, Option<NearestSize>), ResolveError> {
        let (
            Self::Table {
                size: None,
                path,
                place,
                size_place,
                others,
            },
            Some(text),
        ) = (&self, text)
        else {
            return Ok((self, None));
        };
        let Some(nearest) = nearest_size(&table_in(text)?, wearer) else {
            return Ok((self, None));
        };
        let sized = Self::Table {
            path: path.clone(),
            place: *place,
            size: Some(nearest.chosen.size.clone()),
            size_place: *size_place,
            others: others.clone(),
        };
        Ok((sized, Some(nearest)))
    }

    /// The set, from the text of the file that [`path`](Self::path) names.
    pub(in crate::job) fn resolve(
        self,
        text: Option<&str>,
    ) -> Result<MeasurementSet, ResolveError> {
        match (self, text) {
            (Self::Here(set), _) => Ok(*set),
            (Self::File { .. }, Some(text)) => Ok(set_in(text)?),
            (Self::Table { size, others, .. }, Some(text)) => {
                let table = table_in(text)?;
                // Without one the nearest was to be found, and a table without sizes has none.
                let size = size.unwrap_or_default();
                between(&table, &size, &others)
            }
            (Self::File { path, .. } | Self::Table { path, .. }, None) => {
                Err(ResolveError::NoSet { path })
            }
        }
    }
}

/// A set in YAML, JSON among it; without the feature `yaml` in JSON alone.
fn set_in(text: &str) -> Result<MeasurementSet, FileErrors> {
    #[cfg(feature = "yaml")]
    return MeasurementSet::parse(text);
    #[cfg(not(feature = "yaml"))]
    MeasurementSet::from_json(text)
}

/// A size table, in the same way.
fn table_in(text: &str) -> Result<SizeTable, FileErrors> {
    #[cfg(feature = "yaml")]
    return SizeTable::parse(text);
    #[cfg(not(feature = "yaml"))]
    SizeTable::from_json(text)
}

/// The wearer of one size who has single measurements of others.
fn between(
    table: &SizeTable,
    size: &str,
    others: &[(Measurement, String)],
) -> Result<MeasurementSet, ResolveError> {
    let mut taken: Vec<(Measurement, f64)> = table.body(size)?.taken().collect();
    let mut name = format!("{}, size {size}", table.name());
    for (measurement, label) in others {
        let body = table.body(label)?;
        if !body.is_taken(*measurement) {
            let (measurement, size) = (*measurement, label.clone());
            return Err(ResolveError::NotInTable { measurement, size });
        }
        taken.retain(|(known, _)| known != measurement);
        taken.push((*measurement, body.value(*measurement)));
        name.push_str(&format!(", {measurement} of {label}"));
    }
    Ok(MeasurementSet::new(
        name,
        table.unit(),
        Body::from_taken(taken)?,
    ))
}

/// What a job says of the body; a table needs a size unless the nearest is to be found.
pub(in crate::job) fn body(reader: &mut Reader, node: &Node, needs_size: bool) -> Option<JobBody> {
    match &node.value {
        NodeValue::Text(path) if !path.trim().is_empty() => Some(JobBody::File {
            path: path.clone(),
            place: node.place,
        }),
        NodeValue::Map(entries) if entries.iter().any(|(key, _)| key.text == "table") => {
            of_table(reader, node, needs_size)
        }
        NodeValue::Map(_) => set_here(reader, node, "body"),
        _ => {
            let expected = "the path of a measurement set, or a set with `unit` and `measurements`";
            reader.shape(node, "body", expected);
            None
        }
    }
}

/// The wearer with whom a pattern is compared: the path of a set, or a set.
pub(in crate::job) fn wearer(reader: &mut Reader, node: &Node) -> Option<JobBody> {
    match &node.value {
        NodeValue::Text(path) if !path.trim().is_empty() => Some(JobBody::File {
            path: path.clone(),
            place: node.place,
        }),
        NodeValue::Map(_) => set_here(reader, node, "wearer"),
        _ => {
            let expected = "the path of a measurement set, or a set with `unit` and `measurements`";
            reader.shape(node, "wearer", expected);
            None
        }
    }
}

/// A set that is written in the job under a key.
fn set_here(reader: &mut Reader, node: &Node, key: &str) -> Option<JobBody> {
    match MeasurementSet::from_node(node) {
        Ok(set) => Some(JobBody::Here(Box::new(set))),
        Err(errors) => {
            for mut problem in errors {
                problem.path = match problem.path.as_str() {
                    "" => key.to_owned(),
                    path => join(key, path),
                };
                reader.problems.push(problem);
            }
            None
        }
    }
}

/// `{table: range.yaml, size: 40, sizes: {hip_girth: 44}}`.
fn of_table(reader: &mut Reader, node: &Node, needs_size: bool) -> Option<JobBody> {
    let expected = "a mapping with `table`, `size` and perhaps `sizes`";
    let keys = ["table", "size", "sizes"];
    let [table, size, sizes] = reader.fields(node, "body", keys, expected);
    let path = table.and_then(|(_, node)| {
        let path = reader.text(node, "body.table")?;
        Some((path, node.place))
    });
    if size.is_none() && needs_size {
        let hint = "write `size:` and a label of the table";
        let cause = FileCause::MissingKey { key: "size", hint };
        reader.wrong(node.place, "body", cause);
    }
    let named = size.is_some() || needs_size;
    let size_place = size.map(|(_, node)| node.place);
    let size = size.and_then(|(_, node)| label(reader, node, "body.size"));
    let mut others = Vec::new();
    let mut all = true;
    if let Some((_, sizes)) = sizes {
        let Some(entries) = sizes.entries() else {
            let expected = "a mapping from measurements to sizes, such as `{hip_girth: 44}`";
            reader.shape(sizes, "body.sizes", expected);
            return None;
        };
        for (key, node) in entries {
            match key.text.parse::<Measurement>() {
                Err(unknown) => {
                    reader.wrong(key.place, "body.sizes", unknown);
                    all = false;
                }
                Ok(measurement) => {
                    match label(reader, node, &join("body.sizes", measurement.name())) {
                        Some(label) => others.push((measurement, label)),
                        None => all = false,
                    }
                }
            }
        }
    }
    let (path, place) = path?;
    if !all || (named && size.is_none()) {
        return None;
    }
    Some(JobBody::Table {
        path,
        place,
        size,
        size_place,
        others,
    })
}

/// A label; a bare number is one too.
fn label(reader: &mut Reader, node: &Node, path: &str) -> Option<String> {
    match &node.value {
        NodeValue::Number(number) if number.is_finite() => Some(number.to_string()),
        _ => reader.text(node, path).map(|text| text.trim().to_owned()),
    }
}
