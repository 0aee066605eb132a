//! The point of fullness a dart makes room for.

use super::{Apexes, Dart, Piece};
use crate::geometry::{Point, angle_between};

/// Name of the point of a front over the fullest place of the bust.
pub const BUST_POINT: &str = "bust_point";

/// A dart for the bust ends at most so far from the bust point, in millimetres: full cups are
/// left 64 (S. Veblen, *Threads* 181), a tip brought to an armscye stands no farther.
const REACH: f64 = 80.0;

/// Its centre line passes the bust point at most so far away, in millimetres: what several
/// alterations leave.
const BESIDE: f64 = 10.0;

impl Piece {
    /// The bust point, on a piece that has one.
    #[must_use]
    pub fn bust_point(&self) -> Option<Point> {
        let point = self.points().iter().find(|p| p.name == BUST_POINT)?;
        Some(point.at)
    }

    /// The point of fullness a dart is turned about: the bust point for a dart that points at
    /// it, else the dart's own apex. Where the bust point lies a little beside the dart's centre
    /// line it is the nearest point of that line, so that both legs are equally long.
    #[must_use]
    pub fn fullness(&self, dart: &Dart) -> Point {
        self.bust_point()
            .and_then(|bust| aimed_at(dart, bust))
            .unwrap_or_else(|| dart.apex())
    }

    /// Whether a dart is there for the bust point: its centre line, of a double-pointed one that of its
    /// upper half, ends near the point and passes it.
    pub(crate) fn aims_at_bust(&self, dart: &Dart) -> bool {
        let upper = Dart {
            apexes: Apexes::One(dart.apex()),
            ..dart.clone()
        };
        self.bust_point()
            .is_some_and(|bust| aimed_at(&upper, bust).is_some())
    }

    /// The angle of a dart about its point of fullness, in radians: what stays when the dart
    /// goes elsewhere, wherever its sewn tip ends.
    #[must_use]
    pub fn dart_angle(&self, dart: &Dart) -> f64 {
        let about = self.fullness(dart);
        angle_between(dart.legs[0] - about, dart.legs[1] - about).abs()
    }
}

/// Where on its centre line a dart with one apex comes nearest to a point it is there for: one
/// that lies near, beyond the apex and on that line but for a little.
fn aimed_at(dart: &Dart, point: Point) -> Option<Point> {
    let Apexes::One(apex) = dart.apexes else {
        return None;
    };
    let axis = apex - dart.legs[0].midpoint(dart.legs[1]);
    if axis.hypot() <= BESIDE {
        return None;
    }
    let (axis, beyond) = (axis.normalize(), point - apex);
    let far = beyond.dot(axis);
    let aimed = beyond.hypot() <= REACH && far >= -1.0 && beyond.cross(axis).abs() <= BESIDE;
    aimed.then(|| apex + axis * far.max(0.0))
}
