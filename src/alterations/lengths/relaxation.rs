//! A back deformed as rigidly as it can be while its centre gets shorter.
//!
//! Every triangle of the mesh wants to be turned only. The energy is the sum over triangles of
//! area times squared distance of the triangle's map from its nearest turn. It is brought down
//! in two steps that alternate, each exact: for fixed places the nearest turn of every triangle
//! (the polar decomposition of a 2 × 2 matrix in closed form), for fixed turns the places (two
//! linear systems, one a coordinate, factored once). The shoulder is a straight line of fixed
//! length that swings about the neck side point, so the second step has one unknown more, its
//! slope: the places follow from its cosine and sine linearly, and the energy is minimised over
//! it exactly.
//!
//! A triangle's corners are places in the mesh's list of points, and every vector and matrix here has
//! as many rows as that list.
//!
//! O. Sorkine and M. Alexa, *As-rigid-as-possible surface modeling*, 2007; L. Liu, L. Zhang,
//! Y. Xu, C. Gotsman, S. Gortler, *A local/global approach to mesh parameterization*, 2008.

#![expect(
    clippy::indexing_slicing,
    reason = "vectors and matrices have a row for every point of the mesh, which its triangles name"
)]

use super::back_mesh::{BackMesh, Hold};
use super::stretch::{Distortion, LocalStretch, Swing};
use crate::alterations::AlterationError;
use crate::geometry::elementary::{cos, hypot, sin, sin_cos};
use crate::geometry::{GeometryError, Point, Span, Vec2, root};
use nalgebra::{Cholesky, DMatrix, DVector, Dyn};

/// Most rounds; a back is at rest after some dozens.
const MOST_ROUNDS: usize = 400;

/// At rest once the shoulder turns by less than this in a round, in radians (a ten-thousandth
/// of a millimetre at the shoulder point).
const STILL: f64 = 1e-6;

/// A triangle with the gradients of its three hat functions.
struct Triangle {
    corners: [usize; 3],
    gradients: [Vec2; 3],
    area: f64,
}

/// One coordinate of every place.
struct Axis {
    free: Vec<usize>,
    factor: Cholesky<f64, Dyn>,
    /// Held places, the shoulder at its hinge; zero where free.
    held: DVector<f64>,
    /// What the held places pull at the free ones.
    pull: DVector<f64>,
    /// By how much every place goes along when the shoulder point goes by its reach.
    swing: DVector<f64>,
    /// What that pulls at every place.
    drag: DVector<f64>,
    /// Energy of that.
    stiffness: f64,
}

/// The back at rest with its nape lowered by `amount`: of the slopes that the shoulder may swing
/// to, that of the least energy.
pub(in crate::alterations) fn relaxed(
    mesh: &BackMesh,
    amount: f64,
    swing: Swing,
) -> Result<Distortion, AlterationError> {
    let triangles = triangles(mesh);
    let laplacian = laplacian(mesh.points.len(), &triangles);
    let x = Axis::of(mesh, &laplacian, 0.0, |p| p.x, |h| h != Hold::Free)?;
    let y = Axis::of(
        mesh,
        &laplacian,
        amount,
        |p| p.y,
        |h| !matches!(h, Hold::Free | Hold::Fold),
    )?;
    let chord = (mesh.shoulder_point - mesh.neck_side).atan2();
    let mut angle = match swing {
        Swing::To(slope) => slope,
        Swing::Within(_) => chord,
    };
    let mut turns = vec![Vec2::new(1.0, 0.0); triangles.len()];
    let mut places = (DVector::zeros(0), DVector::zeros(0));
    for _ in 0..MOST_ROUNDS {
        // Places for fixed turns.
        let (wanted_x, wanted_y) = wanted(mesh.points.len(), &triangles, &turns);
        let (rest_x, force_x) = x.at_rest(&wanted_x);
        let (rest_y, force_y) = y.at_rest(&wanted_y);
        let before = angle;
        if let Swing::Within(most) = swing {
            let scale = x.stiffness + y.stiffness;
            let climb = |angle: f64| {
                let (s, c) = sin_cos(angle);
                ((y.stiffness - x.stiffness) * s * c - force_x * s + force_y * c) / scale
            };
            // Near the old slope the energy is convex in it: held at the bound, it is least.
            let rest = root(
                "slope of the shoulder at rest",
                angle - 0.7,
                angle + 0.7,
                climb,
            )?;
            angle = Span::from_low(chord - most.abs(), chord + most.abs()).nearest(rest);
        }
        places = (
            rest_x + &x.swing * cos(angle),
            rest_y + &y.swing * sin(angle),
        );
        // Turns for fixed places.
        let mut turned = 0.0_f64;
        for (triangle, turn) in triangles.iter().zip(&mut turns) {
            let [a, b, c, d] = map(triangle, &places);
            let fresh = Vec2::new(a + d, c - b);
            let fresh = if fresh.hypot() > 0.0 {
                fresh.normalize()
            } else {
                *turn
            };
            turned = turned.max((fresh - *turn).hypot());
            *turn = fresh;
        }
        // Triangles at a corner may go on turning by little; what is sought is the shoulder.
        if (angle - before).abs() < STILL && turned < 100.0 * STILL {
            break;
        }
    }
    let mut stretch = LocalStretch {
        smallest: f64::INFINITY,
        largest: 0.0,
    };
    let mut energy = 0.0;
    for (triangle, turn) in triangles.iter().zip(&turns) {
        let [a, b, c, d] = map(triangle, &places);
        let even = hypot(a + d, c - b);
        let uneven = hypot(a - d, c + b);
        stretch.largest = stretch.largest.max(0.5 * (even + uneven));
        stretch.smallest = stretch.smallest.min(0.5 * (even - uneven));
        let off = [a - turn.x, b + turn.y, c - turn.y, d - turn.x];
        energy += triangle.area * off.iter().map(|v| v * v).sum::<f64>();
    }
    let run = |place: &dyn Fn(usize) -> Point| -> f64 {
        mesh.armscye
            .array_windows()
            .map(|[a, b]| place(*a).distance(place(*b)))
            .sum()
    };
    let armscye = run(&|i| Point::new(places.0[i], places.1[i])) / run(&|i| mesh.points[i]);
    Ok(Distortion {
        armscye,
        slope: angle,
        stretch,
        energy,
    })
}

