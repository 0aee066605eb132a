//! Sine and its kin, the same to the last bit on every machine.
//!
//! The standard library takes these functions from the system, and systems differ in the last
//! bits, which a rounded coordinate or a comparison can make visible. Here they come from the
//! `libm` crate, which computes them with sums and products alone; `kurbo` and `nalgebra` are
//! built to use it too. `clippy.toml` keeps the methods of `f64` out of the library. Square root,
//! rounding and the four rules are exact everywhere and need nothing of this.
//!
//! A program that switches on the feature `std` of kurbo or of one of its dependencies (`arrayvec`,
//! `polycool`, `smallvec`) gives kurbo the system's functions back: its files may then differ in
//! the last digit from those made elsewhere. Here `tests/codebase` sees that nothing does.
#![allow(dead_code, unused_imports)] // The set is whole, so that nobody has to fall back on the system's.

pub(crate) use libm::{acos, asin, atan, atan2, cbrt, cos, exp, log as ln, pow, sin, tan};

/// Sine and cosine of an angle in radians.
pub(crate) fn sin_cos(angle: f64) -> (f64, f64) {
    (sin(angle), cos(angle))
}

/// The length of the vector `(x, y)`, as `kurbo` computes it.
pub(crate) fn hypot(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Handbook of Mathematical Functions (Abramowitz and Stegun 1964), tables 4.1 to 4.10;
    /// values from memory.
    #[test]
    fn known_values_come_out_to_the_last_digits() {
        for (found, known) in [
            (sin(1.0), 0.841_470_984_807_896_5),
            (cos(1.0), 0.540_302_305_868_139_8),
            (tan(1.0), 1.557_407_724_654_902_3),
            (atan(1.0), std::f64::consts::FRAC_PI_4),
            (atan2(-1.0, -1.0), -3.0 * std::f64::consts::FRAC_PI_4),
            (asin(0.5), std::f64::consts::FRAC_PI_6),
            (acos(0.5), std::f64::consts::FRAC_PI_3),
            (exp(1.0), std::f64::consts::E),
            (ln(2.0), std::f64::consts::LN_2),
            (pow(2.0, 0.5), std::f64::consts::SQRT_2),
            (cbrt(27.0), 3.0),
            (hypot(3.0, 4.0), 5.0),
        ] {
            assert!(
                (found - known).abs() < 1e-15 * known.abs().max(1.0),
                "{found}"
            );
        }
        assert_eq!(sin_cos(0.3), (sin(0.3), cos(0.3)));
    }

    /// Bits that another machine must find too.
    #[test]
    fn the_bits_are_those_of_the_crate() {
        let sum = (1..1000).map(|n| sin(0.37 * f64::from(n)) * cos(0.11 * f64::from(n)));
        let bits = sum.fold(0_u64, |all, value| all.rotate_left(7) ^ value.to_bits());
        assert_eq!(format!("{bits:016x}"), "816b3256f64c41ce");
    }
}
