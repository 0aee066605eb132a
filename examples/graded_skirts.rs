//! Grades a skirt into three sizes and prints the nest as SVG; needs no feature.
use blockwright::draft::Block;
use blockwright::grading::{Align, NestLabels, grade, nest};
use blockwright::measurements::{Body, Measurement, Size, SizeTable};
use blockwright::recipe::Recipe;
use blockwright::units::Unit;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut sizes = Vec::new();
    for (label, bust) in [("small", 880.0), ("middle", 920.0), ("large", 960.0)] {
        let body = Body::from_taken([
            (Measurement::Height, 1680.0), // millimetres
            (Measurement::BustGirth, bust),
            (Measurement::WaistGirth, bust - 160.0),
            (Measurement::HipGirth, bust + 80.0),
        ])?;
        sizes.push(Size::new(label, body));
    }
    let table = SizeTable::new("Three sizes", Unit::Cm, sizes);
    let graded = grade(&Recipe::new("Skirt", Block::Skirt), &table)?;
    let drawing = nest(&graded, Align::WaistCentre, &NestLabels::new("Skirt"))?;
    println!("{}", blockwright::render::svg::render(&drawing));
    Ok(())
}
