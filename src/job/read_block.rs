//! Reading the block of one's own that a job names.

use super::ResolveError;
use crate::measurements::{Key, MeasurementSet, Node, NodeValue, Place};
use crate::recipe::OwnBlock;
use crate::render::json::PatternDocument;
use crate::units::Unit;

/// Where a job names a block of its own, if it does.
pub(super) fn own_place(block: Option<(&Key, &Node)>) -> Option<Place> {
    let (_, node) = block?;
    let NodeValue::Map(entries) = &node.value else {
        return None;
    };
    let file = entries.iter().find(|(key, _)| key.text == "file");
    Some(file.map_or(node.place, |(_, file)| file.place))
}

/// The block in a pattern document, and the set it was made for: the one given, or the body of the
/// document.
pub(super) fn read_block(
    path: String,
    text: &str,
    set: Option<MeasurementSet>,
) -> Result<(OwnBlock, MeasurementSet), ResolveError> {
    let document = match PatternDocument::read_proved(text.as_bytes()) {
        Ok(document) => document,
        Err(source) => {
            let source = Box::new(source);
            return Err(ResolveError::Block { path, source });
        }
    };
    let set = match (set, document.body.to_body()) {
        (Some(set), _) => set,
        (None, Ok(body)) => MeasurementSet::new(MeasurementSet::UNNAMED, Unit::Cm, body),
        (None, Err(source)) => return Err(ResolveError::BlockBody { path, source }),
    };
    let (pattern, earlier) = (document.pattern, document.accounts);
    let own = OwnBlock::new(path, pattern, set.body().clone(), earlier)?;
    Ok((own, set))
}
