//! What the paths of a piece are called, by rules that hold in both directions: a drawing whose paths
//! bear these names says which piece and edge each of them is.
//!
//! `back.side_seam` is the edge `side_seam` of the piece `back`; `back.waist_dart` its dart `waist`,
//! `back.waist_line` its balance line `waist`, `back.armscye_notch` its notch `armscye`,
//! `back.bust_point` its point `bust_point` (every other point ends in `_point` too), and
//! `back.grain` its grain line. Blanks become hyphens: `back-left.side_seam`.

use crate::piece::EdgeName;

/// The name of an edge.
pub(super) fn edge(piece: &str, edge: &EdgeName) -> String {
    part(piece, edge.as_str(), "")
}

/// The name of a dart.
pub(super) fn dart(piece: &str, dart: &str) -> String {
    part(piece, dart, "_dart")
}

/// The name of a balance line.
pub(super) fn line(piece: &str, line: &str) -> String {
    part(piece, line, "_line")
}

/// The name of a notch.
pub(super) fn notch(piece: &str, notch: &str) -> String {
    part(piece, notch, "_notch")
}

/// The name of a point.
pub(super) fn point(piece: &str, point: &str) -> String {
    part(piece, point.trim_end_matches("_point"), "_point")
}

/// The name of the grain line.
pub(super) fn grain(piece: &str) -> String {
    part(piece, "grain", "")
}

fn part(piece: &str, name: &str, kind: &str) -> String {
    format!("{piece}.{name}{kind}").replace(' ', "-")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_edge_a_dart_and_a_line_of_one_name_are_told_apart() {
        let names = [
            edge("back", &EdgeName::WAIST),
            dart("back", "waist"),
            line("back", "waist"),
        ];
        assert_eq!(names, ["back.waist", "back.waist_dart", "back.waist_line"]);
        assert_eq!(point("front left", "bust_point"), "front-left.bust_point");
        assert_eq!(point("back", "nape"), "back.nape_point");
    }
}
