//! The sleeve after its armscye has changed: the cap solved again.

use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Span, arc_length, root};
use crate::piece::{EaseOn, EdgeName, EdgeRef, Pattern, Piece, Seam};
use kurbo::{CubicBez, Line, PathSeg};

/// The altered pattern with every sleeve cap solved to its armscye, at the ease it had before.
///
/// The biceps line and everything below it stay; the cap gets higher or lower, and its top
/// moves forward or back, until each half is as long as its half of the armscye with its ease.
/// Notches below which no ease lies go with the armscye's.
///
/// # Errors
/// When no height gives the lengths.
///
/// ```
/// use blockwright::alterations::solve_sleeves;
/// use blockwright::draft::{Block, DraftOptions, Figure, SleeveLength, draft_figure};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let mut options = DraftOptions::of(Block::Dress);
/// options.sleeve = Some(SleeveLength::Long);
/// let mut figure = Figure::cylinder(900.0);
/// figure.waist_girth = 720.0;
/// let pattern = draft_figure(&figure, &options)?;
/// // Nothing changed, nothing changes.
/// assert_eq!(solve_sleeves(&pattern, pattern.clone())?.pieces().len(), 3);
/// # Ok(()) }
/// ```
pub fn solve_sleeves(before: &Pattern, altered: Pattern) -> Result<Pattern, AlterationError> {
    let mut pattern = altered;
    let caps = cap_seams(&pattern);
    for cap in caps {
        pattern = solve(before, &pattern, &cap)?;
    }
    Ok(pattern)
}

fn solve(
    before: &Pattern,
    pattern: &Pattern,
    CapSeam { seam, cap }: &CapSeam,
) -> Result<Pattern, AlterationError> {
    let Some(sleeve) = pattern.piece(&cap.piece) else {
        return Ok(pattern.clone());
    };
    let ease = if seam.ease_on == Some(EaseOn::B) {
        seam.ease
    } else {
        0.0
    };
    let edge = sleeve
        .outline()
        .edge(&EdgeName::SLEEVE_CAP)
        .ok_or_else(|| AlterationError::Missing {
            what: "a sleeve cap".into(),
            advice: "draft with a sleeve",
        })?;
    let shoulder = sleeve.notches().iter().find(|n| n.name == "shoulder");
    let whole = edge.curve();
    let at = shoulder.map_or(whole.length() / 2.0, |n| n.at);
    // Turned in its armscye the sleeve has its top before or behind the notch.
    let crest = crest(whole, at);
    let beyond = crest - at;
    let (back_cap, front_cap) = whole.split_at(crest)?;
    // The armscye's edges up to the shoulder are those that were about as long as the cap's
    // back half: a panel seam may have divided them.
    let up_to = |p: &Pattern, count: usize| -> f64 {
        let edges = seam.a.iter().take(count);
        edges.filter_map(|e| p.seam_length(e)).sum()
    };
    let miss = |count: &usize| (up_to(before, *count) - at).abs();
    let behind = (1..seam.a.len())
        .min_by(|a, b| miss(a).total_cmp(&miss(b)))
        .unwrap_or(1);
    let ahead = seam.a.iter().skip(behind);
    let (back, front) = (
        up_to(pattern, behind),
        ahead.filter_map(|e| pattern.seam_length(e)).sum::<f64>(),
    );
    // Each half keeps its share of the ease.
    let share = if ease > 0.0 {
        Span::SHARES.nearest((at - up_to(before, behind)) / ease)
    } else {
        0.5
    };
    let wanted = (
        back + share * ease + beyond,
        front + (1.0 - share) * ease - beyond,
    );
    let (cap, top_at) = stretched(&back_cap, &front_cap, wanted).map_err(|source| {
        AlterationError::Construction {
            step: "sleeve cap for the altered armscye",
            source,
        }
    })?;
    let length = cap.length();
    let mut sketch = Sketch::of(sleeve);
    sketch.replace(&EdgeName::SLEEVE_CAP, cap.clone())?;
    let marks = marks(pattern, seam);
    let mut parts_notches = Vec::new();
    for notch in sleeve.notches() {
        let mut moved = notch.clone();
        if notch.name == "shoulder" {
            moved.at = top_at - beyond;
        } else if let Some((_, walked)) = marks.iter().find(|(name, _)| *name == notch.name) {
            // Below the notches no ease lies.
            let from_end = back + front - walked;
            moved.at = if *walked <= back {
                *walked
            } else {
                length - from_end
            };
        }
        parts_notches.push(moved);
    }
    sketch.parts_mut().notches = parts_notches;
    let height = cap.bounds().y0;
    let grain = &mut sketch.parts_mut().grain;
    grain[1].y = grain[1].y.max(height + 14.0);
    replaced(pattern, sketch.finish()?)
}

