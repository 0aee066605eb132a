//! Darts from their drawn legs.

use super::named_path::NamedPath;
use super::traced_marks::on_joint;
use super::{CLOSED_WITHIN, TracedError};
use crate::geometry::kurbo::Affine;
use crate::geometry::{Curve, GeometryError, Point, tolerance};
use crate::piece::{Apexes, Dart, Piece, Pressed, shaped_mouth};

/// A mouth that is drawn straighter than this is given its shape, in millimetres.
const STRAIGHT: f64 = 0.1;

/// A leg that ends nearer than this to a joint of its edge ends there, in millimetres.
const NEAR_JOINT: f64 = 0.01;

/// The darts of a piece; edges that they open on are given joints at their legs, and a shaped
/// mouth where none is drawn.
pub(super) fn darts(
    paths: &[&NamedPath],
    placed: Affine,
    model: &Piece,
    ring: &mut [Curve],
) -> Result<Vec<Dart>, TracedError> {
    let mut darts = Vec::new();
    for path in paths {
        let Some(name) = path.part.strip_suffix("_dart") else {
            continue;
        };
        darts.push(dart(path, name, placed, model, ring)?);
    }
    Ok(darts)
}

fn dart(
    path: &NamedPath,
    name: &str,
    placed: Affine,
    model: &Piece,
    ring: &mut [Curve],
) -> Result<Dart, TracedError> {
    let corners: Vec<Point> = path.corners().into_iter().map(|at| placed * at).collect();
    let usual = model.dart(name);
    let pressed = usual.map_or(Pressed::TowardFirstLeg, |dart| dart.pressed);
    match corners[..] {
        [first, apex, second] => {
            let nearest = |at: Point| {
                let far = ring.iter().map(|edge| edge.nearest(at).0).enumerate();
                far.min_by(|a, b| a.1.total_cmp(&b.1))
            };
            let edges = [nearest(first), nearest(second)];
            let [Some((edge, far)), Some((other, other_far))] = edges else {
                return Err(path.fault("its piece has no edge", "draw the edges"));
            };
            let far = far.max(other_far);
            if far > CLOSED_WITHIN || edge != other {
                let problem = if far > CLOSED_WITHIN {
                    format!("a leg ends {far:.1} mm from the nearest edge")
                } else {
                    "its legs end on two different edges".to_owned()
                };
                return Err(path.fault(
                    problem,
                    "draw it from the edge to its point and back to the edge",
                ));
            }
            let Some((curve, model_edge)) =
                ring.get_mut(edge).zip(model.outline().edges().get(edge))
            else {
                return Err(path.fault("its edge is not there", "draw the edge"));
            };
            let legs = [first, second];
            let (curve_with, dart) = on_edge(curve, legs, apex, pressed)
                .map_err(|error| path.fault(error.to_string(), "draw it as it is stitched"))?;
            *curve = curve_with;
            Ok(Dart {
                name: name.to_owned(),
                edge: Some(model_edge.name().clone()),
                legs: dart.0,
                apexes: Apexes::One(dart.1),
                pressed,
            })
        }
        [a, b, c, d] => {
            let mut by_height = [a, b, c, d];
            by_height.sort_by(|p, q| p.y.total_cmp(&q.y));
            let [upper, one, other, lower] = by_height;
            let (near, far) = if one.x <= other.x {
                (one, other)
            } else {
                (other, one)
            };
            Ok(Dart {
                name: name.to_owned(),
                edge: None,
                legs: [near, far],
                apexes: Apexes::Two(upper, lower),
                pressed,
            })
        }
        _ => {
            let problem = format!(
                "a dart has three corners, or four inside the piece; this has {}",
                corners.len()
            );
            Err(path.fault(problem, "draw its legs straight, from end to point to end"))
        }
    }
}

/// Legs and apex of a dart that opens on an edge.
type OnEdge = ([Point; 2], Point);

/// The edge with joints at the legs and a mouth that lies flush when folded, and the dart with legs of one
/// length: its point moves along the edge of the fold by what they differ.
fn on_edge(
    edge: &Curve,
    legs: [Point; 2],
    apex: Point,
    pressed: Pressed,
) -> Result<(Curve, OnEdge), GeometryError> {
    let mut places = legs.map(|leg| edge.nearest(leg).1);
    places.sort_by(f64::total_cmp);
    let [from, to] = places.map(|at| on_joint(edge, at, NEAR_JOINT));
    let (before, rest) = edge.split_at(from)?;
    let (mouth, after) = rest.split_at(to - from)?;
    let legs = [mouth.start(), mouth.end()];
    let chord = legs[1] - legs[0];
    let middle = legs[0].midpoint(legs[1]);
    // On the middle between the legs, as far from them as it was drawn.
    let across = chord.normalize();
    let off = (apex - middle).dot(across);
    let apex = if off.abs() > tolerance::POINT {
        apex - across * off
    } else {
        apex
    };
    let mouth = if mouth.is_straight(STRAIGHT) {
        let beside = match pressed {
            Pressed::TowardFirstLeg => &before,
            Pressed::TowardSecondLeg => &after,
        };
        shaped_mouth(apex, legs, beside, pressed)?
    } else {
        mouth
    };
    Ok((before.then(&mouth)?.then(&after)?, (legs, apex)))
}
