//! The worked example: L = 145 mm, s = 18.99°, a = 25 mm.

use super::back::{REACH, SLOPE, WAIST, back};
use crate::support::measures::reading;
use blockwright::alterations::{
    Alteration, AlterationError, Altered, BackLengthReduction, Hinge, Reason, alter,
};
use blockwright::geometry::Point;
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{Apexes, EdgeName, Pattern, shoulder_slope};

fn by(amount: f64, hinge: Hinge) -> BackLengthReduction {
    BackLengthReduction {
        amount,
        hinge,
        hips_checked: true,
    }
}

fn altered(slope: f64, step: BackLengthReduction) -> Altered {
    step.alter(&back(slope, 60.0))
        .expect("borne by the back made by hand")
}

fn slope(pattern: &Pattern) -> f64 {
    shoulder_slope(pattern.piece("back").expect("there")).expect("there")
}

/// Neck side point and shoulder point.
fn ends(pattern: &Pattern) -> (Point, Point) {
    let shoulder = pattern
        .piece("back")
        .expect("there")
        .outline()
        .edge(&EdgeName::SHOULDER)
        .expect("there");
    (shoulder.curve().start(), shoulder.curve().end())
}

#[test]
fn the_back_made_by_hand_meets_every_law() {
    assert_eq!(check_all(&back(SLOPE, 60.0), &Tolerances::drafted()), []);
}

#[test]
fn the_plain_hinge_gives_the_worked_numbers() {
    let before = back(SLOPE, 60.0);
    let after = altered(SLOPE, by(25.0, Hinge::Plain)).pattern;
    let (s, new) = (SLOPE.to_radians(), slope(&after));
    assert!(
        (new.to_degrees() - 8.80).abs() < 0.01,
        "{}",
        new.to_degrees()
    );
    assert!(((s - new).to_degrees() - 10.19).abs() < 0.01);
    assert!((new - (s.sin() - 25.0 / REACH).asin()).abs() < 1e-6);
    let ((side, tip), (new_side, new_tip)) = (ends(&before), ends(&after));
    assert!(
        (new_tip.x - tip.x - 6.18).abs() < 0.01,
        "{}",
        new_tip.x - tip.x
    );
    assert!(
        (new_tip.y - tip.y).abs() < 1e-6,
        "the shoulder point stays at its level"
    );
    assert!(new_side.distance(side + blockwright::geometry::Vec2::new(0.0, 25.0)) < 1e-6);
}

#[test]
fn every_hinge_equals_the_closed_form_whatever_the_amount() {
    let s = SLOPE.to_radians();
    let (_, tip) = ends(&back(SLOPE, 60.0));
    for (hinge, k) in [(Hinge::Plain, 0.0), (Hinge::Shared, 0.5)] {
        for amount in [-12.0, -1.0, 0.0, 5.0, 12.0, 20.0, 25.0, 27.0] {
            let after = altered(SLOPE, by(amount, hinge)).pattern;
            let wanted = (s.sin() - (1.0 - k) * amount / REACH).asin();
            let gain = REACH * (wanted.cos() - s.cos());
            let (_, new) = ends(&after);
            assert!((slope(&after) - wanted).abs() < 1e-6, "{hinge:?} {amount}");
            assert!((new.x - tip.x - gain).abs() < 0.01, "{hinge:?} {amount}");
            assert!(
                (new.y - tip.y - k * amount).abs() < 0.01,
                "{hinge:?} {amount}"
            );
        }
    }
}

#[test]
fn what_is_promised_to_stay_stays() {
    let before = back(SLOPE, 60.0);
    for hinge in Hinge::ALL {
        if hinge == Hinge::LeastDistortion && !cfg!(feature = "least-distortion") {
            continue;
        }
        let after = altered(SLOPE, by(25.0, hinge)).pattern;
        for what in [
            "back side_seam length",
            "back neckline length",
            "back shoulder length",
            "back hem length",
            "back waist dart intake",
            "bust finished",
            "waist finished",
            "hip finished",
        ] {
            let (old, new) = (
                reading(&before, what).unwrap(),
                reading(&after, what).unwrap(),
            );
            assert!((old - new).abs() < 1e-6, "{hinge:?} {what}: {old} {new}");
        }
        let length = |p| reading(p, "back centre_back length").unwrap();
        assert!(
            (length(&before) - length(&after) - 25.0).abs() < 1e-6,
            "{hinge:?}"
        );
        assert_eq!(check_all(&after, &Tolerances::altered()), [], "{hinge:?}");

        let piece = after.piece("back").unwrap();
        let Apexes::Two(upper, lower) = piece.dart("waist").unwrap().apexes else {
            panic!("two apexes");
        };
        assert!(
            upper.distance(Point::new(100.0, 255.0)) < 1e-9,
            "{hinge:?}: moved with the centre"
        );
        assert!(lower.distance(Point::new(100.0, 540.0)) < 1e-9, "{hinge:?}");
        assert_eq!(
            piece.line("waist").unwrap().curve.start(),
            Point::new(0.0, WAIST)
        );
        let side = |p: &Pattern| {
            let piece = p.piece("back").unwrap();
            piece
                .outline()
                .edge(&EdgeName::SIDE_SEAM)
                .unwrap()
                .curve()
                .clone()
        };
        assert_eq!(
            side(&after),
            side(&before),
            "{hinge:?}: nothing at all happens there"
        );
    }
}

