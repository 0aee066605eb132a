//! The cutting table: one piece laid on it, cut, moved and compared with what was made of it.

use super::error::{Missing, Tried, missing};
use super::instruction::Instruction;
use super::openings::openings;
use super::panel::{Origin, Panel, PanelSide, middle};
use super::rings::{at_level, at_upright, distance, length, point_along, signed_area, steps};
use super::slash::{CutPath, Opening, OpeningKind, Slash};
use super::truing::{FOLLOWED, truing, without_mouths};
use super::words::{edge_words, listed, mm};
use crate::geometry::{Point, Rigid, Vec2, angle_between};
use crate::piece::{EdgeName, EdgeRole, Piece};

/// A piece on the table.
pub(super) struct Bench<'a> {
    pub old: &'a Piece,
    pub new: Vec<&'a Piece>,
    panels: Vec<Panel>,
    cuts: Vec<Vec<Point>>,
    hinges: Vec<Point>,
    strips: Vec<Opening>,
    drawn: Vec<EdgeName>,
    laid: Rigid,
}

/// What lies so near to the taped paper is not worth a word, in millimetres.
const SMALL: f64 = 1.0;

impl<'a> Bench<'a> {
    /// The piece as it was, laid on the table, and what was made of it.
    pub fn of(old: &'a Piece, new: Vec<&'a Piece>) -> Self {
        let mut sides = Vec::new();
        for (number, edge) in old.outline().edges().iter().enumerate() {
            for (part, mouth) in without_mouths(old, edge.name(), edge.curve()) {
                let origin = if mouth {
                    Origin::Mouth
                } else {
                    Origin::Edge(number)
                };
                let run = part.to_polyline(FOLLOWED).unwrap_or_default();
                let starts = run.len().saturating_sub(1);
                let starts = run.into_iter().take(starts);
                sides.extend(starts.map(|start| PanelSide { start, origin }));
            }
        }
        let whole = Panel {
            sides,
            motion: Rigid::IDENTITY,
        };
        Self {
            old,
            new,
            panels: vec![whole],
            cuts: Vec::new(),
            hinges: Vec::new(),
            strips: Vec::new(),
            drawn: Vec::new(),
            laid: Rigid::IDENTITY,
        }
    }

    /// Whether the old piece has an edge.
    pub fn has(&self, edge: &EdgeName) -> bool {
        self.old.outline().edge(edge).is_some()
    }

    fn run_of(piece: &Piece, edge: &EdgeName) -> Tried<Vec<Point>> {
        let found = piece.outline().edge(edge);
        let run = found.and_then(|e| e.curve().to_polyline(FOLLOWED).ok());
        run.ok_or_else(|| Missing(format!("an edge {edge}")))
    }

    /// An edge of the old piece.
    pub fn run(&self, edge: &EdgeName) -> Tried<Vec<Point>> {
        Self::run_of(self.old, edge)
    }

    /// An edge of the altered piece.
    pub fn new_run(&self, edge: &EdgeName) -> Tried<Vec<Point>> {
        let mut runs = self.new.iter().map(|piece| Self::run_of(piece, edge));
        runs.find(Result::is_ok)
            .unwrap_or_else(|| missing(format!("an edge {edge}")))
    }

    /// Where an edge starts, before and after.
    pub fn start(&self, edge: &EdgeName) -> Tried<[Point; 2]> {
        let first = |run: Vec<Point>| run.first().copied().unwrap_or_default();
        Ok([first(self.run(edge)?), first(self.new_run(edge)?)])
    }

    /// Where an edge ends, before and after.
    pub fn end(&self, edge: &EdgeName) -> Tried<[Point; 2]> {
        let last = |run: Vec<Point>| run.last().copied().unwrap_or_default();
        Ok([last(self.run(edge)?), last(self.new_run(edge)?)])
    }

    /// A place on an edge by its share, the mouths of darts counted.
    pub fn share(&self, edge: &EdgeName, share: f64) -> Tried<Point> {
        let run = self.run(edge)?;
        let found = point_along(&run, share * length(&run));
        found
            .map(|(p, _)| p)
            .ok_or_else(|| Missing(format!("a place on {edge}")))
    }

    /// Where an edge crosses a level.
    pub fn level(&self, edge: &EdgeName, y: f64) -> Tried<Point> {
        at_level(&self.run(edge)?, y).ok_or_else(|| Missing(format!("a level on {edge}")))
    }

    /// Where an edge crosses an upright.
    pub fn upright(&self, edge: &EdgeName, x: f64) -> Tried<Point> {
        at_upright(&self.run(edge)?, x).ok_or_else(|| Missing(format!("an upright on {edge}")))
    }

