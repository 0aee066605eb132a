//! The line of a panel seam through the darts it takes up, once for each piece.

use super::panel_corner::{Bow, Corner};
use super::panel_leg::{leg, smooth_leg, swept, turned};
use crate::alterations::AlterationError;
use crate::geometry::{Curve, GeometryError, Point, Vec2, Which, angle_between, root, tolerance};
use std::f64::consts::PI;

/// Over so many millimetres a dart's straight leg is rounded into the seam at its apex, unless
/// a balance line crosses it nearer: a width measured there must stay (value from memory).
const ROUNDED: f64 = 60.0;

/// A place the seam goes through, with its direction there.
#[derive(Debug, Clone)]
pub(in crate::alterations) struct Node {
    /// Where it lies on each piece: the two differ at the legs of a dart.
    pub at: [Point; 2],
    /// Direction of the seam; none at its ends, where it runs on straight.
    pub toward: Option<Vec2>,
    /// At an end of the seam: its directions there on each piece, where it runs on in a sweep.
    pub swept: Option<[Vec2; 2]>,
    /// What is notched there, if anything.
    pub notch: Option<String>,
    /// Apexes of the darts before and after it, when the seam goes between them: their legs
    /// point there, and the place is sought on the line from the one to the other.
    pub slides: Option<[Point; 2]>,
    /// Whether it is a point of fullness that the seam is bent over between the places beside.
    pub bends: bool,
    /// At an end of the seam: how it is bowed from there on, to stay in the cloth.
    pub bow: Bow,
}

impl Node {
    /// A place common to both pieces.
    pub fn common(at: Point, toward: Option<Vec2>) -> Self {
        Self {
            at: [at, at],
            toward,
            swept: None,
            notch: None,
            slides: None,
            bends: false,
            bow: Bow::default(),
        }
    }

    /// Its direction there on a piece.
    fn way(&self, side: Which) -> Option<Vec2> {
        self.toward.or_else(|| Some(*side.of(self.swept.as_ref()?)))
    }

    /// Where a dart's leg that ends here points, coming in and going out.
    fn aims(&self, side: Which) -> [Point; 2] {
        self.slides.unwrap_or([*side.of(&self.at); 2])
    }

    pub fn is_common(&self) -> bool {
        self.at[0].distance(self.at[1]) <= tolerance::POINT
    }
}

/// The seam's line on both pieces, from node to node.
pub(in crate::alterations) struct PanelPath {
    pub curves: [Curve; 2],
    /// What is notched along it, and how far from its start.
    pub notches: Vec<(String, f64)>,
}

/// Draws the seam. Where it follows the legs of a dart it is drawn twice, equally long; the
/// lines that cross it bound how far a leg is rounded.
///
/// Where it goes between the apexes of two darts, the place is sought at which both are equally
/// long: nearer the one apex the one piece's edge is longer, nearer the other the other's.
pub(in crate::alterations) fn panel_path(
    nodes: &[Node],
    lines: &[&Curve],
) -> Result<PanelPath, AlterationError> {
    let slid = |share: f64| -> Vec<Node> {
        let place = |node: &Node| match node.slides {
            Some([a, b]) => Node {
                at: [a.lerp(b, share); 2],
                ..node.clone()
            },
            None => node.clone(),
        };
        nodes.iter().map(place).collect()
    };
    let slides = nodes.iter().any(|n| n.slides.is_some());
    if slides {
        let miss = |share: f64| {
            drawn(&slid(share), lines, false, Begun::default())
                .map_or(f64::NAN, |p| p.curves[0].length() - p.curves[1].length())
        };
        if let Ok(share) = root("place of the seam between two apexes", 0.0, 1.0, miss) {
            return drawn(&slid(share), lines, false, Begun::default());
        }
    }
    drawn(&slid(0.5), lines, true, Begun::default())
}

/// A seam over a point of fullness is notched so far before and behind it, in millimetres: 40 to
/// 50 (value from memory).
const NOTCHED: f64 = 45.0;

/// A notch keeps so far from the ends of the seam, in millimetres.
const NOTCH_CLEAR: f64 = 12.0;

