//! What the standard faces can show.

/// The text in the one-byte encoding of the standard faces (WinAnsi, which is Windows code page
/// 1252), as [`printable`] has it. One byte a letter, so that widths can be looked up.
#[must_use]
#[cfg(any(test, feature = "pdf"))]
pub(crate) fn encode_winansi(text: &str) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(text.len());
    for letter in text.chars() {
        match byte(letter) {
            Some(byte) => bytes.push(byte),
            None => bytes.extend(stand_in(letter).chars().filter_map(byte)),
        }
    }
    bytes
}

/// The text as the standard faces will show it: letters they lack are written as near as possible
/// ("Łódź" as "Lódz"), signs by their usual typed form ("≥" as ">="), control characters as a
/// space, marks that combine with the letter before are left off, and the rest as a point.
///
/// ```
/// use blockwright::drawing::printable;
///
/// assert_eq!(printable("Łódź ≥ 3"), "Lódz >= 3");
/// assert_eq!(printable("裁\tx"), "· x");
/// ```
#[must_use]
pub fn printable(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match byte(letter) {
            Some(_) => out.push(letter),
            None => out.push_str(stand_in(letter)),
        }
    }
    out
}

/// What stands for a letter that nothing is near to.
const UNKNOWN: &str = "\u{b7}";

/// Whether nothing is near to a letter.
pub(super) fn is_unknown(letter: char) -> bool {
    byte(letter).is_none() && stand_in(letter) == UNKNOWN
}

/// Whether the standard faces show a letter or something near to it.
#[cfg_attr(not(feature = "pdf"), allow(dead_code))]
pub(crate) fn is_printable(letter: char) -> bool {
    !is_unknown(letter)
}

/// The letters of the bytes 0x80 to 0x9F; the five unassigned ones are U+FFFD.
const HIGH: [char; 32] = [
    '€', '\u{fffd}', '‚', 'ƒ', '„', '…', '†', '‡', 'ˆ', '‰', 'Š', '‹', 'Œ', '\u{fffd}', 'Ž',
    '\u{fffd}', '\u{fffd}', '‘', '’', '“', '”', '•', '–', '—', '˜', '™', 'š', '›', 'œ', '\u{fffd}',
    'ž', 'Ÿ',
];

pub(super) fn byte(letter: char) -> Option<u8> {
    match letter {
        ' '..='~' | '\u{a0}'..='\u{ac}' | '\u{ae}'..='\u{ff}' => {
            u8::try_from(u32::from(letter)).ok()
        }
        '\u{fffd}' => None,
        _ => HIGH
            .iter()
            .position(|&high| high == letter)
            .and_then(|at| u8::try_from(at + 0x80).ok()),
    }
}

pub(super) fn stand_in(letter: char) -> &'static str {
    match letter {
        'Ā' | 'Ă' | 'Ą' | 'Ǎ' => "A",
        'ā' | 'ă' | 'ą' | 'ǎ' => "a",
        'Ć' | 'Ĉ' | 'Ċ' | 'Č' => "C",
        'ć' | 'ĉ' | 'ċ' | 'č' => "c",
        'Ď' | 'Đ' => "D",
        'ď' | 'đ' => "d",
        'Ē' | 'Ĕ' | 'Ė' | 'Ę' | 'Ě' => "E",
        'ē' | 'ĕ' | 'ė' | 'ę' | 'ě' => "e",
        'Ĝ' | 'Ğ' | 'Ġ' | 'Ģ' => "G",
        'ĝ' | 'ğ' | 'ġ' | 'ģ' => "g",
        'Ĥ' | 'Ħ' => "H",
        'ĥ' | 'ħ' => "h",
        'Ĩ' | 'Ī' | 'Ĭ' | 'Į' | 'İ' => "I",
        'ĩ' | 'ī' | 'ĭ' | 'į' | 'ı' => "i",
        'Ĵ' => "J",
        'ĵ' => "j",
        'Ķ' => "K",
        'ķ' => "k",
        'Ĺ' | 'Ļ' | 'Ľ' | 'Ŀ' | 'Ł' => "L",
        'ĺ' | 'ļ' | 'ľ' | 'ŀ' | 'ł' => "l",
        'Ń' | 'Ņ' | 'Ň' => "N",
        'ń' | 'ņ' | 'ň' => "n",
        'Ō' | 'Ŏ' | 'Ő' => "O",
        'ō' | 'ŏ' | 'ő' => "o",
        'Ŕ' | 'Ŗ' | 'Ř' => "R",
        'ŕ' | 'ŗ' | 'ř' => "r",
        'Ś' | 'Ŝ' | 'Ş' | 'Ș' => "S",
        'ś' | 'ŝ' | 'ş' | 'ș' => "s",
        'ẞ' => "SS",
        'Ţ' | 'Ť' | 'Ŧ' | 'Ț' => "T",
        'ţ' | 'ť' | 'ŧ' | 'ț' => "t",
        'Ũ' | 'Ū' | 'Ŭ' | 'Ů' | 'Ű' | 'Ų' => "U",
        'ũ' | 'ū' | 'ŭ' | 'ů' | 'ű' | 'ų' => "u",
        'Ŵ' => "W",
        'ŵ' => "w",
        'Ŷ' => "Y",
        'ŷ' => "y",
        'Ź' | 'Ż' => "Z",
        'ź' | 'ż' => "z",
        '\u{2010}' | '\u{2011}' | '\u{2212}' => "-",
        '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{feff}' | '\u{300}'..='\u{36f}' => "",
        '\u{2000}'..='\u{200a}' | '\u{202f}' | '\u{205f}' | '\u{3000}' => " ",
        '′' => "'",
        '″' => "\"",
        '≤' => "<=",
        '≥' => ">=",
        '≈' => "~",
        '→' => "->",
        '←' => "<-",
        '↔' => "<->",
        'Δ' => "D",
        'μ' => "u",
        '⅓' => "1/3",
        '⅔' => "2/3",
        '⅛' => "1/8",
        '⅜' => "3/8",
        '⅝' => "5/8",
        '⅞' => "7/8",
        _ if letter.is_control() => " ",
        _ => UNKNOWN,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn encoding_and_printable_agree() {
        let text = "Ärmel \u{7f}\u{81}\u{fffd}½ ≥ 裁 e\u{301} Ÿ";
        assert_eq!(encode_winansi(text), encode_winansi(&printable(text)));
        assert_eq!(printable(text), "Ärmel   ·½ >= · e Ÿ");
    }
}
