//! Through which places a panel seam goes.

use super::panel_corner::Bow;
use super::panel_path::Node;
use super::panel_pieces::SeamEnd;
use crate::alterations::AlterationError;
use crate::alterations::darts::dart_opening::Opening;
use crate::alterations::darts::dart_tip::AT_BUST_POINT;
use crate::geometry::{Curve, Point, Vec2, crossings};
use crate::piece::{Apexes, Dart, EdgeRole, Piece};

/// A seam ends at least so far from a corner of the outline, in millimetres: a narrower end
/// frays before it is sewn (an assumption).
const CLEAR: f64 = 12.0;

/// Apexes nearer than this are passed in one sweep, in millimetres: drafted darts end so far
/// short of the bust point at most, each from its side (value from memory).
const NEAR: f64 = 60.0;

/// Between apexes farther from each other the seam parts at most so far along the way, as a share, and
/// sweeps into the other over this one.
const PAST: f64 = 0.4;
const SWEPT_OVER: f64 = 0.4;

/// Apexes nearer than this are one point of fullness, in millimetres: a bust point lies so far
/// beside the centre line of a waist dart.
const SAME: f64 = 3.0;

/// Where a seam ends and what it goes through on its way. Of each node's two places the first
/// is that on the piece that follows the start along the outline.
pub(in crate::alterations) struct Through {
    pub ends: [SeamEnd; 2],
    pub nodes: Vec<Node>,
}

/// The way through the darts of those names, to the place when one is given.
pub(in crate::alterations) fn plan(
    piece: &Piece,
    names: &[&str],
    place: Option<Opening>,
) -> Result<Through, AlterationError> {
    let darts: Vec<&Dart> = names.iter().filter_map(|n| piece.dart(n)).collect();
    let inside = |d: &&Dart| matches!(d.apexes, Apexes::Two(..));
    let open: Vec<&Dart> = darts.iter().filter(|d| !inside(d)).copied().collect();
    let closed: Vec<&Dart> = darts.iter().filter(|d| inside(d)).copied().collect();
    let through = match (open.as_slice(), closed.as_slice(), place) {
        ([one, other], [], None) => two_open(piece, one, other)?,
        ([one], [double], None) => {
            let (start, mut nodes) = opened(piece, one)?;
            let mut on = doubled(double, one.apex(), piece.bust_point());
            meet(piece, &mut nodes, &mut on)?;
            nodes.append(&mut on);
            ended(piece, start, nodes)?
        }
        ([one], [], Some(place)) => {
            let (start, at) = placed(piece, &place)?;
            let (end, back) = opened(piece, one)?;
            let mut nodes = vec![Node::common(at, None)];
            nodes.extend(walked_back(back));
            Through {
                ends: [start, end],
                nodes,
            }
        }
        ([], [double], Some(place)) => {
            let (start, at) = placed(piece, &place)?;
            let mut nodes = vec![Node::common(at, None)];
            nodes.extend(doubled(double, at, piece.bust_point()));
            ended(piece, start, nodes)?
        }
        _ => {
            return Err(AlterationError::Setting(
                "two darts that lie inside the piece make no seam: take each to an edge with dart: and to:"
                    .to_owned(),
            ));
        }
    };
    checked(piece, through)
}

/// From the edge to the apex of a dart, as the start of a seam.
fn opened(piece: &Piece, dart: &Dart) -> Result<(SeamEnd, Vec<Node>), AlterationError> {
    let axis = (dart.apex() - dart.legs[0].midpoint(dart.legs[1])).normalize();
    let leg = Node {
        at: [dart.legs[1], dart.legs[0]],
        toward: None,
        swept: None,
        notch: None,
        slides: None,
        bends: false,
        bow: Bow::default(),
    };
    let apex = Node {
        notch: Some(format!("{} apex", dart.name)),
        bends: true,
        ..Node::common(dart.apex(), Some(axis))
    };
    Ok((mouth(piece, dart)?, vec![leg, apex]))
}

