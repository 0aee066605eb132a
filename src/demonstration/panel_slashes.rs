//! A piece divided by a seam over its darts.

use super::bench::Bench;
use super::error::{Tried, missing};
use super::instruction::Instruction;
use super::rings::{distance, steps};
use super::slash::OpeningKind;
use super::truing::FOLLOWED;
use super::words::mm;
use crate::geometry::Point;
use crate::piece::Piece;

/// Where the seam of one panel lies on that of the other, in millimetres.
const TOGETHER: f64 = 0.3;

/// The edges of a piece along the new seam, as one run.
fn seam(piece: &Piece) -> Option<Vec<Point>> {
    let edges = piece.outline().edges();
    let on_seam = |edge: &&crate::piece::Edge| edge.name().as_str().starts_with("panel_seam");
    let mut run: Vec<Point> = Vec::new();
    for edge in edges.iter().filter(on_seam) {
        let part = edge.curve().to_polyline(FOLLOWED).ok()?;
        run.extend(part);
    }
    (!run.is_empty()).then_some(run)
}

/// Cut along both sides of the new seam; the darts between fall out.
pub(super) fn divided(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    let [centre, side] = bench.new.as_slice() else {
        return Ok(None);
    };
    let (Some(one), Some(other)) = (seam(centre), seam(side)) else {
        return missing("a seam between the panels");
    };
    bench.cut(&one)?;
    // Stretches of the other panel's seam that lie apart from the first: darts between them.
    let apart = |p: &Point| distance(steps(&one), *p) > TOGETHER;
    let mut stretch: Vec<Point> = Vec::new();
    let mut stretches = Vec::new();
    let mut before = None;
    for p in &other {
        if apart(p) {
            if stretch.is_empty() {
                stretch.extend(before);
            }
            stretch.push(*p);
        } else if !stretch.is_empty() {
            stretch.push(*p);
            stretches.push(std::mem::take(&mut stretch));
        }
        before = Some(*p);
    }
    if stretch.len() > 1 {
        stretches.push(stretch);
    }
    for stretch in stretches {
        bench.cut(&stretch)?;
    }
    bench.drop_between();
    let widest = bench.widest(OpeningKind::CutOff);
    Ok(Some(Instruction::new(
        "Cut along the new seam from edge to edge, over the darts: once along the centre panel, once along the side panel. Cut through: there is no hinge.",
        if widest > 0.0 {
            format!(
                "The darts fall out, {} wide at most; what was one piece is two.",
                mm(widest)
            )
        } else {
            "What was one piece is two.".to_owned()
        },
    )))
}
