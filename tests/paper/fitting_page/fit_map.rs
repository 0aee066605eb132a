//! The fit map on the page and in the document.

use crate::support::bodies::set;
use blockwright::draft::Block;
use blockwright::job::{Job, Output, Outputs, run};
use blockwright::measurements::{Measurement as M, MeasurementSet};
use blockwright::render::json::PatternDocument;
use roxmltree::{Document, ParsingOptions};

/// A dress for Ines, looked at on a wearer whose back is shorter and whose front is longer.
fn compared(back: f64, front: f64) -> Job {
    let size = set("ines");
    let body = size.body();
    let other = |of: M, by: f64| (of, body.value(of) + by);
    let (of, value) = other(M::BackWaistLength, -back);
    let wearer = body.with_taken(of, value).unwrap();
    let (of, value) = other(M::CentreFrontWaistLength, front);
    let wearer = wearer.with_taken(of, value).unwrap();
    let mut job = Job::new("Dress", Block::Dress, size.clone());
    job.compared = Some(MeasurementSet::new("Tilde & Co", size.unit(), wearer));
    job.outputs = Outputs::none().with(Output::Fitting).with(Output::Document);
    job
}

#[test]
fn strips_are_tinted_and_hatched_and_their_figures_written() {
    let outcome = run(&compared(18.0, 0.0)).unwrap();
    let page = String::from_utf8(outcome.file("fitting.html").unwrap().bytes.clone()).unwrap();
    let options = ParsingOptions {
        allow_dtd: true,
        ..ParsingOptions::default()
    };
    let tree = Document::parse_with_options(&page, options).unwrap();
    let strongest = tree.descendants();
    let strongest = strongest.filter(|n| n.attribute("fill") == Some("#ef9d4d"));
    assert!(strongest.count() >= 2, "a legend and the centre back");
    let form = tree.descendants();
    let form = form.filter(|n| n.attribute("class") == Some("form-figure"));
    assert_eq!(form.count(), 1);
    let hatched = tree.descendants().filter(|n| {
        let fill = n.attribute("fill").unwrap_or_default();
        n.has_tag_name("rect") && fill.starts_with("url(#hatch-")
    });
    // Every hatch that is used is defined once: without colour the map still reads.
    for rect in hatched {
        let id = rect.attribute("fill").unwrap_or_default();
        let id = id.trim_start_matches("url(#").trim_end_matches(')');
        let defined = tree.descendants().filter(|n| n.attribute("id") == Some(id));
        assert_eq!(defined.count(), 1, "{id}");
    }
    assert!(page.contains("+1.8 cm") && page.contains("Tilde &amp; Co"));
    assert!(page.contains("back_length_reduction by 1.8 cm"));
    assert!(page.contains("replaces no toile"));
    for said in [
        "to waist centre",
        "waist to hip centre",
        "Bust depth",
        "Standard deviations",
    ] {
        assert!(page.contains(said), "{said}");
    }
}

#[test]
fn a_short_front_is_short_on_the_page_and_in_the_report() {
    let outcome = run(&compared(12.0, 12.0)).unwrap();
    let text = outcome.report.text();
    assert!(text.contains("The front is 1.2 cm shorter"), "{text}");
    assert!(!text.contains("back_length_reduction by"));
    let json = serde_json::to_value(&outcome.report).unwrap();
    assert_eq!(json["fit_map"]["map"]["advice"][0]["code"], "short_front");
    // Each residual and each distance from what is expected.
    let body = &json["fit_map"]["body"];
    let reproduced = body["reproduced"].as_array().unwrap();
    assert!(reproduced.len() >= 11);
    assert!(
        reproduced
            .iter()
            .all(|one| one["miss"].as_f64().unwrap().abs() < 1.0)
    );
    let dimensions = body["dimensions"].as_array().unwrap();
    assert_eq!(dimensions.len(), 27);
    assert!(
        dimensions
            .iter()
            .all(|one| one["spreads"].as_f64().unwrap().abs() <= 4.0)
    );
    assert!(text.contains("bust_depth") && text.contains("standard deviations"));
}

#[test]
fn the_document_keeps_the_map_and_reads_it_back() {
    let job = compared(18.0, 0.0);
    let outcome = run(&job).unwrap();
    let bytes = &outcome.file("pattern.json").unwrap().bytes;
    let read = PatternDocument::read_proved(bytes).unwrap();
    let map = read.fit_map.as_ref().unwrap();
    assert_eq!(map.wearer, "Tilde & Co");
    assert_eq!(map.stations[0].excess, 18.0);
    assert_eq!(read.text().into_bytes(), *bytes);
    let mut plain = job;
    plain.compared = None;
    let outcome = run(&plain).unwrap();
    let bytes = &outcome.file("pattern.json").unwrap().bytes;
    assert!(PatternDocument::read(bytes).unwrap().fit_map.is_none());
    assert!(!String::from_utf8_lossy(bytes).contains("fit_map"));
}

/// Text on every tint has a contrast of 7 to 1 (WCAG 2.1, success criterion 1.4.6, and its formula for
/// relative luminance; values from memory), and so have the hatches of 3 to 1 (1.4.11).
#[test]
fn figures_and_hatches_stand_out_from_every_tint() {
    let drawing = crate::support::bodies::repository_file("src/render/fitting/map_figure.rs");
    let luminance = |hex: &str| {
        let part = |from: usize| {
            let value = u8::from_str_radix(&hex[from..from + 2], 16).unwrap();
            let c = f64::from(value) / 255.0;
            if c <= 0.03928 {
                c / 12.92
            } else {
                ((c + 0.055) / 1.055).powf(2.4)
            }
        };
        0.2126 * part(0) + 0.7152 * part(2) + 0.0722 * part(4)
    };
    let contrast = |a: &str, b: &str| {
        let (a, b) = (luminance(a) + 0.05, luminance(b) + 0.05);
        if a > b { a / b } else { b / a }
    };
    let mut tints = 0;
    let lines = drawing
        .lines()
        .filter(|line| line.starts_with("const LONG") || line.starts_with("const SHORT"));
    for tint in lines
        .flat_map(|line| line.split('#').skip(1))
        .map(|rest| &rest[..6])
    {
        tints += 1;
        assert!(contrast("222222", tint) >= 7.0, "{tint}");
        assert!(contrast("3b342b", tint) >= 3.0, "{tint}");
    }
    assert_eq!(tints, 6);
}
