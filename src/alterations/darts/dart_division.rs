//! Dart division: parts of a dart's angle moved to other places.

use super::dart_finding::{found, free_places, kept_of, turned_darts};
use super::dart_opening::Opening;
use super::dart_swing::Swing;
use super::dart_tip::{bust_fullness, tip_backed_off, tip_to_fullness};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Part, Promise, StructureChange};
use crate::piece::{EdgeName, Pattern, Piece, wide_darts};
use serde::{Deserialize, Serialize};

/// Where a part of a dart goes.
///
/// ```
/// use blockwright::alterations::DartPart;
/// let half = DartPart { to: "shoulder".into(), at: 0.5, share: 0.5 };
/// assert_eq!(half.to, "shoulder");
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DartPart {
    /// The edge it goes to.
    pub to: String,
    /// Where along that edge as sewn, from 0 at its start to 1; the middle unless given.
    #[serde(default = "middle")]
    pub at: f64,
    /// Share of the dart's angle, above 0 and at most 1.
    pub share: f64,
}

fn middle() -> f64 {
    0.5
}

/// Divides a dart: parts of its angle go to other places, the rest stays.
///
/// For a dart that is too wide to press well, or fullness that is wanted in several places.
/// Each part is moved as in [`DartRelocation`](crate::alterations::DartRelocation), one after the other; the
/// shares sum to 1 or less. The new darts are named after the dart and their edge, as in
/// `bust shoulder`; when the shares sum to 1 nothing stays and the old dart is gone.
///
/// The angles about the point of fullness sum to what they did; every sewn length and every girth stay.
///
/// ```
/// use blockwright::alterations::{Alteration, DartDivision, alter};
/// use blockwright::piece::{Measure, Pattern};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// let mut figure = Figure::cylinder(920.0);
/// figure.waist_girth = 740.0;
/// let pattern = draft_figure(&figure, &DraftOptions::of(Block::Bodice))?;
/// let step: Box<dyn Alteration> = Box::new(DartDivision::of("shoulder").part("neckline", 0.5, 0.4));
/// let done = alter(&pattern, &[step])?;
/// let angle = |p: &Pattern, dart: &str| p.measured(&Measure::dart_angle("back", dart)).unwrap_or(0.0);
/// let sum = angle(&done.pattern, "shoulder") + angle(&done.pattern, "shoulder neckline");
/// assert!((sum - angle(&pattern, "shoulder")).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/dart_division.svg")]
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DartDivision {
    /// Name of the dart.
    pub dart: String,
    /// Where its parts go.
    pub into: Vec<DartPart>,
    /// The piece, where several have a dart of that name.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub piece: Option<String>,
}

/// Shares that miss 1 by less leave no rest: what rounding makes of thirds.
const WHOLE: f64 = 1e-6;

impl DartDivision {
    /// The dart of that name, not yet divided.
    #[must_use]
    pub fn of(dart: impl Into<String>) -> Self {
        Self {
            dart: dart.into(),
            into: Vec::new(),
            piece: None,
        }
    }

    /// The same on the piece of that name.
    #[must_use]
    pub fn on(self, piece: impl Into<String>) -> Self {
        Self {
            piece: Some(piece.into()),
            ..self
        }
    }

    /// The same with one more part: edge, place along it, share of the angle.
    #[must_use]
    pub fn part(mut self, edge: impl Into<String>, at: f64, share: f64) -> Self {
        self.into.push(DartPart {
            to: edge.into(),
            at,
            share,
        });
        self
    }

    /// The shares' sum, when they make sense.
    fn sum(&self) -> Result<f64, AlterationError> {
        if self.into.is_empty() {
            return Err(AlterationError::Setting(
                "the division names no part; say into: with edge and share of each".to_owned(),
            ));
        }
        if let Some(part) = self
            .into
            .iter()
            .find(|p| !(p.share > 0.0 && p.share <= 1.0))
        {
            return Err(AlterationError::Setting(format!(
                "the share that goes to the {} is {}; it is above 0 and at most 1",
                part.to, part.share
            )));
        }
        let sum: f64 = self.into.iter().map(|p| p.share).sum();
        if sum > 1.0 + WHOLE {
            return Err(AlterationError::Setting(format!(
                "the shares sum to {sum:.3}; a dart has no more than all of itself, 1, to give"
            )));
        }
        Ok(if sum > 1.0 - WHOLE { 1.0 } else { sum })
    }
}

/// Names for the parts of a dart that no dart of the piece has yet.
fn fresh(piece: &Piece, dart: &str, parts: &[DartPart]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for part in parts {
        let plain = format!("{dart} {}", part.to);
        let mut all = std::iter::once(plain.clone()).chain((2..).map(|n| format!("{plain} {n}")));
        let free = |name: &String| piece.dart(name).is_none() && !names.contains(name);
        let name = all.find(free).unwrap_or(plain.clone());
        names.push(name);
    }
    names
}

impl Alteration for DartDivision {
    fn name(&self) -> &'static str {
        "dart_division"
    }

    fn amount(&self) -> Option<f64> {
        None
    }

    fn with_amount(&self, _amount: f64) -> Box<dyn Alteration> {
        Box::new(self.clone())
    }

    fn structure_change(&self, before: &Pattern) -> StructureChange {
        let Ok((piece, dart)) = found(before, &self.dart, self.piece.as_deref()) else {
            return StructureChange::none();
        };
        let names = fresh(piece, &dart.name, &self.into);
        let mut change = StructureChange::none();
        for name in names {
            change = change.adds(Part::dart(piece.name(), name));
        }
        match self.sum() {
            Ok(sum) if sum >= 1.0 => change.removes(Part::dart(piece.name(), &dart.name)),
            _ => change,
        }
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let Ok((piece, dart)) = found(before, &self.dart, self.piece.as_deref()) else {
            return Vec::new();
        };
        let mut promises = kept_of(before, piece, dart);
        if let Some(sum) = self.sum().ok().filter(|sum| *sum < 1.0) {
            promises.push(turned_darts(piece, dart, -sum));
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let whole = self.sum()? >= 1.0;
        let (piece, dart) = found(pattern, &self.dart, self.piece.as_deref())?;
        let names = fresh(piece, &dart.name, &self.into);
        let fullness = bust_fullness(piece, dart);
        let mut piece = tip_to_fullness(piece, dart)?;
        let mut left = 1.0;
        for (index, part) in self.into.iter().enumerate() {
            let now = piece.dart(&dart.name).ok_or_else(|| {
                AlterationError::Setting(format!(
                    "nothing of the {} dart is left for the {}",
                    dart.name, part.to
                ))
            })?;
            let last = whole && index + 1 == self.into.len();
            let edge = EdgeName::new(part.to.clone());
            let swing = Swing {
                piece: &piece,
                dart: now,
                share: if last { 1.0 } else { part.share / left },
                into: Opening::place(&piece, &edge, part.at)?,
                name: names.get(index).cloned().unwrap_or_default(),
            };
            left -= part.share;
            let made = swing.made().map_err(|e| match e {
                AlterationError::Setting(why) => free_places(&swing, &edge, why),
                other => other,
            })?;
            piece = made;
        }
        for name in std::iter::once(&dart.name).chain(&names) {
            piece = tip_backed_off(&piece, name, fullness)?;
        }
        Ok(Altered {
            warnings: wide_darts([&piece]),
            pattern: replaced(pattern, piece)?,
        })
    }
}
