//! The columns of a table of people.

use crate::explain::Explain;
use serde::Serialize;
use thiserror::Error;

use crate::measurements::{Kind, Measurement};
use crate::units::Unit;

/// The most characters of a column's name that are repeated.
const LONGEST: usize = 40;

/// Why a header does not make a table of people.
///
/// ```
/// use blockwright::explain::Explain;
/// use blockwright::job::BatchColumns;
/// let error = BatchColumns::read(["id", "height", "bust_girth", "waste_girth", "hip_girth"]).unwrap_err();
/// assert_eq!(error.code(), "missing_column");
/// assert!(error.to_string().contains("was `waste_girth` meant?"));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum BatchColumnsError {
    /// There is no header.
    #[error(
        "there is no header; write the names of the columns into the first line, such as \
         `id,height,bust_girth,waist_girth,hip_girth`"
    )]
    NoHeader,
    /// Measurements that every wearer must have stand in no column.
    #[error(
        "there is no column {}; height, bust_girth, waist_girth and hip_girth must be there{hint}",
        .measurements.iter().map(|m| m.name()).collect::<Vec<_>>().join(", ")
    )]
    Missing {
        /// The measurements.
        measurements: Vec<Measurement>,
        /// A column that may be one of them, misspelt; empty if there is none.
        hint: String,
    },
    /// A column is there twice.
    #[error("`{name}` stands in column {first} and again in column {second}; keep one")]
    Repeated {
        /// What the column holds.
        name: String,
        /// Its first place, counted from one.
        first: usize,
        /// Its second place.
        second: usize,
    },
    /// A unit that the measurement cannot have.
    #[error("`{unit}` in column {place}, `{column}`, is no unit of {measurement}; use {expected}")]
    BadUnit {
        /// The column's name, shortened if long.
        column: String,
        /// Its place, counted from one.
        place: usize,
        /// What was written.
        unit: String,
        /// The measurement.
        measurement: Measurement,
        /// What could be written.
        expected: &'static str,
    },
}

impl Explain for BatchColumnsError {
    fn code(&self) -> String {
        match self {
            Self::NoHeader => "no_header",
            Self::Missing { .. } => "missing_column",
            Self::Repeated { .. } => "repeated_column",
            Self::BadUnit { .. } => "bad_unit",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::NoHeader => Some("line 1".to_owned()),
            Self::Missing { .. } => None,
            Self::Repeated { second, .. } => Some(format!("column {second}")),
            Self::BadUnit { place, .. } => Some(format!("column {place}")),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::NoHeader => "write the names of the columns into the first line".to_owned(),
            Self::Missing { measurements, .. } => {
                let names: Vec<&str> = measurements.iter().map(|m| m.name()).collect();
                format!("add a column for {}", names.join(", "))
            }
            Self::Repeated { .. } => "keep one of the columns".to_owned(),
            Self::BadUnit { expected, .. } => format!("use {expected}"),
        }
    }
}

/// A column that is no measurement.
///
/// ```
/// use blockwright::job::BatchColumns;
/// let columns = BatchColumns::read(
///     ["height", "bust_girth", "waist_girth", "hip_girth", "wrist", "shoe size"],
/// )?;
/// assert_eq!(columns.passed_over()[0].to_string(), "wrist (did you mean wrist_girth?)");
/// assert_eq!(columns.passed_over()[1].to_string(), "shoe size");
/// # Ok::<(), blockwright::job::BatchColumnsError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PassedOver {
    /// Its name, shortened if long.
    pub name: String,
    /// The measurement that may have been meant, if it stands in no other column.
    pub nearest: Option<Measurement>,
}

impl std::fmt::Display for PassedOver {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.name)?;
        match self.nearest {
            Some(measurement) => write!(f, " (did you mean {measurement}?)"),
            None => Ok(()),
        }
    }
}

/// A measurement, where it stands, and the unit of its bare numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::job) struct Column {
    pub measurement: Measurement,
    pub place: usize,
    pub unit: Unit,
}

/// The columns of a table of people: one wearer a row.
///
/// A column is named for a measurement, in millimetres unless its name says otherwise:
/// `waist_girth (cm)` or `waist_girth [in]`; `shoulder_slope` is in degrees. The column `id`, or
/// in its absence `name`, says who the wearer is. Other columns are not used, and are named.
///
/// # Guarantees
/// Every measurement that must be taken has a column, and none has two.
///
/// ```
/// use blockwright::job::BatchColumns;
/// use blockwright::measurements::Measurement;
/// let columns = BatchColumns::read(
///     ["id", "height (cm)", "bust_girth", "waist_girth", "hip_girth", "costume"],
/// )?;
/// let set = columns.wearer(1, &["ada", "168", "920", "760", "1000", "green"])?;
/// assert_eq!(set.body().value(Measurement::Height), 1680.0);
/// assert_eq!(columns.passed_over()[0].name, "costume");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BatchColumns {
    pub(in crate::job) columns: Vec<Column>,
    pub(in crate::job) id: Option<usize>,
    pub(in crate::job) count: usize,
    passed_over: Vec<PassedOver>,
}

