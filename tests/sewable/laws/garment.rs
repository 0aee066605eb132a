//! A garment made by hand that meets every law, and the tools to spoil it.
//!
//! Bodice back and front with waist darts, a bust dart and an eased shoulder; a skirt joined
//! at the waist; a shift panel with a double-pointed dart, sewn to two panels one above the
//! other. Every number is chosen, none solved for, but where a mouth is folded.

use blockwright::geometry::{Curve, Point, Rigid, Vec2, along, perpendicular, root};
use blockwright::piece::*;

pub fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

pub fn line(from: Point, to: Point) -> Curve {
    Curve::line(from, to).unwrap()
}

fn bow(from: Point, leave: Vec2, to: Point, arrive: Vec2) -> Curve {
    let handle = from.distance(to) / 3.0;
    Curve::hermite(
        from,
        leave.normalize() * handle,
        to,
        arrive.normalize() * handle,
    )
    .unwrap()
}

fn edge(name: EdgeName, role: EdgeRole, curve: Curve) -> Edge {
    Edge::new(name, role, curve)
}

/// The mouth of a dart that folds flush: the seam line on from the second leg, mirrored in
/// that leg, cut at the centre line, and mirrored in the centre line.
fn mouth_toward_second(legs: [Point; 2], apex: Point, after: &Curve) -> Curve {
    let half = after.moved(&Rigid::mirror(apex, legs[1] - apex));
    let centre = legs[0].midpoint(legs[1]) - apex;
    let side = |s: f64| centre.cross(half.point_at(s).unwrap().0 - apex);
    let cut = root("cut", 0.0, half.length().min(60.0), side).unwrap();
    let half = half.part(0.0, cut).unwrap();
    let other = half.moved(&Rigid::mirror(apex, centre));
    other.then(&half.reversed()).unwrap()
}

/// A waist edge from the side (250, 400) to the centre (0, 400), square at both ends, with a
/// dart 24 mm wide round `x`, pressed to the centre.
fn waist(x: f64) -> (Curve, Dart) {
    let (apex, legs) = (at(x, 260.0), [at(x + 12.0, 402.0), at(x - 12.0, 402.0)]);
    let level = Vec2::new(-1.0, 0.0);
    let before = bow(
        at(250.0, 400.0),
        level,
        legs[0],
        perpendicular(legs[0] - apex),
    );
    let after = bow(
        legs[1],
        perpendicular(legs[1] - apex),
        at(0.0, 400.0),
        level,
    );
    let mouth = mouth_toward_second(legs, apex, &after);
    let dart = Dart {
        name: "waist".into(),
        edge: Some(EdgeName::WAIST),
        legs,
        apexes: Apexes::One(apex),
        pressed: Pressed::TowardSecondLeg,
    };
    (before.then(&mouth).unwrap().then(&after).unwrap(), dart)
}

fn piece(name: &str, cut: Cut, edges: Vec<Edge>, darts: Vec<Dart>, grain: [Point; 2]) -> Piece {
    Piece::new(PieceParts {
        name: name.into(),
        side: None,
        cut,
        outline: Outline::new(edges).unwrap(),
        darts,
        grain,
        notches: vec![],
        lines: vec![],
        drill_points: vec![],
        points: vec![],
    })
    .unwrap()
}

/// Neckline and shoulder: the depth of the neck and the length added to the shoulder differ.
fn upper(depth: f64, longer: f64) -> (Curve, Curve, Vec2) {
    let (neck, tip) = (at(70.0, -20.0), at(195.0, 25.0));
    let slope = (tip - neck).normalize();
    // Its handles end inside the corner of its tangents, so that it bends one way.
    let (centre, arrive) = (at(0.0, depth), -perpendicular(slope));
    let rise = (depth - neck.y) / -arrive.y;
    let run = neck.x - rise * arrive.x;
    let level = Vec2::new(0.6 * run, 0.0);
    let neckline = Curve::hermite(centre, level, neck, arrive * (0.6 * rise)).unwrap();
    let shoulder = line(neck, along(neck, tip, neck.distance(tip) + longer));
    (neckline, shoulder, perpendicular(slope))
}

