//! Every size of a range, made and proved.

use super::GradingError;
use crate::allowance::{Allowances, CutLines};
use crate::alterations::{Account, Alteration, Chain, Request, alter};
use crate::draft::{DraftOptions, draft};
use crate::invariants::{Tolerances, check_all};
use crate::measurements::{Body, Size};
use crate::piece::Pattern;

/// One size of a range.
///
/// ```
/// # use blockwright::draft::{Block, DraftOptions};
/// # use blockwright::measurements::{Body, Measurement, Size};
/// # let body = Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, 880.0),
/// #     (Measurement::WaistGirth, 720.0), (Measurement::HipGirth, 960.0),
/// # ])?;
/// use blockwright::grading::grade;
/// let graded = grade(&[Size::new("38", body)], &DraftOptions::of(Block::Skirt), &[])?;
/// assert_eq!(graded.sizes()[0].label(), "38");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct GradedSize {
    size: Size,
    pattern: Pattern,
    accounts: Vec<Account>,
    cut: Option<CutLines>,
}

impl GradedSize {
    /// What the size is called.
    #[must_use]
    pub fn label(&self) -> &str {
        self.size.label()
    }

    /// The body it is made for.
    #[must_use]
    pub const fn body(&self) -> &Body {
        self.size.body()
    }

    /// The pattern, altered.
    #[must_use]
    pub const fn pattern(&self) -> &Pattern {
        &self.pattern
    }

    /// The account of every alteration.
    #[must_use]
    pub fn accounts(&self) -> &[Account] {
        &self.accounts
    }

    /// The lines to cut along, if the range has allowances.
    #[must_use]
    pub const fn cut(&self) -> Option<&CutLines> {
        self.cut.as_ref()
    }
}

/// A graded range.
///
/// # Guarantees
/// * There is at least one size; they stand in the order of the table.
/// * Every pattern was drafted for its own body, keeps all laws, and every alteration kept its
///   promises on it.
/// * Either every size has cut lines, all made with the same widths, or none has.
///
/// ```
/// # use blockwright::draft::{Block, DraftOptions};
/// # use blockwright::measurements::{Body, Measurement, MeasurementErrors, Size};
/// # fn body(bust: f64) -> Result<Body, MeasurementErrors> { Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
/// #     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// # ]) }
/// use blockwright::grading::{Graded, grade};
/// let sizes = [Size::new("38", body(880.0)?), Size::new("40", body(920.0)?)];
/// let graded: Graded = grade(&sizes, &DraftOptions::of(Block::Skirt), &[])?;
/// assert_eq!(graded.labels().collect::<Vec<_>>(), ["38", "40"]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Graded {
    sizes: Vec<GradedSize>,
}

impl Graded {
    /// The sizes, in the order of the table.
    #[must_use]
    pub fn sizes(&self) -> &[GradedSize] {
        &self.sizes
    }

    /// Their labels.
    pub fn labels(&self) -> impl Iterator<Item = &str> {
        self.sizes.iter().map(GradedSize::label)
    }

    /// The names of all pieces, in the order in which the sizes have them.
    #[must_use]
    pub fn piece_names(&self) -> Vec<&str> {
        let mut names: Vec<&str> = Vec::new();
        for piece in self.sizes.iter().flat_map(|size| size.pattern.pieces()) {
            if !names.contains(&piece.name()) {
                names.push(piece.name());
            }
        }
        names
    }

    /// The same range with cut lines in every size; those it had are made anew. Stitching lines,
    /// and so the increments, stay as they are.
    ///
    /// ```
    /// # use blockwright::draft::{Block, DraftOptions};
    /// # use blockwright::measurements::{Body, Measurement, Size};
    /// # let body = Body::from_taken([
    /// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, 880.0),
    /// #     (Measurement::WaistGirth, 720.0), (Measurement::HipGirth, 960.0),
    /// # ])?;
    /// use blockwright::allowance::Allowances;
    /// use blockwright::grading::grade;
    /// let graded = grade(&[Size::new("38", body)], &DraftOptions::of(Block::Skirt), &[])?;
    /// let graded = graded.with_allowances(&Allowances::usual())?;
    /// assert!(graded.sizes()[0].cut().is_some_and(|cut| cut.of("back").is_some()));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`GradingError::Allowance`] names the first size in which an allowance finds no room.
    pub fn with_allowances(mut self, allowances: &Allowances) -> Result<Self, GradingError> {
        for size in &mut self.sizes {
            let cut = CutLines::new(&size.pattern, allowances);
            size.cut = Some(cut.map_err(|source| GradingError::Allowance {
                size: size.label().to_owned(),
                source,
            })?);
        }
        Ok(self)
    }
}

/// Drafts, proves and alters every size.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions};
/// use blockwright::grading::{Align, grade};
/// use blockwright::measurements::{Body, Measurement, Size};
/// let body = |bust: f64| Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
///     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// ]);
/// let sizes = [Size::new("38", body(880.0)?), Size::new("40", body(920.0)?)];
/// let graded = grade(&sizes, &DraftOptions::of(Block::Skirt), &[])?;
/// let increments = graded.increments(Align::WaistCentre);
/// let hip = increments.find("", "hip finished").ok_or("a skirt goes round the hip")?;
/// assert!((hip.steps()[0].ok_or("both have it")? - 40.0).abs() < 1e-3);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`GradingError`] names the first size that is refused, and why.
pub fn grade(
    sizes: &[Size],
    options: &DraftOptions,
    alterations: &[Request],
) -> Result<Graded, GradingError> {
    if sizes.is_empty() {
        return Err(GradingError::NoSizes);
    }
    let chain: Vec<_> = alterations
        .iter()
        .map(Request::alteration)
        .collect::<Result<_, _>>()?;
    let sizes = sizes.iter().map(|size| one(size, options, &chain));
    Ok(Graded {
        sizes: sizes.collect::<Result<_, _>>()?,
    })
}

fn one(
    size: &Size,
    options: &DraftOptions,
    chain: &[Box<dyn Alteration>],
) -> Result<GradedSize, GradingError> {
    let label = || size.label().to_owned();
    let drafted = draft(size.body(), options).map_err(|source| GradingError::Draft {
        size: label(),
        source,
    })?;
    let violations: Vec<String> = check_all(&drafted, &Tolerances::drafted())
        .iter()
        .map(|violation| format!("{}: {violation}", violation.law()))
        .collect();
    if !violations.is_empty() {
        return Err(GradingError::Unprovable {
            size: label(),
            violations,
        });
    }
    let Chain { pattern, accounts } =
        alter(&drafted, chain).map_err(|source| GradingError::Alteration {
            size: label(),
            source,
        })?;
    Ok(GradedSize {
        size: size.clone(),
        pattern,
        accounts,
        cut: None,
    })
}
