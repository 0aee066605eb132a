//! Reading what was pinned and opened on a toile.

use super::field::{length, said};
use super::read_block::unknown;
use crate::alterations::{CATALOGUE, Request};
use crate::measurements::{FileCause, Node, NodeValue, Place, Reader};
use crate::piece::{BodySide, Warning};
use crate::signs::{Found, Observed, observed};

/// The most notes of one job: a fitting makes ten.
const MOST: usize = 40;

const EXPECTED: &str = "a list of notes, such as `- {place: centre back waist, pinned: 25 mm}`";

const KEYS: [&str; 5] = ["place", "pinned", "opened", "marked", "side"];

/// The steps that the notes ask for, in the order in which a fitter works, and what is to be ruled out
/// before each.
pub(super) fn notes(reader: &mut Reader, node: &Node) -> (Vec<Request>, Vec<Warning>) {
    let none = (Vec::new(), Vec::new());
    let items = match &node.value {
        NodeValue::Empty => return none,
        NodeValue::List(items) => items,
        _ => {
            reader.shape(node, "observed", EXPECTED);
            return none;
        }
    };
    if items.len() > MOST {
        let cause = FileCause::TooMany {
            what: "notes",
            found: items.len(),
            most: MOST,
        };
        reader.wrong(node.place, "observed", cause);
        return none;
    }
    let mut found: Vec<(Request, Warning, Place)> = items
        .iter()
        .filter_map(|item| note(reader, item).map(|(step, doubt)| (step, doubt, item.place)))
        .collect();
    let order = |step: &Request| CATALOGUE.iter().position(|entry| entry.name == step.name());
    found.sort_by_key(|(step, ..)| order(step));
    reader.steps.extend(found.iter().map(|(.., place)| *place));
    found
        .into_iter()
        .map(|(step, doubt, _)| (step, doubt))
        .unzip()
}

fn note(reader: &mut Reader, item: &Node) -> Option<(Request, Warning)> {
    let [place, pinned, opened, marked, side] = reader.fields(item, "observed", KEYS, EXPECTED);
    let place_node = said(place);
    if place_node.is_none() && item.entries().is_some() {
        let (key, hint) = (
            "place",
            "write `place:` and where it is, such as `centre back waist`",
        );
        reader.wrong(item.place, "observed", FileCause::MissingKey { key, hint });
    }
    let place_node = place_node?;
    let place = reader.text(place_node, "observed.place")?;
    let mut amounts = [pinned, opened, marked]
        .into_iter()
        .zip(Found::ALL)
        .filter_map(|(field, found)| Some((said(field)?, found)));
    let (Some((node, found)), None) = (amounts.next(), amounts.next()) else {
        let problem = "a note has one of `pinned`, `opened` and `marked`".to_owned();
        let hint = "write how much was pinned away, how far the slit toile opened, or how far off \
                    the right place was marked";
        reader.wrong(
            item.place,
            "observed",
            FileCause::Senseless { problem, hint },
        );
        return None;
    };
    let path = format!("observed.{}", found.name());
    let amount = length(reader, node, &path, (0.0, 1000.0))?;
    let mut note = Observed::new(place, found, amount);
    if let Some(node) = said(side) {
        let named = reader.text(node, "observed.side")?;
        note.side = BodySide::BOTH
            .into_iter()
            .find(|side| named.trim().eq_ignore_ascii_case(side.name()));
        if note.side.is_none() {
            let sides = BodySide::BOTH.map(BodySide::name);
            let cause = unknown(&named, "side", sides.into_iter());
            reader.wrong(node.place, "observed.side", cause);
            return None;
        }
    }
    match observed(&note) {
        Ok((sign, step)) => {
            let text = format!(
                "{}: {} follows from what was {}; before it, rule out {}",
                sign.at,
                step.name(),
                found.name(),
                sign.rule_out
            );
            Some((step, Warning::new("rule_out_first", text)))
        }
        Err(error) => {
            let text = error.to_string();
            let cause = FileCause::Alteration {
                text,
                unknown: false,
            };
            reader.wrong(place_node.place, "observed", cause);
            None
        }
    }
}
