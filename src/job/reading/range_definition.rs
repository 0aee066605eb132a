//! What is to be graded.

use crate::draft::Block;
use crate::grading::Align;
use crate::job::{Outputs, PrintOptions};
use crate::measurements::SizeTable;
use crate::recipe::Recipe;

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
    /// What every size is made from; the size written on the pieces is the label of the table.
    pub recipe: Recipe,
    /// The sizes.
    pub table: SizeTable,
    /// On which point the sizes are laid over one another.
    pub align: Align,
    /// How the nest is printed.
    pub print: PrintOptions,
    /// Which files are made.
    pub outputs: Outputs,
}

impl RangeJob {
    /// A job for the block as it usually is, laid on the waist at the centre, printed on A4.
    #[must_use]
    pub fn new(title: impl Into<String>, block: Block, table: SizeTable) -> Self {
        Self::of(Recipe::new(title, block), table)
    }

    /// A recipe made in the sizes of a table, laid on the waist at the centre, printed on A4.
    #[must_use]
    pub fn of(recipe: Recipe, table: SizeTable) -> Self {
        Self {
            recipe,
            table,
            align: Align::default(),
            print: PrintOptions::default(),
            outputs: Outputs::usual(),
        }
    }
}
