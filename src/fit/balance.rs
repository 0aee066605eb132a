//! Amounts of many steps found together: least squares with bounds, few and small ones preferred.

use nalgebra::{DMatrix, DVector};

/// What is to be balanced: how every lever moves every measure, and by how much they are to move.
#[derive(Debug, Clone)]
pub(super) struct Balance {
    /// Change of each measure, weighted, for a unit of each lever.
    pub columns: DMatrix<f64>,
    /// By how much each measure is to change in all, weighted.
    pub wanted: DVector<f64>,
    /// What a squared unit of each lever costs.
    pub costs: Vec<f64>,
    /// Least and greatest amount of each.
    pub bounds: Vec<(f64, f64)>,
    /// Which levers may be used.
    pub used: Vec<bool>,
}

impl Balance {
    /// The amounts that come nearest to what is wanted.
    pub fn amounts(&self) -> DVector<f64> {
        let count = self.columns.ncols();
        let mut amounts = DVector::zeros(count);
        // Those that are held at a bound; each round holds at least one more.
        let mut held = vec![false; count];
        for _ in 0..=count {
            let free: Vec<usize> = (0..count)
                .filter(|&at| self.is_used(at) && !held.get(at).copied().unwrap_or(true))
                .collect();
            let rest = &self.wanted - &self.columns * &amounts_of(&amounts, &held);
            let part = self.columns.select_columns(&free);
            let costs = free
                .iter()
                .map(|&at| self.costs.get(at).copied().unwrap_or(1.0));
            let mut square = part.transpose() * &part;
            for (at, cost) in costs.enumerate() {
                if let Some(cell) = square.get_mut((at, at)) {
                    *cell += cost;
                }
            }
            let Some(factor) = square.cholesky() else {
                return amounts;
            };
            let found = factor.solve(&(part.transpose() * rest));
            for (&at, value) in free.iter().zip(found.iter()) {
                if let Some(slot) = amounts.get_mut(at) {
                    *slot = *value;
                }
            }
            let mut met = true;
            for &at in &free {
                let (low, high) = self.bounds.get(at).copied().unwrap_or((0.0, 0.0));
                let Some(slot) = amounts.get_mut(at) else {
                    continue;
                };
                if *slot < low || *slot > high {
                    *slot = slot.max(low).min(high);
                    if let Some(held) = held.get_mut(at) {
                        *held = true;
                    }
                    met = false;
                }
            }
            if met {
                break;
            }
        }
        amounts
    }

    fn is_used(&self, at: usize) -> bool {
        self.used.get(at).copied().unwrap_or(false)
    }

    /// What is left of each measure, weighted.
    pub fn rest(&self, amounts: &DVector<f64>) -> DVector<f64> {
        &self.wanted - &self.columns * amounts
    }

    /// Leaves out levers, the least needed first, as long as no measure misses by more than
    /// `near`, or than it did with all of them.
    pub fn spare(&mut self, near: f64) {
        let allowed = self
            .rest(&self.amounts())
            .map(|rest| rest.abs().max(near) + 0.1 * near);
        loop {
            let tried = (0..self.columns.ncols())
                .filter(|&at| self.is_used(at))
                .filter_map(|at| {
                    let mut without = self.clone();
                    if let Some(used) = without.used.get_mut(at) {
                        *used = false;
                    }
                    let rest = without.rest(&without.amounts());
                    let over = rest.iter().zip(allowed.iter());
                    let worst = over
                        .map(|(rest, most)| rest.abs() / most)
                        .fold(0.0, f64::max);
                    let cost = self.costs.get(at).copied().unwrap_or(1.0);
                    (worst <= 1.0).then_some((at, worst / cost.sqrt().max(1e-6)))
                })
                .min_by(|a, b| a.1.total_cmp(&b.1));
            let Some((at, _)) = tried else {
                break;
            };
            if let Some(used) = self.used.get_mut(at) {
                *used = false;
            }
        }
    }
}

/// The amounts of those that are held, nothing for the others.
fn amounts_of(amounts: &DVector<f64>, held: &[bool]) -> DVector<f64> {
    let kept = amounts.iter().zip(held);
    DVector::from_iterator(
        amounts.len(),
        kept.map(|(amount, held)| if *held { *amount } else { 0.0 }),
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::Balance;
    use nalgebra::{DMatrix, DVector};

    fn balance(columns: &[&[f64]], wanted: &[f64]) -> Balance {
        let count = columns.len();
        let columns: Vec<DVector<f64>> = columns
            .iter()
            .map(|c| DVector::from_column_slice(c))
            .collect();
        Balance {
            columns: DMatrix::from_columns(&columns),
            wanted: DVector::from_column_slice(wanted),
            costs: vec![1e-6; count],
            bounds: vec![(-100.0, 100.0); count],
            used: vec![true; count],
        }
    }

    #[test]
    fn bounds_hold_and_the_others_take_over() {
        let mut two = balance(&[&[1.0, 0.0], &[1.0, 1.0]], &[10.0, 0.0]);
        assert!((two.amounts()[0] - 10.0).abs() < 1e-3);
        two.bounds[0] = (-4.0, 4.0);
        let amounts = two.amounts();
        assert_eq!(amounts[0], 4.0);
        // Half of the missing six, as least squares has it.
        assert!((amounts[1] - 3.0).abs() < 1e-3);
    }

    #[test]
    fn what_is_not_needed_is_spared() {
        let mut three = balance(&[&[1.0, 0.0], &[0.0, 1.0], &[0.5, 0.5]], &[8.0, 0.0]);
        three.spare(0.5);
        assert_eq!(three.used, [true, false, false]);
        assert!((three.amounts()[0] - 8.0).abs() < 1e-3);
    }
}
