//! Sheets in triangles for the tests: uneven ones, so that no lattice flatters a result.

use blockwright::toile::{Fabric, Hold, Loads, Patience, Rest, Sheet, Support, settle};
use std::ops::ControlFlow;

pub const GRAVITY: f64 = 9.80665;

/// A flat rectangle in uneven triangles about so large: its points, and its triangles anticlockwise.
pub fn rectangle(wide: f64, high: f64, edge: f64) -> (Vec<[f64; 2]>, Vec<[usize; 3]>) {
    let rows = (high / (edge * 0.75_f64.sqrt())).round().max(1.0) as usize;
    let columns = (wide / edge).round().max(1.0) as usize;
    let mut seed = 12_345_u64;
    let mut uneven = || {
        seed = seed
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        ((seed >> 33) as f64 / (1u64 << 31) as f64 - 0.5) * 0.3 * edge
    };
    let mut points = Vec::new();
    let mut lines: Vec<Vec<usize>> = Vec::new();
    for row in 0..=rows {
        let y = high * row as f64 / rows as f64;
        let step = wide / columns as f64;
        let mut xs: Vec<f64> = if row % 2 == 0 {
            (0..=columns).map(|c| c as f64 * step).collect()
        } else {
            (0..columns).map(|c| (c as f64 + 0.5) * step).collect()
        };
        if row % 2 == 1 {
            xs.insert(0, 0.0);
            xs.push(wide);
        }
        let last = xs.len() - 1;
        let line = xs.into_iter().enumerate().map(|(place, x)| {
            let inside = place > 0 && place < last;
            let x = if inside { x + uneven() } else { x };
            let y = if row > 0 && row < rows {
                y + uneven()
            } else {
                y
            };
            points.push([
                x,
                if inside {
                    y
                } else {
                    high * row as f64 / rows as f64
                },
            ]);
            points.len() - 1
        });
        lines.push(line.collect());
    }
    let mut triangles = Vec::new();
    for (low, up) in lines.iter().zip(lines.iter().skip(1)) {
        let (mut i, mut k) = (0, 0);
        while i + 1 < low.len() || k + 1 < up.len() {
            let lower = k + 1 == up.len()
                || (i + 1 < low.len()
                    && points[low[i + 1]][0] - points[up[k]][0]
                        < points[up[k + 1]][0] - points[low[i]][0]);
            if lower {
                triangles.push([low[i], low[i + 1], up[k]]);
                i += 1;
            } else {
                triangles.push([low[i], up[k + 1], up[k]]);
                k += 1;
            }
        }
    }
    (points, triangles)
}

/// A rectangle so wide whose upright edges are sewn to each other: the number of each of its points in
/// the tube, and where the tube's points are, from what part of the way round and which height.
pub fn round(
    points: &[[f64; 2]],
    wide: f64,
    place: impl Fn(f64, f64) -> [f64; 3],
) -> (Vec<usize>, Vec<[f64; 3]>) {
    let (mut number, mut places) = (Vec::new(), Vec::new());
    for (index, p) in points.iter().enumerate() {
        if p[0] > wide - 1e-9 {
            let first =
                (0..index).find(|&j| points[j][0] < 1e-9 && (points[j][1] - p[1]).abs() < 1e-9);
            number.push(number[first.expect("the same row")]);
        } else {
            number.push(places.len());
            places.push(place(p[0] / wide, p[1]));
        }
    }
    (number, places)
}

/// The sheet of flat points and triangles.
pub fn sheet(
    points: &[[f64; 2]],
    triangles: &[[usize; 3]],
    hold: impl Fn([f64; 2]) -> Hold,
) -> Sheet {
    let flat = triangles.iter().map(|t| t.map(|i| points[i])).collect();
    let holds = points.iter().map(|p| hold(*p)).collect();
    Sheet::new(triangles.to_vec(), flat, holds).expect("a sheet")
}

/// A cloth of a weight and a bending length, so stiff against stretch.
pub fn cloth(weight: f64, bending_length: f64, stretch: f64) -> Fabric {
    let mut cloth = Fabric::PLAIN_WOOL;
    (cloth.weight, cloth.bending_length) = (weight, [bending_length; 2]);
    (cloth.stretch, cloth.shear) = ([stretch; 2], 0.1 * stretch);
    cloth
}

/// Weight of a mm² of such cloth, in N.
pub fn load(cloth: &Fabric) -> f64 {
    cloth.weight * GRAVITY * 1e-9
}

/// Brings a sheet to rest until so little is out of balance.
pub fn rest(
    sheet: &Sheet,
    places: &mut Vec<[f64; 3]>,
    cloth: Fabric,
    surface: Option<&dyn Support>,
    residual: f64,
) -> Rest {
    let loads = Loads {
        cloth,
        surface,
        pins: vec![],
    };
    let patience = Patience {
        residual,
        rounds: 400,
        stride: 10.0,
    };
    let rest = settle(sheet, places, &loads, &patience, &mut |_| {
        ControlFlow::Continue(())
    });
    let rest = rest.expect("cloth that can be settled");
    assert!(rest.residual < residual, "it came to rest: {rest:?}");
    rest
}
