//! The measurements a draft works from, as plain numbers.

use super::DraftError;
use super::error::check_numbers;
use super::neckline::front_depths;
use crate::geometry::Span;
use crate::measurements::{Body, Measurement, Source};

/// A figure: every length a draft needs, in millimetres, and the shoulder slope in radians.
///
/// Unlike a body it does not know what was taken and what was estimated; a figure may also be
/// a cylinder or a cone.
///
/// ```
/// use blockwright::draft::Figure;
/// let tube = Figure::cylinder(900.0);
/// assert_eq!(tube.bust_girth, tube.hip_girth);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[allow(missing_docs)] // Each field is the measurement of that name.
pub struct Figure {
    pub bust_girth: f64,
    pub upper_chest_girth: f64,
    pub underbust_girth: f64,
    pub waist_girth: f64,
    pub hip_girth: f64,
    pub neck_base_girth: f64,
    pub shoulder_length: f64,
    pub shoulder_slope: f64,
    pub back_width: f64,
    pub front_width: f64,
    /// Whether the front width was measured: then it is kept, while an estimated one follows the
    /// shoulder where that juts out far over it.
    pub front_width_taken: bool,
    pub bust_point_width: f64,
    pub neck_to_bust_point: f64,
    pub scye_depth: f64,
    pub back_waist_length: f64,
    pub front_waist_length: f64,
    /// Depth of the front neck below the neck side point, where a centre front length sets it;
    /// otherwise it follows from the width of the neck.
    pub front_neck_depth: Option<f64>,
    pub waist_to_hip: f64,
    pub waist_to_knee: f64,
    pub upper_arm_girth: f64,
    pub elbow_girth: f64,
    pub wrist_girth: f64,
    pub arm_length: f64,
    pub head_girth: f64,
    pub hand_girth: f64,
}

impl Figure {
    /// A figure whose trunk is a cylinder of that girth: no bust, no waist, front and back
    /// equally long. Neck, shoulder and arm are those of the survey's mean woman.
    #[must_use]
    pub fn cylinder(girth: f64) -> Self {
        let neck_base_girth = 346.0;
        Self {
            bust_girth: girth,
            upper_chest_girth: girth,
            underbust_girth: girth,
            waist_girth: girth,
            hip_girth: girth,
            neck_base_girth,
            shoulder_length: 124.0,
            shoulder_slope: 25.7_f64.to_radians(),
            back_width: 352.0,
            front_width: 328.0,
            front_width_taken: false,
            bust_point_width: 185.0,
            neck_to_bust_point: 268.0,
            scye_depth: 185.0,
            back_waist_length: 366.0,
            // Longer than the back by the height of the back neck alone.
            front_waist_length: 366.0 + super::neckline::back_rise(neck_base_girth),
            front_neck_depth: None,
            waist_to_hip: 218.0,
            waist_to_knee: 597.0,
            upper_arm_girth: 291.0,
            elbow_girth: 238.0,
            wrist_girth: 151.0,
            arm_length: 547.0,
            head_girth: 546.0,
            hand_girth: 186.0,
        }
    }
}

impl Figure {
    /// Refuses a figure with a measurement that is not a number above nothing.
    pub(super) fn check(&self) -> Result<(), DraftError> {
        check_numbers(
            true,
            [
                ("bust_girth", self.bust_girth),
                ("upper_chest_girth", self.upper_chest_girth),
                ("underbust_girth", self.underbust_girth),
                ("waist_girth", self.waist_girth),
                ("hip_girth", self.hip_girth),
                ("neck_base_girth", self.neck_base_girth),
                ("shoulder_length", self.shoulder_length),
                ("shoulder_slope", self.shoulder_slope),
                ("back_width", self.back_width),
                ("front_width", self.front_width),
                ("bust_point_width", self.bust_point_width),
                ("neck_to_bust_point", self.neck_to_bust_point),
                ("scye_depth", self.scye_depth),
                ("back_waist_length", self.back_waist_length),
                ("front_waist_length", self.front_waist_length),
                ("front_neck_depth", self.front_neck_depth.unwrap_or(1.0)),
                ("waist_to_hip", self.waist_to_hip),
                ("waist_to_knee", self.waist_to_knee),
                ("upper_arm_girth", self.upper_arm_girth),
                ("elbow_girth", self.elbow_girth),
                ("wrist_girth", self.wrist_girth),
                ("arm_length", self.arm_length),
                ("head_girth", self.head_girth),
                ("hand_girth", self.hand_girth),
            ],
        )
    }
}

