//! The line on which a piece is cut.

use super::corner::{Arm, Corner, meet};
use super::{AllowanceError, Allowances};
use crate::geometry::{
    Curve, GeometryError, OffsetRun, Point, Region, offset_runs, perpendicular, ring_crossing,
    signed_area, tolerance, with_next, without_loops, without_slivers,
};
use crate::piece::{Edge, EdgeRole, Piece};
use kurbo::{ParamCurve, PathSeg};

/// How far the cut line may come closer to the stitching line than its width, in millimetres.
const SLACK: f64 = 0.05;

/// A mouth no longer than this is caught in any seam, in millimetres.
const SHORT_MOUTH: f64 = 20.0;

/// Samples on every segment of the cut line when that is proved.
const SAMPLES: u32 = 8;

/// The closed line on which a piece is cut, clockwise on the page: outside the stitching line
/// by the width of each edge, on it along a fold.
///
/// Corners are mitred; squared to the seam that is sewn first; mirrored at the hem; cut blunt
/// when very acute. Along the shaped mouth of a dart the line follows the mouth, so that the
/// folded dart lies within the allowance. What comes back is proved: closed, simple, nowhere
/// closer to the stitching line than it should be.
///
/// ```
/// use blockwright::allowance::{Allowances, cut_line};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let piece = &pattern.pieces()[0];
/// let cut = cut_line(piece, &Allowances::all_round(15.0)?)?;
/// let below = cut.bounds().y1 - piece.outline().bounds().y1;
/// assert!((below - 15.0).abs() < 0.02, "15 mm at the hem");
/// # Ok(()) }
/// ```
///
/// # Errors
/// When the allowance has no room: it would run into itself or into the piece.
pub fn cut_line(piece: &Piece, allowances: &Allowances) -> Result<Curve, AllowanceError> {
    let geometry = |source| AllowanceError::Geometry {
        piece: piece.name().to_owned(),
        source,
    };
    refuse_spikes(piece)?;
    let ring = raw_ring(piece, allowances).map_err(geometry)?;
    let ring = without_stubs(without_loops(ring));
    let line = Curve::new(ring).map_err(geometry)?;
    // A sliver left out at the very end leaves the ring open by as little.
    let line = line.ending_at(line.start()).map_err(geometry)?;
    prove(piece, allowances, &line)?;
    Ok(line)
}

/// A mouth is at most so many times as long as its dart is wide: mouths of drafted darts are 1.0 to
/// 1.4 times as long; beyond this the fold runs along the edge instead of being caught in the
/// seam (an assumption).
const LONGEST_MOUTH: f64 = 1.8;

/// Refuses a dart whose folded mouth would stick out of the cut line.
fn refuse_spikes(piece: &Piece) -> Result<(), AllowanceError> {
    for edge in piece.outline().edges() {
        for (dart, from, to) in piece.mouths(edge.name()) {
            // A dart of a few millimetres sticks out by no more than can be trimmed.
            let mouth = to - from;
            if mouth > LONGEST_MOUTH * dart.intake() && mouth > SHORT_MOUTH {
                return Err(AllowanceError::Spike {
                    piece: piece.name().to_owned(),
                    dart: dart.name.clone(),
                    edge: edge.name().to_string(),
                    mouth,
                });
            }
        }
    }
    Ok(())
}

/// One smooth stretch of the ring with what is known of its edge.
struct Stretch<'a> {
    edge: &'a Edge,
    width: f64,
    run: OffsetRun,
}

/// The lines beside all edges with their corners; it may cross itself where there is no room.
#[expect(
    clippy::indexing_slicing,
    reason = "both places are below the count that they are taken from"
)]
fn raw_ring(piece: &Piece, allowances: &Allowances) -> Result<Vec<PathSeg>, GeometryError> {
    // The inside of a clockwise outline lies to the right, of an anticlockwise one to the left.
    let side = piece.outline().area().signum();
    let mut stretches = Vec::new();
    for edge in piece.outline().edges() {
        let width = allowances.of(edge);
        // Their directions are noise: a line beside them would turn back on itself.
        let line = without_slivers(edge.curve(), &[])?;
        for run in offset_runs(&line, side * width)? {
            stretches.push(Stretch { edge, width, run });
        }
    }
    let count = stretches.len();
    let mut betweens: Vec<Vec<Curve>> = Vec::with_capacity(count);
    for index in 0..count {
        let next = (index + 1) % count;
        let (a, b) = (&stretches[index], &stretches[next]);
        let corner = if a.edge.name() == b.edge.name() {
            Corner::Mitred
        } else {
            Corner::between(a.edge, b.edge)
        };
        let arm = |s: &Stretch<'_>, end: usize| {
            let [at_start, at_end] = s.run.directions;
            let along = if end == 1 { at_end } else { at_start };
            Arm {
                beside: if end == 1 {
                    s.run.beside.clone()
                } else {
                    s.run.beside.reversed()
                },
                toward: if end == 1 { along } else { -along },
                width: s.width,
                outward: -perpendicular(along) * side,
            }
        };
        let met = meet(corner, a.run.ends[1], &arm(a, 1), &arm(b, 0))?;
        stretches[index].run.beside = met.first;
        stretches[next].run.beside = met.second.reversed();
        betweens.push(met.between);
    }
    let mut ring = Vec::new();
    for (stretch, between) in stretches.iter().zip(&betweens) {
        ring.extend_from_slice(stretch.run.beside.segments());
        ring.extend(between.iter().flat_map(|c| c.segments().iter().copied()));
    }
    if side < 0.0 {
        ring = ring.iter().rev().map(PathSeg::reverse).collect();
    }
    Ok(ring)
}

