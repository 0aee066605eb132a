//! One piece of the pattern.

use super::side::base_name;
use super::side_name::ends_in_side;
use super::{
    BalanceLine, BodySide, Cut, Dart, DrillPoint, EdgeName, NamedPoint, Notch, Outline, PieceError,
};
use crate::geometry::{Point, on_paper, perpendicular, tolerance};

/// What a piece is made from.
///
/// ```
/// use blockwright::piece::PieceParts;
/// fn name(parts: &PieceParts) -> &str { &parts.name }
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct PieceParts {
    /// Name within the pattern.
    pub name: String,
    /// The side of the body it is for, where left and right are unlike; none where the piece
    /// serves both. The name then ends in the side's word: `back left`.
    pub side: Option<BodySide>,
    /// How it is cut.
    pub cut: Cut,
    /// The stitching line.
    pub outline: Outline,
    /// Darts, each drawn open.
    pub darts: Vec<Dart>,
    /// The grain line, from its lower to its upper end.
    pub grain: [Point; 2],
    /// Notches.
    pub notches: Vec<Notch>,
    /// Balance lines.
    pub lines: Vec<BalanceLine>,
    /// Drill points.
    pub drill_points: Vec<DrillPoint>,
    /// Points with a meaning on the body: `bust_point`.
    pub points: Vec<NamedPoint>,
}

/// A piece: outline, darts, marks.
///
/// # Guarantees
/// Every dart that names an edge has both legs on joints of that edge, the first leg before
/// the second; every notch lies on its edge; dart, line and notch names refer to something;
/// names of darts, lines and points differ; every place is finite and within a hundred metres;
/// the name of a piece for one side of the body ends in that side's word.
/// Whether it can be *sewn* is for [`crate::piece`]'s users to prove, law by law.
///
/// ```
/// use blockwright::geometry::{Curve, Point};
/// use blockwright::piece::*;
/// let at = |x, y| Point::new(x, y);
/// let outline = Outline::new(vec![
///     Edge::new(EdgeName::WAIST, EdgeRole::Seam, Curve::line(at(0.0, 0.0), at(200.0, 0.0))?),
///     Edge::new(EdgeName::SIDE_SEAM, EdgeRole::Seam, Curve::line(at(200.0, 0.0), at(200.0, 600.0))?),
///     Edge::new(EdgeName::HEM, EdgeRole::Hem, Curve::line(at(200.0, 600.0), at(0.0, 600.0))?),
///     Edge::new(EdgeName::CENTRE_BACK, EdgeRole::Fold, Curve::line(at(0.0, 600.0), at(0.0, 0.0))?),
/// ])?;
/// let panel = Piece::new(PieceParts {
///     name: "back".into(), side: None, cut: Cut::Fold, outline, darts: vec![],
///     grain: [at(60.0, 560.0), at(60.0, 40.0)], notches: vec![], lines: vec![], drill_points: vec![], points: vec![],
/// })?;
/// assert_eq!(panel.seam_length(&EdgeName::HEM), Some(200.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    parts: PieceParts,
}

