//! A tube of cloth, too narrow for the cylinder it is on.

use super::meshes::{cloth, rectangle, rest, round};
use blockwright::toile::{Hold, Sheet, Support};
use std::f64::consts::TAU;

#[derive(Debug)]
struct Cylinder(f64);

impl Support for Cylinder {
    fn distance(&self, at: [f64; 3]) -> Option<(f64, [f64; 3])> {
        let out = at[0].hypot(at[2]);
        Some((out - self.0, [at[0] / out, 0.0, at[2] / out]))
    }
}

/// Cloth of 2π 97 mm round a radius of 100.7 mm, half its thickness outside the cylinder's 100, is
/// stretched by 100.7 / 97 - 1 (any textbook of elasticity), whatever it is made of.
#[test]
fn a_tight_tube_is_stretched_by_the_ratio_of_girths() {
    let (rest_radius, wide) = (97.0, TAU * 97.0);
    let (points, triangles) = rectangle(wide, 30.0, wide / 80.0);
    let (number, places) = round(&points, wide, |way, up| {
        let turned = TAU * way;
        [104.0 * turned.cos(), up, 104.0 * turned.sin()]
    });
    let flat = triangles.iter().map(|t| t.map(|i| points[i])).collect();
    let sewn = triangles.iter().map(|t| t.map(|i| number[i])).collect();
    let tube = Sheet::new(sewn, flat, vec![Hold::Free; places.len()]).expect("a tube");
    let exact = 100.7 / rest_radius - 1.0;
    for stretch in [200.0, 1000.0] {
        let mut at = places.clone();
        rest(
            &tube,
            &mut at,
            cloth(168.0, 15.0, stretch),
            Some(&Cylinder(100.0)),
            0.05,
        );
        let strains = tube.stretches(&at);
        let mean = strains.iter().map(|s| s[0]).sum::<f64>() / strains.len() as f64;
        println!("tube of {stretch} N/m: {:.4} against {exact:.4}", mean);
        assert!(
            (mean / exact - 1.0).abs() < 0.015,
            "{stretch} N/m: {mean} against {exact}"
        );
        let uneven = strains
            .iter()
            .map(|s| (s[0] - mean).abs())
            .fold(0.0, f64::max);
        assert!(uneven < 0.002, "{uneven}");
    }
}
