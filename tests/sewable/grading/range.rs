//! Sizes of a published table: laws, growth, steps.

use blockwright::alterations::Request;
use blockwright::draft::Block;
use blockwright::explain::Explain;
use blockwright::grading::{Align, GradingError, Increments, grade};
use blockwright::invariants::{Tolerances, check_all};
use blockwright::measurements::{Body, Measurement, Size, SizeTable};
use blockwright::piece::Pattern;
use blockwright::piece::shoulder_slope;
use blockwright::recipe::MakeError;
use blockwright::units::Unit;

use super::table::{graded, graded_sleeveless, recipe, table};

#[test]
fn every_size_of_the_published_table_keeps_all_laws_and_girths_only_grow() {
    for (block, sleeves) in Block::ALL.into_iter().flat_map(|b| [(b, true), (b, false)]) {
        let graded = if sleeves {
            graded(block)
        } else {
            graded_sleeveless(block)
        };
        assert_eq!(graded.sizes().len(), if sleeves { 13 } else { 16 });
        for size in graded.sizes() {
            let broken = check_all(size.pattern(), &Tolerances::drafted());
            assert!(
                broken.is_empty(),
                "{} {}: {broken:?}",
                block.name(),
                size.label()
            );
        }
        let increments = graded.increments(Align::WaistCentre);
        let girths = increments
            .measures
            .iter()
            .filter(|m| m.of.kind() == "girth");
        for girth in girths {
            for step in girth.steps() {
                assert!(step.unwrap() > 0.0, "{} {girth:?}", block.name());
            }
        }
    }
}

#[test]
fn nothing_jumps_in_the_published_table() {
    for block in Block::ALL {
        let jumps = graded(block).increments(Align::WaistCentre).jumps();
        let texts: Vec<_> = jumps.iter().map(|j| j.text.as_str()).collect();
        assert!(
            texts.is_empty(),
            "{}:\n  {}",
            block.name(),
            texts.join("\n  ")
        );
    }
}

/// The step of a measure per 40 mm of bust, over the 40 mm steps of the table.
fn per_forty(increments: &Increments, piece: &str, what: &str) -> f64 {
    let measure = increments
        .find(piece, what)
        .unwrap_or_else(|| panic!("{piece} {what}"));
    (measure.values[7].unwrap() - measure.values[0].unwrap()) / 7.0
}

/// Low ends from what bodies do (ANSUR 1988 slopes, computed), high ends from size tables of the
/// trade (values from memory, medium confidence), each with some room: in the table
/// waist and hip grow by as much as the bust, more than in the survey.
#[test]
fn steps_of_the_draft_follow_those_of_bodies_and_of_the_trade() {
    let increments = graded(Block::Dress).increments(Align::Nape);
    for (piece, what, low, high) in [
        ("", "bust finished", 39.9, 40.1),
        ("", "waist finished", 39.9, 40.1),
        ("", "hip finished", 39.9, 40.1),
        ("", "back_width finished", 7.0, 13.0),
        ("", "upper_arm finished", 9.0, 16.0),
        ("back", "shoulder length", 0.0, 3.5),
        ("back", "neckline length", 0.5, 3.5),
        ("back", "underarm along", 1.5, 7.0),
        ("back", "hem side across", 8.0, 12.0),
        // Estimated from one height: what bust adds, waist and hip take away.
        ("back", "waist centre along", -1.0, 6.0),
    ] {
        let step = per_forty(&increments, piece, what);
        assert!((low..=high).contains(&step), "{piece} {what}: {step:.2}");
    }
}

#[test]
fn points_are_measured_from_the_aligned_one() {
    let graded = graded(Block::Dress);
    for (align, at) in [
        (Align::WaistCentre, "waist centre"),
        (Align::Nape, "nape"),
        (Align::Underarm, "underarm"),
        (Align::HemCentre, "hem centre"),
    ] {
        let increments = graded.increments(align);
        for way in ["across", "along"] {
            let measure = increments.find("back", &format!("{at} {way}")).unwrap();
            assert!(
                measure.values.iter().all(|v| v.unwrap().abs() < 1e-9),
                "{measure:?}"
            );
        }
    }
}

#[test]
fn alterations_are_made_in_every_size() {
    let step = Request::new(
        "back_length_reduction",
        serde_json::json!({"amount": 10, "hips_checked": true}),
    );
    let sizes = table("workshop-range");
    let mut tunic = recipe(Block::Tunic);
    tunic.alterations = vec![step.unwrap()];
    let graded = grade(&tunic, &sizes).unwrap();
    for size in graded.sizes() {
        assert_eq!(size.accounts().len(), 1);
    }
}

#[test]
fn shoulders_are_sloped_for_the_body_of_every_size() {
    let sizes = table("workshop-range");
    let step = |name, settings| Request::new(name, settings).unwrap();
    let mut tunic = recipe(Block::Tunic);
    tunic.alterations = vec![
        step("back_length_reduction", serde_json::json!({"amount": 15})),
        step("shoulder_slope", serde_json::json!({"to": "body"})),
    ];
    let graded = grade(&tunic, &sizes).unwrap();
    let mut amounts = Vec::new();
    for size in graded.sizes() {
        // Back and front together slope again as they were drafted for this body.
        let slopes = |pattern: &Pattern| -> f64 {
            let pieces = ["back", "front"].map(|name| pattern.piece(name).unwrap());
            pieces.iter().filter_map(|p| shoulder_slope(p)).sum()
        };
        let (before, after) = (slopes(&size.made().drafted), slopes(size.pattern()));
        assert!(
            (before - after).abs() < 1e-4,
            "{}: {before} {after}",
            size.label()
        );
        amounts.push(size.accounts()[1].amount.unwrap());
    }
    // A smaller back is flattened more by the same 15 mm, so that every size needs its own amount.
    assert!(
        amounts.windows(2).all(|pair| pair[0] > pair[1] + 0.01),
        "{amounts:?}"
    );
}

#[test]
fn a_size_that_is_refused_is_named() {
    let mut sizes = table("workshop-range").sizes().to_vec();
    let body = |pairs: &[(Measurement, f64)]| Body::from_taken(pairs.iter().copied()).unwrap();
    let odd = body(&[
        (Measurement::Height, 1680.0),
        (Measurement::BustGirth, 920.0),
        (Measurement::WaistGirth, 760.0),
        (Measurement::HipGirth, 1000.0),
        (Measurement::UpperArmGirth, 590.0),
    ]);
    sizes.insert(2, Size::new("strong", odd));
    let range = SizeTable::new("Range", Unit::Cm, sizes.clone());
    let error = grade(&recipe(Block::Bodice), &range).unwrap_err();
    let GradingError::Size { source, .. } = &error else {
        panic!("{error}");
    };
    assert!(matches!(source, MakeError::Draft { .. }), "{error}");
    assert!(
        error
            .to_string()
            .starts_with("size strong: the block cannot be drafted"),
        "{error}"
    );
    let step = Request::new(
        "back_length_reduction",
        serde_json::json!({"amount": 90, "hips_checked": true}),
    );
    let mut dress = recipe(Block::Dress);
    dress.alterations = vec![step.unwrap()];
    let one = SizeTable::new("One", Unit::Cm, sizes[..1].to_vec());
    let error = grade(&dress, &one).unwrap_err();
    assert_eq!(
        (error.code().as_str(), error.size()),
        ("alteration_refused", Some("smallest"))
    );
    let none = SizeTable::new("None", Unit::Cm, Vec::new());
    assert_eq!(grade(&dress, &none), Err(GradingError::NoSizes));
}
