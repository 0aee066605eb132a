//! What stands on the page.

use super::tools::{CAPTIONS, TUNIC, page};
use roxmltree::{Document, Node, ParsingOptions};

fn parsed(page: &str) -> Document<'_> {
    let options = ParsingOptions {
        allow_dtd: true,
        ..ParsingOptions::default()
    };
    Document::parse_with_options(page, options).unwrap()
}

fn text(node: Node<'_, '_>) -> String {
    let parts = node.descendants().filter(Node::is_text);
    parts.filter_map(|part| part.text()).collect()
}

fn all<'a>(document: &'a Document<'a>, tag: &str) -> Vec<Node<'a, 'a>> {
    document
        .descendants()
        .filter(|node| node.has_tag_name(tag))
        .collect()
}

#[test]
fn the_page_needs_nothing_but_itself() {
    let page = page(TUNIC, &[]);
    for reference in [
        "http", "src=", "url(", "href", "@import", "<script", "<link", "//",
    ] {
        assert!(!page.contains(reference), "{reference}");
    }
}

#[test]
fn every_table_and_figure_is_named_and_whole() {
    let page = page(TUNIC, &[]);
    let document = parsed(&page);
    let captions: Vec<String> = all(&document, "caption").into_iter().map(text).collect();
    assert_eq!(captions, CAPTIONS);
    for table in all(&document, "table") {
        let count = |node: Node<'_, '_>| node.children().filter(Node::is_element).count();
        let rows: Vec<_> = table
            .descendants()
            .filter(|n| n.has_tag_name("tr"))
            .collect();
        assert!(rows.len() > 1);
        assert!(rows.iter().all(|row| count(*row) == count(rows[0])));
    }
    let ids: Vec<&str> = document
        .descendants()
        .filter_map(|node| node.attribute("id"))
        .collect();
    for (index, id) in ids.iter().enumerate() {
        assert!(!ids[..index].contains(id), "{id} stands twice");
    }
    let svgs = all(&document, "svg");
    // Three pieces over what they were, and the back cut on paper.
    assert_eq!(svgs.len(), 4);
    for svg in &svgs {
        assert_eq!(svg.attribute("role"), Some("img"));
    }
    for node in document.descendants() {
        for name in ["for", "aria-labelledby"] {
            for id in node.attribute(name).unwrap_or("").split_whitespace() {
                assert!(ids.contains(&id), "{id} is nowhere");
            }
        }
    }
    // Every switch has a label, every heading follows the order of its level.
    let inputs = all(&document, "input");
    assert!(inputs.len() >= 14);
    assert!(
        inputs
            .iter()
            .all(|i| i.parent().unwrap().has_tag_name("label"))
    );
    assert_eq!(all(&document, "h1").len(), 1);
    for part in ["Print at 100 %", "test square", "Sew a toile"] {
        assert!(page.contains(part), "{part}");
    }
    assert!(page.contains("estimated, ±1.3"));
}

#[test]
fn without_styles_everything_is_there_to_read() {
    let page = page(TUNIC, &[]);
    let document = parsed(&page);
    for node in document.descendants() {
        assert_eq!(node.attribute("hidden"), None);
    }
    // Nothing is hidden but by a switch that is turned off.
    let style = text(all(&document, "style")[0]);
    for rule in style.lines().filter(|line| line.contains("display: none")) {
        let printed = rule.starts_with(".switches");
        assert!(printed || rule.contains(":not(:checked)"), "{rule}");
    }
    for input in all(&document, "input") {
        let usual = input.attribute("type") == Some("checkbox")
            || input.attribute("id") == Some("align-waist");
        assert_eq!(input.attribute("checked").is_some(), usual);
    }
    let text = text(document.root_element());
    for part in [
        "Back length reduction",
        "Kept, and proved",
        "back side seam length",
    ] {
        assert!(text.contains(part), "{part}");
    }
}

#[test]
fn before_is_laid_on_after_at_the_waist_or_where_chosen() {
    let page = page(TUNIC, &[]);
    let document = parsed(&page);
    let groups: Vec<_> = document
        .descendants()
        .filter(|node| node.attribute("class") == Some("before"))
        .collect();
    assert_eq!(groups.len(), 3);
    let style = groups[0].attribute("style").unwrap();
    // The back keeps its waist; its neck came down by the amount; its hem stayed.
    for part in [
        "--waist:0.000px,0.000px",
        "--neck:0.000px,25.000px",
        "--hem:0.000px,0.000px",
        "--drafted:0.000px,0.000px",
    ] {
        assert!(style.contains(part), "{part} in {style}");
    }
    assert_eq!(
        groups[0].attribute("transform"),
        Some("translate(0.000 0.000)")
    );
}

