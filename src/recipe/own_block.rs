//! A block of one's own, in place of a draft.

use super::OwnBlockError;
use crate::alterations::Account;
use crate::draft::{Block, DraftOptions, SleeveLength};
use crate::invariants::{Tolerances, check_all};
use crate::measurements::Body;
use crate::piece::{EdgeName, Pattern};

/// A block of one's own that stands in place of a draft: the file that a job names, and once that
/// was read its pattern and the body it was made for.
///
/// # Guarantees
/// A pattern that is there meets the rules that every sewable pattern must meet, by the tolerances
/// of an altered one.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::recipe::{OwnBlock, Recipe, Ways, make};
/// use blockwright::units::Unit;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let kept = draft(&body, &DraftOptions::of(Block::Skirt))?; // a block from an earlier job
/// let own = OwnBlock::new("my-block.json", kept.clone(), body.clone(), Vec::new())?;
/// let made = make(&Recipe::on("Skirt", own), &body, Unit::Cm, Ways::Skipped)?;
/// assert_eq!(made.drafted, kept);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct OwnBlock {
    path: String,
    /// What a drawing does not say of itself.
    drawing: Drawing,
    content: Option<Box<Content>>,
}

/// Of which kind a drawn block is, and what its paths are.
#[derive(Debug, Clone, PartialEq, Default)]
struct Drawing {
    kind: Option<Block>,
    names: Vec<(String, String)>,
}

/// What the file holds.
#[derive(Debug, Clone, PartialEq)]
struct Content {
    kind: Block,
    pattern: Pattern,
    body: Body,
    earlier: Vec<Account>,
}

impl OwnBlock {
    /// A block that is still to be read from its file.
    #[must_use]
    pub fn in_file(path: impl Into<String>) -> Self {
        Self {
            path: path.into(),
            drawing: Drawing::default(),
            content: None,
        }
    }

    /// A block that is still to be read from a drawing of it: its kind, and the names of paths whose
    /// ids are others, such as `("path12", "back.side_seam")`.
    #[must_use]
    pub fn in_drawing(
        path: impl Into<String>,
        kind: Option<Block>,
        names: Vec<(String, String)>,
    ) -> Self {
        Self {
            drawing: Drawing { kind, names },
            ..Self::in_file(path)
        }
    }

    /// The kind that the job gives a drawing.
    #[must_use]
    pub const fn drawn_kind(&self) -> Option<Block> {
        self.drawing.kind
    }

    /// The names that the job gives paths of a drawing, by their ids.
    #[must_use]
    pub fn drawn_names(&self) -> &[(String, String)] {
        &self.drawing.names
    }

    /// The same block, its file lying elsewhere: a job is written into another folder, say.
    ///
    /// ```
    /// use blockwright::recipe::OwnBlock;
    /// let block = OwnBlock::in_file("../blocks/best-skirt.svg").moved_to("own-block.svg");
    /// assert_eq!(block.path(), "own-block.svg");
    /// ```
    #[must_use]
    pub fn moved_to(self, path: impl Into<String>) -> Self {
        Self {
            path: path.into(),
            ..self
        }
    }

    /// The same as the job wrote it.
    pub(crate) fn written_as(mut self, asked: &Self) -> Self {
        self.drawing = asked.drawing.clone();
        self
    }

    /// A block read from a file: its pattern, the body it was made for, and what earlier alterations
    /// changed.
    ///
    /// # Errors
    /// [`OwnBlockError`] when the pattern is of no known kind or breaks a rule.
    pub fn new(
        path: impl Into<String>,
        pattern: Pattern,
        body: Body,
        earlier: Vec<Account>,
    ) -> Result<Self, OwnBlockError> {
        let path = path.into();
        let Some(kind) = Block::named(pattern.block()) else {
            let found = pattern.block().chars().take(40).collect();
            return Err(OwnBlockError::Kind { path, found });
        };
        let violations = check_all(&pattern, &Tolerances::altered());
        if !violations.is_empty() {
            return Err(OwnBlockError::Unsewable { path, violations });
        }
        let content = Content {
            kind,
            pattern,
            body,
            earlier,
        };
        Ok(Self {
            path,
            drawing: Drawing::default(),
            content: Some(Box::new(content)),
        })
    }

    /// The path as it is written in the job.
    #[must_use]
    pub fn path(&self) -> &str {
        &self.path
    }

    /// The pattern, once it was read.
    #[must_use]
    pub fn pattern(&self) -> Option<&Pattern> {
        self.content.as_ref().map(|content| &content.pattern)
    }

    /// The body it was made for, once it was read.
    #[must_use]
    pub fn body(&self) -> Option<&Body> {
        self.content.as_ref().map(|content| &content.body)
    }

    /// What alterations changed before it was written to its file.
    #[must_use]
    pub fn earlier(&self) -> &[Account] {
        self.content
            .as_ref()
            .map_or(&[], |content| &content.earlier)
    }

    /// The draft options that come nearest to it, with regular ease: what two bodies need is
    /// compared on drafts made with them. A bodice until it was read.
    #[must_use]
    pub fn options(&self) -> DraftOptions {
        let Some(content) = &self.content else {
            return DraftOptions::of(Block::Bodice);
        };
        let mut options = DraftOptions::of(content.kind);
        let mut sleeves = content.pattern.pieces().iter();
        let sleeve = sleeves.find(|piece| piece.outline().edge(&EdgeName::SLEEVE_CAP).is_some());
        options.sleeve = sleeve.map(|piece| match piece.line("elbow") {
            Some(_) => SleeveLength::Long,
            None => SleeveLength::Short,
        });
        if content.kind.is_one_piece() {
            let mut darts = content.pattern.pieces().iter().flat_map(|p| p.darts());
            options.waist_darts = Some(darts.any(|dart| dart.name == "waist"));
        }
        options
    }
}
