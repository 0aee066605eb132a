//! The straight skirt of two handbooks.
//!
//! Aldrich, *Metric Pattern Cutting*, straight skirt block as transcribed on a blog
//! (compulsiveseamstress.com); its dart widths and lengths are values from memory. The school
//! block is read: WikiEducator, *Handout for drafting skirt block*.

use super::drawn::{BUSTS, SkirtPanel, between, body, handbook, skirt_panels};
use blockwright::draft::{Ease, Fit};
use blockwright::measurements::{Body, Measurement as M};

/// Waist 70, hip 95 and waist to hip 20.6: the middle of what goes with bust 88 of Aldrich (as
/// transcribed; waist and hip are values from memory).
fn aldrich_body() -> Body {
    body(1640.0, 880.0, 700.0, 950.0, &[(M::WaistToHip, 206.0)])
}

/// Half hip + 15 (as transcribed), half waist + 5 (computed from that block).
fn aldrich() -> [SkirtPanel; 2] {
    let ease = Ease {
        hip: 30.0,
        waist: 10.0,
        ..Ease::of(Fit::Close)
    };
    skirt_panels(&aldrich_body(), ease)
}

/// Half hip + 25, waist 12 on the back quarter (read).
fn school() -> [SkirtPanel; 2] {
    let ease = Ease {
        hip: 50.0,
        waist: 24.0,
        ..Ease::of(Fit::Regular)
    };
    skirt_panels(&aldrich_body(), ease)
}

fn total(panel: &SkirtPanel) -> f64 {
    panel.darts.iter().map(|(intake, _)| intake).sum()
}

#[test]
fn hip_line_lies_at_the_measure_and_within_the_handbooks() {
    for bust in BUSTS {
        let full = handbook(bust);
        for panel in skirt_panels(&full, Ease::of(Fit::Regular)) {
            // At the waist to hip of the column (as transcribed), exactly; 180 to 220 below the
            // waist is a value from memory.
            let taken = full.value(M::WaistToHip);
            between("hip level", panel.hip_level, taken - 1e-9, taken + 1e-9);
            between("hip level", panel.hip_level, 180.0, 220.0);
        }
    }
}

#[test]
fn quarters_divide_as_in_the_handbooks() {
    let [back, front] = aldrich();
    between("half hip", back.hip + front.hip, 490.0 - 1e-6, 490.0 + 1e-6);
    // Back hip = hip / 4 + 15 (Aldrich, as transcribed): 252.5. Ours is 6 less: the side seam has
    // to meet that of the bodice, whose front is wider.
    between("back hip", back.hip, 252.5 - 7.0, 252.5 + 7.0);
    // Sewn waist of the quarters: waist / 4 + 42.5 less two darts of 20, waist / 4 + 22.5 less
    // one (as transcribed; darts from memory): 177.5 each. Ours differ by 5, for the same reason.
    between("back waist", back.waist_sewn, 177.5 - 6.0, 177.5 + 6.0);
    between("front waist", front.waist_sewn, 177.5 - 6.0, 177.5 + 6.0);
    // The school block divides at half + 7.5 (read): 257.5 for the back.
    let [back, _] = school();
    between("back hip", back.hip, 257.5 - 7.0, 257.5 + 7.0);
}

#[test]
fn waist_is_lowered_behind_and_raised_at_the_side() {
    for [back, front] in [aldrich(), school()] {
        // About 10 lower at the centre back: value from memory.
        between("centre back", back.lowered, 8.0, 12.0);
        between("centre front", front.lowered, -1e-9, 1e-9);
        for panel in [back, front] {
            // Raised at the side by 12.5 (Aldrich, as transcribed), by 10 (school block, read). A
            // deviation that is known: ours is 15.7 to 16, 3 above, because it follows the ring
            // which the panel is cut from and not a table.
            between("side", panel.raised, 10.0, 12.5 + 3.6);
        }
    }
}

#[test]
fn side_takes_what_the_aldrich_side_takes() {
    let [back, front] = aldrich();
    // 252.5 - 217.5 at the back, 237.5 - 197.5 in front (computed from the block as transcribed):
    // 35 and 40. One seam joins them, so ours takes the same on both: their middle, 2 either way.
    between("back side", back.side, 37.5 - 2.0, 37.5 + 2.0);
    between("front side", front.side, 37.5 - 2.0, 37.5 + 2.0);
}

#[test]
fn two_darts_behind_and_one_in_front() {
    let [back, front] = aldrich();
    // Back waist line divided in three for two darts (as transcribed), one in front (value from
    // memory).
    assert_eq!((back.darts.len(), front.darts.len()), (2, 1));
    // The school block has one dart of 20 on each (read); ours splits at 27, where a dart is best
    // kept under 30 to 35 (value from memory).
    let [back, front] = school();
    assert_eq!((back.darts.len(), front.darts.len()), (2, 1));
    for panel in [back, front] {
        for (intake, _) in panel.darts {
            between("one dart", intake, 6.0, 33.0);
        }
    }
}

#[test]
fn darts_are_as_wide_as_in_the_handbooks() {
    let [back, front] = aldrich();
    for (intake, _) in &back.darts {
        // 20 each (value from memory).
        between("back dart", *intake, 20.0 - 1.5, 20.0 + 1.5);
    }
    // 20 in front on both blocks (Aldrich: value from memory; school block: read); 25.4, divided
    // in two, on a third (value from memory, Armstrong). A deviation that is known: ours is
    // 25.9, 6 above the two and 0.5 above the third.
    between("front dart", front.darts[0].0, 20.0, 25.4 + 1.0);
    for [back, front] in [aldrich(), school()] {
        // All darts of the half: 40 on the school block (read), 60 on Aldrich's and 76 on
        // Armstrong's for a waist 254 below the hip (values from memory).
        between("all darts", total(&back) + total(&front), 40.0, 76.0);
    }
}

#[test]
fn darts_are_as_long_as_in_the_handbooks() {
    let [back, front] = aldrich();
    // Inner 140, outer 125, front 100 (values from memory); 120 and 100 on the school block
    // (read). 8 mm: the two handbooks differ by up to 20.
    between("inner back dart", back.darts[0].1, 140.0 - 8.0, 140.0 + 8.0);
    between("outer back dart", back.darts[1].1, 125.0 - 8.0, 125.0 + 8.0);
    between("front dart", front.darts[0].1, 100.0 - 8.0, 100.0 + 8.0);
    assert!(
        back.darts[1].1 < back.darts[0].1,
        "the outer one is shorter"
    );
    for bust in BUSTS {
        let [back, front] = skirt_panels(&handbook(bust), Ease::of(Fit::Regular));
        // Front 80 to 110, back 120 to 150: values from memory.
        for (_, length) in front.darts {
            between("front dart", length, 80.0, 110.0);
        }
        for (_, length) in back.darts {
            between("back dart", length, 120.0, 150.0);
        }
    }
}