impl BatchColumns {
    /// Reads a header.
    ///
    /// # Errors
    /// [`BatchColumnsError`] for a column that is missing, there twice or in a unit that it
    /// cannot have.
    pub fn read<S: AsRef<str>>(
        header: impl IntoIterator<Item = S>,
    ) -> Result<Self, BatchColumnsError> {
        let mut columns: Vec<Column> = Vec::new();
        let (mut id, mut name) = (None, None);
        let mut others = Vec::new();
        let mut count = 0;
        for (place, header) in header.into_iter().enumerate() {
            count = place + 1;
            let header = header.as_ref().trim();
            let (written, unit) = split(header);
            if let Ok(measurement) = written.parse::<Measurement>() {
                let unit = read_unit(measurement, unit, header, place)?;
                if let Some(first) = columns.iter().find(|c| c.measurement == measurement) {
                    return Err(repeated(measurement.name(), first.place, place));
                }
                columns.push(Column {
                    measurement,
                    place,
                    unit,
                });
                continue;
            }
            let slot = match header.to_lowercase().as_str() {
                "id" => &mut id,
                "name" => &mut name,
                _ => {
                    others.push(header.to_owned());
                    continue;
                }
            };
            if let Some(first) = slot.replace(place) {
                return Err(repeated(&header.to_lowercase(), first, place));
            }
        }
        if count == 0 || (count == 1 && others.iter().any(String::is_empty)) {
            return Err(BatchColumnsError::NoHeader);
        }
        if id.is_some() && name.is_some() {
            others.push("name".to_owned());
        }
        let passed_over: Vec<PassedOver> = others
            .iter()
            .map(|other| PassedOver {
                name: short(other),
                nearest: nearest(other, &columns),
            })
            .collect();
        let missing: Vec<Measurement> = Measurement::REQUIRED
            .into_iter()
            .filter(|m| columns.iter().all(|column| column.measurement != *m))
            .collect();
        if !missing.is_empty() {
            let meant = passed_over.iter().find(|column| {
                let nearest = column.nearest;
                nearest.is_some_and(|measurement| missing.contains(&measurement))
            });
            return Err(BatchColumnsError::Missing {
                measurements: missing,
                hint: meant.map_or_else(String::new, |column| {
                    format!("; was `{}` meant?", column.name)
                }),
            });
        }
        Ok(Self {
            columns,
            id: id.or(name),
            count,
            passed_over,
        })
    }

    /// The columns that are not used, in their order.
    #[must_use]
    pub fn passed_over(&self) -> &[PassedOver] {
        &self.passed_over
    }

    /// The measurements that have a column, in the order of the columns.
    pub fn measurements(&self) -> impl Iterator<Item = Measurement> + '_ {
        self.columns.iter().map(|column| column.measurement)
    }
}

/// The name of a column and its unit: `waist_girth (cm)`, `waist_girth [cm]`.
fn split(header: &str) -> (&str, Option<&str>) {
    for (open, close) in [('(', ')'), ('[', ']')] {
        let inside = header
            .strip_suffix(close)
            .and_then(|rest| rest.rsplit_once(open));
        if let Some((name, unit)) = inside {
            return (name.trim(), Some(unit.trim()));
        }
    }
    (header, None)
}

fn read_unit(
    measurement: Measurement,
    written: Option<&str>,
    column: &str,
    place: usize,
) -> Result<Unit, BatchColumnsError> {
    let Some(unit) = written else {
        return Ok(Unit::Mm);
    };
    let (read, expected) = match measurement.kind() {
        Kind::Length => (Unit::from_name(unit), "`mm`, `cm` or `in`"),
        Kind::Angle => {
            let names = ["deg", "degrees", "°"];
            let known = names.iter().any(|name| unit.eq_ignore_ascii_case(name));
            (known.then_some(Unit::Mm), "`deg`")
        }
    };
    read.ok_or_else(|| BatchColumnsError::BadUnit {
        column: short(column),
        place: place + 1,
        unit: short(unit),
        measurement,
        expected,
    })
}

fn repeated(name: &str, first: usize, second: usize) -> BatchColumnsError {
    BatchColumnsError::Repeated {
        name: name.to_owned(),
        first: first + 1,
        second: second + 1,
    }
}

/// The measurement that may have been meant by a name, unless another column holds it.
fn nearest(name: &str, columns: &[Column]) -> Option<Measurement> {
    let (name, _) = split(name);
    let near = name.parse::<Measurement>().err()?.nearest?;
    columns
        .iter()
        .all(|column| column.measurement != near)
        .then_some(near)
}

fn short(name: &str) -> String {
    let mut short: String = name.chars().take(LONGEST).collect();
    if short.len() < name.len() {
        short.push('…');
    }
    short
}
