//! A job file.

use super::field::{Field, said, truth};
use super::read_allowance::allowance;
use super::read_alterations::alterations;
use super::read_block::block;
use super::read_body::{JobBody, body};
use super::read_ease::{EasePlace, ease};
use super::read_inscription::{date, size, title};
use super::read_print::print;
use super::read_shape::ShapeFields;
use super::{BatchJob, Job, Output, Outputs, PrintOptions, RangeJob, ResolveError};
use crate::draft::{Block, DraftOptions};
use crate::measurements::{FileCause, FileErrors, FileProblem, Node, Place, Reader, SizeTable};
use crate::piece::Warning;
use crate::recipe::Recipe;

/// A job file, read; what it says of the body may stand in another file.
///
/// # The file
///
/// ```yaml
/// title: First block         # required: it stands on every piece
/// size: 40                   # optional: written on every piece; left out, that of the table
/// date: 2026-03-14           # optional: written on every piece as it stands here
/// block: [bodice, skirt]     # required: bodice, skirt, or both, joined at the waist;
///                            #   dress, tunic or shirt
/// body: ines.yaml            # required: a measurement set, or one written in place, or a
///                            #   size of a table: {table: range.yaml, size: 40}, with other
///                            #   sizes where the wearer has them: {..., sizes: {hip_girth: 44}}
/// ease: regular              # optional: close, regular or loose, or by place:
///                            #   {fit: regular, bust: 80, hip: 2 in}; mm without a unit
/// length: 65 cm              # optional: waist to hem; the block's usual length if left out
/// sleeve: none               # optional: none, short or long
/// cap_ease: 28               # optional: by how much the sleeve cap is longer than the armscye
/// waist_darts: true          # optional, dress, tunic and shirt: shape the waist with darts
/// side: shaped               # optional, the same blocks: shaped or straight side seam
/// alterations:               # optional: made in this order, each an alteration of
///                            #   alterations::CATALOGUE with its settings
///   - back_length_reduction: {amount: 25}   # or {to: 98 cm}: by whatever amount gets there
/// allowance: 15              # optional: seam allowance all round, or `usual`, or by place:
///                            #   {default: 15, neckline: 10, hem: 40}; the places are those of
///                            #   Allowances::PLACES, 0 to 100 mm; mm without a unit; none on folds
/// print:                     # optional
///   paper: a4                #   a4, letter, a3, legal or a0
///   margin: 12               #   12 to 50 mm
///   overlap: 10              #   8 to 50 mm
///   orientation: fewer_pages #   or portrait, or landscape
/// dxf: false                 # optional: true also writes the pieces as DXF
/// ```
///
/// ```
/// use blockwright::job::JobFile;
///
/// let file = JobFile::parse("title: First block\nblock: skirt\nbody: ada.yaml\n")?;
/// assert_eq!(file.body_path(), Some("ada.yaml"));
/// let set = "name: Ada\nunit: cm\nmeasurements: \
///            {height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100}\n";
/// let job = file.resolve(Some(set))?;
/// assert_eq!(job.recipe.title, "First block");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct JobFile {
    recipe: Recipe,
    body: Option<JobBody>,
    print: PrintOptions,
    outputs: Outputs,
    /// Whether there is a body that was not read.
    body_unused: bool,
}

impl JobFile {
    /// Reads a job file.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place.
    pub fn parse(text: &str) -> Result<Self, FileErrors> {
        Self::read(text, true)
    }

    /// Reads a job file that is to be made in the sizes of a table: `body` may be left out, and
    /// is not used.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place.
    pub fn parse_for_range(text: &str) -> Result<Self, FileErrors> {
        Self::read(text, false)
    }

    /// Reads a job file that is to be made for many wearers: `body` may be left out, and is not
    /// used.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place.
    pub fn parse_for_batch(text: &str) -> Result<Self, FileErrors> {
        Self::read(text, false)
    }

