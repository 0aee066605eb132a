//! Reading typed values from a tree, each fault with its place.

use super::fault::{Fault, ShapeFault, short};
use super::tree::Tree;
use serde::de::value::{MapAccessDeserializer, StrDeserializer};
use serde::de::{
    DeserializeOwned, DeserializeSeed, Deserializer, IntoDeserializer, MapAccess, SeqAccess,
    Visitor,
};

/// The most entries of a list or an object: a piece has a dozen edges.
const MOST_ENTRIES: usize = 1000;

/// A value of that type, read from a tree.
///
/// # Errors
/// The first fault, with its place.
pub(super) fn from_tree<T: DeserializeOwned>(tree: &Tree) -> Result<T, Fault> {
    T::deserialize(Part(tree))
}

#[derive(Clone, Copy)]
struct Part<'t>(&'t Tree);

impl<'t> Part<'t> {
    fn is_not(self, expected: &str) -> Fault {
        let found = match self.0 {
            Tree::Text(text) => format!("the text `{}`", short(text)),
            Tree::Number(number) => format!("the number {number}"),
            other => other.kind().to_owned(),
        };
        Fault::wrong(found, expected)
    }

    fn list(self) -> Result<&'t [Tree], Fault> {
        match self.0 {
            Tree::List(parts) => few(parts.len()).map(|()| parts.as_slice()),
            _ => Err(self.is_not("a list")),
        }
    }

    fn object(self) -> Result<Entries<'t>, Fault> {
        let Tree::Object(entries) = self.0 else {
            return Err(self.is_not("an object"));
        };
        few(entries.len())?;
        for (index, (key, _)) in entries.iter().enumerate() {
            if entries.iter().take(index).any(|(before, _)| before == key) {
                return Err(ShapeFault::Twice { key: short(key) }.into());
            }
        }
        Ok(Entries {
            rest: entries,
            value: None,
        })
    }

    fn text(self) -> Result<&'t str, Fault> {
        match self.0 {
            Tree::Text(text) => Ok(text),
            _ => Err(self.is_not("a text")),
        }
    }

    fn number(self) -> Result<f64, Fault> {
        match self.0 {
            Tree::Number(number) => Ok(*number),
            _ => Err(self.is_not("a number")),
        }
    }

    /// A whole number that is not negative.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // whole and in range
    fn count(self) -> Result<u64, Fault> {
        let number = self.number()?;
        if number.fract() != 0.0 || !(0.0..=1e15).contains(&number) {
            return Err(self.is_not("a whole number"));
        }
        Ok(number as u64)
    }
}

fn few(found: usize) -> Result<(), Fault> {
    if found <= MOST_ENTRIES {
        return Ok(());
    }
    let most = MOST_ENTRIES;
    Err(ShapeFault::TooMany { found, most }.into())
}

macro_rules! whole_numbers {
    ($($method:ident)*) => {
        $(fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
            visitor.visit_u64(self.count()?)
        })*
    };
}

impl<'de> Deserializer<'de> for Part<'_> {
    type Error = Fault;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self.0 {
            Tree::Null => visitor.visit_unit(),
            Tree::Truth(value) => visitor.visit_bool(*value),
            Tree::Number(value) => visitor.visit_f64(*value),
            Tree::Text(text) => visitor.visit_str(text),
            Tree::List(_) => self.deserialize_seq(visitor),
            Tree::Object(_) => self.deserialize_map(visitor),
        }
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self.0 {
            Tree::Truth(value) => visitor.visit_bool(*value),
            _ => Err(self.is_not("true or false")),
        }
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_f64(self.number()?)
    }

    fn deserialize_f32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_f64(self.number()?)
    }

    whole_numbers! {
        deserialize_u8 deserialize_u16 deserialize_u32 deserialize_u64
        deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_str(self.text()?)
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_str(self.text()?)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self.0 {
            Tree::Null => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Fault> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_seq(Items {
            parts: self.list()?,
            next: 0,
        })
    }

    fn deserialize_tuple<V: Visitor<'de>>(
        self,
        length: usize,
        visitor: V,
    ) -> Result<V::Value, Fault> {
        let parts = self.list()?;
        if parts.len() != length {
            let found = format!("a list of {}", parts.len());
            return Err(Fault::wrong(found, format!("a list of {length}")));
        }
        visitor.visit_seq(Items { parts, next: 0 })
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_map(self.object()?)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        visitor.visit_map(self.object()?)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        match self.0 {
            Tree::Object(_) => visitor.visit_enum(MapAccessDeserializer::new(self.object()?)),
            _ => {
                let name: StrDeserializer<'_, Fault> = self.text()?.into_deserializer();
                visitor.visit_enum(name)
            }
        }
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_unit()
    }

    serde::forward_to_deserialize_any! {
        char bytes byte_buf unit unit_struct tuple_struct identifier
    }
}

struct Items<'t> {
    parts: &'t [Tree],
    next: usize,
}

impl<'de> SeqAccess<'de> for Items<'_> {
    type Error = Fault;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Fault> {
        let Some(part) = self.parts.get(self.next) else {
            return Ok(None);
        };
        let place = self.next;
        self.next += 1;
        let value = seed.deserialize(Part(part));
        value.map(Some).map_err(|fault| fault.within(place))
    }
}

struct Entries<'t> {
    rest: &'t [(String, Tree)],
    value: Option<&'t (String, Tree)>,
}

impl<'de> MapAccess<'de> for Entries<'_> {
    type Error = Fault;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, Fault> {
        let Some((entry, rest)) = self.rest.split_first() else {
            return Ok(None);
        };
        self.rest = rest;
        self.value = Some(entry);
        let key: StrDeserializer<'_, Fault> = entry.0.as_str().into_deserializer();
        seed.deserialize(key).map(Some)
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Fault> {
        let Some((key, value)) = self.value.take() else {
            return Err(Fault::wrong("a key", "a key and its value"));
        };
        seed.deserialize(Part(value))
            .map_err(|fault| fault.within(key))
    }
}