/// A seam that is drawn already up to one of its nodes.
#[derive(Debug, Clone, Default)]
pub(in crate::alterations) struct Begun {
    pub curves: [Option<Curve>; 2],
    /// What is notched along it, and how far from its start.
    pub notches: Vec<(String, f64)>,
    /// The node that it has reached.
    pub node: usize,
}

/// The seam drawn on through the nodes that are left.
pub(in crate::alterations) fn drawn_on(
    begun: Begun,
    nodes: &[Node],
    lines: &[&Curve],
) -> Result<PanelPath, AlterationError> {
    drawn(nodes, lines, true, begun)
}

/// The seam through its nodes as they lie; each part made equal on both pieces when wanted.
fn drawn(
    nodes: &[Node],
    lines: &[&Curve],
    equal: bool,
    begun: Begun,
) -> Result<PanelPath, AlterationError> {
    let Begun {
        mut curves,
        mut notches,
        node: mut index,
    } = begun;
    while let (Some(from), Some(to)) = (nodes.get(index), nodes.get(index + 1)) {
        let walked = curves[0].as_ref().map_or(0.0, Curve::length);
        let parted = |node: &&Node| to.bends && !(from.is_common() && node.is_common());
        let onward = nodes.get(index + 2).filter(parted);
        let over = match onward {
            Some(onward) => match bent(from, to, onward, lines) {
                Ok(parts) => Some((parts, onward)),
                // Where one way is shared the seam may be bent at the apex alone.
                Err(_) if from.is_common() && !from.bow.even => None,
                Err(e) => return Err(e),
            },
            None => None,
        };
        let onward = over.is_some();
        let (parts, reached) = match over {
            Some((parts, onward)) => {
                let over = walked + parts[0].nearest(to.at[0]).1;
                notches.extend(notched_beside(to, [from, onward], over));
                (parts, onward)
            }
            None => (between(from, to, lines, equal)?, to),
        };
        for (whole, part) in curves.iter_mut().zip(parts) {
            *whole = Some(match whole.take() {
                None => part,
                Some(before) => before.then(&part)?,
            });
        }
        let walked = curves.iter().flatten().map(|c| 0.5 * c.length()).sum();
        notches.extend(reached.notch.clone().map(|name| (name, walked)));
        index += if onward { 2 } else { 1 };
    }
    let [Some(one), Some(other)] = curves else {
        return Err(GeometryError::Empty.into());
    };
    let most = one.length() - NOTCH_CLEAR;
    notches.retain(|(_, at)| (NOTCH_CLEAR..=most).contains(at));
    Ok(PanelPath {
        curves: [one, other],
        notches,
    })
}

/// The notches before and behind a point of fullness that lies so far along the seam.
fn notched_beside(over: &Node, [from, onward]: [&Node; 2], walked: f64) -> Vec<(String, f64)> {
    let Some(name) = &over.notch else {
        return Vec::new();
    };
    let name = name.trim_end_matches(" apex");
    let falls = from.at[0].y <= onward.at[0].y;
    let [before, behind] = if falls {
        ["above", "below"]
    } else {
        ["below", "above"]
    };
    vec![
        (format!("{name} {before}"), walked - NOTCHED),
        (format!("{name} {behind}"), walked + NOTCHED),
    ]
}

/// The seam over a point of fullness, on both pieces.
fn bent(
    from: &Node,
    over: &Node,
    to: &Node,
    lines: &[&Curve],
) -> Result<[Curve; 2], AlterationError> {
    let rounded = Which::BOTH.map(|side| rounding(*side.of(&over.at), *side.of(&to.at), lines).1);
    Corner {
        from: from.at,
        over: over.at[0],
        to: to.at,
        arrives: (to.toward, rounded[0].min(rounded[1])),
        bow: from.bow,
        kept: lines,
    }
    .bent()
}

/// A seam that leaves an apex along its dart is swept round by at most so much beyond the way to
/// its end, in radians, unless it is bowed.
const SWEEP: f64 = 25.0 * PI / 180.0;

/// The widest turn on either side of the straight way that a sweep can have, in radians.
const WIDEST: f64 = 80.0 * PI / 180.0;