/// Depths that a front neck can have, in millimetres: 70 to 85 usually (value from memory), and
/// ten more or less for what two tapes disagree by.
const NECK_DEPTHS: (f64, f64) = (60.0, 95.0);

/// The depth that follows from the neck's girth is right within so many millimetres (an assumption).
const NECK_DEPTH_SPREAD: f64 = 8.0;

impl Figure {
    /// Fits the front to a measured centre front: what the front from the neck side point is longer is
    /// the depth of the neck, from 60 to 95 mm and never more than half as deep again as wide; beyond
    /// that the neck side point moves up or down, and with it the balance of front and back.
    ///
    /// An estimated front is as wrong as its spread says, and the depth that follows from the neck's
    /// girth within its own: what the two miss the centre front by is shared between them.
    fn set_centre_front(&mut self, centre_front: f64, spread: f64) {
        let left = self.front_waist_length - centre_front;
        let (usual, deepest) = front_depths(self.neck_base_girth).unwrap_or((left, NECK_DEPTHS.1));
        let squares = (NECK_DEPTH_SPREAD * NECK_DEPTH_SPREAD, spread * spread);
        let likely = left + (usual - left) * squares.1 / (squares.0 + squares.1);
        let most = NECK_DEPTHS.1.min(deepest).max(NECK_DEPTHS.0);
        let depth = Span::from_low(NECK_DEPTHS.0, most).nearest(likely);
        self.front_neck_depth = Some(depth);
        self.front_waist_length = centre_front + depth;
    }
}

impl From<&Body> for Figure {
    fn from(body: &Body) -> Self {
        let v = |measurement| body.value(measurement);
        let mut figure = Self {
            bust_girth: v(Measurement::BustGirth),
            upper_chest_girth: v(Measurement::UpperChestGirth),
            underbust_girth: v(Measurement::UnderbustGirth),
            waist_girth: v(Measurement::WaistGirth),
            hip_girth: v(Measurement::HipGirth),
            neck_base_girth: v(Measurement::NeckBaseGirth),
            shoulder_length: v(Measurement::ShoulderLength),
            shoulder_slope: v(Measurement::ShoulderSlope),
            back_width: v(Measurement::BackWidth),
            front_width: v(Measurement::FrontWidth),
            front_width_taken: body.is_taken(Measurement::FrontWidth),
            bust_point_width: v(Measurement::BustPointWidth),
            neck_to_bust_point: v(Measurement::NeckToBustPoint),
            scye_depth: v(Measurement::ScyeDepth),
            back_waist_length: v(Measurement::BackWaistLength),
            front_waist_length: v(Measurement::FrontWaistLength),
            front_neck_depth: None,
            waist_to_hip: v(Measurement::WaistToHip),
            waist_to_knee: v(Measurement::WaistToKnee),
            upper_arm_girth: v(Measurement::UpperArmGirth),
            elbow_girth: v(Measurement::ElbowGirth),
            wrist_girth: v(Measurement::WristGirth),
            arm_length: v(Measurement::ArmLength),
            head_girth: v(Measurement::HeadGirth),
            hand_girth: v(Measurement::HandGirth),
        };
        if let Some(centre) = body
            .get(Measurement::CentreFrontWaistLength)
            .filter(|c| c.source.is_taken())
        {
            let front = body.get(Measurement::FrontWaistLength);
            let spread = front.map_or(0.0, |front| match front.source {
                Source::Estimated { spread } => spread,
                _ => 0.0,
            });
            figure.set_centre_front(centre.value, spread);
        }
        figure
    }
}
