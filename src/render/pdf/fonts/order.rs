//! Words from right to left, in the order in which they are seen.

use unicode_bidi::{BidiInfo, Level};

/// The letters from left to right as they are seen; a text without letters that run from right to left
/// stays as it is.
pub(super) fn left_to_right(text: &str) -> String {
    if !text.chars().any(runs_left) {
        return text.to_owned();
    }
    let bidi = BidiInfo::new(text, None);
    let mut seen = String::with_capacity(text.len());
    for paragraph in &bidi.paragraphs {
        let (levels, runs) = bidi.visual_runs(paragraph, paragraph.range.clone());
        for run in runs {
            let level = levels.get(run.start).copied().unwrap_or(Level::ltr());
            let part = text.get(run).unwrap_or_default();
            if level.is_rtl() {
                seen.extend(joined(part).into_iter().rev().map(mirrored));
            } else {
                seen.push_str(part);
            }
        }
    }
    seen
}

const fn runs_left(letter: char) -> bool {
    matches!(letter, '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{feff}')
}

/// Brackets that open to the other side.
const fn mirrored(letter: char) -> char {
    match letter {
        '(' => ')',
        ')' => '(',
        '[' => ']',
        ']' => '[',
        '{' => '}',
        '}' => '{',
        '<' => '>',
        '>' => '<',
        '«' => '»',
        '»' => '«',
        other => other,
    }
}

/// The Arabic letters of which there are forms that join: the letter, its form alone, and whether it
/// joins the one after it. The forms are alone, at the end, at the beginning, in the middle (Unicode,
/// Arabic Presentation Forms-B).
const JOINING: [(char, u32, bool); 35] = [
    ('\u{622}', 0xfe81, false),
    ('\u{623}', 0xfe83, false),
    ('\u{624}', 0xfe85, false),
    ('\u{625}', 0xfe87, false),
    ('\u{626}', 0xfe89, true),
    ('\u{627}', 0xfe8d, false),
    ('\u{628}', 0xfe8f, true),
    ('\u{629}', 0xfe93, false),
    ('\u{62a}', 0xfe95, true),
    ('\u{62b}', 0xfe99, true),
    ('\u{62c}', 0xfe9d, true),
    ('\u{62d}', 0xfea1, true),
    ('\u{62e}', 0xfea5, true),
    ('\u{62f}', 0xfea9, false),
    ('\u{630}', 0xfeab, false),
    ('\u{631}', 0xfead, false),
    ('\u{632}', 0xfeaf, false),
    ('\u{633}', 0xfeb1, true),
    ('\u{634}', 0xfeb5, true),
    ('\u{635}', 0xfeb9, true),
    ('\u{636}', 0xfebd, true),
    ('\u{637}', 0xfec1, true),
    ('\u{638}', 0xfec5, true),
    ('\u{639}', 0xfec9, true),
    ('\u{63a}', 0xfecd, true),
    ('\u{641}', 0xfed1, true),
    ('\u{642}', 0xfed5, true),
    ('\u{643}', 0xfed9, true),
    ('\u{644}', 0xfedd, true),
    ('\u{645}', 0xfee1, true),
    ('\u{646}', 0xfee5, true),
    ('\u{647}', 0xfee9, true),
    ('\u{648}', 0xfeed, false),
    ('\u{649}', 0xfeef, false),
    ('\u{64a}', 0xfef1, true),
];

/// The letters of a stretch that runs from right to left, in the order in which they are read, Arabic
/// ones in the forms in which they join their neighbours.
fn joined(part: &str) -> Vec<char> {
    let letters: Vec<char> = part.chars().collect();
    let of = |letter: Option<&char>| {
        let letter = letter?;
        JOINING.iter().find(|(known, ..)| known == letter)
    };
    let form = |(index, letter): (usize, &char)| {
        let Some((_, alone, goes_on)) = of(Some(letter)) else {
            return *letter;
        };
        let before = index
            .checked_sub(1)
            .and_then(|index| of(letters.get(index)));
        let from_before = before.is_some_and(|(.., goes_on)| *goes_on);
        let to_after = *goes_on && of(letters.get(index + 1)).is_some();
        let step = match (from_before, to_after) {
            (false, false) => 0,
            (true, false) => 1,
            (false, true) => 2,
            (true, true) => 3,
        };
        char::from_u32(alone + step).unwrap_or(*letter)
    };
    letters.iter().enumerate().map(form).collect()
}

/// The letter of which a joining form was made, for readers of the file.
pub(super) fn plain(letter: char) -> char {
    let code = u32::from(letter);
    let made_of = JOINING.iter().find(|(_, alone, goes_on)| {
        let forms = if *goes_on { 4 } else { 2 };
        (*alone..alone + forms).contains(&code)
    });
    made_of.map_or(letter, |(letter, ..)| *letter)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_from_right_to_left_are_seen_in_their_order() {
        assert_eq!(left_to_right("Ines, 40"), "Ines, 40");
        // Hebrew: the first letter stands at the right, numbers run as they do.
        assert_eq!(left_to_right("שלום 40"), "40 םולש");
        // Unicode Standard Annex 9, rule N0: a number in brackets after a word from the right goes on
        // from it, to its left, and the brackets are mirrored.
        assert_eq!(left_to_right("for שרה (40)"), "for (40) הרש");
    }

    #[test]
    fn arabic_letters_join() {
        // seen, lam, alef, meem: begins, middle, end, alone.
        let seen: Vec<u32> = left_to_right("سلام").chars().map(u32::from).collect();
        assert_eq!(seen, [0xfee1, 0xfe8e, 0xfee0, 0xfeb3]);
        assert_eq!(plain('\u{feb3}'), 'س');
    }
}
