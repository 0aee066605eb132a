//! An alteration of one's own in the crate's verbs: a skirt cut across below the hip and spread.
use blockwright::alterations::{Alteration, AlterationError, Altered, Paper, Promise, alter};
use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
use blockwright::geometry::{Curve, Point, Vec2};
use blockwright::piece::Pattern;

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

    /// The pipeline proves these, and every law of sewing, after the step.
    fn promises(&self, _: &Pattern) -> Vec<Promise> {
        let longer = |what| Promise::changes_by(what, self.0);
        let promises = ["back side_seam length", "front side_seam length"].map(longer);
        let same = ["waist finished", "hip finished", "back hem length"].map(Promise::exactly);
        promises.into_iter().chain(same).collect()
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
        println!(
            "{} {:.0} mm to {:.0}",
            change.what, change.before, change.after
        );
    }
    Ok(())
}
