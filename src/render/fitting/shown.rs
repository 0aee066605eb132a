//! What a step does to paper, among the tables of the page.

use super::Fitting;
use super::markup::{escaped, title_words};
use crate::render::{demonstration::row, svg};
use crate::units::speak;
use std::fmt::Write as _;

impl Fitting<'_> {
    /// The demonstration of a step.
    pub(super) fn demonstration(&self, out: &mut String, index: usize) {
        let Some(shown) = self.demonstrations.get(index) else {
            return;
        };
        let unit = self.body.unit();
        for slash in &shown.slashes {
            // What lies too far away to be drawn is left out.
            let Ok(drawing) = row(slash, unit) else {
                continue;
            };
            let name = slash.name();
            let said: Vec<String> = slash.sentences.iter().map(|s| speak(s, unit)).collect();
            let label = format!("{}: {}", title_words(name), escaped(&said.join(" ")));
            // Writing to a string cannot fail.
            let _ = write!(
                out,
                "<figure class=\"demonstration\">\n{}<figcaption><b>{}</b> on paper</figcaption>\n</figure>\n",
                svg::inline(&drawing, &label),
                title_words(name),
            );
        }
        for follows in &shown.follows {
            let _ = writeln!(out, "<p>{}</p>", escaped(&speak(follows, unit)));
        }
    }
}
