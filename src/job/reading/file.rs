//! A job file.

use super::bare_lengths::bare_lengths;
use super::read_block::{own_place, read_block};
use super::read_body::{JobBody, body, wearer};
#[cfg(feature = "toile")]
use super::read_cloth::cloth;
use super::read_print::print;
use crate::job::{Job, Output, Outputs, PrintOptions, ResolveError};
use crate::measurements::{FileCause, FileErrors, FileKind, FileProblem, Node, Place, Reader};
#[cfg(not(feature = "form"))]
use crate::piece::Warning;
use crate::recipe::{OwnBlock, OwnBlockError, Recipe, RecipeFields, said, truth};
use crate::units::Unit;

/// The keys of a job file.
pub(in crate::job) const KEYS: [&str; 21] = {
    let [k1, k2, k3, k4, k5, k6, k7, k8, k9, k10, k11, k12, k13, k14] = RecipeFields::KEYS;
    [
        k1,
        k2,
        k3,
        k4,
        k5,
        k6,
        k7,
        k8,
        k9,
        k10,
        k11,
        k12,
        k13,
        k14,
        "body",
        "wearer",
        "print",
        "dxf",
        "demonstration",
        "private",
        "cloth",
    ]
};

/// A job file in YAML or JSON, read; what it says of the body may stand in another file.
///
/// # The file
///
/// ```yaml
/// title: First block         # required: it stands on every piece
/// unit: mm                   # optional: of lengths in this file without one; mm if left out
/// size: 40                   # optional: written on every piece; left out, that of the table
/// date: 2026-03-14           # optional: written on every piece as it stands here
/// block: [bodice, skirt]     # required: bodice, skirt, or both, joined at the waist;
///                            #   dress, tunic or shirt; or a block of one's own from a pattern
///                            #   document: {file: my-block.json}, or from a drawing:
///                            #   {file: my-block.svg, kind: dress}; and then none of the keys
///                            #   from `ease` to `side`
/// body: ines.yaml            # required, but for a block of one's own: a measurement set, or one written in place, or a
///                            #   size of a table: {table: range.yaml, size: 40}, with other
///                            #   sizes where the wearer has them: {..., sizes: {hip_girth: 44}}
/// wearer: maren.yaml         # optional: another measurement set, or one written in place: the fit map
///                            #   compares the pattern with her, and `to: form` means her
/// ease: regular              # optional: close, regular or loose, or by place:
///                            #   {fit: regular, bust: 80, hip: 2 in}; mm without a unit
/// length: 65 cm              # optional: waist to hem; the block's usual length if left out
/// sleeve: none               # optional: none, short or long
/// cap_ease: 28               # optional: by how much the sleeve cap is longer than the armscye
/// waist_darts: true          # optional, dress, tunic and shirt: shape the waist with darts
/// side: shaped               # optional, the same blocks: shaped or straight side seam
/// alterations:               # optional: made in this order, each an alteration of
///                            #   alterations::CATALOGUE with its settings
///   - back_length_reduction: {amount: 25}   # or {to: 98 cm}: by whatever amount gets there, or
///                            #   {to: form}: until it is as long as the wearer's back
/// observed:                  # optional: what was pinned away or opened on a toile, each at a place
///                            #   of signs::SIGNS; the steps follow, in a fitter's order
///   - {place: centre back waist, pinned: 25 mm}
/// allowance: 15              # optional: seam allowance all round, or `usual`, or by place:
///                            #   {default: 15, neckline: 10, hem: 40}; the places are those of
///                            #   Allowances::PLACES, 0 to 100 mm; mm without a unit; none on folds
/// print:                     # optional
///   paper: a4                #   a4, letter, a3, legal or a0
///   margin: 12               #   12 to 50 mm
///   overlap: 10              #   8 to 50 mm
///   orientation: fewer_pages #   or portrait, or landscape
/// dxf: false                 # optional: true also writes the pieces as DXF
/// private: false             # optional: true leaves name and measurements out of the files
/// cloth: plain_wool          # optional: of a toile on screen; a name of toile::Fabric::NAMED, or
///                            #   {weight: 150, bending_length: 20 mm}, g/m²; stretch in N/m too
/// demonstration: false       # optional: true also writes every alteration shown on paper, as PDF
/// ```
///
/// ```
/// # #[cfg(feature = "yaml")] {
/// use blockwright::job::JobFile;
///
/// let file = JobFile::parse("title: First block\nblock: skirt\nbody: ada.yaml\n")?;
/// assert_eq!(file.body_path(), Some("ada.yaml"));
/// let set = "name: Ada\nunit: cm\nmeasurements: \
///            {height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100}\n";
/// let job = file.resolve(Some(set))?;
/// assert_eq!(job.recipe.title, "First block");
/// # }
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct JobFile {
    pub(in crate::job) recipe: Recipe,
    pub(in crate::job) body: Option<JobBody>,
    pub(in crate::job) wearer: Option<JobBody>,
    pub(in crate::job) print: PrintOptions,
    pub(in crate::job) outputs: Outputs,
    pub(in crate::job) private: bool,
    #[cfg(feature = "toile")]
    pub(in crate::job) cloth: Option<crate::toile::Fabric>,
    /// Whether there is a body that was not read.
    pub(in crate::job) body_unused: bool,
    /// Where a block of one's own is named.
    block_place: Option<Place>,
    /// Where the steps stand, in the order in which they are made.
    step_places: Vec<Place>,
    /// Lengths without a unit in a job that does not say which: what leads there, and the number.
    pub(in crate::job) bare_lengths: Vec<(String, f64)>,
}