fn mouth(piece: &Piece, dart: &Dart) -> Result<SeamEnd, AlterationError> {
    let opening = Opening::dart(piece, &dart.name).ok_or_else(|| AlterationError::Missing {
        what: format!("an edge with the {} dart", dart.name),
        advice: "a seam is made of darts that open on an edge or lie inside the piece",
    })?;
    Ok(SeamEnd {
        edge: opening.edge,
        from: opening.from,
        to: opening.to,
    })
}

fn two_open(piece: &Piece, one: &Dart, other: &Dart) -> Result<Through, AlterationError> {
    let (start, mut nodes) = opened(piece, one)?;
    let (end, back) = opened(piece, other)?;
    let mut back = walked_back(back);
    meet(piece, &mut nodes, &mut back)?;
    nodes.append(&mut back);
    Ok(Through {
        ends: [start, end],
        nodes,
    })
}

/// The same places walked the other way: the legs change sides and the directions turn about.
fn walked_back(nodes: Vec<Node>) -> Vec<Node> {
    let turned = |node: Node| Node {
        at: [node.at[1], node.at[0]],
        toward: node.toward.map(|v| -v),
        swept: node.swept.map(|[one, other]| [-other, -one]),
        ..node
    };
    nodes.into_iter().rev().map(turned).collect()
}

/// Makes one place of two apexes that lie near each other: the seam sweeps between them, where
/// the fullest point of the body lies, instead of bending to both.
fn meet(piece: &Piece, nodes: &mut [Node], on: &mut Vec<Node>) -> Result<(), AlterationError> {
    let ([.., leg, last], Some(first)) = (&mut *nodes, on.first_mut()) else {
        return Ok(());
    };
    let (Some(u), Some(v)) = (last.toward, first.toward) else {
        return Ok(());
    };
    let (a, b) = (last.at[0], first.at[0]);
    if a.distance(b) > NEAR {
        (last.bends, first.bends) = (false, false);
        // From the edge the seam sweeps past the first point into the line to the other.
        let corner = b - v.normalize() * (SWEPT_OVER * a.distance(b));
        let onward = (corner - a).normalize();
        let past = room_past(piece, Curve::line(a, corner)?).min(PAST * a.distance(corner));
        if past > SAME {
            leg.swept = Some(leg.at.map(|leg| (a - leg).normalize()));
            last.at = [a + onward * past; 2];
            last.toward = Some(onward);
        }
        return Ok(());
    }
    let apart = a.distance(b) > SAME;
    last.slides = apart.then_some([a, b]);
    last.bends = !apart;
    if !apart {
        last.at = [a.midpoint(b); 2];
    }
    last.toward = Some(((b + v * NEAR) - (a - u * NEAR)).normalize());
    on.remove(0);
    Ok(())
}

/// How far along a way it is clear of its first balance line: a width measured there must stay.
fn room_past(piece: &Piece, way: Curve) -> f64 {
    let met = piece.lines().iter();
    let met = met.flat_map(|line| crossings(way.segments(), line.curve.segments()));
    let first = met.map(|met| way.length_to(met.first));
    0.95 * first.fold(way.length(), f64::min)
}

/// Down one side of a double-pointed dart and up the other, from the apex nearer to a point. Where
/// that apex is only backed off from the bust point it is carried on to that: the seam is bent there.
fn doubled(dart: &Dart, from: Point, bust: Option<Point>) -> Vec<Node> {
    let (upper, lower) = match dart.apexes {
        Apexes::One(apex) => (apex, apex),
        Apexes::Two(upper, lower) => (upper, lower),
    };
    let (mut near, mut far) = (upper, lower);
    if far.distance(from) < near.distance(from) {
        std::mem::swap(&mut near, &mut far);
    }
    let down = (far - upper.midpoint(lower)).normalize();
    let comes_to_bust = bust.is_some_and(|bust| bust.distance(from) <= AT_BUST_POINT);
    if comes_to_bust && near.distance(from) <= NEAR {
        near = from;
    } else if let Some(bust) = bust.filter(|bust| backed_off(*bust, near, down)) {
        near = bust;
    }
    // The piece that follows the seam's start lies to the left of the way.
    let left = Vec2::new(down.y, -down.x);
    let [a, b] = dart.legs;
    let legs = if (a - b).dot(left) > 0.0 {
        [a, b]
    } else {
        [b, a]
    };
    let apex = |at: Point, which: &str| Node {
        notch: Some(format!("{} {which}", dart.name)),
        ..Node::common(at, Some(down))
    };
    vec![
        Node {
            bends: bust.is_some(),
            ..apex(near, "apex")
        },
        Node {
            at: legs,
            toward: Some(down),
            swept: None,
            notch: Some(format!("{} dart", dart.name)),
            slides: None,
            bends: false,
            bow: Bow::default(),
        },
        apex(far, "far apex"),
    ]
}

