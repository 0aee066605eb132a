//! Reading a document in YAML, JSON among it: its parts know their places.

use super::node::{Key, Node, NodeValue, ValueOf};
use super::problem::{FileCause, FileErrors, FileProblem, Place};
use super::syntax::syntax_problem;
use crate::units::Unit;
use serde::de::{Deserialize, Deserializer};
use serde_yaml::{NonFiniteFloatPolicy, Spanned, UserMessageFormatter};

/// The deepest nesting of YAML that is read; no file of measurements or jobs needs half of it.
const DEEPEST: usize = 16;

/// The most parts of YAML that are read; a table of a thousand sizes has some 25,000.
const MOST_PARTS: usize = 100_000;

impl Node {
    /// Reads a YAML document, JSON among it; needs the feature `yaml`.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with the one place where the text is no YAML, has a key twice, or
    /// is nested or repeated beyond reason.
    pub fn parse(text: &str) -> Result<Self, FileErrors> {
        let read = serde_yaml::from_str_with_options::<Placed>(text, Self::options());
        let node = read.map(|placed| placed.0).map_err(|error| {
            let place = error.location().map_or(Place::START, |location| Place {
                line: location.line(),
                column: location.column(),
            });
            let words = error.without_snippet();
            let words = words.render_with_formatter(&UserMessageFormatter);
            FileErrors::one(syntax_problem(text, place, &words))
        })?;
        let mut cut = Vec::new();
        cut_decimals(&node, &mut cut);
        FileErrors::gathered(cut).map_or(Ok(node), Err)
    }

    /// How documents are to be read.
    ///
    /// NaN and infinity are passed on, to be reported at their measurement beside all other
    /// problems. Nesting is bounded far below the reader's own limit of 64, which
    /// overflows the 2 MiB stack of a thread in an unoptimised build.
    fn options() -> serde_yaml::Options {
        serde_yaml::options! {
            non_finite_float_policy: NonFiniteFloatPolicy::PassThrough,
            budget: serde_yaml::budget! { max_depth: DEEPEST, max_nodes: MOST_PARTS }
        }
    }
}

/// A part of a YAML document, read with its place.
struct Placed(Node);

impl From<Placed> for Node {
    fn from(placed: Placed) -> Self {
        placed.0
    }
}

impl<'de> Deserialize<'de> for Placed {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let spanned = Spanned::<ValueOf<Self>>::deserialize(deserializer)?;
        Ok(Self(Node {
            place: Place {
                line: spanned.referenced.line(),
                column: spanned.referenced.column(),
            },
            value: spanned.value.0,
        }))
    }
}

/// Lengths with a decimal comma that the commas of a list in braces have cut in two: `{amount: 2,5
/// cm}` has the entries `amount: 2` and `5 cm`.
fn cut_decimals(node: &Node, found: &mut Vec<FileProblem>) {
    match &node.value {
        NodeValue::Map(entries) => {
            for (before, after) in entries.iter().zip(entries.iter().skip(1)) {
                if let Some(problem) = cut_decimal(before, after) {
                    found.push(problem);
                }
            }
            for (_, value) in entries {
                cut_decimals(value, found);
            }
        }
        NodeValue::List(items) => {
            for item in items {
                cut_decimals(item, found);
            }
        }
        _ => {}
    }
}

fn cut_decimal((key, value): &(Key, Node), (next, empty): &(Key, Node)) -> Option<FileProblem> {
    let NodeValue::Number(whole) = value.value else {
        return None;
    };
    let is_rest = next.text.starts_with(|c: char| c.is_ascii_digit());
    if !is_rest || empty.value != NodeValue::Empty || whole.fract() != 0.0 {
        return None;
    }
    let rest: String = next.text.chars().take(40).collect();
    Some(FileProblem {
        unit: Unit::Mm,
        place: next.place,
        path: key.text.chars().take(40).collect(),
        cause: FileCause::Senseless {
            problem: format!("the comma in `{whole},{rest}` parts two entries of the braces"),
            hint: "write the decimals behind a point, or put the length between quotes",
        },
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::Node;

    #[test]
    fn what_is_wrong_is_said_without_the_words_of_a_parser() {
        for (text, line, cause) in [
            (
                "title: A\nprint:\n\tpaper: a4\n",
                3,
                "a tab stands before this line",
            ),
            (
                "title: A: b\nblock: skirt\n",
                1,
                "a second colon stands in this line",
            ),
            (
                "a:\n  b: 1\n  bust_girth:101\n  c: 2\n",
                3,
                "no space follows the colon in `bust_girth:101`",
            ),
            (
                "title: A\nblock: [bodice, skirt\nbody: b.yaml\n",
                2,
                "a bracket is opened here",
            ),
            ("title: \"A\nblock: skirt\n", 1, "a quote is opened here"),
            (
                "title: A\n block: skirt\n",
                2,
                "this line begins further right",
            ),
            (
                "title: A\nblock skirt\nbody: b\n",
                2,
                "this line has no colon",
            ),
            (
                "title: A\nblock: skirt\nblock: dress\n",
                3,
                "`block` stands twice",
            ),
            ("title: @A\nblock: skirt\n", 1, "no text begins with @"),
            (
                "a: 1\nb:\n  amount: {x: 2,5 cm}\n",
                3,
                "the comma in `2,5 cm` parts two entries",
            ),
        ] {
            let errors = Node::parse(text).unwrap_err();
            assert_eq!(errors.all().len(), 1, "{text}");
            let problem = &errors.all()[0];
            assert_eq!(problem.place.line, line, "{text}: {problem}");
            let message = problem.to_string();
            assert!(message.contains(cause), "{message}");
            for word in [
                "mapping values",
                "simple key",
                "block indentation",
                "indicator",
            ] {
                assert!(!message.contains(word), "{message}");
            }
        }
    }
}