impl JobFile {
    /// Reads a job file; needs the feature `yaml`.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place.
    #[cfg(feature = "yaml")]
    pub fn parse(text: &str) -> Result<Self, FileErrors> {
        Self::read(&Node::parse(text)?, true)
    }

    /// Reads a job file that is to be made in the sizes of a table: `body` may be left out, and
    /// is not used; needs the feature `yaml`.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place.
    #[cfg(feature = "yaml")]
    pub fn parse_for_range(text: &str) -> Result<Self, FileErrors> {
        Self::read(&Node::parse(text)?, false)
    }

    /// Reads a job file that is to be made for many wearers: `body` may be left out, and is not
    /// used; needs the feature `yaml`.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place.
    #[cfg(feature = "yaml")]
    pub fn parse_for_batch(text: &str) -> Result<Self, FileErrors> {
        Self::read(&Node::parse(text)?, false)
    }

    /// Reads a job written as JSON, with the same keys.
    ///
    /// ```
    /// use blockwright::job::{JobFile, run};
    /// let file = JobFile::from_json(
    ///     r#"{"title": "First block", "block": "skirt", "length": "25 1/2 in",
    ///         "body": {"unit": "cm", "measurements":
    ///             {"height": 168, "bust_girth": 92, "waist_girth": 76, "hip_girth": 100}}}"#,
    /// )?;
    /// let job = file.resolve(None)?; // the body is in the job, no file is wanted
    /// assert!(run(&job)?.file("pattern.json").is_some());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem.
    pub fn from_json(text: &str) -> Result<Self, FileErrors> {
        Self::read(&Node::from_json(text)?, true)
    }

    /// Reads a job file whose block is to be fitted to a wearer: a `body` that is a table may leave
    /// out its size, and the nearest to her is taken; needs the feature `yaml`.
    ///
    /// # Errors
    ///
    /// [`FileErrors`] with every problem of the file and its place.
    #[cfg(all(feature = "fit", feature = "yaml"))]
    pub fn parse_for_fit(text: &str) -> Result<Self, FileErrors> {
        Self::read_with(&Node::parse(text)?, true, false)
    }

    pub(in crate::job) fn read(node: &Node, wants_body: bool) -> Result<Self, FileErrors> {
        Self::read_with(node, wants_body, true)
    }

