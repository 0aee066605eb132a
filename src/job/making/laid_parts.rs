//! Pieces drawn by themselves, and as they lie on the sheet.

use crate::drawing::{
    Drawing, Placement, SHEET_WIDTH_MM, SheetError, SheetPart, lay, place_on_sheet,
};

/// Pieces, where each lies on the sheet, and the sheet.
pub(in crate::job) struct LaidParts {
    /// Only what prints lays the pieces again, for its pages.
    #[cfg_attr(not(feature = "pdf"), allow(dead_code))]
    pub parts: Vec<SheetPart>,
    #[cfg_attr(not(feature = "pdf"), allow(dead_code))]
    pub placements: Vec<Placement>,
    pub sheet: Drawing,
}

impl LaidParts {
    /// Lays pieces on a sheet, that far apart in millimetres.
    pub fn new(parts: Vec<SheetPart>, gap: f64) -> Result<Self, SheetError> {
        let placements = place_on_sheet(&parts, SHEET_WIDTH_MM, gap)?;
        let sheet = lay(&parts, &placements)?;
        Ok(Self {
            parts,
            placements,
            sheet,
        })
    }
}
