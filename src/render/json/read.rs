//! From a document to the pattern it holds.

use super::DocumentError;
use super::exact_path::{self, PathFault};
use super::fault::{Fault, short};
use super::shape::{
    AccountShape, AllowanceShape, AlongName, At, CutName, DartShape, EdgeRefShape, EdgeShape,
    GirthShape, PieceShape, PointShape, RunShape, SeamShape, WarningShape,
};
use crate::allowance::{Allowances, CutLines};
use crate::alterations::{Account, Change};
use crate::geometry::{Curve, Point, tolerance};
use crate::piece::{
    Apexes, BalanceLine, Cut, Dart, DrillPoint, Edge, EdgeName, EdgeRef, Girth, GirthRun, Measure,
    NamedPoint, Notch, Outline, Pattern, PatternParts, Piece, PieceError, PieceParts, RunAlong,
    Seam, Warning,
};

/// How far a figure in a document may be from what the pieces give, in millimetres: it is
/// rounded to a ten-thousandth.
const FIGURE: f64 = 1e-3;

/// The most segments of all edges and lines of a pattern together, so that nobody waits for a
/// proof: a dress with sleeves has about a hundred.
const MOST_SEGMENTS: usize = 5000;

/// The pattern of a document's parts.
pub(super) fn pattern(
    block: String,
    pieces: Vec<PieceShape>,
    seams: Vec<SeamShape>,
    girths: Vec<(String, GirthShape)>,
    warnings: Vec<WarningShape>,
) -> Result<Pattern, DocumentError> {
    let mut segments = 0;
    let pieces = pieces.into_iter().enumerate().map(|(index, shape)| {
        let piece = piece(shape, &format!("/pieces/{index}"))?;
        let lines = piece.lines().iter().map(|line| &line.curve);
        let curves = lines.chain(piece.outline().edges().iter().map(Edge::curve));
        segments += curves.map(|curve| curve.segments().len()).sum::<usize>();
        if segments > MOST_SEGMENTS {
            let (found, most) = (segments, MOST_SEGMENTS);
            return Err(Fault::from(super::ShapeFault::TooMany { found, most })
                .within("pieces")
                .into());
        }
        Ok(piece)
    });
    let pieces = pieces.collect::<Result<_, DocumentError>>()?;
    let warning = |WarningShape { code, text }| Warning { code, text };
    let finished: Vec<f64> = girths.iter().map(|(_, girth)| girth.finished).collect();
    let pattern = Pattern::new(PatternParts {
        block,
        pieces,
        seams: seams.into_iter().map(seam).collect(),
        girths: girths.into_iter().map(girth).collect(),
        warnings: warnings.into_iter().map(warning).collect(),
    })
    .map_err(|source| DocumentError::Parts {
        place: String::new(),
        source,
    })?;
    for (girth, written) in pattern.girths().iter().zip(finished) {
        let measured = pattern.finished(girth);
        if (measured - written).abs() > FIGURE {
            return Err(DocumentError::Figure {
                place: format!("/girths/{}/finished", girth.name),
                written,
                measured,
            });
        }
    }
    Ok(pattern)
}

/// The allowances of a document.
pub(super) fn allowances(shape: &AllowanceShape) -> Result<Allowances, DocumentError> {
    let refused = |place: String| move |source| DocumentError::Allowance { place, source };
    let mut widths =
        Allowances::all_round(shape.default).map_err(refused("/allowance/default".to_owned()))?;
    for (edge, width) in &shape.edges.0 {
        let place = format!("/allowance/edges/{edge}");
        widths = widths.with(edge, *width).map_err(refused(place))?;
    }
    Ok(widths)
}

