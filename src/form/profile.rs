//! A smooth curve through knots that never overshoots them.
#![expect(
    clippy::indexing_slicing,
    reason = "neighbours of a knot are looked up by its place"
)]

/// Cubic pieces through knots, monotone between them (Fritsch and Carlson 1980, with the slopes of
/// Fritsch and Butland 1984; values from memory).
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Profile {
    knots: Vec<Knot>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Knot {
    at: f64,
    value: f64,
    slope: f64,
}

impl Profile {
    /// Through `(place, value)` pairs; they are sorted by place, and of two at one place (within a
    /// tenth) the first stays.
    pub(super) fn through(pairs: &[(f64, f64)]) -> Self {
        let mut pairs = pairs.to_vec();
        pairs.sort_by(|a, b| a.0.total_cmp(&b.0));
        pairs.dedup_by(|next, kept| next.0 - kept.0 < 0.1);
        let mut knots: Vec<Knot> = pairs
            .iter()
            .map(|&(at, value)| Knot {
                at,
                value,
                slope: 0.0,
            })
            .collect();
        let chord = |a: &Knot, b: &Knot| (b.value - a.value) / (b.at - a.at);
        let ends = [
            knots.get(..2).map_or(0.0, |two| chord(&two[0], &two[1])),
            knots
                .len()
                .checked_sub(2)
                .map_or(0.0, |from| chord(&knots[from], &knots[from + 1])),
        ];
        for place in 0..knots.len() {
            let slope = match (place.checked_sub(1), knots.get(place + 1)) {
                (Some(before), Some(after)) => {
                    let (before, here) = (knots[before], knots[place]);
                    let (left, right) = (chord(&before, &here), chord(&here, after));
                    let (h0, h1) = (here.at - before.at, after.at - here.at);
                    if left * right <= 0.0 {
                        0.0
                    } else {
                        let (w0, w1) = (2.0 * h1 + h0, h1 + 2.0 * h0);
                        (w0 + w1) / (w0 / left + w1 / right)
                    }
                }
                (None, _) => ends[0],
                (_, None) => ends[1],
            };
            knots[place].slope = slope;
        }
        Self { knots }
    }

    /// The value at a place; straight on beyond the ends.
    pub(super) fn at(&self, place: f64) -> f64 {
        let after = self.knots.partition_point(|knot| knot.at <= place);
        let (Some(first), Some(last)) = (self.knots.first(), self.knots.last()) else {
            return 0.0;
        };
        if after == 0 {
            return first.value + first.slope * (place - first.at);
        }
        if after == self.knots.len() {
            return last.value + last.slope * (place - last.at);
        }
        let (a, b) = (self.knots[after - 1], self.knots[after]);
        let h = b.at - a.at;
        let t = (place - a.at) / h;
        let u = 1.0 - t;
        u * u * (1.0 + 2.0 * t) * a.value
            + t * t * (3.0 - 2.0 * t) * b.value
            + h * t * u * (u * a.slope - t * b.slope)
    }
}
