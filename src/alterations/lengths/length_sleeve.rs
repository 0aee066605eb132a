//! A parallel spread of the sleeve.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::cutting::stations::{Station, move_edge, moved_at};
use crate::alterations::sleeves::sleeve_seams::SleeveSeams;
use crate::alterations::sleeves::wrist::reshaped;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, Rigid, Vec2};
use crate::piece::{Apexes, EdgeName, Piece};

/// The balance lines below the biceps line.
const BELOW_BICEPS: [&str; 2] = ["elbow", "forearm"];

/// Largest share of the seam between biceps and elbow (or wrist) that a tuck may take.
const MOST_TUCK: f64 = 0.5;

/// Rounds in which the wrist is brought back to its length: each takes what the last one left.
const WRIST_ROUNDS: usize = 4;

/// Spreads a sleeve below its biceps line, down to the elbow line where it has one.
pub(in crate::alterations) fn sleeve_longer(
    piece: &Piece,
    amount: f64,
) -> Result<Piece, AlterationError> {
    let (front, back) = (
        EdgeName::new("underarm_front"),
        EdgeName::new("underarm_back"),
    );
    let down = Vec2::new(0.0, amount);
    let mut sketch = Sketch::of(piece);
    let (front_seam, back_seam) = (sketch.curve(&front)?.clone(), sketch.curve(&back)?.clone());
    let elbow = piece.line("elbow").map(|l| l.curve.end());
    let front_to = elbow.map_or(front_seam.length(), |p| front_seam.nearest(p).1);
    // Walked up from the wrist: what lies below the spread goes down whole, its dart with it.
    let back_from = piece
        .mouths(&back)
        .iter()
        .map(|(_, _, to)| *to)
        .fold(0.0, f64::max);
    at_most(
        amount,
        (-MOST_TUCK * front_to, f64::INFINITY),
        "mm",
        "a tuck takes no more than half of the seam above the elbow",
    )?;
    let below = back_seam.moved(&Rigid::shift(down));
    let end = back_seam.length();
    let stations = [
        Station::new(back_from, Vec2::ZERO),
        Station::new(end, -down),
    ];
    let moved_back = moved_at(&below, &stations)?;
    let longer = moved_back.length() - end;
    // The front follows; what its stretch misses of the back's is taken at the wrist.
    let along = front_seam.end_direction();
    let stations = |slip: f64| {
        [
            Station::new(0.0, Vec2::ZERO),
            Station::new(front_to, down),
            Station::new(front_seam.length(), down + along * slip),
        ]
    };
    let stretched = moved_at(&front_seam, &stations(0.0))?.length() - front_seam.length();
    let slip = if elbow.is_some() {
        longer - stretched
    } else {
        0.0
    };
    // The wrist turns with that, and gives way at its front end until it is as wide as before.
    let wrist = sketch.curve(&EdgeName::WRIST)?.clone();
    let across = -wrist.start_direction();
    let wrist_stations = |give: f64| {
        [
            Station::new(0.0, down + along * slip + across * give),
            Station::new(wrist.length(), down),
        ]
    };
    let mut give = 0.0;
    for _ in 0..WRIST_ROUNDS {
        give += wrist.length() - moved_at(&wrist, &wrist_stations(give))?.length();
    }
    let mut front_stations = stations(slip);
    front_stations[2] = Station::new(front_seam.length(), down + along * slip + across * give);
    move_edge(&mut sketch, piece, &front, &front_stations)?;
    for notch in &mut sketch.parts_mut().notches {
        if notch.edge == back && notch.at > back_from {
            notch.at += longer * (notch.at - back_from) / (end - back_from);
        }
    }
    sketch.replace(&back, moved_back)?;
    move_edge(&mut sketch, piece, &EdgeName::WRIST, &wrist_stations(give))?;
    for dart in sketch.darts_mut() {
        if dart.edge.as_ref() == Some(&back) {
            dart.legs = dart.legs.map(|p| p + down);
            dart.apexes = match dart.apexes {
                Apexes::One(a) => Apexes::One(a + down),
                Apexes::Two(a, b) => Apexes::Two(a + down, b + down),
            };
        }
    }
    for line in sketch
        .lines_mut()
        .iter_mut()
        .filter(|l| BELOW_BICEPS.contains(&l.name.as_str()))
    {
        line.curve = line.curve.moved(&Rigid::shift(down));
    }
    sketch.parts_mut().grain[0].y += amount;
    let longer = sketch.finish()?;
    if elbow.is_some() {
        return Ok(longer);
    }
    // Seams that bend unlike, as on a turned sleeve, get longer by different lengths.
    let mut sketch = Sketch::of(&longer);
    let seams = SleeveSeams::of(&longer)?.matched(0.0)?;
    seams.put(&mut sketch)?;
    sketch.finish()
}

