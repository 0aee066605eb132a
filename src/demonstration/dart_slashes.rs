//! Darts moved, divided and merged: panels turned about the point of fullness.

use super::bench::Bench;
use super::error::{Missing, Tried, missing};
use super::instruction::Instruction;
use super::words::{edge_words, listed, mm};
use crate::geometry::{Point, Rigid, Vec2, elementary, unit};
use crate::piece::{Apexes, Dart, EdgeName, Piece};

/// Darts that open so near to where they did have not moved, in millimetres.
const SAME_PLACE: f64 = 6.0;

/// A place from which the paper is cut to the point of fullness, and by how much it opens there, in
/// radians; closes with a minus.
struct Ray {
    at: Point,
    opens: f64,
    words: String,
}

fn open(dart: &&Dart) -> bool {
    dart.edge.is_some() && matches!(dart.apexes, Apexes::One(_))
}

/// Where the mouth of a dart of one piece begins on another with the same sewn edges.
fn place_on(piece: &Piece, dart: &Dart, other: &Piece) -> Option<Point> {
    let edge = dart.edge.as_ref()?;
    let mouths = piece.mouths(edge);
    let (_, from, _) = mouths.iter().find(|(d, ..)| d.name == dart.name)?;
    let sewn = piece.sewn_position(edge, *from);
    let curve = other.outline().edge(edge)?.curve();
    let at = other.open_position(edge, sewn).min(curve.length());
    Some(curve.point_at(at).ok()?.0)
}

/// The rays along which darts close and open.
fn rays(bench: &Bench<'_>) -> Option<(Vec<Ray>, Point)> {
    let (old, new) = (bench.old, *bench.new.first()?);
    let mut rays = Vec::new();
    let mut centre = None;
    let mut fitted: Vec<&str> = Vec::new();
    for dart in old.darts().iter().filter(open) {
        let angle = old.dart_angle(dart);
        let same = new.darts().iter().filter(open).find(|d| {
            d.edge == dart.edge
                && d.legs
                    .iter()
                    .any(|leg| dart.legs.iter().any(|l| l.distance(*leg) < SAME_PLACE))
                && (d.name == dart.name || old.dart(&d.name).is_none())
        });
        let after = same.map_or(0.0, |d| new.dart_angle(d));
        fitted.extend(same.map(|d| d.name.as_str()));
        if (after - angle).abs() < 1e-3 {
            continue;
        }
        centre = centre.or(Some(old.fullness(dart)));
        rays.push(Ray {
            at: dart.legs[1],
            opens: after - angle,
            words: format!("the {} dart", words_of(&dart.name)),
        });
    }
    for dart in new.darts().iter().filter(open) {
        if fitted.contains(&dart.name.as_str()) {
            continue;
        }
        let edge = dart.edge.as_ref()?;
        rays.push(Ray {
            at: place_on(new, dart, old)?,
            opens: new.dart_angle(dart),
            words: format!("the {}", edge_words(edge)),
        });
    }
    Some((rays, centre?))
}

fn words_of(name: &str) -> String {
    edge_words(&EdgeName::new(name.to_owned()))
}

/// Darts moved, divided or merged.
pub(super) fn moved(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    let (mut rays, centre) = rays(bench).ok_or_else(|| Missing("darts that changed".to_owned()))?;
    if rays.len() < 2 {
        return missing("a dart that closes and one that opens");
    }
    // Clockwise on the page, from the panel that stays.
    let angle = |p: Point| elementary::atan2(p.y - centre.y, p.x - centre.x);
    let fixed = angle(stays_at(bench)?);
    let turn = std::f64::consts::TAU;
    let from_fixed = |p: Point| (angle(p) - fixed).rem_euclid(turn);
    rays.sort_by(|a, b| from_fixed(a.at).total_cmp(&from_fixed(b.at)));
    let (first, second) = match rays.as_slice() {
        [first, second, ..] => (first.at, second.at),
        _ => return missing("two rays"),
    };
    bench.cut(&[first, centre, second])?;
    for ray in rays.iter().skip(2) {
        bench.cut(&[ray.at, centre])?;
    }
    bench.hinge(centre);
    let mut turned = 0.0;
    let angles: Vec<f64> = rays.iter().map(|ray| from_fixed(ray.at)).collect();
    let ends = angles.iter().copied().skip(1).chain([turn]);
    let mut carried = Vec::new();
    for ((ray, from), to) in rays.iter().zip(&angles).zip(ends) {
        turned += ray.opens;
        let middle = fixed + 0.5 * (from + to);
        let within: Point = centre + unit(middle) * 0.8;
        carried.push((bench.around(within)?, turned));
    }
    // The last panel is the one that stays.
    carried.pop();
    for (panel, turned) in carried {
        bench.carry(panel, Rigid::turn_about(centre, turned));
    }
    let names = |opening: bool| -> Vec<String> {
        let side = rays.iter().filter(|ray| (ray.opens > 0.0) == opening);
        side.map(|ray| ray.words.clone()).collect()
    };
    let (opened, closed) = (names(true), names(false));
    let mouths: Vec<String> = bench
        .openings()
        .iter()
        .filter(|o| o.kind.needs_paper())
        .map(|o| mm(o.amount))
        .collect();
    let at_bust = bench
        .old
        .bust_point()
        .is_some_and(|bust| bust.distance(centre) < 0.5);
    let point = if at_bust {
        "the bust point"
    } else {
        "the tip of the dart"
    };
    Ok(Some(
        Instruction::new(
            format!(
                "Cut from {} to {point}, and along one leg of {} to the same point. Do not cut through there: it is the hinge.",
                listed(&opened),
                listed(&closed)
            ),
            format!(
                "Turn the panel between the cuts about {point} until {} {} closed{}: the new cut opens by {}.",
                listed(&closed),
                if closed.len() == 1 { "is" } else { "are" },
                if stays_open(bench, &rays) { " as far as wanted" } else { "" },
                listed(&mouths)
            ),
        )
        .drawn(if !at_bust {
            "Draw the new dart to the point."
        } else {
            "Draw the dart with its tip short of the bust point, and its mouth with the dart folded."
        }),
    ))
}

/// Whether something is left of a dart that closes.
fn stays_open(bench: &Bench<'_>, rays: &[Ray]) -> bool {
    let closing = |dart: &&Dart| rays.iter().any(|r| r.opens < 0.0 && r.at == dart.legs[1]);
    let mut darts = bench.old.darts().iter().filter(open).filter(closing);
    darts.any(|dart| {
        let ray = rays.iter().find(|r| r.at == dart.legs[1]);
        ray.is_some_and(|ray| bench.old.dart_angle(dart) + ray.opens > 1e-3)
    })
}

/// A place of the panel that stays: the middle of the centre, or the lower end of the grain.
fn stays_at(bench: &Bench<'_>) -> Tried<Point> {
    let grain = bench.old.grain();
    let Ok(centre) = bench.centre() else {
        return Ok(grain[0].midpoint(grain[1]));
    };
    let ([a, _], [b, _]) = (bench.start(&centre)?, bench.end(&centre)?);
    Ok(a.midpoint(b) + Vec2::new(0.5, 0.0))
}
