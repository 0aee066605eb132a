//! A finished lay.

use super::{Cloth, CutShape, LayPart, Pose};
use crate::geometry::Point;
use kurbo::Vec2;

/// A piece in its place.
///
/// ```
/// use blockwright::lay::{Cloth, CutShape, LayPart, Search};
/// let cloth = Cloth::new(900.0)?;
/// let lay = Search::new(&cloth, vec![LayPart::new("pocket", CutShape::rectangle(160.0, 140.0)?)], 1)?.lay();
/// let pocket = &lay.stretches[0].pieces[0];
/// assert_eq!(pocket.shape.bounds().x0, cloth.gap());
/// # Ok::<(), blockwright::lay::LayError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Laid {
    /// Name of the piece.
    pub name: String,
    /// How it is cut here, in words.
    pub words: String,
    /// How it lies beside how it was drawn.
    pub pose: Pose,
    /// Whether its edge at y = 0 lies on the fold of the cloth.
    pub on_fold: bool,
    /// How many layers are cut through at once.
    pub layers: u8,
    /// Its outline where it lies: x from the start of its stretch, y from the fold or one
    /// selvedge.
    pub shape: CutShape,
    /// Its grain line where it lies, the upper end last.
    pub grain: [Point; 2],
    /// Where it was folded before it was unfolded.
    pub centre: Option<[Point; 2]>,
}

impl Laid {
    pub(super) fn new(part: &LayPart, pose: Pose, shift: Vec2) -> Self {
        let moved = |points: [Point; 2]| points.map(|p| pose.of(p) + shift);
        let (shape, to_origin) = part.shape.posed(pose);
        Self {
            name: part.name.clone(),
            words: part.words.clone(),
            pose,
            on_fold: part.on_fold,
            layers: part.layers,
            shape: shape.moved(shift - to_origin),
            grain: moved(part.grain),
            centre: part.centre.map(moved),
        }
    }

    /// How it is cut, and that the pattern lies face down if it does.
    #[must_use]
    pub fn words_in_pose(&self) -> String {
        if self.pose.face_down {
            format!("{}, face down", self.words)
        } else {
            self.words.clone()
        }
    }

    /// The area of cloth cut out for it, in square millimetres.
    #[must_use]
    pub fn cloth_area(&self) -> f64 {
        self.shape.area() * f64::from(self.layers)
    }
}

/// A stretch of the cloth that lies one way: folded, or opened out.
///
/// ```
/// use blockwright::lay::{Cloth, CutShape, LayPart, Search};
/// let part = LayPart::new("pocket", CutShape::rectangle(160.0, 140.0)?);
/// let lay = Search::new(&Cloth::new(900.0)?, vec![part], 1)?.lay();
/// assert!(!lay.stretches[0].folded);
/// # Ok::<(), blockwright::lay::LayError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Stretch {
    /// Whether it is folded lengthwise.
    pub folded: bool,
    /// Its width as it lies, in millimetres.
    pub width: f64,
    /// Its length, in millimetres, with the gap at both ends.
    pub length: f64,
    /// The pieces on it, in the order in which they were laid.
    pub pieces: Vec<Laid>,
}

/// A lay: the pieces in their places on a length of cloth.
///
/// # Guarantees
/// No two pieces overlap; none lies beyond the cloth; each keeps the gap from the others, from
/// the selvedges, from the ends, and from the fold unless it lies on it.
///
/// ```
/// use blockwright::lay::{Cloth, CutShape, LayPart, Search};
/// let cloth = Cloth::new(700.0)?.with_gap(0.0)?;
/// let lay = Search::new(&cloth, vec![LayPart::new("apron", CutShape::rectangle(900.0, 700.0)?)], 1)?.lay();
/// assert_eq!((lay.length(), lay.density()), (900.0, 1.0));
/// # Ok::<(), blockwright::lay::LayError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Lay {
    /// The cloth.
    pub cloth: Cloth,
    /// Its stretches, one after the other from its start; the folded one first.
    pub stretches: Vec<Stretch>,
    /// A length that no lay of these pieces can undercut, in millimetres.
    pub least_length: f64,
    /// The seed of the search that found it.
    pub seed: u64,
    /// The rounds of the search that found it.
    pub rounds: u32,
}

impl Lay {
    /// Length of cloth used, in millimetres.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.stretches.iter().map(|s| s.length).sum()
    }

    /// The area cut out of the cloth, in square millimetres.
    #[must_use]
    pub fn area(&self) -> f64 {
        let pieces = self.stretches.iter().flat_map(|s| &s.pieces);
        pieces.map(Laid::cloth_area).sum()
    }

    /// The part of the cloth used that becomes pieces: their area by that of the cloth.
    #[must_use]
    pub fn density(&self) -> f64 {
        self.area() / (self.cloth.width() * self.length())
    }
}