/// Spreads a sleeve between its elbow line, or the dart there, and its wrist.
pub(in crate::alterations) fn forearm_longer(
    piece: &Piece,
    amount: f64,
) -> Result<Piece, AlterationError> {
    let (front, back) = (
        EdgeName::new("underarm_front"),
        EdgeName::new("underarm_back"),
    );
    let mut sketch = Sketch::of(piece);
    let wrist = sketch.curve(&EdgeName::WRIST)?.clone();
    let front_seam = sketch.curve(&front)?.clone();
    // Both are walked from the elbow down to the wrist.
    let back_seam = sketch.curve(&back)?.reversed();
    let elbow = piece.line("elbow").map(|l| l.curve.end());
    let front_from = elbow.map_or(0.0, |p| front_seam.nearest(p).1);
    let mouths = piece.mouths(&back);
    let above = mouths.iter().map(|(_, from, _)| back_seam.length() - *from);
    let back_from = above.fold(elbow.map_or(0.0, |p| back_seam.nearest(p).1), f64::max);
    at_most(
        amount,
        (
            -MOST_TUCK * (front_seam.length() - front_from),
            f64::INFINITY,
        ),
        "mm",
        "a tuck takes no more than half of the seam below the elbow",
    )?;
    let down = Vec2::new(0.0, amount);
    let moved = |seam: &Curve, from: f64, by: Vec2| {
        let ends = [
            Station::new(from, Vec2::ZERO),
            Station::new(seam.length(), by),
        ];
        moved_at(seam, &ends)
    };
    let hind = moved(&back_seam, back_from, down)?;
    let longer = hind.length() - back_seam.length();
    // The wrist gives way at its front end: down until both seams are of one length, and across
    // until it is as wide as before.
    let (mut slip, mut give) = (0.0, 0.0);
    let along = front_seam.end_direction();
    let across = -wrist.start_direction();
    let front_by = |slip: f64, give: f64| down + along * slip + across * give;
    let wrist_ends = |by: Vec2| [Station::new(0.0, by), Station::new(wrist.length(), down)];
    for _ in 0..2 * WRIST_ROUNDS {
        let fore = moved(&front_seam, front_from, front_by(slip, give))?;
        slip += longer - (fore.length() - front_seam.length());
        let by = front_by(slip, give);
        give += wrist.length() - moved_at(&wrist, &wrist_ends(by))?.length();
    }
    let by = front_by(slip, give);
    for notch in &mut sketch.parts_mut().notches {
        // Walked up from the wrist: what lies above the spread moves along by what is longer.
        let below = back_seam.length() - back_from;
        if notch.edge == back {
            notch.at += longer * (notch.at / below).min(1.0);
        }
    }
    let front_stations = [
        Station::new(front_from, Vec2::ZERO),
        Station::new(front_seam.length(), by),
    ];
    move_edge(&mut sketch, piece, &front, &front_stations)?;
    sketch.replace(&back, reshaped(piece, &hind.reversed())?)?;
    move_edge(&mut sketch, piece, &EdgeName::WRIST, &wrist_ends(by))?;
    sketch.parts_mut().grain[0].y += amount;
    sketch.finish()
}
