//! Corners, worked by hand.

use blockwright::allowance::{Allowances, cut_line};
use blockwright::geometry::{Curve, Point, Rigid, signed_area};
use blockwright::piece::{Cut, Edge, EdgeName, EdgeRole, Outline, Piece, PieceParts};

/// Name, role and points of an edge.
type Side<'a> = (&'static str, EdgeRole, &'a [(f64, f64)]);

fn piece(edges: &[Side<'_>]) -> Piece {
    let made = edges.iter().map(|(name, role, points)| {
        let points: Vec<Point> = points.iter().copied().map(Point::from).collect();
        Edge::new(
            EdgeName::new(*name),
            *role,
            Curve::polyline(&points).unwrap(),
        )
    });
    let outline = Outline::new(made.collect()).unwrap();
    Piece::new(PieceParts {
        name: "trial".into(),
        side: None,
        cut: Cut::Single,
        outline,
        darts: vec![],
        grain: [Point::new(50.0, 90.0), Point::new(50.0, 10.0)],
        notches: vec![],
        lines: vec![],
        drill_points: vec![],
        points: vec![],
    })
    .unwrap()
}

fn cut(piece: &Piece, widths: &Allowances) -> Curve {
    cut_line(piece, widths).unwrap()
}

/// The cut line has a corner there.
fn has(line: &Curve, x: f64, y: f64) -> bool {
    let p = Point::new(x, y);
    line.segments()
        .iter()
        .any(|s| kurbo::ParamCurve::start(s).distance(p) < 0.02)
}

use EdgeRole::{Fold, Hem, Seam};

#[test]
fn a_rectangle_on_the_fold() {
    let p = piece(&[
        ("waist", Seam, &[(0.0, 0.0), (200.0, 0.0)]),
        ("side_seam", Seam, &[(200.0, 0.0), (200.0, 500.0)]),
        ("hem", Hem, &[(200.0, 500.0), (0.0, 500.0)]),
        ("centre_back", Fold, &[(0.0, 500.0), (0.0, 0.0)]),
    ]);
    let widths = Allowances::all_round(15.0)
        .unwrap()
        .with("hem", 40.0)
        .unwrap();
    let line = cut(&p, &widths);
    for (x, y) in [(0.0, -15.0), (215.0, -15.0), (215.0, 540.0), (0.0, 540.0)] {
        assert!(has(&line, x, y), "({x}, {y}) in {line:?}");
    }
    assert!((signed_area(line.segments()) - 215.0 * 555.0).abs() < 0.01);
}

#[test]
fn a_flared_side_is_mirrored_in_the_hem() {
    // The side runs outward by 1 in 5.
    let p = piece(&[
        ("waist", Seam, &[(0.0, 0.0), (200.0, 0.0)]),
        ("side_seam", Seam, &[(200.0, 0.0), (300.0, 500.0)]),
        ("hem", Hem, &[(300.0, 500.0), (0.0, 500.0)]),
        ("centre_back", Fold, &[(0.0, 500.0), (0.0, 0.0)]),
    ]);
    let widths = Allowances::all_round(15.0)
        .unwrap()
        .with("hem", 40.0)
        .unwrap();
    let line = cut(&p, &widths);
    let out = 15.0 * (1.0 + 0.04_f64).sqrt();
    assert!(has(&line, 300.0 + out, 500.0), "turns at the hem line");
    assert!(has(&line, 300.0 + out - 8.0, 540.0), "runs back by 1 in 5");
    // Turned up, the corner of the hem lies on the cut line of the side.
    let folded = Rigid::mirror(Point::new(0.0, 500.0), kurbo::Vec2::new(1.0, 0.0))
        .apply(Point::new(300.0 + out - 8.0, 540.0));
    assert!(line.nearest(folded).0 < 0.01);
}

#[test]
fn a_shoulder_is_squared_where_the_armscye_crosses_it() {
    // The armscye meets the shoulder at 60° inside the piece.
    let away = 200.0 / 60f64.to_radians().tan();
    let p = piece(&[
        ("shoulder", Seam, &[(0.0, 0.0), (300.0, 0.0)]),
        ("armscye", Seam, &[(300.0, 0.0), (300.0 - away, 200.0)]),
        ("waist", Seam, &[(300.0 - away, 200.0), (0.0, 200.0)]),
        ("centre_back", Fold, &[(0.0, 200.0), (0.0, 0.0)]),
    ]);
    let widths = Allowances::all_round(15.0)
        .unwrap()
        .with("armscye", 10.0)
        .unwrap();
    let line = cut(&p, &widths);
    let end = 300.0 + 10.0 / 60f64.to_radians().sin();
    assert!(has(&line, end, 0.0) && has(&line, end, -15.0), "{line:?}");
}

#[test]
fn both_halves_of_a_seam_have_ends_of_one_shape() {
    // Front and back meet the neckline at different angles; laid on each other along the
    // shoulder, their ends run in one line square to it.
    for degrees in [60.0_f64, 80.0, 100.0, 130.0] {
        let away = -200.0 / degrees.to_radians().tan();
        let p = piece(&[
            ("shoulder", Seam, &[(0.0, 0.0), (300.0, 0.0)]),
            ("neckline", Seam, &[(300.0, 0.0), (300.0 + away, 200.0)]),
            ("waist", Seam, &[(300.0 + away, 200.0), (0.0, 200.0)]),
            ("centre_back", Fold, &[(0.0, 200.0), (0.0, 0.0)]),
        ]);
        let line = cut(&p, &Allowances::all_round(15.0).unwrap());
        let end = 300.0 + 15.0 / degrees.to_radians().sin();
        assert!(
            has(&line, end, -15.0) && has(&line, end, 0.0),
            "{degrees}: {line:?}"
        );
    }
}

#[test]
fn an_acute_point_is_cut_blunt() {
    let p = piece(&[
        ("shoulder", Seam, &[(0.0, 0.0), (300.0, 0.0)]),
        ("side_seam", Seam, &[(300.0, 0.0), (0.0, 60.0)]),
        ("centre_back", Seam, &[(0.0, 60.0), (0.0, 0.0)]),
    ]);
    let line = cut(&p, &Allowances::all_round(15.0).unwrap());
    let tip = line.bounds().x1;
    assert!((315.0..326.0).contains(&tip), "{tip}");
    assert!(line.nearest(Point::new(300.0, 0.0)).0 > 14.9);
}

#[test]
fn an_edge_without_allowance_is_cut_on_the_stitching_line() {
    let p = piece(&[
        ("waist", Seam, &[(0.0, 0.0), (200.0, 0.0)]),
        ("side_seam", Seam, &[(200.0, 0.0), (200.0, 500.0)]),
        ("hem", Hem, &[(200.0, 500.0), (0.0, 500.0)]),
        ("centre_back", Seam, &[(0.0, 500.0), (0.0, 0.0)]),
    ]);
    let none = cut(&p, &Allowances::all_round(0.0).unwrap());
    assert!((signed_area(none.segments()) - 100_000.0).abs() < 1e-6);
    let widths = Allowances::all_round(15.0)
        .unwrap()
        .with("hem", 0.0)
        .unwrap();
    let line = cut(&p, &widths);
    assert!((line.bounds().y1 - 500.0).abs() < 1e-9);
}

#[test]
fn a_notch_into_a_piece_is_trimmed() {
    // A step inward narrower than two allowances: they run together over it.
    let p = piece(&[
        (
            "waist",
            Seam,
            &[
                (0.0, 0.0),
                (90.0, 0.0),
                (90.0, 40.0),
                (110.0, 40.0),
                (110.0, 0.0),
                (200.0, 0.0),
            ],
        ),
        ("side_seam", Seam, &[(200.0, 0.0), (200.0, 500.0)]),
        ("hem", Hem, &[(200.0, 500.0), (0.0, 500.0)]),
        ("centre_back", Fold, &[(0.0, 500.0), (0.0, 0.0)]),
    ]);
    let line = cut(&p, &Allowances::all_round(15.0).unwrap());
    let area = signed_area(line.segments());
    assert!((area - 215.0 * 530.0).abs() < 1.0, "{area}");
}
