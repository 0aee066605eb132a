//! What a pattern is made from.

use super::OwnBlock;
use crate::allowance::Allowances;
use crate::alterations::Request;
use crate::draft::{Block, DraftOptions};
use crate::piece::Warning;

/// The most characters a title may have: more finds no room on a piece.
pub const LONGEST_TITLE: usize = 120;

/// What a pattern is made from, whoever it is for.
///
/// ```
/// use blockwright::alterations::Request;
/// use blockwright::draft::{Block, SleeveLength};
/// use blockwright::recipe::Recipe;
/// let mut recipe = Recipe::new("Linen tunic", Block::Tunic);
/// recipe.options.sleeve = Some(SleeveLength::Long);
/// recipe.alterations = vec![Request::new("shoulder_slope", serde_json::json!({"to": "body"}))?];
/// # Ok::<(), blockwright::alterations::RequestError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Recipe {
    /// What the work is called.
    pub title: String,
    /// The size that is written on the pieces, if any.
    pub size: Option<String>,
    /// The date that is written on the pieces, as it is, if any.
    pub date: Option<String>,
    /// The block and what is wanted of it; with a block of one's own, the draft it is nearest to.
    pub options: DraftOptions,
    /// The block of one's own that stands in place of a draft, if any.
    pub own: Option<OwnBlock>,
    /// The alterations of the draft, made in this order.
    pub alterations: Vec<Request>,
    /// The seam allowances; without them there are only stitching lines.
    pub allowances: Option<Allowances>,
    /// What was noticed when the recipe was read; it becomes warnings of the pattern.
    pub notes: Vec<Warning>,
}

impl Recipe {
    /// A recipe for the block as it usually is: regular ease, no sleeve, no alterations, no
    /// allowances.
    #[must_use]
    pub fn new(title: impl Into<String>, block: Block) -> Self {
        Self {
            title: title.into(),
            size: None,
            date: None,
            options: DraftOptions::of(block),
            own: None,
            alterations: Vec::new(),
            allowances: None,
            notes: Vec::new(),
        }
    }

    /// A recipe that begins with a block of one's own: no alterations, no allowances.
    ///
    /// ```
    /// use blockwright::recipe::{OwnBlock, Recipe};
    /// let recipe = Recipe::on("My dress", OwnBlock::in_file("my-block.json"));
    /// assert_eq!(recipe.own.as_ref().map(OwnBlock::path), Some("my-block.json"));
    /// ```
    #[must_use]
    pub fn on(title: impl Into<String>, own: OwnBlock) -> Self {
        let mut recipe = Self::new(title, Block::Bodice);
        recipe.put_on(own);
        recipe
    }

    /// Puts a block of one's own in place of whatever stood there.
    pub(crate) fn put_on(&mut self, own: OwnBlock) {
        self.options = own.options();
        self.own = Some(own);
    }
}
