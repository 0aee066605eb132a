//! Finding the form of a body: upright, or leaning where it must.

use super::contradiction::contradiction;
use super::error::FormError;
use super::faults::fault;
use super::form_of_body::Form;
use super::leaning::leaning;
use super::parameter::ShapeParameter as P;
use super::solve::{Asked, solve};
use crate::measurements::Body;

impl Form {
    /// The form of a body.
    ///
    /// Estimates count like what was taken, as drafts use them. Where that gives no body they get the
    /// room of their spread, and so do estimated lengths of back and front where heights, depths or a
    /// plumb line say more (`nape_height` with `waist_height`, `back_hollow`, `nape_plumb`, `waist_plumb`,
    /// `bust_depth`). A back that is too short beside its front for any upright body is one
    /// that leans back, as far as four standard deviations of 6.5 degrees.
    ///
    /// # Errors
    ///
    /// [`FormError`] if no body has what was taken: a tape would miss a measurement by more than 2 mm,
    /// or a dimension would be more than four standard deviations from what the survey expects.
    pub fn of(body: &Body) -> Result<Self, FormError> {
        Self::expecting(body, &[])
    }

    /// The form of a body from a population of whom other dimensions are expected than of the women
    /// surveyed. Each is given with what is added to its mean: millimetres, or parts of a share or a
    /// roundness.
    ///
    /// ```
    /// use blockwright::form::{Form, ShapeParameter};
    /// use blockwright::measurements::{Body, Measurement};
    /// let body = Body::from_taken([
    ///     (Measurement::Height, 1600.0), (Measurement::BustGirth, 960.0),
    ///     (Measurement::WaistGirth, 820.0), (Measurement::HipGirth, 1020.0),
    /// ])?;
    /// // A choir of older women: napes farther forward.
    /// let bent = Form::expecting(&body, &[(ShapeParameter::NapeForward, 20.0)])?;
    /// let nape = |form: &Form| form.landmarks().nape.z;
    /// // Estimated lengths of back and front count as well, and leave a quarter of it.
    /// assert!(nape(&bent) > nape(&Form::of(&body)?) + 4.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`FormError`], as [`of`](Self::of).
    pub fn expecting(body: &Body, more: &[(P, f64)]) -> Result<Self, FormError> {
        let mut asked = Asked {
            more,
            ..Asked::default()
        };
        let strictly = solve(body, &asked);
        if fault(&strictly).is_none() {
            return Ok(Self::from_solved(body, &strictly, 0.0));
        }
        if let Some(leaning) = leaning(body, more, &strictly) {
            return Ok(leaning);
        }
        asked.loosely = true;
        let loosely = solve(body, &asked);
        match fault(&loosely) {
            None => Ok(Self::from_solved(body, &loosely, 0.0)),
            Some(what) => Err(match contradiction(body, &loosely) {
                Some([(one, one_value), (other, other_value)]) => FormError::Contradiction {
                    one,
                    one_value,
                    other,
                    other_value,
                    what,
                },
                None => FormError::Unusual { what },
            }),
        }
    }
}
