//! Why a job gives no pattern.

use crate::draft::DraftError;
use crate::drawing::SheetError;
use crate::explain::{Explain, Explanation};
use crate::grading::{GradingError, NestError};
use crate::measurements::{FileErrors, Measurement, MeasurementErrors, UnknownSize};
use crate::recipe::{MakeError, OwnBlockError};
use crate::render::json::DocumentError;
use crate::units::{Unit, speak};
use thiserror::Error;

/// On whose side a failure lies.
///
/// ```
/// use blockwright::job::{Fault, JobError};
/// use blockwright::recipe::MakeError;
/// let error = MakeError::Unprovable { violations: vec!["the side seams differ".into()] };
/// assert_eq!(JobError::from(error).fault(), Fault::Pattern);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Fault {
    /// The pattern or a measurement was refused.
    Pattern,
    /// The job asks for something that cannot be made or printed.
    Job,
}

/// Why a job gives no pattern, or not its files.
///
/// ```
/// use blockwright::explain::Explain;
/// use blockwright::job::JobError;
/// use blockwright::recipe::MakeError;
/// let error = JobError::from(MakeError::Unprovable { violations: vec!["the side seams differ".into()] });
/// assert!(error.to_string().contains("the side seams differ"));
/// assert_eq!(error.code(), "law_broken");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum JobError {
    /// The recipe gives no pattern for this body.
    #[error(transparent)]
    Make(#[from] MakeError),
    /// The pieces cannot be laid on a sheet.
    #[error("the pattern cannot be laid out: {0}")]
    Sheet(#[from] SheetError),
    /// A range cannot be graded; the size is named.
    #[error("the range cannot be graded: {0}")]
    Grading(#[from] GradingError),
    /// The sizes of a range cannot be laid over one another.
    #[error(transparent)]
    Nest(#[from] NestError),
    /// The label of a size makes no file name.
    #[error("size `{label}` makes no file name: {problem}")]
    Label {
        /// The label, shortened if long.
        label: String,
        /// What is wrong with it and what to do.
        problem: String,
    },
    /// The pieces cannot be written for exchange.
    #[error("the pattern cannot be written as DXF: {0}")]
    Dxf(#[from] crate::render::dxf::DxfError),
    /// The block cannot be fitted to the wearer.
    #[cfg(feature = "fit")]
    #[error("the block cannot be fitted: {0}")]
    Fit(#[from] crate::fit::FitError),
    /// The pieces cannot be laid on the cloth.
    #[cfg(feature = "lay")]
    #[error("the pieces cannot be laid: {0}")]
    Lay(#[from] crate::lay::LayError),
    /// There is no body in the round of these measurements.
    #[cfg(feature = "toile")]
    #[error(transparent)]
    Form(#[from] crate::form::FormError),
    /// The pattern cannot be sewn on screen.
    #[cfg(feature = "toile")]
    #[error("the pattern cannot be sewn on screen: {0}")]
    Toile(#[from] crate::toile::ToileError),
    /// The pattern cannot be printed as the job asks.
    #[cfg(feature = "pdf")]
    #[error("the pattern cannot be printed as asked under `print`: {0}")]
    Pdf(#[from] crate::render::pdf::PdfError),
}

impl JobError {
    /// On whose side the failure lies.
    #[must_use]
    pub const fn fault(&self) -> Fault {
        match self {
            #[cfg(feature = "pdf")]
            Self::Pdf(_) => Fault::Job,
            Self::Make(error) | Self::Grading(GradingError::Size { source: error, .. }) => {
                fault_of(error)
            }
            Self::Label { .. }
            | Self::Nest(NestError::TooMany { .. })
            | Self::Grading(GradingError::NoSizes | GradingError::Stopped { .. }) => Fault::Job,
            _ => Fault::Pattern,
        }
    }
}

const fn fault_of(error: &MakeError) -> Fault {
    match error {
        MakeError::Request(_)
        | MakeError::OwnBlock(OwnBlockError::Unread { .. } | OwnBlockError::OneBody { .. })
        | MakeError::Draft {
            source: DraftError::Option { .. },
            ..
        } => Fault::Job,
        _ => Fault::Pattern,
    }
}

/// Why a job file makes no job though it can be read.
///
/// ```
/// use blockwright::job::{JobFile, ResolveError};
/// let file = JobFile::from_json(r#"{"title": "A", "block": "skirt", "body": "ada.yaml"}"#)?;
/// assert!(matches!(file.resolve(None), Err(ResolveError::NoSet { path }) if path == "ada.yaml"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum ResolveError {
    /// The job names no body.
    #[error("the job has no `body`, so it can only be made in the sizes of a table")]
    NoBody,
    /// The measurement set that the job names was not given.
    #[error("the measurements in `{path}` were not given; read that file and pass its text on")]
    NoSet {
        /// The path as written in the job.
        path: String,
    },
    /// The measurement set is wrong; places are those of its file.
    #[error(transparent)]
    Set(#[from] FileErrors),
    /// The table has no such size.
    #[error(transparent)]
    Size(#[from] UnknownSize),
    /// The table does not give a measurement that is wanted of a size.
    #[error("the table gives no `{measurement}` for size `{size}`; leave it out under `sizes`")]
    NotInTable {
        /// The measurement.
        measurement: Measurement,
        /// The size.
        size: String,
    },
    /// The sizes together make no body.
    #[error(transparent)]
    Body(#[from] MeasurementErrors),
    /// The document of a block of one's own cannot be read, or its pattern cannot be sewn.
    #[error("the block in `{path}` cannot be used: {source}")]
    Block {
        /// The path as written in the job.
        path: String,
        /// What is wrong with the document.
        source: Box<DocumentError>,
    },
    /// The drawing of a block of one's own cannot be read.
    #[cfg(feature = "own-block")]
    #[error("the block in `{path}` cannot be used: {source}")]
    Drawing {
        /// The path as written in the job.
        path: String,
        /// What is wrong with the drawing.
        source: Box<crate::render::traced::TracedError>,
    },
    /// The document of a block of one's own does not say for which body it was made.
    #[error(
        "the block in `{path}` does not say for which body it was made ({source}); write `body:` \
         and the set it was made for"
    )]
    BlockBody {
        /// The path as written in the job.
        path: String,
        /// Why its measurements make no body.
        source: MeasurementErrors,
    },
    /// The block of one's own cannot be used.
    #[error(transparent)]
    OwnBlock(#[from] OwnBlockError),
}

impl JobError {
    /// What it says, with lengths in a unit.
    ///
    /// ```
    /// use blockwright::job::JobError;
    /// use blockwright::lay::Cloth;
    /// use blockwright::units::Unit;
    /// let error = JobError::from(Cloth::new(25.4).unwrap_err());
    /// assert!(error.in_unit(Unit::In).cause.contains("cloth 1 in wide"));
    /// ```
    #[must_use]
    pub fn in_unit(&self, unit: Unit) -> Explanation {
        let mut said = self.explanation();
        said.cause = speak(&said.cause, unit);
        said.cure = speak(&said.cure, unit);
        said.place = said.place.map(|place| speak(&place, unit));
        said
    }

    /// Which step of the alterations was refused, counted from one.
    ///
    /// ```
    /// use blockwright::job::JobError;
    /// use blockwright::recipe::MakeError;
    /// let error = JobError::from(MakeError::Unprovable { violations: Vec::new() });
    /// assert_eq!(error.step(), None);
    /// ```
    #[must_use]
    pub fn step(&self) -> Option<usize> {
        match self {
            Self::Make(MakeError::Alteration { refused, .. })
            | Self::Grading(GradingError::Size {
                source: MakeError::Alteration { refused, .. },
                ..
            }) => Some(refused.step),
            _ => None,
        }
    }

    /// What was wrapped, which knows its place and its cure.
    fn inner(&self) -> Option<&dyn Explain> {
        Some(match self {
            Self::Make(error) => error,
            Self::Sheet(error) => error,
            Self::Grading(error) => error,
            Self::Nest(error) => error,
            Self::Label { .. } => return None,
            Self::Dxf(error) => error,
            #[cfg(feature = "fit")]
            Self::Fit(error) => error,
            #[cfg(feature = "lay")]
            Self::Lay(error) => error,
            #[cfg(feature = "toile")]
            Self::Form(error) => error,
            #[cfg(feature = "toile")]
            Self::Toile(error) => error,
            #[cfg(feature = "pdf")]
            Self::Pdf(error) => error,
        })
    }
}

impl Explain for JobError {
    fn code(&self) -> String {
        match self {
            Self::Make(error) => error.code(),
            Self::Sheet(_) => "cannot_be_laid_out".to_owned(),
            Self::Grading(error) => error.code(),
            Self::Nest(NestError::TooMany { .. }) => "too_many_sizes".to_owned(),
            Self::Nest(NestError::Sheet(_)) => "cannot_be_laid_out".to_owned(),
            Self::Label { .. } => "bad_size_label".to_owned(),
            Self::Dxf(_) => "cannot_be_written_as_dxf".to_owned(),
            #[cfg(feature = "fit")]
            Self::Fit(error) => error.code(),
            #[cfg(feature = "lay")]
            Self::Lay(crate::lay::LayError::TooNarrow { .. }) => "cloth_too_narrow".to_owned(),
            #[cfg(feature = "lay")]
            Self::Lay(_) => "cannot_be_laid".to_owned(),
            #[cfg(feature = "toile")]
            Self::Form(error) => error.code(),
            #[cfg(feature = "toile")]
            Self::Toile(error) => error.code(),
            #[cfg(feature = "pdf")]
            Self::Pdf(_) => "cannot_be_printed".to_owned(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Label { label, .. } => Some(format!("size {label}")),
            _ => self.inner().and_then(Explain::place),
        }
    }

    fn cure(&self) -> String {
        self.inner().map_or_else(
            || "give the size a label that makes a file name".to_owned(),
            Explain::cure,
        )
    }
}

#[cfg(feature = "yaml")]
impl Explain for ResolveError {
    fn code(&self) -> String {
        match self {
            Self::NoBody => "no_body".to_owned(),
            Self::NoSet { .. } => "no_set".to_owned(),
            Self::Set(error) => error.code(),
            Self::Size(error) => error.code(),
            Self::NotInTable { .. } => "not_in_table".to_owned(),
            Self::Body(error) => error.code(),
            Self::Block { source, .. } => source.code(),
            #[cfg(feature = "own-block")]
            Self::Drawing { source, .. } => source.code(),
            Self::BlockBody { .. } => "own_block_without_body".to_owned(),
            Self::OwnBlock(error) => error.code(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::NoBody => Some("body".to_owned()),
            Self::NoSet { path } => Some(path.clone()),
            Self::Set(error) => error.place(),
            Self::Size(error) => error.place(),
            Self::NotInTable { measurement, size } => Some(format!("{measurement}, size {size}")),
            Self::Body(error) => error.place(),
            Self::Block { source, .. } => source.place(),
            #[cfg(feature = "own-block")]
            Self::Drawing { source, .. } => source.place(),
            Self::BlockBody { .. } => Some("body".to_owned()),
            Self::OwnBlock(error) => error.place(),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::NoBody => "name a measurement set under `body`".to_owned(),
            Self::NoSet { .. } => "read that file and give its text".to_owned(),
            Self::Set(error) => error.cure(),
            Self::Size(error) => error.cure(),
            Self::NotInTable { .. } => "leave it out under `sizes`".to_owned(),
            Self::Body(error) => error.cure(),
            Self::Block { source, .. } => source.cure(),
            #[cfg(feature = "own-block")]
            Self::Drawing { source, .. } => source.cure(),
            Self::BlockBody { .. } => "write `body:` and the set the block was made for".to_owned(),
            Self::OwnBlock(error) => error.cure(),
        }
    }
}
