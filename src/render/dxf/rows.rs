//! Where the blocks are put: a row a size, pieces side by side, so that nothing lies over
//! anything else when the file is looked at.

use crate::geometry::Point;
use kurbo::Rect;

/// Distance between pieces and between rows, in millimetres.
const GAP: f64 = 40.0;

/// The blocks laid in rows.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Rows {
    /// Where every block is put, in order.
    pub(super) at: Vec<Point>,
    /// What all of them take.
    pub(super) bounds: Rect,
}

/// Lays blocks of these bounds in rows; every row starts below the one before it.
pub(super) fn rows(blocks: &[Vec<Rect>]) -> Rows {
    let mut at = Vec::new();
    let mut bounds = Rect::ZERO;
    let mut top = 0.0;
    for row in blocks {
        let mut x = 0.0;
        let tallest = row.iter().map(Rect::height).fold(0.0, f64::max);
        for block in row {
            at.push(Point::new(x - block.x0, top - block.y1));
            x += block.width() + GAP;
        }
        bounds = bounds.union(Rect::new(0.0, top - tallest, (x - GAP).max(0.0), top));
        top -= tallest + GAP;
    }
    Rows { at, bounds }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_lies_over_anything() {
        let block = |w: f64, h: f64| Rect::new(-5.0, -h, w - 5.0, 0.0);
        let blocks = [
            vec![block(100.0, 200.0), block(50.0, 300.0)],
            vec![block(80.0, 90.0)],
        ];
        let laid = rows(&blocks);
        let placed: Vec<Rect> = blocks
            .concat()
            .iter()
            .zip(&laid.at)
            .map(|(rect, at)| *rect + at.to_vec2())
            .collect();
        for (index, one) in placed.iter().enumerate() {
            assert!(placed[..index].iter().all(|o| !o.overlaps(*one)));
            assert!(laid.bounds.contains_rect(*one), "{one:?}");
        }
        assert_eq!(laid.bounds, Rect::new(0.0, -430.0, 190.0, 0.0));
    }
}
