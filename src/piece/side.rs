//! The two sides of the wearer's body.

use serde::{Deserialize, Serialize};

/// A side of the wearer's body.
///
/// ```
/// use blockwright::piece::BodySide;
/// assert_eq!(BodySide::Left.name_of("back"), "back left");
/// assert_eq!(BodySide::Left.other(), BodySide::Right);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(rename = "side"))]
#[serde(rename_all = "snake_case")]
pub enum BodySide {
    /// The wearer's left.
    Left,
    /// The wearer's right.
    Right,
}

impl BodySide {
    /// Both sides.
    pub const BOTH: [Self; 2] = [Self::Left, Self::Right];

    /// The word that ends the names of pieces, seams and girths of that side.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    /// The other side.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
        }
    }

    /// The unique name of this side's one of what is called `name` where both sides are alike.
    #[must_use]
    pub fn name_of(self, name: &str) -> String {
        format!("{name} {}", self.name())
    }

    /// What this side's one is called where both sides are alike: the name without the side's
    /// word at its end, or the name as it is if it does not end so.
    #[must_use]
    pub fn base_of(self, name: &str) -> &str {
        name.strip_suffix(self.name())
            .and_then(|rest| rest.strip_suffix(' '))
            .unwrap_or(name)
    }
}

impl std::fmt::Display for BodySide {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// The name without its side's word; the name itself of what belongs to both sides.
pub(super) fn base_name(name: &str, side: Option<BodySide>) -> &str {
    side.map_or(name, |side| side.base_of(name))
}
