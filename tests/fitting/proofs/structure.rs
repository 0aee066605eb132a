//! Named parts survive unless an alteration declares what it removes or adds.

use super::{Rogue, drafted};
use blockwright::alterations::{
    Alteration, CATALOGUE, OneSided, Part, Reason, ShoulderSlope, StructureChange, Undeclared,
    alter,
};
use blockwright::draft::Block;
use blockwright::geometry::Point;
use blockwright::piece::{
    BodySide, Cut, EdgeName, EdgeRef, Measure, NamedPoint, Pattern, PatternParts, Piece,
};

fn on_pieces(parts: &mut PatternParts, change: impl Fn(&mut blockwright::piece::PieceParts)) {
    for piece in &mut parts.pieces {
        let mut own = piece.clone().into_parts();
        change(&mut own);
        *piece = Piece::new(own).unwrap();
    }
}

fn empty(parts: &mut PatternParts) {
    parts.pieces.clear();
    parts.seams.clear();
    parts.girths.clear();
}

fn no_sleeve(parts: &mut PatternParts) {
    let sleeve = |e: &EdgeRef| e.piece == "sleeve";
    parts.pieces.retain(|p| p.name() != "sleeve");
    parts.seams.retain(|s| !s.a.iter().chain(&s.b).any(sleeve));
    parts.girths.retain(|g| !g.limb);
}

fn one_sleeve(parts: &mut PatternParts) {
    on_pieces(parts, |piece| {
        if piece.name == "sleeve" {
            piece.cut = Cut::Single;
        }
    });
}

fn no_shoulder_seam(parts: &mut PatternParts) {
    parts.seams.retain(|s| s.name != "shoulder");
}

fn no_bust(parts: &mut PatternParts) {
    parts.girths.retain(|g| g.name != "bust");
}

fn renamed(parts: &mut PatternParts) {
    on_pieces(parts, |piece| {
        if piece.name == "back" {
            piece.name = "rear".into();
        }
    });
    for edge in parts
        .seams
        .iter_mut()
        .flat_map(|s| s.a.iter_mut().chain(&mut s.b))
    {
        if edge.piece == "back" {
            edge.piece = "rear".into();
        }
    }
    for run in parts.girths.iter_mut().flat_map(|g| &mut g.runs) {
        if run.piece == "back" {
            run.piece = "rear".into();
        }
    }
}

fn no_notches(parts: &mut PatternParts) {
    on_pieces(parts, |piece| {
        piece.notches.retain(|n| n.edge != EdgeName::SIDE_SEAM)
    });
}

fn no_lines(parts: &mut PatternParts) {
    on_pieces(parts, |piece| piece.lines.retain(|l| l.name != "elbow"));
}

fn no_points(parts: &mut PatternParts) {
    on_pieces(parts, |piece| piece.points.clear());
}

fn apron(parts: &mut PatternParts) {
    let mut own = parts.pieces[0].clone().into_parts();
    own.name = "apron".into();
    parts.pieces.push(Piece::new(own).unwrap());
}

fn other_seam(parts: &mut PatternParts) {
    for seam in &mut parts.seams {
        if seam.name == "shoulder" {
            seam.a = vec![EdgeRef::new("back", EdgeName::ARMSCYE)];
            seam.b = vec![EdgeRef::new("back", EdgeName::ARMSCYE)];
        }
    }
}

fn undeclared(pattern: &Pattern, change: fn(&mut PatternParts)) -> String {
    match Rogue::that(change).refused(pattern) {
        Reason::Structure(undeclared) => undeclared.to_string(),
        other => panic!("refused for another reason: {other}"),
    }
}

