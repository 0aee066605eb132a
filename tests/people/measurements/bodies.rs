//! Bodies: what is refused, what is doubted, and estimates at the ends.

use blockwright::measurements::{Against, Body, DoubtCode, Measurement as M};

use super::known::*;

#[test]
fn contradictions_are_doubted_with_both_numbers() {
    let codes = |changes: &[(M, f64)]| -> Vec<DoubtCode> {
        let base = body(1680.0, 920.0, 760.0, 1000.0);
        let taken = base
            .taken()
            .filter(|(m, _)| !changes.iter().any(|c| c.0 == *m));
        let body = Body::from_taken(taken.chain(changes.iter().copied())).expect("possible");
        for doubt in body.doubts() {
            let text = doubt.to_string();
            assert!(text.contains(&format!("{} ", doubt.measurement)), "{text}");
            let other = match doubt.against {
                Against::Taken { value, .. }
                | Against::Estimate { value, .. }
                | Against::Contradicting { value, .. } => value,
            };
            assert!(text.contains(&format!("{other:.0}")), "{text}");
            let json = serde_json::to_value(doubt).expect("serialises");
            assert_eq!(json["code"], doubt.code.code());
            assert_eq!(
                json["code"],
                serde_json::to_value(doubt.code).expect("serialises")
            );
        }
        body.doubts().iter().map(|doubt| doubt.code).collect()
    };
    assert_eq!(codes(&[]), []);
    let holds = |changes: &[(M, f64)], code| assert!(codes(changes).contains(&code), "{code:?}");
    holds(
        &[(M::ScyeDepth, 320.0), (M::BackWaistLength, 300.0)],
        DoubtCode::ScyeAtWaist,
    );
    holds(&[(M::UnderbustGirth, 960.0)], DoubtCode::UnderbustAboveBust);
    holds(
        &[(M::UpperChestGirth, 1050.0)],
        DoubtCode::UpperChestAboveBust,
    );
    holds(&[(M::BackWidth, 500.0)], DoubtCode::WidthAgainstBust);
    holds(&[(M::WaistGirth, 1400.0)], DoubtCode::WaistAgainstHip);
    holds(&[(M::WaistGirth, 1400.0)], DoubtCode::WaistAgainstBust);
    holds(&[(M::BackWaistLength, 500.0)], DoubtCode::FarFromEstimate);
    holds(
        &[
            (M::CentreFrontWaistLength, 430.0),
            (M::FrontWaistLength, 350.0),
        ],
        DoubtCode::FrontLengthsSwapped,
    );
    holds(
        &[(M::FrontWidth, 250.0), (M::BackWidth, 380.0)],
        DoubtCode::WidthsDisagree,
    );
}

#[test]
fn everything_impossible_is_reported_at_once() {
    let errors = Body::from_taken([
        (M::BustGirth, 92.0),
        (M::WaistGirth, f64::INFINITY),
        (M::HipGirth, -1000.0),
        (M::ShoulderSlope, 23.0),
        (M::HipGirth, 1000.0),
    ])
    .unwrap_err();
    assert_eq!(errors.all().len(), 6, "{errors}");
    let text = errors.to_string();
    for expected in [
        "bust_girth 92 mm is impossible: it lies between 650 mm and 1750 mm; was it meant in cm?",
        "waist_girth is not a finite number",
        "shoulder_slope",
        "was it meant in degrees?",
        "hip_girth is given more than once",
        "height is missing",
    ] {
        assert!(text.contains(expected), "{expected} in\n{text}");
    }
}

