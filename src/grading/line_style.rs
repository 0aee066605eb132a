//! How the lines of one size differ from those of the others: by dashes and width, and if wanted by
//! colour besides.

use crate::drawing::{Ink, Pen};

/// Dashes, each distinct from any other on a stretch of 25 mm, as short as the neckline of a child: none
/// comes again after more than 9.5 mm. Lengths of dash and gap in mm.
pub const DASHES: [&[f64]; 12] = [
    &[],
    &[5.0, 1.5],
    &[2.0, 1.2],
    &[0.6, 1.2],
    &[4.0, 1.2, 0.6, 1.2],
    &[3.2, 1.0, 0.6, 1.0, 0.6, 1.0],
    &[1.4, 3.4],
    &[4.4, 1.0, 1.8, 1.0],
    &[0.6, 1.0, 0.6, 2.8],
    &[6.0, 3.4],
    &[1.8, 0.8, 0.6, 0.8],
    &[3.2, 0.8, 1.6, 0.8, 1.6, 0.8],
];

/// Widths of lines in mm, and which of them each of the dashes has at first: those with little ink are
/// wide. When the dashes are used up they come again in other widths.
const WIDTHS: [f64; 3] = [0.3, 0.55, 0.85];
const FIRST: [usize; 12] = [0, 1, 0, 1, 0, 1, 1, 0, 1, 1, 0, 0];

/// How many sizes can be told apart.
pub const MOST_SIZES: usize = DASHES.len() * WIDTHS.len();

/// Colours of lines, neighbours as unlike as they can be; each at least 3 : 1 against white paper.
///
/// Found by a search for nine colours whose least difference (CIEDE2000) is greatest for people who
/// see all colours and for those without one of the three cones, as simulated by Machado, Oliveira
/// and Fernandes (IEEE TVCG 2009); it is 19.
pub const COLOURS: [Ink; 9] = [
    Ink::Rgb(0x00, 0x00, 0x00),
    Ink::Rgb(0xff, 0x4b, 0x69),
    Ink::Rgb(0x3c, 0x00, 0xe1),
    Ink::Rgb(0x4b, 0x78, 0x00),
    Ink::Rgb(0xb4, 0x87, 0xa5),
    Ink::Rgb(0x3c, 0x00, 0x4b),
    Ink::Rgb(0x87, 0x69, 0xff),
    Ink::Rgb(0x00, 0x3c, 0x00),
    Ink::Rgb(0x87, 0x4b, 0x69),
];

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
    let first = FIRST.iter().cycle().nth(number % FIRST.len());
    let width = first.and_then(|first| WIDTHS.iter().cycle().nth((first + turn) % WIDTHS.len()));
    let dash = DASHES.iter().cycle().nth(number % DASHES.len());
    Pen::solid(width.copied().unwrap_or_default()).dashed(dash.copied().unwrap_or_default())
}

/// The colour of the size of that number, counted from 0.
///
/// ```
/// use blockwright::grading::{COLOURS, line_colour};
/// assert_eq!(line_colour(0), COLOURS[0]);
/// assert_ne!(line_colour(3), line_colour(4));
/// ```
#[must_use]
pub fn line_colour(number: usize) -> Ink {
    let colour = COLOURS.iter().cycle().nth(number % COLOURS.len());
    colour.copied().unwrap_or(Ink::BLACK)
}

/// The pen of the size of that number, in colour or black.
pub(super) fn pen_of(number: usize, colour: bool) -> Pen {
    let pen = line_style(number);
    match colour {
        true => pen.ink(line_colour(number)),
        false => pen,
    }
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
