//! A part of a document that is not what belongs there, and its place.

use crate::explain::Explain;
use serde::de;
use std::fmt;
use thiserror::Error;

/// What is wrong with a part of a document.
///
/// ```
/// use blockwright::render::json::{DocumentError, PatternDocument, ShapeFault};
/// let read = PatternDocument::read(br#"{"format": "blockwright-pattern", "version": 2}"#);
/// assert!(matches!(read, Err(DocumentError::Shape { fault: ShapeFault::Missing { .. }, .. })));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum ShapeFault {
    /// A key that every such object has is not there.
    #[error("there is no `{key}`; every document of this version has it")]
    Missing {
        /// The key.
        key: String,
    },
    /// A key that no such object has.
    #[error("`{key}` is unknown here; known are {known}")]
    Unknown {
        /// The key, shortened if it is long.
        key: String,
        /// The keys that belong there.
        known: String,
    },
    /// A key is there twice.
    #[error("`{key}` is there twice; keep one of them")]
    Twice {
        /// The key, shortened if it is long.
        key: String,
    },
    /// Something of another kind or value.
    #[error("{found} stands where {expected} belongs")]
    Wrong {
        /// What stands there.
        found: String,
        /// What belongs there.
        expected: String,
    },
    /// Something that does not fit what stands beside it, or an unknown name.
    #[error("{what}")]
    Unfitting {
        /// What, and why.
        what: String,
    },
    /// A list or object with more entries than any pattern has.
    #[error("{found} entries are too many; at most {most} are read")]
    TooMany {
        /// How many there are.
        found: usize,
        /// How many may be there.
        most: usize,
    },
}

/// A fault and where it is; steps are added on the way out, the innermost first.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Fault {
    pub steps: Vec<String>,
    pub fault: ShapeFault,
}

impl Fault {
    /// The fault of something that is of another kind or value than belongs there.
    pub fn wrong(found: impl Into<String>, expected: impl Into<String>) -> Self {
        Self::from(ShapeFault::Wrong {
            found: found.into(),
            expected: expected.into(),
        })
    }

    /// The same fault, of a part under that key or number.
    pub fn within(mut self, step: impl fmt::Display) -> Self {
        self.steps.push(step.to_string());
        self
    }

    /// The place, as a JSON pointer: `/pieces/0/edges/2/path`; empty for the whole document.
    pub fn pointer(&self) -> String {
        let steps = self.steps.iter().rev();
        steps
            .map(|step| format!("/{}", short(&step.replace('~', "~0").replace('/', "~1"))))
            .collect()
    }
}

impl From<ShapeFault> for Fault {
    fn from(fault: ShapeFault) -> Self {
        Self {
            steps: Vec::new(),
            fault,
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.pointer(), self.fault)
    }
}

impl std::error::Error for Fault {}

impl de::Error for Fault {
    fn custom<T: fmt::Display>(found: T) -> Self {
        Self::from(ShapeFault::Unfitting {
            what: short(&found.to_string()),
        })
    }

    fn invalid_type(found: de::Unexpected<'_>, _: &dyn de::Expected) -> Self {
        Self::wrong(kind(&found), "something else")
    }

    fn invalid_value(found: de::Unexpected<'_>, _: &dyn de::Expected) -> Self {
        Self::wrong(kind(&found), "another value")
    }

    fn invalid_length(found: usize, _: &dyn de::Expected) -> Self {
        Self::wrong(format!("a list of {found}"), "a longer one")
    }

    fn unknown_variant(found: &str, known: &'static [&'static str]) -> Self {
        let one_of = match known {
            [only] => quoted(only),
            _ => format!("one of {}", listed(known)),
        };
        Self::wrong(quoted(found), one_of)
    }

    fn unknown_field(key: &str, known: &'static [&'static str]) -> Self {
        Self::from(ShapeFault::Unknown {
            key: short(key),
            known: listed(known),
        })
    }

    fn missing_field(key: &'static str) -> Self {
        Self::from(ShapeFault::Missing {
            key: key.to_owned(),
        })
    }

    fn duplicate_field(key: &'static str) -> Self {
        Self::from(ShapeFault::Twice {
            key: key.to_owned(),
        })
    }
}

fn kind(found: &de::Unexpected<'_>) -> &'static str {
    match found {
        de::Unexpected::Bool(_) => "true or false",
        de::Unexpected::Unsigned(_) | de::Unexpected::Signed(_) | de::Unexpected::Float(_) => {
            "a number"
        }
        de::Unexpected::Char(_) | de::Unexpected::Str(_) => "a text",
        de::Unexpected::Unit | de::Unexpected::Option => "nothing (null)",
        de::Unexpected::Seq => "a list",
        _ => "an object",
    }
}

fn listed(names: &[&str]) -> String {
    let names: Vec<String> = names.iter().map(|name| quoted(name)).collect();
    names.join(", ")
}

fn quoted(text: &str) -> String {
    format!("`{}`", short(text))
}

/// The text, or its beginning, without line breaks.
pub(super) fn short(text: &str) -> String {
    const MOST: usize = 160;
    let mut letters = text.chars();
    let start = letters.by_ref().take(MOST);
    let start: String = start
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    match letters.next() {
        Some(_) => start + "…",
        None => start,
    }
}

impl Explain for ShapeFault {
    fn code(&self) -> String {
        let code = match self {
            Self::Missing { .. } => "key_missing",
            Self::Unknown { .. } => "key_unknown",
            Self::Twice { .. } => "key_twice",
            Self::Wrong { .. } => "value_wrong",
            Self::Unfitting { .. } => "value_unfitting",
            Self::TooMany { .. } => "too_many_entries",
        };
        code.to_owned()
    }

    fn cure(&self) -> String {
        match self {
            Self::Missing { key } => format!("add `{key}`"),
            Self::Unknown { key, .. } => format!("leave `{key}` out"),
            Self::Twice { key } => format!("keep one `{key}`"),
            Self::Wrong { expected, .. } => format!("write {expected}"),
            Self::Unfitting { .. } => "let it fit what stands beside it".to_owned(),
            Self::TooMany { most, .. } => format!("write at most {most}"),
        }
    }
}
