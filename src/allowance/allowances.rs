//! How wide the allowance is along each edge.

use super::AllowanceError;
use crate::piece::{Edge, EdgeRole, Pattern};
use std::collections::BTreeMap;

/// The widths of the seam allowance, in millimetres, by the name of the edge.
///
/// # Guarantees
/// Every width is finite, from 0 to [`Allowances::MOST`]; every name is one of
/// [`Allowances::PLACES`]. An edge on the fold has none, whatever is asked.
///
/// ```
/// use blockwright::allowance::Allowances;
/// let widths = Allowances::all_round(15.0)?.with("neckline", 10.0)?.with("hem", 40.0)?;
/// assert_eq!(widths.words(), "seam allowance 15 mm, neckline 10 mm, hem 40 mm included");
/// # Ok::<(), blockwright::allowance::AllowanceError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Allowances {
    default: f64,
    places: BTreeMap<&'static str, f64>,
}

impl Allowances {
    /// The greatest width, in millimetres: twice the deepest hem of practice (30 to 50 mm,
    /// value from memory).
    pub const MOST: f64 = 100.0;

    /// The width of an edge that is not named: home sewing has 15 to 16 mm all round (value
    /// from memory), industry 10 mm (course text on pattern making, read).
    pub const USUAL: f64 = 15.0;

    /// The edges whose width can be said. `hem` is also the lower end of a sleeve unless
    /// `wrist` is said; `underarm` is both long edges of a sleeve.
    pub const PLACES: [&'static str; 11] = [
        "neckline",
        "shoulder",
        "armscye",
        "side_seam",
        "waist",
        "hem",
        "sleeve_cap",
        "underarm",
        "wrist",
        "centre_back",
        "centre_front",
    ];

    /// One width all round.
    ///
    /// # Errors
    /// When it is not 0 to [`Allowances::MOST`].
    pub fn all_round(default: f64) -> Result<Self, AllowanceError> {
        check("default", default)?;
        Ok(Self {
            default,
            places: BTreeMap::new(),
        })
    }

    /// What practice leaves: 15 mm on seams, 10 mm on the curves of neck and armhole, where
    /// more would only be clipped, 40 mm at straight hems (values from memory: 15 to 16 in home
    /// sewing, 6 to 13 on necklines and armholes, 25 to 50 at hems).
    ///
    /// ```
    /// use blockwright::allowance::Allowances;
    /// assert!(Allowances::usual().words().contains("hem 40"));
    /// ```
    #[must_use]
    pub fn usual() -> Self {
        Self {
            default: Self::USUAL,
            places: BTreeMap::from([
                ("neckline", 10.0),
                ("armscye", 10.0),
                ("sleeve_cap", 10.0),
                ("hem", 40.0),
            ]),
        }
    }

    /// The same with another width at one place.
    ///
    /// # Errors
    /// When there is no such place, or the width is not 0 to [`Allowances::MOST`].
    pub fn with(mut self, place: &str, width: f64) -> Result<Self, AllowanceError> {
        let Some(name) = Self::PLACES.into_iter().find(|name| *name == place) else {
            return Err(AllowanceError::NoPlace {
                place: place.to_owned(),
                places: Self::PLACES.join(", "),
            });
        };
        check(name, width)?;
        self.places.insert(name, width);
        Ok(self)
    }

