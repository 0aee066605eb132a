//! Laying a job's pattern on cloth.

use super::outcome::OutputFile;
use crate::job::reports::lay_report_text::{caution_lines, head_lines};
use crate::job::{Job, JobError, LayReport};
use crate::lay::{Cloth, LayLabels, LayPart, Search, parts, picture};
use crate::measurements::MeasurementSet;
use crate::recipe::{Ways, make};
use crate::render::svg;
use crate::units::LengthStyle;

/// Rounds made to tell whether cloth that is not folded would serve better.
const COMPARED: u32 = 1500;

/// A job whose pieces are being laid: the search goes on as long as the caller wants.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{Job, LayRun};
/// use blockwright::lay::Cloth;
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let job = Job::new("Skirt", Block::Skirt, MeasurementSet::new("Ada", Unit::Cm, body));
/// let mut run = LayRun::new(&job, &Cloth::new(1400.0)?.folded(), 1)?;
/// for _ in 0..20 {
///     run.search.round();
/// }
/// let outcome = run.outcome()?;
/// assert!(outcome.report.length > 600.0 && outcome.report.density < 1.0);
/// assert_eq!(outcome.files[0].name, "lay.svg");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct LayRun<'a> {
    job: &'a Job,
    has_allowance: bool,
    /// The same pieces on the same cloth not folded.
    opened: Option<Search>,
    /// The search, to be asked for rounds.
    pub search: Search,
}

/// A lay, what is to be said about it, and its files.
///
/// ```
/// use blockwright::job::LayOutcome;
/// fn length(outcome: &LayOutcome) -> f64 { outcome.report.length }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct LayOutcome {
    /// What is to be said about it, and where every piece lies.
    pub report: LayReport,
    /// Its files: `lay.svg`, `lay.pdf` (with the feature `pdf`) and `lay.json`.
    pub files: Vec<OutputFile>,
}

/// One of several wearers or sizes whose pieces are cut together.
///
/// ```
/// use blockwright::job::LayWearer;
/// # use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// # use blockwright::units::Unit;
/// # let body = Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
/// #     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// # ])?;
/// let set = MeasurementSet::new("Chorus, size 40", Unit::Cm, body);
/// let two = LayWearer { label: "40".into(), set, copies: 2 };
/// assert_eq!(two.copies, 2);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct LayWearer {
    /// What is written before the names of her pieces.
    pub label: String,
    /// Her measurements.
    pub set: MeasurementSet,
    /// How often her pieces are cut.
    pub copies: u16,
}

impl<'a> LayRun<'a> {
    /// As [`new`](Self::new), for several wearers or sizes at once; the job's own body is not used.
    ///
    /// ```
    /// # use blockwright::draft::Block;
    /// # use blockwright::job::{Job, LayRun, LayWearer};
    /// # use blockwright::lay::Cloth;
    /// # use blockwright::measurements::{Body, Measurement, MeasurementSet};
    /// # use blockwright::units::Unit;
    /// # let set = |bust: f64| -> Result<MeasurementSet, Box<dyn std::error::Error>> {
    /// #     let body = Body::from_taken([
    /// #         (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
    /// #         (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
    /// #     ])?;
    /// #     Ok(MeasurementSet::new("Chorus", Unit::Cm, body))
    /// # };
    /// let job = Job::new("Chorus skirts", Block::Skirt, set(920.0)?);
    /// let wearers = [
    ///     LayWearer { label: "40".into(), set: set(920.0)?, copies: 2 },
    ///     LayWearer { label: "42".into(), set: set(960.0)?, copies: 1 },
    /// ];
    /// let outcome = LayRun::of_several(&job, &wearers, &Cloth::new(1400.0)?, 1)?.outcome()?;
    /// let pieces = outcome.report.stretches.iter().flat_map(|stretch| &stretch.pieces);
    /// assert_eq!(pieces.filter(|piece| piece.name == "40 back").count(), 2);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// # Errors
    /// [`JobError`] when there is no pattern for one of them, or a piece does not fit on the cloth.
    pub fn of_several(
        job: &'a Job,
        wearers: &[LayWearer],
        cloth: &Cloth,
        seed: u64,
    ) -> Result<Self, JobError> {
        let opened = cloth.is_folded().then(|| cloth.opened());
        let (mut laid, mut laid_open) = (Vec::new(), Vec::new());
        let mut has_allowance = false;
        for wearer in wearers {
            let set = &wearer.set;
            let made = make(&job.recipe, set.body(), set.unit(), Ways::Skipped)?;
            let lines = made.cut.as_ref();
            has_allowance = lines.is_some();
            let of = |cloth: &Cloth| -> Result<Vec<LayPart>, JobError> {
                let mut found = parts(&made.pattern, lines, cloth)?;
                for part in &mut found {
                    part.name = format!("{} {}", wearer.label, part.name);
                }
                let copies = usize::from(wearer.copies);
                Ok(std::iter::repeat_n(found, copies).flatten().collect())
            };
            laid.extend(of(cloth)?);
            if let Some(cloth) = &opened {
                laid_open.extend(of(cloth)?);
            }
        }
        Ok(Self {
            job,
            has_allowance,
            opened: opened.and_then(|cloth| Search::new(&cloth, laid_open, seed).ok()),
            search: Search::new(cloth, laid, seed)?,
        })
    }

