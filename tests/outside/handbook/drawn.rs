//! The handbook bodies, and what a draughtswoman would read off a draft with her ruler.

use crate::support::bodies::body_with;
use blockwright::draft::{Block, DraftOptions, Ease, Fit, draft};
use blockwright::geometry::Vec2;
use blockwright::measurements::{Body, Measurement as M};
use blockwright::piece::{Dart, EdgeName, Pattern, Piece};

/// A body of the handbooks: four girths and what else its column says.
pub fn body(height: f64, bust: f64, waist: f64, hip: f64, others: &[(M, f64)]) -> Body {
    body_with([height, bust, waist, hip], others)
}

pub fn pattern(block: Block, body: &Body, fit: Fit) -> Pattern {
    draft(body, &DraftOptions::fitting(block, fit)).expect("a handbook body is drafted")
}

/// Fails unless the value lies in `low..=high`.
#[track_caller]
pub fn between(what: &str, found: f64, low: f64, high: f64) {
    assert!(
        (low..=high).contains(&found),
        "{what} is {found:.2}, expected {low:.2} to {high:.2}"
    );
}

fn piece<'a>(pattern: &'a Pattern, name: &str) -> &'a Piece {
    pattern.piece(name).expect("the piece is there")
}

fn curve<'a>(piece: &'a Piece, edge: &EdgeName) -> &'a blockwright::geometry::Curve {
    piece
        .outline()
        .edge(edge)
        .expect("the edge is there")
        .curve()
}

fn intake(dart: Option<&Dart>) -> f64 {
    dart.map_or(0.0, Dart::intake)
}

/// Length of a dart from the middle between its leg ends to its tip.
pub fn dart_length(dart: &Dart) -> f64 {
    dart.legs[0].midpoint(dart.legs[1]).distance(dart.apex())
}

/// Fall of a chord, in degrees.
fn fall(chord: Vec2) -> f64 {
    chord.y.atan2(chord.x).to_degrees()
}

/// Readings from a bodice, in millimetres and degrees, all on the half.
#[derive(Debug)]
pub struct Bodice {
    pub back_neck_width: f64,
    pub back_neck_depth: f64,
    pub front_neck_width: f64,
    pub front_neck_depth: f64,
    pub neckline: f64,
    pub scye_level: f64,
    pub half_width: f64,
    pub back_width: f64,
    pub front_width: f64,
    /// From neck side point to shoulder point, the dart open.
    pub back_slope: f64,
    pub front_slope: f64,
    pub back_shoulder_open: f64,
    pub front_shoulder: f64,
    pub shoulder_dart: f64,
    pub shoulder_dart_length: f64,
    pub shoulder_dart_tip_inward: f64,
    pub bust_dart_angle: f64,
    pub back_dart: f64,
    pub front_dart: f64,
    pub side: f64,
    /// How far the tip of the waist dart lies below the scye line (back), the bust dart (front).
    pub back_dart_below_scye: f64,
    pub front_dart_below_bust: f64,
    pub armscye: f64,
    pub front_rise: f64,
}

impl Bodice {
    pub fn of(body: &Body, fit: Fit) -> Self {
        let pattern = pattern(Block::Bodice, body, fit);
        let (back, front) = (piece(&pattern, "back"), piece(&pattern, "front"));
        let (back_neck, front_neck) = (
            curve(back, &EdgeName::NECKLINE),
            curve(front, &EdgeName::NECKLINE),
        );
        let (back_shoulder, front_shoulder) = (
            curve(back, &EdgeName::SHOULDER),
            curve(front, &EdgeName::SHOULDER),
        );
        let side = curve(back, &EdgeName::SIDE_SEAM);
        let shoulder_dart = back.dart("shoulder").expect("a shoulder dart");
        let bust = front.dart("bust");
        let tip = bust.map_or(f64::NAN, |d| d.apex().y);
        let armscye = |p: &Piece| curve(p, &EdgeName::ARMSCYE).length();
        let width = |p: &Piece| p.line("width").expect("a width line").curve.end().x;
        let underarm = |p: &Piece| {
            let line = p.line("underarm").expect("an underarm line");
            p.sewn_length(&line.curve)
        };
        let across = back_shoulder.end() - back_shoulder.start();
        Self {
            back_neck_width: back_neck.end().x,
            back_neck_depth: back_neck.start().y - back_neck.end().y,
            front_neck_width: front_neck.end().x,
            front_neck_depth: front_neck.start().y - front_neck.end().y,
            neckline: back_neck.length() + front_neck.length(),
            scye_level: side.start().y - back_neck.start().y,
            half_width: underarm(back) + underarm(front),
            back_width: width(back),
            front_width: width(front),
            back_slope: fall(across),
            front_slope: fall(front_shoulder.end() - front_shoulder.start()),
            back_shoulder_open: across.hypot(),
            front_shoulder: front_shoulder.length(),
            shoulder_dart: shoulder_dart.intake(),
            shoulder_dart_length: dart_length(shoulder_dart),
            shoulder_dart_tip_inward: shoulder_dart.legs[0].x - shoulder_dart.apex().x,
            bust_dart_angle: bust.map_or(0.0, |d| d.angle().to_degrees()),
            back_dart: intake(back.dart("waist")),
            front_dart: intake(front.dart("waist")),
            side: side.start().x - side.end().x,
            back_dart_below_scye: back
                .dart("waist")
                .map_or(f64::NAN, |d| d.apex().y - side.start().y),
            front_dart_below_bust: front.dart("waist").map_or(f64::NAN, |d| d.apex().y - tip),
            armscye: armscye(back) + armscye(front),
            front_rise: side.start().y - front_neck.end().y,
        }
    }
}

