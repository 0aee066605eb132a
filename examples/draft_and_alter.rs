//! Drafts a tunic, shortens its back and prints it as SVG; needs no feature.
use blockwright::alterations::{BackLengthReduction, alter};
use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
use blockwright::drawing::{PatternLabels, pattern_sheet};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let tunic = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
    let shorter = alter(&tunic, &[Box::new(BackLengthReduction::by(15.0))])?.pattern;
    let sheet = pattern_sheet(&shorter, &PatternLabels::new("Tunic"))?;
    println!("{}", blockwright::render::svg::render(&sheet));
    Ok(())
}
