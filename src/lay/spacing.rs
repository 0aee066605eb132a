//! Outlines grown by half the gap, so that pieces whose grown outlines do not overlap keep it.

use super::CutShape;
use crate::geometry::Point;
use i_overlay::mesh::outline::offset::OutlineOffset;
use i_overlay::mesh::style::{LineJoin, OutlineStyle};
use kurbo::Shape as _;

/// How much of a turn a straight edge of a round corner takes, in radians: with half a gap of
/// 2.5 mm it strays from the arc by 0.01 mm.
const ROUND: f64 = 0.18;

/// What is added for corners rounded with straight edges, as a part of the gap.
const OVER: f64 = 0.005;

/// The corners of the outline grown by half a gap; those of the outline itself without one.
pub(super) fn spaced(shape: &CutShape, gap: f64) -> Vec<Point> {
    if gap <= 0.0 {
        return shape.points().to_vec();
    }
    let contour: Vec<[f64; 2]> = shape.points().iter().map(|p| [p.x, p.y]).collect();
    let style = OutlineStyle::new(gap / 2.0 * (1.0 + OVER)).line_join(LineJoin::Round(ROUND));
    let grown = contour.outline(&style);
    // A hollow closed by the growth would be a hole of its own: nothing is laid into one.
    let outer = grown
        .into_iter()
        .filter_map(|rings| rings.into_iter().next());
    let outer = outer.map(|ring| {
        ring.into_iter()
            .map(|[x, y]| Point::new(x, y))
            .collect::<Vec<_>>()
    });
    let area = |ring: &Vec<Point>| {
        let mut path = kurbo::BezPath::new();
        for (k, p) in ring.iter().enumerate() {
            if k == 0 {
                path.move_to(*p);
            } else {
                path.line_to(*p);
            }
        }
        path.close_path();
        path.area().abs()
    };
    outer
        .max_by(|a, b| area(a).total_cmp(&area(b)))
        .unwrap_or_else(|| shape.points().to_vec())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square_grows_by_half_the_gap_on_every_side() {
        let square = CutShape::rectangle(100.0, 100.0).unwrap();
        let grown = CutShape::new(spaced(&square, 10.0)).unwrap();
        assert!((grown.along() - 110.05).abs() < 0.01, "{}", grown.along());
        let exact = 100.0 * 100.0 + 4.0 * 100.0 * 5.0 + std::f64::consts::PI * 25.0;
        assert!((grown.area() - exact).abs() < 12.0, "{}", grown.area());
        assert!(grown.area() > exact, "never less than the gap");
    }
}
