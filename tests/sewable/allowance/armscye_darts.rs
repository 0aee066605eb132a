//! Darts brought to a curved edge, with an allowance: no point stands out of the armhole, and the
//! cut line never lies inside the stitching line. Judged with polygons of a general-purpose
//! geometry library.

use crate::support::survey::{body_of, sample, tell};
use blockwright::allowance::{AllowanceError, Allowances, cut_line};
use blockwright::alterations::{Alteration, DartRelocation, alter};
use blockwright::draft::{Block, DraftOptions, draft};
use blockwright::piece::{Pattern, Piece};
use geo::{BoundingRect, Contains, Distance, Euclidean, LineString, Point, Polygon};
use kurbo::{ParamCurve, PathSeg};

/// A squared corner reaches farthest: the mitre of 2.5 widths that corners are cut blunt at.
const FARTHEST: f64 = 2.6;
/// What is inside by less is rounding.
const INSIDE: f64 = 0.06;

fn points(segments: &[PathSeg]) -> LineString<f64> {
    let each = segments
        .iter()
        .flat_map(|s| (0..24).map(move |k| s.eval(f64::from(k) / 24.0)));
    LineString::from_iter(each.map(|p| (p.x, p.y)))
}

/// What is wrong with the cut line of a piece; empty when there is no room for one.
fn faults(piece: &Piece, width: f64) -> Option<String> {
    let cut = match cut_line(piece, &Allowances::all_round(width).unwrap()) {
        Ok(cut) => cut,
        // No room beside a wide dart near a corner: counted, not judged.
        Err(_) => return Some(String::new()),
    };
    let outline = Polygon::new(points(&piece.outline().segments()), vec![]);
    let bounds = outline.bounding_rect().unwrap();
    for coord in points(cut.segments()).coords() {
        let p = Point::from(*coord);
        let apart = Euclidean.distance(&p, outline.exterior());
        if outline.contains(&p) && apart > INSIDE {
            return Some(format!("the cut line runs {apart:.2} mm inside at {p:?}"));
        }
        // A hem's corner is mirrored, a shoulder squared: only the armhole is looked at here.
        let high = p.y() < bounds.min().y + 0.4 * bounds.height();
        if high && apart > FARTHEST * width {
            return Some(format!("{apart:.1} mm stand out at {p:?}"));
        }
    }
    None
}

#[test]
fn no_dart_ends_in_a_point() {
    let (mut made, mut along, mut no_room, mut found, mut longest) = (0, 0, 0, Vec::new(), 0.0_f64);
    let mut refused = std::collections::BTreeMap::<String, usize>::new();
    for row in &sample(6, 1127).rows {
        for block in [Block::Bodice, Block::Dress, Block::Shirt] {
            let Ok(pattern) = draft(&body_of(row), &DraftOptions::of(block)) else {
                continue;
            };
            let carrier = |p: &Pattern| {
                let mut pieces = p.pieces().iter();
                pieces.find(|piece| piece.dart("bust").is_some()).cloned()
            };
            if carrier(&pattern).is_none() {
                continue;
            }
            for (edge, at) in [
                ("armscye", 0.3),
                ("armscye", 0.5),
                ("armscye", 0.7),
                ("neckline", 0.5),
                ("shoulder", 0.5),
            ] {
                let step: Box<dyn Alteration> = Box::new(DartRelocation::to("bust", edge, at));
                let chain = match alter(&pattern, &[step]) {
                    Ok(chain) => chain,
                    Err(why) => {
                        *refused
                            .entry(format!("{edge} {at}: {}", why.reason))
                            .or_default() += 1;
                        continue;
                    }
                };
                made += 1;
                let piece = &carrier(&chain.pattern).unwrap();
                let dart = piece.dart("bust").unwrap();
                let edge_name = dart.edge.clone().unwrap();
                let mouths = piece.mouths(&edge_name);
                let (_, from, to) = mouths.iter().find(|(d, ..)| d.name == "bust").unwrap();
                longest = longest.max((to - from) / dart.intake());
                let who = format!("{} {} {edge} {at}", row.text("id"), block.name());
                // One that runs along its edge is made for a seam, and not cut as a dart.
                if to - from > 1.8 * dart.intake() && to - from > 20.0 {
                    along += 1;
                    let refused = cut_line(piece, &Allowances::usual());
                    if !matches!(refused, Err(AllowanceError::Spike { .. })) {
                        found.push(format!("{who}: a spike is cut"));
                    }
                    continue;
                }
                for width in [10.0, 15.0] {
                    match faults(piece, width) {
                        Some(none) if none.is_empty() => no_room += 1,
                        Some(fault) => found.push(format!("{who}, {width} mm: {fault}")),
                        None => {}
                    }
                }
            }
        }
    }
    tell(&format!(
        "{made} darts brought to armscye, neckline and shoulder; longest mouth {longest:.2} times the dart, {along} run along their edge; no room for {no_room} of their allowances; refused {refused:#?}"
    ));
    let n = found.len();
    assert!(made > 50, "{made}");
    assert!(
        20 * along <= 2 * made,
        "{along} of {made} run along their edge"
    );
    assert!(100 * no_room <= made, "no room for {no_room} of {made}");
    assert!(found.is_empty(), "{n}:\n{}", found[..n.min(20)].join("\n"));
}
