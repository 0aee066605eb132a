//! A back made by hand: every number is chosen.

use blockwright::geometry::{Curve, Point, Vec2, unit};
use blockwright::piece::*;

/// Distance from the neck side point to the shoulder point of the worked example.
pub const REACH: f64 = 145.0;
/// Its slope, in degrees.
pub const SLOPE: f64 = 18.99;
/// Level of the waist.
pub const WAIST: f64 = 400.0;

fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

fn bow(from: Point, leave: Vec2, to: Point, arrive: Vec2) -> Curve {
    let handle = from.distance(to) / 3.0;
    Curve::hermite(from, leave * handle, to, arrive * handle).expect("made by hand")
}

/// A back in one piece with a waist dart and no shoulder dart, its shoulder of that slope in
/// degrees; `hip_ease` is the ease of the whole hip.
pub fn back(slope: f64, hip_ease: f64) -> Pattern {
    let slope = slope.to_radians();
    let (nape, side_neck) = (at(0.0, 0.0), at(72.0, -23.0));
    let tip = side_neck + unit(slope) * REACH;
    let square = unit(slope + std::f64::consts::FRAC_PI_2);
    let level = Vec2::new(1.0, 0.0);
    let down = Vec2::new(0.0, 1.0);
    let (middle, underarm) = (at(tip.x - 14.0, 110.0), at(tip.x + 26.0, 210.0));
    let (waist, hip, hem) = (at(225.0, WAIST), at(250.0, 610.0), at(250.0, 1000.0));
    let armscye = bow(tip, square, middle, down);
    let upper = armscye.length();
    let armscye = armscye
        .then(&bow(middle, down, underarm, level))
        .expect("made by hand");
    let side = bow(underarm, down, waist, down)
        .then(&bow(waist, down, hip, down))
        .expect("made by hand")
        .then(&Curve::line(hip, hem).expect("made by hand"))
        .expect("made by hand");
    let edge = |name, role, curve| Edge::new(name, role, curve);
    let outline = Outline::new(vec![
        edge(
            EdgeName::NECKLINE,
            EdgeRole::Seam,
            bow(nape, level, side_neck, -square),
        ),
        edge(
            EdgeName::SHOULDER,
            EdgeRole::Seam,
            Curve::line(side_neck, tip).expect("made by hand"),
        ),
        edge(EdgeName::ARMSCYE, EdgeRole::Seam, armscye),
        edge(EdgeName::SIDE_SEAM, EdgeRole::Seam, side),
        edge(
            EdgeName::HEM,
            EdgeRole::Hem,
            Curve::line(hem, at(0.0, 1000.0)).expect("made by hand"),
        ),
        edge(
            EdgeName::CENTRE_BACK,
            EdgeRole::Fold,
            Curve::line(at(0.0, 1000.0), nape).expect("made by hand"),
        ),
    ])
    .expect("made by hand");
    let across = |name: &str, to: Point| BalanceLine {
        name: name.into(),
        curve: Curve::line(at(0.0, to.y), to).expect("made by hand"),
    };
    let piece = Piece::new(PieceParts {
        name: "back".into(),
        side: None,
        cut: Cut::Fold,
        outline,
        darts: vec![Dart {
            name: "waist".into(),
            edge: None,
            legs: [at(88.0, WAIST), at(112.0, WAIST)],
            apexes: Apexes::Two(at(100.0, 230.0), at(100.0, 540.0)),
            pressed: Pressed::TowardFirstLeg,
        }],
        grain: [at(60.0, 960.0), at(60.0, 60.0)],
        notches: vec![Notch {
            name: "back armscye".into(),
            edge: EdgeName::ARMSCYE,
            at: upper,
            kind: NotchKind::Double,
        }],
        lines: vec![
            across("underarm", underarm),
            across("waist", waist),
            across("hip", hip),
        ],
        drill_points: vec![],
        points: vec![],
    })
    .expect("made by hand");
    let girth = |name: &str, line: &str, finished: f64, ease: f64| Girth {
        name: name.into(),
        side: None,
        body: finished - ease,
        ease,
        limb: false,
        runs: vec![GirthRun {
            piece: "back".into(),
            along: RunAlong::Line(line.into()),
        }],
    };
    Pattern::new(PatternParts {
        block: "dress".into(),
        pieces: vec![piece],
        seams: vec![],
        girths: vec![
            girth("bust", "underarm", 2.0 * underarm.x, 60.0),
            girth("waist", "waist", 2.0 * (waist.x - 24.0), 60.0),
            girth("hip", "hip", 2.0 * hip.x, hip_ease),
        ],
        warnings: vec![],
    })
    .expect("made by hand")
}