/// A cap is level at its notch when it slopes there by no more than this.
const LEVEL: f64 = 0.01;

/// How far from its notch the top of a cap may lie, in millimetres.
const BESIDE_NOTCH: f64 = 45.0;

/// Where along a cap its top is: at the shoulder notch, unless the cap slopes there.
pub(in crate::alterations) fn crest(cap: &Curve, notch: f64) -> f64 {
    let slope = |at: f64| cap.point_at(at).map_or(f64::NAN, |(_, along)| along.y);
    if slope(notch).abs() <= LEVEL {
        return notch;
    }
    let (from, to) = (
        (notch - BESIDE_NOTCH).max(0.0),
        (notch + BESIDE_NOTCH).min(cap.length()),
    );
    root("top of the cap", from, to, slope).unwrap_or(notch)
}

/// The pattern with the notches of every sleeve cap, below which no ease lies, where those of its
/// armscye are: for an armscye that changed between them, at a length that stayed.
pub(in crate::alterations) fn with_notches_below(
    pattern: Pattern,
) -> Result<Pattern, AlterationError> {
    let mut met = pattern;
    for CapSeam { seam, cap } in cap_seams(&met) {
        let Some(sleeve) = met.piece(&cap.piece) else {
            continue;
        };
        let cap = sleeve.seam_length(&EdgeName::SLEEVE_CAP).unwrap_or(0.0);
        let shoulder = sleeve.notches().iter().find(|n| n.name == "shoulder");
        let top = shoulder.map_or(0.5 * cap, |n| n.at);
        let armscye: f64 = seam.a.iter().filter_map(|e| met.seam_length(e)).sum();
        let marks = marks(&met, &seam);
        let mut piece = sleeve.clone().into_parts();
        for notch in &mut piece.notches {
            if let Some((_, walked)) = marks.iter().find(|(name, _)| *name == notch.name) {
                notch.at = if notch.at <= top {
                    *walked
                } else {
                    cap - (armscye - walked)
                };
            }
        }
        met = replaced(&met, Piece::new(piece)?)?;
    }
    Ok(met)
}

/// A seam that sets a sleeve in, and the sleeve's edge in it.
struct CapSeam {
    seam: Seam,
    cap: EdgeRef,
}

/// The seams that set a sleeve in.
fn cap_seams(pattern: &Pattern) -> Vec<CapSeam> {
    let of = |seam: &Seam| match seam.b.as_slice() {
        [cap] if seam.a.len() >= 2 && cap.edge == EdgeName::SLEEVE_CAP => Some(CapSeam {
            seam: seam.clone(),
            cap: cap.clone(),
        }),
        _ => None,
    };
    pattern.seams().iter().filter_map(of).collect()
}

/// The notches along an armscye: name and place along the sewn seam from its start.
fn marks(pattern: &Pattern, seam: &Seam) -> Vec<(String, f64)> {
    let (mut found, mut walked) = (Vec::new(), 0.0);
    for of in &seam.a {
        let (Some(piece), Some(length)) = (pattern.piece(&of.piece), pattern.seam_length(of))
        else {
            continue;
        };
        for notch in piece.notches().iter().filter(|n| n.edge == of.edge) {
            let sewn = piece.sewn_position(&of.edge, notch.at);
            let along = if of.against { length - sewn } else { sewn };
            found.push((notch.name.clone(), walked + along));
        }
        walked += length;
    }
    found
}

/// The pieces with a sleeve cap.
pub(in crate::alterations) fn sleeves(pattern: &Pattern) -> impl Iterator<Item = &Piece> {
    pattern
        .pieces()
        .iter()
        .filter(|p| p.outline().edge(&EdgeName::SLEEVE_CAP).is_some())
}

/// The pattern with one piece replaced by its altered self.
///
/// # Errors
/// When the pattern does not hold together any more.
pub(in crate::alterations) fn replaced(
    pattern: &Pattern,
    piece: Piece,
) -> Result<Pattern, AlterationError> {
    let mut parts = pattern.clone().into_parts();
    for slot in &mut parts.pieces {
        if slot.name() == piece.name() {
            *slot = piece;
            break;
        }
    }
    Ok(Pattern::new(parts)?)
}

