//! From what a fitter sees to what she does: every sign leads to a step that is made, notes of a
//! job become steps, drawings show the folds where they are.
#![allow(clippy::unwrap_used)]

use crate::support::bodies::repository_file;
use blockwright::alterations::{CATALOGUE, alter, find};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::job::{JobFile, Output, Outputs, run};
use blockwright::measurements::MeasurementSet;
use blockwright::piece::Pattern;
use blockwright::signs::{Found, Observed, SIGNS, drawing, observed, search};
use std::collections::BTreeSet;

fn dress() -> Pattern {
    let set = MeasurementSet::parse(&repository_file("measurement-sets/ines.yaml")).unwrap();
    let mut options = DraftOptions::of(Block::Dress);
    options.sleeve = Some(SleeveLength::Long);
    draft(set.body(), &options).unwrap()
}

#[test]
fn every_sign_leads_to_a_step_that_holds_at_usual_amounts() {
    let pattern = dress();
    for sign in SIGNS {
        let (low, high) = sign.usual;
        assert!(0.0 < low && low < high && high <= 40.0, "{}", sign.name);
        for amount in [low, 0.5 * (low + high), high] {
            let note = Observed::new(sign.at, sign.found, amount);
            let (found, step) = observed(&note).unwrap();
            assert_eq!((found.name, step.name()), (sign.name, sign.alteration));
            let made = alter(&pattern, &[step.alteration().unwrap()]);
            let made = made.unwrap_or_else(|why| panic!("{} by {amount}: {why}", sign.name));
            assert!(!made.accounts[0].changes.is_empty(), "{}", sign.name);
        }
    }
}

/// Cloth that is pinned away gets less, and a toile that opens gets more: of the measure by which
/// the alteration is aimed at, where it has one.
#[test]
fn what_is_pinned_gets_less_and_what_opens_gets_more() {
    let pattern = dress();
    for sign in SIGNS {
        // A gape is passed on into a dart, a back is shortened by a positive amount, and a
        // shoulder that is pinned at its point slopes more.
        let turned =
            ["bust", "shoulder_slope"].contains(&sign.alteration) || sign.found == Found::Marked;
        let Some(measure) = find(sign.alteration).unwrap().target.filter(|_| !turned) else {
            continue;
        };
        // More of it against less of it: a line may be drawn by the step itself.
        let measured = |amount| {
            let (_, step) = observed(&Observed::new(sign.at, sign.found, amount)).unwrap();
            let done = alter(&pattern, &[step.alteration().unwrap()]).unwrap();
            done.pattern.measured(&measure()).unwrap()
        };
        let change = measured(sign.usual.1) - measured(sign.usual.0);
        assert_eq!(
            change > 0.0,
            sign.found == Found::Opened,
            "{}: {change}",
            sign.name
        );
    }
}

#[test]
fn places_and_names_stand_once_and_every_entry_is_whole() {
    let places: BTreeSet<&str> = SIGNS.iter().map(|sign| sign.at).collect();
    let names: BTreeSet<&str> = SIGNS.iter().map(|sign| sign.name).collect();
    assert_eq!((places.len(), names.len()), (SIGNS.len(), SIGNS.len()));
    assert!(SIGNS.len() >= 25);
    for sign in SIGNS {
        let texts = [
            sign.shows,
            sign.cause,
            sign.rule_out,
            sign.measure,
            sign.elsewhere,
            sign.source(),
        ];
        assert!(texts.iter().all(|text| text.len() > 10), "{}", sign.name);
        assert!(!sign.folds.is_empty());
    }
    // From the neck down.
    assert!(SIGNS.is_sorted_by_key(|sign| sign.place));
    // Whatever a toile shows has its sign; moves of darts are choices of design.
    let alterations: BTreeSet<&str> = SIGNS.iter().map(|sign| sign.alteration).collect();
    for entry in CATALOGUE {
        let design = entry.name.starts_with("dart_");
        assert_eq!(!design, alterations.contains(entry.name), "{}", entry.name);
    }
}

