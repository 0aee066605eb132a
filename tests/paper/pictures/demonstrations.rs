//! Every alteration shown on paper, as its documentation has it: the same blocks and the same wearer
//! as before and after.

use super::alterations::made;
use crate::support::bodies::repository_file;
use blockwright::alterations::{CATALOGUE, Entry};
use blockwright::demonstration::demonstrate;
use blockwright::drawing::{Drawing, Item, Text};
use blockwright::geometry::Vec2;
use blockwright::job::{JobFile, Output, Outputs, run};
use blockwright::render::{demonstration::row, svg};
use blockwright::units::Unit;

/// Where the documentation has its pictures.
const FOLDER: &str = "src/alterations/demonstrations";

/// The demonstration of an alteration's example: the first piece, and below it others that are cut
/// otherwise.
fn picture(entry: &Entry) -> String {
    let (before, done, _) = made(entry);
    let shown = demonstrate(entry.name, &before, &done.pattern).unwrap();
    let mut message: Vec<&str> = Vec::new();
    let mut all: Option<Drawing> = None;
    for slash in &shown.slashes {
        if message.contains(&slash.sentences[0].as_str()) {
            continue;
        }
        message.push(&slash.sentences[0]);
        let drawing = row(slash, Unit::Cm).unwrap();
        all = Some(match all {
            None => drawing,
            Some(above) => {
                let low = above.bounds().y1;
                above.with(drawing, Vec2::new(0.0, low + 12.0)).unwrap()
            }
        });
    }
    let label = format!("{} on paper", entry.name.replace('_', " "));
    let text = svg::inline(&all.unwrap(), &label);
    // On its own, too, it is a picture.
    text.replacen("<svg ", "<svg xmlns=\"http://www.w3.org/2000/svg\" ", 1)
}

#[test]
fn the_documentation_shows_every_alteration_as_it_is() {
    let pictures = CATALOGUE
        .iter()
        .map(|entry| (entry.name.to_owned(), picture(entry)));
    super::held_in(FOLDER, pictures);
    let names: Vec<String> = CATALOGUE
        .iter()
        .map(|e| format!("{}.svg", e.name))
        .collect();
    for file in std::fs::read_dir(super::root().join(FOLDER)).unwrap() {
        let name = file.unwrap().file_name().into_string().unwrap();
        assert!(names.contains(&name), "{name} is of no alteration");
    }
}

#[test]
fn no_word_lies_on_another_and_all_stand_in_a_frame_or_below_it() {
    for entry in CATALOGUE {
        let (before, done, _) = made(entry);
        let shown = demonstrate(entry.name, &before, &done.pattern).unwrap();
        for (slash, unit) in shown
            .slashes
            .iter()
            .zip([Unit::Cm, Unit::In].into_iter().cycle())
        {
            let drawing = row(slash, unit).unwrap();
            let words: Vec<&Text> = drawing
                .layers()
                .iter()
                .flat_map(|layer| &layer.items)
                .filter_map(|item| match item {
                    Item::Text(text) => Some(text),
                    Item::Path(_) => None,
                })
                .collect();
            for (k, one) in words.iter().enumerate() {
                let place = format!("{}: `{}`", entry.name, one.text);
                let bounds = one.bounds().inset(-0.2);
                assert!(
                    bounds.x0 > -1.0 && bounds.x1 < 264.0,
                    "{place} reaches out of the row"
                );
                assert!(
                    unit == Unit::Cm || !one.text.contains("mm"),
                    "{place} is in another unit"
                );
                for other in &words[k + 1..] {
                    let apart = bounds.intersect(other.bounds().inset(-0.2)).area() == 0.0;
                    assert!(apart, "{place} lies on `{}`", other.text);
                }
            }
        }
    }
}

#[test]
fn the_sheet_has_a_page_for_every_piece_that_is_cut() {
    let mut job = JobFile::parse(
        "title: Tunic on paper\nblock: tunic\nbody: x\ndemonstration: true\nprint: {paper: letter}\n\
         alterations:\n  - back_length_reduction: {amount: 20, hips_checked: true}\n  - shoulder_slope: {degrees: 2}\n",
    )
    .unwrap()
    .resolve(Some(&repository_file("measurement-sets/ines.yaml")))
    .unwrap();
    job.outputs = job.outputs.without(Output::Pages).without(Output::Sheet);
    let outcome = run(&job).unwrap();
    let bytes = outcome.file("demonstration.pdf").unwrap();
    let file = lopdf::Document::load_mem(&bytes.bytes).unwrap();
    // The back shortened; back and front sloped.
    let pages = file.get_pages();
    assert_eq!(pages.len(), 3);
    for id in pages.values() {
        let page = file.get_dictionary(*id).unwrap();
        let media = page.get(b"MediaBox").unwrap().as_array().unwrap();
        let size: Vec<f32> = media.iter().map(|n| n.as_float().unwrap()).collect();
        // Letter lying level, 11 by 8.5 in (ANSI Y14.1; value from memory).
        assert!(
            (size[2] - 792.0).abs() < 0.1 && (size[3] - 612.0).abs() < 0.1,
            "{size:?}"
        );
    }
    let page = String::from_utf8(outcome.file("fitting.html").unwrap().bytes.clone()).unwrap();
    assert_eq!(page.matches("class=\"demonstration\"").count(), 3);

    job.recipe.alterations.clear();
    job.outputs = Outputs::none().with(Output::Demonstration);
    let nothing = run(&job).unwrap();
    let file =
        lopdf::Document::load_mem(&nothing.file("demonstration.pdf").unwrap().bytes).unwrap();
    assert_eq!(file.get_pages().len(), 1);
}