impl Piece {
    /// A piece of these parts.
    ///
    /// # Errors
    /// When a name is there twice, refers to nothing or lacks its side's word, a leg is off its
    /// edge, a notch is, or a mark is out of reach.
    pub fn new(parts: PieceParts) -> Result<Self, PieceError> {
        ends_in_side("piece", &parts.name, parts.side)?;
        must_be_on_paper(&parts)?;
        let missing = |whose: String, name: &EdgeName| PieceError::Missing {
            whose,
            kind: "edge",
            name: name.to_string(),
        };
        for (index, dart) in parts.darts.iter().enumerate() {
            if parts.darts.iter().take(index).any(|d| d.name == dart.name) {
                return Err(PieceError::Twice {
                    kind: "dart",
                    name: dart.name.clone(),
                });
            }
            let Some(name) = &dart.edge else { continue };
            let Some(edge) = parts.outline.edge(name) else {
                return Err(missing(format!("the {} dart", dart.name), name));
            };
            let mut ends = [0.0; 2];
            for (leg, end) in dart.legs.iter().zip(&mut ends) {
                *end = edge
                    .curve()
                    .joint_at(*leg)
                    .ok_or_else(|| PieceError::LegOffEdge {
                        dart: dart.name.clone(),
                        edge: name.to_string(),
                        distance: edge.curve().nearest(*leg).0,
                    })?;
            }
            if ends[1] - ends[0] <= tolerance::POINT {
                return Err(PieceError::LegOffEdge {
                    dart: dart.name.clone(),
                    edge: name.to_string(),
                    distance: dart.intake(),
                });
            }
        }
        for notch in &parts.notches {
            let Some(edge) = parts.outline.edge(&notch.edge) else {
                return Err(missing(format!("notch {}", notch.name), &notch.edge));
            };
            let length = edge.curve().length();
            if !(-tolerance::POINT..=length + tolerance::POINT).contains(&notch.at) {
                return Err(PieceError::NotchOffEdge {
                    notch: notch.name.clone(),
                    edge: notch.edge.to_string(),
                    at: notch.at,
                    length,
                });
            }
        }
        for (index, point) in parts.points.iter().enumerate() {
            if parts
                .points
                .iter()
                .take(index)
                .any(|p| p.name == point.name)
            {
                return Err(PieceError::Twice {
                    kind: "point",
                    name: point.name.clone(),
                });
            }
        }
        for (index, line) in parts.lines.iter().enumerate() {
            if parts.lines.iter().take(index).any(|l| l.name == line.name) {
                return Err(PieceError::Twice {
                    kind: "line",
                    name: line.name.clone(),
                });
            }
        }
        Ok(Self { parts })
    }

    /// Name within the pattern.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.parts.name
    }

    /// The side of the body it is for; none where it serves both.
    #[must_use]
    pub fn side(&self) -> Option<BodySide> {
        self.parts.side
    }

    /// What the piece is called where both sides are alike: `back` for `back left`.
    #[must_use]
    pub fn base_name(&self) -> &str {
        base_name(self.name(), self.side())
    }

    /// How the piece is cut.
    #[must_use]
    pub fn cut(&self) -> Cut {
        self.parts.cut
    }

    /// The stitching line.
    #[must_use]
    pub fn outline(&self) -> &Outline {
        &self.parts.outline
    }

    /// The darts.
    #[must_use]
    pub fn darts(&self) -> &[Dart] {
        &self.parts.darts
    }

    /// The dart of that name.
    #[must_use]
    pub fn dart(&self, name: &str) -> Option<&Dart> {
        self.parts.darts.iter().find(|d| d.name == name)
    }

    /// The grain line.
    #[must_use]
    pub fn grain(&self) -> [Point; 2] {
        self.parts.grain
    }

    /// The notches.
    #[must_use]
    pub fn notches(&self) -> &[Notch] {
        &self.parts.notches
    }

    /// Where the cuts of a notch meet the stitching line: one point, or two side by side, in
    /// millimetres. None where the notch is not of this piece's edges.
    ///
    /// ```
    /// use blockwright::geometry::Point;
    /// use blockwright::piece::Piece;
    /// /// All places that a cutter snips.
    /// fn snips(piece: &Piece) -> Vec<Point> {
    ///     piece.notches().iter().flat_map(|notch| piece.notch_points(notch)).collect()
    /// }
    /// ```
    #[must_use]
    pub fn notch_points(&self, notch: &Notch) -> Vec<Point> {
        let edge = self.parts.outline.edge(&notch.edge);
        let cuts = notch.cuts().into_iter();
        cuts.filter_map(|at| edge?.point_at(at).ok()).collect()
    }

    /// The mark of a notch as chains of points, one for each cut: from the stitching line into the
    /// piece, square to the edge, `depth` millimetres long. It is straight, so that the chain holds to
    /// any tolerance.
    ///
    /// ```
    /// use blockwright::geometry::Point;
    /// use blockwright::piece::{Notch, Piece};
    /// fn marks(piece: &Piece, notch: &Notch) -> Vec<[Point; 2]> { piece.notch_polylines(notch, 6.0) }
    /// ```
    #[must_use]
    pub fn notch_polylines(&self, notch: &Notch, depth: f64) -> Vec<[Point; 2]> {
        let edge = self.parts.outline.edge(&notch.edge);
        let cuts = notch.cuts().into_iter();
        cuts.filter_map(|place| {
            let (at, along) = edge?.curve().point_at(place).ok()?;
            Some([at, at + perpendicular(along) * depth])
        })
        .collect()
    }

    /// The balance lines.
    #[must_use]
    pub fn lines(&self) -> &[BalanceLine] {
        &self.parts.lines
    }

    /// The balance line of that name.
    #[must_use]
    pub fn line(&self, name: &str) -> Option<&BalanceLine> {
        self.parts.lines.iter().find(|l| l.name == name)
    }

    /// The drill points.
    #[must_use]
    pub fn drill_points(&self) -> &[DrillPoint] {
        &self.parts.drill_points
    }

    /// The points with a meaning on the body.
    #[must_use]
    pub fn points(&self) -> &[NamedPoint] {
        &self.parts.points
    }

    /// Where the point of that name is, in millimetres.
    ///
    /// ```
    /// use blockwright::geometry::Point;
    /// use blockwright::piece::Piece;
    /// fn fullest(front: &Piece) -> Option<Point> { front.point("bust_point") }
    /// ```
    #[must_use]
    pub fn point(&self, name: &str) -> Option<Point> {
        let mut points = self.parts.points.iter();
        points.find(|p| p.name == name).map(|p| p.at)
    }

    /// The parts, to make another piece from.
    #[must_use]
    pub fn into_parts(self) -> PieceParts {
        self.parts
    }
}