fn triangles(mesh: &BackMesh) -> Vec<Triangle> {
    mesh.triangles
        .iter()
        .map(|&corners| {
            let [p, q, r] = corners.map(|i| mesh.points[i]);
            let twice = (q - p).cross(r - p);
            let gradient = |side: Vec2| Vec2::new(-side.y, side.x) / twice;
            Triangle {
                corners,
                gradients: [gradient(r - q), gradient(p - r), gradient(q - p)],
                area: 0.5 * twice.abs(),
            }
        })
        .collect()
}

fn laplacian(count: usize, triangles: &[Triangle]) -> DMatrix<f64> {
    let mut matrix = DMatrix::zeros(count, count);
    for t in triangles {
        for (i, g) in t.corners.iter().zip(&t.gradients) {
            for (j, h) in t.corners.iter().zip(&t.gradients) {
                matrix[(*i, *j)] += t.area * g.dot(*h);
            }
        }
    }
    matrix
}

/// What the turns ask of the places: the right-hand sides of both systems.
fn wanted(count: usize, triangles: &[Triangle], turns: &[Vec2]) -> (DVector<f64>, DVector<f64>) {
    let mut both = (DVector::zeros(count), DVector::zeros(count));
    for (t, turn) in triangles.iter().zip(turns) {
        for (i, g) in t.corners.iter().zip(&t.gradients) {
            both.0[*i] += t.area * (turn.x * g.x - turn.y * g.y);
            both.1[*i] += t.area * (turn.y * g.x + turn.x * g.y);
        }
    }
    both
}

/// The map of a triangle: the two rows of its matrix.
fn map(t: &Triangle, (x, y): &(DVector<f64>, DVector<f64>)) -> [f64; 4] {
    let mut m = [0.0; 4];
    for (i, g) in t.corners.iter().zip(&t.gradients) {
        m[0] += x[*i] * g.x;
        m[1] += x[*i] * g.y;
        m[2] += y[*i] * g.x;
        m[3] += y[*i] * g.y;
    }
    m
}