    fn read(text: &str, wants_body: bool) -> Result<Self, FileErrors> {
        let node = Node::parse(text)?;
        let mut reader = Reader::default();
        let keys = [
            "title",
            "size",
            "date",
            "block",
            "body",
            "ease",
            "print",
            "length",
            "sleeve",
            "cap_ease",
            "waist_darts",
            "side",
            "alterations",
            "allowance",
            "dxf",
        ];
        let expected = "a mapping with `title`, `block` and `body`";
        let [
            title_field,
            size_field,
            date_field,
            block_field,
            body_field,
            ease_field,
            print_field,
            length_field,
            sleeve_field,
            cap_field,
            darts_field,
            side_field,
            alterations_field,
            allowance_field,
            dxf_field,
        ] = reader.fields(&node, "", keys, expected);
        if node.entries().is_some() {
            let body = (body_field, wants_body);
            required(&mut reader, &node, [title_field, block_field], body);
        }
        let title = title_field.and_then(|(_, node)| title(&mut reader, node));
        let size = size_field.and_then(|(_, node)| size(&mut reader, node));
        let date = date_field.and_then(|(_, node)| date(&mut reader, node));
        let block = block_field.and_then(|(_, node)| block(&mut reader, node));
        let body = body_field
            .filter(|_| wants_body)
            .and_then(|(_, node)| body(&mut reader, node));
        let mut options = DraftOptions::of(block.unwrap_or(Block::Bodice));
        let mut places = Vec::new();
        if let Some((_, node)) = ease_field {
            (options.ease, places) = ease(&mut reader, node, options.block);
        }
        let shape = ShapeFields {
            length: length_field,
            sleeve: sleeve_field,
            cap_ease: cap_field,
            waist_darts: darts_field,
            side: side_field,
        };
        let unused = shape.read(&mut reader, &mut options);
        let print =
            print_field.map_or_else(PrintOptions::default, |(_, node)| print(&mut reader, node));
        let steps =
            alterations_field.map_or_else(Vec::new, |(_, node)| alterations(&mut reader, node));
        let allowances = allowance_field.and_then(|(_, node)| allowance(&mut reader, node));
        let dxf = said(dxf_field).and_then(|node| truth(&mut reader, node, "dxf"));
        if let Some(errors) = FileErrors::gathered(reader.problems) {
            return Err(errors);
        }
        let (Some(title), Some(_), true) = (title, block, body.is_some() || !wants_body) else {
            let found = node.shape();
            return Err(FileErrors::one(FileProblem {
                place: node.place,
                path: String::new(),
                cause: FileCause::WrongShape { found, expected },
            }));
        };
        let mut recipe = Recipe::new(title, options.block);
        recipe.size = size;
        recipe.date = date;
        recipe.notes = notes(&options, &places, unused);
        recipe.options = options;
        recipe.alterations = steps;
        recipe.allowances = allowances;
        let mut outputs = Outputs::usual();
        if dxf == Some(true) {
            outputs = outputs.with(Output::Dxf);
        }
        Ok(Self {
            recipe,
            body_unused: body_field.is_some() && !wants_body,
            body,
            print,
            outputs,
        })
    }

    /// The path of the measurement set or size table as written, if it stands in a file of its own; it is
    /// meant from where the job file stands.
    #[must_use]
    pub fn body_path(&self) -> Option<&str> {
        self.body.as_ref()?.path()
    }

    /// Where that path is written.
    #[must_use]
    pub fn body_place(&self) -> Option<Place> {
        self.body.as_ref()?.place()
    }

    /// The job, with the text of the measurement set or size table if [`body_path`](Self::body_path) asks
    /// for one.
    ///
    /// # Errors
    ///
    /// [`ResolveError`] when the set is wanted and not given, or is wrong.
    pub fn resolve(self, set_text: Option<&str>) -> Result<Job, ResolveError> {
        let body = self.body.ok_or(ResolveError::NoBody)?;
        let mut recipe = self.recipe;
        recipe.size = recipe.size.or_else(|| body.size().map(str::to_owned));
        let mut job = Job::of(recipe, body.resolve(set_text)?);
        job.print = self.print;
        job.outputs = self.outputs;
        Ok(job)
    }
}

impl JobFile {
    /// The same work in the sizes of a table.
    #[must_use]
    pub fn for_table(self, table: SizeTable) -> RangeJob {
        let mut recipe = self.recipe;
        if self.body_unused {
            let text = "the body of the job is not used: the sizes are those of the table";
            recipe.notes.push(Warning::new("body_unused", text));
        }
        if recipe.size.take().is_some() {
            recipe.notes.push(Warning::new(
                "size_unused",
                "size has no effect on a range: every size bears its label",
            ));
        }
        let mut job = RangeJob::of(recipe, table);
        job.print = self.print;
        job.outputs = self.outputs;
        job
    }
}

impl JobFile {
    /// The same work for many wearers. How it is printed has no bearing.
    #[must_use]
    pub fn for_batch(self) -> BatchJob {
        BatchJob::of(self.recipe)
    }
}

fn required(
    reader: &mut Reader,
    node: &Node,
    [title, block]: [Field<'_>; 2],
    (body, wants_body): (Field<'_>, bool),
) {
    let there = [
        title.is_some(),
        block.is_some(),
        body.is_some() || !wants_body,
    ];
    let hints = [
        ("title", "write `title:` and what the work is called"),
        (
            "block",
            "write `block: bodice`, `skirt`, `[bodice, skirt]`, `dress`, `tunic` or `shirt`",
        ),
        (
            "body",
            "write `body:` and the path of a measurement set, or the set itself below it",
        ),
    ];
    for ((key, hint), there) in hints.into_iter().zip(there) {
        if !there {
            reader.wrong(node.place, "", FileCause::MissingKey { key, hint });
        }
    }
}

/// What the job says that its block has no use for: told, so that a job can be switched from
/// one block to another and nothing is passed over in silence.
fn notes(options: &DraftOptions, places: &[EasePlace], unused: Vec<&str>) -> Vec<Warning> {
    let block = options.block.name();
    let ease = places
        .iter()
        .filter(|place| !place.is_used_by(options))
        .map(|place| {
            let name = place.name();
            let text =
                format!("the ease at {name} has no effect: this {block} block has nothing there");
            Warning::new("ease_unused", text)
        });
    let keys = unused.into_iter().map(|key| {
        let text = format!("{key} has no effect on this {block} block");
        Warning::new(format!("{key}_unused"), text)
    });
    ease.chain(keys).collect()
}
