//! Bodies at the ends: drafted by every law, or refused by name, never nonsense.

use super::{body, must_be_lawful, with_sleeve};
use blockwright::draft::{Block, DraftError, DraftOptions, SleeveLength, draft};
use blockwright::measurements::{Body, Measurement};

fn all_blocks(body: &Body, what: &str) -> Vec<String> {
    let mut refused = Vec::new();
    for block in Block::ALL {
        let options = if block.has_armscye() {
            with_sleeve(block, SleeveLength::Long)
        } else {
            DraftOptions::of(block)
        };
        match draft(body, &options) {
            Ok(pattern) => must_be_lawful(&pattern, &format!("{what}, {}", block.name())),
            Err(DraftError::Piece(fault)) => {
                unreachable!(
                    "{what}, {}: the draft itself is at fault: {fault}",
                    block.name()
                )
            }
            Err(e) => refused.push(format!("{}: {e}", block.name())),
        }
    }
    refused
}

#[test]
fn a_waist_as_large_as_bust_or_hip_is_drafted() {
    for (bust, waist, hip) in [
        (900.0, 900.0, 960.0),
        (900.0, 960.0, 960.0),
        (1000.0, 1060.0, 1030.0),
        (1200.0, 1240.0, 1240.0),
        (950.0, 900.0, 900.0),
    ] {
        let what = format!("bust {bust}, waist {waist}, hip {hip}");
        let refused = all_blocks(&body([1650.0, bust, waist, hip], &[]), &what);
        assert!(refused.is_empty(), "{what}: {refused:#?}");
    }
}

#[test]
fn sloping_and_square_shoulders_are_drafted() {
    for degrees in [14.0, 18.0, 25.0, 32.0, 37.0f64] {
        let slope = (Measurement::ShoulderSlope, degrees.to_radians());
        let what = format!("slope {degrees}");
        let refused = all_blocks(&body([1650.0, 930.0, 770.0, 1010.0], &[slope]), &what);
        assert!(refused.is_empty(), "{what}: {refused:#?}");
    }
}

#[test]
fn small_and_tall_women_are_drafted() {
    for height in [1400.0, 1480.0, 1750.0, 1850.0, 1950.0] {
        let what = format!("height {height}");
        let refused = all_blocks(&body([height, 930.0, 770.0, 1010.0], &[]), &what);
        assert!(refused.is_empty(), "{what}: {refused:#?}");
    }
}

#[test]
fn busts_from_70_to_160_are_drafted_or_refused_by_name() {
    for bust in [
        700.0, 760.0, 850.0, 1000.0, 1150.0, 1300.0, 1450.0, 1600.0f64,
    ] {
        let four = [1650.0, bust, 0.9 * bust - 60.0, 0.75 * bust + 320.0];
        let refused = all_blocks(&body(four, &[]), &format!("bust {bust}"));
        for reason in &refused {
            eprintln!("bust {bust}: {reason}");
        }
        // Above 1300 the survey says nothing of such bodies: the estimates are drawn out.
        assert!(
            bust > 1300.0 || refused.is_empty(),
            "bust {bust}: {refused:#?}"
        );
    }
}
