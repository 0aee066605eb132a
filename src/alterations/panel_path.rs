//! The line of a panel seam through the apexes of the darts it takes up, once for each piece.

use super::AlterationError;
use crate::geometry::{Curve, GeometryError, Point, Vec2, along, root, tolerance};

/// Over so many millimetres a dart's straight leg is rounded into the seam at its apex, unless
/// a balance line crosses it nearer: a width measured there must stay (value from memory).
const ROUNDED: f64 = 45.0;

/// Handles of a rounding, as a share of its length.
const HANDLE: f64 = 0.4;

/// A place the seam goes through, with its direction there.
#[derive(Debug, Clone)]
pub(super) struct Node {
    /// Where it lies on each piece: the two differ at the legs of a dart.
    pub at: [Point; 2],
    /// Direction of the seam; none at its ends, where it runs on straight.
    pub toward: Option<Vec2>,
    /// What is notched there, if anything.
    pub notch: Option<String>,
}

impl Node {
    /// A place common to both pieces.
    pub fn common(at: Point, toward: Option<Vec2>) -> Self {
        Self {
            at: [at, at],
            toward,
            notch: None,
        }
    }

    fn is_common(&self) -> bool {
        self.at[0].distance(self.at[1]) <= tolerance::POINT
    }
}

/// The seam's line on both pieces, from node to node.
pub(super) struct PanelPath {
    pub curves: [Curve; 2],
    /// How far along it each node lies.
    pub nodes: Vec<f64>,
}

/// Draws the seam. Where it follows the legs of a dart it is drawn twice, equally long; the
/// lines that cross it bound how far a leg is rounded.
pub(super) fn panel_path(nodes: &[Node], lines: &[&Curve]) -> Result<PanelPath, AlterationError> {
    let mut curves: [Option<Curve>; 2] = [None, None];
    let mut walked = vec![0.0];
    for pair in nodes.windows(2) {
        let drawn = between(&pair[0], &pair[1], lines)?;
        walked.push(walked[walked.len() - 1] + drawn[0].length());
        for (whole, part) in curves.iter_mut().zip(drawn) {
            *whole = Some(match whole.take() {
                None => part,
                Some(before) => before.then(&part)?,
            });
        }
    }
    let [Some(one), Some(other)] = curves else {
        return Err(GeometryError::Empty.into());
    };
    Ok(PanelPath {
        curves: [one, other],
        nodes: walked,
    })
}

/// The seam from one node to the next, on both pieces.
fn between(from: &Node, to: &Node, lines: &[&Curve]) -> Result<[Curve; 2], AlterationError> {
    if from.is_common() && to.is_common() {
        let chord = to.at[0] - from.at[0];
        let handle = chord.hypot() / 3.0;
        let leave = from.toward.unwrap_or_else(|| chord.normalize()) * handle;
        let arrive = to.toward.unwrap_or_else(|| chord.normalize()) * handle;
        let curve = Curve::hermite(from.at[0], leave, to.at[0], arrive)?;
        return Ok([curve.clone(), curve]);
    }
    let rounded = [0, 1].map(|side| rounding(from.at[side], to.at[side], lines));
    let over = [
        rounded[0].0.min(rounded[1].0),
        rounded[0].1.min(rounded[1].1),
    ];
    let leg = |side: usize, fullness: f64| {
        leg(
            (from.at[side], from.toward),
            (to.at[side], to.toward),
            over,
            fullness,
        )
    };
    let plain = [leg(0, 1.0)?, leg(1, 1.0)?];
    let lengths = [plain[0].length(), plain[1].length()];
    if (lengths[0] - lengths[1]).abs() <= tolerance::POINT {
        return Ok(plain);
    }
    // The legs leave the seam's direction unequally: the straighter one is drawn fuller.
    let short = usize::from(lengths[1] < lengths[0]);
    let miss =
        |fullness: f64| leg(short, fullness).map_or(f64::NAN, |c| c.length() - lengths[1 - short]);
    let fullness =
        root("fullness of the panel seam", 1.0, 2.4, miss).map_err(|_| AlterationError::First {
            why: "the two darts meet at so sharp an angle that no smooth seam runs through both"
                .to_owned(),
            advice: "move one of them opposite the other first (dart_relocation)".to_owned(),
        })?;
    let fuller = leg(short, fullness)?;
    let [one, other] = plain;
    Ok(if short == 0 {
        [fuller, other]
    } else {
        [one, fuller]
    })
}

/// How far a leg may be rounded at its two ends: short of every line that crosses it.
fn rounding(from: Point, to: Point, lines: &[&Curve]) -> (f64, f64) {
    let length = from.distance(to);
    let most = ROUNDED.min(0.45 * length);
    let Ok(leg) = Curve::line(from, to) else {
        return (most, most);
    };
    let met: Vec<f64> = lines
        .iter()
        .flat_map(|line| crate::geometry::crossings(leg.segments(), line.segments()))
        .map(|c| c.point.distance(from))
        .collect();
    let free = |distance: f64| {
        // A line through the end itself meets the seam where it is fixed.
        let bound = (distance > tolerance::PRINT).then_some(0.95 * distance);
        bound.unwrap_or(f64::INFINITY)
    };
    let start = met.iter().map(|d| free(*d)).fold(most, f64::min);
    let end = met.iter().map(|d| free(length - d)).fold(most, f64::min);
    (start, end)
}

/// One leg: straight, rounded into the seam's direction at its ends.
fn leg(
    (from, leave): (Point, Option<Vec2>),
    (to, arrive): (Point, Option<Vec2>),
    over: [f64; 2],
    fullness: f64,
) -> Result<Curve, GeometryError> {
    let straight = (to - from).normalize();
    let handle = |over: f64| over * HANDLE * fullness;
    let (mut start, mut end) = (from, to);
    let mut parts = Vec::new();
    if let Some(direction) = leave {
        start = along(from, to, over[0]);
        let h = handle(over[0]);
        parts.push(Curve::hermite(from, direction * h, start, straight * h)?);
    }
    if let Some(direction) = arrive {
        end = along(to, from, over[1]);
        let h = handle(over[1]);
        let last = Curve::hermite(end, straight * h, to, direction * h)?;
        parts.push(Curve::line(start, end)?);
        parts.push(last);
    } else {
        parts.push(Curve::line(start, to)?);
    }
    let mut parts = parts.into_iter();
    let first = parts.next().ok_or(GeometryError::Empty)?;
    let _ = end;
    parts.try_fold(first, |whole, part| whole.then(&part))
}
