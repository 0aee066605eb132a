//! A sleeve set into a block: the piece, its seams, its girth.

use super::arm_ease::ArmEase;
use super::armscye;
use super::sleeve::sleeve;
use super::sleeve_spec::{Armhole, SleeveSpec};
use super::trunk::{self, Drafted};
use super::{Block, DraftError, DraftOptions, Ease, Figure, SleeveLength};
use crate::piece::{EaseOn, EdgeName, EdgeRef, Girth, Pattern, RunAlong, Seam};

/// How a block's sleeve is set in.
pub(super) struct Set {
    /// By how much the cap is longer than the armscye.
    cap_ease: f64,
    /// Whether a long sleeve is shaped at the elbow.
    fitted: bool,
}

impl Set {
    /// The usual way: 25 to 48 mm of ease for a fitted sleeve (Santa Rosa Junior College, FASH
    /// 60), 0 to 15 for a shirt and 0 to 10 for a soft, low cap (values from memory).
    pub fn of(block: Block) -> Self {
        match block {
            Block::Tunic => Self {
                cap_ease: 12.0,
                fitted: false,
            },
            Block::Shirt => Self {
                cap_ease: 8.0,
                fitted: false,
            },
            _ => Self {
                cap_ease: 28.0,
                fitted: true,
            },
        }
    }
}

/// Adds the sleeve asked for, if any, and makes the pattern.
pub(super) fn set_in(
    block: Drafted,
    figure: &Figure,
    ease: &Ease,
    options: &DraftOptions,
    set: &Set,
) -> Result<Pattern, DraftError> {
    let Drafted {
        pattern: mut parts,
        frame,
    } = block;
    let Some(length) = options.sleeve else {
        return Ok(Pattern::new(parts)?);
    };
    let (back, front) = (armscye::back(&frame)?, armscye::front(&frame)?);
    let armhole = Armhole {
        back: back.curve.length(),
        front: front.curve.length(),
        back_notch: back.width_at,
        front_notch: front.width_at,
    };
    let spec = SleeveSpec {
        length,
        cap_ease: options.cap_ease.unwrap_or(set.cap_ease),
        fitted: set.fitted,
        arm: ArmEase::of(options, ease),
    };
    let drafted = sleeve(figure, ease, &armhole, &spec)?;
    let sleeve = |edge: EdgeName| EdgeRef::new("sleeve", edge);
    parts.pieces.push(drafted.piece);
    parts.seams.push(Seam {
        name: "armscye".to_owned(),
        side: None,
        a: vec![
            EdgeRef::against("back", EdgeName::ARMSCYE),
            EdgeRef::new("front", EdgeName::ARMSCYE),
        ],
        b: vec![sleeve(EdgeName::SLEEVE_CAP)],
        ease: drafted.cap_ease,
        ease_on: (drafted.cap_ease > 0.0).then_some(EaseOn::B),
    });
    parts.seams.push(Seam::plain(
        "sleeve underarm",
        EdgeRef::against("sleeve", EdgeName::new("underarm_back")),
        sleeve(EdgeName::new("underarm_front")),
    ));
    let limb = |name, of, along| Girth {
        limb: true,
        ..trunk::girth(name, of, &["sleeve"], &along)
    };
    parts.girths.push(limb(
        "upper_arm",
        (figure.upper_arm_girth, drafted.arm_ease),
        RunAlong::Line("biceps".to_owned()),
    ));
    if length == SleeveLength::Long {
        parts.girths.push(limb(
            "wrist",
            (figure.wrist_girth, ease.wrist),
            RunAlong::Edge(EdgeName::WRIST),
        ));
    }
    Ok(Pattern::new(parts)?)
}
