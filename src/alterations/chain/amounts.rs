//! Whether an amount is one that can be asked.

use crate::alterations::AlterationError;

/// The amount, if it is a number.
pub(in crate::alterations) fn number(amount: f64) -> Result<f64, AlterationError> {
    if amount.is_finite() {
        return Ok(amount);
    }
    Err(AlterationError::Setting(
        "the amount is no number; give millimetres or degrees".to_owned(),
    ))
}

/// Refuses an amount that is no number or lies beyond what the trade asks at once: the least is
/// that of negative amounts.
pub(in crate::alterations) fn at_most(
    amount: f64,
    (least, most): (f64, f64),
    unit: &'static str,
    why: &str,
) -> Result<(), AlterationError> {
    let most = if number(amount)? < 0.0 { least } else { most };
    if amount.abs() <= most.abs() {
        return Ok(());
    }
    Err(AlterationError::TooMuch {
        amount,
        most,
        unit,
        why: why.to_owned(),
    })
}