/// What is done to a pattern, and what the refusal says of it.
type Case = (fn(&mut PatternParts), &'static str);

#[test]
fn what_is_lost_or_added_is_named() {
    let mut parts = drafted(Block::Dress).into_parts();
    on_pieces(&mut parts, |piece| {
        piece.points.push(NamedPoint {
            name: "pocket".into(),
            at: Point::new(80.0, 300.0),
        });
    });
    let pattern = Pattern::new(parts).unwrap();
    let cases: [Case; 11] = [
        (empty, "removes the piece back"),
        (no_sleeve, "removes the piece sleeve"),
        (no_shoulder_seam, "removes the seam shoulder"),
        (no_bust, "removes the girth bust"),
        (renamed, "removes the piece back"),
        (no_notches, "notch of the back"),
        (no_lines, "removes the elbow line of the sleeve"),
        (no_points, "of the back"),
        (
            one_sleeve,
            "removes the instruction `cut 2, a pair` of the sleeve",
        ),
        (apron, "adds the piece apron"),
        (other_seam, "removes the back shoulder in the seam shoulder"),
    ];
    for (change, expected) in cases {
        let said = undeclared(&pattern, change);
        assert!(
            said.contains(expected),
            "{said:?} does not say {expected:?}"
        );
        assert!(said.ends_with("without declaring so"), "{said}");
    }
}

#[test]
fn what_is_declared_may_go_and_come() {
    let pattern = drafted(Block::Dress);
    let without = Rogue::that(no_sleeve).declaring(
        ["armscye", "sleeve underarm"]
            .into_iter()
            .fold(StructureChange::none(), |c, name| {
                c.removes(Part::seam(name))
            })
            .removes(Part::piece("sleeve"))
            .removes(Part::Girth("upper_arm".into()))
            .removes(Part::Girth("wrist".into())),
    );
    let done = alter(&pattern, &[Box::new(without)]).unwrap();
    assert!(done.pattern.piece("sleeve").is_none());
    // What was there is reported as gone, what comes as new.
    let changes = &done.accounts[0].changes;
    let cap = Measure::cap_height("sleeve");
    let gone = changes.iter().find(|c| c.measure == cap).unwrap();
    assert!(gone.before.is_some() && gone.after.is_none() && gone.difference().is_none());

    let with = StructureChange::none().adds(Part::piece("apron"));
    let done = alter(&pattern, &[Box::new(Rogue::that(apron).declaring(with))]).unwrap();
    let hem = Measure::edge_length("apron", EdgeName::HEM);
    let new = done.accounts[0].changes.iter().find(|c| c.measure == hem);
    assert!(new.is_some_and(|c| c.before.is_none() && c.after.is_some()));
}

#[test]
fn each_side_keeps_its_own() {
    let pattern = drafted(Block::Dress);
    let lower: Box<dyn Alteration> = Box::new(OneSided::new(
        BodySide::Left,
        Box::new(ShoulderSlope::by(3.0)),
    ));
    let unlike = alter(&pattern, &[lower]).unwrap().pattern;
    assert!(unlike.piece("back left").is_some());
    let said = undeclared(&unlike, no_notches);
    assert!(said.contains("of the back on the left"), "{said}");
    // On one side only.
    let one_sided = OneSided::new(BodySide::Right, Box::new(Rogue::that(no_shoulder_seam)));
    let refused = alter(&pattern, &[Box::new(one_sided)]).unwrap_err();
    let expected = Undeclared::Removed {
        part: Part::seam("shoulder"),
        side: Some(BodySide::Right),
    };
    assert_eq!(refused.reason, Reason::Structure(expected));
}

/// A piece is of one side because it says so, not because its name ends in a word.
#[test]
fn a_name_makes_no_side() {
    let mut parts = drafted(Block::Skirt).into_parts();
    let of = |name: &str| format!("{name} left");
    on_pieces(&mut parts, |piece| piece.name = of(&piece.name));
    for edge in parts
        .seams
        .iter_mut()
        .flat_map(|s| s.a.iter_mut().chain(&mut s.b))
    {
        edge.piece = of(&edge.piece);
    }
    for run in parts.girths.iter_mut().flat_map(|g| &mut g.runs) {
        run.piece = of(&run.piece);
    }
    let pattern = Pattern::new(parts).unwrap();
    let seat = CATALOGUE.iter().find(|e| e.name == "seat").unwrap();
    let done = alter(&pattern, &[(seat.example)()]).unwrap();
    let centre = Measure::edge_length("back left", EdgeName::CENTRE_BACK);
    let change = done.accounts[0]
        .changes
        .iter()
        .find(|c| c.measure == centre);
    assert!(change.is_some_and(|c| (c.difference().unwrap() - 12.0).abs() < 0.01));
    assert!(done.pattern.pieces().iter().all(|p| p.side().is_none()));
    // And what says so must be named so.
    let mut parts = done.pattern.into_parts();
    let mut own = parts.pieces[0].clone().into_parts();
    own.side = Some(BodySide::Right);
    assert!(Piece::new(own).is_err());
    parts.seams[0].side = Some(BodySide::Right);
    assert!(Pattern::new(parts).is_err());
}
