//! Measures read off pieces and patterns.

use super::{BodySide, EdgeName, Girth, Measure, MeasureKind, Pattern, Piece, RunAlong};

/// Slope of a piece's shoulder from neck side to shoulder point, darts open, in radians.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, bodice, skirt};
/// use blockwright::piece::shoulder_slope;
/// let (figure, ease) = (Figure::cylinder(900.0), Ease::of(Fit::Regular));
/// let front = bodice(&figure, &ease)?.piece("front").and_then(shoulder_slope);
/// assert!(front.is_some_and(|slope| slope > 0.0));
/// assert_eq!(skirt(&figure, &ease, None)?.piece("front").and_then(shoulder_slope), None);
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[must_use]
pub fn shoulder_slope(piece: &Piece) -> Option<f64> {
    let shoulder = piece.outline().edge(&EdgeName::SHOULDER)?.curve();
    let chord = shoulder.end() - shoulder.start();
    Some(chord.atan2())
}

fn cap_height(piece: &Piece) -> Option<f64> {
    let cap = piece.outline().edge(&EdgeName::SLEEVE_CAP)?;
    Some(cap.curve().bounds().height())
}

/// Whether a piece goes round a limb by itself.
fn is_limb(piece: &Piece) -> bool {
    piece.outline().edge(&EdgeName::SLEEVE_CAP).is_some()
}

/// The sewn width along a balance line of a piece.
fn line_width(piece: &Piece, line: &str) -> Option<f64> {
    Some(piece.sewn_length(&piece.line(line)?.curve))
}

/// The girth along the balance lines of a name; on one side what that side has of it.
fn line_girth(pattern: &Pattern, line: &str, side: Option<BodySide>) -> Option<f64> {
    let lined = || {
        let pieces = pattern.pieces().iter();
        pieces.filter(|p| {
            p.line(line).is_some() && (side.is_none() || p.side().is_none() || p.side() == side)
        })
    };
    if let Some(limb) = lined().find(|p| is_limb(p)) {
        return line_width(limb, line);
    }
    // A line that one side alone has goes round nothing.
    let has = |side: BodySide| lined().any(|p| p.side() == Some(side));
    if lined().next().is_none() || has(BodySide::Left) != has(BodySide::Right) && side.is_none() {
        return None;
    }
    let halves = |piece: &Piece| side.map_or(piece.cut().halves(), |_| 1.0);
    Some(
        lined()
            .filter_map(|p| Some(halves(p) * line_width(p, line)?))
            .sum(),
    )
}

/// Girths along lines that go round the trunk, on back and front, or a limb, where none was asked for.
fn line_girths(pattern: &Pattern) -> Vec<(Measure, f64)> {
    let runs = pattern.girths().iter().flat_map(|girth| &girth.runs);
    let asked: Vec<&RunAlong> = runs.map(|run| &run.along).collect();
    let free = |line: &str| {
        !asked
            .iter()
            .any(|along| matches!(along, RunAlong::Line(name) if name == line))
    };
    let has = |line: &str, centre: &EdgeName| {
        let mut pieces = pattern.pieces().iter();
        pieces.any(|p| p.outline().edge(centre).is_some() && p.line(line).is_some())
    };
    let round =
        |line: &str| has(line, &EdgeName::CENTRE_BACK) && has(line, &EdgeName::CENTRE_FRONT);
    let mut found: Vec<(Measure, f64)> = Vec::new();
    for piece in pattern.pieces() {
        for line in piece.lines().iter().filter(|line| free(&line.name)) {
            let measure = if is_limb(piece) {
                Measure::line_girth(&line.name).maybe_on(piece.side())
            } else if round(&line.name) {
                Measure::line_girth(&line.name)
            } else {
                continue;
            };
            let value = line_girth(pattern, &line.name, measure.side());
            if let Some(value) = value.filter(|_| found.iter().all(|(m, _)| *m != measure)) {
                found.push((measure, value));
            }
        }
    }
    found
}

impl Piece {
    /// Every measure of the piece with its value, in millimetres or degrees: sewn lengths of
    /// edges, intakes and angles of darts, slope of the shoulder, height of the cap.
    ///
    /// ```
    /// use blockwright::draft::{Ease, Figure, Fit, skirt};
    /// use blockwright::piece::{EdgeName, Measure};
    /// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
    /// let hem = Measure::edge_length("back", EdgeName::HEM);
    /// let back = pattern.piece("back").map(|back| back.measures()).unwrap_or_default();
    /// assert!(back.iter().any(|(measure, value)| *measure == hem && *value > 200.0));
    /// # Ok::<(), blockwright::draft::DraftError>(())
    /// ```
    #[must_use]
    pub fn measures(&self) -> Vec<(Measure, f64)> {
        let (name, side) = (self.base_name(), self.side());
        let mut found = Vec::new();
        for edge in self.outline().edges() {
            if let Some(length) = self.seam_length(edge.name()) {
                found.push((Measure::edge_length(name, edge.name().clone()), length));
            }
        }
        for dart in self.darts() {
            let of = dart.name.as_str();
            found.push((Measure::dart_intake(name, of), dart.intake()));
            found.push((
                Measure::dart_angle(name, of),
                self.dart_angle(dart).to_degrees(),
            ));
        }
        if let Some(slope) = shoulder_slope(self) {
            found.push((Measure::shoulder_slope(name), slope.to_degrees()));
        }
        if let Some(height) = cap_height(self) {
            found.push((Measure::cap_height(name), height));
        }
        found
            .into_iter()
            .map(|(measure, value)| (measure.maybe_on(side), value))
            .collect()
    }
}

