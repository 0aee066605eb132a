//! One wearer of a table of people.

use crate::explain::Explain;
use std::fmt;

use super::batch_columns::Column;
use crate::job::BatchColumns;
use crate::measurements::{
    Body, Kind, Measurement, MeasurementError, MeasurementErrors, MeasurementSet,
};
use crate::units::{Angle, Length, Unit, UnitError, speak};

/// Why a row gives no pattern: a code for counting, and a sentence.
///
/// ```
/// use blockwright::job::BatchColumns;
/// let columns = BatchColumns::read(["height", "bust_girth", "waist_girth", "hip_girth"])?;
/// let refusal = columns.wearer(1, &["1680", "92", "760", "1000"]).unwrap_err();
/// assert_eq!(refusal.code, "bust_girth_impossible");
/// assert!(refusal.to_string().starts_with("bust_girth_impossible: bust_girth 92 mm is impossible"));
/// # Ok::<(), blockwright::job::BatchColumnsError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct BatchRefusal {
    /// A short name in snake case.
    pub code: String,
    /// What was wrong, what was expected and what to do, on one line.
    pub text: String,
}

impl BatchRefusal {
    pub(in crate::job) fn new(code: impl Into<String>, text: impl fmt::Display) -> Self {
        // On one line, as a record is.
        let text = text.to_string();
        Self {
            code: code.into(),
            text: text.lines().collect::<Vec<_>>().join("; "),
        }
    }

    fn impossible(errors: &MeasurementErrors, unit: Unit) -> Self {
        let code = errors.all().first().map_or_else(String::new, |error| {
            let what = match error {
                MeasurementError::Missing { .. } => "missing",
                MeasurementError::Repeated { .. } => "repeated",
                _ => "impossible",
            };
            format!("{}_{what}", error.measurement())
        });
        Self::new(code, speak(&errors.to_string(), unit))
    }
}

impl fmt::Display for BatchRefusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.code, self.text)
    }
}

impl std::error::Error for BatchRefusal {}

impl BatchColumns {
    /// Who the wearer of a row is: its cell under `id` or `name`, or the number of the row, if
    /// there is none or it is empty. Rows are counted from one, without the header.
    #[must_use]
    pub fn id<S: AsRef<str>>(&self, row: u64, cells: &[S]) -> String {
        let written = self.id.and_then(|place| cells.get(place));
        let written = written.map_or("", |cell| cell.as_ref().trim());
        if written.is_empty() {
            row.to_string()
        } else {
            written.to_owned()
        }
    }

    /// The measurements of a row. An empty cell was not taken; a cell may carry a unit of its
    /// own, `92 cm`.
    ///
    /// # Errors
    /// [`BatchRefusal`] with every cell that cannot be read, or every value that makes the body
    /// impossible.
    pub fn wearer<S: AsRef<str>>(
        &self,
        row: u64,
        cells: &[S],
    ) -> Result<MeasurementSet, BatchRefusal> {
        if cells.len() != self.count {
            let (found, wanted) = (cells.len(), self.count);
            let text = format!(
                "the row has {found} cells, the header {wanted}; write a comma for every cell, \
                 and quotes round a cell with a comma in it"
            );
            return Err(BatchRefusal::new("wrong_number_of_cells", text));
        }
        let mut taken = Vec::new();
        let mut unreadable: Vec<(&Column, UnitError)> = Vec::new();
        for column in &self.columns {
            let text = cells.get(column.place).map_or("", AsRef::as_ref);
            if text.trim().is_empty() {
                continue;
            }
            match value(column, text) {
                Ok(value) => taken.push((column.measurement, value)),
                Err(error) => unreadable.push((column, error)),
            }
        }
        if let Some((first, _)) = unreadable.first() {
            let texts = unreadable.iter().map(|(column, error)| {
                let error = speak(&error.to_string(), column.unit);
                format!("{}: {error}", column.measurement)
            });
            let text = texts.collect::<Vec<_>>().join("; ");
            return Err(BatchRefusal::new(
                format!("{}_unreadable", first.measurement),
                text,
            ));
        }
        // Told in the unit in which the bust was written.
        let bust = self
            .columns
            .iter()
            .find(|column| column.measurement == Measurement::BustGirth);
        let unit = bust.map_or_else(Default::default, |column| column.unit);
        let body = Body::from_taken(taken);
        let body = body.map_err(|errors| BatchRefusal::impossible(&errors, unit))?;
        Ok(MeasurementSet::new(self.id(row, cells), unit, body))
    }
}

/// A cell in mm or radians.
fn value(column: &Column, text: &str) -> Result<f64, UnitError> {
    match column.measurement.kind() {
        Kind::Length => Length::parse(text, Some(column.unit)).map(Length::mm),
        Kind::Angle => {
            let angle: Angle = text.parse()?;
            if angle.radians() < 0.0 {
                return Err(UnitError::Negative {
                    value: angle.degrees(),
                    unit: "degrees",
                });
            }
            Ok(angle.radians())
        }
    }
}

impl Explain for BatchRefusal {
    fn code(&self) -> String {
        self.code.clone()
    }

    fn message(&self) -> String {
        self.text.clone()
    }

    fn cure(&self) -> String {
        "correct the row, or leave it out".to_owned()
    }
}
