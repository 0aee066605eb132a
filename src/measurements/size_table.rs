//! Bodies by size.

use crate::explain::Explain;
use thiserror::Error;

use super::body::Body;
use super::near_name::nearest;
use crate::units::Unit;

/// One size of a table.
///
/// ```
/// use blockwright::measurements::{Body, Measurement, Size};
///
/// let body = Body::from_taken(Measurement::REQUIRED.map(|m| (m, 1310.0)))?;
/// assert_eq!(Size::new("54", body).label(), "54");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Size {
    label: String,
    body: Body,
}

impl Size {
    /// A size of this label.
    #[must_use]
    pub fn new(label: impl Into<String>, body: Body) -> Self {
        Self {
            label: label.into(),
            body,
        }
    }

    /// The label.
    #[must_use]
    pub fn label(&self) -> &str {
        &self.label
    }

    /// The body: what the table gives is taken, the rest estimated.
    #[must_use]
    pub const fn body(&self) -> &Body {
        &self.body
    }
}

/// A label that a table does not have.
///
/// ```
/// use blockwright::measurements::SizeTable;
/// use blockwright::units::Unit;
///
/// let table = SizeTable::new("empty", Unit::Cm, Vec::new());
/// assert!(table.body("40").unwrap_err().to_string().contains("40"));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("the table has no size `{label}`; {hint}")]
pub struct UnknownSize {
    /// The label asked for, shortened if long.
    pub label: String,
    /// The size that was meant, or those there are.
    pub hint: String,
}

/// A table of sizes, smallest first as written.
///
/// # The file
///
/// Either every size in full,
///
/// ```yaml
/// name: A range              # required
/// unit: cm                   # required: cm, mm or in
/// source: our own fitting    # optional
/// notes: for knits           # optional
/// common: {height: 168}      # optional: the same in every size
/// sizes:
///   "36": {bust_girth: 84, waist_girth: 68, hip_girth: 92}
///   "38": {bust_girth: 88, waist_girth: 72, hip_girth: 96}
/// ```
///
/// or one size and the steps from size to size; a step is one value for all steps, or
/// a list with one value for each gap between two labels,
///
/// ```yaml
/// name: A range
/// unit: cm
/// common: {height: 168}
/// base:
///   label: "38"
///   measurements: {bust_girth: 88, waist_girth: 72, hip_girth: 96}
/// steps:
///   labels: ["36", "38", "40"]
///   per_size: {bust_girth: 4, waist_girth: 4, hip_girth: [4, 5]}
/// ```
///
/// Values are written as in a set file; a value of a size goes before one of `common`.
///
/// ```
/// # #[cfg(feature = "yaml")] {
/// use blockwright::measurements::{Measurement, SizeTable};
///
/// let table = SizeTable::parse(
///     "name: A range\n\
///      unit: cm\n\
///      base:\n  \
///        label: '38'\n  \
///        measurements: {height: 168, bust_girth: 88, waist_girth: 72, hip_girth: 96}\n\
///      steps:\n  \
///        labels: ['36', '38', '40']\n  \
///        per_size: {bust_girth: 4, waist_girth: 4, hip_girth: [4, 5]}\n",
/// )?;
/// assert_eq!(table.body("36")?.value(Measurement::BustGirth), 840.0);
/// assert_eq!(table.body("40")?.value(Measurement::HipGirth), 1010.0);
/// # }
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct SizeTable {
    pub(super) name: String,
    pub(super) unit: Unit,
    pub(super) source: Option<String>,
    pub(super) notes: Option<String>,
    pub(super) sizes: Vec<Size>,
}

impl SizeTable {
    /// A table of this name; `unit` is the one it is reported in.
    #[must_use]
    pub fn new(name: impl Into<String>, unit: Unit, sizes: Vec<Size>) -> Self {
        Self {
            name: name.into(),
            unit,
            source: None,
            notes: None,
            sizes,
        }
    }

    /// What the table is called.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The unit of the file, in which it is reported.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.unit
    }

    /// Where the table comes from.
    #[must_use]
    pub fn source(&self) -> Option<&str> {
        self.source.as_deref()
    }

    /// What else is to be known.
    #[must_use]
    pub fn notes(&self) -> Option<&str> {
        self.notes.as_deref()
    }

    /// The sizes, in the order of the table.
    #[must_use]
    pub fn sizes(&self) -> &[Size] {
        &self.sizes
    }

    /// The labels, in the order of the table.
    pub fn labels(&self) -> impl Iterator<Item = &str> {
        self.sizes.iter().map(Size::label)
    }

    /// The body of a size.
    ///
    /// # Errors
    ///
    /// [`UnknownSize`] if no size has this label.
    pub fn body(&self, label: &str) -> Result<&Body, UnknownSize> {
        let label = label.trim();
        if let Some(size) = self.sizes.iter().find(|size| size.label == label) {
            return Ok(&size.body);
        }
        let labels: Vec<&str> = self.labels().collect();
        let hint = match nearest(label, labels.iter().copied()) {
            Some(near) if near.chars().count() > 3 => format!("did you mean `{near}`?"),
            _ if labels.is_empty() => "it has no sizes at all".to_owned(),
            _ => format!("it has {}", labels.join(", ")),
        };
        Err(UnknownSize {
            label: label.chars().take(40).collect(),
            hint,
        })
    }
}

impl Explain for UnknownSize {
    fn code(&self) -> String {
        "unknown_size".to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(self.label.clone())
    }

    fn cure(&self) -> String {
        self.hint.clone()
    }
}
