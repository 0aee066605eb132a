//! Names in other scripts, as readers of another make see them: poppler and qpdf.

use std::path::Path;
use std::process::Command;

use blockwright::draft::Block;
use blockwright::job::{Job, JobFont, Outcome, Output, Outputs, run};
use blockwright::measurements::MeasurementSet;
use blockwright::units::Unit;

use super::jobs::{BUILDS, body};
use super::tools::{folder, have, run as tool, words, write};

/// A font of the system with Hebrew and Arabic letters, from the Debian package fonts-dejavu-core.
const OTHER: &str = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf";

fn made(title: &str, wearer: &str, font: Option<Vec<u8>>) -> Outcome {
    let set = MeasurementSet::new(wearer, Unit::Cm, body(BUILDS[1]));
    let mut job = Job::new(title, Block::Skirt, set);
    job.outputs = Outputs::none().with(Output::Pages).with(Output::Sheet);
    job.recipe.date = Some("2026-03-14".into());
    job.print.font = font.map(|bytes| JobFont::new("other.ttf").with_bytes(bytes));
    run(&job).unwrap()
}

/// Every font in the file is embedded, in part, and leads back to letters.
fn all_embedded(pdf: &Path) -> usize {
    let table = tool(Command::new("pdffonts").arg(pdf));
    let rows: Vec<&str> = table.lines().skip(2).collect();
    for row in &rows {
        let fields: Vec<&str> = row.split_whitespace().collect();
        // name, type of three words, encoding, emb, sub, uni, object of two numbers.
        let from_end = |back: usize| fields[fields.len() - back];
        assert_eq!(
            (from_end(5), from_end(4), from_end(3)),
            ("yes", "yes", "yes"),
            "{row}"
        );
    }
    rows.len()
}

#[test]
fn names_in_latin_greek_cyrillic_and_vietnamese_are_written() {
    if !have("pdffonts") || !have("pdftotext") || !have("qpdf") {
        return;
    }
    let folder = folder("fonts");
    for (index, (title, wearer)) in [
        ("Spódnica „Łódź” ≥ 3", "Zoë Ångström"),
        ("Φούστα για την Ελένη", "Ελένη Παππά"),
        ("Спідниця, перша проба", "Марія Її Ґалаґан"),
        ("Váy của Hường", "Nguyễn Thị Hường"),
    ]
    .into_iter()
    .enumerate()
    {
        let outcome = made(title, wearer, None);
        for file in &outcome.files {
            let pdf = write(&folder, &format!("{index}-{}", file.name), &file.bytes);
            assert!((1..=2).contains(&all_embedded(&pdf)), "{}", file.name);
            tool(Command::new("qpdf").arg("--check").arg(&pdf));
            let text = words(&pdf, 1);
            assert!(text.contains(title), "{title}: {text}");
            assert!(text.contains(wearer), "{wearer}: {text}");
            let about = tool(Command::new("pdfinfo").arg(&pdf));
            assert!(about.contains(title), "{about}");
            let date = about.lines().find(|line| line.starts_with("CreationDate"));
            assert!(
                date.is_some_and(|line| line.contains("14") && line.contains("2026")),
                "{about}"
            );
        }
        let lacking = outcome
            .report
            .warnings
            .iter()
            .any(|w| w.code == "letters_not_drawn");
        assert!(!lacking, "{title}");
    }
}

#[test]
fn what_no_font_has_is_said_and_never_a_question_mark() {
    if !have("pdftotext") {
        return;
    }
    let folder = folder("fonts-lacking");
    let outcome = made("裁缝", "Ines", None);
    let warnings = &outcome.report.warnings;
    let said = warnings
        .iter()
        .find(|w| w.code == "letters_not_drawn")
        .unwrap();
    for part in ["`裁`", "`缝`", "the title", "print: {font: FILE}"] {
        assert!(said.text.contains(part), "{}", said.text);
    }
    let pdf = write(&folder, "a4.pdf", &outcome.files[0].bytes);
    let text = words(&pdf, 1);
    assert!(!text.contains('?'), "{text}");
    assert!(text.contains("□□"), "{text}");
}

/// Letters of another font, from right to left in the order in which they are read.
#[test]
fn another_font_writes_other_scripts_in_their_order() {
    let Ok(bytes) = std::fs::read(OTHER) else {
        eprintln!("SKIPPED: {OTHER} is not there");
        return;
    };
    if !have("pdffonts") || !have("pdftotext") {
        return;
    }
    let folder = folder("fonts-other");
    for (index, title) in ["חצאית ראשונה", "تنورة سلام"].into_iter().enumerate()
    {
        let outcome = made(title, "Ines", Some(bytes.clone()));
        let warnings = &outcome.report.warnings;
        assert!(
            !warnings.iter().any(|w| w.code == "letters_not_drawn"),
            "{title}"
        );
        let pdf = write(&folder, &format!("{index}.pdf"), &outcome.files[0].bytes);
        assert!(all_embedded(&pdf) >= 2);
        // A part of the font, not all of it: that has 757 kB.
        assert!(
            outcome.files[0].bytes.len() < 120_000,
            "{}",
            outcome.files[0].bytes.len()
        );
        let text = words(&pdf, 1);
        // Readers put the letters back in the order in which they are read; marks of direction aside.
        let plain: String = text
            .chars()
            .filter(|c| !('\u{202a}'..='\u{202e}').contains(c))
            .collect();
        for word in title.split(' ') {
            assert!(plain.contains(word), "{word}: {plain}");
        }
    }
}

#[test]
fn what_is_no_font_is_refused() {
    let set = MeasurementSet::new("Ines", Unit::Cm, body(BUILDS[1]));
    let mut job = Job::new("Skirt", Block::Skirt, set);
    job.print.font = Some(JobFont::new("x.ttf").with_bytes(b"no font".to_vec()));
    let error = run(&job).unwrap_err().to_string();
    assert!(error.contains("TrueType"), "{error}");
}
