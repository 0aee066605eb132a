//! The drape test on screen: a disc of cloth over a smaller one.

use super::meshes::{cloth, rest, sheet};
use crate::support::survey::whole;
use blockwright::toile::{Hold, Support};
use std::f64::consts::{FRAC_PI_2, PI};

/// The radii of the disc below and of the specimen, in mm: 18 and 30 cm across, as a description of the
/// test on mapofsciences.com has them.
const DISC: f64 = 90.0;
const SPECIMEN: f64 = 150.0;

/// A round post that ends level at the height 0.
#[derive(Debug)]
struct Post;

impl Support for Post {
    fn distance(&self, at: [f64; 3]) -> Option<(f64, [f64; 3])> {
        let from_axis = at[0].hypot(at[2]).max(1e-9);
        let side = [at[0] / from_axis, 0.0, at[2] / from_axis];
        let (out, up) = (from_axis - DISC, at[1]);
        if out > 0.0 && up > 0.0 {
            let far = out.hypot(up).max(1e-9);
            return Some((far, [side[0] * out / far, up / far, side[2] * out / far]));
        }
        Some(if up > out {
            (up, [0.0, 1.0, 0.0])
        } else {
            (out, side)
        })
    }
}

/// What of the ring round the disc stays in the shadow, in percent, for half a specimen whose other half
/// is its mirror image.
fn drape_coefficient(weight: f64, bending_length: f64, edge: f64) -> f64 {
    let rings = ((SPECIMEN - DISC) / edge).round() as usize + 1;
    let around = (PI * 0.5 * (SPECIMEN + DISC) / edge).round() as usize;
    let step = (SPECIMEN - DISC) / (rings - 1) as f64;
    let mut points = Vec::new();
    for ring in 0..=rings {
        let out = DISC + step * (ring as f64 - 1.0);
        for k in 0..=around {
            let turn = PI * k as f64 / around as f64 - FRAC_PI_2;
            points.push([out * turn.cos(), out * turn.sin()]);
        }
    }
    let mut triangles = Vec::new();
    for ring in 0..rings {
        for k in 0..around {
            let a = ring * (around + 1) + k;
            let (b, c, d) = (a + 1, a + around + 1, a + around + 2);
            match (ring + k) % 2 {
                0 => triangles.extend([[a, c, d], [a, d, b]]),
                _ => triangles.extend([[a, c, b], [b, c, d]]),
            }
        }
    }
    let half = sheet(&points, &triangles, |p| {
        let (still, fold) = (p[0].hypot(p[1]) < DISC + 1e-6, p[0].abs() < 1e-6);
        match (still, fold) {
            (true, true) => Hold::StillOnFold,
            (true, false) => Hold::Still,
            (false, true) => Hold::Fold,
            (false, false) => Hold::Free,
        }
    });
    let mut places: Vec<_> = points
        .iter()
        .map(|p| {
            let beyond = (p[0].hypot(p[1]) - DISC).max(0.0);
            let wave = 0.02 * beyond * (6.0 * p[1].atan2(p[0])).cos();
            [p[0], 0.7 + wave, p[1]]
        })
        .collect();
    rest(
        &half,
        &mut places,
        cloth(weight, bending_length, 1000.0),
        Some(&Post),
        0.02,
    );
    let rim = &places[rings * (around + 1)..];
    let shadow: f64 = rim
        .iter()
        .zip(&rim[1..])
        .map(|(a, b)| 0.5 * (a[0] * b[2] - a[2] * b[0]))
        .sum();
    let area = |radius: f64| 0.5 * PI * radius * radius;
    100.0 * (shadow - area(DISC)) / (area(SPECIMEN) - area(DISC))
}

/// The coefficient is printed, not judged: no cloth could be found of which bending length and drape
/// coefficient are both published, and purely elastic cloth drapes too far (an open project with measured
/// bending had 24.8 % where 82.9 % was published, 57.3 % with hysteresis). A band of 20 points either way
/// is the least to reckon with. What must hold is its order: stiffer cloth stands out farther (Cusick, *The
/// dependence of fabric drape on bending and shear stiffness*, 1965, value from memory).
#[test]
fn stiffer_cloth_stands_out_farther() {
    let edge = if whole() { 8.0 } else { 15.0 };
    let all = [10.0, 15.0, 20.0, 30.0].map(|bending| drape_coefficient(168.0, bending, edge));
    for (bending, found) in [10, 15, 20, 30].iter().zip(all) {
        println!(
            "bending length {bending} mm: drape coefficient {found:.0} ± 20 %, triangles of {edge} mm"
        );
    }
    assert!(all.iter().zip(&all[1..]).all(|(a, b)| a < b), "{all:?}");
    assert!(
        all.iter().all(|found| (0.0..100.0).contains(found)),
        "{all:?}"
    );
}
