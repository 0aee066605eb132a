//! Which part of a piece a demonstration shows, and at what scale.

use crate::demonstration::{OpeningKind, Slash};
use crate::geometry::{Point, Span, Vec2};
use kurbo::{Rect, Size};

/// What is shown beyond the cuts on each side: a share of their extent, and at least so many
/// millimetres.
const BEYOND: f64 = 0.3;
const LEAST_BEYOND: f64 = 45.0;

/// Of a piece that shows more than this share of its length all is shown.
const ALMOST_ALL: f64 = 0.75;

/// White between the piece and its frame, in millimetres on paper.
const WHITE: f64 = 8.0;

/// The part of a piece that is shown, and where on paper.
#[derive(Debug, Clone, Copy)]
pub(super) struct Window {
    /// The frame on paper, in millimetres.
    pub frame: Rect,
    /// What lies in its middle.
    middle: Point,
    /// How many millimetres on paper one of the piece is.
    scale: f64,
}

impl Window {
    /// The window on what a slash changes, in a frame of that size at that place.
    pub(super) fn of(slash: &Slash, origin: Point, size: Size) -> Self {
        let whole = slash
            .after
            .iter()
            .map(|piece| piece.outline().bounds())
            .fold(slash.before.outline().bounds(), |all: Rect, one| {
                all.union(one)
            });
        let mut seen: Option<Rect> = None;
        let mut see = |p: Point| {
            let at = Rect::from_points(p, p);
            seen = Some(seen.map_or(at, |s| s.union(at)));
        };
        slash
            .cuts
            .iter()
            .flat_map(|cut| &cut.path)
            .for_each(|p| see(*p));
        slash
            .openings
            .iter()
            .flat_map(|o| &o.ring)
            .for_each(|p| see(*p));
        let focus = seen.map_or(whole, |seen| {
            let beyond = Vec2::new(
                (BEYOND * seen.width()).max(LEAST_BEYOND),
                (BEYOND * seen.height()).max(LEAST_BEYOND),
            );
            seen.inflate(beyond.x, beyond.y).intersect(whole)
        });
        let shown = if focus.height() > ALMOST_ALL * whole.height() {
            whole
        } else {
            // The whole width, since a strip says little.
            Rect::new(whole.x0, focus.y0, whole.x1, focus.y1)
        };
        let room = size - Size::new(2.0 * WHITE, 2.0 * WHITE);
        let scale = (room.width / shown.width().max(1.0))
            .min(room.height / shown.height().max(1.0))
            .min(1.0);
        // No more white above or below the piece than beside it, where there is more of it to see.
        let half = 0.5 * room.height / scale;
        let level = if whole.height() <= 2.0 * half {
            whole.center().y
        } else {
            Span::from_low(whole.y0 + half, whole.y1 - half).nearest(shown.center().y)
        };
        Self {
            frame: Rect::from_origin_size(origin, size),
            middle: Point::new(shown.center().x, level),
            scale,
        }
    }

    /// The same window in a frame beside it.
    pub(super) fn beside(self, by: f64) -> Self {
        Self {
            frame: self.frame + Vec2::new(by, 0.0),
            ..self
        }
    }

    /// A place of the piece on paper.
    pub(super) fn at(&self, p: Point) -> Point {
        self.frame.center() + (p - self.middle) * self.scale
    }

    /// Places of the piece on paper.
    pub(super) fn all(&self, run: &[Point]) -> Vec<Point> {
        run.iter().map(|p| self.at(*p)).collect()
    }
}

/// Whether something is cross-hatched: paper doubled, or cut away.
pub(super) fn is_crossed(kind: OpeningKind) -> bool {
    !kind.needs_paper()
}
