//! Reading what is wanted of a draft: the block, its ease, what it looks like.

use super::field::{Field, said};
use super::read_block::block;
use super::read_ease::{EasePlace, ease};
use super::read_shape::ShapeFields;
use crate::draft::{Block, DraftOptions, SleeveWidth};
use crate::measurements::{FileCause, Node, Reader};
use crate::piece::Warning;

/// The keys of the options; those of the shape follow `ease`.
pub(super) const KEYS: [&str; 7] = [
    "block",
    "ease",
    "length",
    "sleeve",
    "cap_ease",
    "waist_darts",
    "side",
];

/// The options under [`KEYS`] of a mapping, and what they say that the block has no use for.
pub(super) fn options(
    reader: &mut Reader,
    node: &Node,
    fields: [Field<'_>; 7],
) -> Option<(DraftOptions, Vec<Warning>)> {
    let [
        block_field,
        ease_field,
        length,
        sleeve,
        cap_ease,
        waist_darts,
        side,
    ] = fields;
    if block_field.is_none() && node.entries().is_some() {
        let (key, hint) = (
            "block",
            "write `block: bodice`, `skirt`, `[bodice, skirt]`, `dress`, `tunic` or `shirt`",
        );
        reader.wrong(node.place, "", FileCause::MissingKey { key, hint });
    }
    let block = block_field.and_then(|(_, node)| block(reader, node));
    let mut options = DraftOptions::of(block.unwrap_or(Block::Bodice));
    let mut places = Vec::new();
    if let Some(node) = said(ease_field) {
        (options.ease, places) = ease(reader, node, options.block);
        if places.contains(&EasePlace::UpperArm) {
            options.sleeve_width = SleeveWidth::Exact;
        }
    }
    let shape = ShapeFields {
        length,
        sleeve,
        cap_ease,
        waist_darts,
        side,
    };
    let unused = shape.read(reader, &mut options);
    block.map(|_| (options, notes(&options, &places, unused)))
}

/// What is said that the block has no use for: a job can be switched from one block to another,
/// and nothing is ignored in silence.
fn notes(options: &DraftOptions, places: &[EasePlace], unused: Vec<&str>) -> Vec<Warning> {
    let block = options.block.name();
    let ease = places
        .iter()
        .filter(|place| !place.is_used_by(options))
        .map(|place| {
            let name = place.name();
            let text =
                format!("the ease at {name} has no effect: this {block} block has nothing there");
            Warning::new("ease_unused", text)
        });
    let keys = unused.into_iter().map(|key| {
        let text = format!("{key} has no effect on this {block} block");
        Warning::new(format!("{key}_unused"), text)
    });
    ease.chain(keys).collect()
}