fn bodice_back() -> Piece {
    let (neckline, shoulder, down) = upper(0.0, 6.0);
    let armscye = bow(shoulder.end(), down, at(250.0, 210.0), Vec2::new(1.0, 0.0));
    let (waist, dart) = waist(100.0);
    let edges = vec![
        edge(EdgeName::NECKLINE, EdgeRole::Seam, neckline),
        edge(EdgeName::SHOULDER, EdgeRole::Seam, shoulder),
        edge(EdgeName::ARMSCYE, EdgeRole::Seam, armscye),
        edge(
            EdgeName::SIDE_SEAM,
            EdgeRole::Seam,
            line(at(250.0, 210.0), at(250.0, 400.0)),
        ),
        edge(EdgeName::WAIST, EdgeRole::Seam, waist),
        edge(
            EdgeName::CENTRE_BACK,
            EdgeRole::Fold,
            line(at(0.0, 400.0), at(0.0, 0.0)),
        ),
    ];
    piece(
        "bodice_back",
        Cut::Fold,
        edges,
        vec![dart],
        [at(40.0, 350.0), at(40.0, 60.0)],
    )
}

fn bodice_front() -> Piece {
    let (neckline, shoulder, down) = upper(50.0, 0.0);
    // The bust dart, slanting: the side seam above it turned up about its apex.
    let (apex, lower) = (at(160.0, 260.0), at(250.0, 290.0));
    let turned = Rigid::turn_about(apex, -0.15);
    let (underarm, upper_leg) = (turned.apply(at(250.0, 210.0)), turned.apply(lower));
    let arrive = turned.apply_direction(Vec2::new(1.0, 0.0));
    let armscye = bow(shoulder.end(), down, underarm, arrive);
    let below = line(lower, at(250.0, 400.0));
    let mouth = mouth_toward_second([upper_leg, lower], apex, &below);
    let side = line(underarm, upper_leg)
        .then(&mouth)
        .unwrap()
        .then(&below)
        .unwrap();
    let bust = Dart {
        name: "bust".into(),
        edge: Some(EdgeName::SIDE_SEAM),
        legs: [upper_leg, lower],
        apexes: Apexes::One(apex),
        pressed: Pressed::TowardSecondLeg,
    };
    let (waist, dart) = waist(100.0);
    let edges = vec![
        edge(EdgeName::NECKLINE, EdgeRole::Seam, neckline),
        edge(EdgeName::SHOULDER, EdgeRole::Seam, shoulder),
        edge(EdgeName::ARMSCYE, EdgeRole::Seam, armscye),
        edge(EdgeName::SIDE_SEAM, EdgeRole::Seam, side),
        edge(EdgeName::WAIST, EdgeRole::Seam, waist),
        edge(
            EdgeName::CENTRE_FRONT,
            EdgeRole::Fold,
            line(at(0.0, 400.0), at(0.0, 50.0)),
        ),
    ];
    piece(
        "bodice_front",
        Cut::Fold,
        edges,
        vec![bust, dart],
        [at(40.0, 350.0), at(40.0, 90.0)],
    )
}

fn skirt_edges(waist: Curve, centre: EdgeName) -> Vec<Edge> {
    let side = waist.end();
    let corner = at(side.x, 600.0);
    vec![
        edge(EdgeName::WAIST, EdgeRole::Seam, waist),
        edge(EdgeName::SIDE_SEAM, EdgeRole::Seam, line(side, corner)),
        edge(EdgeName::HEM, EdgeRole::Hem, line(corner, at(0.0, 600.0))),
        edge(centre, EdgeRole::Fold, line(at(0.0, 600.0), at(0.0, 0.0))),
    ]
}

