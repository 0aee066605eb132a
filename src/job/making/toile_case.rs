//! Which pattern a toile on screen is of.

use crate::piece::Pattern;
use crate::toile::Shown;

/// A pattern to be sewn, and which it is.
///
/// ```
/// use blockwright::job::ToileCase;
/// fn heading(case: &ToileCase) -> &str { case.words }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct ToileCase {
    /// The name in files: `before`, `after`, `own` or `pattern`.
    pub name: &'static str,
    /// What it is, for people.
    pub words: &'static str,
    /// The pattern.
    pub pattern: Pattern,
}

/// The file of a picture.
pub(in crate::job) fn picture_name(case: &str, shown: Shown) -> String {
    format!("toile-{case}-{}.png", shown.name())
}
