//! The words of a job: which block, which side seam, which sleeve.

/// A block that can be drafted.
///
/// ```
/// use blockwright::draft::Block;
/// assert_eq!(Block::named("skirt"), Some(Block::Skirt));
/// assert_eq!(Block::BodiceAndSkirt.name(), "bodice and skirt");
/// assert_eq!(format!("{:>6}", Block::Skirt), " skirt");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Block {
    /// Back and front from neck to waist.
    Bodice,
    /// Back and front from waist to hem.
    Skirt,
    /// Both, sewn together at the waist quarter by quarter.
    BodiceAndSkirt,
    /// Bodice and skirt in one: double-pointed waist darts, a back shoulder dart.
    Dress,
    /// In one, easier: the back shoulder eased, waist darts if wanted, any length.
    Tunic,
    /// As a tunic, with a straight side seam and down to just below the hip unless the job says otherwise.
    Shirt,
}

impl Block {
    /// Every block.
    pub const ALL: [Self; 6] = [
        Self::Bodice,
        Self::Skirt,
        Self::BodiceAndSkirt,
        Self::Dress,
        Self::Tunic,
        Self::Shirt,
    ];

    /// The name in job files and pattern documents.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Bodice => "bodice",
            Self::Skirt => "skirt",
            Self::BodiceAndSkirt => "bodice and skirt",
            Self::Dress => "dress",
            Self::Tunic => "tunic",
            Self::Shirt => "shirt",
        }
    }

    /// The block of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|b| b.name() == name)
    }

    /// Whether the block has a hem below the waist, so that a length means something.
    #[must_use]
    pub fn has_hem(self) -> bool {
        self != Self::Bodice
    }

    /// Whether a sleeve can be set into the block.
    #[must_use]
    pub fn has_armscye(self) -> bool {
        self != Self::Skirt
    }

    /// Whether the block is in one piece from neck to hem, so that its side seam and waist
    /// darts can be chosen.
    #[must_use]
    pub fn is_one_piece(self) -> bool {
        matches!(self, Self::Dress | Self::Tunic | Self::Shirt)
    }
}

impl std::fmt::Display for Block {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// The line of a one-piece block's side seam.
///
/// ```
/// use blockwright::draft::Side;
/// assert_eq!(Side::named("straight"), Some(Side::Straight));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Side {
    /// In at the waist and out over the hip.
    Shaped,
    /// Straight from underarm to hip.
    Straight,
}

impl Side {
    /// The name in job files.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Shaped => "shaped",
            Self::Straight => "straight",
        }
    }

    /// The side of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        [Self::Shaped, Self::Straight]
            .into_iter()
            .find(|s| s.name() == name)
    }
}

impl std::fmt::Display for Side {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// How long a sleeve is.
///
/// ```
/// use blockwright::draft::SleeveLength;
/// assert_eq!(SleeveLength::named("short"), Some(SleeveLength::Short));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum SleeveLength {
    /// To the middle of the upper arm.
    Short,
    /// Over the wrist bone.
    Long,
}

impl SleeveLength {
    /// The name in job files.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Short => "short",
            Self::Long => "long",
        }
    }

    /// The length of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        [Self::Short, Self::Long]
            .into_iter()
            .find(|l| l.name() == name)
    }
}

impl std::fmt::Display for SleeveLength {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// Whether the ease of the upper arm may follow the armscye.
///
/// The length of the armscye and the width of the sleeve decide how high its cap is. With the
/// same ease for everybody, a thin arm in a large armscye would get a cap that stands up, a
/// full arm in a small one a flat cap.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, SleeveWidth};
/// let mut options = DraftOptions::of(Block::Dress);
/// options.ease.upper_arm = 60.0;
/// options.sleeve_width = SleeveWidth::Exact; // 60 mm, whatever the cap becomes
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[non_exhaustive]
pub enum SleeveWidth {
    /// The ease asked for, or as near to it as gives a cap of a height that suits the block.
    #[default]
    Suited,
    /// Exactly the ease asked for.
    Exact,
}
