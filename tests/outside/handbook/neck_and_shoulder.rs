//! Neck and shoulder.

use super::drawn::{BUSTS, Bodice, between, girths_only, handbook};
use blockwright::draft::Fit;
use blockwright::measurements::Measurement as M;

fn each(check: impl Fn(f64, Bodice)) {
    for bust in BUSTS {
        check(bust, Bodice::of(&handbook(bust), Fit::Regular));
    }
}

#[test]
fn back_neck_is_as_wide_as_in_the_bunka_draft() {
    each(|bust, b| {
        // Bunka (2000): front neck bust / 24 + 34, back 2 more (formula as transcribed in student
        // notes, tumlook.com/tag/pattern sloper). Its width follows the bust, ours the neck, whose
        // girths are those of another book's column: 3 mm, a fifth of the step to the next neck
        // but two.
        let bunka = bust / 24.0 + 34.0 + 2.0;
        between(
            "back neck width",
            b.back_neck_width,
            bunka - 3.0,
            bunka + 3.0,
        );
        // 68 to 78 for bust 84 to 100: value from memory.
        between("back neck width", b.back_neck_width, 68.0, 78.0);
    });
}

#[test]
fn neck_of_the_aldrich_column_is_as_wide_as_its_rules_make_it() {
    // Aldrich close-fitting bodice as transcribed (angelfire.com/empire/radhika): neck / 5 - 2 at
    // the back, neck / 5 - 7 and - 2 (depth) in front. Rules of thumb in whole millimetres for a
    // curve drawn by hand: 2 mm.
    let b = Bodice::of(&handbook(880.0), Fit::Close);
    let fifth = 370.0 / 5.0;
    between("back width", b.back_neck_width, fifth - 4.0, fifth);
    between("front width", b.front_neck_width, fifth - 9.0, fifth - 5.0);
    between("front depth", b.front_neck_depth, fifth - 4.0, fifth);
}

#[test]
fn front_neck_is_as_wide_and_deep_as_in_the_bunka_draft() {
    each(|bust, b| {
        // Bunka (2000): width bust / 24 + 34, depth 5 more (as transcribed, see above; the depth
        // a value from memory). 3 mm as for the back.
        let bunka = bust / 24.0 + 34.0;
        between(
            "front neck width",
            b.front_neck_width,
            bunka - 3.0,
            bunka + 3.0,
        );
        between(
            "front neck depth",
            b.front_neck_depth,
            bunka + 2.0,
            bunka + 8.0,
        );
        // Width 65 to 75, depth 70 to 85 for bust 84 to 100: values from memory.
        between("front neck width", b.front_neck_width, 65.0, 75.0);
        between("front neck depth", b.front_neck_depth, 70.0, 85.0);
    });
}

#[test]
fn back_neck_rises_between_the_two_handbooks() {
    each(|bust, b| {
        // 15 on the Aldrich block (as transcribed); a third of the back neck's width on the Bunka
        // draft (computed from the formula as transcribed): 23.7, 24.2, 25.9.
        let bunka = (bust / 24.0 + 34.0 + 2.0) / 3.0;
        between("back neck depth", b.back_neck_depth, 15.0, bunka);
    });
}

#[test]
fn neckline_is_half_the_neck_base_girth() {
    each(|bust, b| {
        // The neck column is Aldrich's, as transcribed; that the seam of a close neckline is the
        // neck's girth is the definition of the measure, so it is exact.
        let half = handbook(bust).value(M::NeckBaseGirth) / 2.0;
        between("neckline", b.neckline, half - 1e-4, half + 1e-4);
    });
}

#[test]
fn shoulders_fall_as_in_the_handbooks() {
    let as_in_the_handbooks = |b: Bodice| {
        // Back 18 to 23, front 20 to 27, both together 40 to 46 degrees: values from memory.
        between("back slope", b.back_slope, 18.0, 23.0);
        between("front slope", b.front_slope, 20.0, 27.0);
        between("sum of slopes", b.back_slope + b.front_slope, 40.0, 46.0);
        // Bunka (as transcribed): front 22 and back 18 degrees, 4 between them. The draft follows
        // the body, 25.7 on average with a spread of 3.8 (computed from the 1988 U.S. Army
        // survey), so a block may lie one spread off.
        between("front less back", b.front_slope - b.back_slope, 3.5, 4.5);
        between("front slope", b.front_slope, 22.0 - 3.8, 22.0 + 3.8);
        between("back slope", b.back_slope, 18.0 - 3.8, 18.0 + 3.8);
    };
    for bust in BUSTS {
        as_in_the_handbooks(Bodice::of(&handbook(bust), Fit::Regular));
        // And with the slope estimated from height and girths.
        as_in_the_handbooks(Bodice::of(&girths_only(bust), Fit::Regular));
    }
    // The Aldrich back shoulder drops 50 to 52 over 132.5: 22 to 23 degrees (computed from the
    // draft as transcribed; its page prints two values). Ours is 2 to 3 flatter, with the front
    // that much steeper: the seam lies further back, the sum is the same.
    let b = Bodice::of(&handbook(880.0), Fit::Close);
    between("back slope", b.back_slope, 22.0 - 3.0, 23.0);
}

#[test]
fn back_shoulder_dart_lies_between_the_two_handbooks() {
    each(|bust, b| {
        // 10 on the Aldrich block (as transcribed), bust / 32 - 8 on the Bunka draft (formula as
        // transcribed).
        between("shoulder dart", b.shoulder_dart, 10.0, bust / 32.0 - 8.0);
        // 12 to 20 mm wide, 70 to 90 long: values from memory. Aldrich as transcribed has 50.
        between("shoulder dart", b.shoulder_dart, 12.0, 20.0);
        between("its length", b.shoulder_dart_length, 70.0, 90.0);
        // Its point slopes 10 mm inward on a dart of 50 (Aldrich, as transcribed); drafts are
        // drawn by eye there: half of it either way.
        between("its point inward", b.shoulder_dart_tip_inward, 5.0, 15.0);
    });
}

#[test]
fn back_shoulder_is_longer_by_its_dart() {
    for bust in BUSTS {
        let b = Bodice::of(&girths_only(bust), Fit::Regular);
        // Shoulder and dart in one line on the Aldrich block (as transcribed: shoulder + 10 for a
        // dart of 10). Ours is opened by turning, so the straight reach is a little less: at
        // most 1 mm.
        let longer = b.back_shoulder_open - b.front_shoulder;
        between("longer by", longer, b.shoulder_dart - 1.0, b.shoulder_dart);
    }
}