    /// By how much an edge got longer, sewn; shorter with a minus.
    pub fn longer(&self, edge: &EdgeName) -> Tried<f64> {
        let old = self.old.seam_length(edge);
        let new = self.new.iter().find_map(|piece| piece.seam_length(edge));
        let both = old.zip(new).map(|(old, new)| new - old);
        both.ok_or_else(|| Missing(format!("an edge {edge}")))
    }

    /// The level of a balance line where it starts.
    pub fn line_level(&self, line: &str) -> Tried<f64> {
        let found = self.old.line(line).map(|l| l.curve.start().y);
        found.ok_or_else(|| Missing(format!("a line {line}")))
    }

    /// The edge at the centre.
    pub fn centre(&self) -> Tried<EdgeName> {
        let names = [EdgeName::CENTRE_BACK, EdgeName::CENTRE_FRONT];
        let edges = self.old.outline().edges().iter();
        let mut centres = edges.filter(|e| names.contains(e.name()) || e.role() == EdgeRole::Fold);
        let found = centres.next().map(|e| e.name().clone());
        found.ok_or_else(|| Missing("a centre".to_owned()))
    }

    /// Cuts through the paper from edge to edge, or from edge to another cut.
    pub fn cut(&mut self, run: &[Point]) -> Tried<()> {
        let Some(within) = middle(run) else {
            return missing("a cut");
        };
        let held = self.panels.iter().position(|panel| panel.surrounds(within));
        let parts = held.and_then(|at| Some((at, self.panels.get(at)?.split(run)?)));
        let Some((at, ([left, right], path))) = parts else {
            return missing("room for the cut");
        };
        self.panels.splice(at..=at, [left, right]);
        self.cuts.push(path);
        Ok(())
    }

    /// Marks where the paper is not cut through.
    pub fn hinge(&mut self, at: Point) {
        self.hinges.push(at);
    }

    /// The panel that has a place of an edge.
    pub fn beside(&self, edge: &EdgeName, at: Point) -> Tried<usize> {
        let mut edges = self.old.outline().edges().iter();
        let number = edges.position(|e| e.name() == edge);
        let far = |panel: &Panel| {
            let own = panel.tagged().filter(|(_, _, origin)| match origin {
                Origin::Edge(n) => Some(*n) == number,
                Origin::Mouth => true,
                Origin::Cut => false,
            });
            distance(own.map(|(a, b, _)| (a, b)), at)
        };
        let panels = self.panels.iter().enumerate();
        let near = panels.min_by(|a, b| far(a.1).total_cmp(&far(b.1)));
        near.map(|(index, _)| index)
            .ok_or_else(|| Missing("a panel".to_owned()))
    }

    /// The panel that surrounds a place.
    pub fn around(&self, at: Point) -> Tried<usize> {
        let found = self.panels.iter().position(|panel| panel.surrounds(at));
        found.ok_or_else(|| Missing("a panel".to_owned()))
    }

    /// Moves a panel as a whole.
    pub fn carry(&mut self, panel: usize, motion: Rigid) {
        if let Some(panel) = self.panels.get_mut(panel) {
            panel.motion = motion;
        }
    }

    /// Moves a panel without a turn.
    pub fn shift(&mut self, panel: usize, by: Vec2) {
        self.carry(panel, Rigid::shift(by));
    }

    /// Turns a panel about a hinge until a place of it lies on the ray to another place.
    pub fn turn(&mut self, panel: usize, hinge: Point, [from, to]: [Point; 2]) {
        let angle = angle_between(from - hinge, to - hinge);
        self.carry(panel, Rigid::turn_about(hinge, angle));
    }

    /// Lays two places of a panel on two others: the first on the first, the second on the ray to it.
    pub fn lay(&mut self, panel: usize, [p, to_p]: [Point; 2], [q, to_q]: [Point; 2]) {
        self.carry(panel, Rigid::lay(p, q - p, to_p, to_q - to_p));
    }

    /// Cuts along a run and lets the smaller part fall off; whether there was one.
    pub fn cut_away(&mut self, run: &[Point], edge: &EdgeName) -> bool {
        let before = self.panels.len();
        if self.cut(run).is_err() {
            return false;
        }
        let area = |panel: &Panel| signed_area(&panel.ring()).abs();
        // The two parts stand where the whole stood: the new ones are those that the cut touches.
        let new = self.panels.iter().enumerate().filter(|(_, panel)| {
            panel.tagged().any(|(a, b, origin)| {
                origin == Origin::Cut
                    && run
                        .iter()
                        .any(|p| p.distance(a) < 1e-6 || p.distance(b) < 1e-6)
            })
        });
        let least = new.min_by(|a, b| area(a.1).total_cmp(&area(b.1)));
        let Some(index) = least.map(|(index, _)| index) else {
            return false;
        };
        let strip = self.panels.remove(index).ring();
        let old = self.run(edge).unwrap_or_default();
        let far = |p: &Point| distance(steps(&old), *p);
        let at = run.iter().max_by(|a, b| far(a).total_cmp(&far(b))).copied();
        let at = at.unwrap_or_default();
        self.strips.push(Opening {
            kind: OpeningKind::CutOff,
            amount: far(&at),
            at,
            ring: strip,
        });
        self.panels.len() == before
    }

