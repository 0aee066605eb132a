//! What running a job gives.

use crate::job::JobReport;
use crate::piece::Pattern;

/// A file in memory: its name within the folder of the job, and what is in it.
///
/// ```
/// use blockwright::job::OutputFile;
/// let file = OutputFile { name: "pattern.json".into(), bytes: b"{}".to_vec() };
/// assert_eq!(file.bytes.len(), 2);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OutputFile {
    /// The name, without any folder.
    pub name: String,
    /// The contents.
    pub bytes: Vec<u8>,
}

/// A pattern, what is to be said about it, and its files.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{Job, run};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let outcome = run(&Job::new("Skirt", Block::Skirt, MeasurementSet::new("Ada", Unit::Cm, body)))?;
/// assert!(outcome.file("pattern.json").is_some());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Outcome {
    /// The pattern, with all its warnings.
    pub pattern: Pattern,
    /// What is to be said about it.
    pub report: JobReport,
    /// Its files, in the order in which they are named to the user.
    pub files: Vec<OutputFile>,
}

impl Outcome {
    /// The file of that name.
    #[must_use]
    pub fn file(&self, name: &str) -> Option<&OutputFile> {
        self.files.iter().find(|file| file.name == name)
    }
}
