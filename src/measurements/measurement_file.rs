//! A file of measurements: a set or a size table.

use super::{FileErrors, MeasurementSet, Node, SizeTable};

/// Keys that a size table has and a set lacks.
const TABLE_KEYS: [&str; 4] = ["sizes", "base", "steps", "common"];

/// What a file of measurements turned out to be.
///
/// ```
/// use blockwright::measurements::MeasurementFile;
/// let file = MeasurementFile::from_json(
///     r#"{"name": "Range", "unit": "cm", "common": {"height": 168}, "sizes":
///         {"40": {"bust_girth": 92, "waist_girth": 76, "hip_girth": 100}}}"#,
/// )?;
/// assert!(matches!(file, MeasurementFile::Table(table) if table.sizes().len() == 1));
/// # Ok::<(), blockwright::measurements::FileErrors>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub enum MeasurementFile {
    /// The measurements of one wearer.
    Set(Box<MeasurementSet>),
    /// Measurements by size.
    Table(SizeTable),
}

impl MeasurementFile {
    /// Reads a set or a table, whichever it is by its keys; needs the feature `yaml`.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place.
    #[cfg(feature = "yaml")]
    pub fn parse(text: &str) -> Result<Self, FileErrors> {
        Self::from_node(&Node::parse(text)?)
    }

    /// Reads a set or a table written as JSON, with the same keys.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem.
    pub fn from_json(text: &str) -> Result<Self, FileErrors> {
        Self::from_node(&Node::from_json(text)?)
    }

    fn from_node(node: &Node) -> Result<Self, FileErrors> {
        let keys = node.entries().unwrap_or_default();
        let is_table = keys
            .iter()
            .any(|(key, _)| TABLE_KEYS.contains(&key.text.as_str()));
        Ok(if is_table {
            Self::Table(SizeTable::from_node(node)?)
        } else {
            Self::Set(Box::new(MeasurementSet::read(node, true)?))
        })
    }
}
