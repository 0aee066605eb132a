//! Every alteration of the catalogue on a dress, or the first block it suits: before grey and dashed, after
//! black, laid over one another on the centre and the waist line. Pieces that stay as they are
//! are left out.

use blockwright::alterations::{CATALOGUE, Chain, Entry, alter};
use blockwright::draft::{Block, draft};
use blockwright::drawing::{Drawing, DrawnPath, Face, Ink, Layer, Pen, Text, TextStyle};
use blockwright::geometry::{Curve, Point, Vec2};
use blockwright::piece::{Apexes, EdgeName, Pattern, Piece};
use blockwright::render::svg;
use kurbo::{Affine, BezPath, ParamCurve as _, Rect, Shape as _};

use super::{options, set};

/// White between two pieces, and above the first line of them.
pub(super) const GAP: f64 = 40.0;

/// An alteration's example on the block it is shown on, before and after.
pub(super) fn made(entry: &Entry) -> (Pattern, Chain, Block) {
    let block = [Block::Dress]
        .into_iter()
        .chain(Block::ALL)
        .find(|block| entry.blocks.contains(&block.name()))
        .unwrap();
    let before = draft(set("ines").body(), &options(block)).unwrap();
    let done = alter(&before, &[(entry.example)()]).unwrap();
    (before, done, block)
}

/// The picture of an alteration's example.
pub(crate) fn picture(entry: &Entry) -> String {
    let (before, done, block) = made(entry);
    let by = done.accounts[0].amount.map_or_else(String::new, |amount| {
        format!(" by {amount}{}", done.accounts[0].unit.symbol())
    });
    let name = set("ines").name().to_owned();
    let title = format!("{}{by}, {} block, {name}", entry.name, block.name());
    svg::render(&overlay(&title, &before, &done.pattern))
}

fn overlay(title: &str, before: &Pattern, after: &Pattern) -> Drawing {
    let grey = |width| Pen::solid(width).dashed(&[5.0, 3.0]).ink(Ink::Grey(130));
    let mut old = Layer::new("before");
    let mut new = Layer::new("after");
    let mut right = 0.0;
    for piece in before.pieces() {
        let made: Vec<&Piece> = after
            .pieces()
            .iter()
            .filter(|p| first_of(before, p) == Some(piece.name()))
            .collect();
        if matches!(made.as_slice(), [one] if stays(piece, one)) {
            continue;
        }
        let level = |p: &Piece| waist(p).unwrap_or(0.0);
        // A piece cut from another lies where it was cut.
        let own = |p: &Piece| p.name() == piece.name();
        let shift = |p: &Piece| Vec2::new(0.0, f64::from(own(p)) * (level(piece) - level(p)));
        let bounds = made.iter().fold(piece.outline().bounds(), |seen: Rect, p| {
            seen.union(p.outline().bounds() + shift(p))
        });
        let place = Vec2::new(right - bounds.x0, 0.0);
        old.push(DrawnPath::stroked(moved(&guides(piece), place), grey(0.3)));
        old.push(DrawnPath::stroked(moved(&lines(piece), place), grey(0.7)));
        for p in made {
            let place = place + shift(p);
            new.push(DrawnPath::stroked(
                moved(&guides(p), place),
                Pen::solid(0.25),
            ));
            new.push(DrawnPath::stroked(moved(&lines(p), place), Pen::solid(0.9)));
        }
        right += bounds.width() + GAP;
    }
    let mut words = Layer::new("words");
    let style = TextStyle::new(Face::Regular, 12.0);
    let top = [before, after]
        .into_iter()
        .flat_map(Pattern::pieces)
        .map(|p| p.outline().bounds().y0)
        .fold(0.0, f64::min);
    words.push(Text::new(Point::new(0.0, top - GAP), title, style));
    Drawing::new(vec![old, new, words]).unwrap()
}

/// Whether a piece is as it was, but for the last bits of a sleeve solved again.
fn stays(before: &Piece, after: &Piece) -> bool {
    let corners = |piece: &Piece| {
        let legs = piece.darts().iter().flat_map(|dart| dart.legs);
        let ends = piece.outline().segments().into_iter().map(|s| s.end());
        ends.chain(legs).collect::<Vec<_>>()
    };
    let (old, new) = (corners(before), corners(after));
    let near = |(a, b): (&Point, &Point)| a.distance(*b) < 0.02;
    let notches = |piece: &Piece| piece.notches().iter().map(|n| n.at).sum::<f64>();
    old.len() == new.len()
        && old.iter().zip(&new).all(near)
        && (notches(before) - notches(after)).abs() < 0.02
}

/// The piece of the draft that a piece was made of.
fn first_of<'a>(before: &'a Pattern, piece: &Piece) -> Option<&'a str> {
    let names = before.pieces().iter().map(Piece::name);
    let exact = names.clone().find(|name| *name == piece.name());
    exact.or_else(|| names.clone().find(|name| piece.name().contains(name)))
}

/// The level of the waist at the centre.
fn waist(piece: &Piece) -> Option<f64> {
    let near = |curve: &Curve| {
        let ends = [curve.start(), curve.end()];
        ends[usize::from(ends[1].x.abs() < ends[0].x.abs())].y
    };
    let edge = || {
        piece
            .outline()
            .edge(&EdgeName::WAIST)
            .map(|e| near(e.curve()))
    };
    piece
        .line("waist")
        .map(|line| near(&line.curve))
        .or_else(edge)
}

pub(super) fn moved(path: &BezPath, by: Vec2) -> BezPath {
    Affine::translate(by) * path.clone()
}

/// Balance lines and grain.
pub(super) fn guides(piece: &Piece) -> BezPath {
    let mut path = BezPath::new();
    for line in piece.lines() {
        path.extend(line.curve.to_path());
    }
    let [low, high] = piece.grain();
    path.extend(kurbo::Line::new(low, high).path_elements(0.1));
    path
}

/// Outline, darts and notches.
pub(super) fn lines(piece: &Piece) -> BezPath {
    let mut path = BezPath::new();
    for edge in piece.outline().edges() {
        path.extend(edge.curve().to_path());
    }
    for dart in piece.darts() {
        let [a, b] = dart.legs;
        let corners = match dart.apexes {
            Apexes::One(apex) => vec![a, apex, b],
            Apexes::Two(upper, lower) => vec![upper, a, lower, b, upper],
        };
        path.move_to(corners[0]);
        corners[1..].iter().for_each(|corner| path.line_to(*corner));
    }
    for notch in piece.notches() {
        let edge = piece.outline().edge(&notch.edge).unwrap();
        let (at, along) = edge.curve().point_at(notch.at).unwrap();
        path.move_to(at);
        path.line_to(at + Vec2::new(-along.y, along.x) * 6.0);
    }
    path
}

#[test]
fn every_alteration_looks_as_it_did() {
    let pictures = CATALOGUE
        .iter()
        .map(|entry| (format!("alteration-{}", entry.name), picture(entry)));
    super::held(pictures);
}

#[test]
fn no_picture_is_left_of_an_alteration_that_is_no_more() {
    let names = CATALOGUE
        .iter()
        .map(|entry| format!("alteration-{}.svg", entry.name));
    let names: Vec<_> = names.collect();
    let folder = super::root().join("tests/paper/pictures/reference");
    for file in std::fs::read_dir(folder).unwrap() {
        let name = file.unwrap().file_name().into_string().unwrap();
        assert!(
            !name.starts_with("alteration-") || names.contains(&name),
            "{name}"
        );
    }
}