/// The cut lines of a pattern: those of the allowances, which the document must agree with.
pub(super) fn cut_lines(
    pattern: &Pattern,
    widths: Option<&Allowances>,
    written: &[Option<String>],
) -> Result<Option<CutLines>, DocumentError> {
    let cut = widths
        .map(|widths| CutLines::new(pattern, widths))
        .transpose()
        .map_err(|source| DocumentError::Allowance {
            place: "/allowance".to_owned(),
            source,
        })?;
    for (index, (piece, written)) in pattern.pieces().iter().zip(written).enumerate() {
        let place = format!("/pieces/{index}/cut_line");
        let made = cut.as_ref().and_then(|cut| cut.of(piece.name()));
        let agrees = match (made, written) {
            (None, None) => true,
            (Some(made), Some(written)) => {
                let open = written.strip_suffix('Z').unwrap_or(written);
                is_same(made, &curve(open, || place.clone())?)
            }
            _ => false,
        };
        if !agrees {
            return Err(DocumentError::CutLine { place });
        }
    }
    Ok(cut)
}

/// Whether two curves are the same to what a print can show.
fn is_same(a: &Curve, b: &Curve) -> bool {
    let near = |p: Point, q: Point| p.distance(q) <= tolerance::SEAM_DRAFTED;
    let (first, second) = (a.to_path(), b.to_path());
    let points = |path: &kurbo::BezPath| -> Vec<Point> {
        let elements = path.elements().iter();
        elements
            .flat_map(|element| match *element {
                kurbo::PathEl::MoveTo(p) | kurbo::PathEl::LineTo(p) => vec![p],
                kurbo::PathEl::QuadTo(p, q) => vec![p, q],
                kurbo::PathEl::CurveTo(p, q, r) => vec![p, q, r],
                kurbo::PathEl::ClosePath => vec![],
            })
            .collect()
    };
    let (first, second) = (points(&first), points(&second));
    first.len() == second.len() && first.iter().zip(&second).all(|(p, q)| near(*p, *q))
}

fn piece(shape: PieceShape, place: &str) -> Result<Piece, DocumentError> {
    let cut = match (shape.cut, shape.face_down) {
        (CutName::Fold, false) => Cut::Fold,
        (CutName::Pair, false) => Cut::Pair,
        (CutName::Single, false) => Cut::Single,
        (CutName::Single, true) => Cut::SingleFaceDown,
        (_, true) => {
            let what = "true, on a piece that is cut on the fold or as a pair";
            return Err(at(
                Fault::wrong(what, "false"),
                &format!("{place}/face_down"),
            ));
        }
    };
    let mut edges = Vec::with_capacity(shape.edges.len());
    for (index, EdgeShape { name, role, path }) in shape.edges.into_iter().enumerate() {
        let curve = curve(&path, || format!("{place}/edges/{index}/path"))?;
        edges.push(Edge::new(EdgeName::new(name), role, curve));
    }
    let mut darts = Vec::with_capacity(shape.darts.len());
    for (index, dart) in shape.darts.into_iter().enumerate() {
        darts.push(read_dart(dart, &format!("{place}/darts/{index}"))?);
    }
    let mut lines = Vec::with_capacity(shape.lines.len());
    for (index, line) in shape.lines.into_iter().enumerate() {
        let curve = curve(&line.path, || format!("{place}/lines/{index}/path"))?;
        lines.push(BalanceLine {
            name: line.name,
            curve,
        });
    }
    let refused = |source: PieceError| DocumentError::Parts {
        place: place.to_owned(),
        source,
    };
    let notches = shape.notches.into_iter().map(|notch| Notch {
        name: notch.name,
        edge: EdgeName::new(notch.edge),
        at: notch.at,
        kind: notch.kind,
    });
    let drill_points = shape.drill_points.into_iter();
    let points = shape.points.into_iter();
    Piece::new(PieceParts {
        name: shape.name,
        side: shape.side,
        cut,
        outline: Outline::new(edges).map_err(refused)?,
        darts,
        grain: shape.grain.map(point),
        notches: notches.collect(),
        lines,
        drill_points: drill_points
            .map(|PointShape { name, at }| DrillPoint {
                name,
                at: point(at),
            })
            .collect(),
        points: points
            .map(|PointShape { name, at }| NamedPoint {
                name,
                at: point(at),
            })
            .collect(),
    })
    .map_err(refused)
}

