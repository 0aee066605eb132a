//! A piece cut on the fold, as it lies on cloth that is not folded.

use super::LayError;
use crate::geometry::{Point, with_next};

/// How far a point of the cut line may lie from the fold line it runs along, in millimetres.
const ON_FOLD: f64 = 0.02;

/// The whole outline of a piece whose half lies on one side of the line y = 0, its fold.
pub(super) fn unfolded(piece: &str, half: &[Point]) -> Result<Vec<Point>, LayError> {
    let refused = |problem| LayError::Fold {
        piece: piece.to_owned(),
        problem,
    };
    let off = |p: &Point| p.y.abs() > ON_FOLD;
    // The run off the fold begins after a point on it and must be one run.
    let begins: Vec<usize> = with_next(half)
        .enumerate()
        .filter(|(_, (p, next))| !off(p) && off(next))
        .map(|(k, _)| k)
        .collect();
    let &[from] = begins.as_slice() else {
        return Err(refused(if begins.is_empty() {
            "its cut line does not reach the fold"
        } else {
            "its cut line leaves the fold more than once"
        }));
    };
    let round = half.iter().cycle().skip(from).take(half.len());
    let away = round.clone().skip(1).position(|p| !off(p));
    let away = away.ok_or_else(|| refused("its cut line does not come back to the fold"))?;
    let mut whole: Vec<Point> = round.take(away + 2).copied().collect();
    let sides = whole.iter().map(|p| p.y);
    if sides.clone().fold(f64::INFINITY, f64::min) < -ON_FOLD
        && sides.fold(f64::NEG_INFINITY, f64::max) > ON_FOLD
    {
        return Err(refused("its cut line lies on both sides of the fold"));
    }
    let [first, between @ .., last] = whole.as_mut_slice() else {
        return Err(refused("its cut line does not come back to the fold"));
    };
    (first.y, last.y) = (0.0, 0.0);
    let mirrored: Vec<Point> = between
        .iter()
        .rev()
        .map(|p| Point::new(p.x, -p.y))
        .collect();
    whole.extend(mirrored);
    Ok(whole)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quarter_of_a_cross_becomes_its_half() {
        let half = [
            (0.0, 0.0),
            (30.0, 0.0),
            (30.0, 5.0),
            (10.0, 5.0),
            (0.0, 15.0),
        ];
        let whole = unfolded("cross", &half.map(Point::from)).unwrap();
        assert_eq!(whole.len(), 8);
        assert!(whole.contains(&Point::new(0.0, -15.0)));
        let aside = [(0.0, 1.0), (30.0, 1.0), (30.0, 5.0)];
        assert!(unfolded("aside", &aside.map(Point::from)).is_err());
    }
}
