//! What is to be graded.

use super::PrintOptions;
use crate::allowance::Allowances;
use crate::alterations::Request;
use crate::draft::{Block, DraftOptions};
use crate::grading::Align;
use crate::measurements::SizeTable;
use crate::piece::Warning;

/// Everything that is needed to make a range of sizes.
///
/// ```
/// # #[cfg(feature = "yaml")] {
/// use blockwright::job::JobFile;
/// use blockwright::measurements::SizeTable;
/// let table = SizeTable::parse(
///     "name: A range\nunit: cm\ncommon: {height: 168}\nsizes:\n  \
///      '36': {bust_girth: 84, waist_girth: 68, hip_girth: 92}\n",
/// )?;
/// let file = JobFile::parse_for_range("title: Skirt\nblock: skirt\n")?;
/// let job = file.for_table(table);
/// assert_eq!(job.table.sizes().len(), 1);
/// # }
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct RangeJob {
    /// What the work is called.
    pub title: String,
    /// The date that is written on the nest, as it is, if any.
    pub date: Option<String>,
    /// The block and what is wanted of it.
    pub options: DraftOptions,
    /// The alterations made on every size, in this order.
    pub alterations: Vec<Request>,
    /// The seam allowances of every size; without them only stitching lines are drawn.
    pub allowances: Option<Allowances>,
    /// The sizes.
    pub table: SizeTable,
    /// On which point the sizes are laid over one another.
    pub align: Align,
    /// How the nest is printed.
    pub print: PrintOptions,
    /// Whether the pieces of all sizes are also written as DXF.
    pub dxf: bool,
    /// What was noticed when the job was read.
    pub notes: Vec<Warning>,
}

impl RangeJob {
    /// A job for the block as it usually is, laid on the waist at the centre, printed on A4.
    #[must_use]
    pub fn new(title: impl Into<String>, block: Block, table: SizeTable) -> Self {
        Self {
            title: title.into(),
            date: None,
            options: DraftOptions::of(block),
            alterations: Vec::new(),
            allowances: None,
            table,
            align: Align::default(),
            print: PrintOptions::default(),
            dxf: false,
            notes: Vec::new(),
        }
    }
}