#[test]
fn without_alterations_there_is_the_pattern_and_its_tables() {
    let page = page("examples/jobs/first-block.yaml", &[]);
    let document = parsed(&page);
    assert_eq!(all(&document, "svg").len(), 4);
    assert!(!page.contains("class=\"before\"") && !page.contains("type=\"radio\""));
    assert!(page.contains("Nothing was altered"));
    let captions: Vec<String> = all(&document, "caption").into_iter().map(text).collect();
    assert_eq!(captions, CAPTIONS[2..]);
}

#[test]
fn several_alterations_are_summed_up() {
    let twice = "  - back_length_reduction: {amount: 8}\n  - back_length_reduction: {to: 71 cm}\n";
    let old = "  - back_length_reduction: {amount: 25 mm, hips_checked: true}\n";
    let page = page(TUNIC, &[(old, twice)]);
    assert!(page.contains("<h3>1. Back length") && page.contains("<h3>2. Back length"));
    assert!(page.contains("From the draft to the altered pattern"));
}

#[test]
fn the_ways_to_shorten_a_back_are_there_to_choose_from() {
    let ways = |settings: &str| {
        let page = page(TUNIC, &[("{amount: 25 mm, hips_checked: true}", settings)]);
        let document = parsed(&page);
        let table = all(&document, "table").into_iter().find(|table| {
            let caption = table.descendants().find(|n| n.has_tag_name("caption"));
            caption.is_some_and(|c| text(c) == "Ways to shorten this back")
        });
        let rows = table.unwrap().descendants();
        let rows = rows.filter(|n| n.has_tag_name("tr")).skip(1).map(|row| {
            let cells = row.children().filter(Node::is_element).map(text);
            cells.collect::<Vec<_>>()
        });
        rows.collect::<Vec<_>>()
    };
    let rows = ways("{amount: 25 mm, hips_checked: true}");
    let names: Vec<_> = rows.iter().map(|row| row[0].as_str()).collect();
    assert_eq!(names, ["plain (made here)", "shared", "least distortion"]);
    assert_eq!(rows[0][1..4], ["holds", "17.0° to 5.7°", "0 cm"]);
    let rows = ways("{amount: 45, hinge: shared, hips_checked: true}");
    assert!(rows[0][1].starts_with("refused: "), "{:?}", rows[0]);
    assert_eq!(rows[1][0], "shared (made here)");
    // Built without the method, its row says so.
    let without = rows[2][1].contains("build with the feature least-distortion");
    assert_eq!(
        without,
        !cfg!(feature = "least-distortion"),
        "{:?}",
        rows[2]
    );
}

#[test]
fn what_the_user_writes_stays_text_and_bytes_stay_the_same() {
    let title = "<script>alert('1')</script> & \"Ω\" ]]> <!--";
    let quoted = format!("title: '{}'", title.replace('\'', "''"));
    let replaced = [("title: Linen tunic, second toile", quoted.as_str())];
    let hostile = page(TUNIC, &replaced);
    assert!(!hostile.contains("<script"));
    let document = parsed(&hostile);
    assert_eq!(text(all(&document, "h1")[0]), title);
    assert_eq!(hostile, page(TUNIC, &replaced));
}

/// Halves of their own and panels are laid over the whole that they were made of.
#[test]
fn every_piece_lies_over_what_it_was_made_of() {
    let old = "  - back_length_reduction: {amount: 25 mm, hips_checked: true}\n";
    for (steps, names) in [
        (
            "  - waist_girth: {amount: 12, side: right}\n",
            &["Back left", "Back right", "Front left", "Front right"][..],
        ),
        (
            "  - dart_to_seam: {dart: bust, to: armscye, at: 0.5}\n",
            &["Front centre", "Front side"][..],
        ),
        (
            "  - dart_to_seam: {dart: bust, to: armscye, at: 0.5}\n  - waist_girth: {amount: 6, side: right}\n",
            &["Front centre left", "Front side right"][..],
        ),
    ] {
        let page = page(TUNIC, &[(old, steps)]);
        let document = parsed(&page);
        let mut figures = all(&document, "figure");
        figures.retain(|figure| figure.attribute("class") != Some("demonstration"));
        let captions: Vec<String> = all(&document, "figcaption").into_iter().map(text).collect();
        for name in names {
            assert!(
                captions.iter().any(|c| c.starts_with(&format!("{name},"))),
                "{name}: {captions:?}"
            );
        }
        for (figure, caption) in figures.into_iter().zip(&captions) {
            let layer = |class: &str| {
                let mut groups = figure.descendants();
                groups.any(|node| node.attribute("class") == Some(class))
            };
            assert!(layer("before") && layer("after"), "{caption}");
            assert!(!caption.contains("no longer there"), "{caption}");
        }
    }
}