#[test]
fn words_find_what_they_describe() {
    for (words, name) in [
        ("folds back waist", "folds_small_of_back"),
        ("folds at the small of the back", "folds_small_of_back"),
        ("front neckline stands off", "front_neckline_gapes"),
        ("skirt rides up hips", "hips_strain"),
        ("diagonal folds neck to underarm", "shoulder_slopes_more"),
        ("armhole cuts under arm", "armhole_cuts"),
        ("hem rises", "hem_rises_behind"),
        ("hem rises in front", "hem_rises_in_front"),
        ("Folds point to the BUST", "bust_points"),
    ] {
        let found = search(words);
        let place = found.iter().position(|sign| sign.name == name);
        assert!(place.is_some_and(|place| place < 3), "{words}: {place:?}");
    }
    assert!(search("xylophone").is_empty());
    assert_eq!(search(" ").len(), SIGNS.len());
}

#[test]
fn drawings_are_sound_and_their_folds_lie_on_the_figure() {
    for sign in SIGNS {
        let svg = drawing::drawing(sign);
        let read = roxmltree::Document::parse(&svg).unwrap();
        let folds = read
            .descendants()
            .find(|node| node.has_tag_name("g"))
            .unwrap();
        assert_eq!(folds.children().count(), sign.folds.len(), "{}", sign.name);
        for (x, y) in sign.folds.iter().flatten() {
            assert!(
                (12.0..=88.0).contains(x) && (25.0..=152.0).contains(y),
                "{}",
                sign.name
            );
        }
    }
    let page = drawing::page();
    assert_eq!(page.matches("<svg").count(), SIGNS.len());
    assert!(!page.contains("<script"));
}

fn job(notes: &str) -> String {
    format!(
        "title: Second toile\nblock: tunic\nsleeve: long\nalterations: [hip_girth: {{amount: 8}}]\n\
         observed: {notes}\nbody: {{unit: cm, measurements: {{height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100}}}}\n"
    )
}

#[test]
fn pin_notes_become_steps_in_a_fitters_order() {
    let notes = "[{place: upper arm, opened: 12 mm}, {place: centre back waist, pinned: 1 in}, \
                 {place: shoulder point, pinned: 16, side: left}]";
    let mut job = JobFile::parse(&job(notes)).unwrap().resolve(None).unwrap();
    job.outputs = Outputs::none().with(Output::Document);
    let steps = &job.recipe.alterations;
    let names: Vec<&str> = steps.iter().map(|step| step.name()).collect();
    assert_eq!(
        names,
        [
            "hip_girth",
            "back_length_reduction",
            "shoulder_slope",
            "upper_arm"
        ]
    );
    assert_eq!(steps[1].alteration().unwrap().amount(), Some(25.4));
    let report = run(&job).unwrap().report;
    let doubts: Vec<&str> = report
        .warnings
        .iter()
        .filter(|warning| warning.code == "rule_out_first")
        .map(|warning| warning.text.as_str())
        .collect();
    assert_eq!(doubts.len(), 3);
    assert!(
        doubts[0].contains("rule out hips that are too narrow"),
        "{}",
        doubts[0]
    );
    // Half of the fold on each shoulder: 8 mm at the shoulder point.
    let slope = &report.account[2];
    let degrees = slope.amount.unwrap();
    assert!((2.0..8.0).contains(&degrees), "{degrees}");
}

#[test]
fn notes_that_make_no_step_are_named_with_their_cure() {
    for (notes, says) in [
        (
            "[{place: centre back waste, pinned: 25}]",
            "did you mean `centre back waist`?",
        ),
        (
            "[{place: centre back waist, opened: 25}]",
            "the amount is pinned, not opened",
        ),
        (
            "[{place: centre back waist}]",
            "one of `pinned`, `opened` and `marked`",
        ),
        ("[{place: upper arm, opened: 2 m}]", "observed.opened"),
        (
            "[{place: upper arm, opened: 0.2}]",
            "no amount that a toile shows",
        ),
        ("[{pinned: 25}]", "write `place:`"),
        (
            "[{place: upper arm, opened: 12, side: middle}]",
            "`left`, `right`",
        ),
        ("[{place: upper arm, opned: 12}]", "opened"),
        ("25", "a list of notes"),
    ] {
        let errors = JobFile::parse(&job(notes)).unwrap_err().to_string();
        assert!(errors.contains(says), "{notes}: {errors}");
    }
}
