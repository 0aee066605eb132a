//! Lengths of a job that carry no unit, where the body is measured in another than theirs.

use crate::piece::Warning;
use crate::units::Unit;

/// What is said of lengths without a unit, where the body is measured in another than millimetres:
/// how they were read, and how else they might be meant.
pub(in crate::job) fn bare_lengths(lengths: &[(String, f64)], unit: Unit) -> Option<Warning> {
    let (path, number) = lengths.first().filter(|_| unit != Unit::Mm)?;
    let key = path.rsplit('.').next().unwrap_or(path);
    let what = match lengths.len() - 1 {
        0 => format!("`{key}: {number}` has no unit and was read as"),
        1 => format!("`{key}: {number}` and one more length have no unit and were read in mm, as"),
        more => {
            format!(
                "`{key}: {number}` and {more} more lengths have no unit and were read in mm, as"
            )
        }
    };
    let text = format!(
        "{what} `{number} mm`, which is {number} mm; if `{number} {unit}` was meant, write `unit: \
         {unit}` in the job, if not, `unit: mm`"
    );
    Some(Warning::new("bare_lengths", text))
}