/// The ring without straight segments too short to be seen, such as carrying on leaves where
/// two edges nearly meet: the segment after each starts where it started.
fn without_stubs(ring: Vec<PathSeg>) -> Vec<PathSeg> {
    let is_sliver =
        |s: &PathSeg| kurbo::Shape::bounding_box(s).size().max_side() < tolerance::SEAM_DRAFTED;
    let mut kept: Vec<PathSeg> = Vec::with_capacity(ring.len());
    let mut from = None;
    for mut segment in ring {
        let start = from.take().unwrap_or(segment.start());
        if is_sliver(&segment) {
            from = Some(start);
            continue;
        }
        match &mut segment {
            PathSeg::Line(l) => l.p0 = start,
            PathSeg::Quad(q) => q.p0 = start,
            PathSeg::Cubic(c) => c.p0 = start,
        }
        kept.push(segment);
    }
    kept
}

/// Proves a cut line: simple, round the right way, nowhere too close to the stitching line.
///
/// Near the ends of an edge the narrower width of the edge and its neighbour counts, for there
/// corners are squared, mirrored and trimmed.
fn prove(piece: &Piece, allowances: &Allowances, line: &Curve) -> Result<(), AllowanceError> {
    let crossing = |p: Point| AllowanceError::Crossing {
        piece: piece.name().to_owned(),
        x: p.x,
        y: p.y,
    };
    if let Some(at) = ring_crossing(line.segments()) {
        return Err(crossing(at));
    }
    let grown = signed_area(line.segments()) - piece.outline().area().abs();
    if grown < -1.0 {
        return Err(crossing(line.start()));
    }
    let edges = piece.outline().edges();
    let pairs: Vec<_> = with_next(edges).collect();
    // The edge before the first is the last: each edge between the two that it meets.
    let mut edges: Vec<Guarded<'_>> = with_next(&pairs)
        .map(|((before, edge), (_, after))| Guarded::new(allowances, edge, (before, after)))
        .collect();
    edges.rotate_right(1);
    let outline = Region::within(piece.outline().segments());
    for segment in line.segments() {
        for step in 0..SAMPLES {
            let p = segment.eval(f64::from(step) / f64::from(SAMPLES));
            let inside = inside_fold(piece, p);
            if inside < -tolerance::SEAM_ALTERED {
                return Err(crossing(p));
            }
            if inside < tolerance::SEAM_ALTERED {
                continue; // laid on the fold, not cut
            }
            // Beside a dart the stitching line may come close from both sides.
            if outline.surrounds(p) && !outline.passes_near(p, SLACK) {
                return Err(crossing(p));
            }
            for guarded in &edges {
                guarded.check(piece, p)?;
            }
        }
    }
    Ok(())
}

/// How far inside the fold a place lies, negative beyond it; infinite on a piece without one.
fn inside_fold(piece: &Piece, p: Point) -> f64 {
    let side = piece.outline().area().signum();
    let edges = piece.outline().edges().iter();
    edges
        .filter(|edge| edge.role() == EdgeRole::Fold)
        .map(|edge| {
            let inward = perpendicular(edge.curve().start_direction()) * side;
            (p - edge.curve().start()).dot(inward)
        })
        .fold(f64::INFINITY, f64::min)
}

/// An edge and how close the cut line may come to it.
struct Guarded<'a> {
    edge: &'a Edge,
    length: f64,
    width: f64,
    /// The width that counts near the start and near the end.
    near: [f64; 2],
    /// What is near, in millimetres along the edge.
    reach: f64,
}

impl<'a> Guarded<'a> {
    fn new(allowances: &Allowances, edge: &'a Edge, beside: (&Edge, &Edge)) -> Self {
        let (before, after) = (allowances.of(beside.0), allowances.of(beside.1));
        let width = allowances.of(edge);
        Self {
            edge,
            length: edge.curve().length(),
            width,
            near: [width.min(before), width.min(after)],
            reach: 2.5 * width.max(before).max(after),
        }
    }

    fn check(&self, piece: &Piece, p: Point) -> Result<(), AllowanceError> {
        let bounds = self.edge.curve().bounds().inflate(self.width, self.width);
        if self.width <= SLACK || !bounds.contains(p) {
            return Ok(());
        }
        let (distance, at) = self.edge.curve().nearest(p);
        let mut width = self.width;
        if at < self.reach {
            width = width.min(self.near[0]);
        }
        if at > self.length - self.reach {
            width = width.min(self.near[1]);
        }
        // The mouth of a dart lies folded under its seam: there a tenth less does no harm.
        let folded = piece
            .mouths(self.edge.name())
            .iter()
            .any(|(_, from, to)| (*from..=*to).contains(&at));
        let slack = if folded {
            SLACK.max(0.1 * width)
        } else {
            SLACK
        };
        if distance >= width - slack {
            return Ok(());
        }
        Err(AllowanceError::NoRoom {
            piece: piece.name().to_owned(),
            edge: self.edge.name().to_string(),
            x: p.x,
            y: p.y,
            distance,
            width,
        })
    }
}
