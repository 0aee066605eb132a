//! Asking for the method, and choosing among the three.

use crate::support::measures::reading;
use blockwright::alterations::{
    Alteration, AlterationError, BackLengthReduction, Hinge, MethodTable, OneSided, ShoulderSlope,
    alter, compare_methods, find,
};
use blockwright::draft::{Block, DraftOptions, Figure, SleeveLength, draft_figure};
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{BodySide, Pattern};

fn dress() -> Pattern {
    let mut figure = Figure::cylinder(900.0);
    figure.waist_girth = 720.0;
    let mut options = DraftOptions::of(Block::Dress);
    options.sleeve = Some(SleeveLength::Long);
    draft_figure(&figure, &options).expect("a dress")
}

fn least(amount: f64) -> BackLengthReduction {
    BackLengthReduction {
        amount,
        hinge: Hinge::LeastDistortion,
        hips_checked: true,
    }
}

#[test]
fn it_is_asked_for_in_the_settings_of_a_job() {
    let read = find("back_length_reduction").unwrap().read;
    for hinge in Hinge::ALL {
        let settings = serde_json::json!({"amount": 12.0, "hinge": hinge.name()});
        assert_eq!(read(settings).unwrap().amount(), Some(12.0), "{hinge:?}");
        assert_eq!(serde_json::to_value(hinge).unwrap(), hinge.name());
    }
    assert!(read(serde_json::json!({"amount": 12.0, "hinge": "loose"})).is_err());
}

#[test]
fn every_block_in_one_piece_bears_it() {
    for block in [Block::Dress, Block::Tunic] {
        let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(block)).unwrap();
        for amount in [-10.0, 1.0, 12.0, 25.0] {
            let step: Box<dyn Alteration> = Box::new(least(amount));
            let done = alter(&pattern, &[step]).unwrap_or_else(|e| panic!("{block:?}: {e}"));
            let length = |p| reading(p, "back centre_back length").unwrap();
            let gone = length(&pattern) - length(&done.pattern);
            assert!((gone - amount).abs() < 1e-6, "{block:?} {amount}: {gone}");
            for kept in ["neckline", "shoulder", "side_seam"] {
                let what = format!("back {kept} length");
                let (old, new) = (reading(&pattern, &what), reading(&done.pattern, &what));
                assert!(
                    (old.unwrap() - new.unwrap()).abs() < 1e-6,
                    "{block:?} {what}"
                );
            }
        }
    }
}

#[test]
fn the_sleeve_goes_with_the_armscye_and_the_stretch_is_reported() {
    let pattern = dress();
    let done = alter(&pattern, &[Box::new(least(25.0)) as Box<dyn Alteration>]).unwrap();
    let gained =
        |what: &str| reading(&done.pattern, what).unwrap() - reading(&pattern, what).unwrap();
    let (armscye, cap) = (
        gained("back armscye length"),
        gained("sleeve sleeve_cap length"),
    );
    assert!((-15.0..-7.0).contains(&armscye), "{armscye}");
    assert!((armscye - cap).abs() < 0.05, "{armscye} {cap}");
    let message = done
        .pattern
        .warnings()
        .iter()
        .find(|w| w.code == "local_stretch");
    assert!(
        message.is_some_and(|w| w.text.contains("0.8")),
        "{message:?}"
    );
    assert_eq!(check_all(&done.pattern, &Tolerances::altered()), []);
}

#[test]
fn no_amount_is_taken_that_the_back_does_not_bear() {
    let pattern = dress();
    for amount in [f64::NAN, f64::INFINITY] {
        assert!(matches!(
            least(amount).alter(&pattern),
            Err(AlterationError::Setting(_))
        ));
    }
    for amount in [-1e300, -500.0, 150.0, 500.0, 1e300] {
        let refused = least(amount).alter(&pattern);
        assert!(
            matches!(refused, Err(AlterationError::TooMuch { most, .. }) if most.abs() < amount.abs()),
            "{amount}: {refused:?}"
        );
    }
    let bodice = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Bodice)).unwrap();
    assert!(matches!(
        compare_methods(&bodice, 10.0),
        Err(AlterationError::Missing { .. })
    ));
}

#[test]
fn the_table_shows_all_three_and_why_one_is_refused() {
    let table = compare_methods(&dress(), 25.0).unwrap();
    let figures = |h| *table.row(h).unwrap().outcome.figures().unwrap();
    let [plain, shared, least] = Hinge::ALL.map(figures);
    let turn = |f: blockwright::alterations::MethodFigures| f.slope_before - f.slope_after;
    assert!(turn(least) <= 0.5 * turn(plain) + 1e-4, "{table}");
    // The mesh sees what the ways differ in: the plain hinge stretches twice as much.
    let stretch = |f: blockwright::alterations::MethodFigures| f.stretch.unwrap();
    assert!(
        stretch(plain).largest > stretch(least).largest + 0.08,
        "{table}"
    );
    assert!(
        stretch(plain).smallest < stretch(least).smallest - 0.02,
        "{table}"
    );
    assert!((turn(shared) - turn(least)).abs() < 1.0, "{table}");
    assert!(shared.sleeve_cap.is_some());

    let whole: MethodTable = serde_json::from_str(&serde_json::to_string(&table).unwrap()).unwrap();
    assert_eq!(whole.rows.len(), 3);

    let table = compare_methods(&dress(), 55.0).unwrap();
    let text = table.to_string();
    assert!(
        text.contains("refused") && text.contains("below level"),
        "{text}"
    );
    assert_eq!(text.lines().count(), 5, "{text}");
}

#[test]
fn after_a_step_on_one_side_the_table_still_has_every_figure() {
    let step = Box::new(ShoulderSlope::by(2.0));
    let left: Box<dyn Alteration> = Box::new(OneSided::new(BodySide::Left, step));
    let unlike = alter(&dress(), &[left]).unwrap().pattern;
    let alike = compare_methods(&dress(), 12.0).unwrap();
    let table = compare_methods(&unlike, 12.0).unwrap();
    assert!(!table.to_string().contains("NaN"), "{table}");
    for hinge in Hinge::ALL {
        let of = |table: &MethodTable| *table.row(hinge).unwrap().outcome.figures().unwrap();
        let (whole, half) = (of(&alike), of(&table));
        assert!(whole.sleeve_cap.is_some() && half.sleeve_cap.is_some());
        // The same step on nearly the same back.
        assert!(
            (whole.armscye - half.armscye).abs() < 3.0,
            "{table}\n{alike}"
        );
        assert!(
            (whole.fold_gain - half.fold_gain).abs() < 3.0,
            "{table}\n{alike}"
        );
    }
}
