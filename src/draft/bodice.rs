//! The bodice block: back and front from neck to waist.

use super::bust_dart::FrontSide;
use super::frame::Frame;
use super::shaping::Shaping;
use super::trunk::{
    Drafted, Marked, back_dart_level, back_side_seam, back_top, bust_line, front_side_seam,
    front_top, girth, marked, side, side_notch, upper_lines,
};
use super::upper_body::upper_body;
use super::waist_edge::{WaistQuarter, waist_edge};
use super::{DraftError, Ease, Figure};
use crate::geometry::{Curve, Point};
use crate::piece::{
    Edge, EdgeName, EdgeRef, EdgeRole, NotchKind, Outline, Pattern, PatternParts, Piece, RunAlong,
    Seam, wide_darts,
};

/// Drafts the bodice block: pieces `back` and `front`, both cut on the fold.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, bodice};
/// let pattern = bodice(&Figure::cylinder(900.0), &Ease::of(Fit::Close))?;
/// assert!(pattern.piece("back").is_some() && pattern.piece("front").is_some());
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
///
/// # Errors
/// When the figure cannot be drafted; the error names what stands against it.
pub fn bodice(figure: &Figure, ease: &Ease) -> Result<Pattern, DraftError> {
    Ok(Pattern::new(parts(figure, ease)?.pattern)?)
}

/// The bodice and the frame it stands on.
pub(super) fn parts(figure: &Figure, ease: &Ease) -> Result<Drafted, DraftError> {
    let frame = upper_body(figure, ease, &Shaping::BODICE)?;
    let front_side = front_side_seam(&frame)?;
    let shoulder = Seam::plain(
        "shoulder",
        EdgeRef::new("back", EdgeName::SHOULDER),
        EdgeRef::new("front", EdgeName::SHOULDER),
    );
    let side = side(&front_side);
    let pieces = vec![back(&frame)?, front(&frame, front_side)?];
    let warnings = frame.warnings.iter().cloned();
    let both = ["back", "front"];
    let along = |line: &str| RunAlong::Line(line.to_owned());
    let pattern = PatternParts {
        block: "bodice".to_owned(),
        warnings: warnings.chain(wide_darts(&pieces)).collect(),
        pieces,
        seams: vec![shoulder, side],
        girths: vec![
            girth(
                "bust",
                (figure.bust_girth, ease.bust),
                &both,
                &along("underarm"),
            ),
            girth(
                "waist",
                (figure.waist_girth, ease.waist),
                &both,
                &RunAlong::Edge(EdgeName::WAIST),
            ),
            girth(
                "back_width",
                (figure.back_width, ease.back_width),
                &both[..1],
                &along("width"),
            ),
        ],
    };
    Ok(Drafted { pattern, frame })
}

fn back(frame: &Frame) -> Result<Piece, DraftError> {
    let top = back_top(frame)?;
    let side = back_side_seam(frame);
    let waist = waist_edge(
        "back waist",
        &WaistQuarter {
            level: frame.waist,
            side: (side.end(), frame.side.end_direction()),
            length: frame.plan.back,
            dart_at: frame.plan.back_dart_at,
            apex_level: back_dart_level(frame),
            intake: frame.shares.back_dart,
        },
    )?;
    let lines = upper_lines(&top, frame.back_underarm())?;
    let mut edges = top.edges;
    edges.extend([
        Edge::new(EdgeName::SIDE_SEAM, EdgeRole::Seam, side),
        Edge::new(EdgeName::WAIST, EdgeRole::Seam, waist.edge),
        Edge::new(
            EdgeName::CENTRE_BACK,
            EdgeRole::Fold,
            Curve::line(Point::new(0.0, frame.waist), Point::ORIGIN)?,
        ),
    ]);
    marked(
        frame,
        Marked {
            name: "back",
            outline: Outline::new(edges)?,
            darts: top.shoulder_dart.into_iter().chain(waist.darts).collect(),
            armscye_at: top.armscye.width_at,
            armscye_notch: NotchKind::Double,
            side: vec![("side", side_notch(frame)?)],
            eased: None,
            lines,
            bust_point: None,
            fold: (0.0, frame.waist),
        },
    )
}

fn front(frame: &Frame, front_side: FrontSide) -> Result<Piece, DraftError> {
    let top = front_top(frame)?;
    let FrontSide {
        seam: side,
        dart: bust,
        eased,
    } = front_side;
    let waist = waist_edge("front waist", &frame.front_waist(side.end()))?;
    let mut lines = upper_lines(&top, frame.front_underarm())?;
    let neck = top.neck;
    let mut edges = top.edges;
    edges.extend([
        Edge::new(EdgeName::SIDE_SEAM, EdgeRole::Seam, side),
        Edge::new(EdgeName::WAIST, EdgeRole::Seam, waist.edge),
        Edge::new(
            EdgeName::CENTRE_FRONT,
            EdgeRole::Fold,
            Curve::line(Point::new(0.0, frame.waist), neck)?,
        ),
    ]);
    let outline = Outline::new(edges)?;
    lines.push(bust_line(&outline, frame.bust_point)?);
    marked(
        frame,
        Marked {
            name: "front",
            outline,
            darts: bust.into_iter().chain(waist.darts).collect(),
            armscye_at: top.armscye.width_at,
            armscye_notch: NotchKind::Single,
            side: vec![("side", side_notch(frame)?)],
            eased,
            lines,
            bust_point: Some(frame.bust_point),
            fold: (neck.y, frame.waist),
        },
    )
}
