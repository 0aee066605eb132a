//! The drafts against handbooks and tables that they were not made from.
//!
//! Beside every number stands where it comes from: *read* in the source named, *as transcribed*
//! by somebody who quotes it, *computed from* published data, or a *value from memory*, which
//! is a plausible range and no quotation. Where a draft lies outside a handbook's range the test
//! says so and by how much; its bound then keeps the draft from drifting further.

mod armscye;
mod bust_and_waist;
mod drawn;
mod neck_and_shoulder;
mod size_table;
mod skirt;
mod widths;
