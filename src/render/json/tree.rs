//! A JSON text as a tree, whatever it holds: what is read from it is looked at later, part by part.

use super::DocumentError;
use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde_json::error::Category;
use std::fmt;

/// The longest document that is read, in bytes: a dress with sleeves, unlike on both sides, has
/// a twentieth of it.
pub(super) const MOST_BYTES: usize = 4 << 20;

/// A part of a JSON text. An object keeps the order of its keys, and keys that it has twice.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Tree {
    Null,
    Truth(bool),
    Number(f64),
    Text(String),
    List(Vec<Tree>),
    Object(Vec<(String, Tree)>),
}

impl Tree {
    /// The tree of a text.
    ///
    /// # Errors
    /// When the text is too long, ends early or is no JSON.
    pub fn parse(bytes: &[u8]) -> Result<Self, DocumentError> {
        if bytes.len() > MOST_BYTES {
            return Err(DocumentError::TooLong {
                bytes: bytes.len(),
                most: MOST_BYTES,
            });
        }
        serde_json::from_slice(bytes).map_err(|error| {
            let (line, column) = (error.line(), error.column());
            match error.classify() {
                Category::Eof => DocumentError::EndsEarly { line, column },
                _ => DocumentError::NotJson { line, column },
            }
        })
    }

    /// What an object has under a key.
    pub fn get(&self, key: &str) -> Option<&Self> {
        match self {
            Self::Object(entries) => entries.iter().find(|(k, _)| k == key).map(|(_, v)| v),
            _ => None,
        }
    }

    /// What it is, in a word.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Null => "nothing (null)",
            Self::Truth(_) => "true or false",
            Self::Number(_) => "a number",
            Self::Text(_) => "a text",
            Self::List(_) => "a list",
            Self::Object(_) => "an object",
        }
    }
}

impl<'de> Deserialize<'de> for Tree {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(AnyPart)
    }
}

struct AnyPart;

impl<'de> Visitor<'de> for AnyPart {
    type Value = Tree;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E>(self) -> Result<Tree, E> {
        Ok(Tree::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Tree, E> {
        Ok(Tree::Truth(value))
    }

    fn visit_f64<E>(self, value: f64) -> Result<Tree, E> {
        Ok(Tree::Number(value))
    }

    #[allow(clippy::cast_precision_loss)] // no number of a pattern has more than 53 bits
    fn visit_i64<E>(self, value: i64) -> Result<Tree, E> {
        Ok(Tree::Number(value as f64))
    }

    #[allow(clippy::cast_precision_loss)] // no number of a pattern has more than 53 bits
    fn visit_u64<E>(self, value: u64) -> Result<Tree, E> {
        Ok(Tree::Number(value as f64))
    }

    fn visit_str<E>(self, value: &str) -> Result<Tree, E> {
        Ok(Tree::Text(value.to_owned()))
    }

    fn visit_string<E>(self, value: String) -> Result<Tree, E> {
        Ok(Tree::Text(value))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut access: A) -> Result<Tree, A::Error> {
        let mut parts = Vec::new();
        while let Some(part) = access.next_element()? {
            parts.push(part);
        }
        Ok(Tree::List(parts))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut access: A) -> Result<Tree, A::Error> {
        let mut entries = Vec::new();
        while let Some(entry) = access.next_entry()? {
            entries.push(entry);
        }
        Ok(Tree::Object(entries))
    }
}