/// The seam between two places that both pieces share: straight between two ends, swept one way
/// from a direction to an end.
fn shared(from: &Node, to: &Node) -> Result<Curve, GeometryError> {
    let (start, end) = (from.at[0], to.at[0]);
    let chord = (end - start).normalize();
    let onto_end = |leave: Vec2, chord: Vec2, bow: Bow| {
        let off = angle_between(leave, chord);
        let onto = (off.abs().min(SWEEP) + bow.off).min(WIDEST).copysign(off);
        (off.abs() < WIDEST).then(|| turned(chord, onto))
    };
    let way = match (from.toward, to.toward) {
        (None, None) => return Curve::line(start, end),
        (Some(leave), None) => onto_end(leave, chord, to.bow).map(|arrive| (leave, arrive)),
        (None, Some(arrive)) => onto_end(-arrive, -chord, from.bow).map(|leave| (-leave, arrive)),
        (Some(leave), Some(arrive)) => Some((leave, arrive)),
    };
    if let Some((leave, arrive)) = way
        && let Ok(curve) = swept((start, leave), (end, arrive))
    {
        return Ok(curve);
    }
    let handle = start.distance(end) / 3.0;
    let leave = from.toward.unwrap_or(chord) * handle;
    let arrive = to.toward.unwrap_or(chord) * handle;
    Curve::hermite(start, leave, end, arrive)
}

/// The seam from one node to the next, on both pieces.
fn between(
    from: &Node,
    to: &Node,
    lines: &[&Curve],
    equal: bool,
) -> Result<[Curve; 2], AlterationError> {
    if from.is_common() && to.is_common() {
        let curve = shared(from, to)?;
        return Ok([curve.clone(), curve]);
    }
    let rounded = Which::BOTH.map(|side| rounding(from.aims(side)[1], to.aims(side)[0], lines));
    let over = [
        rounded[0].0.min(rounded[1].0),
        rounded[0].1.min(rounded[1].1),
    ];
    let usual = Which::BOTH.map(|side| usual_rounding(from.aims(side)[1], to.aims(side)[0]));
    let crossed = over.into_iter().any(|over| over < usual[0].min(usual[1]));
    let leg = |side: Which, fullness: f64| {
        let (start, end) = (*side.of(&from.at), *side.of(&to.at));
        match (from.way(side), to.way(side)) {
            // No width is measured across it: it need not keep to the dart's straight leg.
            (Some(leave), Some(arrive)) if !crossed => {
                smooth_leg((start, leave), (end, arrive), fullness)
            }
            _ => leg(
                (start, from.aims(side)[1], from.toward),
                (end, to.aims(side)[0], to.toward),
                over,
                fullness,
            ),
        }
    };
    let plain = [leg(Which::First, 1.0)?, leg(Which::Second, 1.0)?];
    let lengths = [plain[0].length(), plain[1].length()];
    if !equal || (lengths[0] - lengths[1]).abs() <= tolerance::POINT {
        return Ok(plain);
    }
    // The legs leave the seam's direction unequally: the straighter one is drawn fuller.
    let short = Which::second_if(lengths[1] < lengths[0]);
    let long = short.other().of(&lengths);
    let miss = |fullness: f64| leg(short, fullness).map_or(f64::NAN, |c| c.length() - long);
    let fullness =
        root("fullness of the panel seam", 1.0, 2.4, miss).map_err(|_| AlterationError::First {
            why: "the two darts meet at so sharp an angle that no smooth seam runs through both"
                .to_owned(),
            advice: "move one of them opposite the other first (dart_relocation)".to_owned(),
        })?;
    let mut both = plain;
    *short.of_mut(&mut both) = leg(short, fullness)?;
    Ok(both)
}

/// How far a leg is rounded at its two ends where no line crosses it.
fn usual_rounding(from: Point, to: Point) -> f64 {
    ROUNDED.min(0.45 * from.distance(to))
}

/// How far a leg may be rounded at its two ends: short of every line that crosses it.
fn rounding(from: Point, to: Point, lines: &[&Curve]) -> (f64, f64) {
    let length = from.distance(to);
    let most = usual_rounding(from, to);
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
