//! Reading how wide the seam allowances are.

use super::field::length;
use crate::allowance::Allowances;
use crate::measurements::{Node, NodeValue, Reader, join};
use crate::piece::Warning;

const EXPECTED: &str = "a length such as `15`, `usual`, or a mapping such as \
                        `{default: 15, neckline: 10, hem: 40}`";

/// The least and the greatest width, in mm.
const WIDTHS: (f64, f64) = (0.0, Allowances::MOST);

/// One width all round, `usual`, or widths by place; nothing where nothing is asked for.
pub(super) fn allowance(reader: &mut Reader, node: &Node) -> Option<Allowances> {
    match &node.value {
        NodeValue::Empty => None,
        NodeValue::Text(text) if text.trim().eq_ignore_ascii_case("none") => None,
        NodeValue::Text(text) if text.trim().eq_ignore_ascii_case("usual") => {
            Some(Allowances::usual())
        }
        NodeValue::Number(_) | NodeValue::Text(_) => {
            Allowances::all_round(length(reader, node, "allowance", WIDTHS)?).ok()
        }
        NodeValue::Map(entries) if entries.is_empty() => None,
        NodeValue::Map(_) => by_place(reader, node),
        NodeValue::List(items) if items.is_empty() => None,
        NodeValue::List(_) | NodeValue::Truth(_) => {
            reader.shape(node, "allowance", EXPECTED);
            None
        }
    }
}

fn by_place(reader: &mut Reader, node: &Node) -> Option<Allowances> {
    const KEYS: usize = Allowances::PLACES.len() + 1;
    let mut keys = ["default"; KEYS];
    keys[1..].copy_from_slice(&Allowances::PLACES);
    let fields = reader.fields(node, "allowance", keys, EXPECTED);
    let mut widths = keys.iter().zip(fields).map(|(key, field)| {
        let (_, node) = field.filter(|(_, node)| node.value != NodeValue::Empty)?;
        let width = length(reader, node, &join("allowance", key), WIDTHS)?;
        Some((*key, width))
    });
    let default = widths
        .next()
        .flatten()
        .map_or(Allowances::USUAL, |(_, width)| width);
    let named: Vec<_> = widths.flatten().collect();
    named.into_iter().try_fold(
        Allowances::all_round(default).ok()?,
        |all, (place, width)| all.with(place, width).ok(),
    )
}

/// The least and the greatest width that somebody sews, in mm (common practice: 6 mm inside a
/// collar, 50 to 60 mm at a hem); what lies beyond is a slip of the unit more often than not.
const SEWN: (f64, f64) = (4.0, 60.0);

/// A warning of widths that look like a wrong unit.
pub(super) fn doubtful_widths(allowances: &Allowances) -> Option<Warning> {
    let all = [("default", allowances.default_width())];
    let doubtful: Vec<String> = all
        .into_iter()
        .chain(allowances.named_widths())
        .filter(|(_, width)| *width > 0.0 && !(SEWN.0..=SEWN.1).contains(width))
        .map(|(place, width)| format!("{place} {width} mm"))
        .collect();
    (!doubtful.is_empty()).then(|| {
        let text = format!(
            "unusual widths of allowance: {}; usual are {} to {} mm: is their unit right?",
            doubtful.join(", "),
            SEWN.0,
            SEWN.1
        );
        Warning::new("allowance_unusual", text)
    })
}
