//! Reading a recipe out of a mapping.

use super::Recipe;
use super::field::{Field, said};
use super::read_allowance::{allowance, doubtful_widths};
use super::read_alterations::alterations;
use super::read_inscription::{date, size, title};
use super::read_observed::notes as observed;
use super::read_options::{self, options};
use super::read_own_block::{is_own, own_block};
use crate::measurements::{FileCause, Node, Reader};

/// The fields of a mapping that make a recipe.
pub(crate) struct RecipeFields<'a> {
    /// Title, size, date.
    inscription: [Field<'a>; 3],
    /// The unit of bare lengths.
    unit: Field<'a>,
    options: [Field<'a>; 7],
    /// Alterations, what was observed on a toile, allowance.
    after: [Field<'a>; 3],
}

impl<'a> RecipeFields<'a> {
    /// The keys, in the order of [`of`](Self::of).
    pub(crate) const KEYS: [&'static str; 14] = {
        let [block, ease, length, sleeve, cap_ease, waist_darts, side] = read_options::KEYS;
        [
            "title",
            "size",
            "date",
            block,
            ease,
            length,
            sleeve,
            cap_ease,
            waist_darts,
            side,
            "alterations",
            "observed",
            "allowance",
            "unit",
        ]
    };

    /// What was found under [`KEYS`](Self::KEYS).
    pub(crate) const fn of(found: [Field<'a>; 14]) -> Self {
        let [
            title,
            size,
            date,
            o1,
            o2,
            o3,
            o4,
            o5,
            o6,
            o7,
            alterations,
            observed,
            allowance,
            unit,
        ] = found;
        Self {
            unit,
            inscription: [title, size, date],
            options: [o1, o2, o3, o4, o5, o6, o7],
            after: [alterations, observed, allowance],
        }
    }

    /// Reads the recipe; nothing if something in it is wrong.
    pub(crate) fn read(self, reader: &mut Reader, node: &Node) -> Option<Recipe> {
        let before = reader.problems.len();
        let [title_field, size_field, date_field] = self.inscription;
        if title_field.is_none() && node.entries().is_some() {
            let (key, hint) = ("title", "write `title:` and what the work is called");
            reader.wrong(node.place, "", FileCause::MissingKey { key, hint });
        }
        if let Some(node) = said(self.unit) {
            reader.bare = reader.unit_named(node);
        }
        let title = title_field.and_then(|(_, node)| title(reader, node));
        let size = said(size_field).and_then(|node| size(reader, node));
        let date = said(date_field).and_then(|node| date(reader, node));
        let [block, drafted @ ..] = self.options;
        let (options, own) = match is_own(block) {
            None => (options(reader, node, self.options), None),
            Some(at) => {
                let own = own_block(reader, at, &drafted);
                let options = own.as_ref().map(|own| (own.options(), Vec::new()));
                (options, own)
            }
        };
        let [steps, seen, widths] = self.after;
        let mut alterations = steps.map_or_else(Vec::new, |(_, node)| alterations(reader, node));
        let (followed, doubts) =
            seen.map_or_else(Default::default, |(_, node)| observed(reader, node));
        alterations.extend(followed);
        let allowances = widths.and_then(|(_, node)| allowance(reader, node));
        let (options, mut notes) = options?;
        notes.extend(doubts);
        notes.extend(allowances.as_ref().and_then(doubtful_widths));
        (reader.problems.len() == before).then_some(Recipe {
            title: title?,
            size,
            date,
            options,
            own,
            alterations,
            allowances,
            notes,
        })
    }
}
