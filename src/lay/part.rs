//! What is laid: an outline and how it may lie.

use super::{CutShape, Pose};
use crate::geometry::Point;

/// One outline to be laid.
///
/// ```
/// use blockwright::lay::{CutShape, LayPart, Pose};
/// let pocket = LayPart::new("pocket", CutShape::rectangle(160.0, 140.0)?);
/// assert_eq!(pocket.poses, [Pose::default()]);
/// assert_eq!(pocket.layers, 1);
/// # Ok::<(), blockwright::lay::LayError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct LayPart {
    /// Name of the piece.
    pub name: String,
    /// How it is cut here, in words: `cut 2, both layers` for example.
    pub words: String,
    /// Its outline, face up, not turned.
    pub shape: CutShape,
    /// How it may lie; the first is tried first.
    pub poses: Vec<Pose>,
    /// Whether its edge at the least y of each pose lies on the fold of the cloth.
    pub on_fold: bool,
    /// On folded cloth, whether it is cut from a stretch that is opened out after the folded one.
    pub opened: bool,
    /// How many layers are cut through at once.
    pub layers: u8,
    /// The grain line to draw, its upper end last.
    pub grain: [Point; 2],
    /// The line where an unfolded piece was folded, to draw.
    pub centre: Option<[Point; 2]>,
}

impl LayPart {
    /// An outline that is cut once from one layer and lies as it is.
    #[must_use]
    pub fn new(name: impl Into<String>, shape: CutShape) -> Self {
        let bounds = shape.bounds();
        let (inset, middle) = (0.15 * bounds.width(), bounds.center().y);
        Self {
            name: name.into(),
            words: "cut 1".to_owned(),
            poses: vec![Pose::default()],
            on_fold: false,
            opened: false,
            layers: 1,
            grain: [
                Point::new(bounds.x0 + inset, middle),
                Point::new(bounds.x1 - inset, middle),
            ],
            centre: None,
            shape,
        }
    }

    /// The same part, which may lie in those poses.
    #[must_use]
    pub fn with_poses(mut self, poses: &[Pose]) -> Self {
        self.poses = poses.to_vec();
        self
    }

    /// The same part, whose edge at the least y lies on the fold of folded cloth.
    #[must_use]
    pub fn on_fold(mut self) -> Self {
        self.on_fold = true;
        self
    }

    /// The area of cloth cut out for it, in square millimetres.
    #[must_use]
    pub fn cloth_area(&self) -> f64 {
        self.shape.area() * f64::from(self.layers)
    }
}