/// Whether a dart that points the other way than `down` ends short of a place only, in its line.
fn backed_off(place: Point, apex: Point, down: Vec2) -> bool {
    let ahead = apex - place;
    ahead.dot(down) >= 0.0 && ahead.hypot() <= NEAR && ahead.cross(down).abs() <= SAME
}

/// The seam carried on straight from its last node to the outline.
fn ended(piece: &Piece, start: SeamEnd, mut nodes: Vec<Node>) -> Result<Through, AlterationError> {
    let none = || AlterationError::Missing {
        what: "an edge in the line of the dart".to_owned(),
        advice: "a double-pointed dart is carried on to the hem",
    };
    let last = nodes.last().ok_or_else(none)?;
    let (from, toward) = (last.at[0], last.toward.ok_or_else(none)?);
    let bounds = piece.outline().bounds();
    let ray = Curve::line(from, from + toward * (bounds.width() + bounds.height()))?;
    let nearest = piece
        .outline()
        .edges()
        .iter()
        .flat_map(|edge| {
            crossings(ray.segments(), edge.curve().segments())
                .into_iter()
                .map(move |c| (edge, c.point))
        })
        .min_by(|a, b| a.1.distance(from).total_cmp(&b.1.distance(from)));
    let (edge, point) = nearest.ok_or_else(none)?;
    let (_, at) = edge.curve().nearest(point);
    nodes.push(Node::common(edge.curve().point_at(at)?.0, None));
    let end = SeamEnd {
        edge: edge.name().clone(),
        from: at,
        to: at,
    };
    Ok(Through {
        ends: [start, end],
        nodes,
    })
}

fn placed(piece: &Piece, place: &Opening) -> Result<(SeamEnd, Point), AlterationError> {
    let edge = piece.outline().edge(&place.edge);
    let edge = edge.ok_or_else(|| AlterationError::Missing {
        what: format!("an edge {} on the {}", place.edge, piece.name()),
        advice: "name an edge of the piece that carries the dart",
    })?;
    let end = SeamEnd {
        edge: place.edge.clone(),
        from: place.from,
        to: place.to,
    };
    Ok((end, edge.curve().point_at(place.from)?.0))
}

/// The way, when its ends divide the piece in two.
fn checked(piece: &Piece, through: Through) -> Result<Through, AlterationError> {
    let [start, end] = &through.ends;
    if start.edge == end.edge {
        return Err(AlterationError::First {
            why: format!("both ends of the seam would lie on the {}", start.edge),
            advice: "move one dart to another edge first (dart_relocation)".to_owned(),
        });
    }
    for of in &through.ends {
        let Some(edge) = piece.outline().edge(&of.edge) else {
            continue;
        };
        if edge.role() == EdgeRole::Fold {
            return Err(AlterationError::First {
                why: format!(
                    "the seam would end on the {}, which is cut on the fold",
                    of.edge
                ),
                advice: "end it on another edge".to_owned(),
            });
        }
        let beside = of.from.min(edge.curve().length() - of.to);
        if beside < CLEAR {
            return Err(AlterationError::First {
                why: format!(
                    "the seam would end {beside:.1} mm from the corner of the {}; it takes {CLEAR:.0} mm to be sewn",
                    of.edge
                ),
                advice: "move it along the edge".to_owned(),
            });
        }
    }
    Ok(through)
}
