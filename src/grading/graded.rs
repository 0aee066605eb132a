//! Every size of a range, made and proved.

use super::GradingError;
use crate::allowance::CutLines;
use crate::alterations::Account;
use crate::measurements::{Body, Size, SizeTable};
use crate::piece::Pattern;
use crate::progress::Progress;
use crate::recipe::{MadePattern, MakeError, OwnBlockError, Recipe, Ways, make};
use std::ops::ControlFlow;

/// One size of a range.
///
/// ```
/// # use blockwright::draft::Block;
/// # use blockwright::measurements::{Body, Measurement, MeasurementErrors, Size, SizeTable};
/// # use blockwright::recipe::Recipe;
/// # use blockwright::units::Unit;
/// # fn body(bust: f64) -> Result<Body, MeasurementErrors> { Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
/// #     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// # ]) }
/// use blockwright::grading::grade;
/// let table = SizeTable::new("One", Unit::Cm, vec![Size::new("38", body(880.0)?)]);
/// let graded = grade(&Recipe::new("Skirt", Block::Skirt), &table)?;
/// assert_eq!(graded.sizes()[0].label(), "38");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct GradedSize {
    size: Size,
    made: MadePattern,
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

    /// The finished pattern, with all its warnings.
    #[must_use]
    pub const fn pattern(&self) -> &Pattern {
        &self.made.pattern
    }

    /// The account of every alteration.
    #[must_use]
    pub fn accounts(&self) -> &[Account] {
        &self.made.accounts
    }

    /// The lines to cut along, if the range has allowances.
    #[must_use]
    pub const fn cut(&self) -> Option<&CutLines> {
        self.made.cut.as_ref()
    }

    /// All that was made for the size, the block before any alteration among it.
    #[must_use]
    pub const fn made(&self) -> &MadePattern {
        &self.made
    }
}

/// A graded range.
///
/// # Guarantees
/// * There is at least one size; they stand in the order of the table.
/// * Every pattern was made for its own body, as [`make`] makes it.
/// * Either every size has cut lines, all made with the same widths, or none has.
///
/// ```
/// # use blockwright::draft::Block;
/// # use blockwright::measurements::{Body, Measurement, MeasurementErrors, Size, SizeTable};
/// # use blockwright::recipe::Recipe;
/// # use blockwright::units::Unit;
/// # fn body(bust: f64) -> Result<Body, MeasurementErrors> { Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
/// #     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// # ]) }
/// use blockwright::grading::{Graded, grade};
/// let sizes = vec![Size::new("38", body(880.0)?), Size::new("40", body(920.0)?)];
/// let table = SizeTable::new("Two", Unit::Cm, sizes);
/// let graded: Graded = grade(&Recipe::new("Skirt", Block::Skirt), &table)?;
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
        for piece in self.sizes.iter().flat_map(|size| size.pattern().pieces()) {
            if !names.contains(&piece.name()) {
                names.push(piece.name());
            }
        }
        names
    }
}

/// Makes a recipe in every size of a table.
///
/// ```
/// # use blockwright::draft::Block;
/// # use blockwright::measurements::{Body, Measurement, MeasurementErrors, Size, SizeTable};
/// # use blockwright::recipe::Recipe;
/// # use blockwright::units::Unit;
/// # fn body(bust: f64) -> Result<Body, MeasurementErrors> { Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
/// #     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// # ]) }
/// use blockwright::grading::{Align, grade};
/// let sizes = vec![Size::new("38", body(880.0)?), Size::new("40", body(920.0)?)];
/// let table = SizeTable::new("Two", Unit::Cm, sizes);
/// let graded = grade(&Recipe::new("Skirt", Block::Skirt), &table)?;
/// let increments = graded.increments(Align::WaistCentre);
/// let hip = increments.find("", "hip finished").ok_or("a skirt goes round the hip")?;
/// assert!((hip.steps()[0].ok_or("both have it")? - 40.0).abs() < 1e-3);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`GradingError`] names the first size that is refused, and why.
pub fn grade(recipe: &Recipe, table: &SizeTable) -> Result<Graded, GradingError> {
    grade_watched(recipe, table, &mut |_| ControlFlow::Continue(()))
}

