//! The blocks, drafted from a wearer's measurements and closed by solving.

mod armscye;
mod block;
mod bodice;
mod ease;
mod error;
mod figure;
mod frame;
mod join;
mod mouth;
mod neckline;
mod shaping;
mod shoulder;
mod side_seam;
mod skirt;
mod trunk;
mod upper_body;
mod waist_plan;
mod waistline;

pub use block::{Block, DraftOptions, draft};
pub use bodice::bodice;
pub use ease::{Ease, Fit};
pub use error::DraftError;
pub use figure::Figure;
pub use skirt::skirt;
pub use upper_body::waist_plan;
pub use waist_plan::WaistPlan;
