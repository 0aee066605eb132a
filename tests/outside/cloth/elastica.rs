//! A strip of cloth clamped level, sinking by its own weight: the heavy elastica.
//!
//! The angle is that of the line from clamp to tip. Exact: B dφ/ds² = -w s cos φ from the free tip,
//! integrated here; it gives the 41.5 degrees of the cantilever test for wL³/B = 8.004, of which
//! Peirce's formula is an approximation.

use super::meshes::{cloth, rectangle, rest, sheet};
use crate::support::survey::whole;
use blockwright::toile::Hold;

/// The angle below the level, in degrees, from clamp to tip of a strip whose w L³ / B is that.
fn exact(heavy: f64) -> f64 {
    // From the tip: slope angle φ, its growth κ = 0 there; L = 1. The clamp has φ = 0.
    let shoot = |tip: f64| {
        let steps = 2000;
        let h = 1.0 / f64::from(steps);
        let (mut angle, mut bend, mut x, mut y) = (tip, 0.0_f64, 0.0, 0.0);
        for step in 0..steps {
            let s = f64::from(step) * h;
            let grow = |s: f64, angle: f64| -heavy * s * angle.cos();
            let middle = angle + 0.5 * h * (bend + 0.25 * h * grow(s, angle));
            let next_bend = bend
                + h * (grow(s, angle)
                    + 4.0 * grow(s + 0.5 * h, middle)
                    + grow(s + h, angle + h * bend))
                    / 6.0;
            x += h * middle.cos();
            y += h * middle.sin();
            angle += h * (bend + next_bend) * 0.5;
            bend = next_bend;
        }
        (angle, y.atan2(x).to_degrees())
    };
    let (mut low, mut high) = (0.0, std::f64::consts::FRAC_PI_2);
    for _ in 0..60 {
        let tip = 0.5 * (low + high);
        if shoot(tip).0 < 0.0 {
            low = tip
        } else {
            high = tip
        }
    }
    shoot(0.5 * (low + high)).1
}

/// The same of cloth on screen, 40 mm of a bending length of 20 mm in triangles so large.
fn on_screen(edge: f64) -> f64 {
    let long = 40.0;
    let (points, triangles) = rectangle(25.0, long, edge);
    // Along x from the fold, whose mirror image clamps it level.
    let points: Vec<[f64; 2]> = points.iter().map(|p| [p[1], p[0]]).collect();
    let triangles: Vec<[usize; 3]> = triangles.iter().map(|t| [t[0], t[2], t[1]]).collect();
    let strip = sheet(&points, &triangles, |p| {
        if p[0] < 1e-9 {
            Hold::StillOnFold
        } else {
            Hold::Free
        }
    });
    let mut places: Vec<_> = points.iter().map(|p| [p[0], 0.0, p[1]]).collect();
    rest(&strip, &mut places, cloth(150.0, 20.0, 1000.0), None, 1e-3);
    let tip: Vec<usize> = (0..points.len())
        .filter(|&i| points[i][0] > long - 1e-9)
        .collect();
    let mean = |k: usize| tip.iter().map(|&i| places[i][k]).sum::<f64>() / tip.len() as f64;
    (-mean(1)).atan2(mean(0)).to_degrees()
}

#[test]
fn a_cantilever_sinks_as_the_exact_elastica() {
    // Table of the elastica to 12 digits: 7.1003 degrees for 1, 41.4873 for 8, 61.7864 for 20.
    for (heavy, degrees) in [(1.0, 7.1003), (8.0, 41.4873), (20.0, 61.7864)] {
        assert!((exact(heavy) - degrees).abs() < 0.01, "{}", exact(heavy));
    }
    let target = exact(8.0);
    let off = |edge: f64| on_screen(edge) / target - 1.0;
    let (coarse, middle, fine) = (off(12.0), off(8.0), off(4.0));
    println!(
        "cantilever: {:.1} %, {:.1} %, {:.1} % at 12, 8, 4 mm",
        100.0 * coarse,
        100.0 * middle,
        100.0 * fine
    );
    assert!(coarse.abs() < 0.15, "{coarse}");
    assert!(fine.abs() < 0.05, "{fine}");
    // What remains is the chain of straight triangles, 3 to 4 of them at 12 mm, that stands for a
    // curve: it shrinks as the square of their size, to within what uneven triangles add.
    assert!(middle.abs() < 0.75 * coarse.abs() && fine.abs() < 0.5 * middle.abs());
    if whole() {
        let finest = off(2.5);
        println!("cantilever: {:.2} % at 2.5 mm", 100.0 * finest);
        assert!(finest.abs() < 0.015, "{finest}");
    }
}
