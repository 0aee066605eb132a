//! What is written in a file: texts that programs read, and texts for people.

use super::style::{SizedPattern, Style};
use crate::piece::{Cut, Piece};

/// The texts about the style that programs read. The author, which the practice has too, is not
/// known here; the date is known where it was given.
pub(super) fn style_texts(style: &Style<'_>) -> Vec<String> {
    let date = style.date.map(|date| format!("Creation Date: {date}"));
    let mut texts = vec![format!("Style Name: {}", style.title)];
    texts.extend(date);
    texts.push(format!("Sample Size: {}", style.sample_size));
    texts.push("Units: METRIC".to_owned());
    texts
}

/// The texts about a piece that programs read. The material, which the practice has too, is not
/// known here.
pub(super) fn piece_texts(piece: &Piece, sized: &SizedPattern<'_>) -> Vec<String> {
    vec![
        format!("Piece Name: {}", piece.name()),
        format!("Size: {}", sized.size),
        format!("Category: {}", sized.pattern.block()),
        format!("Quantity: {}", quantity(piece.cut())),
        format!("Annotation: {}", cut_words(piece.cut())),
    ]
}

/// The texts about a piece for people, a line each.
pub(super) fn annotation(piece: &Piece, sized: &SizedPattern<'_>, title: &str) -> Vec<String> {
    let mut lines = vec![
        piece.name().to_uppercase(),
        title.to_owned(),
        format!("size {}", sized.size),
        cut_words(piece.cut()).to_owned(),
    ];
    lines.extend(allowance_words(sized).split(", ").map(str::to_owned));
    lines
}

/// How often the piece is cut as it lies in the file, and how often mirrored.
fn quantity(cut: Cut) -> &'static str {
    match cut {
        Cut::Pair => "1,1",
        Cut::Fold | Cut::Single | Cut::SingleFaceDown => "1",
    }
}

fn cut_words(cut: Cut) -> &'static str {
    match cut {
        Cut::SingleFaceDown => "cut 1, as drawn: mirror of the print",
        Cut::Fold | Cut::Pair | Cut::Single => cut.words(),
    }
}

fn allowance_words(sized: &SizedPattern<'_>) -> String {
    match sized.cut {
        Some(cut) => cut.allowances().words(),
        None => "stitching line shown: add seam allowance".to_owned(),
    }
}
