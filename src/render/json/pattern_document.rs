//! A pattern and what is known about it, written to a document and read back.

use super::DocumentError;
use super::FitMapRecord;
use super::fault::short;
use super::from_tree::from_tree;
use super::read;
use super::shape::{DocumentShape, FORMAT, VERSION};
use super::to_shape::to_shape;
use super::tree::Tree;
use super::write::text;
use crate::allowance::{Allowances, CutLines};
use crate::alterations::Account;
use crate::invariants::{Tolerances, check_all};
use crate::measurements::{Body, BodyRecord};
use crate::piece::Pattern;

/// A pattern with its title, the body it was made for, the accounts of its alterations and its
/// cut lines: everything that a pattern document holds.
///
/// # Guarantees
/// Reading what [`text`](Self::text) wrote gives an equal pattern, and writing that gives the same
/// bytes.
///
/// A program reads a document, alters the pattern, and writes it again:
///
/// ```
/// use blockwright::alterations::{Alteration, HipGirth, alter};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::json::{self, PatternDocument};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// # let body = Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
/// #     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// # ])?;
/// # let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// # let file = json::render(&pattern, &body, "Skirt", &[]);
/// let mut document = PatternDocument::read_proved(file.as_bytes())?;
/// let wider: Box<dyn Alteration> = Box::new(HipGirth { amount: 20.0 });
/// let altered = alter(&document.pattern, &[wider])?;
/// document.pattern = altered.pattern;
/// document.accounts.extend(altered.accounts);
/// let text = document.text();
/// assert_eq!(PatternDocument::read_proved(text.as_bytes())?.pattern, document.pattern);
/// # Ok(()) }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct PatternDocument {
    /// The title of the job.
    pub title: String,
    /// The body it was made for, as it was measured and estimated then.
    pub body: BodyRecord,
    /// The pattern.
    pub pattern: Pattern,
    /// The accounts of the alterations that made it, in their order.
    pub accounts: Vec<Account>,
    /// The lines to cut along, where it has an allowance. They belong to this very pattern: after
    /// altering it, make them anew.
    pub cut: Option<CutLines>,
    /// How the pattern lies on a wearer with whom it was compared. It belongs to this very pattern.
    pub fit_map: Option<FitMapRecord>,
}

impl PatternDocument {
    /// A document of a pattern that was made for a body, without accounts and cut lines.
    #[must_use]
    pub fn new(title: impl Into<String>, body: &Body, pattern: Pattern) -> Self {
        Self {
            title: title.into(),
            body: BodyRecord::from(body),
            pattern,
            accounts: Vec::new(),
            cut: None,
            fit_map: None,
        }
    }

    /// The document as pretty-printed JSON, ending in a line feed.
    #[must_use]
    pub fn text(&self) -> String {
        text(&self.shape())
    }

    fn shape(&self) -> DocumentShape {
        let mut shape = to_shape(
            &self.pattern,
            self.body.clone(),
            &self.title,
            &self.accounts,
            self.cut.as_ref(),
        );
        shape.fit_map.clone_from(&self.fit_map);
        shape
    }

    /// Reads a document: its pattern holds together, and every figure agrees with its pieces.
    /// Whether it can be sewn is for [`read_proved`](Self::read_proved) to say.
    ///
    /// # Errors
    /// [`DocumentError`] with the place and what to do, for any other bytes: another format or
    /// version, a damaged or a doctored document.
    pub fn read(bytes: &[u8]) -> Result<Self, DocumentError> {
        let tree = Tree::parse(bytes)?;
        must_be_readable(&tree)?;
        let shape: DocumentShape = from_tree(&tree)?;
        let mut pieces = shape.pieces;
        let written: Vec<Option<String>> = pieces.iter_mut().map(|p| p.cut_line.take()).collect();
        let pattern = read::pattern(
            shape.block,
            pieces,
            shape.seams,
            shape.girths.0,
            shape.warnings,
        )?;
        let widths: Option<Allowances> =
            shape.allowance.as_ref().map(read::allowances).transpose()?;
        Ok(Self {
            title: shape.title,
            body: shape.body,
            cut: read::cut_lines(&pattern, widths.as_ref(), &written)?,
            pattern,
            accounts: read::accounts(shape.account)?,
            fit_map: shape.fit_map,
        })
    }

    /// Reads a document and proves that its pattern can be sewn: by the tolerances of an altered
    /// pattern where an account says that it was altered, else by those of a draft.
    ///
    /// # Errors
    /// As [`read`](Self::read), and [`DocumentError::Unsewable`] with every rule that is broken.
    pub fn read_proved(bytes: &[u8]) -> Result<Self, DocumentError> {
        let document = Self::read(bytes)?;
        let tolerances = if document.accounts.is_empty() {
            Tolerances::drafted()
        } else {
            Tolerances::altered()
        };
        let violations = check_all(&document.pattern, &tolerances);
        if violations.is_empty() {
            return Ok(document);
        }
        Err(DocumentError::Unsewable { violations })
    }
}

/// Whether it is a pattern document of this version; nothing else is looked at before.
fn must_be_readable(tree: &Tree) -> Result<(), DocumentError> {
    match tree.get("format") {
        Some(Tree::Text(format)) if format == FORMAT => {}
        Some(Tree::Text(other)) => {
            let found = format!("`{}`", short(other));
            return Err(DocumentError::NotAPattern { found });
        }
        Some(other) => {
            let found = other.kind().to_owned();
            return Err(DocumentError::NotAPattern { found });
        }
        None => {
            let found = "missing".to_owned();
            return Err(DocumentError::NotAPattern { found });
        }
    }
    let (found, cure) = match tree.get("version") {
        Some(Tree::Number(number)) if *number == f64::from(VERSION) => return Ok(()),
        Some(Tree::Number(number)) if *number > f64::from(VERSION) => {
            (number.to_string(), "read it with a newer program")
        }
        Some(Tree::Number(number)) => (
            number.to_string(),
            "it does not hold the whole pattern; draft the pattern again from its job",
        ),
        Some(other) => (
            other.kind().to_owned(),
            "draft the pattern again from its job",
        ),
        None => ("unknown".to_owned(), "draft the pattern again from its job"),
    };
    Err(DocumentError::Version {
        found,
        expected: VERSION,
        cure,
    })
}
