//! The files of a range and their names.

use crate::job::JobError;
use crate::measurements::Size;

/// The most characters of a label that a file name takes.
const LONGEST: usize = 40;

/// The names of the sizes' pattern documents, in their order.
pub(in crate::job) fn size_names(sizes: &[Size]) -> Result<Vec<String>, JobError> {
    let mut names: Vec<String> = Vec::new();
    for size in sizes {
        let refused = |problem: String| JobError::Label {
            label: size.label().chars().take(LONGEST).collect(),
            problem,
        };
        let name = format!(
            "pattern-{}.json",
            part(size.label()).map_err(|p| refused(p.to_owned()))?
        );
        // Some file systems do not tell capitals.
        if names.iter().any(|other| other.eq_ignore_ascii_case(&name)) {
            return Err(refused(format!(
                "another size is written to {name} already; rename one"
            )));
        }
        names.push(name);
    }
    Ok(names)
}

/// A label as part of a file name: blanks and strokes become hyphens.
fn part(label: &str) -> Result<String, &'static str> {
    if label.is_empty() || label.chars().count() > LONGEST {
        return Err("a label has 1 to 40 characters");
    }
    if label.starts_with('.') || label.ends_with('.') {
        return Err("a label neither begins nor ends with a point");
    }
    let letters = label.chars().map(|letter| match letter {
        ' ' | '/' => Some('-'),
        '-' | '_' | '.' | '+' => Some(letter),
        _ => letter.is_ascii_alphanumeric().then_some(letter),
    });
    letters
        .collect::<Option<String>>()
        .ok_or("take letters a to z, digits, blanks and - _ . + /")
}

#[cfg(test)]
mod tests {
    use super::part;

    #[test]
    fn labels_become_plain_names_or_none() {
        assert_eq!(part("40").as_deref(), Ok("40"));
        assert_eq!(part("36/38 tall").as_deref(), Ok("36-38-tall"));
        for bad in [
            "",
            ".",
            "..",
            "../a",
            "a\\b",
            "a:b",
            "ä",
            "a\nb",
            &"x".repeat(41),
        ] {
            assert!(part(bad).is_err(), "{bad}");
        }
    }
}