    /// The width along an edge, in millimetres.
    ///
    /// ```
    /// use blockwright::allowance::Allowances;
    /// use blockwright::geometry::{Curve, Point};
    /// use blockwright::piece::{Edge, EdgeName, EdgeRole};
    /// let line = Curve::line(Point::ORIGIN, Point::new(0.0, 300.0))?;
    /// let fold = Edge::new(EdgeName::CENTRE_BACK, EdgeRole::Fold, line.clone());
    /// let seam = Edge::new(EdgeName::CENTRE_BACK, EdgeRole::Seam, line);
    /// let widths = Allowances::all_round(15.0)?;
    /// assert_eq!((widths.of(&fold), widths.of(&seam)), (0.0, 15.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn of(&self, edge: &Edge) -> f64 {
        if edge.role() == EdgeRole::Fold {
            return 0.0;
        }
        self.place_of(edge).map_or(self.default, |(_, width)| width)
    }

    /// The width of an edge that is not named, in millimetres.
    #[must_use]
    pub fn default_width(&self) -> f64 {
        self.default
    }

    /// The places that have a width of their own, by name, and the width in millimetres.
    ///
    /// ```
    /// use blockwright::allowance::Allowances;
    /// let widths = Allowances::all_round(15.0)?.with("hem", 40.0)?;
    /// assert_eq!(widths.named_widths().collect::<Vec<_>>(), [("hem", 40.0)]);
    /// # Ok::<(), blockwright::allowance::AllowanceError>(())
    /// ```
    pub fn named_widths(&self) -> impl Iterator<Item = (&'static str, f64)> + '_ {
        self.places.iter().map(|(place, width)| (*place, *width))
    }

    /// The place that says how wide the allowance along an edge is, if one does.
    fn place_of(&self, edge: &Edge) -> Option<(&'static str, f64)> {
        let name = edge.name().as_str();
        // `underarm_front`, `side_seam_left` and the like are parts of the edge they are
        // named for.
        let named = |place: &str| {
            name.strip_prefix(place)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with('_'))
        };
        let hem = |place: &str| place == "hem" && edge.role() == EdgeRole::Hem;
        let places = || self.places.iter().map(|(place, width)| (*place, *width));
        places()
            .find(|(place, _)| named(place))
            .or_else(|| places().find(|(place, _)| hem(place)))
    }

    /// The places asked for that no piece of the pattern has an allowance at.
    ///
    /// ```
    /// use blockwright::allowance::Allowances;
    /// use blockwright::draft::{Ease, Figure, Fit, skirt};
    /// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
    /// let widths = Allowances::all_round(15.0)?.with("neckline", 6.0)?.with("hem", 40.0)?;
    /// assert_eq!(widths.unused(&pattern), ["neckline"]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn unused(&self, pattern: &Pattern) -> Vec<&'static str> {
        let edges = || pattern.pieces().iter().flat_map(|p| p.outline().edges());
        let is_used = |place: &str| {
            edges()
                .filter(|edge| edge.role() != EdgeRole::Fold)
                .filter_map(|edge| self.place_of(edge))
                .any(|(used, _)| used == place)
        };
        self.places
            .keys()
            .copied()
            .filter(|place| !is_used(place))
            .collect()
    }

    /// The widths, as they are written on a piece.
    #[must_use]
    pub fn words(&self) -> String {
        format!("seam allowance {} included", self.widths())
    }

    /// The widths alone.
    ///
    /// ```
    /// use blockwright::allowance::Allowances;
    /// let widths = Allowances::all_round(15.0)?.with("hem", 40.0)?;
    /// assert_eq!(widths.widths(), "15 mm, hem 40 mm");
    /// # Ok::<(), blockwright::allowance::AllowanceError>(())
    /// ```
    #[must_use]
    pub fn widths(&self) -> String {
        let mut words = shown(self.default);
        for place in Self::PLACES {
            if let Some(width) = self.places.get(place) {
                let name = place.replace('_', " ");
                words.push_str(&format!(", {name} {}", shown(*width)));
            }
        }
        words
    }
}

fn check(place: &str, width: f64) -> Result<(), AllowanceError> {
    if (0.0..=Allowances::MOST).contains(&width) {
        return Ok(());
    }
    Err(AllowanceError::OutOfReach {
        place: place.to_owned(),
        width,
        most: Allowances::MOST,
    })
}

/// A width to a tenth of a millimetre, with its unit, so that each is said in the user's.
fn shown(width: f64) -> String {
    format!("{} mm", (width * 10.0).round() / 10.0)
}