/// Readings from one quarter of a skirt.
#[derive(Debug)]
pub struct SkirtPanel {
    pub hip: f64,
    pub hip_level: f64,
    /// Of the waist at the side above the natural waist, and of the fold below it.
    pub raised: f64,
    pub lowered: f64,
    pub waist_sewn: f64,
    /// Intake and length of each dart, from the fold outward.
    pub darts: Vec<(f64, f64)>,
    pub side: f64,
}

/// Back and front of a skirt.
pub fn skirt_panels(body: &Body, ease: Ease) -> [SkirtPanel; 2] {
    let mut options = DraftOptions::of(Block::Skirt);
    options.ease = ease;
    let pattern = draft(body, &options).expect("a handbook body is drafted");
    ["back", "front"].map(|name| {
        let p = piece(&pattern, name);
        let (waist, hip) = (
            curve(p, &EdgeName::WAIST),
            &p.line("hip").expect("a hip line").curve,
        );
        let mut darts: Vec<&Dart> = p.darts().iter().collect();
        darts.sort_by(|a, b| a.apex().x.total_cmp(&b.apex().x));
        SkirtPanel {
            hip: hip.length(),
            hip_level: hip.start().y,
            raised: -waist.end().y,
            lowered: waist.start().y,
            waist_sewn: p.seam_length(&EdgeName::WAIST).expect("a waist"),
            darts: darts.iter().map(|d| (d.intake(), dart_length(d))).collect(),
            side: hip.length() - waist.end().x,
        }
    })
}

/// Bust 840, 880 or 1000 as the handbooks have them.
///
/// The column for bust 88 of Aldrich, *Metric Pattern Cutting*, as transcribed on a personal page
/// (angelfire.com/empire/radhika): nape to waist 40, waist to hip 20.6, neck 37, shoulder 12.25,
/// back width 34.4, chest 32.4. The other columns by its steps for 4 cm of bust (values from
/// memory): nape to waist 5, waist to hip 3, neck 10, shoulder 2.5, back width 10, chest 12, top
/// arm 12 from 284. Waists 66, 72, 84 are those with which the Bunka formulas were worked out
/// (computed); hips 92, 96, 108 of the scale of EN 13402-3 and height 1640 are values from memory.
pub fn handbook(bust: f64) -> Body {
    let steps = (bust - 880.0) / 40.0;
    let (waist, hip) = match steps as i32 {
        -1 => (660.0, 920.0),
        0 => (720.0, 960.0),
        _ => (840.0, 1080.0),
    };
    let taken = [
        (M::NeckBaseGirth, 370.0 + 10.0 * steps),
        (M::ShoulderLength, 122.5 + 2.5 * steps),
        (M::BackWidth, 344.0 + 10.0 * steps),
        (M::FrontWidth, 324.0 + 12.0 * steps),
        (M::BackWaistLength, 400.0 + 5.0 * steps),
        (M::WaistToHip, 206.0 + 3.0 * steps),
        (M::UpperArmGirth, 284.0 + 12.0 * steps),
        // No handbook column: the mean of the 1988 U.S. Army survey (computed). Left to be
        // estimated it would follow the necks of the column, which are 10 to 30 mm above those
        // of bodies (computed) and would slope the shoulders by one to three degrees more.
        (M::ShoulderSlope, 25.7_f64.to_radians()),
    ];
    body(1640.0, bust, waist, hip, &taken)
}

pub const BUSTS: [f64; 3] = [840.0, 880.0, 1000.0];

/// The bodies above without anything but their girths and height: what a draft makes of a
/// handbook size when all else is estimated.
pub fn girths_only(bust: f64) -> Body {
    let full = handbook(bust);
    let [height, bust, waist, hip] = M::REQUIRED.map(|m| full.value(m));
    body(height, bust, waist, hip, &[])
}
