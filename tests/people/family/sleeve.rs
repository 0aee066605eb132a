//! The sleeve of every block.

use super::{WITH_ARMSCYE, body, builds, must_be_lawful, with_sleeve};
use blockwright::draft::{Block, DraftError, SleeveLength, draft};
use blockwright::geometry::{Curve, Point, signed_area};
use blockwright::measurements::Measurement;
use blockwright::piece::{EaseOn, EdgeName, NotchKind, Pattern, Piece};
use kurbo::{Line, PathSeg};

fn sleeves() -> Vec<(String, Block, SleeveLength, Pattern)> {
    let mut all = Vec::new();
    for (index, body) in builds().iter().enumerate() {
        for block in WITH_ARMSCYE {
            for length in [SleeveLength::Short, SleeveLength::Long] {
                let what = format!("body {index}, {}, {}", block.name(), length.name());
                let pattern = draft(body, &with_sleeve(block, length)).unwrap();
                all.push((what, block, length, pattern));
            }
        }
    }
    all
}

fn sleeve(pattern: &Pattern) -> &Piece {
    pattern.piece("sleeve").unwrap()
}

fn cap(pattern: &Pattern) -> Curve {
    let edge = sleeve(pattern)
        .outline()
        .edge(&EdgeName::SLEEVE_CAP)
        .unwrap();
    edge.curve().clone()
}

#[test]
fn cap_is_the_armscye_and_its_ease() {
    for (what, block, _, pattern) in sleeves() {
        must_be_lawful(&pattern, &what);
        let seam = pattern
            .seams()
            .iter()
            .find(|s| s.name == "armscye")
            .unwrap();
        assert_eq!(seam.ease_on, Some(EaseOn::B), "{what}");
        // 25 to 48 mm for a fitted sleeve (Santa Rosa Junior College, FASH 60, read); 0 to 15 for
        // a shirt (value from memory).
        let range = match block {
            Block::Tunic | Block::Shirt => 0.0..=15.0,
            _ => 25.0..=48.0,
        };
        assert!(range.contains(&seam.ease), "{what}: {}", seam.ease);
        let armscye: f64 = seam.a.iter().map(|e| pattern.seam_length(e).unwrap()).sum();
        assert!(
            (cap(&pattern).length() - armscye - seam.ease).abs() < 1e-6,
            "{what}"
        );
    }
}

#[test]
fn one_notch_in_front_two_behind_and_one_at_the_shoulder() {
    // Santa Rosa Junior College, FASH 60 (read).
    for (what, _, _, pattern) in sleeves() {
        let notches = sleeve(&pattern).notches();
        let kind = |name: &str| notches.iter().find(|n| n.name == name).map(|n| n.kind);
        assert_eq!(kind("front armscye"), Some(NotchKind::Single), "{what}");
        assert_eq!(kind("back armscye"), Some(NotchKind::Double), "{what}");
        assert_eq!(kind("shoulder"), Some(NotchKind::Single), "{what}");
        assert_eq!(notches.len(), 3, "{what}");
    }
}

#[test]
fn underarm_seams_are_equal_and_only_the_close_long_sleeve_bends() {
    for (what, block, length, pattern) in sleeves() {
        let sleeve = sleeve(&pattern);
        let seam = |name: &'static str| sleeve.seam_length(&EdgeName::new(name)).unwrap();
        assert!(
            (seam("underarm_back") - seam("underarm_front")).abs() < 1e-6,
            "{what}"
        );
        let close = matches!(block, Block::Bodice | Block::Dress);
        let bent = close && length == SleeveLength::Long;
        assert_eq!(sleeve.dart("elbow").is_some(), bent, "{what}");
        if let Some(dart) = sleeve.dart("elbow") {
            // 12 to 25 mm (value from memory).
            assert!(
                (12.0..=25.0).contains(&dart.intake()),
                "{what}: {}",
                dart.intake()
            );
        }
    }
}

/// Area between the half of a cap and its chord, over what lies under the chord.
fn fullness(half: &Curve) -> f64 {
    let mut ring = half.segments().to_vec();
    ring.push(PathSeg::Line(Line::new(half.end(), half.start())));
    let (from, to) = (half.start(), half.end());
    signed_area(&ring) / (0.5 * ((to.x - from.x) * (to.y - from.y)).abs())
}

#[test]
fn back_half_is_fuller_and_front_half_flatter() {
    // Common practice: the arm moves forward, so the back needs room over the shoulder blade.
    for (what, _, _, pattern) in sleeves() {
        let cap = cap(&pattern);
        let at = sleeve(&pattern)
            .notches()
            .iter()
            .find(|n| n.name == "shoulder")
            .unwrap()
            .at;
        let (back, front) = cap.split_at(at).unwrap();
        assert!(fullness(&back) > fullness(&front) + 0.02, "{what}");
        // The front is hollowed deeper under the arm than the back.
        let hollow = |half: &Curve| {
            let (from, to) = (half.start(), half.end());
            let chord = (to - from).normalize();
            let depth = |p: Point| (p - from).cross(chord);
            let samples = (1..60).map(|i| half.point_at(half.length() * f64::from(i) / 60.0));
            samples
                .map(|s| depth(s.unwrap().0))
                .fold(0.0, |m: f64, d| m.min(d))
        };
        let (back_hollow, front_hollow) = (hollow(&back), hollow(&front));
        assert!(
            front_hollow < back_hollow,
            "{what}: {front_hollow} {back_hollow}"
        );
    }
}

#[test]
fn cap_is_as_high_as_in_the_trade() {
    // A third of the armscye for a fitted sleeve, less for tunic and shirt, where a quarter to a
    // fifth is usual (values from memory). A thick arm lowers it, for the biceps is its width.
    let body = &builds()[1];
    for block in WITH_ARMSCYE {
        let pattern = draft(body, &with_sleeve(block, SleeveLength::Long)).unwrap();
        let seam = pattern
            .seams()
            .iter()
            .find(|s| s.name == "armscye")
            .unwrap();
        let armscye: f64 = seam.a.iter().map(|e| pattern.seam_length(e).unwrap()).sum();
        let share = cap(&pattern).bounds().height() / armscye;
        let range = match block {
            Block::Tunic | Block::Shirt => 0.18..=0.32,
            _ => 0.26..=0.36,
        };
        assert!(range.contains(&share), "{}: {share}", block.name());
    }
}

#[test]
fn biceps_is_arm_and_ease_and_a_cap_that_cannot_be_made_is_refused_with_numbers() {
    for (what, _, _, pattern) in sleeves() {
        let girth = pattern
            .girths()
            .iter()
            .find(|g| g.name == "upper_arm")
            .unwrap();
        assert!(
            (pattern.finished(girth) - girth.body - girth.ease).abs() < 1e-6,
            "{what}"
        );
    }
    let thick = body(
        [1560.0, 800.0, 620.0, 870.0],
        &[
            (Measurement::UpperArmGirth, 520.0),
            (Measurement::ScyeDepth, 165.0),
        ],
    );
    let refused = draft(&thick, &with_sleeve(Block::Dress, SleeveLength::Long)).unwrap_err();
    assert!(
        matches!(refused, DraftError::OutOfReach { .. }),
        "{refused}"
    );
    assert!(refused.to_string().contains(" mm"), "{refused}");
}
