//! The names of files that this tool writes into a folder.

use blockwright::job::PaperSize;

/// The files of a job, a range and a lay whose names never change.
const NAMES: [&str; 22] = [
    "demonstration.pdf",
    "fitted-job.yaml",
    "fitting.html",
    "increments.csv",
    "lay.json",
    "lay.pdf",
    "lay.svg",
    "nest-projector.pdf",
    "nest-sheet.pdf",
    "nest.svg",
    "own-block.json",
    "own-block.svg",
    "pattern-projector.pdf",
    "pattern-sheet.pdf",
    "pattern.dxf",
    "pattern.json",
    "pattern.svg",
    "range.dxf",
    "range.json",
    "signs.html",
    "size-chart.csv",
    "size-chart.html",
];

/// The hidden list of the files of a result.
pub(super) const LIST: &str = ".blockwright-files.json";

/// The longest label of a size in a file name.
const LONGEST: usize = 40;

/// Whether a job, a range or a lay, of this version or an earlier one, writes a file of this name.
pub(super) fn is_output_name(name: &str) -> bool {
    let plain = unedited(name);
    let name = plain.as_deref().unwrap_or(name);
    name == LIST || NAMES.contains(&name) || is_tiled(name) || is_size(name) || is_toile(name)
}

/// The plain name of a file that was kept: `pattern.edited-2.svg` was `pattern.svg`.
pub(super) fn unedited(name: &str) -> Option<String> {
    let (stem, ending) = name.rsplit_once('.')?;
    let (plain, mark) = stem.rsplit_once('.')?;
    let number = mark.strip_prefix("edited")?;
    let counted = number
        .strip_prefix('-')
        .is_some_and(|n| !n.is_empty() && n.len() <= 3 && n.bytes().all(|b| b.is_ascii_digit()));
    (number.is_empty() || counted).then(|| format!("{plain}.{ending}"))
}

/// `pattern-a4.pdf`, `nest-letter.pdf`.
fn is_tiled(name: &str) -> bool {
    let stem = name.strip_suffix(".pdf").unwrap_or_default();
    let paper = stem
        .strip_prefix("pattern-")
        .or_else(|| stem.strip_prefix("nest-"));
    paper.is_some_and(|paper| PaperSize::ALL.iter().any(|size| size.name() == paper))
}

/// `toile.html`, `toile-before-gap.png`, `toile-own.obj`.
fn is_toile(name: &str) -> bool {
    if matches!(name, "toile.html" | "toile.json") {
        return true;
    }
    let rest = name.strip_prefix("toile-").unwrap_or_default();
    ["before", "after", "own", "pattern"].iter().any(|case| {
        let rest = rest.strip_prefix(case).unwrap_or_default();
        matches!(rest, ".obj" | "-cloth.png" | "-strain.png" | "-gap.png")
    })
}

/// `pattern-40.json`: the document of one size.
fn is_size(name: &str) -> bool {
    let stem = name.strip_suffix(".json").unwrap_or_default();
    let is_plain = |letter: char| letter.is_ascii_alphanumeric() || "-_.+".contains(letter);
    stem.strip_prefix("pattern-").is_some_and(|label| {
        (1..=LONGEST).contains(&label.len())
            && !label.starts_with('.')
            && !label.ends_with('.')
            && label.chars().all(is_plain)
    })
}

#[cfg(test)]
mod tests {
    use super::{is_output_name, unedited};

    #[test]
    fn what_the_tool_writes_is_known_and_nothing_else() {
        for own in [
            "pattern-a4.pdf",
            "pattern-projector.pdf",
            "pattern-sheet.pdf",
            "nest-letter.pdf",
            "pattern-36-38.json",
            "lay.svg",
            "toile.json",
            "toile-own-strain.png",
            "increments.csv",
        ] {
            assert!(is_output_name(own), "{own}");
        }
        for foreign in [
            "holiday.jpg",
            "toile-holiday.png",
            "pattern-holiday.pdf",
            "pattern-..json",
            "pattern-a b.json",
            "pattern-.json",
            "Pattern.json",
            "notes.json",
        ] {
            assert!(!is_output_name(foreign), "{foreign}");
        }
    }

    #[test]
    fn names_of_edited_files_are_known() {
        assert_eq!(
            unedited("pattern.edited.svg").as_deref(),
            Some("pattern.svg")
        );
        assert_eq!(unedited("job.edited-12.yaml").as_deref(), Some("job.yaml"));
        for other in [
            "pattern.svg",
            "pattern.edited",
            "a.edited-.svg",
            "a.editedx.svg",
            "edited.svg",
        ] {
            assert_eq!(unedited(other), None, "{other}");
        }
    }
}
