//! A length, read from text.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

use super::error::{UnitError, quoted};
use super::format::LengthStyle;
use super::number::{plain, split, value};
use super::unit::Unit;

/// The longest length that is accepted, in millimetres: 100 m. Nothing on a body or
/// on a sheet of paper comes near it, so what lies beyond is a slip of the unit.
pub const LONGEST_MM: f64 = 100_000.0;

const KNOWN_UNITS: &str = "`mm`, `cm`, `m`, `in` (or `\"`) or `ft` (or `'`)";

/// A length, held in millimetres: finite and at most [`LONGEST_MM`] either way.
///
/// # What is read
///
/// A number, then a unit. The number is `92`, `92.5`, `92,5`, `36 1/2`, `36-1/2`,
/// `1/2` or `36½`; the unit is `mm`, `cm`, `m`, `in` (also `"`, `″`, `inch`,
/// `inches`) or `ft` (also `'`). Feet may be followed by inches: `5'4 1/2"`,
/// `5 ft 4 in`. A bare number takes the unit the caller agreed on, if any.
///
/// A comma is a decimal mark. Where it could part thousands as well (`1,250`) the
/// text is refused rather than guessed at; `0,125` and `92,5` are clear. Exponents
/// are not read.
///
/// ```
/// use blockwright::units::{Length, Unit};
///
/// assert_eq!("92 cm".parse::<Length>()?.mm(), 920.0);
/// assert_eq!("36 1/2 in".parse::<Length>()?.mm(), 927.1);
/// assert_eq!("36½\"".parse::<Length>()?.mm(), 927.1);
/// assert_eq!(Length::parse("92,5", Some(Unit::Cm))?.mm(), 925.0);
/// assert!("92".parse::<Length>().is_err());
/// assert!(Length::parse("-4", Some(Unit::Cm)).is_err());
/// assert_eq!(Length::parse_signed("-4", Some(Unit::Cm))?.mm(), -40.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(try_from = "f64", into = "f64")]
pub struct Length(f64);

impl Length {
    /// A length of so many `unit`s, of either sign.
    ///
    /// # Errors
    ///
    /// [`UnitError::NotFinite`] and [`UnitError::TooLarge`].
    pub fn new(value: f64, unit: Unit) -> Result<Self, UnitError> {
        Self::checked(unit.to_mm(value))
    }

    /// A length in millimetres, of either sign.
    ///
    /// # Errors
    ///
    /// [`UnitError::NotFinite`] and [`UnitError::TooLarge`].
    pub fn from_mm(mm: f64) -> Result<Self, UnitError> {
        Self::checked(mm)
    }

    /// Reads a length of zero or more. `bare` is the unit of a number without one;
    /// with `None` such a number is refused.
    ///
    /// # Errors
    ///
    /// A [`UnitError`] that says which part of the text is wrong.
    pub fn parse(text: &str, bare: Option<Unit>) -> Result<Self, UnitError> {
        let length = Self::parse_signed(text, bare)?;
        if length.0 < 0.0 {
            return Err(UnitError::Negative {
                value: length.0,
                unit: "mm",
            });
        }
        Ok(length)
    }

    /// Reads a length that may be negative, such as the ease of a knitted garment or
    /// a step of a size table.
    ///
    /// # Errors
    ///
    /// A [`UnitError`] that says which part of the text is wrong.
    pub fn parse_signed(text: &str, bare: Option<Unit>) -> Result<Self, UnitError> {
        let plain = plain(text);
        if plain.is_empty() {
            return Err(UnitError::Empty);
        }
        let (negative, number, unit) = split(&plain);
        if number.is_empty() {
            return Err(UnitError::NotANumber { text: quoted(text) });
        }
        let first = value(number, text)?;
        let mm = match unit {
            "" => {
                let unit = bare.ok_or_else(|| UnitError::MissingUnit { text: quoted(text) })?;
                unit.to_mm(first)
            }
            "m" | "metre" | "metres" | "meter" | "meters" => first * 1000.0,
            other => match (plain_unit(other), feet(other)) {
                (Some(unit), _) => unit.to_mm(first),
                (None, Some(inches)) => {
                    Unit::In.to_mm(first * 12.0 + inches_after_feet(inches, text)?)
                }
                (None, None) => {
                    return Err(UnitError::UnknownUnit {
                        text: quoted(text),
                        unit: quoted(other),
                        expected: KNOWN_UNITS,
                    });
                }
            },
        };
        Self::checked(if negative { -mm } else { mm })
    }

    /// The unit that a text of a length is written in; none where it has no unit, or none of ours.
    pub(crate) fn unit_of(text: &str) -> Option<Unit> {
        let plain = plain(text);
        let (.., unit) = split(&plain);
        plain_unit(unit).or_else(|| feet(unit).map(|_| Unit::In))
    }

    /// The length in millimetres.
    #[must_use]
    pub const fn mm(self) -> f64 {
        self.0
    }

    /// The length in `unit`.
    #[must_use]
    pub fn in_unit(self, unit: Unit) -> f64 {
        unit.from_mm(self.0)
    }

    /// The length as text in the given style.
    #[must_use]
    pub fn to_text(self, style: LengthStyle) -> String {
        style.text(self.0)
    }

    fn checked(mm: f64) -> Result<Self, UnitError> {
        if mm.is_nan() {
            Err(UnitError::NotFinite)
        } else if mm.abs() > LONGEST_MM {
            Err(UnitError::TooLarge {
                limit: LONGEST_MM,
                unit: "mm",
            })
        } else {
            // No negative zero: it would print a sign.
            Ok(Self(mm + 0.0))
        }
    }
}

fn plain_unit(text: &str) -> Option<Unit> {
    match text {
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Some(Unit::Mm),
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Some(Unit::Cm),
        "in" | "in." | "inch" | "inches" | "\"" => Some(Unit::In),
        _ => None,
    }
}

/// What follows the mark for feet, or `None` if there is none.
fn feet(text: &str) -> Option<&str> {
    ["'", "feet", "foot", "ft.", "ft"]
        .iter()
        .find_map(|mark| text.strip_prefix(mark))
        .map(str::trim)
}

fn inches_after_feet(rest: &str, text: &str) -> Result<f64, UnitError> {
    if rest.is_empty() {
        return Ok(0.0);
    }
    let (negative, number, unit) = split(rest);
    if negative || number.is_empty() {
        return Err(UnitError::NotANumber { text: quoted(text) });
    }
    if !unit.is_empty() && plain_unit(unit) != Some(Unit::In) {
        return Err(UnitError::UnknownUnit {
            text: quoted(text),
            unit: quoted(unit),
            expected: "`in` or `\"` after feet",
        });
    }
    value(number, text)
}

impl FromStr for Length {
    type Err = UnitError;

    /// Reads a length of zero or more that carries its unit.
    fn from_str(text: &str) -> Result<Self, UnitError> {
        Self::parse(text, None)
    }
}

impl TryFrom<f64> for Length {
    type Error = UnitError;

    /// From millimetres.
    fn try_from(mm: f64) -> Result<Self, UnitError> {
        Self::from_mm(mm)
    }
}

impl From<Length> for f64 {
    /// In millimetres.
    fn from(length: Length) -> Self {
        length.0
    }
}

impl fmt::Display for Length {
    /// Millimetres to a hundredth, without idle zeros: `927.1 mm`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.to_text(LengthStyle::Decimal {
            unit: Unit::Mm,
            places: 2,
        }))
    }
}
