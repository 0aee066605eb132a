//! The panels of a pattern sewn together: one sheet.

#![expect(
    clippy::indexing_slicing,
    reason = "panels, points and stitches are numbered here"
)]

use super::error::ToileError;
use super::panel::Panel;
use super::sheet::{Hold, Sheet};
use super::stitches::{Places, SewnEdge, places};
use crate::piece::{EdgeName, EdgeRole, Pattern, Piece};

/// A sewn garment, flat pieces and the sheet they make.
#[derive(Debug, Clone)]
pub(super) struct Garment {
    pub panels: Vec<Panel>,
    /// For every panel, which point of the sheet each of its points is.
    pub joined: Vec<Vec<usize>>,
    pub sheet: Sheet,
    /// The panel of every triangle.
    pub panel_of: Vec<usize>,
    pub whole: bool,
    /// Panels sewn to each other lengthwise, and whether at the side.
    pub beside: Vec<(usize, usize, bool)>,
}

impl Garment {
    pub fn of(
        pattern: &Pattern,
        wanted: &dyn Fn(&Piece) -> bool,
        step: f64,
    ) -> Result<Self, ToileError> {
        let whole = pattern.pieces().iter().any(|p| p.side().is_some());
        let mut all: Places = Places::new();
        for (number, seam) in pattern.seams().iter().enumerate() {
            let mut refs = seam.a.iter().chain(&seam.b);
            if refs.all(|e| pattern.piece(&e.piece).is_some_and(wanted)) {
                all.extend(places(pattern, number, seam, step)?);
            }
        }
        let mut panels = Vec::new();
        for piece in pattern.pieces().iter().filter(|p| wanted(p)) {
            let mut outline = Vec::new();
            for edge in piece.outline().edges() {
                let sewn = SewnEdge::of(piece, edge.name())?;
                let given = all
                    .iter()
                    .find(|((p, e), _)| p == piece.name() && e == edge.name());
                let places = given.map_or_else(|| sewn.loose(step), |(_, places)| places.clone());
                outline.push((edge.name().clone(), edge.role(), sewn.sampled(&places)));
            }
            panels.push(Panel::of(piece, outline, step)?);
        }
        let mut beside = Vec::new();
        for seam in pattern.seams() {
            let upright = |e: &crate::piece::EdgeRef| {
                ![
                    EdgeName::SHOULDER,
                    EdgeName::WAIST,
                    EdgeName::ARMSCYE,
                    EdgeName::NECKLINE,
                    EdgeName::SLEEVE_CAP,
                ]
                .contains(&e.edge)
            };
            for a in seam.a.iter().filter(|e| upright(e)) {
                for b in seam.b.iter().filter(|e| upright(e)) {
                    let find = |name: &str| panels.iter().position(|p: &Panel| p.name == name);
                    if let (Some(i), Some(j)) = (find(&a.piece), find(&b.piece)) {
                        beside.push((
                            i,
                            j,
                            a.edge == EdgeName::SIDE_SEAM && b.edge == EdgeName::SIDE_SEAM,
                        ));
                    }
                }
            }
        }
        weld(panels, whole, beside)
    }
}

/// Makes one point of all that are sewn together.
fn weld(
    panels: Vec<Panel>,
    whole: bool,
    beside: Vec<(usize, usize, bool)>,
) -> Result<Garment, ToileError> {
    let starts: Vec<usize> = panels
        .iter()
        .scan(0, |sum, p| {
            let at = *sum;
            *sum += p.points.len();
            Some(at)
        })
        .collect();
    let total: usize = panels.iter().map(|p| p.points.len()).sum();
    let mut to: Vec<usize> = (0..total).collect();
    let mut held: Vec<((usize, usize), usize)> = Vec::new();
    for (panel, start) in panels.iter().zip(&starts) {
        for [a, b] in &panel.pairs {
            unite(&mut to, start + a, start + b);
        }
        held.extend(panel.stitches.iter().map(|(s, p)| (*s, start + p)));
    }
    held.sort_unstable();
    for (one, other) in held.iter().zip(held.iter().skip(1)) {
        if one.0 == other.0 {
            unite(&mut to, one.1, other.1);
        }
    }
    let roots: Vec<usize> = (0..total).map(|i| root(&to, i)).collect();
    let mut number = vec![usize::MAX; total];
    let mut count = 0;
    for &r in &roots {
        if number[r] == usize::MAX {
            number[r] = count;
            count += 1;
        }
    }
    let joined: Vec<Vec<usize>> = panels
        .iter()
        .zip(&starts)
        .map(|(p, s)| (0..p.points.len()).map(|i| number[roots[s + i]]).collect())
        .collect();
    let mut holds = vec![Hold::Free; count];
    let (mut triangles, mut flat, mut panel_of) = (Vec::new(), Vec::new(), Vec::new());
    for (index, (panel, joined)) in panels.iter().zip(&joined).enumerate() {
        for (name, role, points) in &panel.edges {
            let centre = matches!(role, EdgeRole::Fold)
                || *name == EdgeName::CENTRE_BACK
                || *name == EdgeName::CENTRE_FRONT;
            if centre && !whole {
                for &p in points {
                    holds[joined[p]] = Hold::Fold;
                }
            }
        }
        let [x, y] = panel.warp;
        for t in &panel.triangles {
            let corners = t.map(|i| joined[i]);
            let places = t.map(|i| {
                let p = panel.points[i];
                [p.x * -y + p.y * x, p.x * x + p.y * y]
            });
            let [a, b, c] = corners;
            if a == b || b == c || c == a {
                continue;
            }
            let ahead = super::sheet::twice_area(&places) > 0.0;
            triangles.push(if ahead { corners } else { [a, c, b] });
            let [p, q, r] = places;
            flat.push(if ahead { places } else { [p, r, q] });
            panel_of.push(index);
        }
    }
    let sheet = Sheet::new(triangles, flat, holds)?;
    Ok(Garment {
        panels,
        joined,
        sheet,
        panel_of,
        whole,
        beside,
    })
}

fn root(to: &[usize], mut at: usize) -> usize {
    while to[at] != at {
        at = to[at];
    }
    at
}

fn unite(to: &mut [usize], a: usize, b: usize) {
    let (a, b) = (root(to, a), root(to, b));
    let (low, high) = (a.min(b), a.max(b));
    to[high] = low;
}
