//! An alteration of one's own in the crate's verbs: a skirt cut across below the hip and spread.
use blockwright::alterations::{Alteration, AlterationError, Altered, Paper, Promise, alter};
use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
use blockwright::geometry::{Curve, Point, Vec2};
use blockwright::piece::{EdgeName, Measure, Pattern};

/// How far below the hip line the paper is cut, in millimetres.
const BELOW_HIP: f64 = 120.0;

/// Spreads back and front by so many millimetres.
#[derive(Debug)]
struct KneeSpread(f64);

impl Alteration for KneeSpread {
    fn name(&self) -> &'static str {
        "knee_spread"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.0)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self(amount))
    }

    /// The pipeline proves these, every law of sewing and that all named parts are still there.
    fn promises(&self, _: &Pattern) -> Vec<Promise> {
        let side = |piece| Measure::edge_length(piece, EdgeName::SIDE_SEAM);
        let hem = Measure::edge_length("back", EdgeName::HEM);
        let longer = ["back", "front"].map(|piece| Promise::changes_by(side(piece), self.0));
        let same = [Measure::girth("waist"), Measure::girth("hip"), hem].map(Promise::exactly);
        longer.into_iter().chain(same).collect()
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let mut parts = pattern.clone().into_parts();
        for piece in &mut parts.pieces {
            let width = piece.outline().bounds().x1;
            let hip = piece.line("hip").map_or(0.0, |hip| hip.curve.start().y);
            let ends = [0.0, width].map(|x| Point::new(x, hip + BELOW_HIP));
            let mut paper = Paper::of(piece);
            paper.slash(&Curve::line(ends[0], ends[1])?)?;
            let lower = paper.panel_at(Point::new(0.5 * width, hip + BELOW_HIP + 1.0))?;
            paper.shift(lower, Vec2::new(0.0, self.0));
            *piece = paper.gather()?.finish()?;
        }
        Ok(Pattern::new(parts)?.into())
    }
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let skirt = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Skirt))?;
    for change in &alter(&skirt, &[Box::new(KneeSpread(40.0))])?.accounts[0].changes {
        if let (Some(before), Some(after)) = (change.before, change.after) {
            println!("{} {before:.0} mm to {after:.0}", change.measure);
        }
    }
    Ok(())
}
