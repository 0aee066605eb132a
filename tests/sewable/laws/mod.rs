//! Every law holds for a sound garment and is seen to be broken in spoiled ones.
#![allow(clippy::unwrap_used, clippy::panic)]

mod cases;
mod doctor;
mod garment;

use blockwright::geometry::{Curve, Point, Vec2};
use blockwright::invariants::{
    LAWS, MouthFault, Tolerances, Violation, check_all, first, is_valid,
};
use blockwright::piece::*;
use cases::{doctored, sound};
use proptest::prelude::*;

fn pattern(parts: PatternParts) -> Pattern {
    Pattern::new(parts).unwrap()
}

#[test]
fn sound_garments_meet_every_law() {
    for (what, parts) in sound() {
        let pattern = pattern(parts);
        for tolerances in [Tolerances::drafted(), Tolerances::altered()] {
            let found = check_all(&pattern, &tolerances);
            assert!(found.is_empty(), "{what}: {found:#?}");
            assert!(is_valid(&pattern, &tolerances));
        }
    }
}

#[test]
fn every_law_sees_the_garments_spoiled_against_it() {
    for law in LAWS {
        let cases = doctored(law.name);
        assert!(
            !cases.is_empty(),
            "{} has no spoiled garment to prove it by",
            law.name
        );
        for (what, spoil) in cases {
            let mut parts = garment::garment();
            spoil(&mut parts);
            let pattern = pattern(parts);
            for tolerances in [Tolerances::drafted(), Tolerances::altered()] {
                let found = check_all(&pattern, &tolerances);
                let of_law: Vec<_> = found.iter().filter(|v| v.law() == law.name).collect();
                assert!(
                    !of_law.is_empty(),
                    "{}: {what} passed: {found:#?}",
                    law.name
                );
                // As text: a number that is none does not equal itself.
                let text = |v: &Violation| v.to_string();
                assert_eq!(
                    first(&pattern, &tolerances).as_ref().map(text),
                    found.first().map(text)
                );
                assert!(!is_valid(&pattern, &tolerances));
                for violation in of_law {
                    println!("{} / {what}: {violation}", law.name);
                }
            }
        }
    }
}

/// What the laws never see, since no piece is made of it: a mark at a place that is no number, or
/// farther out than any cloth.
#[test]
fn a_mark_that_is_nowhere_makes_no_piece() {
    let whole = garment::garment();
    let bad = [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e6];
    for piece in &whole.pieces {
        let sound = || piece.clone().into_parts();
        assert!(Piece::new(sound()).is_ok());
        for wrong in bad {
            let mut spoiled: Vec<(&str, PieceParts)> = Vec::new();
            let mut spoil = |what, change: &dyn Fn(&mut PieceParts)| {
                let mut parts = sound();
                change(&mut parts);
                spoiled.push((what, parts));
            };
            spoil("grain", &|p| p.grain[0].x = wrong);
            spoil("grain", &|p| p.grain[1].y = wrong);
            spoil("drill point", &|p| {
                p.drill_points.push(DrillPoint {
                    name: "one".into(),
                    at: Point::new(20.0, wrong),
                })
            });
            spoil("point", &|p| {
                p.points.push(NamedPoint {
                    name: "one".into(),
                    at: Point::new(wrong, 20.0),
                })
            });
            if !piece.darts().is_empty() {
                spoil("leg", &|p| p.darts[0].legs[0].x = wrong);
                spoil("apex", &|p| {
                    p.darts[0].apexes = Apexes::One(Point::new(wrong, 260.0))
                });
            }
            if !piece.notches().is_empty() {
                spoil("notch", &|p| p.notches[0].at = wrong);
            }
            for (what, parts) in spoiled {
                let refused = Piece::new(parts).expect_err(what);
                assert!(
                    matches!(refused, PieceError::Misplaced { .. }),
                    "{} {what} {wrong}: {refused}",
                    piece.name()
                );
                assert!(!refused.to_string().contains("NaN"), "{refused}");
            }
        }
    }
}

#[test]
fn laws_have_names_of_their_own() {
    for (index, law) in LAWS.iter().enumerate() {
        assert!(
            LAWS[..index].iter().all(|other| other.name != law.name),
            "{}",
            law.name
        );
        assert!(!law.says.is_empty());
    }
}

#[test]
fn every_violation_is_reported() {
    let mut parts = garment::garment();
    for seam in &mut parts.seams {
        seam.ease = f64::NAN;
    }
    for girth in &mut parts.girths {
        girth.body += 50.0;
    }
    let (seams, girths) = (parts.seams.len(), parts.girths.len());
    let found = check_all(&pattern(parts), &Tolerances::altered());
    let count = |name| found.iter().filter(|v| v.law() == name).count();
    assert_eq!(count("seams_match"), seams, "{found:#?}");
    assert_eq!(count("girths_as_asked"), girths, "{found:#?}");
}

