//! How the lines of one size are told from those of the others, without colour.

use crate::drawing::Pen;

/// Dashes, each told from any other at a glance: solid, long, short, dots, and dashes with dots.
/// Lengths of dash and gap in mm.
pub const DASHES: [&[f64]; 12] = [
    &[],
    &[9.0, 2.5],
    &[3.0, 2.0],
    &[0.8, 1.6],
    &[9.0, 2.0, 0.8, 2.0],
    &[9.0, 2.0, 0.8, 1.6, 0.8, 2.0],
    &[18.0, 3.0],
    &[9.0, 2.0, 3.0, 2.0],
    &[3.0, 1.6, 0.8, 1.6],
    &[5.0, 5.0],
    &[18.0, 2.0, 0.8, 1.6, 0.8, 1.6, 0.8, 2.0],
    &[9.0, 2.0, 3.0, 1.6, 3.0, 2.0],
];

/// Width of a line in mm: when the dashes are used up they come again, wider.
const WIDTHS: [f64; 3] = [0.35, 0.7, 1.1];

/// How many sizes can be told apart.
pub const MOST_SIZES: usize = DASHES.len() * WIDTHS.len();

/// The line of the size of that number, counted from 0.
///
/// ```
/// use blockwright::grading::line_style;
/// assert!(line_style(0).dash.is_empty());
/// assert_ne!(line_style(1), line_style(13));
/// ```
#[must_use]
pub fn line_style(number: usize) -> Pen {
    let turn = number.div_euclid(DASHES.len());
    let width = WIDTHS.iter().cycle().nth(turn % WIDTHS.len());
    let dash = DASHES.iter().cycle().nth(number % DASHES.len());
    Pen::solid(width.copied().unwrap_or_default()).dashed(dash.copied().unwrap_or_default())
}

#[cfg(test)]
mod tests {
    use super::{MOST_SIZES, line_style};

    #[test]
    fn no_two_sizes_look_alike() {
        for a in 0..MOST_SIZES {
            for b in 0..a {
                assert_ne!(line_style(a), line_style(b), "{a} {b}");
            }
        }
    }
}
