//! How long the armscye of a body is: what the draft is to follow.

use super::Figure;

/// The armscye girth of a body for its measurements: offset, then upper chest, back width,
/// shoulder length, scye depth, upper arm, shoulder slope (per degree) and elbow.
///
/// Least squares over every second woman (the first, third, fifth ... row) of the 1988
/// Anthropometric Survey of U.S. Army Personnel, women; on the other half it leaves 10.7 mm,
/// r = 0.89. `tests/survey` computes both again.
const OFFSET: f64 = 65.9278;
const SLOPES: [f64; 7] = [0.1380, 0.0479, -0.2823, 0.2419, 0.2876, -0.6997, 0.3795];

/// The armscye girth that a figure's other measurements predict, over the shoulder point, in
/// millimetres.
///
/// ```
/// use blockwright::draft::{Figure, predicted_armscye};
/// let mut figure = Figure::cylinder(900.0);
/// let slim = predicted_armscye(&figure);
/// figure.upper_arm_girth += 40.0;
/// assert!(predicted_armscye(&figure) > slim + 10.0);
/// ```
#[must_use]
pub fn predicted_armscye(figure: &Figure) -> f64 {
    let f = figure;
    let values = [
        f.upper_chest_girth,
        f.back_width,
        f.shoulder_length,
        f.scye_depth,
        f.upper_arm_girth,
        f.shoulder_slope.to_degrees(),
        f.elbow_girth,
    ];
    OFFSET + SLOPES.iter().zip(values).map(|(s, v)| s * v).sum::<f64>()
}
