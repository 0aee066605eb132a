//! Pictures to look at: set `BLOCKWRIGHT_DART_PICTURES` to a folder and run these tests.

use blockwright::drawing::{PatternLabels, pattern_sheet};
use blockwright::piece::Pattern;
use blockwright::render::svg;

/// Writes a picture, when they are asked for.
pub fn show(name: &str, pattern: &Pattern) {
    let Some(folder) = std::env::var_os("BLOCKWRIGHT_DART_PICTURES") else {
        return;
    };
    let labels = PatternLabels::new(name);
    let picture = svg::render(&pattern_sheet(pattern, &labels).unwrap());
    let file = std::path::Path::new(&folder).join(format!("{name}.svg"));
    std::fs::write(file, picture).unwrap();
}