fn read_dart(shape: DartShape, place: &str) -> Result<Dart, DocumentError> {
    let apexes = match shape.apexes.as_slice() {
        [one] => Apexes::One(point(*one)),
        [upper, lower] => Apexes::Two(point(*upper), point(*lower)),
        others => {
            let found = format!("a list of {}", others.len());
            let fault = Fault::wrong(found, "one apex or two");
            return Err(at(fault, &format!("{place}/apexes")));
        }
    };
    Ok(Dart {
        name: shape.name,
        edge: shape.edge.map(EdgeName::new),
        legs: shape.legs.map(point),
        apexes,
        pressed: shape.press,
    })
}

fn seam(shape: SeamShape) -> Seam {
    Seam {
        name: shape.name,
        side: shape.side,
        a: shape.a.into_iter().map(edge_ref).collect(),
        b: shape.b.into_iter().map(edge_ref).collect(),
        ease: shape.ease,
        ease_on: shape.ease_on,
    }
}

fn edge_ref(shape: EdgeRefShape) -> EdgeRef {
    EdgeRef {
        piece: shape.piece,
        edge: EdgeName::new(shape.edge),
        against: shape.against,
    }
}

fn girth((name, shape): (String, GirthShape)) -> Girth {
    let run = |RunShape { piece, along, name }| GirthRun {
        piece,
        along: match along {
            AlongName::Line => RunAlong::Line(name),
            AlongName::Edge => RunAlong::Edge(EdgeName::new(name)),
        },
    };
    Girth {
        name,
        side: shape.side,
        body: shape.body,
        ease: shape.ease,
        limb: shape.limb,
        runs: shape.runs.into_iter().map(run).collect(),
    }
}

/// The accounts of a document: what is said in words must be what the measures say.
pub(super) fn accounts(shapes: Vec<AccountShape>) -> Result<Vec<Account>, DocumentError> {
    let shapes = shapes.into_iter().enumerate();
    shapes
        .map(|(index, shape)| account(shape, &format!("/account/{index}")))
        .collect()
}

fn account(shape: AccountShape, place: &str) -> Result<Account, DocumentError> {
    for (index, change) in shape.changes.iter().enumerate() {
        same_words(&change.what, &change.measure, || {
            format!("{place}/changes/{index}/what")
        })?;
    }
    if shape.kept.len() != shape.kept_measures.len() {
        let found = format!("a list of {}", shape.kept_measures.len());
        let fault = Fault::wrong(found, "a measure for each entry of `kept`");
        return Err(at(fault, &format!("{place}/kept_measures")));
    }
    for (index, (words, measure)) in shape.kept.iter().zip(&shape.kept_measures).enumerate() {
        same_words(words, measure, || format!("{place}/kept/{index}"))?;
    }
    let changes = shape.changes.into_iter().map(|change| Change {
        measure: change.measure,
        before: change.before,
        after: change.after,
    });
    Ok(Account {
        alteration: shape.alteration,
        amount: shape.amount,
        unit: shape.unit,
        changes: changes.collect(),
        kept: shape.kept_measures,
    })
}

fn same_words(
    words: &str,
    measure: &Measure,
    place: impl Fn() -> String,
) -> Result<(), DocumentError> {
    let expected = measure.to_string();
    if words == expected {
        return Ok(());
    }
    let fault = Fault::wrong(
        format!("`{}`", short(words)),
        format!("`{}`", short(&expected)),
    );
    Err(at(fault, &place()))
}

fn curve(data: &str, place: impl Fn() -> String) -> Result<Curve, DocumentError> {
    exact_path::read(data).map_err(|fault| match fault {
        PathFault::Text(fault) => at(fault, &place()),
        PathFault::Curve(source) => DocumentError::Path {
            place: place(),
            source,
        },
    })
}

fn at(fault: Fault, place: &str) -> DocumentError {
    DocumentError::Shape {
        place: place.to_owned(),
        fault: fault.fault,
    }
}

fn point([x, y]: At) -> Point {
    Point::new(x, y)
}
