//! Which font a letter is written with.

use std::collections::BTreeSet;

use pdf_writer::Name;

use crate::drawing::Face;

/// A font of a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::render::pdf) enum Which {
    /// The built-in font, or the viewer's.
    Regular,
    /// The same, bold.
    Bold,
    /// The one for other scripts.
    #[cfg_attr(not(feature = "fonts"), allow(dead_code))]
    Other,
}

/// The letters that a file uses, with the font that each is written with.
pub(in crate::render::pdf) type Used = BTreeSet<(Which, char)>;

impl Which {
    #[cfg(feature = "fonts")]
    pub(in crate::render::pdf) const ALL: [Self; 3] = [Self::Regular, Self::Bold, Self::Other];

    /// The font of a face.
    pub(in crate::render::pdf) const fn of(face: Face) -> Self {
        match face {
            Face::Regular => Self::Regular,
            Face::Bold => Self::Bold,
        }
    }

    /// Its name in a page's resources.
    pub(in crate::render::pdf) const fn name(self) -> Name<'static> {
        match self {
            Self::Regular => Name(b"F0"),
            Self::Bold => Name(b"F1"),
            Self::Other => Name(b"F2"),
        }
    }
}