/// A skirt quarter whose waist is the bodice's, mirrored, with its dart round `x`.
pub fn skirt(name: &str, centre: EdgeName, x: f64) -> Piece {
    let flip = Rigid::mirror(at(0.0, 200.0), Vec2::new(1.0, 0.0));
    let (curve, mut dart) = waist(x);
    dart.legs = [flip.apply(dart.legs[1]), flip.apply(dart.legs[0])];
    dart.apexes = Apexes::One(flip.apply(dart.apex()));
    dart.pressed = Pressed::TowardFirstLeg;
    let edges = skirt_edges(curve.moved(&flip).reversed(), centre);
    let mut parts = piece(
        name,
        Cut::Fold,
        edges,
        vec![dart],
        [at(40.0, 550.0), at(40.0, 50.0)],
    )
    .into_parts();
    let curve = line(at(0.0, 210.0), at(250.0, 210.0));
    parts.lines.push(BalanceLine {
        name: "hip".into(),
        curve,
    });
    Piece::new(parts).unwrap()
}

/// A skirt quarter without a dart, as wide at the waist as the bodice is with its dart closed.
pub fn skirt_without_dart(name: &str, centre: EdgeName) -> Piece {
    let width = bodice_back().seam_length(&EdgeName::WAIST).unwrap();
    let edges = skirt_edges(line(at(0.0, 0.0), at(width, 0.0)), centre);
    let grain = [at(40.0, 550.0), at(40.0, 50.0)];
    let mut parts = piece(name, Cut::Fold, edges, vec![], grain).into_parts();
    let curve = line(at(0.0, 210.0), at(width, 210.0));
    parts.lines.push(BalanceLine {
        name: "hip".into(),
        curve,
    });
    Piece::new(parts).unwrap()
}

fn shift() -> Piece {
    let corners = [
        at(0.0, 0.0),
        at(250.0, 0.0),
        at(250.0, 1000.0),
        at(0.0, 1000.0),
    ];
    let edges = vec![
        edge(
            EdgeName::new("top"),
            EdgeRole::Opening,
            line(corners[0], corners[1]),
        ),
        edge(
            EdgeName::SIDE_SEAM,
            EdgeRole::Seam,
            line(corners[1], corners[2]),
        ),
        edge(EdgeName::HEM, EdgeRole::Hem, line(corners[2], corners[3])),
        edge(
            EdgeName::CENTRE_BACK,
            EdgeRole::Fold,
            line(corners[3], corners[0]),
        ),
    ];
    let dart = Dart {
        name: "waist".into(),
        edge: None,
        legs: [at(88.0, 400.0), at(112.0, 400.0)],
        apexes: Apexes::Two(at(100.0, 250.0), at(100.0, 520.0)),
        pressed: Pressed::TowardFirstLeg,
    };
    let grain = [at(40.0, 950.0), at(40.0, 50.0)];
    let mut parts = piece("shift", Cut::Fold, edges, vec![dart], grain).into_parts();
    let curve = line(at(0.0, 400.0), at(250.0, 400.0));
    parts.lines.push(BalanceLine {
        name: "waist".into(),
        curve,
    });
    Piece::new(parts).unwrap()
}

fn panel(name: &str, height: f64, [top, bottom]: [(EdgeName, EdgeRole); 2]) -> Piece {
    let corners = [
        at(0.0, 0.0),
        at(80.0, 0.0),
        at(80.0, height),
        at(0.0, height),
    ];
    let edges = vec![
        edge(top.0, top.1, line(corners[0], corners[1])),
        edge(
            EdgeName::new("right"),
            EdgeRole::Seam,
            line(corners[1], corners[2]),
        ),
        edge(bottom.0, bottom.1, line(corners[2], corners[3])),
        edge(
            EdgeName::new("left"),
            EdgeRole::Seam,
            line(corners[3], corners[0]),
        ),
    ];
    piece(
        name,
        Cut::Pair,
        edges,
        vec![],
        [at(30.0, height - 20.0), at(30.0, 20.0)],
    )
}

