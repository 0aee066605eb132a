//! An angle, read from text.

use std::fmt;
use std::str::FromStr;

use super::error::{UnitError, quoted};
use super::number::{plain, split, value};

/// The largest angle that is accepted, in degrees: one turn.
const LARGEST_DEGREES: f64 = 360.0;

/// An angle, held in radians: finite and at most one turn either way.
///
/// Read as a number with `°`, `deg`, `degree`, `degrees`, `rad` or `radians`; a bare
/// number is degrees. Numbers are written as for a [`Length`](super::Length).
///
/// ```
/// use blockwright::units::Angle;
///
/// assert_eq!("23°".parse::<Angle>()?.degrees().round(), 23.0);
/// assert_eq!("23".parse::<Angle>()?, "23 deg".parse::<Angle>()?);
/// assert_eq!("0.4 rad".parse::<Angle>()?.radians(), 0.4);
/// assert!("23 cm".parse::<Angle>().is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Angle(f64);

impl Angle {
    /// An angle of so many degrees, of either sign.
    ///
    /// # Errors
    ///
    /// [`UnitError::NotFinite`] and [`UnitError::TooLarge`].
    pub fn from_degrees(degrees: f64) -> Result<Self, UnitError> {
        Self::from_radians(degrees.to_radians())
    }

    /// An angle of so many radians, of either sign.
    ///
    /// # Errors
    ///
    /// [`UnitError::NotFinite`] and [`UnitError::TooLarge`].
    pub fn from_radians(radians: f64) -> Result<Self, UnitError> {
        if radians.is_nan() {
            Err(UnitError::NotFinite)
        } else if radians.abs() > LARGEST_DEGREES.to_radians() {
            Err(UnitError::TooLarge {
                limit: LARGEST_DEGREES,
                unit: "degrees",
            })
        } else {
            Ok(Self(radians + 0.0))
        }
    }

    /// The angle in radians.
    #[must_use]
    pub const fn radians(self) -> f64 {
        self.0
    }

    /// The angle in degrees.
    #[must_use]
    pub fn degrees(self) -> f64 {
        self.0.to_degrees()
    }
}

impl FromStr for Angle {
    type Err = UnitError;

    /// Reads an angle of either sign; a bare number is degrees.
    fn from_str(text: &str) -> Result<Self, UnitError> {
        let plain = plain(text);
        if plain.is_empty() {
            return Err(UnitError::Empty);
        }
        let (negative, number, unit) = split(&plain);
        if number.is_empty() {
            return Err(UnitError::NotANumber { text: quoted(text) });
        }
        let size = value(number, text)?;
        let size = if negative { -size } else { size };
        match unit {
            "" | "°" | "deg" | "degree" | "degrees" => Self::from_degrees(size),
            "rad" | "radian" | "radians" => Self::from_radians(size),
            other => Err(UnitError::UnknownUnit {
                text: quoted(text),
                unit: quoted(other),
                expected: "`°` (or `deg`) or `rad`",
            }),
        }
    }
}

impl fmt::Display for Angle {
    /// Degrees to a tenth: `23.5°`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let tenths = (self.degrees() * 10.0).round() / 10.0 + 0.0;
        write!(f, "{tenths}°")
    }
}
