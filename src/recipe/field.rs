//! One key of a job and its value; lengths among them.

use crate::measurements::{FileCause, Key, Node, NodeValue, Reader};
use crate::units::{Length, Unit, UnitError};

/// A key and its value, if they are there.
pub(crate) type Field<'a> = Option<(&'a Key, &'a Node)>;

/// A length in mm within a range; a bare number is in mm.
pub(crate) fn length(
    reader: &mut Reader,
    node: &Node,
    path: &str,
    (low, high): (f64, f64),
) -> Option<f64> {
    let read: Result<Length, UnitError> = match &node.value {
        NodeValue::Number(number) => Length::from_mm(*number),
        NodeValue::Text(text) => Length::parse_signed(text, Some(Unit::Mm)),
        _ => {
            reader.shape(
                node,
                path,
                "a length in mm, or with its unit, such as `2 in`",
            );
            return None;
        }
    };
    // As it was written.
    let unit = match &node.value {
        NodeValue::Text(text) => Length::unit_of(text).unwrap_or(Unit::Mm),
        _ => Unit::Mm,
    };
    match read.map(Length::mm) {
        Ok(mm) if (low..=high).contains(&mm) => Some(mm),
        Ok(found) => {
            let cause = FileCause::OutOfReach { found, low, high };
            reader.wrong_in(unit, node.place, path, cause);
            None
        }
        Err(error) => {
            reader.wrong_in(unit, node.place, path, error);
            None
        }
    }
}

/// The value, unless it is left empty.
pub(crate) fn said(field: Field<'_>) -> Option<&Node> {
    field
        .map(|(_, node)| node)
        .filter(|node| node.value != NodeValue::Empty)
}

/// Yes or no.
pub(crate) fn truth(reader: &mut Reader, node: &Node, key: &'static str) -> Option<bool> {
    match node.value {
        NodeValue::Truth(truth) => Some(truth),
        _ => {
            reader.shape(node, key, "`true` or `false`");
            None
        }
    }
}
