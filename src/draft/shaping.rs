//! How a block is shaped: where its back shoulder hides its fullness, and what becomes of it
//! below the underarm.

/// Where the fullness over the shoulder blade goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum ShoulderFullness {
    /// Into a dart.
    Dart,
    /// Into ease: the back shoulder is that much longer, in millimetres, and eased onto the front.
    Eased(f64),
}

/// The line of the side seam between underarm and hip.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum SideLine {
    /// In at the waist and out again.
    Shaped,
    /// Straight from underarm to hip.
    Straight,
}

/// What becomes of the block below the underarm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Lower {
    /// It ends at the waist.
    Waist,
    /// It runs on over the hip to a hem, all in one.
    Hem {
        /// Whether double-pointed darts shape the waist.
        darts: bool,
        /// The line of the side seam.
        side: SideLine,
        /// From waist to hem, in millimetres.
        length: f64,
    },
}

/// How a block is shaped.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Shaping {
    pub shoulder: ShoulderFullness,
    pub lower: Lower,
}

impl Shaping {
    /// The close-fitting block that ends at the waist.
    pub const BODICE: Self = Self {
        shoulder: ShoulderFullness::Dart,
        lower: Lower::Waist,
    };
}
