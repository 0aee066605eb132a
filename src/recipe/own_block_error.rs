//! Why a block of one's own cannot be used.

use crate::draft::Block;
use crate::explain::Explain;
use crate::invariants::Violation;
use thiserror::Error;

/// Why a block of one's own cannot be used.
///
/// ```
/// use blockwright::explain::Explain;
/// use blockwright::recipe::OwnBlockError;
/// let error = OwnBlockError::Kind { path: "mine.json".into(), found: "cape".into() };
/// assert_eq!(error.code(), "own_block_kind");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum OwnBlockError {
    /// The file was not read.
    #[error("the block in `{path}` was not read; read that file and give its text")]
    Unread {
        /// The path as written in the job.
        path: String,
    },
    /// The job says too little or too much about it.
    #[error("the block in `{path}` {problem}; {cure}")]
    Asked {
        /// The path as written in the job.
        path: String,
        /// What is wrong.
        problem: &'static str,
        /// What to do.
        cure: &'static str,
    },
    /// It is none of the blocks that are known.
    #[error("the block in `{path}` is a `{found}`; it can be {}", kinds())]
    Kind {
        /// The path as written in the job.
        path: String,
        /// What it calls itself, shortened if long.
        found: String,
    },
    /// It breaks rules that every sewable pattern must meet.
    #[error(
        "the block in `{path}` cannot be sewn as it stands: {}",
        sentences(violations)
    )]
    Unsewable {
        /// The path as written in the job.
        path: String,
        /// What was found.
        violations: Vec<Violation>,
    },
    /// It cannot be graded, since it has nothing in common with a draft of its kind.
    #[error(
        "the block in `{path}` has no edge and no girth that a draft of its kind has, so that it \
         cannot be graded"
    )]
    Unlike {
        /// The path as written in the job.
        path: String,
    },
    /// It is drafted for nobody else.
    #[error(
        "the block in `{path}` is drawn once and is not drafted anew for other bodies; it can be \
         fitted to each of them"
    )]
    OneBody {
        /// The path as written in the job.
        path: String,
    },
}

fn kinds() -> String {
    let names = Block::ALL.map(|block| format!("`{}`", block.name()));
    names.join(", ")
}

fn sentences(violations: &[Violation]) -> String {
    let sentence = |violation: &Violation| format!("{}: {violation}", violation.law());
    violations
        .iter()
        .map(sentence)
        .collect::<Vec<_>>()
        .join("; ")
}

impl Explain for OwnBlockError {
    fn code(&self) -> String {
        match self {
            Self::Unread { .. } => "own_block_unread",
            Self::Asked { .. } => "own_block_asked",
            Self::Kind { .. } => "own_block_kind",
            Self::Unsewable { .. } => "own_block_unsewable",
            Self::Unlike { .. } => "nothing_to_fit",
            Self::OneBody { .. } => "own_block_is_of_one_body",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Unsewable { violations, .. } => violations.first().and_then(Explain::place),
            Self::Unread { path }
            | Self::Asked { path, .. }
            | Self::Kind { path, .. }
            | Self::Unlike { path }
            | Self::OneBody { path } => Some(path.clone()),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Unread { .. } => "read that file and give its text".to_owned(),
            Self::Asked { cure, .. } => (*cure).to_owned(),
            Self::Kind { .. } => format!("name its kind: {}", kinds()),
            Self::Unsewable { .. } => "mend these places in the block".to_owned(),
            Self::Unlike { .. } => {
                "name pieces, edges and girths as in a pattern document".to_owned()
            }
            Self::OneBody { .. } => {
                "fit it to each wearer, with the command `batch --fit`".to_owned()
            }
        }
    }
}