    /// How the altered piece lies on the table: one of its places on another, a second on the ray to
    /// another.
    pub fn lay_altered(&mut self, [p, to_p]: [Point; 2], [q, to_q]: [Point; 2]) {
        self.laid = Rigid::lay(p, q - p, to_p, to_q - to_p);
    }

    /// A strip put on or cut away along an edge that is drawn anew.
    pub fn strip(&mut self, edge: &EdgeName, strip: Opening) {
        self.strips.push(strip);
        self.draw(edge);
    }

    /// An edge is drawn anew: it is not compared.
    pub fn draw(&mut self, edge: &EdgeName) {
        if !self.drawn.contains(edge) {
            self.drawn.push(edge.clone());
        }
    }

    /// The line of a cut that takes nothing apart.
    pub fn mark(&mut self, run: Vec<Point>) {
        self.cuts.push(run);
    }

    /// What opened or overlaps as the panels lie now.
    pub fn openings(&self) -> Vec<Opening> {
        let mut found = openings(&self.panels, &self.cuts, &self.hinges);
        found.extend(self.strips.iter().cloned());
        found
    }

    /// Whether nothing opens, overlaps, is put on or cut away, and nothing is marked.
    pub fn is_still(&self) -> bool {
        (self.panels.len() > 1 || self.cuts.is_empty()) && self.openings().is_empty()
    }

    /// The widest opening of a kind.
    pub fn widest(&self, kind: OpeningKind) -> f64 {
        let openings = self.openings();
        let of_kind = openings.iter().filter(|o| o.kind == kind);
        of_kind.map(|o| o.amount).fold(0.0, f64::max)
    }

    /// What opens and overlaps most, in words: `open 8 mm`, `overlap 8 mm`.
    pub fn spread(&self) -> String {
        let (gap, lap) = (
            self.widest(OpeningKind::Gap),
            self.widest(OpeningKind::Overlap),
        );
        match (gap > 0.0, lap > 0.0) {
            (true, true) => format!("the cut opens by {} and overlaps by {}", mm(gap), mm(lap)),
            (true, false) => format!("the cut opens by {}", mm(gap)),
            (false, true) => format!("the cut overlaps by {}", mm(lap)),
            (false, false) => "nothing opens".to_owned(),
        }
    }

    /// The demonstration, with what is done.
    pub fn finish(self, said: Instruction) -> Slash {
        let openings = self.openings();
        let truing = truing(
            self.old,
            (&self.new, &self.laid),
            &self.panels,
            &openings,
            &self.drawn,
        );
        let far: Vec<String> = truing
            .iter()
            .filter(|t| t.most > SMALL)
            .map(|t| format!("{} at the {}", t.words(), edge_words(&t.edge)))
            .collect();
        let most = truing.iter().map(|t| t.most).fold(0.0, f64::max);
        let close = if far.is_empty() {
            format!(
                "Draw the outline smooth: it lies within {} of the taped paper everywhere",
                mm((most * 10.0).ceil() / 10.0)
            )
        } else {
            format!(
                "Draw the outline smooth: it lies up to {} from the taped paper",
                listed(&far)
            )
        };
        let third = if said.drawn.is_empty() {
            format!("{close}.")
        } else {
            format!("{close}. {}", said.drawn)
        };
        Slash {
            before: self.old.clone(),
            after: self.new.into_iter().cloned().collect(),
            laid: self.laid,
            cuts: self.cuts.into_iter().map(CutPath::along).collect(),
            hinges: self.hinges,
            panels: self.panels,
            openings,
            truing,
            sentences: [said.cut, said.moved, third],
        }
    }
}

/// How far a cut keeps from the leg of a dart, in millimetres.
const BESIDE_LEG: f64 = 8.0;

