//! A named set of items that a viewer can switch on and off.

use super::Item;

/// A named, ordered set of items; later items are drawn over earlier ones.
///
/// ```
/// use blockwright::drawing::{DrawnPath, Layer, Pen};
///
/// let mut layer = Layer::new("seam lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (100.0, 0.0), Pen::solid(0.5)));
/// assert_eq!(layer.items.len(), 1);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Layer {
    /// What viewers call it; unique in a drawing, not empty.
    pub name: String,
    /// What it holds.
    pub items: Vec<Item>,
    /// Whether viewers leave it out, in print too, until it is switched on.
    pub hidden: bool,
}

impl Layer {
    /// An empty layer.
    pub fn new(name: impl Into<String>) -> Self {
        Self {
            name: name.into(),
            items: Vec::new(),
            hidden: false,
        }
    }

    /// The same, left out until it is switched on.
    #[must_use]
    pub const fn hidden(mut self) -> Self {
        self.hidden = true;
        self
    }

    /// Adds an item on top.
    pub fn push(&mut self, item: impl Into<Item>) {
        self.items.push(item.into());
    }
}
