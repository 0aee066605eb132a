//! The fullness of the bust in front of the ribs.

/// A rounded mound on each side whose top is the bust point. Lengths in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Fullness {
    /// How far forward it comes at the bust point.
    pub(super) amount: f64,
    /// The bust point, from the middle.
    pub(super) x: f64,
    /// The bust point, above the waist.
    pub(super) y: f64,
    /// How far the mound reaches to the middle, to the side, up and down.
    pub(super) inward: f64,
    pub(super) outward: f64,
    pub(super) up: f64,
    pub(super) down: f64,
    /// What it would be at the bust point without this.
    pub(super) edge: f64,
}

impl Fullness {
    /// The share of the amount at a place, 1 at the bust point; nothing at the side of a section that
    /// is of this width in mm, from the middle.
    pub(super) fn share(&self, x: f64, y: f64, half: f64) -> f64 {
        let x = x.abs();
        let across = (x - self.x)
            / if x < self.x {
                self.inward
            } else {
                self.outward
            };
        let along = (y - self.y) / if y < self.y { self.down } else { self.up };
        let far = across * across + along * along;
        if far >= 1.0 {
            return 0.0;
        }
        let out = (x / half) * (x / half);
        let side = (1.0 - out * out * out).max(0.0);
        let near = 1.0 - far;
        near * near * (3.0 - 2.0 * near) * side / self.edge
    }
}