impl Pattern {
    /// The piece of a side that is called so where both sides are alike: the piece of that side,
    /// or the one that both share. Without a side: the one that both share.
    ///
    /// ```
    /// use blockwright::draft::{Ease, Figure, Fit, skirt};
    /// use blockwright::piece::BodySide;
    /// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
    /// assert_eq!(pattern.piece_on("back", Some(BodySide::Left)), pattern.piece("back"));
    /// # Ok::<(), blockwright::draft::DraftError>(())
    /// ```
    #[must_use]
    pub fn piece_on(&self, base: &str, side: Option<BodySide>) -> Option<&Piece> {
        let find = |side| {
            let mut pieces = self.pieces().iter();
            pieces.find(|p| p.side() == side && p.base_name() == base)
        };
        side.and_then(|side| find(Some(side)))
            .or_else(|| find(None))
    }

    /// As [`piece_on`](Self::piece_on), of girths.
    fn girth_on(&self, base: &str, side: Option<BodySide>) -> Option<&Girth> {
        let find = |side| {
            let mut girths = self.girths().iter();
            girths.find(|g| g.side == side && g.base_name() == base)
        };
        side.and_then(|side| find(Some(side)))
            .or_else(|| find(None))
    }

    /// What one side of the body has of a finished girth, darts closed, in millimetres: half of
    /// a girth of the trunk where both sides are alike, all of a limb's.
    ///
    /// ```
    /// use blockwright::draft::{Ease, Figure, Fit, skirt};
    /// use blockwright::piece::BodySide;
    /// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
    /// let hip = &pattern.girths()[0];
    /// let sides = BodySide::BOTH.map(|side| pattern.finished_on(hip, side));
    /// assert!((sides[0] + sides[1] - pattern.finished(hip)).abs() < 1e-9);
    /// # Ok::<(), blockwright::draft::DraftError>(())
    /// ```
    #[must_use]
    pub fn finished_on(&self, girth: &Girth, side: BodySide) -> f64 {
        let drawn = girth.runs.iter().filter_map(|run| {
            let piece = self.piece(&run.piece)?;
            if piece.side().is_some_and(|of| of != side) {
                return None;
            }
            match &run.along {
                RunAlong::Edge(name) => piece.seam_length(name),
                RunAlong::Line(name) => Some(piece.sewn_length(&piece.line(name)?.curve)),
            }
        });
        drawn.sum()
    }

    /// The value of a measure in millimetres or degrees; none where the pattern has nothing to
    /// measure.
    ///
    /// A measure of one side is read on the piece of that side, or on the one that both share.
    ///
    /// ```
    /// use blockwright::draft::{Ease, Figure, Fit, skirt};
    /// use blockwright::piece::{EdgeName, Measure};
    /// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), Some(600.0))?;
    /// assert!(pattern.measured(&Measure::girth("hip")).is_some_and(|hip| hip > 900.0));
    /// let shoulder = Measure::edge_length("back", EdgeName::SHOULDER);
    /// assert_eq!(pattern.measured(&shoulder), None);
    /// # Ok::<(), blockwright::draft::DraftError>(())
    /// ```
    #[must_use]
    pub fn measured(&self, measure: &Measure) -> Option<f64> {
        let side = measure.side();
        let piece = || self.piece_on(measure.base_piece()?, side);
        let value = match measure.kind() {
            MeasureKind::EdgeLength { edge, .. } => piece()?.seam_length(edge)?,
            MeasureKind::DartIntake { dart, .. } => piece()?.dart(dart)?.intake(),
            MeasureKind::DartAngle { dart, .. } => {
                let piece = piece()?;
                piece.dart_angle(piece.dart(dart)?).to_degrees()
            }
            MeasureKind::ShoulderSlope { .. } => shoulder_slope(piece()?)?.to_degrees(),
            MeasureKind::CapHeight { .. } => cap_height(piece()?)?,
            MeasureKind::FinishedGirth { girth } => {
                let girth = self.girth_on(girth, side)?;
                side.map_or_else(
                    || self.finished(girth),
                    |side| self.finished_on(girth, side),
                )
            }
            MeasureKind::LineGirth { line } => line_girth(self, line, side)?,
        };
        value.is_finite().then_some(value)
    }

    /// Every measure of the pattern with its value: piece by piece, then the girths, then those along
    /// balance lines that go round the body without a girth that was asked for there.
    ///
    /// ```
    /// use blockwright::draft::{Ease, Figure, Fit, skirt};
    /// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
    /// for (measure, value) in pattern.measures() {
    ///     println!("{measure}: {value:.1}{}", measure.unit().symbol());
    /// }
    /// # Ok::<(), blockwright::draft::DraftError>(())
    /// ```
    #[must_use]
    pub fn measures(&self) -> Vec<(Measure, f64)> {
        let mut found: Vec<_> = self.pieces().iter().flat_map(Piece::measures).collect();
        for girth in self.girths() {
            found.push((Measure::of_girth(girth), self.finished(girth)));
        }
        found.extend(line_girths(self));
        found
    }
}
