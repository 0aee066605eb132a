//! Which kind of file a document is, where one is given in place of another.

use std::fmt;

/// The kinds of files that are read.
///
/// ```
/// # #[cfg(feature = "yaml")] {
/// use blockwright::measurements::{FileCause, FileKind, MeasurementSet};
/// let errors = MeasurementSet::parse("title: Skirt\nblock: skirt\nbody: ada.yaml\n").unwrap_err();
/// assert_eq!(errors.all().len(), 1); // not one for every key of the job
/// assert!(matches!(errors.all()[0].cause, FileCause::OtherFile { found: FileKind::Job, .. }));
/// # }
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum FileKind {
    /// What is to be made.
    Job,
    /// The measurements of one wearer.
    Set,
    /// The measurements of several sizes.
    Table,
    /// A pattern that was made.
    Pattern,
}

impl FileKind {
    /// The kind that a document is by its keys; none if they do not say.
    pub(super) fn by_keys(has: impl Fn(&str) -> bool) -> Option<Self> {
        if has("pieces") && has("seams") {
            Some(Self::Pattern)
        } else if has("block") {
            Some(Self::Job)
        } else if has("sizes") || (has("base") && has("steps")) {
            Some(Self::Table)
        } else if has("measurements") && !has("title") {
            Some(Self::Set)
        } else {
            None
        }
    }

    /// What to do about a file of this kind where another is wanted.
    pub(super) const fn hint(self, wanted: Self) -> &'static str {
        match (self, wanted) {
            (Self::Set, Self::Job) => {
                "write a job that names it: `title:`, `block:`, and this file under `body:`"
            }
            (Self::Job, Self::Set) => "give the file that the job names under `body:`",
            (Self::Table, Self::Set) => {
                "name one of its sizes in a job: `body: {table: FILE, size: LABEL}`"
            }
            (Self::Table, Self::Job) => "give the job first; the table stands beside it",
            (Self::Set, Self::Table) => "give a file with `sizes:`, or with `base:` and `steps:`",
            (Self::Pattern, Self::Job) => "write a job that names it: `block: {file: FILE}`",
            _ => "give the other file",
        }
    }
}

impl fmt::Display for FileKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Job => "a job",
            Self::Set => "a set of measurements",
            Self::Table => "a size table",
            Self::Pattern => "a pattern document",
        })
    }
}
