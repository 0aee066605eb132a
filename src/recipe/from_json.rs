//! Recipes and what they are made of, read from JSON or any other format that serde knows, by the
//! code that reads job files: the same keys, the same units, the same errors.

use super::Recipe;
use super::read_allowance::allowance;
use super::read_alterations::request;
use super::read_block::block;
use super::read_ease::{ease, fit};
use super::read_options::{self, options};
use super::read_recipe::RecipeFields;
use super::read_shape::{side, sleeve_length};
use crate::allowance::Allowances;
use crate::alterations::Request;
use crate::draft::{Block, DraftOptions, Ease, Fit, Side, SleeveLength};
use crate::measurements::{FileCause, FileErrors, FileProblem, Node, Reader};
use crate::units::Unit;
use serde::de::{Deserialize, Deserializer, Error as _};

impl Recipe {
    /// Reads a recipe written as JSON, with the keys of a job file.
    ///
    /// ```
    /// use blockwright::recipe::Recipe;
    /// let recipe = Recipe::from_json(
    ///     r#"{"title": "Tunic", "block": "tunic", "ease": {"bust": "2 1/2 in"}, "length": "60 cm",
    ///         "alterations": [{"shoulder_slope": {"to": "body"}}], "allowance": "usual"}"#,
    /// )?;
    /// assert_eq!((recipe.options.ease.bust, recipe.options.length), (63.5, Some(600.0)));
    ///
    /// let errors = Recipe::from_json(r#"{"title": "Tunic", "block": "tunik"}"#).unwrap_err();
    /// assert!(errors.to_string().contains("did you mean `tunic`?"));
    /// # Ok::<(), blockwright::measurements::FileErrors>(())
    /// ```
    ///
    /// # Errors
    /// [`FileErrors`] with every problem.
    pub fn from_json(text: &str) -> Result<Self, FileErrors> {
        recipe(&Node::from_json(text)?)
    }
}

fn recipe(node: &Node) -> Result<Recipe, FileErrors> {
    whole(node, |reader, node| {
        let expected = "a mapping with `title` and `block`";
        let fields = reader.fields(node, "", RecipeFields::KEYS, expected);
        RecipeFields::of(fields).read(reader, node)
    })
}

/// Reads a value from a node that is all of a document; the problems, if there are any.
pub(crate) fn whole<T>(
    node: &Node,
    read: impl FnOnce(&mut Reader, &Node) -> Option<T>,
) -> Result<T, FileErrors> {
    let mut reader = Reader::default();
    let found = read(&mut reader, node);
    if let Some(errors) = FileErrors::gathered(reader.problems) {
        return Err(errors);
    }
    found.ok_or_else(|| {
        FileErrors::one(FileProblem {
            unit: Unit::Mm,
            place: node.place,
            path: String::new(),
            cause: FileCause::WrongShape {
                found: node.shape(),
                expected: "a value, or leave it out",
            },
        })
    })
}

/// Deserialises types through the code that reads job files.
macro_rules! deserialize {
    ($($(#[$doc:meta])* $name:ty: $read:expr;)+) => {$(
        $(#[$doc])*
        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                whole(&Node::deserialize(deserializer)?, $read).map_err(D::Error::custom)
            }
        }
    )+};
}

deserialize! {
    /// From a block's name, or `["bodice", "skirt"]`.
    Block: block;
    /// From `close`, `regular` or `loose`.
    Fit: |reader, node| fit(reader, node, "");
    /// From a fit, or ease by place: `{"fit": "close", "bust": "2 in"}`; that of bodice, skirt and
    /// dress where a place is left out.
    Ease: |reader, node| Some(ease(reader, node, Block::Dress).0);
    /// From `shaped` or `straight`.
    Side: side;
    /// From `short` or `long`.
    SleeveLength: sleeve_length;
    /// From the keys of a job file: `{"block": "dress", "ease": "close", "length": "60 cm"}`. What
    /// the block has no use for is ignored; a [`Recipe`] notes it.
    DraftOptions: |reader, node| {
        let expected = "a mapping with `block`";
        let fields = reader.fields(node, "", read_options::KEYS, expected);
        options(reader, node, fields).map(|(options, _)| options)
    };
    /// From a width all round, `usual`, or widths by place: `{"default": 15, "hem": "4 cm"}`.
    Allowances: allowance;
    /// From a name and settings: `{"back_length_reduction": {"amount": "1 in"}}`.
    Request: request;
}

impl<'de> Deserialize<'de> for Recipe {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        recipe(&Node::deserialize(deserializer)?).map_err(D::Error::custom)
    }
}
