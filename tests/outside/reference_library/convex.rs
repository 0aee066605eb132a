//! Curves that bend one way only, to the eye: they lie on their convex hull.

use super::flat::{flattened_to, patterns};
use blockwright::geometry::Curve;
use blockwright::piece::EdgeName;
use geo::{ConvexHull, Distance, Euclidean, LineString, Point};

/// How far a curve lies inside its convex hull, by the reference library, and by how much it
/// bends the other way, in degrees.
///
/// A curve that bends one way by less than half a turn lies on its hull all along.
fn dent(curve: &Curve) -> (f64, f64) {
    let points = flattened_to(curve.segments(), 1e-3);
    let hull = LineString::new(points.clone()).convex_hull();
    let inside = points
        .iter()
        .map(|p| Euclidean.distance(&Point::from(*p), hull.exterior()));
    let (mut left, mut right) = (0.0, 0.0);
    for p in points.windows(3) {
        let (a, b) = (p[1] - p[0], p[2] - p[1]);
        let turn = (a.x * b.y - a.y * b.x).atan2(a.x * b.x + a.y * b.y);
        *(if turn > 0.0 { &mut left } else { &mut right }) += turn.abs();
    }
    (
        inside.fold(0.0, f64::max),
        f64::min(left, right).to_degrees(),
    )
}

/// Half of what a person sees on a print (0.1 mm), and an angle that makes no more of it.
const DENT: f64 = 0.055;
const BACK: f64 = 1.3;

/// Armscyes are convex to 0.025 mm. The front neckline bends back by up to 1.2 degrees just below
/// the shoulder, 0.05 mm deep, where the shoulder is steep.
#[test]
fn necklines_and_armscyes_bend_one_way() {
    let mut faults = Vec::new();
    for (who, pattern) in patterns() {
        for piece in ["bodice back", "bodice front"] {
            let piece = pattern.piece(piece).expect("the piece is there");
            for name in [EdgeName::NECKLINE, EdgeName::ARMSCYE] {
                let edge = piece.outline().edge(&name).expect("the edge is there");
                let (deep, back) = dent(edge.curve());
                if deep > DENT || back > BACK {
                    let piece = piece.name();
                    faults.push(format!(
                        "{who}, {piece} {name}: {deep:.3} mm, {back:.2} degrees"
                    ));
                }
            }
        }
    }
    assert!(faults.is_empty(), "{faults:#?}");
}

#[test]
fn a_bend_the_other_way_is_seen() {
    let wave = Curve::cubic(
        (0.0, 0.0).into(),
        (40.0, 2.0).into(),
        (60.0, -2.0).into(),
        (100.0, 0.0).into(),
    );
    let (deep, back) = dent(&wave.expect("finite"));
    assert!(deep > 0.2 && back > 2.0, "{deep} mm, {back} degrees");
    let arc = Curve::cubic(
        (0.0, 0.0).into(),
        (10.0, 40.0).into(),
        (60.0, 40.0).into(),
        (100.0, 0.0).into(),
    );
    let (deep, back) = dent(&arc.expect("finite"));
    assert!(deep < 1e-9 && back < 1e-6, "{deep} mm, {back} degrees");
}
