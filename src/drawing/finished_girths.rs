//! How large the finished garment is, written along what it is measured on.

use crate::piece::{EdgeName, Pattern, Piece, RunAlong};
use crate::units::{Length, LengthStyle, Unit};

/// The finished girths of a piece, each with the line or edge that a tape would follow.
#[derive(Debug, Clone, Default)]
pub(super) struct FinishedGirths(Vec<(RunAlong, String)>);

impl FinishedGirths {
    /// Those of a piece of a pattern, in a unit: `finished waist 82 cm`.
    pub fn of(pattern: &Pattern, piece: &Piece, unit: Unit) -> Self {
        let mut all: Vec<(RunAlong, String)> = Vec::new();
        for girth in pattern.girths() {
            let mine = girth.runs.iter().filter(|run| run.piece == piece.name());
            let Ok(length) = Length::from_mm(pattern.finished(girth)) else {
                continue;
            };
            let name = girth.base_name().replace('_', " ");
            let length = length.to_text(LengthStyle::usual(unit));
            let words = format!("finished {name} {length}");
            for run in mine {
                match all.iter_mut().find(|(along, _)| *along == run.along) {
                    Some((_, text)) if *text != words => {
                        text.push_str(&format!(", {name} {length}"));
                    }
                    Some(_) => {}
                    None => all.push((run.along.clone(), words.clone())),
                }
            }
        }
        Self(all)
    }

    /// What is written along a balance line.
    pub fn on_line(&self, name: &str) -> Option<&str> {
        self.find(|along| matches!(along, RunAlong::Line(line) if line == name))
    }

    /// What is written along an edge.
    pub fn on_edge(&self, name: &EdgeName) -> Option<&str> {
        self.find(|along| matches!(along, RunAlong::Edge(edge) if edge == name))
    }

    fn find(&self, is: impl Fn(&RunAlong) -> bool) -> Option<&str> {
        let found = self.0.iter().find(|(along, _)| is(along));
        found.map(|(_, words)| words.as_str())
    }
}
