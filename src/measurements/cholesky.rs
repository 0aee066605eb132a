//! The factor of a small symmetric positive definite matrix.
//!
//! Only additions, products, quotients and square roots, always in the same order: the same
//! bytes on every machine.

use std::collections::VecDeque;

/// The lower triangle `L` with `L Lᵀ = S`, by rows.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cholesky {
    rows: Vec<Row>,
}

/// A row of the triangle and the column that begins in it.
#[derive(Debug, Clone, PartialEq)]
struct Row {
    /// The cells of the row before the diagonal.
    left: Vec<f64>,
    diagonal: f64,
    /// The cells of the column below the diagonal.
    below: Vec<f64>,
}

impl Cholesky {
    /// The factor of the matrix that has a row and a column for each item, with the entries
    /// `entry(row, column)`, of which those with the column not after the row are asked; `None` if it
    /// is not positive definite.
    pub(super) fn new<T>(items: &[T], entry: impl Fn(&T, &T) -> f64) -> Option<Self> {
        let mut rows: Vec<Row> = Vec::with_capacity(items.len());
        for item in items {
            let mut left: Vec<f64> = Vec::with_capacity(rows.len());
            for (row, other) in rows.iter_mut().zip(items) {
                let cell = less_products(entry(item, other), &left, &row.left) / row.diagonal;
                left.push(cell);
                row.below.push(cell);
            }
            let rest = less_products(entry(item, item), &left, &left);
            if !(rest > 0.0 && rest.is_finite()) {
                return None;
            }
            rows.push(Row {
                left,
                diagonal: rest.sqrt(),
                below: Vec::new(),
            });
        }
        Some(Self { rows })
    }

    /// The `x` with `S x = b`; `b` has as many entries as the matrix has rows.
    pub(super) fn solve(&self, b: &[f64]) -> Vec<f64> {
        let mut half: Vec<f64> = Vec::with_capacity(self.rows.len());
        for (row, b) in self.rows.iter().zip(b) {
            half.push(less_products(*b, &row.left, &half) / row.diagonal);
        }
        let mut x = VecDeque::with_capacity(half.len());
        for (row, value) in self.rows.iter().zip(half).rev() {
            let rest = less_products(value, &row.below, &x);
            x.push_front(rest / row.diagonal);
        }
        x.into()
    }

    /// The inverse of the matrix, by rows.
    pub(super) fn inverse(&self) -> Vec<Vec<f64>> {
        let size = self.rows.len();
        let unit = |place: usize| -> Vec<f64> {
            (0..size).map(|k| f64::from(u8::from(k == place))).collect()
        };
        (0..size).map(|place| self.solve(&unit(place))).collect()
    }
}

/// A value less the products of two lists, taken off one by one.
fn less_products<'a>(
    value: f64,
    one: impl IntoIterator<Item = &'a f64>,
    other: impl IntoIterator<Item = &'a f64>,
) -> f64 {
    let pairs = one.into_iter().zip(other);
    pairs.fold(value, |rest, (a, b)| rest - a * b)
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
            let places: Vec<usize> = (0..size).collect();
            let factor = Cholesky::new(&places, |i, j| matrix[(*i, *j)]).unwrap();
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
        assert_eq!(Cholesky::new(&[0, 1], |_, _| 1.0), None);
        assert_eq!(Cholesky::new(&[0], |_, _| f64::NAN), None);
    }
}
