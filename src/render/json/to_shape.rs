//! From a pattern to the document that is written. Every part is taken apart by name, so that
//! what is added to a pattern cannot be forgotten here.

use super::exact_path;
use super::shape::{
    AccountShape, AllowanceShape, AlongName, At, ChangeShape, CutName, DartShape, DocumentShape,
    EdgeRefShape, EdgeShape, FormatName, GirthShape, LineShape, NotchShape, Ordered, PieceShape,
    PointShape, RunShape, SeamShape, UnitsName, VERSION, WarningShape,
};
use crate::allowance::{Allowances, CutLines};
use crate::alterations::Account;
use crate::geometry::Point;
use crate::measurements::BodyRecord;
use crate::piece::{
    BalanceLine, Cut, Dart, DrillPoint, Edge, EdgeRef, Girth, GirthRun, NamedPoint, Notch, Pattern,
    PatternParts, Piece, PieceParts, RunAlong, Seam, Warning,
};

/// The document of a pattern.
pub(super) fn to_shape(
    pattern: &Pattern,
    body: BodyRecord,
    title: &str,
    accounts: &[Account],
    cut: Option<&CutLines>,
) -> DocumentShape {
    let finished: Vec<f64> = pattern
        .girths()
        .iter()
        .map(|g| pattern.finished(g))
        .collect();
    let PatternParts {
        block,
        pieces,
        seams,
        girths,
        warnings,
    } = pattern.clone().into_parts();
    let girths = girths.into_iter().zip(finished);
    DocumentShape {
        format: FormatName::BlockwrightPattern,
        version: VERSION,
        units: UnitsName::Millimetres,
        title: title.to_owned(),
        block,
        body,
        allowance: cut.map(|cut| allowance(cut.allowances())),
        pieces: pieces.into_iter().map(|p| piece(p, cut)).collect(),
        seams: seams.into_iter().map(seam).collect(),
        girths: Ordered(girths.map(|(g, finished)| girth(g, finished)).collect()),
        account: accounts.iter().map(account).collect(),
        warnings: warnings.into_iter().map(warning).collect(),
        fit_map: None,
    }
}

fn allowance(widths: &Allowances) -> AllowanceShape {
    let edges = widths.named_widths();
    AllowanceShape {
        default: plain(widths.default_width()),
        edges: Ordered(
            edges
                .map(|(e, width)| (e.to_owned(), plain(width)))
                .collect(),
        ),
    }
}

fn piece(piece: Piece, cut_lines: Option<&CutLines>) -> PieceShape {
    let PieceParts {
        name,
        side,
        cut,
        outline,
        darts,
        grain,
        notches,
        lines,
        drill_points,
        points,
    } = piece.into_parts();
    let cut_line = cut_lines
        .and_then(|cut| cut.of(&name))
        .map(|line| exact_path::write(line) + "Z");
    let (cut, face_down) = match cut {
        Cut::Fold => (CutName::Fold, false),
        Cut::Pair => (CutName::Pair, false),
        Cut::Single => (CutName::Single, false),
        Cut::SingleFaceDown => (CutName::Single, true),
    };
    let named = |name: String, at: Point| PointShape {
        name,
        at: point(at),
    };
    let points = points.into_iter();
    let drill_points = drill_points.into_iter();
    PieceShape {
        name,
        side,
        cut,
        face_down,
        edges: outline.edges().iter().map(edge).collect(),
        darts: darts.into_iter().map(dart).collect(),
        points: points
            .map(|NamedPoint { name, at }| named(name, at))
            .collect(),
        grain: grain.map(point),
        notches: notches.into_iter().map(notch).collect(),
        lines: lines.into_iter().map(line).collect(),
        drill_points: drill_points
            .map(|DrillPoint { name, at }| named(name, at))
            .collect(),
        cut_line,
    }
}

fn edge(edge: &Edge) -> EdgeShape {
    EdgeShape {
        name: edge.name().to_string(),
        role: edge.role(),
        path: exact_path::write(edge.curve()),
    }
}

fn dart(dart: Dart) -> DartShape {
    let Dart {
        name,
        edge,
        legs,
        apexes,
        pressed,
    } = dart;
    DartShape {
        name,
        edge: edge.map(|e| e.to_string()),
        legs: legs.map(point),
        apexes: apexes.points().into_iter().map(point).collect(),
        press: pressed,
    }
}

fn notch(notch: Notch) -> NotchShape {
    let Notch {
        name,
        edge,
        at,
        kind,
    } = notch;
    NotchShape {
        name,
        edge: edge.to_string(),
        at: plain(at),
        kind,
    }
}

fn line(line: BalanceLine) -> LineShape {
    let BalanceLine { name, curve } = line;
    LineShape {
        name,
        path: exact_path::write(&curve),
    }
}

fn seam(seam: Seam) -> SeamShape {
    let Seam {
        name,
        side,
        a,
        b,
        ease,
        ease_on,
    } = seam;
    SeamShape {
        name,
        side,
        a: a.into_iter().map(edge_ref).collect(),
        b: b.into_iter().map(edge_ref).collect(),
        ease: plain(ease),
        ease_on,
    }
}

fn edge_ref(edge: EdgeRef) -> EdgeRefShape {
    let EdgeRef {
        piece,
        edge,
        against,
    } = edge;
    EdgeRefShape {
        piece,
        edge: edge.to_string(),
        against,
    }
}

fn girth(girth: Girth, finished: f64) -> (String, GirthShape) {
    let Girth {
        name,
        side,
        body,
        ease,
        limb,
        runs,
    } = girth;
    let shape = GirthShape {
        side,
        body: plain(body),
        ease: plain(ease),
        finished: rounded(finished),
        limb,
        runs: runs.into_iter().map(run).collect(),
    };
    (name, shape)
}

fn run(run: GirthRun) -> RunShape {
    let GirthRun { piece, along } = run;
    let (along, name) = match along {
        RunAlong::Line(name) => (AlongName::Line, name),
        RunAlong::Edge(name) => (AlongName::Edge, name.to_string()),
    };
    RunShape { piece, along, name }
}

fn account(account: &Account) -> AccountShape {
    let Account {
        alteration,
        amount,
        unit,
        changes,
        kept,
    } = account;
    let changes = changes.iter().map(|change| ChangeShape {
        what: change.measure.to_string(),
        measure: change.measure.clone(),
        before: change.before.map(rounded),
        after: change.after.map(rounded),
    });
    AccountShape {
        alteration: alteration.clone(),
        amount: amount.map(rounded),
        unit: *unit,
        changes: changes.collect(),
        kept: kept.iter().map(ToString::to_string).collect(),
        kept_measures: kept.clone(),
    }
}

fn warning(warning: Warning) -> WarningShape {
    let Warning { code, text } = warning;
    WarningShape { code, text }
}

fn point(p: Point) -> At {
    [plain(p.x), plain(p.y)]
}

/// The same number, without a minus before zero.
fn plain(number: f64) -> f64 {
    number + 0.0
}

/// A derived figure to a ten-thousandth.
fn rounded(number: f64) -> f64 {
    (number * 1e4).round() / 1e4 + 0.0
}
