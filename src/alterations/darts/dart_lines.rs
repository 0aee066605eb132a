//! Balance lines across a piece in which a dart went elsewhere: each keeps its sewn length.

use crate::geometry::{Curve, GeometryError, Point, Region, Rigid, crossings, root, tolerance};
use kurbo::PathSeg;

/// How a piece was cut and what moved.
pub(in crate::alterations) struct Cuts<'a> {
    /// Where all cuts meet.
    pub apex: Point,
    /// Legs of the dart that was closed.
    pub legs: [Point; 2],
    /// Ends on the edge of the dart opened, before the panel turned: equal for a new dart.
    pub slash: [Point; 2],
    /// The cut to the new place, where it is curved.
    pub cut: Option<&'a Curve>,
    /// The panel that turned, before it did.
    pub panel: Region,
    /// The panel that stayed.
    pub still: Region,
    /// How it turned.
    pub motion: Rigid,
    /// Whether the old dart is gone.
    pub closed: bool,
}

/// The line redrawn: its parts go with their panels, and straight bridges join them across
/// open darts, broken at the legs, so that the sewn line is as long as before.
pub(in crate::alterations) fn redrawn(
    line: &Curve,
    cuts: &Cuts<'_>,
) -> Result<Curve, GeometryError> {
    let mut stops = vec![0.0, line.length()];
    let straight = cuts.slash.iter().filter(|_| cuts.cut.is_none());
    let straight = cuts.legs.iter().chain(straight);
    let straight = straight.map(|end| Curve::line(cuts.apex, *end));
    for cut in straight.chain(cuts.cut.cloned().map(Ok)) {
        let cut = cut?;
        let met = crossings(line.segments(), cut.segments());
        stops.extend(met.iter().map(|c| line.length_to(c.first)));
    }
    stops.sort_by(f64::total_cmp);
    stops.dedup_by(|a, b| (*a - *b).abs() <= tolerance::POINT);
    let mut whole: Option<(Curve, Point)> = None;
    for [from, to] in stops.array_windows() {
        let (middle, _) = line.point_at(0.5 * (from + to))?;
        if within(middle, cuts.apex, cuts.legs) || within(middle, cuts.apex, cuts.slash) {
            continue;
        }
        let part = line.part(*from, *to)?;
        let (from, to) = (part.start(), part.end());
        let part = if goes(&part, cuts)? {
            part.moved(&cuts.motion)
        } else {
            part
        };
        whole = Some(match whole {
            None => (part, to),
            Some((before, left)) => {
                let across_old = left.distance(from) > tolerance::POINT
                    && within(left.midpoint(from), cuts.apex, cuts.legs);
                (joined(before, &part, across_old && cuts.closed)?, to)
            }
        });
    }
    whole.map_or_else(|| Ok(line.clone()), |(curve, _)| straightened(&curve))
}

/// Whether a part of a line goes with the panel that turned. A level line may run out of the
/// cloth for a while, where an armscye dips below its own end: most of it decides.
fn goes(part: &Curve, cuts: &Cuts<'_>) -> Result<bool, GeometryError> {
    let (length, mut votes) = (part.length(), 0);
    for step in 1..10 {
        let (point, _) = part.point_at(length * f64::from(step) / 10.0)?;
        votes += i32::from(cuts.panel.surrounds(point));
        votes -= i32::from(cuts.still.surrounds(point));
    }
    Ok(votes > 0)
}

/// Whether a point lies between two legs; a little beyond their ends counts, for the mouth.
fn within(point: Point, apex: Point, legs: [Point; 2]) -> bool {
    let (a, b, p) = (legs[0] - apex, legs[1] - apex, point - apex);
    let reach = 1.2 * a.hypot().max(b.hypot());
    let side = a.cross(b).signum();
    a.cross(b).abs() > tolerance::POINT
        && p.hypot() < reach
        && a.cross(p) * side > 0.0
        && p.cross(b) * side > 0.0
}

/// Two parts of a line end to end. Across an open dart they are bridged straight; where a dart
/// closed they are drawn to one place on its seam, at the length both had together.
fn joined(before: Curve, after: &Curve, closed: bool) -> Result<Curve, GeometryError> {
    let (end, start) = (before.end(), after.start());
    if end.distance(start) <= tolerance::POINT {
        return before.ending_at(start)?.then(after);
    }
    if !closed {
        return before.then(&Curve::line(end, start)?)?.then(after);
    }
    let drawn = |share: f64| -> Result<Curve, GeometryError> {
        let meet = end.lerp(start, share);
        let back = after.reversed().ending_at(meet)?.reversed();
        before.ending_at(meet)?.then(&back)
    };
    let length = before.length() + after.length();
    let miss = |share: f64| drawn(share).map_or(f64::NAN, |c| c.length() - length);
    let share = root("meeting of a balance line", 0.0, 0.5, miss)
        .or_else(|_| root("meeting of a balance line", 0.5, 1.0, miss))
        .unwrap_or(0.5);
    drawn(share)
}

/// The curve with straight segments that run on in one line made one.
fn straightened(curve: &Curve) -> Result<Curve, GeometryError> {
    let mut segments: Vec<PathSeg> = Vec::new();
    for segment in curve.segments() {
        if let (Some(PathSeg::Line(last)), PathSeg::Line(next)) = (segments.last_mut(), segment) {
            let (u, v) = (last.p1 - last.p0, next.p1 - next.p0);
            let straight = u.cross(v).abs() <= tolerance::ANGLE * u.hypot() * v.hypot();
            if straight && u.dot(v) > 0.0 {
                last.p1 = next.p1;
                continue;
            }
        }
        segments.push(*segment);
    }
    Curve::new(segments)
}
