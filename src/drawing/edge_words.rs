//! What is said of an edge beside it: the centres, hems, girths that are measured along it.

use super::beside::write_beside;
use super::finished_girths::FinishedGirths;
use super::piece_layers::PieceLayers;
use super::room::Room;
use super::{Face, Text, TextStyle};
use crate::geometry::Curve;
use crate::piece::{Edge, EdgeName, EdgeRole, Piece};

/// Writes along the edges; gives back what there was no room for.
pub(super) fn write(
    out: &mut PieceLayers,
    room: &mut Room,
    piece: &Piece,
    girths: &FinishedGirths,
) -> Vec<String> {
    let mut left = Vec::new();
    for edge in piece.outline().edges() {
        let Some((words, face, wish)) = words(edge, girths) else {
            continue;
        };
        let style = TextStyle::new(face, 3.6);
        match write_beside(
            room,
            std::slice::from_ref(edge.curve()),
            &words,
            style,
            wish,
        ) {
            Some(text) => out.words.push(text),
            None => left.push(words),
        }
    }
    left
}

/// What is said of an edge, in which face, and where along it it should stand.
fn words(edge: &Edge, girths: &FinishedGirths) -> Option<(String, Face, f64)> {
    if let Some(centre) = centre_words(edge.name()) {
        return Some((centre.to_owned(), Face::Bold, 0.35));
    }
    let hem = (edge.role() == EdgeRole::Hem).then_some("hem");
    let girth = girths.on_edge(edge.name());
    let all: Vec<&str> = hem.into_iter().chain(girth).collect();
    (!all.is_empty()).then(|| (all.join(" · "), Face::Regular, 0.5))
}

/// The same for the nest of a range, in which a girth is not that of one size; the edge lies where
/// `curve` does.
pub(crate) fn edge_text(room: &mut Room, edge: &Edge, curve: &Curve) -> Option<Text> {
    let (words, face, wish) = words(edge, &FinishedGirths::default())?;
    let style = TextStyle::new(face, 3.6);
    write_beside(room, std::slice::from_ref(curve), &words, style, wish)
}

/// Which middle of the body an edge lies on.
fn centre_words(edge: &EdgeName) -> Option<&'static str> {
    match edge.as_str() {
        "centre_back" => Some("CENTRE BACK"),
        "centre_front" => Some("CENTRE FRONT"),
        _ => None,
    }
}
