//! How a length is written.

use super::unit::Unit;

/// The smallest part of an inch that is written.
///
/// ```
/// use blockwright::units::Fraction;
///
/// assert_eq!(Fraction::Eighths.parts(), 8);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Fraction {
    /// To the nearest 1/8 in, as on a household tape.
    Eighths,
    /// To the nearest 1/16 in, as on a cutter's tape.
    Sixteenths,
}

impl Fraction {
    /// The parts in an inch.
    #[must_use]
    pub const fn parts(self) -> u32 {
        match self {
            Self::Eighths => 8,
            Self::Sixteenths => 16,
        }
    }
}

/// A number rounded to so many decimal places for being written, never a nought with a sign.
///
/// ```
/// use blockwright::units::rounded;
/// assert_eq!(format!("{:.1}", rounded(-0.04, 1)), "0.0");
/// assert_eq!(format!("{:.1}", rounded(-12.36, 1)), "-12.4");
/// ```
#[must_use]
pub fn rounded(value: f64, places: u8) -> f64 {
    let scale = (0..places).fold(1.0, |scale, _| 10.0 * scale);
    let near = (value * scale).round() / scale;
    // Adding nought takes the sign off a nought and leaves all else as it is.
    if near.is_finite() { near + 0.0 } else { value }
}

/// How a length is written: what is written is read back by
/// [`Length::parse`](super::Length::parse) to within the rounding asked for.
///
/// ```
/// use blockwright::units::{Fraction, Length, LengthStyle, Unit};
///
/// let bust = Length::from_mm(927.1)?;
/// assert_eq!(bust.to_text(LengthStyle::Decimal { unit: Unit::Cm, places: 1 }), "92.7 cm");
/// assert_eq!(bust.to_text(LengthStyle::Inches(Fraction::Eighths)), "36 1/2 in");
/// assert_eq!(bust.to_text(LengthStyle::usual(Unit::Mm)), "927 mm");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LengthStyle {
    /// A decimal number with at most so many places; idle zeros are left out.
    Decimal {
        /// The unit.
        unit: Unit,
        /// Decimal places, at most 9.
        places: u8,
    },
    /// Inches with a fraction in its lowest terms.
    Inches(Fraction),
}

impl LengthStyle {
    /// How the trade writes a body measurement: whole millimetres, centimetres to the
    /// millimetre, inches to the eighth.
    #[must_use]
    pub const fn usual(unit: Unit) -> Self {
        match unit {
            Unit::Mm => Self::Decimal { unit, places: 0 },
            Unit::Cm => Self::Decimal { unit, places: 1 },
            Unit::In => Self::Inches(Fraction::Eighths),
        }
    }

    /// How a length on paper is written, finer than one on a body: tenths of a millimetre,
    /// centimetres to a tenth of that, inches to the sixteenth.
    ///
    /// ```
    /// use blockwright::units::{Length, LengthStyle, Unit};
    /// let seam = Length::from_mm(170.25)?;
    /// assert_eq!(seam.to_text(LengthStyle::fine(Unit::Cm)), "17.02 cm");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub const fn fine(unit: Unit) -> Self {
        match unit {
            Unit::Mm => Self::Decimal { unit, places: 1 },
            Unit::Cm => Self::Decimal { unit, places: 2 },
            Unit::In => Self::Inches(Fraction::Sixteenths),
        }
    }

    /// The unit that is written.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::Decimal { unit, .. } => unit,
            Self::Inches(_) => Unit::In,
        }
    }

    pub(super) fn text(self, mm: f64) -> String {
        match self {
            Self::Decimal { unit, places } => {
                format!("{} {unit}", decimal(unit.from_mm(mm), places))
            }
            Self::Inches(fraction) => inches(mm, fraction),
        }
    }
}

fn decimal(value: f64, places: u8) -> String {
    let places = usize::from(places.min(9));
    let mut text = format!("{value:.places$}");
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" { "0".into() } else { text }
}

fn inches(mm: f64, fraction: Fraction) -> String {
    let parts = fraction.parts();
    // A length is at most 100 m, about 63,000 sixteenths of an inch: exact in f64.
    let total = (Unit::In.from_mm(mm.abs()) * f64::from(parts)).round();
    let whole = (total / f64::from(parts)).floor();
    let rest = total - whole * f64::from(parts);
    let sign = if mm < 0.0 && total > 0.0 { "-" } else { "" };
    if rest == 0.0 {
        return format!("{sign}{whole} in");
    }
    let (mut upper, mut lower) = (rest, f64::from(parts));
    while upper % 2.0 == 0.0 {
        upper /= 2.0;
        lower /= 2.0;
    }
    if whole == 0.0 {
        format!("{sign}{upper}/{lower} in")
    } else {
        format!("{sign}{whole} {upper}/{lower} in")
    }
}