    fn read_with(node: &Node, wants_body: bool, needs_size: bool) -> Result<Self, FileErrors> {
        let mut reader = Reader::default();
        reader.must_be(FileKind::Job, node);
        let expected = "a mapping with `title`, `block` and `body`";
        let [
            f1,
            f2,
            f3,
            f4,
            f5,
            f6,
            f7,
            f8,
            f9,
            f10,
            f11,
            f12,
            f13,
            f14,
            body_field,
            wearer_field,
            print_field,
            dxf_field,
            demonstration_field,
            private_field,
            cloth_field,
        ] = reader.fields(node, "", KEYS, expected);
        // A block of one's own knows its body, and keeps it in sizes and for many wearers.
        let own = own_place(f4);
        let wants_body = wants_body || own.is_some();
        let needs_size = needs_size || own.is_some();
        if body_field.is_none() && wants_body && own.is_none() && node.entries().is_some() {
            let (key, hint) = (
                "body",
                "write `body:` and the path of a measurement set, or the set itself below it",
            );
            reader.wrong(node.place, "", FileCause::MissingKey { key, hint });
        }
        let fields =
            RecipeFields::of([f1, f2, f3, f4, f5, f6, f7, f8, f9, f10, f11, f12, f13, f14]);
        let recipe = fields.read(&mut reader, node);
        let body = body_field
            .filter(|_| wants_body)
            .and_then(|(_, node)| body(&mut reader, node, needs_size));
        let wearer = said(wearer_field).and_then(|node| wearer(&mut reader, node));
        let print =
            said(print_field).map_or_else(PrintOptions::default, |node| print(&mut reader, node));
        let shown = said(demonstration_field);
        let shown = shown.and_then(|node| truth(&mut reader, node, "demonstration"));
        let private = said(private_field).and_then(|node| truth(&mut reader, node, "private"));
        let dxf = said(dxf_field).and_then(|node| truth(&mut reader, node, "dxf"));
        #[cfg(feature = "toile")]
        let cloth = said(cloth_field).and_then(|node| cloth(&mut reader, node));
        #[cfg(not(feature = "toile"))]
        let _ = cloth_field;
        if let Some(errors) = FileErrors::gathered(std::mem::take(&mut reader.problems)) {
            return Err(errors);
        }
        let whole = body.is_some() || !wants_body || own.is_some();
        let (Some(recipe), true) = (recipe, whole) else {
            let found = node.shape();
            return Err(FileErrors::one(FileProblem {
                unit: Unit::Mm,
                place: node.place,
                path: String::new(),
                cause: FileCause::WrongShape { found, expected },
            }));
        };
        let mut outputs = Outputs::usual();
        if dxf == Some(true) {
            outputs = outputs.with(Output::Dxf);
        }
        if shown == Some(true) {
            outputs = outputs.with(Output::Demonstration);
        }
        Ok(Self {
            recipe,
            body_unused: body_field.is_some() && !wants_body,
            body,
            wearer,
            print,
            outputs,
            private: private == Some(true),
            #[cfg(feature = "toile")]
            cloth,
            block_place: own,
            step_places: reader.steps,
            bare_lengths: reader.bare_lengths,
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

    /// The path of the wearer's measurement set as written, if she stands in a file of its own; it is
    /// meant from where the job file stands. [`with_wearer`](Self::with_wearer) takes its text.
    #[must_use]
    pub fn wearer_path(&self) -> Option<&str> {
        self.wearer.as_ref()?.path()
    }

    /// Where that path is written.
    #[must_use]
    pub fn wearer_place(&self) -> Option<Place> {
        self.wearer.as_ref()?.place()
    }

    /// The same with the wearer whom [`wearer_path`](Self::wearer_path) names, from the text of her file.
    ///
    /// ```
    /// use blockwright::job::JobFile;
    /// let set = |back: u32| format!(r#"{{"name": "A", "unit": "mm", "measurements": {{"height": 1680,
    ///     "bust_girth": 920, "waist_girth": 760, "hip_girth": 1000, "back_waist_length": {back}}}}}"#);
    /// let text = format!(r#"{{"title": "Tunic", "block": "tunic", "body": {}, "wearer": "maren.json",
    ///     "alterations": [{{"back_length_reduction": {{"to": "form"}}}}]}}"#, set(410));
    /// let file = JobFile::from_json(&text)?;
    /// assert_eq!(file.wearer_path(), Some("maren.json"));
    /// let job = file.with_wearer(&set(390))?.resolve(None)?;
    /// # #[cfg(feature = "form")] {
    /// let report = blockwright::job::run(&job)?.report;
    /// assert!((report.account[0].amount.unwrap_or(0.0) - 20.0).abs() < 1.0);
    /// # }
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`ResolveError`] when her set is wrong.
    pub fn with_wearer(mut self, text: &str) -> Result<Self, ResolveError> {
        if let Some(wearer) = self.wearer.take() {
            self.wearer = Some(JobBody::Here(Box::new(wearer.resolve(Some(text))?)));
        }
        Ok(self)
    }

    /// Where the size of a table is written, if the body is one.
    #[must_use]
    pub fn size_place(&self) -> Option<Place> {
        self.body.as_ref()?.size_place()
    }

    /// Where the steps of the alterations are written, in the order in which they are made.
    ///
    /// ```
    /// # #[cfg(feature = "yaml")] {
    /// use blockwright::job::JobFile;
    /// let file = JobFile::parse(
    ///     "title: Skirt\nunit: mm\nblock: skirt\nbody: ada.yaml\nalterations:\n  - hip_girth: {amount: 8}\n",
    /// )?;
    /// assert_eq!(file.step_places()[0].line, 6);
    /// # }
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn step_places(&self) -> &[Place] {
        &self.step_places
    }

    /// The path of the block of one's own as written, if the job has one; it is meant from where the
    /// job file stands. [`with_block`](Self::with_block) takes its text.
    #[must_use]
    pub fn block_path(&self) -> Option<&str> {
        self.recipe.own.as_ref().map(OwnBlock::path)
    }

    /// Where that path is written.
    #[must_use]
    pub const fn block_place(&self) -> Option<Place> {
        self.block_place
    }

    /// The same with the block of one's own that [`block_path`](Self::block_path) names, from the text
    /// of its file, and with the body that it was made for: the job's, from the text of its file if
    /// [`body_path`](Self::body_path) asks for one, or else that of the document.
    ///
    /// ```
    /// # use blockwright::draft::{Block, DraftOptions, draft};
    /// # use blockwright::measurements::{Body, Measurement};
    /// use blockwright::job::{JobFile, run};
    /// # let body = Body::from_taken([
    /// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
    /// #     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
    /// # ])?;
    /// # let skirt = draft(&body, &DraftOptions::of(Block::Skirt))?;
    /// # let text = blockwright::render::json::render(&skirt, &body, "Mine", &[]);
    /// let file = JobFile::from_json(
    ///     r#"{"title": "My skirt, wider", "block": {"file": "my-skirt.json"},
    ///         "alterations": [{"hip_girth": {"amount": 10}}]}"#,
    /// )?;
    /// assert_eq!(file.block_path(), Some("my-skirt.json"));
    /// let job = file.with_block(&text, None)?.resolve(None)?;
    /// assert!(run(&job)?.file("pattern.svg").is_some());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`ResolveError`] when one of the two files is wrong, or there is no body.
    pub fn with_block(
        mut self,
        block_text: &str,
        body_text: Option<&str>,
    ) -> Result<Self, ResolveError> {
        let Some(asked) = self.recipe.own.clone() else {
            return Ok(self);
        };
        let (body, size) = match self.body.take() {
            None => (None, None),
            Some(body) => {
                let size = body.size().map(str::to_owned);
                (Some(body.resolve(body_text)?), size)
            }
        };
        let (own, set) = read_block(&asked, block_text, body)?;
        self.recipe.put_on(own);
        self.recipe.size = self.recipe.size.or(size);
        self.body = Some(JobBody::Here(Box::new(set)));
        Ok(self)
    }

    /// Refuses a block of one's own whose text was not given.
    pub(in crate::job) fn block_is_read(&self) -> Result<(), OwnBlockError> {
        match self
            .recipe
            .own
            .as_ref()
            .filter(|own| own.pattern().is_none())
        {
            None => Ok(()),
            Some(own) => Err(OwnBlockError::Unread {
                path: own.path().to_owned(),
            }),
        }
    }

    /// The job, with the text of the measurement set or size table if [`body_path`](Self::body_path) asks
    /// for one.
    ///
    /// # Errors
    ///
    /// [`ResolveError`] when the set is wanted and not given, or is wrong.
    pub fn resolve(self, set_text: Option<&str>) -> Result<Job, ResolveError> {
        self.block_is_read()?;
        let body = self.body.ok_or(ResolveError::NoBody)?;
        let mut recipe = self.recipe;
        recipe.size = recipe.size.or_else(|| body.size().map(str::to_owned));
        let set = body.resolve(set_text)?;
        recipe
            .notes
            .extend(bare_lengths(&self.bare_lengths, set.unit()));
        let wearer = self.wearer.map(|wearer| wearer.resolve(None)).transpose()?;
        let mut job = Job::of(recipe, set);
        job.print = self.print;
        job.outputs = self.outputs;
        job.private = self.private;
        #[cfg(feature = "toile")]
        {
            job.cloth = self.cloth;
        }
        #[cfg(feature = "form")]
        {
            job.compared = wearer;
        }
        #[cfg(not(feature = "form"))]
        if wearer.is_some() {
            let text = "the wearer is not used: this build has no fit map";
            job.recipe.notes.push(Warning::new("wearer_unused", text));
        }
        Ok(job)
    }
}