/// Adds a notch where the sewn edge has it.
fn notched(piece: Piece, name: &str, edge: EdgeName, sewn: f64) -> Piece {
    let at = piece.open_position(&edge, sewn);
    let mut parts = piece.into_parts();
    parts.notches.push(Notch {
        name: name.into(),
        edge,
        at,
        kind: NotchKind::Single,
    });
    Piece::new(parts).unwrap()
}

fn opposed(name: &str, a: &str, b: &str, [of_a, of_b]: [EdgeName; 2]) -> Seam {
    Seam::plain(name, EdgeRef::new(a, of_a), EdgeRef::against(b, of_b))
}

/// The garment's parts: they meet every law.
pub fn garment() -> PatternParts {
    let side = EdgeName::SIDE_SEAM;
    let both = |name: &str, a: &str, b: &str, edge: EdgeName| {
        Seam::plain(name, EdgeRef::new(a, edge.clone()), EdgeRef::new(b, edge))
    };
    let joint = EdgeName::new("joint");
    let left = EdgeName::new("left");
    let waists = [EdgeName::WAIST, EdgeName::WAIST];
    let back = notched(bodice_back(), "side", side.clone(), 100.0);
    let front = notched(bodice_front(), "side", side.clone(), 100.0);
    let run = |piece: &str, along: RunAlong| GirthRun {
        piece: piece.into(),
        along,
    };
    let hips = ["skirt_back", "skirt_front"].map(|p| run(p, RunAlong::Line("hip".into())));
    let girth = |name: &str, body: f64, ease: f64, runs: Vec<GirthRun>| Girth {
        name: name.into(),
        side: None,
        body,
        ease,
        limb: false,
        runs,
    };
    PatternParts {
        block: "test".into(),
        pieces: vec![
            notched(back, "shoulder", EdgeName::SHOULDER, 63.0),
            notched(front, "shoulder", EdgeName::SHOULDER, 60.0),
            skirt("skirt_back", EdgeName::CENTRE_BACK, 100.0),
            skirt("skirt_front", EdgeName::CENTRE_FRONT, 100.0),
            notched(shift(), "joint", side.clone(), 400.0),
            panel(
                "upper",
                400.0,
                [
                    (EdgeName::new("top"), EdgeRole::Opening),
                    (joint.clone(), EdgeRole::Seam),
                ],
            ),
            panel(
                "lower",
                600.0,
                [
                    (joint.clone(), EdgeRole::Seam),
                    (EdgeName::HEM, EdgeRole::Hem),
                ],
            ),
        ],
        seams: vec![
            Seam {
                ease: 6.0,
                ease_on: Some(EaseOn::A),
                ..both(
                    "shoulder",
                    "bodice_back",
                    "bodice_front",
                    EdgeName::SHOULDER,
                )
            },
            both("bodice_side", "bodice_back", "bodice_front", side.clone()),
            both("skirt_side", "skirt_back", "skirt_front", side.clone()),
            opposed("back_waist", "bodice_back", "skirt_back", waists.clone()),
            opposed("front_waist", "bodice_front", "skirt_front", waists),
            Seam {
                b: vec![
                    EdgeRef::against("upper", left.clone()),
                    EdgeRef::against("lower", left.clone()),
                ],
                ..opposed("panel", "shift", "upper", [side, left])
            },
            opposed("joint", "upper", "lower", [joint.clone(), joint]),
        ],
        girths: vec![
            girth("hip", 960.0, 40.0, hips.to_vec()),
            girth(
                "waist",
                432.0,
                20.0,
                vec![run("shift", RunAlong::Line("waist".into()))],
            ),
        ],
        warnings: vec![],
    }
}
