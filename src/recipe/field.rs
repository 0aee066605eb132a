//! One key of a job and its value; lengths among them.

use crate::measurements::{FileCause, Key, Node, NodeValue, Place, Reader};
use crate::units::{Length, Unit, UnitError};

/// A key and its value, if they are there.
pub(crate) type Field<'a> = Option<(&'a Key, &'a Node)>;

/// A length in mm within a range; a bare number is in the unit of the job, or in mm.
pub(crate) fn length(
    reader: &mut Reader,
    node: &Node,
    path: &str,
    (low, high): (f64, f64),
) -> Option<f64> {
    let (read, unit) = match &node.value {
        NodeValue::Number(number) => {
            let unit = reader.bare_length(node.place, path, *number);
            (Length::new(*number, unit), unit)
        }
        NodeValue::Text(text) => written_length(reader, node.place, path, text),
        _ => {
            reader.shape(
                node,
                path,
                "a length in mm, or with its unit, such as `2 in`",
            );
            return None;
        }
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

/// A length that is written as a text, and the unit it is written in.
pub(super) fn written_length(
    reader: &mut Reader,
    place: Place,
    path: &str,
    text: &str,
) -> (Result<Length, UnitError>, Unit) {
    if let Some(unit) = Length::unit_of(text) {
        return (Length::parse_signed(text, None), unit);
    }
    // Without a unit, or in metres, or not to be read.
    let number = Length::parse_signed(text, Some(Unit::Mm)).map_or(0.0, Length::mm);
    let bare = Length::parse_signed(text, None).is_err();
    let unit = match bare {
        true => reader.bare_length(place, path, number),
        false => Unit::Mm,
    };
    (Length::parse_signed(text, Some(unit)), unit)
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
