//! A block of one's own in the sizes of a table.

use crate::measurements::Size;
#[cfg(not(feature = "fit"))]
use crate::recipe::OwnBlockError;
use crate::recipe::{MadePattern, MakeError, OwnBlock, Recipe, Ways, make};
use crate::units::Unit;

/// Makes one size: drafts it, or fits the block of one's own from its body to that of the size.
pub(in crate::job) fn make_size(
    recipe: &Recipe,
    size: &Size,
    unit: Unit,
) -> Result<MadePattern, MakeError> {
    match &recipe.own {
        None => make(recipe, size.body(), unit, Ways::Skipped),
        Some(own) => {
            let recipe = in_size(recipe, own, size, unit)?;
            make(&recipe, size.body(), unit, Ways::Skipped)
        }
    }
}

#[cfg(not(feature = "fit"))]
fn in_size(_: &Recipe, own: &OwnBlock, _: &Size, _: Unit) -> Result<Recipe, OwnBlockError> {
    let path = own.path().to_owned();
    Err(OwnBlockError::OneBody { path })
}

/// The recipe whose block has grown to a size: exactly, and what did not follow is noted.
#[cfg(feature = "fit")]
fn in_size(recipe: &Recipe, own: &OwnBlock, size: &Size, unit: Unit) -> Result<Recipe, MakeError> {
    use crate::fit::{FitError, FitSettings, fit};
    use crate::recipe::OwnBlockError;

    let path = || own.path().to_owned();
    let (Some(pattern), Some(body)) = (own.pattern(), own.body()) else {
        return Err(OwnBlockError::Unread { path: path() }.into());
    };
    let bodies = (body, size.body());
    let options = own.options();
    let fitted =
        fit(pattern, &options, bodies, unit, &FitSettings::exact()).map_err(
            |error| match error {
                FitError::Draft { source, unit, .. } => MakeError::Draft { source, unit },
                FitError::NothingShared { .. } => OwnBlockError::Unlike { path: path() }.into(),
            },
        )?;
    let mut recipe = recipe.clone();
    recipe.notes.extend(left(&fitted));
    let mut earlier = own.earlier().to_vec();
    earlier.extend(fitted.steps.into_iter().map(|step| step.account));
    recipe.own = Some(OwnBlock::new(
        path(),
        fitted.pattern,
        size.body().clone(),
        earlier,
    )?);
    Ok(recipe)
}

/// What does not follow the table by more than a fitter would see, a warning each.
#[cfg(feature = "fit")]
fn left(fitted: &crate::fit::Fitted) -> Vec<crate::piece::Warning> {
    use crate::piece::{MeasureUnit, Warning};

    let seen = crate::fit::FitSettings::default();
    let much = fitted.left.iter().filter(|left| match left.what.unit() {
        MeasureUnit::Degrees => left.by.abs() >= seen.least_degrees,
        MeasureUnit::Millimetres => left.by.abs() >= seen.least_length,
    });
    much.map(|left| {
        let unit = match left.what.unit() {
            MeasureUnit::Degrees => "°",
            MeasureUnit::Millimetres => " mm",
        };
        let (by, way) = (left.by.abs(), if left.by > 0.0 { "short" } else { "long" });
        let text = format!(
            "{} is {by:.1}{unit} too {way} for this size: the block did not follow the table there",
            left.what
        );
        Warning::new("not_graded", text)
    })
    .collect()
}
