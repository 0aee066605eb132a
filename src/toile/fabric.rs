//! What a cloth is like.

use super::bending::Rigidity;
use super::error::ToileError;
use super::membrane::Plane;
use serde::Serialize;

/// Gravity in N/kg.
const GRAVITY: f64 = 9.80665;

/// What a cloth is like, as far as a toile on screen is ruled by it.
///
/// Anyone can find the bending length with a ruler: a strip of 25 mm is slid over the edge of a table
/// until its end has sunk to 41.5 degrees below the edge; half of what hangs over is the bending
/// length (the cantilever test of Peirce, which ASTM D1388 keeps as its option A).
///
/// ```
/// use blockwright::toile::Fabric;
/// let own = Fabric::new(150.0, 20.0)?;
/// // Bending rigidity is weight times the cube of the bending length.
/// assert!((own.bending_rigidity()[0] - 11.77).abs() < 0.01); // µN m
/// assert!(Fabric::new(4.0, 20.0).is_err());
/// # Ok::<(), blockwright::toile::ToileError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Fabric {
    /// Weight in g/m².
    pub weight: f64,
    /// Bending length along the warp and along the weft, in mm.
    pub bending_length: [f64; 2],
    /// Stiffness against stretch along the warp and along the weft, in N/m.
    pub stretch: [f64; 2],
    /// Stiffness against shear, in N/m.
    pub shear: f64,
    /// Coefficient of friction on the body.
    pub friction: f64,
}

/// Stiffness against stretch where none is given, in N/m. Woven cloth is some times stiffer (a cotton
/// of 158 g/m² has 21 kN/m at 490 N/m: Tadesse et al., Materials 11, 2466, 2018); under its own weight
/// neither stretches by more than 0.2 %, and on screen the softer one comes to rest sooner. So a
/// strain shown says where cloth is too tight, not how hard it pulls.
const STRETCH: f64 = 1000.0;

/// Stiffness against shear, in N/m: the middle of 30 to 80, between which worsted is easily made up
/// (FAST, as quoted by others).
const SHEAR: f64 = 55.0;

/// Friction of cotton on skin is 0.25 to 0.9 (Temel, Johnson and Lloyd, Tribology Letters 70, 2022);
/// on a lined stand less.
const FRICTION: f64 = 0.3;

impl Fabric {
    /// A plain wool of 168 g/m² with bending lengths of 15.0 mm along the warp and 14.5 along the weft,
    /// as a student's report of FAST measurements gives them (*Fabric Assurance by Simple Testing*,
    /// 2014).
    pub const PLAIN_WOOL: Self = Self {
        weight: 168.0,
        bending_length: [15.0, 14.5],
        stretch: [STRETCH, STRETCH],
        shear: SHEAR,
        friction: FRICTION,
    };

    /// Cloths with a name in jobs. `plain_wool` was measured; `limp` and `crisp` were not: they are a thin
    /// cloth at the ends of what a cantilever test usually gives (value from memory), to see what
    /// stiffness does.
    pub const NAMED: [(&str, Self); 3] = [
        ("plain_wool", Self::PLAIN_WOOL),
        ("limp", Self::even(120.0, 12.0)),
        ("crisp", Self::even(120.0, 30.0)),
    ];

    /// The least and the most weight, in g/m².
    pub const WEIGHTS: (f64, f64) = (20.0, 1000.0);
    /// The least and the greatest bending length, in mm.
    pub const BENDING_LENGTHS: (f64, f64) = (1.0, 80.0);
    /// The least and the greatest stiffness against stretch, in N/m.
    pub const STRETCHES: (f64, f64) = (10.0, 100_000.0);

    /// The cloth of that name.
    ///
    /// ```
    /// use blockwright::toile::Fabric;
    /// assert_eq!(Fabric::named("plain_wool"), Some(Fabric::PLAIN_WOOL));
    /// ```
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        let found = Self::NAMED.iter().find(|(known, _)| *known == name);
        found.map(|(_, cloth)| *cloth)
    }

    /// The name it has in jobs, if it has one.
    #[must_use]
    pub fn name(&self) -> Option<&'static str> {
        let found = Self::NAMED.iter().find(|(_, cloth)| cloth == self);
        found.map(|(name, _)| *name)
    }

    /// A cloth that bends alike along warp and weft.
    const fn even(weight: f64, bending_length: f64) -> Self {
        Self {
            weight,
            bending_length: [bending_length; 2],
            ..Self::PLAIN_WOOL
        }
    }

    /// A cloth of a weight in g/m² (20 to 1000) and a bending length in mm (1 to 80), the same along
    /// warp and weft.
    ///
    /// # Errors
    /// [`ToileError::Cloth`] when one of them is out of range.
    pub fn new(weight: f64, bending_length: f64) -> Result<Self, ToileError> {
        Self::even(weight, bending_length).checked()
    }

    /// The cloth, if all its numbers are in range.
    pub(super) fn checked(self) -> Result<Self, ToileError> {
        let [warp, weft] = self.bending_length;
        let [stretch_warp, stretch_weft] = self.stretch;
        let checks = [
            ("weight", self.weight, Self::WEIGHTS, "g/m²"),
            ("bending length", warp, Self::BENDING_LENGTHS, "mm"),
            ("bending length", weft, Self::BENDING_LENGTHS, "mm"),
            ("stretch stiffness", stretch_warp, Self::STRETCHES, "N/m"),
            ("stretch stiffness", stretch_weft, Self::STRETCHES, "N/m"),
            ("shear stiffness", self.shear, (1.0, 10_000.0), "N/m"),
            ("friction", self.friction, (0.0, 2.0), ""),
        ];
        for (what, value, (least, most), unit) in checks {
            if !(least..=most).contains(&value) {
                return Err(ToileError::Cloth {
                    what,
                    value,
                    least,
                    most,
                    unit,
                });
            }
        }
        Ok(self)
    }

    /// Bending rigidity of a strip along the warp and of one along the weft, in µN m: weight times the
    /// cube of the bending length (Peirce; FAST).
    #[must_use]
    pub fn bending_rigidity(&self) -> [f64; 2] {
        let weight = self.weight * GRAVITY * 1e-6;
        self.bending_length.map(|c| weight * c * c * c)
    }

    /// Weight of a mm², in N.
    pub(super) fn load(&self) -> f64 {
        self.weight * GRAVITY * 1e-9
    }

    pub(super) fn plane(&self) -> Plane {
        let [warp, weft] = self.stretch;
        Plane {
            weft: weft * 1e-3,
            warp: warp * 1e-3,
            shear: self.shear * 1e-3,
        }
    }

    pub(super) fn rigidity(&self) -> Rigidity {
        let [warp, weft] = self.bending_rigidity();
        Rigidity {
            weft: weft * 1e-3,
            warp: warp * 1e-3,
        }
    }
}
