//! What a sign is, and all of them.

use serde::Serialize;

/// A part of the body, from the neck down, as a fitter looks at it.
///
/// ```
/// use blockwright::signs::BodyPlace;
/// assert_eq!(BodyPlace::Neck.name(), "neck");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum BodyPlace {
    /// Neckline, front and back.
    Neck,
    /// Shoulders.
    Shoulder,
    /// Armhole.
    Armscye,
    /// Sleeve.
    Sleeve,
    /// Chest and bust.
    Bust,
    /// Back above the waist.
    Back,
    /// Waist.
    Waist,
    /// Hips, seat and abdomen.
    Hip,
}

impl BodyPlace {
    /// All of them, in the order in which a fitter looks.
    pub const ALL: [Self; 8] = [
        Self::Neck,
        Self::Shoulder,
        Self::Armscye,
        Self::Sleeve,
        Self::Bust,
        Self::Back,
        Self::Waist,
        Self::Hip,
    ];

    /// The name in reports.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Neck => "neck",
            Self::Shoulder => "shoulder",
            Self::Armscye => "armscye",
            Self::Sleeve => "sleeve",
            Self::Bust => "bust",
            Self::Back => "back",
            Self::Waist => "waist",
            Self::Hip => "hip",
        }
    }
}

/// Whether cloth is pinned away, the toile is cut open and what is missing is measured, or a place is
/// marked and measured to.
///
/// ```
/// use blockwright::signs::Found;
/// assert_eq!(Found::Opened.name(), "opened");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Found {
    /// There is too much: the fold is pinned, and the whole of it measured.
    Pinned,
    /// There is too little: the toile is cut and opens, and the gap is measured.
    Opened,
    /// Something lies beside where it should: both places are marked, and the way between them is
    /// measured.
    Marked,
}

impl Found {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Pinned, Self::Opened, Self::Marked];

    /// The key in a job.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Pinned => "pinned",
            Self::Opened => "opened",
            Self::Marked => "marked",
        }
    }
}

/// Where a sign was read.
///
/// ```
/// use blockwright::signs::{Mark, SIGNS};
/// assert!(SIGNS.iter().any(|sign| matches!(sign.mark, Mark::Read(_))));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Mark {
    /// It stands in this source.
    Read(&'static str),
    /// A fact of the trade without a source.
    CommonPractice,
}

/// From where the figure is seen.
///
/// ```
/// use blockwright::signs::View;
/// assert_ne!(View::Back, View::Front);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum View {
    /// From the front.
    Front,
    /// From behind.
    Back,
}

/// A sign: what is seen, and what follows.
///
/// ```
/// use blockwright::signs::SIGNS;
/// let folds = SIGNS.iter().find(|sign| sign.name == "folds_small_of_back").ok_or("it is known")?;
/// assert_eq!(folds.alteration, "back_length_reduction");
/// assert!(folds.rule_out.contains("hips"));
/// # Ok::<(), &str>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Sign {
    /// Its name, in snake case.
    pub name: &'static str,
    /// The part of the body.
    pub place: BodyPlace,
    /// Where exactly, as a job's `observed` says it.
    pub at: &'static str,
    /// What the cloth shows there.
    pub shows: &'static str,
    /// Why.
    pub cause: &'static str,
    /// What to rule out before anything is altered.
    pub rule_out: &'static str,
    /// Whether the amount is pinned, opened or marked.
    pub found: Found,
    /// How it is measured on the toile.
    pub measure: &'static str,
    /// The alteration that follows.
    pub alteration: &'static str,
    /// Its settings besides the amount, key and value.
    pub settings: &'static [(&'static str, &'static str)],
    /// The setting that takes the amount.
    pub key: &'static str,
    /// The amount of the alteration for a millimetre measured.
    pub factor: f64,
    /// Usual amounts as they are measured, in millimetres.
    pub usual: (f64, f64),
    /// What the alteration changes elsewhere, to be looked at on the next toile.
    pub elsewhere: &'static str,
    /// Where sign and cause were read.
    pub mark: Mark,
    /// From where it is seen.
    pub view: View,
    /// The folds on a figure 100 wide and 200 high, its neck at the top, from end to end.
    pub folds: &'static [[(f64, f64); 2]],
}

impl Sign {
    /// The source in words.
    ///
    /// ```
    /// use blockwright::signs::SIGNS;
    /// assert!(SIGNS.iter().any(|sign| sign.source() == "common practice"));
    /// ```
    #[must_use]
    pub const fn source(&self) -> &'static str {
        match self.mark {
            Mark::Read(source) => source,
            Mark::CommonPractice => "common practice",
        }
    }
}
