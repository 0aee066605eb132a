//! What is too much, missing or no number is refused by name.

use super::{body, cases, drafted};
use blockwright::alterations::{AlterationError, CATALOGUE, Reason, alter};
use blockwright::draft::{Block, SleeveLength};
use serde_json::json;

#[test]
fn too_much_is_refused_with_what_would_hold() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    for case in cases() {
        let block = if (case.blocks)(Block::Dress) {
            Block::Dress
        } else {
            Block::Skirt
        };
        let pattern = drafted(&body, block, SleeveLength::Long).unwrap();
        for amount in [-5000.0, 5000.0] {
            let step = (case.make)(amount);
            let name = step.name();
            let refused = alter(&pattern, &[step]).unwrap_err();
            let Reason::Alteration(AlterationError::TooMuch { most, .. }) = refused.reason else {
                panic!("{name} by {amount}: {refused}");
            };
            assert!(most * amount > 0.0, "{name}: {most}");
            let held = refused.most.unwrap();
            assert!(
                held * amount > 0.0 && held.abs() <= most.abs() + 0.1,
                "{name}"
            );
        }
    }
}

#[test]
fn what_is_no_number_and_what_is_missing() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    let dress = drafted(&body, Block::Dress, SleeveLength::Long).unwrap();
    for case in cases() {
        for amount in [f64::NAN, f64::INFINITY] {
            let refused = alter(&dress, &[(case.make)(amount)]).unwrap_err();
            assert!(matches!(
                refused.reason,
                Reason::Alteration(AlterationError::Setting(_))
            ));
        }
        for block in Block::ALL.into_iter().filter(|b| !(case.blocks)(*b)) {
            let pattern = drafted(&body, block, SleeveLength::Long).unwrap();
            let refused = alter(&pattern, &[(case.make)(5.0)]).unwrap_err();
            let missing = matches!(
                refused.reason,
                Reason::Alteration(AlterationError::Missing { .. })
            );
            assert!(missing, "{refused}");
        }
    }
}

#[test]
fn settings_are_read_and_unknown_ones_refused() {
    let read = |name: &str, settings| {
        let entry = CATALOGUE.iter().find(|e| e.name == name).unwrap();
        (entry.read)(settings)
    };
    let length = read("length", json!({"at": "sleeve", "amount": 12.0})).unwrap();
    assert_eq!(length.amount(), Some(12.0));
    assert!(read("length", json!({"amount": 12.0})).is_err());
    for name in [
        "waist_girth",
        "high_hip",
        "hip_girth",
        "side_seam",
        "seat",
        "abdomen",
        "upper_arm",
        "elbow_width",
        "forearm_width",
        "sleeve_pitch",
    ] {
        let step = read(name, json!({"amount": 8.0})).unwrap();
        assert_eq!((step.name(), step.amount()), (name, Some(8.0)));
        assert!(read(name, json!({"amount": 8.0, "more": 1})).is_err());
    }
}
