//! Steps that come out otherwise in the other order.

use crate::alterations::{Alteration, Chain};
use crate::piece::{MeasureKind, Pattern, Warning};

/// A length or a girth that differs by less between both orders is no matter, in millimetres.
const NO_MATTER: f64 = 0.5;

/// What is to be known of two steps in a row, `first` and then `second` which made `done` of a chain
/// before both, if the other order is possible too and comes to something else.
pub(super) fn order_matters(
    before: &Chain,
    [first, second]: [&dyn Alteration; 2],
    (place, done): (usize, &Pattern),
) -> Option<Warning> {
    let mut other = before.clone();
    other.go_on(second).ok()?;
    other.go_on(first).ok()?;
    let (by, what) = most_apart(done, &other.pattern)?;
    let more = if by > 0.0 { "longer" } else { "shorter" };
    (by.abs() > NO_MATTER).then(|| {
        Warning::new(
            "order_matters",
            format!(
                "step {place}, {}, and step {}, {}, do not come to the same in the other order: as \
                 they are, {what} is {:.1} mm {more}; keep to this order",
                first.name(),
                place + 1,
                second.name(),
                by.abs()
            ),
        )
    })
}

/// The edge or girth that both have and that differs most, and by how much it is more on the first.
fn most_apart(one: &Pattern, other: &Pattern) -> Option<(f64, String)> {
    let lengths = one.measures().into_iter().filter(|(measure, _)| {
        matches!(
            measure.kind(),
            MeasureKind::EdgeLength { .. } | MeasureKind::FinishedGirth { .. }
        )
    });
    lengths
        .filter_map(|(measure, is)| Some((is - other.measured(&measure)?, measure.to_string())))
        .max_by(|a, b| a.0.abs().total_cmp(&b.0.abs()))
}
