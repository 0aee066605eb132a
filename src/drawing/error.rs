//! Why a drawing was refused.

use crate::explain::Explain;
use thiserror::Error;

/// Why [`Drawing::new`](super::Drawing::new) refused its layers. Items are counted from 1 within
/// their layer.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawingError};
///
/// assert_eq!(Drawing::new(vec![]), Err(DrawingError::Empty));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum DrawingError {
    /// No layer holds an item.
    #[error("the drawing holds nothing: give at least one layer with one line or text")]
    Empty,
    /// A coordinate or angle is NaN or infinite.
    #[error(
        "layer '{layer}', item {item}: {what} is not a finite number; \
         look for a division by zero where it was computed"
    )]
    NotFinite {
        /// Name of the layer.
        layer: String,
        /// Number of the item in its layer, from 1.
        item: usize,
        /// Which number of the item.
        what: &'static str,
        /// The number found.
        value: f64,
    },
    /// A coordinate lies beyond what a renderer can place to a hundredth of a millimetre.
    #[error(
        "layer '{layer}', item {item}: {what} is {value} mm; expected between -{limit} and \
         {limit} mm, check the units or move the drawing nearer to its origin"
    )]
    TooFar {
        /// Name of the layer.
        layer: String,
        /// Number of the item in its layer, from 1.
        item: usize,
        /// Which number of the item.
        what: &'static str,
        /// The number found, in mm.
        value: f64,
        /// The greatest allowed, in mm.
        limit: f64,
    },
    /// A line width, dash or text size that cannot be drawn.
    #[error("layer '{layer}', item {item}: {what} is {value} mm; expected {expected}")]
    BadSize {
        /// Name of the layer.
        layer: String,
        /// Number of the item in its layer, from 1.
        item: usize,
        /// Which size of the item.
        what: &'static str,
        /// The size found, in mm.
        value: f64,
        /// What it may be.
        expected: &'static str,
    },
    /// A path that draws nothing or does not begin with a move.
    #[error(
        "layer '{layer}', item {item}: the path {what}; expected a move followed by at least \
         one line or curve"
    )]
    BadPath {
        /// Name of the layer.
        layer: String,
        /// Number of the item in its layer, from 1.
        item: usize,
        /// What is wrong with it.
        what: &'static str,
    },
    /// A layer without a name.
    #[error("layer {number} has no name; name it, viewers list layers by name")]
    UnnamedLayer {
        /// Number of the layer, from 1.
        number: usize,
    },
    /// Two layers of one name.
    #[error("two layers are named '{name}'; merge them or rename one")]
    DuplicateLayer {
        /// The name.
        name: String,
    },
}

impl Explain for DrawingError {
    fn code(&self) -> String {
        match self {
            Self::Empty => "empty_drawing",
            Self::NotFinite { .. } => "not_finite",
            Self::TooFar { .. } => "too_far",
            Self::BadSize { .. } => "bad_size",
            Self::BadPath { .. } => "bad_path",
            Self::UnnamedLayer { .. } => "unnamed_layer",
            Self::DuplicateLayer { .. } => "layer_twice",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Empty => None,
            Self::NotFinite { layer, item, .. }
            | Self::TooFar { layer, item, .. }
            | Self::BadSize { layer, item, .. }
            | Self::BadPath { layer, item, .. } => Some(format!("layer {layer}, item {item}")),
            Self::UnnamedLayer { number } => Some(format!("layer {number}")),
            Self::DuplicateLayer { name } => Some(format!("layer {name}")),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Empty => "give at least one layer with one line or text".to_owned(),
            Self::NotFinite { .. } => "look where the number was computed".to_owned(),
            Self::TooFar { .. } => "check the units, or move it nearer to the origin".to_owned(),
            Self::BadSize { expected, .. } => format!("give {expected}"),
            Self::BadPath { .. } => "begin with a move, then draw a line or curve".to_owned(),
            Self::UnnamedLayer { .. } => "name the layer".to_owned(),
            Self::DuplicateLayer { .. } => "merge the layers or rename one".to_owned(),
        }
    }
}