/// Both halves of a cap stretched, each along its width and together in height, until they have
/// the wanted lengths; the whole cap, and where along it its top is.
pub(in crate::alterations) fn stretched(
    back: &Curve,
    front: &Curve,
    wanted: (f64, f64),
) -> Result<(Curve, f64), GeometryError> {
    let (left, top, right) = (back.start(), back.end(), front.end());
    let half = |curve: &Curve, end: Point, width: f64, height: f64| {
        Curve::new(half_stretched(curve, end, width, height).collect())
    };
    let whole = right.x - left.x;
    let back_width = top.x - left.x;
    // Only its length is asked for while it is sought: no curve is made of it.
    let length_at = |curve: &Curve, end: Point, width: f64, height: f64| -> f64 {
        half_stretched(curve, end, width, height)
            .map(|s| arc_length(&s))
            .sum()
    };
    let width_for = |curve: &Curve, end: Point, length: f64, height: f64| {
        root("width of half the cap", 0.3, 2.0, |w| {
            length_at(curve, end, w, height) - length
        })
    };
    // Where one end lies higher than the other the front half reaches as high as the back half.
    let level = left.y - right.y;
    let rise = |height: f64| {
        if level == 0.0 {
            height
        } else {
            (level + (top.y - left.y) * height) / (top.y - right.y)
        }
    };
    let widths = |height: f64| -> Result<(f64, f64), GeometryError> {
        Ok((
            width_for(back, left, wanted.0, height)?,
            width_for(front, right, wanted.1, rise(height))?,
        ))
    };
    // Near the old height first: far from it a half may have no width at all.
    let spans = [(0.96, 1.04), (0.88, 1.13), (0.75, 1.3), (0.6, 1.5)];
    let mut height = Err(GeometryError::Empty);
    for (low, high) in spans {
        height = root("height of the cap", low, high, |h| {
            widths(h).map_or(f64::NAN, |(b, f)| {
                b * back_width + f * (whole - back_width) - whole
            })
        });
        if height.is_ok() {
            break;
        }
    }
    let height = height?;
    let (b, f) = widths(height)?;
    let first = half(back, left, b, height)?;
    let second = half(front, right, f, rise(height))?;
    // Rounding only: both halves were solved to end at the same place.
    let second = map(&second, |p| {
        if p.distance(second.start()) == 0.0 {
            first.end()
        } else {
            p
        }
    })?;
    let at = first.length();
    Ok((first.then(&second)?, at))
}

pub(in crate::alterations) fn map(
    curve: &Curve,
    to: impl Fn(Point) -> Point,
) -> Result<Curve, GeometryError> {
    Curve::new(curve.segments().iter().map(|s| mapped(s, &to)).collect())
}

/// A half of a cap stretched away from its `end` at the underarm, which it still leaves in the
/// same direction: square to the underarm seam.
fn half_stretched(
    curve: &Curve,
    end: Point,
    width: f64,
    height: f64,
) -> impl Iterator<Item = PathSeg> {
    let to = stretching(end, width, height);
    let turned = move |old: Point, new: Point| {
        let reach = new.distance(end) / old.distance(end);
        if reach.is_finite() {
            end + (old - end) * reach
        } else {
            new
        }
    };
    curve
        .segments()
        .iter()
        .map(move |segment| match (*segment, mapped(segment, &to)) {
            (PathSeg::Cubic(old), PathSeg::Cubic(mut new)) => {
                if old.p0 == end {
                    new.p1 = turned(old.p1, new.p1);
                }
                if old.p3 == end {
                    new.p2 = turned(old.p2, new.p2);
                }
                PathSeg::Cubic(new)
            }
            (_, new) => new,
        })
}

/// Every point carried away from `end`, in width and in height.
fn stretching(end: Point, width: f64, height: f64) -> impl Fn(Point) -> Point {
    move |p: Point| {
        Point::new(
            end.x + (p.x - end.x) * width,
            end.y + (p.y - end.y) * height,
        )
    }
}

fn mapped(segment: &PathSeg, to: &impl Fn(Point) -> Point) -> PathSeg {
    let cubic = |c: CubicBez| CubicBez::new(to(c.p0), to(c.p1), to(c.p2), to(c.p3));
    match *segment {
        PathSeg::Line(l) => PathSeg::Line(Line::new(to(l.p0), to(l.p1))),
        PathSeg::Quad(q) => PathSeg::Cubic(cubic(q.raise())),
        PathSeg::Cubic(c) => PathSeg::Cubic(cubic(c)),
    }
}
