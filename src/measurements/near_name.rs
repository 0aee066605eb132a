//! The known name that a mistyped one was probably meant to be.

/// The longest name that is compared; a longer one is no slip of the finger.
const LONGEST: usize = 60;

/// The name nearest to `written`: one that it begins, or the one fewest single
/// changes away, if those are at most a third of its letters.
pub(crate) fn nearest<'a>(written: &str, names: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let written: Vec<char> = written.chars().take(LONGEST + 1).collect();
    if written.len() < 2 || written.len() > LONGEST {
        return None;
    }
    let most = written.len().div_ceil(3);
    let mut best: Option<(usize, &str)> = None;
    for name in names {
        let letters: Vec<char> = name.chars().collect();
        // It takes a change for every letter that one has more than the other.
        let least = letters.len().abs_diff(written.len());
        let begun = written.len() >= 3 && letters.starts_with(&written);
        if least > most && !begun {
            continue;
        }
        let steps = if begun {
            0
        } else {
            changes(&written, &letters)
        };
        if steps <= most && best.is_none_or(|(least, _)| steps < least) {
            best = Some((steps, name));
        }
    }
    best.map(|(_, name)| name)
}

/// Letters to insert, remove, replace or swap with their neighbour to turn one word
/// into the other.
fn changes(a: &[char], b: &[char]) -> usize {
    // A row for each letter of `a`: the changes from `a` up to it to every beginning of `b`.
    let mut before_last: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    let mut last_letter = None;
    for (i, letter) in a.iter().enumerate() {
        let mut left = i + 1;
        let mut row = vec![left];
        let mut other_before = None;
        // Two letters back in both words, from the second letter of each on.
        let mut two_back = before_last.into_iter();
        for (other, [diagonal, above]) in b.iter().zip(last.array_windows()) {
            let replaced = diagonal + usize::from(letter != other);
            let mut least = replaced.min(above + 1).min(left + 1);
            if let Some(before) = other_before
                && let Some(steps) = two_back.next()
                && letter == before
                && last_letter == Some(other)
            {
                least = least.min(steps + 1);
            }
            row.push(least);
            (left, other_before) = (least, Some(other));
        }
        before_last = last;
        last = row;
        last_letter = Some(letter);
    }
    last.last().copied().unwrap_or(a.len())
}

#[cfg(test)]
mod tests {
    use super::changes;

    #[test]
    fn changes_are_counted() {
        let count = |a: &str, b: &str| {
            changes(
                &a.chars().collect::<Vec<_>>(),
                &b.chars().collect::<Vec<_>>(),
            )
        };
        assert_eq!(count("waist", "waist"), 0);
        assert_eq!(count("wiast", "waist"), 1);
        assert_eq!(count("", "hip"), 3);
        assert_eq!(count("hips", "hip"), 1);
    }
}
