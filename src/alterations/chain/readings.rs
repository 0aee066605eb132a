//! Everything that accounts and promises measure on a pattern.

use crate::piece::{BodySide, Measure, MeasureKind, Pattern};

/// One thing measured on a pattern.
#[derive(Debug, Clone, PartialEq)]
struct Reading {
    measure: Measure,
    value: f64,
    /// What left and right have of a girth that goes round both.
    sides: Option<[f64; 2]>,
}

/// Every measure of a pattern: sewn lengths of edges, intakes and angles of darts, shoulder
/// slopes, heights of sleeve caps, finished girths.
///
/// Measured once, asked often.
///
/// ```
/// use blockwright::alterations::Readings;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::piece::{EdgeName, Measure};
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let readings = Readings::of(&pattern);
/// let centre = Measure::edge_length("back", EdgeName::CENTRE_BACK);
/// assert!(readings.get(&centre).is_some_and(|length| length > 500.0));
/// assert_eq!(readings.get(&Measure::edge_length("back", EdgeName::ARMSCYE)), None);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Readings(Vec<Reading>);

impl Readings {
    /// Measures a pattern. What has no finite value is left out.
    #[must_use]
    pub fn of(pattern: &Pattern) -> Self {
        let sides = |measure: &Measure| {
            if matches!(measure.kind(), MeasureKind::LineGirth { .. }) && measure.side().is_none() {
                let on = |side| pattern.measured(&measure.on(side));
                return Some([on(BodySide::Left)?, on(BodySide::Right)?]);
            }
            let MeasureKind::FinishedGirth { girth } = measure.kind() else {
                return None;
            };
            let mut girths = pattern.girths().iter().filter(|g| g.side.is_none());
            let girth = girths.find(|g| g.name == *girth)?;
            Some(BodySide::BOTH.map(|side| pattern.finished_on(girth, side)))
        };
        let finite = pattern
            .measures()
            .into_iter()
            .filter(|(_, v)| v.is_finite());
        Self(
            finite
                .map(|(measure, value)| Reading {
                    sides: sides(&measure),
                    measure,
                    value,
                })
                .collect(),
        )
    }

    /// The value of a measure in millimetres or degrees. A measure of one side is read on that
    /// side's piece, or on the one that both share.
    #[must_use]
    pub fn get(&self, measure: &Measure) -> Option<f64> {
        if let Some(found) = self.find(measure) {
            return Some(found.value);
        }
        let side = measure.side()?;
        let shared = self.find(&measure.of_both_sides())?;
        Some(
            shared
                .sides
                .map_or(shared.value, |[left, right]| match side {
                    BodySide::Left => left,
                    BodySide::Right => right,
                }),
        )
    }

    /// Whether the pattern has this very measure, not only one of both sides.
    pub(in crate::alterations) fn has(&self, measure: &Measure) -> bool {
        self.find(measure).is_some()
    }

    /// Whether the measure is there on one side or the other.
    pub(in crate::alterations) fn has_on_a_side(&self, measure: &Measure) -> bool {
        BodySide::BOTH
            .iter()
            .any(|side| self.has(&measure.on(*side)))
    }

    fn find(&self, measure: &Measure) -> Option<&Reading> {
        self.0.iter().find(|r| r.measure == *measure)
    }

    /// Every measure with its value, piece by piece, then the girths.
    pub fn iter(&self) -> impl Iterator<Item = (&Measure, f64)> {
        self.0.iter().map(|r| (&r.measure, r.value))
    }
}
