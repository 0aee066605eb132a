//! The whole file.

use super::block_name::block_name;
use super::error::DxfError;
use super::groups::Groups;
use super::layer::Layer;
use super::piece_block::PieceBlock;
use super::rows::rows;
use super::style::{SizedPattern, Style};
use super::words::style_texts;
use crate::geometry::Point;

/// Height of the style's texts, in millimetres.
const LETTERS: f64 = 8.0;

/// The pieces of one pattern, or of the same pattern in several sizes, as an ASCII DXF file of
/// release 12, which every reader of DXF knows; lines end as DOS has them. The same patterns give
/// the same text.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::render::dxf::{SizedPattern, Style, render};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let style = Style { title: "Tube", sample_size: "40", date: None };
/// let text = render(&style, &[SizedPattern { size: "40", pattern: &pattern, cut: None }])?;
/// assert!(text.contains("Piece Name: back"));
/// assert!(text.ends_with("EOF\r\n"));
/// # Ok(()) }
/// ```
///
/// # Errors
/// When there is no piece, or a coordinate is not a finite number.
pub fn render(style: &Style<'_>, sizes: &[SizedPattern<'_>]) -> Result<String, DxfError> {
    let mut names: Vec<String> = Vec::new();
    let mut blocks = Groups::default();
    let mut bounds = Vec::new();
    for sized in sizes {
        let mut row = Vec::new();
        for piece in sized.pattern.pieces() {
            let block = PieceBlock::new(piece, sized, style.title)?;
            let size = (sizes.len() > 1).then_some(sized.size);
            let name = block_name(piece.name(), size, &names);
            blocks.block(&name, &block.content);
            names.push(name);
            row.push(block.bounds);
        }
        bounds.push(row);
    }
    if names.is_empty() {
        return Err(DxfError::NoPieces);
    }
    let laid = rows(&bounds);
    let mut entities = Groups::default();
    for (name, at) in names.iter().zip(&laid.at) {
        entities.insert(name, *at);
    }
    let mut at = Point::new(0.0, laid.bounds.y0 - 4.0 * LETTERS);
    for text in style_texts(style) {
        entities.text(Layer::Boundary, at, LETTERS, &text);
        at.y -= 1.6 * LETTERS;
    }
    let mut header = Groups::default();
    header.put(9, "$ACADVER");
    header.put(1, "AC1009");
    // Millimetres: later releases and most readers look for it (value from memory).
    header.put(9, "$INSUNITS");
    header.put(70, "4");
    for (name, corner) in [
        ("$EXTMIN", Point::new(laid.bounds.x0, at.y)),
        ("$EXTMAX", Point::new(laid.bounds.x1, laid.bounds.y1)),
    ] {
        header.put(9, name);
        header.place(corner);
    }
    let mut file = Groups::default();
    file.section("HEADER", &header);
    file.section("BLOCKS", &blocks);
    file.section("ENTITIES", &entities);
    file.put(0, "EOF");
    Ok(file.into_text())
}