    /// Drafts, proves and alters the job's pattern and lays its pieces a first time.
    ///
    /// # Errors
    /// [`JobError`] when there is no pattern, or a piece does not fit on the cloth.
    pub fn new(job: &'a Job, cloth: &Cloth, seed: u64) -> Result<Self, JobError> {
        let made = job.make(Ways::Skipped)?;
        let (pattern, lines) = (&made.pattern, made.cut.as_ref());
        let laid = parts(pattern, lines, cloth)?;
        let search = Search::new(cloth, laid, seed)?;
        let opened = if cloth.is_folded() {
            let cloth = cloth.opened();
            let laid = parts(pattern, lines, &cloth)?;
            Search::new(&cloth, laid, seed).ok()
        } else {
            None
        };
        Ok(Self {
            job,
            has_allowance: lines.is_some(),
            opened,
            search,
        })
    }

    /// The shortest lay so far with its report and files; the same rounds give the same bytes.
    ///
    /// # Errors
    /// [`JobError`] when the lay cannot be drawn.
    pub fn outcome(&self) -> Result<LayOutcome, JobError> {
        let lay = self.search.lay();
        let opened = self.opened.clone().map(|mut search| {
            for _ in 0..COMPARED {
                search.round();
            }
            search.length()
        });
        let report = LayReport::new(self.job, &lay, self.has_allowance, opened);
        let labels = LayLabels {
            title: match self.job.wearer() {
                Some(wearer) => format!("{}, for {wearer}", self.job.recipe.title),
                None => self.job.recipe.title.clone(),
            },
            lines: head_lines(&report),
            notes: caution_lines(&report),
            style: LengthStyle::usual(self.job.set.unit()),
        };
        let drawing = picture(&lay, &labels)?;
        let mut files = vec![OutputFile {
            name: "lay.svg".to_owned(),
            bytes: svg::render(&drawing).into_bytes(),
        }];
        #[cfg(feature = "pdf")]
        files.push(OutputFile {
            name: "lay.pdf".to_owned(),
            bytes: {
                let info = crate::render::pdf::PrintInfo::new(&labels.title)
                    .fonts(super::print_fonts::fonts(&self.job.print)?)
                    .date(self.job.recipe.date.clone());
                crate::render::pdf::picture(&drawing, paper(self.job), &info)?
            },
        });
        files.push(OutputFile {
            name: "lay.json".to_owned(),
            bytes: report.document().into_bytes(),
        });
        Ok(LayOutcome { report, files })
    }
}

/// The paper of a home printer of the job's kind.
#[cfg(feature = "pdf")]
fn paper(job: &Job) -> crate::render::pdf::PaperFormat {
    use crate::job::PaperSize;
    use crate::render::pdf::PaperFormat;
    match job.print.paper {
        PaperSize::Letter | PaperSize::Legal => PaperFormat::Letter,
        _ => PaperFormat::A4,
    }
}
