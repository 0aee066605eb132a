//! A sheet of cloth: triangles that know their flat shape, and what holds their corners.

#![expect(
    clippy::indexing_slicing,
    reason = "corners are seen to be points of the sheet when it is made"
)]

use super::error::ToileError;
use super::space::{Space, dot};

/// What holds a point of a sheet.
///
/// ```
/// use blockwright::toile::Hold;
/// assert_ne!(Hold::Free, Hold::Fold);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Hold {
    /// Nothing.
    Free,
    /// It is on the fold: it stays in the plane x = 0, beyond which the sheet goes on as its mirror
    /// image.
    Fold,
    /// It stays where it is.
    Still,
    /// It stays where it is and is on the fold: the sheet leaves it square to the plane x = 0.
    StillOnFold,
}

impl Hold {
    pub(super) fn on_fold(self) -> bool {
        matches!(self, Self::Fold | Self::StillOnFold)
    }

    pub(super) fn still(self) -> bool {
        matches!(self, Self::Still | Self::StillOnFold)
    }
}

/// A sheet of cloth in triangles.
///
/// # Guarantees
/// There is a triangle; every triangle has three different corners, among the points, and an area.
///
/// ```
/// use blockwright::toile::{Hold, Sheet};
/// let square = Sheet::new(
///     vec![[0, 1, 2], [0, 2, 3]],
///     vec![
///         [[0.0, 0.0], [100.0, 0.0], [100.0, 100.0]],
///         [[0.0, 0.0], [100.0, 100.0], [0.0, 100.0]],
///     ],
///     vec![Hold::Free; 4],
/// )?;
/// assert_eq!(square.area(), 10_000.0);
/// # Ok::<(), blockwright::toile::ToileError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    pub(super) triangles: Vec<[usize; 3]>,
    pub(super) flat: Vec<[[f64; 2]; 3]>,
    pub(super) holds: Vec<Hold>,
    /// What of the cloth each point carries, in mm².
    pub(super) share: Vec<f64>,
}

impl Sheet {
    /// A sheet of triangles between points. Each has its corners in its own flat drawing, in mm, as
    /// (along the weft, along the warp), anticlockwise: triangles that share an edge may come from
    /// different pieces, sewn together there. There is one hold for each point.
    ///
    /// # Errors
    /// [`ToileError::BadTriangle`] where a triangle names a point that is not there or one twice, or
    /// has no area or runs clockwise; [`ToileError::Nothing`] where there is none, or not one flat
    /// shape for each.
    pub fn new(
        triangles: Vec<[usize; 3]>,
        flat: Vec<[[f64; 2]; 3]>,
        holds: Vec<Hold>,
    ) -> Result<Self, ToileError> {
        if triangles.is_empty() || triangles.len() != flat.len() {
            return Err(ToileError::Nothing);
        }
        let mut share = vec![0.0; holds.len()];
        for (index, (corners, flat)) in triangles.iter().zip(&flat).enumerate() {
            let [a, b, c] = *corners;
            let size = 0.5 * twice_area(flat);
            let fine = size > LEAST_AREA && size < MOST_AREA;
            if a.max(b).max(c) >= holds.len() || a == b || b == c || c == a || !fine {
                return Err(ToileError::BadTriangle { index });
            }
            for corner in *corners {
                share[corner] += size / 3.0;
            }
        }
        Ok(Self {
            triangles,
            flat,
            holds,
            share,
        })
    }

    /// The cloth there is, in mm².
    #[must_use]
    pub fn area(&self) -> f64 {
        self.share.iter().sum()
    }

    /// How many points it has.
    #[must_use]
    pub const fn count(&self) -> usize {
        self.holds.len()
    }

    /// By what share of their length the threads of each triangle are stretched, its points being at
    /// these places: along the weft, along the warp. Nothing where there is not a place for each point.
    #[must_use]
    pub fn stretches(&self, places: &[[f64; 3]]) -> Vec<[f64; 2]> {
        if places.len() != self.count() {
            return Vec::new();
        }
        let shapes = self.triangles.iter().zip(&self.flat);
        let stretched = shapes.map(|(corners, flat)| {
            let at = corners.map(|corner| places[corner]);
            threads(&at, &slopes(flat)).map(|thread| dot(thread, thread).sqrt() - 1.0)
        });
        stretched.collect()
    }
}

/// The smallest and the largest triangle, in mm².
const LEAST_AREA: f64 = 1e-9;
const MOST_AREA: f64 = 1e8;

/// How the places of three corners make the derivatives of place along weft and warp, in 1/mm.
pub(super) fn slopes(flat: &[[f64; 2]; 3]) -> [[f64; 2]; 3] {
    let twice = twice_area(flat);
    [0, 1, 2].map(|k| {
        let (b, c) = (flat[(k + 1) % 3], flat[(k + 2) % 3]);
        [(b[1] - c[1]) / twice, (c[0] - b[0]) / twice]
    })
}

/// Where a step along the weft and one along the warp lead in space.
pub(super) fn threads(corners: &[Space; 3], slopes: &[[f64; 2]; 3]) -> [Space; 2] {
    let mut threads = [[0.0; 3]; 2];
    for (corner, slope) in corners.iter().zip(slopes) {
        super::space::add_to(&mut threads[0], slope[0], *corner);
        super::space::add_to(&mut threads[1], slope[1], *corner);
    }
    threads
}

/// Twice the area of a flat triangle, negative where it runs the other way.
pub(super) fn twice_area([a, b, c]: &[[f64; 2]; 3]) -> f64 {
    (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
}

/// Two ends, and the triangles that share the edge with which of their corners is across.
pub(super) type SharedEdge = ([usize; 2], Vec<(usize, usize)>);

/// The edges of a sheet, sorted, each with the triangles beside it and which of their corners is
/// across.
pub(super) fn edges(triangles: &[[usize; 3]]) -> Vec<SharedEdge> {
    let mut all: Vec<([usize; 2], (usize, usize))> = Vec::with_capacity(3 * triangles.len());
    for (index, corners) in triangles.iter().enumerate() {
        for across in 0..3 {
            let (a, b) = (corners[(across + 1) % 3], corners[(across + 2) % 3]);
            all.push(([a.min(b), a.max(b)], (index, across)));
        }
    }
    all.sort_unstable();
    let mut edges: Vec<SharedEdge> = Vec::new();
    for (ends, beside) in all {
        match edges.last_mut() {
            Some((last, list)) if *last == ends => list.push(beside),
            _ => edges.push((ends, vec![beside])),
        }
    }
    edges
}
