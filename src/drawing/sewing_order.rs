//! In which order a pattern is sewn.

use crate::piece::{EdgeName, EdgeRole, Pattern, Seam};
use crate::units::{Length, LengthStyle, Unit, speak};

/// The order in which a pattern is sewn, a step a line, as a block of that kind is sewn by common
/// practice: darts, shoulders, sides, sleeves, waist, openings, hems. Lengths are in the unit.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::drawing::sewing_order;
/// use blockwright::units::Unit;
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let steps = sewing_order(&pattern, Unit::Cm);
/// assert!(steps.iter().any(|step| step.starts_with("Join the side seams")));
/// assert_eq!(steps.last().map(String::as_str), Some("Turn up the hem."));
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[must_use]
pub fn sewing_order(pattern: &Pattern, unit: Unit) -> Vec<String> {
    let mut steps = vec![
        "Mark notches, darts, drill points and the ends of openings on the wrong side of the cloth."
            .to_owned(),
    ];
    let mut seams = Seams::of(pattern);
    steps.extend(darts(pattern));
    let (shoulders, sides) = (seams.take(Kind::Shoulder), seams.take(Kind::Side));
    let (underarms, armscyes) = (seams.take(Kind::Underarm), seams.take(Kind::Armscye));
    let waists = seams.take(Kind::Waist);
    for seam in seams.rest() {
        steps.push(format!("Join {} to {}.", pieces(&seam.a), pieces(&seam.b)));
    }
    if !shoulders.is_empty() {
        steps.push("Join the shoulders.".to_owned());
    }
    let zip = has_zip(pattern);
    if !sides.is_empty() {
        let open = if zip {
            "; leave the left one open between the marks of the zip"
        } else {
            ""
        };
        steps.push(format!("Join the side seams{open}."));
    }
    if !underarms.is_empty() {
        let slit = if has_point(pattern, "wrist_slit_end") {
            "Cut the slits at the wrists to their marks, or leave the seams open as far; join"
        } else {
            "Join"
        };
        steps.push(format!("{slit} the underarm seams of the sleeves."));
    }
    if let Some(seam) = armscyes.first() {
        let ease = Length::from_mm(seam.ease).map(|ease| ease.to_text(LengthStyle::usual(unit)));
        let ease = match ease {
            Ok(ease) if seam.ease > 1.0 => {
                format!("; ease in the {ease} that the cap is longer")
            }
            _ => String::new(),
        };
        steps.push(format!(
            "Set the sleeves in, notch to notch, double ones at the back{ease}."
        ));
    }
    if !waists.is_empty() {
        steps.push("Join bodice and skirt at the waist, side seams and darts meeting.".to_owned());
    }
    steps.extend(zip.then(|| "Put the zip in.".to_owned()));
    let has_neck = edges(pattern).any(|(name, _)| *name == EdgeName::NECKLINE);
    if has_neck {
        let slit = if has_point(pattern, "neck_slit_end") {
            "Cut the neck open along the centre back to its mark; finish slit and neckline."
        } else {
            "Finish the neckline."
        };
        steps.push(slit.to_owned());
    } else if edges(pattern).any(|(name, _)| *name == EdgeName::WAIST) {
        steps.push("Finish the waist.".to_owned());
    }
    let hems = edges(pattern).filter(|(_, role)| *role == EdgeRole::Hem);
    let hems: Vec<&EdgeName> = hems.map(|(name, _)| name).collect();
    let at = |name: EdgeName| hems.iter().any(|hem| **hem == name);
    match (at(EdgeName::HEM), at(EdgeName::WRIST)) {
        (true, true) => steps.push("Turn up the hem and the hems of the sleeves.".to_owned()),
        (true, false) => steps.push("Turn up the hem.".to_owned()),
        (false, true) => steps.push("Turn up the hems of the sleeves.".to_owned()),
        (false, false) => {}
    }
    steps.into_iter().map(|step| speak(&step, unit)).collect()
}

fn darts(pattern: &Pattern) -> Option<String> {
    let of_piece = |piece: &crate::piece::Piece| {
        let names: Vec<&str> = piece
            .darts()
            .iter()
            .map(|dart| dart.name.as_str())
            .collect();
        (!names.is_empty()).then(|| format!("{} {}", piece.name(), names.join(", ")))
    };
    let all: Vec<String> = pattern.pieces().iter().filter_map(of_piece).collect();
    (!all.is_empty()).then(|| {
        let all = all.join("; ");
        format!("Sew the darts and press them as the pieces say: {all}.")
    })
}

fn edges(pattern: &Pattern) -> impl Iterator<Item = (&EdgeName, EdgeRole)> {
    let edges = pattern.pieces().iter().flat_map(|p| p.outline().edges());
    edges.map(|edge| (edge.name(), edge.role()))
}

fn has_zip(pattern: &Pattern) -> bool {
    let mut notches = pattern.pieces().iter().flat_map(|p| p.notches());
    notches.any(|notch| matches!(notch.name.as_str(), "zip top" | "zip end"))
}

fn has_point(pattern: &Pattern, name: &str) -> bool {
    let mut points = pattern.pieces().iter().flat_map(|p| p.points());
    points.any(|point| point.name == name)
}

fn pieces(side: &[crate::piece::EdgeRef]) -> String {
    let names: Vec<&str> = side.iter().map(|edge| edge.piece.as_str()).collect();
    names.join(" and ")
}

/// What a seam joins, by its edges.
#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Shoulder,
    Side,
    Underarm,
    Armscye,
    Waist,
    Other,
}

impl Kind {
    fn of(seam: &Seam) -> Self {
        let all = |name: EdgeName| seam.a.iter().chain(&seam.b).all(|e| e.edge == name);
        let any = |name: &str| {
            let mut edges = seam.a.iter().chain(&seam.b);
            edges.any(|e| e.edge.as_str().starts_with(name))
        };
        if all(EdgeName::SHOULDER) {
            Self::Shoulder
        } else if all(EdgeName::SIDE_SEAM) {
            Self::Side
        } else if all(EdgeName::WAIST) {
            Self::Waist
        } else if any("sleeve_cap") {
            Self::Armscye
        } else if any("underarm") {
            Self::Underarm
        } else {
            Self::Other
        }
    }
}

/// The seams that are still to be sewn.
struct Seams<'a>(Vec<(Kind, &'a Seam)>);

impl<'a> Seams<'a> {
    fn of(pattern: &'a Pattern) -> Self {
        let seams = pattern.seams().iter();
        Self(seams.map(|seam| (Kind::of(seam), seam)).collect())
    }

    fn take(&mut self, kind: Kind) -> Vec<&'a Seam> {
        let taken = self.0.iter().filter(|(of, _)| *of == kind);
        let taken = taken.map(|(_, seam)| *seam).collect();
        self.0.retain(|(of, _)| *of != kind);
        taken
    }

    fn rest(&self) -> impl Iterator<Item = &'a Seam> {
        self.0.iter().map(|(_, seam)| *seam)
    }
}
