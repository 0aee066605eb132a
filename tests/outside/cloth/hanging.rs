//! A strip hanging by one end, and one hanging by both.

use super::meshes::{cloth, load, rectangle, rest, sheet};
use blockwright::toile::Hold;

/// A strip of length L hanging by one end stretches by w L² / 2K (any textbook of elasticity).
#[test]
fn a_hanging_strip_stretches_by_its_own_weight() {
    let (wide, long) = (100.0, 500.0);
    let (points, triangles) = rectangle(wide, long, 25.0);
    let hung = sheet(&points, &triangles, |p| {
        if p[1] > long - 1e-9 {
            Hold::Still
        } else {
            Hold::Free
        }
    });
    let made = cloth(150.0, 20.0, 1000.0);
    let mut places: Vec<_> = points.iter().map(|p| [p[0], p[1], 0.0]).collect();
    rest(&hung, &mut places, made, None, 1e-5);
    let ends: Vec<f64> = (0..points.len())
        .filter(|&i| points[i][1] < 1e-9)
        .map(|i| -places[i][1])
        .collect();
    let found = ends.iter().sum::<f64>() / ends.len() as f64;
    let exact = load(&made) * long * long / (2.0 * made.stretch[0] * 1e-3);
    assert!(
        (found / exact - 1.0).abs() < 0.003,
        "{found} against {exact}"
    );
}

/// A strip 500 mm long between ends 400 mm apart hangs in a catenary: its sag is
/// a (cosh(200/a) - 1), where 2 a sinh(200/a) = 500.
#[test]
fn a_strip_between_two_ends_is_a_catenary() {
    let (long, span) = (500.0, 400.0);
    let (mut least, mut most) = (60.0_f64, 2000.0_f64);
    for _ in 0..100 {
        let a = 0.5 * (least + most);
        if 2.0 * a * (0.5 * span / a).sinh() > long {
            least = a
        } else {
            most = a
        }
    }
    let exact = least * ((0.5 * span / least).cosh() - 1.0);
    assert!((exact - 132.72).abs() < 0.01);
    let (points, triangles) = rectangle(40.0, long, 20.0);
    let ends = |p: [f64; 2]| p[1] < 1e-9 || p[1] > long - 1e-9;
    let hung = sheet(&points, &triangles, |p| {
        if ends(p) { Hold::Still } else { Hold::Free }
    });
    let mut places: Vec<_> = points
        .iter()
        .map(|p| {
            [
                p[0],
                -140.0 * (std::f64::consts::PI * p[1] / long).sin(),
                span * p[1] / long,
            ]
        })
        .collect();
    rest(&hung, &mut places, cloth(150.0, 2.0, 5000.0), None, 1e-3);
    let sag = places.iter().map(|p| -p[1]).fold(0.0, f64::max);
    assert!((sag / exact - 1.0).abs() < 0.005, "{sag} against {exact}");
}
