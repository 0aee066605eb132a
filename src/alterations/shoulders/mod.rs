//! Shoulders, and what lies round neck and arm: slope, width, blade, neckline, armscye.

pub(super) mod aimed_shoulder;
pub(super) mod armscye_depth;
pub(super) mod armscye_gape;
pub(super) mod back_neck_gape;
pub(super) mod blade_eased;
pub(super) mod forward_shoulder;
pub(super) mod neckline_depth;
pub(super) mod neckline_gape;
pub(super) mod neckline_width;
pub(super) mod shoulder_blade;
pub(super) mod shoulder_drop;
pub(super) mod shoulder_line;
pub(super) mod shoulder_slope_change;
pub(super) mod shoulder_swing;
pub(super) mod shoulder_turn;
pub(super) mod shoulder_width;
