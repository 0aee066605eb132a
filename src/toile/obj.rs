//! A toile for other programs: OBJ, a text of points and faces.

use super::sewn::Toile;
use super::solid::Skin;
use std::fmt::Write as _;

impl Toile {
    /// Cloth and stand as an OBJ file: mm, x to the wearer's left, y up from her waist, z to the front;
    /// faces anticlockwise seen from outside.
    #[must_use]
    pub fn obj(&self) -> String {
        let mut text = String::from("# Cloth sewn on screen, mm: a picture, good to about 5 mm\n");
        let first = written(&mut text, "cloth", &self.skin(), 1);
        written(&mut text, "stand", &self.stand.skin, first);
        text
    }
}

/// Writes one object; the number of the next point.
fn written(text: &mut String, name: &str, skin: &Skin, first: usize) -> usize {
    // A string takes all that is written.
    let _ = writeln!(text, "o {name}");
    for [x, y, z] in &skin.points {
        let _ = writeln!(text, "v {x:.2} {y:.2} {z:.2}");
    }
    for [a, b, c] in &skin.triangles {
        let _ = writeln!(text, "f {} {} {}", a + first, b + first, c + first);
    }
    first + skin.points.len()
}