/// Bodies from one end of the possible to the other: no estimate leaves its range or the
/// order of bodies, whatever the four are.
#[test]
fn no_estimate_is_absurd_on_an_extreme_body() {
    for height in [1400.0, 1550.0, 1700.0, 1850.0, 1950.0] {
        for bust in [700.0, 900.0, 1150.0, 1400.0, 1600.0] {
            for waist in [0.65, 0.8, 1.0, 1.09].map(|share| share * bust) {
                for hip in [0.9, 1.0, 1.18].map(|share| share * bust) {
                    let body = body(height, bust, waist, hip);
                    for (measurement, measured) in body.iter() {
                        assert!(measurement.range().contains(measured.value));
                    }
                    let v = |m| body.value(m);
                    assert!(v(M::UnderbustGirth) < bust);
                    assert!(v(M::UpperChestGirth) < 1.1 * bust + 1e-9);
                    assert!(v(M::BackWidth) < 0.5 * bust);
                    assert!(v(M::ScyeDepth) + 60.0 < v(M::BackWaistLength));
                    assert!(v(M::NeckToBustPoint) + 30.0 < v(M::FrontWaistLength));
                    assert!(v(M::CentreFrontWaistLength) < v(M::FrontWaistLength));
                    assert!(v(M::WaistToHip) + 150.0 < v(M::WaistToKnee));
                    assert!(v(M::WristGirth) < v(M::ElbowGirth));
                    assert!(v(M::ElbowGirth) < v(M::UpperArmGirth));
                    assert!(v(M::UpperArmGirth) < v(M::ArmscyeGirth));
                    assert!((5.0..40.0).contains(&v(M::ShoulderSlope).to_degrees()));
                    let trunk_and_thigh = v(M::BackWaistLength) + v(M::WaistToKnee);
                    assert!((0.5..0.7).contains(&(trunk_and_thigh / height)));
                }
            }
        }
    }
}

#[test]
fn estimates_give_way_to_what_is_taken() {
    let plain = body(1680.0, 920.0, 760.0, 1000.0);
    let short = plain.with_taken(M::BackWaistLength, 290.0).unwrap();
    assert_eq!(short.value(M::BackWaistLength), 290.0);
    assert!(short.value(M::ScyeDepth) <= 190.0);
    let wrist = plain.with_taken(M::WristGirth, 260.0).unwrap();
    assert_eq!(wrist.value(M::WristGirth), 260.0);
    assert!(wrist.value(M::ElbowGirth) > 260.0);
    assert!(wrist.value(M::UpperArmGirth) > wrist.value(M::ElbowGirth));
    assert!(wrist.value(M::ArmscyeGirth) > wrist.value(M::UpperArmGirth));
    // The estimate itself rests on the four alone.
    assert_eq!(wrist.estimate(M::WristGirth), plain.get(M::WristGirth));
}

/// Two front lengths that cannot both be right are named with both numbers and both readings:
/// either alone is believed.
#[test]
fn a_pair_that_contradicts_is_reported_with_both_readings() {
    let plain = body(1650.0, 900.0, 720.0, 960.0);
    let front = plain.value(M::FrontWaistLength) + 40.0;
    let centre = plain.value(M::CentreFrontWaistLength) - 45.0;
    let one = plain.with_taken(M::FrontWaistLength, front).unwrap();
    assert_eq!(one.doubts(), []);
    let other = plain.with_taken(M::CentreFrontWaistLength, centre).unwrap();
    assert_eq!(other.doubts(), []);
    let both = one.with_taken(M::CentreFrontWaistLength, centre).unwrap();
    let [doubt] = both.doubts() else {
        panic!("{:?}", both.doubts());
    };
    assert_eq!(doubt.code, DoubtCode::PairDisagrees);
    let pair = [M::FrontWaistLength, M::CentreFrontWaistLength];
    assert!(pair.contains(&doubt.measurement));
    let Against::Contradicting {
        measurement,
        value,
        expected,
        other_expected,
    } = doubt.against
    else {
        panic!("{doubt:?}");
    };
    assert!(pair.contains(&measurement) && measurement != doubt.measurement);
    let text = doubt.to_string();
    for number in [doubt.value, value, expected, other_expected] {
        assert!(
            text.contains(&format!("{number:.0} mm")),
            "{number} in {text}"
        );
    }
    // Each reading is the estimate beside the other.
    let beside = plain.with_taken(measurement, value).unwrap();
    approx::assert_relative_eq!(beside.value(doubt.measurement), expected, epsilon = 1.0);
    let json = serde_json::to_value(doubt).unwrap();
    assert!(json["expected"].is_number() && json["against_expected"].is_number());
}

/// Whatever is taken is used as taken; a slip moves the rest no farther than a believable value.
#[test]
fn a_slip_does_not_carry_everything_with_it() {
    let plain = body(1650.0, 900.0, 720.0, 960.0);
    let far = |back: f64| {
        let body = plain.with_taken(M::BackWaistLength, back).unwrap();
        assert_eq!(body.value(M::BackWaistLength), back);
        body.value(M::FrontWaistLength)
    };
    let expected = plain.value(M::BackWaistLength);
    // Half of what the back is longer, as in the survey.
    assert!(far(expected + 40.0) > plain.value(M::FrontWaistLength) + 15.0);
    assert_eq!(far(expected + 90.0), far(expected + 120.0));
}
