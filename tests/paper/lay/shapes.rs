//! Simple shapes whose shortest lay is known.

use super::check::sound;
use blockwright::geometry::Point;
use blockwright::lay::{Cloth, CutShape, LayError, LayPart, Pose, Search};

/// The lay of parts that fill a length of cloth without a rest.
fn reaches(width: f64, length: f64, parts: Vec<LayPart>, rounds: u32) {
    let area: f64 = parts.iter().map(LayPart::cloth_area).sum();
    assert!((area - width * length).abs() < 1e-6 * area, "they fill it");
    let cloth = Cloth::new(width).unwrap().with_gap(0.0).unwrap();
    let mut search = Search::new(&cloth, parts, 3).unwrap();
    for _ in 0..rounds {
        search.round();
    }
    assert!(
        (search.length() - length).abs() < 1e-6,
        "{}",
        search.length()
    );
    assert!(search.is_shortest());
    let lay = search.lay();
    sound(&lay);
    assert!((lay.density() - 1.0).abs() < 1e-9);
}

fn rectangles(sizes: &[(f64, f64)]) -> Vec<LayPart> {
    let part = |(k, size): (usize, &(f64, f64))| {
        let shape = CutShape::rectangle(size.0, size.1).unwrap();
        LayPart::new(format!("piece {k}"), shape)
    };
    sizes.iter().enumerate().map(part).collect()
}

#[test]
fn rectangles_that_fill_the_cloth_are_found() {
    // Along and across the cloth.
    reaches(
        1000.0,
        600.0,
        rectangles(&[
            (600.0, 400.0),
            (350.0, 250.0),
            (600.0, 350.0),
            (250.0, 250.0),
        ]),
        2000,
    );
    // A pinwheel, which no row of straight cuts takes apart.
    reaches(
        900.0,
        900.0,
        rectangles(&[
            (600.0, 300.0),
            (300.0, 600.0),
            (300.0, 300.0),
            (600.0, 300.0),
            (300.0, 600.0),
        ]),
        3000,
    );
    // Tenths of a millimetre.
    reaches(
        1000.1,
        500.5,
        rectangles(&[
            (500.5, 333.3),
            (200.2, 333.4),
            (300.3, 333.4),
            (500.5, 333.4),
        ]),
        2000,
    );
}

#[test]
fn slanting_pieces_meet_along_their_slant() {
    let both = [
        Pose::default(),
        Pose {
            turned: true,
            face_down: false,
        },
    ];
    let shape = |points: &[(f64, f64)]| {
        CutShape::new(points.iter().map(|p| Point::from(*p)).collect()).unwrap()
    };
    let triangle = shape(&[(0.0, 0.0), (400.0, 0.0), (0.0, 700.0)]);
    let part = |name: &str, shape: &CutShape| LayPart::new(name, shape.clone()).with_poses(&both);
    reaches(
        700.0,
        400.0,
        vec![part("a", &triangle), part("b", &triangle)],
        200,
    );
    // Flared panels, narrow at the top: two make a rectangle, turned against one another.
    let panel = shape(&[(0.0, 0.0), (600.0, 100.0), (600.0, 200.0), (0.0, 300.0)]);
    let pair = [part("c", &panel), part("d", &panel)];
    let cloth = Cloth::new(510.0).unwrap().with_gap(0.0).unwrap();
    let mut search = Search::new(&cloth, pair.to_vec(), 3).unwrap();
    for _ in 0..500 {
        search.round();
    }
    assert!(
        (search.length() - 600.0).abs() < 1e-6,
        "{}",
        search.length()
    );
    sound(&search.lay());
    // With a nap they lie one way and do not go side by side.
    let one_way = pair.map(|part| part.with_poses(&both[..1]));
    let mut search = Search::new(&cloth, one_way.to_vec(), 3).unwrap();
    for _ in 0..500 {
        search.round();
    }
    assert!(search.length() > 650.0, "{}", search.length());
    sound(&search.lay());
}

#[test]
fn a_small_piece_goes_into_a_hollow() {
    let hollow = [
        (0.0, 0.0),
        (500.0, 0.0),
        (500.0, 500.0),
        (400.0, 500.0),
        (400.0, 100.0),
        (100.0, 100.0),
        (100.0, 500.0),
        (0.0, 500.0),
    ];
    let hollow = CutShape::new(hollow.map(Point::from).to_vec()).unwrap();
    let small = CutShape::rectangle(289.0, 380.0).unwrap();
    let cloth = Cloth::new(510.0).unwrap();
    let parts = vec![LayPart::new("hollow", hollow), LayPart::new("small", small)];
    let lay = Search::new(&cloth, parts, 1).unwrap().lay();
    assert_eq!(lay.length(), 510.0);
    sound(&lay);
}

#[test]
fn a_piece_cut_once_comes_after_the_folded_cloth() {
    let rectangle = |along, across| CutShape::rectangle(along, across).unwrap();
    let mut back = LayPart::new("back", rectangle(600.0, 250.0)).on_fold();
    back.layers = 2;
    let mut pocket = LayPart::new("pocket", rectangle(150.0, 140.0));
    pocket.opened = true;
    let cloth = Cloth::new(800.0).unwrap().folded();
    let lay = Search::new(&cloth, vec![pocket, back], 1).unwrap().lay();
    sound(&lay);
    let message: Vec<_> = lay
        .stretches
        .iter()
        .map(|s| (s.folded, s.width, s.length, s.pieces[0].name.as_str()))
        .collect();
    assert_eq!(
        message,
        [
            (true, 400.0, 610.0, "back"),
            (false, 800.0, 160.0, "pocket")
        ]
    );
    assert_eq!(lay.length(), 770.0);
    let cut = 2.0 * 600.0 * 250.0 + 150.0 * 140.0;
    assert!((lay.density() - cut / (800.0 * 770.0)).abs() < 1e-9);
}

#[test]
fn what_is_no_outline_is_refused() {
    let of =
        |points: &[(f64, f64)]| CutShape::new(points.iter().map(|p| Point::from(*p)).collect());
    for points in [
        &[][..],
        &[(0.0, 0.0), (10.0, 0.0)],
        &[(0.0, 0.0), (10.0, 0.0), (20.0, 0.0)],
        &[(0.0, 0.0), (f64::NAN, 0.0), (20.0, 9.0)],
        &[(0.0, 0.0), (1e9, 0.0), (20.0, 9.0)],
        // A bow tie.
        &[(0.0, 0.0), (100.0, 100.0), (100.0, 0.0), (0.0, 150.0)],
    ] {
        let refused = of(points);
        assert!(
            matches!(refused, Err(LayError::Shape { .. })),
            "{refused:?}"
        );
    }
}
