//! A document in YAML or JSON as a tree, so that all that is wrong with it can be said at once;
//! parts of YAML know their places.

use std::collections::BTreeSet;
use std::fmt;
use std::marker::PhantomData;

use serde::de::{Deserialize, Deserializer, Error as _, MapAccess, SeqAccess, Visitor};

use super::problem::{FileCause, FileErrors, FileProblem, Place};
use crate::units::Unit;

/// A part of a document and where it stands.
///
/// It can be a field of a larger document: it deserialises from whatever stands there, then without
/// knowing its place.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Node {
    /// Where it begins.
    pub place: Place,
    /// What stands there.
    pub value: NodeValue,
}

/// What stands at a [`Node`].
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum NodeValue {
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
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub(crate) struct Key {
    /// Where it begins.
    pub place: Place,
    /// Its text.
    pub text: String,
}

impl Node {
    /// Reads a JSON document. Its parts do not know their places.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with the one place where the text is no JSON or has a key twice.
    pub fn from_json(text: &str) -> Result<Self, FileErrors> {
        serde_json::from_str(text).map_err(|error| {
            let place = Place {
                line: error.line() as u64,
                column: error.column() as u64,
            };
            let words = error.to_string();
            let message = words.split(" at line ").next().unwrap_or(&words).to_owned();
            FileErrors::one(FileProblem {
                unit: Unit::Mm,
                place,
                path: String::new(),
                cause: FileCause::Syntax {
                    snippet: format!("{place}: this is no JSON: {message}"),
                    message,
                    cure: "write it as JSON, each key once",
                },
            })
        })
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
        let value = ValueOf::<Self>::deserialize(deserializer)?.0;
        let place = Place::UNKNOWN;
        Ok(Self { place, value })
    }
}

/// What stands at a part whose own parts are read as `N`.
pub(super) struct ValueOf<N>(pub(super) NodeValue, PhantomData<N>);

impl<'de, N: Deserialize<'de> + Into<Node>> Deserialize<'de> for ValueOf<N> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let visitor = ValueVisitor(PhantomData::<N>);
        Ok(Self(deserializer.deserialize_any(visitor)?, PhantomData))
    }
}

struct ValueVisitor<N>(PhantomData<N>);

impl<'de, N: Deserialize<'de> + Into<Node>> Visitor<'de> for ValueVisitor<N> {
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
        deserializer.deserialize_any(self)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<NodeValue, A::Error> {
        let mut list = Vec::new();
        while let Some(node) = items.next_element::<N>()? {
            list.push(node.into());
        }
        Ok(NodeValue::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut entries: A) -> Result<NodeValue, A::Error> {
        let mut map = Vec::new();
        let mut seen = BTreeSet::new();
        while let Some(key) = entries.next_key::<N>()? {
            let key: Node = key.into();
            let text = match key.value {
                NodeValue::Text(text) => text,
                NodeValue::Number(number) => number.to_string(),
                NodeValue::Truth(truth) => truth.to_string(),
                NodeValue::Empty => String::new(),
                // No key of ours: it is reported as unknown, with its place.
                NodeValue::List(_) => "[…]".to_owned(),
                NodeValue::Map(_) => "{…}".to_owned(),
            };
            if !seen.insert(text.clone()) {
                let shown: String = text.chars().take(40).collect();
                return Err(A::Error::custom(format!("`{shown}` stands twice")));
            }
            let place = key.place;
            let value: N = entries.next_value()?;
            map.push((Key { place, text }, value.into()));
        }
        Ok(NodeValue::Map(map))
    }
}
