//! The cutter's verbs: slash the paper into panels, hinge and move them, redraw an edge, true it up.

pub(super) mod armscye_line;
pub(super) mod led;
pub(super) mod notch_clear;
pub(super) mod one_way;
pub(super) mod paper;
pub(super) mod quarter;
pub(super) mod refit;
pub(super) mod shared_lean;
pub(super) mod side_let_out;
pub(super) mod side_moves;
pub(super) mod sketch;
pub(super) mod slowing;
pub(super) mod stations;
pub(super) mod true_up;
pub(super) mod underarm_line;
pub(super) mod upper_half;
pub(super) mod wedge;
