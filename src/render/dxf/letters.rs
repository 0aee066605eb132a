//! Texts in plain ASCII.

/// The longest text, in bytes: R12 and R13 take 255 (value from memory).
const LONGEST: usize = 250;

/// The text as it stands in the file: on one line, in ASCII. Any other letter is `\U+` and its
/// four hexadecimal digits, the practice of DXF, which readers turn back; so are the signs that
/// DXF gives a meaning (`\`, `^`, and a `%` behind another). A letter without four-digit code
/// becomes `?`. Cut short if it is longer than readers take.
pub(super) fn ascii(text: &str) -> String {
    let mut out = String::new();
    let mut before = ' ';
    for letter in text.trim().chars() {
        let coded = match letter {
            _ if letter.is_control() => " ".to_owned(),
            '\\' | '^' => code(letter),
            '%' if before == '%' => code(letter),
            ' '..='~' => letter.to_string(),
            '\u{80}'..='\u{ffff}' => code(letter),
            _ => "?".to_owned(),
        };
        if out.len() + coded.len() > LONGEST {
            break;
        }
        out.push_str(&coded);
        before = letter;
    }
    out
}

fn code(letter: char) -> String {
    format!("\\U+{:04X}", u32::from(letter))
}

#[cfg(test)]
mod tests {
    use super::ascii;

    #[test]
    fn letters_are_kept_or_coded() {
        assert_eq!(ascii("Linen tunic, 50 %"), "Linen tunic, 50 %");
        assert_eq!(ascii("Überrock"), "\\U+00DCberrock");
        assert_eq!(ascii("a\nb\u{7}c"), "a b c");
        assert_eq!(ascii("%%c \\P ^J"), "%\\U+0025c \\U+005CP \\U+005EJ");
        assert_eq!(ascii("gown \u{1f457}"), "gown ?");
    }

    #[test]
    fn a_long_text_is_cut_between_letters() {
        let text = ascii(&"ü".repeat(100));
        assert_eq!(text.len() % 7, 0);
        assert!(text.len() <= 250 && text.len() > 240);
    }
}
