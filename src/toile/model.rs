//! A toile as points and triangles, to be turned on a screen.

#![expect(
    clippy::indexing_slicing,
    reason = "points are numbered by the garment"
)]

use super::sewn::Toile;
use crate::piece::EdgeRole;

/// A surface of triangles, in mm: x to the wearer's left, y up from her waist, z to the front.
///
/// ```
/// use blockwright::toile::ToileModel;
/// let triangle = ToileModel {
///     points: vec![[0.0, 0.0, 0.0], [100.0, 0.0, 0.0], [0.0, 100.0, 0.0]],
///     triangles: vec![[0, 1, 2]],
///     seams: vec![[0, 1]],
/// };
/// assert_eq!(triangle.triangles[0].len(), 3);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct ToileModel {
    /// Its points.
    pub points: Vec<[f64; 3]>,
    /// The points of each triangle, anticlockwise seen from outside.
    pub triangles: Vec<[usize; 3]>,
    /// The ends of short lines along seams, darts and hems.
    pub seams: Vec<[usize; 2]>,
}

impl Toile {
    /// The cloth, of both sides.
    #[must_use]
    pub fn model(&self) -> ToileModel {
        let skin = self.skin();
        let mut seams = Vec::new();
        let panels = self.garment.panels.iter().zip(&self.garment.joined);
        for (panel, joined) in panels {
            for (_, role, points) in &panel.edges {
                if *role != EdgeRole::Fold {
                    let ends = points.iter().zip(points.iter().skip(1));
                    seams.extend(ends.map(|(a, b)| [joined[*a], joined[*b]]));
                }
            }
            let apart = 2.0 * self.settings.quality.edge();
            for (one, next) in panel.pairs.iter().zip(panel.pairs.iter().skip(1)) {
                if panel.points[one[0]].distance(panel.points[next[0]]) < apart {
                    seams.push([joined[one[0]], joined[next[0]]]);
                }
            }
        }
        seams.retain(|[a, b]| a != b);
        for seam in &mut seams {
            seam.sort_unstable();
        }
        seams.sort_unstable();
        seams.dedup();
        if !self.garment.whole {
            let holds = &self.garment.sheet.holds;
            let other = |i: usize| {
                if holds[i].on_fold() {
                    i
                } else {
                    i + holds.len()
                }
            };
            let mirrored: Vec<[usize; 2]> = seams.iter().map(|s| s.map(other)).collect();
            seams.extend(mirrored);
        }
        ToileModel {
            points: skin.points,
            triangles: skin.triangles,
            seams,
        }
    }

    /// What it hangs on, drawn a little smaller, so that the cloth's straight triangles do not cut into
    /// it.
    #[must_use]
    pub fn stand_model(&self) -> ToileModel {
        ToileModel {
            points: self.smaller_stand(),
            triangles: self.stand.skin.triangles.clone(),
            seams: Vec::new(),
        }
    }
}