#[test]
fn no_amount_changes_nothing_and_the_inverse_undoes() {
    let before = back(SLOPE, 60.0);
    for hinge in [Hinge::Plain, Hinge::Shared] {
        assert_eq!(altered(SLOPE, by(0.0, hinge)).pattern, before, "{hinge:?}");
        for amount in [8.0, 20.0] {
            let there = altered(SLOPE, by(amount, hinge)).pattern;
            let back_again = by(-amount, hinge).alter(&there).unwrap().pattern;
            assert!(
                (slope(&back_again) - slope(&before)).abs() < 1e-6,
                "{hinge:?}"
            );
            let ((a, b), (c, d)) = (ends(&before), ends(&back_again));
            assert!(a.distance(c) < 0.01 && b.distance(d) < 0.01, "{hinge:?}");
            let armscye = |p| reading(p, "back armscye length").unwrap();
            let off = armscye(&before) - armscye(&back_again);
            assert!(off.abs() < 0.1, "{hinge:?} {amount}: {off}");
            assert_eq!(check_all(&back_again, &Tolerances::altered()), []);
        }
    }
}

#[test]
fn a_shoulder_below_level_is_refused_with_the_most_it_bears() {
    let sine = SLOPE.to_radians().sin();
    for (hinge, k) in [(Hinge::Plain, 0.0), (Hinge::Shared, 0.5)] {
        let level = REACH * sine / (1.0 - k);
        let refused = by(level + 0.5, hinge).alter(&back(SLOPE, 60.0));
        let Err(AlterationError::TooMuch { most, .. }) = refused else {
            panic!("{hinge:?}: {refused:?}");
        };
        assert!((most - level).abs() < 1e-6, "{hinge:?}: {most} for {level}");
    }
    // A chain says how much would hold, laws and all.
    let step: Box<dyn Alteration> = Box::new(by(60.0, Hinge::Plain));
    let refused = alter(&back(SLOPE, 60.0), &[step]).unwrap_err();
    assert!(matches!(
        refused.reason,
        Reason::Alteration(AlterationError::TooMuch { .. })
    ));
    assert!(
        refused.most.is_some_and(|m| m > 25.0 && m <= REACH * sine),
        "{refused}"
    );
    assert!(refused.to_string().contains("hinge: shared"), "{refused}");
}

#[test]
fn below_eight_degrees_it_is_reported() {
    // a_max = L (sin s - sin 8°).
    let limit = |s: f64| REACH * (s.to_radians().sin() - 8f64.to_radians().sin());
    assert!((limit(SLOPE) - 27.0).abs() < 0.05, "{}", limit(SLOPE));
    for s in [SLOPE, 14.0, 11.0] {
        for (off, is_reported) in [(-0.05, false), (0.05, true)] {
            let done = altered(s, by(limit(s) + off, Hinge::Plain));
            let message = done
                .warnings
                .iter()
                .find(|w| w.code == "shoulder_nearly_level");
            assert_eq!(
                message.is_some(),
                is_reported,
                "{s} {off}: {:?}",
                done.warnings
            );
        }
        let shared = altered(s, by(limit(s) + 0.05, Hinge::Shared));
        assert!(shared.warnings.is_empty(), "{s}: {:?}", shared.warnings);
    }
}

#[test]
fn a_hip_too_close_comes_first() {
    let close = back(SLOPE, 20.0);
    let step = BackLengthReduction::by(15.0);
    let refused = step.alter(&close);
    let Err(AlterationError::First { why, advice }) = refused else {
        panic!("{refused:?}");
    };
    assert!(
        why.contains("20 mm") && advice.contains("hip_girth"),
        "{why}: {advice}"
    );
    assert!(advice.contains("hips_checked"), "{advice}");
    let checked = BackLengthReduction {
        hips_checked: true,
        ..step
    };
    assert!(checked.alter(&close).is_ok());
    assert!(step.alter(&back(SLOPE, 60.0)).is_ok(), "room enough");
    assert!(
        BackLengthReduction::by(-15.0).alter(&close).is_ok(),
        "longer rides up on nothing"
    );
}