/// Makes a recipe in every size of a table, and says after each how far it has come.
///
/// ```
/// # use blockwright::draft::Block;
/// # use blockwright::measurements::{Body, Measurement, MeasurementErrors, Size, SizeTable};
/// # use blockwright::recipe::Recipe;
/// # use blockwright::units::Unit;
/// # fn body(bust: f64) -> Result<Body, MeasurementErrors> { Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
/// #     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// # ]) }
/// use blockwright::grading::{GradingError, grade_watched};
/// use std::ops::ControlFlow;
/// let sizes = vec![Size::new("38", body(880.0)?), Size::new("40", body(920.0)?)];
/// let table = SizeTable::new("Two", Unit::Cm, sizes);
/// let stop = grade_watched(&Recipe::new("Skirt", Block::Skirt), &table, &mut |_| ControlFlow::Break(()));
/// assert_eq!(stop, Err(GradingError::Stopped { done: 1, sizes: 2 }));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`GradingError`] names the first size that is refused, and why; or says that `progress` stopped
/// it.
pub fn grade_watched(
    recipe: &Recipe,
    table: &SizeTable,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Graded, GradingError> {
    let mut draft = |size: &Size| match &recipe.own {
        None => make(recipe, size.body(), table.unit(), Ways::Skipped),
        Some(own) => {
            let path = own.path().to_owned();
            Err(OwnBlockError::OneBody { path }.into())
        }
    };
    grade_by(table, &mut draft, progress)
}

/// Has every size of a table made by a function of its own, which a block of one's own needs: it is
/// not drafted, but fitted from one body to the next.
///
/// ```
/// # use blockwright::draft::Block;
/// # use blockwright::measurements::{Body, Measurement, MeasurementErrors, Size, SizeTable};
/// # use blockwright::recipe::{Recipe, Ways, make};
/// # use blockwright::units::Unit;
/// # fn body(bust: f64) -> Result<Body, MeasurementErrors> { Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
/// #     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// # ]) }
/// use blockwright::grading::grade_by;
/// use std::ops::ControlFlow;
/// let sizes = vec![Size::new("38", body(880.0)?), Size::new("40", body(920.0)?)];
/// let table = SizeTable::new("Two", Unit::Cm, sizes);
/// let mut longer = Recipe::new("Skirt", Block::Skirt);
/// let mut each = |size: &Size| {
///     longer.options.length = Some(if size.label() == "38" { 600.0 } else { 610.0 });
///     make(&longer, size.body(), Unit::Cm, Ways::Skipped)
/// };
/// let graded = grade_by(&table, &mut each, &mut |_| ControlFlow::Continue(()))?;
/// assert_eq!(graded.sizes().len(), 2);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`GradingError`] names the first size that is refused, and why; or says that `progress` stopped
/// it.
pub fn grade_by(
    table: &SizeTable,
    make_size: &mut dyn FnMut(&Size) -> Result<MadePattern, MakeError>,
    progress: &mut dyn FnMut(Progress) -> ControlFlow<()>,
) -> Result<Graded, GradingError> {
    let count = table.sizes().len();
    if count == 0 {
        return Err(GradingError::NoSizes);
    }
    let mut sizes = Vec::with_capacity(count);
    for size in table.sizes() {
        let made = make_size(size);
        sizes.push(GradedSize {
            size: size.clone(),
            made: made.map_err(|source| GradingError::Size {
                size: size.label().to_owned(),
                source,
            })?,
        });
        let done = sizes.len();
        if progress(Progress::new(done as u64, count as u64)).is_break() && done < count {
            return Err(GradingError::Stopped { done, sizes: count });
        }
    }
    Ok(Graded { sizes })
}
