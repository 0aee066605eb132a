//! A skirt shaped as a cone, resting on a cone as smooth as glass.

use super::meshes::{cloth, load, rectangle, rest, round};
use blockwright::toile::{Hold, Sheet, Support};

/// A cone about the upright axis, its tip at the height 0, opening downwards.
#[derive(Debug)]
struct Cone {
    sine: f64,
    cosine: f64,
}

impl Support for Cone {
    fn distance(&self, at: [f64; 3]) -> Option<(f64, [f64; 3])> {
        let out = at[0].hypot(at[2]).max(1e-9);
        let away = [
            self.cosine * at[0] / out,
            self.sine,
            self.cosine * at[2] / out,
        ];
        Some((out * self.cosine + at[1] * self.sine, away))
    }
}

/// Nothing but its own hoops holds a skirt on a smooth cone. Along the slope, from s₁ to s₂ below the
/// tip, equilibrium of a shell of revolution reads d(s N)/ds - H = -w s cos α, and N is nothing at both
/// hems, so that the hoop forces H sum up to w cos α (s₂² - s₁²) / 2, whatever the skirt is made of
/// (Timoshenko and Woinowsky-Krieger, *Theory of plates and shells*, the membrane theory of cones).
#[test]
fn the_hoops_of_a_cone_skirt_carry_its_weight() {
    let half_angle = 30.0_f64.to_radians();
    let cone = Cone {
        sine: half_angle.sin(),
        cosine: half_angle.cos(),
    };
    let (from, to) = (200.0, 320.0);
    let turn = std::f64::consts::TAU * cone.sine;
    let wide = turn * 260.0;
    let (points, triangles) = rectangle(wide, to - from, 24.0);
    let (number, mut places) = round(&points, wide, |way, up| {
        let (s, turned) = (to - up, std::f64::consts::TAU * way);
        [
            s * cone.sine * turned.cos(),
            3.0 - s * cone.cosine,
            s * cone.sine * turned.sin(),
        ]
    });
    // Each triangle's drawing lies along the hoop at its middle.
    let sector = |p: [f64; 2], about: f64| {
        let (s, round) = (to - p[1], turn * (p[0] / wide - about));
        [s * round.sin(), -s * round.cos()]
    };
    let flat: Vec<[[f64; 2]; 3]> = triangles
        .iter()
        .map(|t| {
            let about = t.iter().map(|&i| points[i][0]).sum::<f64>() / (3.0 * wide);
            t.map(|i| sector(points[i], about))
        })
        .collect();
    let sewn: Vec<[usize; 3]> = triangles.iter().map(|t| t.map(|i| number[i])).collect();
    let skirt = Sheet::new(sewn, flat.clone(), vec![Hold::Free; places.len()]).expect("a skirt");
    let mut made = cloth(300.0, 15.0, 200.0);
    made.friction = 0.0;
    rest(&skirt, &mut places, made, Some(&cone), 1e-3);
    let hoops: f64 = skirt
        .stretches(&places)
        .iter()
        .zip(&flat)
        .map(|(stretch, [a, b, c])| {
            let area = 0.5 * ((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]));
            let middle = (a[0] + b[0] + c[0]) / 3.0;
            let down = -(a[1] + b[1] + c[1]) / 3.0;
            // Force by length, summed over the slope: the area by the length of its hoop.
            made.stretch[1] * 1e-3 * stretch[0] * area / (turn * middle.hypot(down))
        })
        .sum();
    let exact = load(&made) * cone.cosine * (to * to - from * from) / 2.0;
    println!("cone skirt: hoops of {hoops:.5} N against {exact:.5} N");
    assert!(
        (hoops / exact - 1.0).abs() < 0.03,
        "{hoops} against {exact}"
    );
}
