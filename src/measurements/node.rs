//! A YAML document as a tree that knows the place of every part, so that all that is
//! wrong with a file can be said at once, each with its line.

use std::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_yaml::{NonFiniteFloatPolicy, Spanned, UserMessageFormatter};

use super::problem::{FileCause, FileErrors, FileProblem, Place};

/// The deepest nesting that is read; no file of measurements or jobs needs half of it.
const DEEPEST: usize = 16;

/// The most parts that are read; a table of a thousand sizes has some 25,000.
const MOST_PARTS: usize = 100_000;

/// A part of a YAML document and where it stands.
///
/// It can be a field of a larger document: it deserialises from whatever stands there.
///
/// ```
/// use blockwright::measurements::Node;
///
/// let node = Node::parse("unit: cm\nmeasurements:\n  bust_girth: 92\n")?;
/// let (key, value) = &node.entries().ok_or("no mapping")?[1];
/// assert_eq!((key.text.as_str(), value.place.line), ("measurements", 3));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Node {
    /// Where it begins.
    pub place: Place,
    /// What stands there.
    pub value: NodeValue,
}

/// What stands at a [`Node`].
///
/// ```
/// use blockwright::measurements::{Node, NodeValue};
///
/// let node = Node::parse("36 1/2 in")?;
/// assert_eq!(node.value, NodeValue::Text("36 1/2 in".into()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub enum NodeValue {
    /// Nothing, or `null`.
    Empty,
    /// `true` or `false`.
    Truth(bool),
    /// A number; may be infinite or NaN.
    Number(f64),
    /// A text.
    Text(String),
    /// A list.
    List(Vec<Node>),
    /// A mapping, in the order of the file.
    Map(Vec<(Key, Node)>),
}

/// A key of a mapping and where it stands.
///
/// ```
/// use blockwright::measurements::Node;
///
/// let node = Node::parse("{92: a}")?;
/// assert_eq!(node.entries().ok_or("no mapping")?[0].0.text, "92");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Key {
    /// Where it begins.
    pub place: Place,
    /// Its text.
    pub text: String,
}

impl Node {
    /// Reads a document.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with the one place where the text is no YAML, has a key twice, or
    /// is nested or repeated beyond reason.
    pub fn parse(text: &str) -> Result<Self, FileErrors> {
        serde_yaml::from_str_with_options(text, Self::options()).map_err(|error| {
            let place = error.location().map_or(Place::START, |location| Place {
                line: location.line(),
                column: location.column(),
            });
            FileErrors::one(FileProblem {
                place,
                path: String::new(),
                cause: FileCause::Syntax {
                    message: error
                        .without_snippet()
                        .render_with_formatter(&UserMessageFormatter),
                    snippet: error.render_with_formatter(&UserMessageFormatter),
                },
            })
        })
    }

    /// How documents are to be read, also those that only have a node inside.
    ///
    /// NaN and infinity are passed on, to be told at their measurement beside all other
    /// problems. Nesting is bounded far below the reader's own limit of 64, which
    /// overflows the 2 MiB stack of a thread in an unoptimised build.
    pub(crate) fn options() -> serde_yaml::Options {
        serde_yaml::options! {
            non_finite_float_policy: NonFiniteFloatPolicy::PassThrough,
            budget: serde_yaml::budget! { max_depth: DEEPEST, max_nodes: MOST_PARTS }
        }
    }

    /// The entries, if it is a mapping.
    #[must_use]
    pub fn entries(&self) -> Option<&[(Key, Self)]> {
        match &self.value {
            NodeValue::Map(entries) => Some(entries),
            _ => None,
        }
    }

    /// What it is, for an error message.
    #[must_use]
    pub const fn shape(&self) -> &'static str {
        match self.value {
            NodeValue::Empty => "nothing",
            NodeValue::Truth(_) => "true or false",
            NodeValue::Number(_) => "a number",
            NodeValue::Text(_) => "a text",
            NodeValue::List(_) => "a list",
            NodeValue::Map(_) => "a mapping",
        }
    }
}

impl<'de> Deserialize<'de> for Node {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let spanned = Spanned::<NodeValue>::deserialize(deserializer)?;
        Ok(Self {
            place: Place {
                line: spanned.referenced.line(),
                column: spanned.referenced.column(),
            },
            value: spanned.value,
        })
    }
}

impl<'de> Deserialize<'de> for NodeValue {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(ValueVisitor)
    }
}

struct ValueVisitor;

impl<'de> Visitor<'de> for ValueVisitor {
    type Value = NodeValue;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a number, a text, a list or a mapping")
    }

    fn visit_bool<E>(self, value: bool) -> Result<NodeValue, E> {
        Ok(NodeValue::Truth(value))
    }

    fn visit_i64<E>(self, value: i64) -> Result<NodeValue, E> {
        Ok(NodeValue::Number(value as f64))
    }

    fn visit_u64<E>(self, value: u64) -> Result<NodeValue, E> {
        Ok(NodeValue::Number(value as f64))
    }

    fn visit_i128<E>(self, value: i128) -> Result<NodeValue, E> {
        Ok(NodeValue::Number(value as f64))
    }

    fn visit_u128<E>(self, value: u128) -> Result<NodeValue, E> {
        Ok(NodeValue::Number(value as f64))
    }

    fn visit_f64<E>(self, value: f64) -> Result<NodeValue, E> {
        Ok(NodeValue::Number(value))
    }

    fn visit_str<E>(self, value: &str) -> Result<NodeValue, E> {
        Ok(NodeValue::Text(value.to_owned()))
    }

    fn visit_string<E>(self, value: String) -> Result<NodeValue, E> {
        Ok(NodeValue::Text(value))
    }

    fn visit_unit<E>(self) -> Result<NodeValue, E> {
        Ok(NodeValue::Empty)
    }

    fn visit_none<E>(self) -> Result<NodeValue, E> {
        Ok(NodeValue::Empty)
    }

    fn visit_some<D: Deserializer<'de>>(self, deserializer: D) -> Result<NodeValue, D::Error> {
        NodeValue::deserialize(deserializer)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<NodeValue, A::Error> {
        let mut list = Vec::new();
        while let Some(node) = items.next_element()? {
            list.push(node);
        }
        Ok(NodeValue::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<NodeValue, A::Error> {
        let mut map = Vec::new();
        while let Some(key) = entries.next_key::<Node>()? {
            let text = match key.value {
                NodeValue::Text(text) => text,
                NodeValue::Number(number) => number.to_string(),
                NodeValue::Truth(truth) => truth.to_string(),
                NodeValue::Empty => String::new(),
                // No key of ours: it is told as unknown, with its place.
                NodeValue::List(_) => "[…]".to_owned(),
                NodeValue::Map(_) => "{…}".to_owned(),
            };
            let place = key.place;
            map.push((Key { place, text }, entries.next_value()?));
        }
        Ok(NodeValue::Map(map))
    }
}
