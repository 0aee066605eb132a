//! What must stay when darts move, measured.

use blockwright::geometry::{Curve, Point};
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{EdgeName, Pattern, Piece};

/// How far the outline of one piece lies off another's, sampled, in millimetres.
pub fn apart(one: &Piece, other: &Piece) -> f64 {
    let ring = Curve::new(other.outline().segments()).unwrap();
    let mut most: f64 = 0.0;
    for edge in one.outline().edges() {
        let length = edge.curve().length();
        for k in 0..=20 {
            let place = length * f64::from(k) / 20.0;
            let (point, _) = edge.curve().point_at(place).unwrap();
            most = most.max(ring.nearest(point).0);
        }
    }
    most
}

/// What truing the edge of a dart whose tip is backed off takes from its angle, in radians: some
/// hundredths of a millimetre over the length of the dart.
pub const TRUED: f64 = 5e-3;

/// Sum of the angles of the darts made from one, about their point of fullness, in radians.
pub fn parts_of(piece: &Piece, dart: &str) -> f64 {
    let parts = piece.darts().iter().filter(|d| d.name.starts_with(dart));
    parts.map(|d| piece.dart_angle(d)).sum()
}

/// Sum of the angles of all darts about a point of fullness, in radians.
pub fn turning(piece: &Piece, about: Point) -> f64 {
    piece
        .darts()
        .iter()
        .filter(|d| piece.fullness(d).distance(about) < 2.0)
        .map(|d| piece.dart_angle(d))
        .sum()
}

/// The edge of a dart, and where along it as sewn, as a share.
pub fn at_now(piece: &Piece, dart: &str) -> (EdgeName, f64) {
    let edge = piece.dart(dart).unwrap().edge.clone().unwrap();
    let mouths = piece.mouths(&edge);
    let (_, from, _) = mouths.iter().find(|(d, ..)| d.name == dart).unwrap();
    let share = piece.sewn_position(&edge, *from) / piece.seam_length(&edge).unwrap();
    (edge, share)
}

/// No law is broken; sewn lengths and notches of a piece and all girths are as before.
pub fn assert_kept(before: &Pattern, after: &Pattern, piece: &str, within: f64) {
    let broken = check_all(after, &Tolerances::altered());
    assert!(broken.is_empty(), "{broken:?}");
    let (old, new) = (before.piece(piece).unwrap(), after.piece(piece).unwrap());
    for edge in old.outline().edges() {
        let [a, b] = [old, new].map(|p| p.seam_length(edge.name()).unwrap());
        assert!((a - b).abs() < within, "{piece} {}: {a} {b}", edge.name());
    }
    for (a, b) in old.notches().iter().zip(new.notches()) {
        let off = old.sewn_position(&a.edge, a.at) - new.sewn_position(&b.edge, b.at);
        assert!(off.abs() < within, "notch {}: {off}", a.name);
    }
    for girth in before.girths() {
        // Across a dart whose tip is backed off, truing its edge takes hundredths.
        let off = after.finished(girth) - before.finished(girth);
        assert!(
            off.abs() < (10.0 * within).max(0.4),
            "{}: {off}",
            girth.name
        );
    }
}
