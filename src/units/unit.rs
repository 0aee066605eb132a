//! The units in which lengths are written.

use std::fmt;

use serde::{Deserialize, Serialize};

/// The unit of a written length. Inside the crate every length is in millimetres;
/// serialised as `"mm"`, `"cm"` or `"in"`.
///
/// ```
/// use blockwright::units::Unit;
///
/// assert_eq!(Unit::In.to_mm(36.5), 927.1);
/// assert_eq!(Unit::Cm.from_mm(920.0), 92.0);
/// assert_eq!(serde_json::to_string(&Unit::In)?, "\"in\"");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Unit {
    /// Millimetre.
    #[default]
    Mm,
    /// Centimetre, 10 mm.
    Cm,
    /// Inch, 25.4 mm exactly.
    In,
}

impl Unit {
    /// Every unit, smallest first.
    pub const ALL: [Self; 3] = [Self::Mm, Self::Cm, Self::In];

    /// The millimetres in one of this unit.
    #[must_use]
    pub const fn mm(self) -> f64 {
        match self {
            Self::Mm => 1.0,
            Self::Cm => 10.0,
            Self::In => 25.4,
        }
    }

    /// The name as it is written: `mm`, `cm` or `in`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::Cm => "cm",
            Self::In => "in",
        }
    }

    /// The name as it is spoken of many: `millimetres`, `centimetres` or `inches`.
    #[must_use]
    pub const fn plural(self) -> &'static str {
        match self {
            Self::Mm => "millimetres",
            Self::Cm => "centimetres",
            Self::In => "inches",
        }
    }

    /// The unit with this name, in any case, or `None`.
    #[must_use]
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL
            .into_iter()
            .find(|unit| unit.name().eq_ignore_ascii_case(name.trim()))
    }

    /// A number of this unit, in millimetres.
    #[must_use]
    pub fn to_mm(self, value: f64) -> f64 {
        match self {
            Self::Mm => value,
            Self::Cm => value * 10.0,
            // 127/5 is 25.4 exactly, and rounds once for eighths and sixteenths.
            Self::In => value * 127.0 / 5.0,
        }
    }

    /// A number of millimetres, in this unit.
    #[must_use]
    pub fn from_mm(self, mm: f64) -> f64 {
        match self {
            Self::Mm => mm,
            Self::Cm => mm / 10.0,
            Self::In => mm * 5.0 / 127.0,
        }
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}
