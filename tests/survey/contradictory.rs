//! Bodies whose girths contradict each other: whatever a measurement set may hold is drafted or
//! refused, and a refusal says which measurements do not go together.

use super::tally::{FITS, Garment, Outcome, Tally, attempt};
use crate::support::survey::{taken_of, tell, women};
use blockwright::draft::{
    Block, DraftError, DraftOptions, Ease, Figure, Fit, draft_figure, skirt, waist_plan,
};
use blockwright::explain::Explain;
use blockwright::measurements::{Body, Measurement as M};

fn body([height, bust, waist, hip]: [f64; 4]) -> Option<Body> {
    Body::from_taken([
        (M::Height, height),
        (M::BustGirth, bust),
        (M::WaistGirth, waist),
        (M::HipGirth, hip),
    ])
    .ok()
}

/// Every garment at every fit: what came of it must not be a panic, nor say what is no number.
fn ask(who: &str, body: &Body, tally: &mut Tally, faults: &mut Vec<String>) {
    for garment in Garment::all() {
        for fit in FITS {
            let outcome = attempt(garment, body, fit);
            let name = format!("{who}, {}, {}", garment.name(), fit.name());
            match &outcome {
                Outcome::Panicked => faults.push(format!("{name}: panicked")),
                Outcome::Refused(error) => {
                    let said = error.to_string();
                    if ["NaN", "inf ", "-0.0 "].iter().any(|n| said.contains(n)) {
                        faults.push(format!("{name}: {said}"));
                    }
                }
                Outcome::Drafted(..) => {}
            }
            tally.add(&name, &outcome);
        }
    }
}

#[test]
fn girths_that_contradict_each_other_are_refused_by_name() {
    let (mut tally, mut faults) = (Tally::default(), Vec::new());
    for four in [
        [1650.0, 1550.0, 620.0, 1650.0],
        [1650.0, 920.0, 550.0, 1890.0],
    ] {
        let body = body(four).expect("a set may hold these");
        ask(&format!("{four:?}"), &body, &mut tally, &mut faults);
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn the_extremes_of_every_range_are_drafted_or_refused() {
    let (mut tally, mut faults) = (Tally::default(), Vec::new());
    let steps = |m: M| {
        let range = m.range();
        [0.0, 0.2, 0.5, 0.8, 1.0].map(|share| range.low + share * (range.high - range.low))
    };
    for height in [M::Height.range().low, 1650.0, M::Height.range().high] {
        for bust in steps(M::BustGirth) {
            for waist in steps(M::WaistGirth) {
                for hip in steps(M::HipGirth) {
                    let four = [height, bust, waist, hip];
                    if let Some(body) = body(four) {
                        ask(&format!("{four:?}"), &body, &mut tally, &mut faults);
                    }
                }
            }
        }
    }
    tell(&tally.report("bodies at the ends of their ranges"));
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn a_contradiction_gives_both_numbers() {
    let error = DraftError::Contradiction {
        what: "waist",
        measurements: vec![("bust_girth", 1550.0), ("waist_girth", 620.0)],
        advice: "Measure both again",
    };
    assert_eq!(
        error.to_string(),
        "waist cannot be drafted: bust_girth 1550 mm and waist_girth 620 mm contradict each other. Measure both again"
    );
    assert_eq!(error.code(), "waist_contradictory");
}

/// A figure and ease are plain numbers, so that a caller may write down ones that are none.
#[test]
fn a_number_that_is_none_is_refused() {
    for wrong in [
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        1e300,
        -1e300,
        0.0,
        -5.0,
    ] {
        let mut figure = Figure::cylinder(900.0);
        figure.bust_girth = wrong;
        for block in Block::ALL {
            let options = DraftOptions::of(block);
            let refused = draft_figure(&figure, &options);
            assert!(
                matches!(
                    refused,
                    Err(DraftError::NotANumber {
                        what: "bust_girth",
                        ..
                    })
                ),
                "{block:?} {wrong}: {refused:?}"
            );
        }
        assert!(waist_plan(&figure, &Ease::of(Fit::Regular)).is_err());
        assert!(skirt(&figure, &Ease::of(Fit::Regular), None).is_err());
    }
    for wrong in [f64::NAN, f64::INFINITY, 1e300] {
        let mut options = DraftOptions::of(Block::Dress);
        options.ease.hip = wrong;
        assert!(draft_figure(&Figure::cylinder(900.0), &options).is_err());
        options = DraftOptions::of(Block::Skirt);
        options.length = Some(wrong);
        assert!(draft_figure(&Figure::cylinder(900.0), &options).is_err());
    }
}

/// The centre front as taken, over everybody with the front from the neck side point and without:
/// the neck is as deep as believed, 60 to 95 mm (70 to 85 usually, value from memory), and beside no
/// front the usual depth.
#[test]
fn a_centre_front_is_kept_below_a_neck_that_is_one() {
    for alone in [false, true] {
        let (mut depths, mut moved) = (Vec::new(), 0);
        for row in &women().rows {
            let mut taken = taken_of(row);
            taken.retain(|(m, _)| !alone || *m != M::FrontWaistLength);
            let body = Body::from_taken(taken).expect("a body that is possible");
            let figure = Figure::from(&body);
            let depth = figure.front_neck_depth.expect("a depth");
            let centre = figure.front_waist_length - depth;
            assert!((centre - row.number("centre_front_waist_length")).abs() < 1e-9);
            let front = body.value(M::FrontWaistLength);
            moved += usize::from((figure.front_waist_length - front).abs() > 1.0);
            depths.push(depth);
        }
        depths.sort_by(f64::total_cmp);
        let at = |share: f64| depths[((depths.len() - 1) as f64 * share) as usize];
        tell(&format!(
            "centre front {}: neck {:.0} {:.0} {:.0} {:.0} {:.0} mm deep (least, 5 %, median, 95 %, most), front moved for {moved}",
            if alone { "alone" } else { "and front" },
            at(0.0),
            at(0.05),
            at(0.5),
            at(0.95),
            at(1.0)
        ));
        assert!(at(0.0) >= 60.0 && at(1.0) <= 95.0);
        if alone {
            assert!((70.0..=85.0).contains(&at(0.5)), "{}", at(0.5));
        }
    }
}
