//! The factor of a small symmetric positive definite matrix.
//!
//! Only additions, products, quotients and square roots, always in the same order: the same
//! bytes on every machine.

/// The lower triangle `L` with `L Lᵀ = S`, by rows.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cholesky {
    size: usize,
    lower: Vec<f64>,
}

/// Where row `row` of a lower triangle begins.
const fn start(row: usize) -> usize {
    row * (row + 1) / 2
}

impl Cholesky {
    /// The factor of the matrix with the entries `entry(row, column)`, of which those with
    /// `column <= row` are asked; `None` if it is not positive definite.
    pub(super) fn new(size: usize, entry: impl Fn(usize, usize) -> f64) -> Option<Self> {
        let mut lower: Vec<f64> = Vec::with_capacity(start(size));
        for row in 0..size {
            for column in 0..=row {
                let mut rest = entry(row, column);
                for k in 0..column {
                    rest -= lower[start(row) + k] * lower[start(column) + k];
                }
                if column < row {
                    lower.push(rest / lower[start(column) + column]);
                } else if rest > 0.0 && rest.is_finite() {
                    lower.push(rest.sqrt());
                } else {
                    return None;
                }
            }
        }
        Some(Self { size, lower })
    }

    /// The `x` with `S x = b`; `b` has as many entries as the matrix has rows.
    pub(super) fn solve(&self, b: &[f64]) -> Vec<f64> {
        let mut x = b.to_vec();
        for row in 0..self.size {
            for k in 0..row {
                x[row] -= self.lower[start(row) + k] * x[k];
            }
            x[row] /= self.lower[start(row) + row];
        }
        for row in (0..self.size).rev() {
            for k in row + 1..self.size {
                x[row] -= self.lower[start(k) + row] * x[k];
            }
            x[row] /= self.lower[start(row) + row];
        }
        x
    }

    /// The inverse of the matrix, by rows.
    pub(super) fn inverse(&self) -> Vec<Vec<f64>> {
        (0..self.size)
            .map(|place| {
                let mut unit = vec![0.0; self.size];
                unit[place] = 1.0;
                self.solve(&unit)
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use nalgebra::{DMatrix, DVector};

    use super::Cholesky;

    #[test]
    fn solutions_and_inverse_are_those_of_the_reference_library() {
        for size in [1, 2, 5, 12, 28] {
            let any = DMatrix::from_fn(size, size + 3, |i, j| ((i * 7 + j * 13) % 11) as f64 - 4.7);
            let matrix = &any * any.transpose() + DMatrix::identity(size, size);
            let b = DVector::from_fn(size, |i, _| (i as f64).sin());
            let factor = Cholesky::new(size, |i, j| matrix[(i, j)]).unwrap();
            let reference = matrix.clone().cholesky().unwrap();
            let expected = reference.solve(&b);
            let inverse = reference.inverse();
            let found = factor.solve(b.as_slice());
            for (row, found_row) in factor.inverse().into_iter().enumerate() {
                approx::assert_relative_eq!(found[row], expected[row], epsilon = 1e-9);
                for (column, cell) in found_row.into_iter().enumerate() {
                    approx::assert_relative_eq!(cell, inverse[(row, column)], epsilon = 1e-9);
                }
            }
        }
    }

    #[test]
    fn what_is_not_positive_definite_has_no_factor() {
        assert_eq!(Cholesky::new(2, |_, _| 1.0), None);
        assert_eq!(Cholesky::new(1, |_, _| f64::NAN), None);
    }
}