impl Bench<'_> {
    /// The dart that opens on the shoulder.
    pub fn shoulder_dart(&self) -> Option<crate::piece::Dart> {
        let mut darts = self.old.darts().iter();
        darts.find(|d| d.edge == Some(EdgeName::SHOULDER)).cloned()
    }

    /// A place on an edge near a share of it, beside the mouths of darts.
    pub fn clear_of_darts(&self, edge: &EdgeName, share: f64) -> Tried<Point> {
        let run = self.run(edge)?;
        let long = length(&run);
        let mut at = share * long;
        for (_, from, to) in self.old.mouths(edge) {
            if (from - BESIDE_LEG..to + BESIDE_LEG).contains(&at) {
                let before = from - BESIDE_LEG;
                at = if to + BESIDE_LEG > 0.8 * long {
                    before
                } else {
                    to + BESIDE_LEG
                };
            }
        }
        let found = point_along(&run, at).map(|(p, _)| p);
        found.ok_or_else(|| Missing(format!("a place on {edge}")))
    }

    /// The lowest and highest legs of the darts on the side seam above a level.
    fn legs_on_side(&self, above: f64) -> Vec<f64> {
        let darts = self.old.darts().iter();
        let on_side = darts.filter(|d| d.edge == Some(EdgeName::SIDE_SEAM));
        let legs = on_side.flat_map(|d| d.legs);
        legs.map(|leg| leg.y).filter(|y| *y < above).collect()
    }

    /// A level between the darts on the side seam and a waist.
    pub fn below_darts(&self, waist: f64) -> f64 {
        let top = self.start(&EdgeName::SIDE_SEAM).map_or(waist, |[p, _]| p.y);
        let lowest = self.legs_on_side(waist).into_iter().fold(top, f64::max);
        0.5 * (lowest + waist)
    }

    /// A level so far below the underarm, above the darts on the side seam.
    pub fn below_underarm(&self, underarm: f64, by: f64) -> f64 {
        let legs = self.legs_on_side(f64::INFINITY).into_iter();
        let first = legs.filter(|y| *y > underarm).fold(f64::INFINITY, f64::min);
        (underarm + by).min(first - BESIDE_LEG)
    }
}

impl Bench<'_> {
    /// Where the waist is on the side seam: the seam's end at a waist edge, or a level.
    pub fn waist_on_side(&self) -> Tried<Point> {
        if self.has(&EdgeName::WAIST) {
            let from_fold = self.waist_starts_at_centre()?;
            let ends = if from_fold {
                self.start(&EdgeName::SIDE_SEAM)?
            } else {
                self.end(&EdgeName::SIDE_SEAM)?
            };
            return Ok(ends[0]);
        }
        let line = self.old.line("waist").map(|line| line.curve.end());
        let end = line.ok_or_else(|| Missing("a waist".to_owned()))?;
        self.level(&EdgeName::SIDE_SEAM, end.y)
    }

    /// Whether the waist runs from the centre to the side, as on a skirt.
    pub fn waist_starts_at_centre(&self) -> Tried<bool> {
        let [start, _] = self.start(&EdgeName::WAIST)?;
        let [side, _] = self.start(&EdgeName::SIDE_SEAM)?;
        let [end, _] = self.end(&EdgeName::WAIST)?;
        Ok(end.distance(side) < start.distance(side))
    }
}

impl Bench<'_> {
    /// Of a piece divided in two, cuts away whatever panel lies between the two.
    pub fn drop_between(&mut self) {
        let inside = |panel: &Panel, piece: &Piece| {
            let ring: Vec<Point> = piece
                .outline()
                .edges()
                .iter()
                .filter_map(|edge| edge.curve().to_polyline(FOLLOWED).ok())
                .flatten()
                .collect();
            let corners = panel.ring();
            let within = signed_area(&corners).abs();
            within > 0.5 * signed_area(&ring).abs()
        };
        let (kept, dropped): (Vec<Panel>, Vec<Panel>) = std::mem::take(&mut self.panels)
            .into_iter()
            .partition(|panel| self.new.iter().any(|piece| inside(panel, piece)));
        self.panels = kept;
        for panel in dropped {
            let ring = panel.ring();
            let wide = steps_wide(&ring);
            self.strips.push(Opening {
                kind: OpeningKind::CutOff,
                amount: wide.0,
                at: wide.1,
                ring,
            });
        }
    }
}

/// How wide a long narrow ring is, twice its area over its length, and its middle.
fn steps_wide(ring: &[Point]) -> (f64, Point) {
    let around: f64 = super::rings::sides(ring).map(|(a, b)| a.distance(b)).sum();
    let area = signed_area(ring).abs();
    let count = ring.len().max(1) as f64;
    let sum = ring.iter().fold(Vec2::ZERO, |sum, p| sum + p.to_vec2());
    (4.0 * area / around.max(1.0), (sum / count).to_point())
}
