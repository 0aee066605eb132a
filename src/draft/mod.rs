//! The blocks, drafted from a wearer's measurements and closed by solving.

mod armscye;
mod bodice;
mod bust_dart;
mod choices;
mod ease;
mod error;
mod figure;
mod frame;
mod front_door;
mod join;
mod neckline;
mod one_piece;
mod options;
mod set_in;
mod shaping;
mod shoulder;
mod side_seam;
mod skirt;
mod sleeve;
mod sleeve_cap;
mod trunk;
mod upper_body;
mod waist_plan;

pub use bodice::bodice;
pub use choices::{Block, Side, SleeveLength};
pub use ease::{Ease, Fit};
pub use error::DraftError;
pub use figure::Figure;
pub use front_door::{draft, draft_figure};
pub use options::DraftOptions;
pub use shoulder::pattern_shoulder_slopes;
pub use skirt::skirt;
pub use upper_body::waist_plan;
pub use waist_plan::WaistPlan;