/// Whether every mark is at a place that paper can have; curves have seen to their own.
fn must_be_on_paper(parts: &PieceParts) -> Result<(), PieceError> {
    let check = |what: &dyn Fn() -> String, points: &[Point]| {
        points.iter().try_for_each(|point| {
            on_paper(*point).map_err(|source| PieceError::Misplaced {
                what: what(),
                source,
            })
        })
    };
    check(&|| "the grain line".to_owned(), &parts.grain)?;
    for dart in &parts.darts {
        let what = || format!("the {} dart", dart.name);
        check(&what, &dart.legs)?;
        check(&what, &dart.apexes.points())?;
    }
    for notch in &parts.notches {
        let what = || format!("notch {}", notch.name);
        check(&what, &[Point::new(notch.at, 0.0)])?;
    }
    for hole in &parts.drill_points {
        check(
            &|| format!("the drill point of the {}", hole.name),
            &[hole.at],
        )?;
    }
    for point in &parts.points {
        check(&|| format!("the point {}", point.name), &[point.at])?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Curve;
    use crate::piece::{Edge, EdgeRole};

    fn with_points(points: Vec<NamedPoint>) -> Result<Piece, PieceError> {
        let at = |x, y| Point::new(x, y);
        let edge = |name, from, to| {
            let line = Curve::line(from, to)?;
            Ok::<_, PieceError>(Edge::new(name, EdgeRole::Seam, line))
        };
        let outline = Outline::new(vec![
            edge(EdgeName::WAIST, at(0.0, 0.0), at(200.0, 0.0))?,
            edge(EdgeName::SIDE_SEAM, at(200.0, 0.0), at(0.0, 300.0))?,
            edge(EdgeName::CENTRE_BACK, at(0.0, 300.0), at(0.0, 0.0))?,
        ])?;
        Piece::new(PieceParts {
            name: "front".into(),
            side: None,
            cut: Cut::Single,
            outline,
            darts: vec![],
            grain: [at(60.0, 200.0), at(60.0, 20.0)],
            notches: vec![],
            lines: vec![],
            drill_points: vec![],
            points,
        })
    }

    #[test]
    fn a_named_point_is_found_and_must_be_one_place_on_paper() {
        let bust = |x, y| NamedPoint {
            name: "bust_point".into(),
            at: Point::new(x, y),
        };
        let piece = with_points(vec![bust(90.0, 120.0)]).unwrap();
        assert_eq!(piece.point("bust_point"), Some(Point::new(90.0, 120.0)));
        assert_eq!(piece.point("waist_point"), None);
        let twice = with_points(vec![bust(90.0, 120.0), bust(91.0, 120.0)]);
        assert!(matches!(
            twice,
            Err(PieceError::Twice { kind: "point", .. })
        ));
        for bad in [f64::NAN, f64::INFINITY, 2e5] {
            let lost = with_points(vec![bust(90.0, bad)]);
            assert!(matches!(lost, Err(PieceError::Misplaced { .. })), "{bad}");
        }
    }
}