/// A dart square across a straight seam, its mouth two straight lines to a tip `reach` from
/// the apex: paper folded in half and cut straight across opens to such a roof.
fn roofed(reach: f64, pressed: Pressed) -> Pattern {
    let (half, leg) = (0.1f64, 150.0);
    let (apex, side) = (Point::new(200.0, 200.0), Vec2::new(half.sin(), -half.cos()));
    let (left, right) = (apex + Vec2::new(-side.x, side.y) * leg, apex + side * leg);
    let out = Vec2::new(half.cos(), half.sin()) * 120.0;
    let top = [
        left + Vec2::new(-out.x, out.y),
        left,
        apex + Vec2::new(0.0, -reach),
        right,
        right + out,
    ];
    let edge = |name: &str, points: &[Point]| {
        let curve = Curve::polyline(points).unwrap();
        Edge::new(EdgeName::new(name.to_owned()), EdgeRole::Seam, curve)
    };
    let (low_right, low_left) = (Point::new(320.0, 500.0), Point::new(80.0, 500.0));
    let rest = [top[4], low_right, low_left, top[0]];
    let dart = Dart {
        name: "roof".into(),
        edge: Some(EdgeName::new("top")),
        legs: [left, right],
        apexes: Apexes::One(apex),
        pressed,
    };
    let piece = PieceParts {
        name: "panel".into(),
        side: None,
        cut: Cut::Single,
        outline: Outline::new(vec![
            edge("top", &top),
            edge("right", &rest[..2]),
            edge("bottom", &rest[1..3]),
            edge("left", &rest[2..]),
        ])
        .unwrap(),
        darts: vec![dart],
        grain: [Point::new(100.0, 480.0), Point::new(100.0, 100.0)],
        notches: vec![],
        lines: vec![],
        drill_points: vec![],
        points: vec![],
    };
    pattern(PatternParts {
        block: "panel".into(),
        pieces: vec![Piece::new(piece).unwrap()],
        seams: vec![],
        girths: vec![],
        warnings: vec![],
    })
}

#[test]
fn the_roof_of_a_dart_cut_folded_lies_flush_whichever_way_it_is_pressed() {
    for pressed in [Pressed::TowardFirstLeg, Pressed::TowardSecondLeg] {
        let cut_folded = 150.0 / 0.1f64.cos();
        let drafted = Tolerances::drafted();
        assert_eq!(check_all(&roofed(cut_folded, pressed), &drafted), vec![]);
        for wrong in [-2.0, -0.5, 0.5, 2.0] {
            let found = check_all(&roofed(cut_folded + wrong, pressed), &drafted);
            let Some(Violation::MouthsFlush(MouthFault::NotFlush { off, .. })) = found.first()
            else {
                panic!("{wrong}: {found:?}");
            };
            // The tip comes to lie by about as much off the seam line as it was drawn wrong.
            assert!((off / wrong.abs() - 1.0).abs() < 0.02, "{wrong}: {off}");
            assert_eq!(found.len(), 1);
        }
    }
}

fn anything() -> impl Strategy<Value = f64> {
    prop_oneof![
        8 => -300.0..300.0f64,
        1 => prop::sample::select(vec![0.0, 1e-9, 1e6, -1e30, f64::MAX, f64::MIN]),
        1 => prop::sample::select(vec![f64::NAN, f64::INFINITY, f64::NEG_INFINITY]),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 128, failure_persistence: None, rng_seed: proptest::test_runner::RngSeed::Fixed(8559), ..ProptestConfig::default() })]

    #[test]
    fn no_spoiling_makes_a_law_panic(
        which in 0usize..7, corner in 0usize..12, by in (anything(), anything()),
        scale in prop_oneof![Just(1.0), -2.0..3.0f64, anything()],
        apex in prop::option::of((anything(), anything())), ease in anything(), body in anything(),
    ) {
        let mut parts = garment::garment();
        let mut spoiled = parts.pieces[which].clone().into_parts();
        let segments = spoiled.outline.segments();
        let from = kurbo::ParamCurve::start(&segments[corner % segments.len()]);
        let moved = Point::new(from.x + by.0, from.y + by.1);
        let warped = doctor::warp(&mut spoiled, |q| {
            if q.distance(from) < 1e-3 { moved } else { Point::new(q.x * scale, q.y) }
        });
        if let (Some((x, y)), Some(dart)) = (apex, spoiled.darts.first_mut()) {
            dart.apexes = match dart.apexes {
                Apexes::One(_) => Apexes::One(Point::new(x, y)),
                Apexes::Two(_, lower) => Apexes::Two(Point::new(x, y), lower),
            };
            spoiled.grain[0] = Point::new(y, x);
        }
        if warped.is_ok() && let Ok(piece) = Piece::new(spoiled) {
            parts.pieces[which] = piece;
        }
        parts.seams[which].ease = ease;
        parts.girths[0].body = body;
        let pattern = pattern(parts);
        for violation in check_all(&pattern, &Tolerances::altered()) {
            prop_assert!(!violation.to_string().is_empty());
        }
    }
}
