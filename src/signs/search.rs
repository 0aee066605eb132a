//! Signs found by words.

use super::all::SIGNS;
use super::sign::Sign;

/// Words that say nothing about a sign.
const EMPTY: [&str; 16] = [
    "the", "a", "an", "at", "in", "on", "of", "and", "my", "is", "it", "to", "with", "from",
    "lies", "lie",
];

/// The signs that a description fits, the best first: where its words stand in the place, in what
/// the cloth shows, or in the cause. All of them for no words.
///
/// ```
/// use blockwright::signs::search;
/// let found = search("folds back waist");
/// assert_eq!(found[0].name, "folds_small_of_back");
/// assert!(search("zebra").is_empty());
/// ```
#[must_use]
pub fn search(words: &str) -> Vec<&'static Sign> {
    let words: Vec<String> = words
        .split(|c: char| !c.is_alphanumeric())
        .map(str::to_lowercase)
        .filter(|word| !word.is_empty() && !EMPTY.contains(&word.as_str()))
        .map(|word| stem(&word))
        .collect();
    if words.is_empty() {
        return SIGNS.iter().collect();
    }
    let mut found: Vec<(usize, &Sign)> = SIGNS
        .iter()
        .map(|sign| (score(sign, &words), sign))
        .filter(|(score, _)| *score > 0)
        .collect();
    // The order from the neck down stays among equals.
    found.sort_by_key(|(score, _)| std::cmp::Reverse(*score));
    let best = found.first().map_or(0, |(score, _)| *score);
    found.retain(|(score, _)| 4 * score >= 3 * best);
    found.into_iter().map(|(_, sign)| sign).collect()
}

fn score(sign: &Sign, words: &[String]) -> usize {
    let in_text = |text: &str, word: &String| {
        text.split(|c: char| !c.is_alphanumeric())
            .any(|own| stem(&own.to_lowercase()) == *word)
    };
    words
        .iter()
        .map(|word| {
            let place = in_text(sign.at, word) || in_text(sign.place.name(), word);
            let shows = in_text(sign.shows, word);
            // What a sign is named for counts most of what it shows.
            let name = in_text(sign.name, word);
            let else_ = in_text(sign.cause, word) || in_text(sign.alteration, word);
            4 * usize::from(place)
                + 3 * usize::from(shows || name)
                + usize::from(name)
                + usize::from(else_)
        })
        .sum()
}

/// A word without its plural.
fn stem(word: &str) -> String {
    match word.strip_suffix("ies") {
        Some(rest) => format!("{rest}y"),
        None => word.strip_suffix('s').unwrap_or(word).to_owned(),
    }
}
