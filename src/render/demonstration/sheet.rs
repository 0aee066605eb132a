//! The demonstration of a whole fitting on pages: a page for every piece that is cut.

use super::key::key;
use super::row::{WIDTH, draw};
use crate::demonstration::Demonstration;
use crate::drawing::{Drawing, DrawingError, Face, Layer, Text, TextStyle};
use crate::geometry::Point;
use crate::units::{Unit, speak};

/// One step of a fitting, shown.
///
/// ```
/// use blockwright::render::demonstration::Step;
/// fn heads(steps: &[Step<'_>]) -> Vec<String> { steps.iter().map(|step| step.head.clone()).collect() }
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Step<'a> {
    /// What it is called: `1. Bust by 1 cm`.
    pub head: String,
    /// What is shown.
    pub shown: &'a Demonstration,
}

/// What stands on every page besides the frames.
///
/// ```
/// use blockwright::render::demonstration::DemonstrationLabels;
/// use blockwright::units::Unit;
/// let labels = DemonstrationLabels { title: "Tunic for Ines".into(), cautions: vec![], unit: Unit::Cm };
/// assert_eq!(labels.unit, Unit::Cm);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DemonstrationLabels {
    /// What is made, and for whom.
    pub title: String,
    /// What must be known before anything is cut.
    pub cautions: Vec<String>,
    /// The unit of all lengths.
    pub unit: Unit,
}

/// A page for every piece that a step cuts, in order, each a drawing that A4 and Letter hold lying
/// level; where nothing is altered a page that says so.
///
/// ```
/// use blockwright::alterations::{Abdomen, Alteration, alter};
/// use blockwright::demonstration::demonstrate;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::render::demonstration::{DemonstrationLabels, Step, sheets};
/// use blockwright::units::Unit;
/// let before = skirt(&Figure::cylinder(960.0), &Ease::of(Fit::Regular), None)?;
/// let step: Box<dyn Alteration> = Box::new(Abdomen { amount: 12.0 });
/// let after = alter(&before, &[step])?.pattern;
/// let shown = demonstrate("abdomen", &before, &after)?;
/// let labels = DemonstrationLabels { title: "Skirt".into(), cautions: vec![], unit: Unit::Cm };
/// let pages = sheets(&[Step { head: "1. Abdomen by 1.2 cm".into(), shown: &shown }], &labels)?;
/// assert_eq!(pages.len(), 1);
/// assert!(pages[0].bounds().width() < 269.0 && pages[0].bounds().height() < 200.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When something lies too far away to be drawn.
pub fn sheets(
    steps: &[Step<'_>],
    labels: &DemonstrationLabels,
) -> Result<Vec<Drawing>, DrawingError> {
    let mut pages = Vec::new();
    for step in steps {
        let count = step.shown.slashes.len();
        for (index, slash) in step.shown.slashes.iter().enumerate() {
            let mut lines = Layer::new("lines");
            let mut words = Layer::new("words");
            let bold = TextStyle::new(Face::Bold, 5.2);
            let plain = TextStyle::new(Face::Regular, 3.3);
            let small = TextStyle::new(Face::Regular, 2.9);
            let name = slash.name();
            let head = format!("{}: {name}", step.head);
            words.push(Text::new((0.0, 5.0), bold.fit(&head, WIDTH), bold));
            let title = format!("{}. Lengths are in {}.", labels.title, labels.unit);
            words.push(Text::new((0.0, 10.0), plain.fit(&title, WIDTH), plain));
            let mut low = draw(
                slash,
                labels.unit,
                Point::new(0.0, 13.0),
                (&mut lines, &mut words),
            );
            if index + 1 == count {
                for follows in &step.shown.follows {
                    low += 4.4;
                    let text = plain.fit(&speak(follows, labels.unit), WIDTH);
                    words.push(Text::new((0.0, low), text, plain));
                }
            }
            low += 6.4;
            key(&mut lines, &mut words, Point::new(0.0, low));
            low += 1.4;
            for caution in &labels.cautions {
                for line in small.wrap(caution, WIDTH) {
                    low += 3.7;
                    words.push(Text::new((0.0, low), line, small));
                }
            }
            pages.push(Drawing::new(vec![lines, words])?);
        }
    }
    if pages.is_empty() {
        let mut words = Layer::new("words");
        let plain = TextStyle::new(Face::Regular, 4.0);
        let text = format!(
            "{}: nothing is altered, so there is nothing to show.",
            labels.title
        );
        words.push(Text::new((0.0, 5.0), plain.fit(&text, WIDTH), plain));
        pages.push(Drawing::new(vec![words])?);
    }
    Ok(pages)
}
