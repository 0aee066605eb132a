//! An alteration of one side of the body.

use super::halves::half;
use super::joined_halves::joined;
use crate::alterations::lengths::centre_truing::true_centres;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, StructureChange};
use crate::geometry::Which;
use crate::piece::{BodySide, EdgeName, MeasureKind, MeasureUnit, Pattern};

/// An alteration made on one side only, for uneven shoulders, a higher hip, a stronger arm.
///
/// Pieces that become unlike are cut singly, once for each side; one that was on the fold gets a
/// seam down its middle. Both sides of that seam have one length: what an alteration gives or takes at
/// the centre of its side they meet half way, trued at the hem or at the waist of a bodice, so that the
/// same on the other side comes to what it is on both. Alterations after it work on both sides, unless
/// they are one-sided themselves.
///
/// ```
/// use blockwright::alterations::{Alteration, OneSided, ShoulderSlope, alter};
/// use blockwright::piece::BodySide;
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let lower_left: Box<dyn Alteration> =
///     Box::new(OneSided::new(BodySide::Left, Box::new(ShoulderSlope::by(3.0))));
/// let done = alter(&pattern, &[lower_left])?;
/// assert!(done.pattern.piece("back left").is_some());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug)]
pub struct OneSided {
    side: BodySide,
    inner: Box<dyn Alteration>,
}

impl OneSided {
    /// The alteration on that side of the wearer's body.
    #[must_use]
    pub fn new(side: BodySide, inner: Box<dyn Alteration>) -> Self {
        Self { side, inner }
    }
}

/// A promise of one half as it holds on both where the other is not altered but meets it at the
/// centre half way: the hem is trued for that.
fn at_centre(promise: Promise) -> Option<Promise> {
    let MeasureKind::EdgeLength { edge, .. } = promise.measure.kind() else {
        return Some(promise);
    };
    if *edge == EdgeName::HEM {
        return None;
    }
    let change = match is_centre(&promise) {
        true => 0.5 * promise.change,
        false => promise.change,
    };
    Some(Promise { change, ..promise })
}

fn is_centre(promise: &Promise) -> bool {
    let centres = [EdgeName::CENTRE_BACK, EdgeName::CENTRE_FRONT];
    matches!(promise.measure.kind(), MeasureKind::EdgeLength { edge, .. } if centres.contains(edge))
}

impl Alteration for OneSided {
    fn name(&self) -> &'static str {
        self.inner.name()
    }

    fn amount(&self) -> Option<f64> {
        self.inner.amount()
    }

    fn unit(&self) -> MeasureUnit {
        self.inner.unit()
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self::new(self.side, self.inner.with_amount(amount)))
    }

    /// What the alteration promises, on its side; on the other side all of that stays, but what both
    /// meet half way.
    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        // A half that cannot be made is refused, with its reason, when the alteration is made.
        let Ok(half) = half(before, self.side) else {
            return Vec::new();
        };
        let across = self.side.other();
        let inner = self.inner.promises(&half).into_iter();
        let inner: Vec<Promise> = inner.filter_map(at_centre).collect();
        let other = inner.iter().map(|p| Promise {
            change: if is_centre(p) { p.change } else { 0.0 },
            ..p.on(across, &half)
        });
        let other: Vec<Promise> = other.map(Promise::if_there).collect();
        let own = inner.iter().map(|p| p.on(self.side, &half));
        own.chain(other).collect()
    }

    fn structure_change(&self, before: &Pattern) -> StructureChange {
        half(before, self.side).map_or_else(
            |_| StructureChange::none(),
            |half| self.inner.structure_change(&half).on(self.side),
        )
    }

    fn settled(&self, pattern: &Pattern) -> Result<Option<Box<dyn Alteration>>, AlterationError> {
        let settled = self.inner.settled(&half(pattern, self.side)?)?;
        Ok(settled.map(|inner| Box::new(Self::new(self.side, inner)) as Box<dyn Alteration>))
    }

    fn takes_unlike_halves(&self) -> bool {
        true
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let mut halves = [
            half(pattern, BodySide::Left)?,
            half(pattern, BodySide::Right)?,
        ];
        let mine = match self.side {
            BodySide::Left => Which::First,
            BodySide::Right => Which::Second,
        };
        self.inner.check_one_side(mine.of(&halves))?;
        let altered = self.inner.alter(mine.of(&halves))?;
        *mine.of_mut(&mut halves) = altered.pattern;
        let mut warnings = altered.warnings;
        let ([left, right], trued) = true_centres(halves)?;
        warnings.extend(trued);
        Ok(Altered {
            pattern: joined(&left, &right)?,
            warnings,
        })
    }
}

/// An alteration for both sides, made on a pattern whose halves are unlike: on each for itself.
///
/// # Errors
/// When either side refuses, or the sides do not go together afterwards.
pub(in crate::alterations) fn on_both_halves(
    alteration: &dyn Alteration,
    pattern: &Pattern,
) -> Result<Altered, AlterationError> {
    let [left, right] = BodySide::BOTH.map(|side| alteration.alter(&half(pattern, side)?));
    let (left, right) = (left?, right?);
    let mut warnings = left.warnings;
    for warning in right.warnings {
        if !warnings.contains(&warning) {
            warnings.push(warning);
        }
    }
    let ([left, right], trued) = true_centres([left.pattern, right.pattern])?;
    warnings.extend(trued);
    Ok(Altered {
        pattern: joined(&left, &right)?,
        warnings,
    })
}
