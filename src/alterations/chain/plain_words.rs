//! What a broken law or promise means for the garment, in a sentence without measures of drawing.

use crate::alterations::Broken;
use crate::invariants::{
    CapFault, DartFault, FoldFault, GirthFault, MarkFault, MouthFault, NotchFault, OutlineFault,
    SeamFault, Violation,
};

/// A name in the words of a sentence.
fn spoken(name: &str) -> String {
    name.replace('_', " ")
}

/// What would become of the garment.
pub(in crate::alterations) fn law_in_words(violation: &Violation) -> String {
    match violation {
        Violation::SizeSane(fault) => format!("the {} would grow out of all size", fault.piece),
        Violation::OutlineSimple(fault) => outline(fault),
        Violation::EdgesSmooth(fault) => format!(
            "the {} of the {} would get a corner",
            spoken(&fault.edge),
            fault.piece
        ),
        Violation::OneWay(fault) => format!(
            "the {} of the {} would bend both ways",
            spoken(&fault.edge),
            fault.piece
        ),
        Violation::FoldStraight(fault) => fold(fault),
        Violation::SquareToFold(fault) => format!(
            "the {} of the {} would have a point at the fold",
            spoken(&fault.edge),
            fault.piece
        ),
        Violation::DartsTrue(fault) => dart(fault),
        Violation::MouthsFlush(
            MouthFault::Corner {
                piece, dart, edge, ..
            }
            | MouthFault::NotFlush {
                piece, dart, edge, ..
            },
        ) => format!(
            "folded, the {dart} dart of the {piece} would not lie in its {}",
            spoken(edge)
        ),
        Violation::SeamsMatch(fault) => seam(fault),
        Violation::CapEase(CapFault::TooMuch { .. }) => {
            "the sleeve cap would be longer than can be eased into its armscye".to_owned()
        }
        Violation::CapEase(CapFault::OnArmscye { .. }) => {
            "the sleeve cap would be shorter than its armscye".to_owned()
        }
        Violation::SmoothJoins(fault) => format!(
            "the {} and the {} would make a corner where they meet at the {} seam",
            spoken(&fault.first),
            spoken(&fault.second),
            spoken(&fault.seam)
        ),
        Violation::NotchesMeet(
            NotchFault::Alone { seam, notch, .. }
            | NotchFault::Apart { seam, notch, .. }
            | NotchFault::Kinds { seam, notch, .. },
        ) => format!(
            "the {} notches of the {} seam would no longer meet",
            spoken(notch),
            spoken(seam)
        ),
        Violation::MarksClear(MarkFault::Notch {
            piece, notch, dart, ..
        }) => format!(
            "the {} notch of the {piece} would lie on a leg of its {dart} dart",
            spoken(notch)
        ),
        Violation::MarksClear(MarkFault::Drill {
            piece,
            drilled,
            dart,
            ..
        }) => format!(
            "the drill point of the {drilled} dart of the {piece} would lie on a leg of its {dart} dart"
        ),
        Violation::WaistsMeet(fault) => format!(
            "the {} dart of the {} would no longer meet that across the waist seam",
            fault.dart, fault.piece
        ),
        Violation::GirthsAsAsked(
            GirthFault::Off { girth, .. }
            | GirthFault::NoRuns { girth }
            | GirthFault::EmptyRun { girth, .. },
        ) => format!(
            "the finished {} girth would change with it, as a dart would end on the line where it is measured",
            spoken(girth)
        ),
    }
}

fn outline(fault: &OutlineFault) -> String {
    match fault {
        OutlineFault::Crosses { piece, .. } => {
            format!("the outline of the {piece} would cross itself")
        }
        OutlineFault::NoLength { piece, edge, .. } => {
            format!(
                "nothing would be left of the {} of the {piece}",
                spoken(edge)
            )
        }
        OutlineFault::Spike { piece, edge, .. } => {
            format!(
                "the {} of the {piece} would run out in a spike",
                spoken(edge)
            )
        }
        OutlineFault::WrongWay { piece, .. } => format!("nothing would be left of the {piece}"),
    }
}

fn fold(fault: &FoldFault) -> String {
    match fault {
        FoldFault::Bent { piece, edge, .. } | FoldFault::Askew { piece, edge, .. } => format!(
            "the {} of the {piece}, which is a fold, would not be straight with the grain",
            spoken(edge)
        ),
        FoldFault::GrainOff { piece, .. } | FoldFault::GrainShort { piece, .. } => {
            format!("the {piece} would have no room for its grain line")
        }
        FoldFault::Count { piece, .. } => format!("the {piece} would lose its fold"),
    }
}

fn dart(fault: &DartFault) -> String {
    match fault {
        DartFault::OffCloth { piece, dart, .. } => {
            format!("the {dart} dart of the {piece} would reach beyond the edge of its cloth")
        }
        DartFault::NoIntake { piece, dart, .. } => {
            format!("nothing would be left of the {dart} dart of the {piece}")
        }
        DartFault::TooWide { piece, dart, .. } => format!(
            "the {dart} dart of the {piece} would be too wide to be pressed: divide it (dart_division)"
        ),
        DartFault::Crossed {
            piece, dart, other, ..
        } => {
            format!("the {dart} and {other} darts of the {piece} would run into each other")
        }
        DartFault::LegsUnequal { piece, dart, .. }
        | DartFault::NotFinite { piece, dart }
        | DartFault::ApexesAstray { piece, dart, .. } => {
            format!("the legs of the {dart} dart of the {piece} could not be sewn together")
        }
    }
}

fn seam(fault: &SeamFault) -> String {
    match fault {
        SeamFault::Lengths { seam, .. } => format!(
            "both sides of the {} seam would no longer be of one length",
            spoken(seam)
        ),
        SeamFault::Ease { seam, .. }
        | SeamFault::NoSide { seam, .. }
        | SeamFault::NoEdges { seam } => format!("the {} seam could not be sewn", spoken(seam)),
    }
}

/// What could not be kept, or changed as asked.
pub(in crate::alterations) fn promise_in_words(broken: &Broken) -> String {
    match broken {
        Broken::Changed {
            measure, promised, ..
        } if *promised == 0.0 => {
            format!("{measure} would change with it")
        }
        Broken::Changed { measure, .. } => format!("{measure} would not change by as much"),
        Broken::Absent { measure } => format!("the pattern has no {measure}"),
        Broken::Lost { measure, .. } => format!("{measure} would be lost"),
    }
}
