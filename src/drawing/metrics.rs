//! Widths of the two faces, so that text can be measured before it is placed.
//!
//! The built-in font has the widths of the faces that every viewer carries, and more letters.

use super::letter_widths::width_of;
use super::winansi::{byte, is_unknown, stand_in};

/// One of the two faces every PDF viewer carries: Helvetica and Helvetica-Bold.
///
/// ```
/// use blockwright::drawing::Face;
///
/// // "A" is 667 thousandths of the size wide.
/// assert!((Face::Regular.width("A", 10.0) - 6.67).abs() < 1e-9);
/// assert!(Face::Bold.width("grain", 4.0) > Face::Regular.width("grain", 4.0));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Face {
    /// Helvetica.
    Regular,
    /// Helvetica-Bold.
    Bold,
}

impl Face {
    /// Height of a capital, as a part of the size.
    pub const CAP_HEIGHT: f64 = 0.718;
    /// Height above the baseline that an accented capital may reach, as a part of the size.
    pub const ASCENT: f64 = 0.94;
    /// Depth below the baseline that a letter may reach, as a part of the size.
    pub const DESCENT: f64 = 0.22;

    /// The width in mm of a text of `size` mm, as the built-in font shows it; a letter
    /// that it lacks is taken for a square.
    #[must_use]
    pub fn width(self, text: &str, size: f64) -> f64 {
        let table = match self {
            Self::Regular => &REGULAR,
            Self::Bold => &BOLD,
        };
        let of_byte = |byte: u8| {
            let at = usize::from(byte).checked_sub(32);
            let width = at.and_then(|at| table.get(at)).copied();
            u64::from(width.unwrap_or_default())
        };
        let of_letter = |letter: char| match (byte(letter), width_of(letter, self == Self::Bold)) {
            (Some(byte), _) => of_byte(byte),
            (None, Some(width)) => u64::from(width),
            (None, None) if is_unknown(letter) => UNKNOWN,
            (None, None) => stand_in(letter).chars().filter_map(byte).map(of_byte).sum(),
        };
        let thousandths: u64 = text.chars().map(of_letter).sum();
        thousandths as f64 * size / 1000.0
    }
}

/// The width that is kept for a letter of another script: that of a square, which few exceed.
const UNKNOWN: u64 = 1000;

/// Widths of the bytes 32 to 255 of Helvetica, in thousandths of the size.
#[rustfmt::skip]
const REGULAR: [u16; 224] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584, 350,
    556, 350, 222, 556, 333, 1000, 556, 556, 333, 1000, 667, 333, 1000, 350, 611, 350,
    350, 222, 222, 333, 333, 350, 556, 1000, 333, 1000, 500, 333, 944, 350, 500, 667,
    278, 333, 556, 556, 556, 556, 260, 556, 333, 737, 370, 556, 584, 333, 737, 333,
    400, 584, 333, 333, 333, 556, 537, 278, 333, 333, 365, 556, 834, 834, 834, 611,
    667, 667, 667, 667, 667, 667, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
    722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
    556, 556, 556, 556, 556, 556, 889, 500, 556, 556, 556, 556, 278, 278, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 584, 611, 556, 556, 556, 556, 500, 556, 500,
];

/// The same for Helvetica-Bold.
#[rustfmt::skip]
const BOLD: [u16; 224] = [
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611,
    975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556,
    333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611,
    611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584, 350,
    556, 350, 278, 556, 500, 1000, 556, 556, 333, 1000, 667, 333, 1000, 350, 611, 350,
    350, 278, 278, 500, 500, 350, 556, 1000, 333, 1000, 556, 333, 944, 350, 500, 667,
    278, 333, 556, 556, 556, 556, 280, 556, 333, 737, 370, 556, 584, 333, 737, 333,
    400, 584, 333, 333, 333, 611, 556, 278, 333, 333, 365, 556, 834, 834, 834, 611,
    722, 722, 722, 722, 722, 722, 1000, 722, 667, 667, 667, 667, 278, 278, 278, 278,
    722, 722, 778, 778, 778, 778, 778, 584, 778, 722, 722, 722, 722, 667, 667, 611,
    556, 556, 556, 556, 556, 556, 889, 556, 556, 556, 556, 556, 278, 278, 278, 278,
    611, 611, 611, 611, 611, 611, 611, 584, 611, 611, 611, 611, 611, 556, 611, 556,
];
