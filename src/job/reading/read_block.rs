//! Reading the block of one's own that a job names.

#[cfg(feature = "own-block")]
use crate::alterations::Account;
use crate::job::ResolveError;
use crate::measurements::{Key, MeasurementSet, Node, NodeValue, Place};
use crate::recipe::{OwnBlock, OwnBlockError};
use crate::render::json::PatternDocument;
#[cfg(feature = "own-block")]
use crate::render::traced::trace;
use crate::units::Unit;

/// Where a job names a block of its own, if it does.
pub(in crate::job) fn own_place(block: Option<(&Key, &Node)>) -> Option<Place> {
    let (_, node) = block?;
    let NodeValue::Map(entries) = &node.value else {
        return None;
    };
    let file = entries.iter().find(|(key, _)| key.text == "file");
    Some(file.map_or(node.place, |(_, file)| file.place))
}

/// The block in a pattern document or a drawing, and the set it was made for: the one given, or the
/// body of the document.
pub(in crate::job) fn read_block(
    asked: &OwnBlock,
    text: &str,
    set: Option<MeasurementSet>,
) -> Result<(OwnBlock, MeasurementSet), ResolveError> {
    let (own, set) = if text.trim_start().starts_with('<') {
        read_drawing(asked, text, set)?
    } else {
        read_document(asked, text, set)?
    };
    Ok((own.written_as(asked), set))
}

fn read_document(
    asked: &OwnBlock,
    text: &str,
    set: Option<MeasurementSet>,
) -> Result<(OwnBlock, MeasurementSet), ResolveError> {
    if asked.drawn_kind().is_some() || !asked.drawn_names().is_empty() {
        let problem = "is a pattern document, which already says what everything is";
        return Err(wrong(asked, problem, "leave out `kind` and `edges`"));
    }
    let path = asked.path().to_owned();
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

/// A drawing is proved by the tolerances of an altered pattern, since nobody draws to a hundredth of a
/// millimetre: its account begins with having been drawn, so that documents of it are read back alike.
#[cfg(feature = "own-block")]
fn read_drawing(
    asked: &OwnBlock,
    text: &str,
    set: Option<MeasurementSet>,
) -> Result<(OwnBlock, MeasurementSet), ResolveError> {
    let Some(kind) = asked.drawn_kind() else {
        let problem = "is a drawing, which does not say what block it is";
        return Err(wrong(
            asked,
            problem,
            "write `kind:` beside `file`, such as `kind: dress`",
        ));
    };
    let Some(set) = set else {
        let problem = "is a drawing, which does not say for which body it was made";
        return Err(wrong(
            asked,
            problem,
            "write `body:` and the set it was made for",
        ));
    };
    let path = asked.path().to_owned();
    let pattern = match trace(text, kind, asked.drawn_names(), set.body()) {
        Ok(pattern) => pattern,
        Err(source) => {
            let source = Box::new(source);
            return Err(ResolveError::Drawing { path, source });
        }
    };
    let drawn = Account {
        alteration: "own_block".to_owned(),
        amount: None,
        unit: crate::piece::MeasureUnit::Millimetres,
        changes: Vec::new(),
        kept: Vec::new(),
    };
    let own = OwnBlock::new(path, pattern, set.body().clone(), vec![drawn])?;
    Ok((own, set))
}

#[cfg(not(feature = "own-block"))]
fn read_drawing(
    asked: &OwnBlock,
    _: &str,
    _: Option<MeasurementSet>,
) -> Result<(OwnBlock, MeasurementSet), ResolveError> {
    let problem = "is a drawing, and this program was built without the feature `own-block`";
    Err(wrong(
        asked,
        problem,
        "build it with that feature, or give a pattern document",
    ))
}

fn wrong(asked: &OwnBlock, problem: &'static str, cure: &'static str) -> ResolveError {
    let path = asked.path().to_owned();
    OwnBlockError::Asked {
        path,
        problem,
        cure,
    }
    .into()
}