impl Axis {
    fn of(
        mesh: &BackMesh,
        laplacian: &DMatrix<f64>,
        drop: f64,
        coordinate: impl Fn(Point) -> f64,
        is_held: impl Fn(Hold) -> bool,
    ) -> Result<Self, AlterationError> {
        let count = mesh.points.len();
        let free: Vec<usize> = (0..count).filter(|&i| !is_held(mesh.holds[i])).collect();
        let mut held = DVector::zeros(count);
        let mut swing = DVector::zeros(count);
        for (i, (point, hold)) in mesh.points.iter().zip(&mesh.holds).enumerate() {
            if !is_held(*hold) {
                continue;
            }
            held[i] = match hold {
                Hold::Shoulder(_) => coordinate(mesh.neck_side) + drop,
                Hold::Neck => coordinate(*point) + drop,
                _ => coordinate(*point),
            };
            if let Hold::Shoulder(along) = hold {
                swing[i] = *along;
            }
        }
        let inner = laplacian.select_rows(&free).select_columns(&free);
        let factor = Cholesky::new(inner).ok_or(AlterationError::Construction {
            step: "the mesh of the back hangs together",
            source: GeometryError::Empty,
        })?;
        let pull = (laplacian * &held).select_rows(&free);
        let pulled = factor.solve(&(laplacian * &swing).select_rows(&free));
        for (at, i) in free.iter().enumerate() {
            swing[*i] = -pulled[at];
        }
        let drag = laplacian * &swing;
        let stiffness = swing.dot(&drag);
        Ok(Self {
            free,
            factor,
            held,
            pull,
            swing,
            drag,
            stiffness,
        })
    }

    /// The places for the shoulder at its hinge, and the force against its swing.
    fn at_rest(&self, wanted: &DVector<f64>) -> (DVector<f64>, f64) {
        let solved = self
            .factor
            .solve(&(wanted.select_rows(&self.free) - &self.pull));
        let mut places = self.held.clone();
        for (at, i) in self.free.iter().enumerate() {
            places[*i] = solved[at];
        }
        let force = self.drag.dot(&places) - self.swing.dot(wanted);
        (places, force)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::draft::{Block, DraftOptions, Figure, draft_figure};
    use crate::piece::Piece;

    const FREE: Swing = Swing::Within(1.0);

    fn back() -> Piece {
        let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic));
        pattern.unwrap().piece("back").unwrap().clone()
    }

    #[test]
    fn nothing_moves_where_nothing_is_asked() {
        let mesh = BackMesh::of(&back(), 15.0).unwrap();
        let found = relaxed(&mesh, 0.0, FREE).unwrap();
        let chord = mesh.shoulder_point - mesh.neck_side;
        assert!((found.slope - chord.atan2()).abs() < 1e-6, "{found:?}");
        assert!(found.energy < 1e-9, "{found:?}");
        assert!((found.stretch.smallest - 1.0).abs() < 1e-6, "{found:?}");
        assert!((found.stretch.largest - 1.0).abs() < 1e-6, "{found:?}");
    }

    #[test]
    fn no_slope_beside_the_one_found_costs_less() {
        let mesh = BackMesh::of(&back(), 15.0).unwrap();
        for amount in [-10.0, 12.0, 25.0] {
            let best = relaxed(&mesh, amount, FREE).unwrap();
            for off in [-0.1, -0.03, -0.01, 0.01, 0.03, 0.1] {
                let beside = relaxed(&mesh, amount, Swing::To(best.slope + off)).unwrap();
                assert!(
                    beside.energy > best.energy,
                    "{amount} {off}: {beside:?} {best:?}"
                );
            }
        }
    }

    /// The bound that keeps the slope within half of the plain hinge costs next to nothing.
    #[test]
    fn the_energy_is_flat_around_its_least() {
        let mesh = BackMesh::of(&back(), 15.0).unwrap();
        let chord = mesh.shoulder_point - mesh.neck_side;
        let cost = |drop: f64| {
            let sine = (chord.y - (1.0 - drop) * 25.0) / chord.hypot();
            relaxed(&mesh, 25.0, Swing::To(sine.asin())).unwrap().energy
        };
        let least = relaxed(&mesh, 25.0, FREE).unwrap().energy;
        assert!(cost(0.51) < 1.005 * least, "{} {least}", cost(0.51));
        for end in [0.0, 1.0] {
            assert!(
                (1.1..1.4).contains(&(cost(end) / least)),
                "{end} {} {least}",
                cost(end)
            );
        }
    }

    #[test]
    fn a_mesh_twice_as_fine_moves_the_shoulder_by_little() {
        let amount = 25.0;
        let drop = |rows: f64| {
            let mesh = BackMesh::of(&back(), rows).unwrap();
            let found = relaxed(&mesh, amount, FREE).unwrap();
            let chord = mesh.shoulder_point - mesh.neck_side;
            1.0 - (chord.y - chord.hypot() * found.slope.sin()) / amount
        };
        let (coarse, fine) = (drop(15.0), drop(30.0));
        assert!((coarse - fine).abs() < 0.02, "{coarse} {fine}");
    }
}
