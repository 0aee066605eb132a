//! What is to be said about a pattern, for programs.

use serde::Serialize;

use super::rounding::rounded;
use crate::allowance::Allowances;
use crate::drawing::contents;
use crate::job::{AccountReport, Job, MethodsReport, PagesReport};
use crate::measurements::SetReport;
use crate::piece::{EaseOn, EdgeRef, Pattern, Seam, Warning};
use crate::recipe::MadePattern;

/// What must be known before anything is printed.
pub(in crate::job) const TEST_SQUARE: &str =
    "Print at 100 %, not scaled to fit, and measure the test square before anything else.";

/// What must be known before anything is printed or cut.
pub(in crate::job) const fn cautions(allowances: Option<&Allowances>) -> [&'static str; 2] {
    [
        TEST_SQUARE,
        match allowances {
            None => {
                "Sew a toile before cutting good cloth: these are stitching lines of a block, \
                 without seam allowance."
            }
            Some(_) => {
                "Sew a toile before cutting good cloth. Seam allowance is included: cut along the \
                 bold line, sew along the dashed one."
            }
        },
    ]
}

/// The report of a job: measurements, finished girths, seams, darts, accounts, ways to choose
/// from, warnings, pages.
///
/// Serialised with lengths in mm and angles in degrees.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::{Job, run};
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let report = run(&Job::new("Skirt", Block::Skirt, MeasurementSet::new("Ada", Unit::Cm, body)))?.report;
/// let json = serde_json::to_value(&report)?;
/// assert_eq!(json["girths"][0]["name"], "waist");
/// assert!(report.text().contains("Seams"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct JobReport {
    /// What the work is called.
    pub title: String,
    /// The block.
    pub block: String,
    /// The wearer: every value taken or estimated, and what is doubtful.
    pub body: SetReport,
    /// What is cut, and how; a line a piece.
    pub pieces: Vec<String>,
    /// Finished girths and widths.
    pub girths: Vec<GirthReport>,
    /// What is sewn to what.
    pub seams: Vec<SeamReport>,
    /// The darts.
    pub darts: Vec<DartReport>,
    /// What each alteration changed and kept, in their order.
    pub account: Vec<AccountReport>,
    /// The ways of each back-length reduction on a back in one piece, to choose from.
    pub methods: Vec<MethodsReport>,
    /// The pages of the tiled file; none without the PDF writer.
    pub pages: Option<PagesReport>,
    /// What the wearer or cutter should know about this pattern.
    pub warnings: Vec<WarningReport>,
    /// What must be known about any pattern.
    pub cautions: Vec<&'static str>,
    /// How the pattern lies on another wearer, where one is named.
    #[cfg(feature = "form")]
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fit_map: Option<crate::job::FitMapReport>,
    /// The wearer's unit, in which a person reads the report.
    #[serde(skip)]
    pub(in crate::job) unit: crate::units::Unit,
}

/// A girth or width, in mm.
///
/// ```
/// use blockwright::job::GirthReport;
/// let bust = GirthReport { name: "bust".into(), body: 920.0, ease: 60.0, finished: 980.0 };
/// assert_eq!(bust.body + bust.ease, bust.finished);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GirthReport {
    /// Its name.
    pub name: String,
    /// The body's.
    pub body: f64,
    /// What was added.
    pub ease: f64,
    /// The sewn garment's, measured on the pattern.
    pub finished: f64,
}

/// A seam, lengths in mm with the darts closed.
///
/// ```
/// use blockwright::job::SeamReport;
/// let side = SeamReport {
///     name: "side".into(), a: vec!["back side_seam".into()], b: vec!["front side_seam".into()],
///     a_length: 170.0, b_length: 170.0, ease: 0.0, ease_on: None,
/// };
/// assert_eq!(side.a_length, side.b_length);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SeamReport {
    /// Its name.
    pub name: String,
    /// The edges on one side.
    pub a: Vec<String>,
    /// The edges on the other.
    pub b: Vec<String>,
    /// Length of the one side.
    pub a_length: f64,
    /// Length of the other.
    pub b_length: f64,
    /// By how much one side is eased in.
    pub ease: f64,
    /// Which side that is, `a` or `b`.
    pub ease_on: Option<&'static str>,
}

/// A dart.
///
/// ```
/// use blockwright::job::DartReport;
/// let dart = DartReport {
///     piece: "back".into(), name: "waist".into(), edge: Some("waist".into()),
///     intake: 30.0, angle: 11.4,
/// };
/// assert_eq!(dart.intake, 30.0);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DartReport {
    /// The piece it lies on.
    pub piece: String,
    /// Its name.
    pub name: String,
    /// The edge it opens on; none when it lies inside the piece.
    pub edge: Option<String>,
    /// Distance between the ends of its legs, in mm.
    pub intake: f64,
    /// Angle between its legs, in degrees.
    pub angle: f64,
}

/// A warning.
///
/// ```
/// use blockwright::job::WarningReport;
/// let warning = WarningReport { code: "ease_unused".into(), text: "a skirt has no bust".into() };
/// assert_eq!(warning.code, "ease_unused");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct WarningReport {
    /// A short name in snake case, for programs.
    pub code: String,
    /// A sentence with its numbers, for people.
    pub text: String,
}

impl From<&Warning> for WarningReport {
    fn from(warning: &Warning) -> Self {
        Self {
            code: warning.code.clone(),
            text: warning.text.clone(),
        }
    }
}

impl JobReport {
    /// The report of a job of which a pattern was made already; nothing is printed, so that it has no
    /// pages.
    ///
    /// ```
    /// use blockwright::job::{Job, JobReport};
    /// use blockwright::recipe::MadePattern;
    /// fn warnings(job: &Job, made: &MadePattern) -> usize { JobReport::of(job, made).warnings.len() }
    /// ```
    #[must_use]
    pub fn of(job: &Job, made: &MadePattern) -> Self {
        Self::new(job, made, None)
    }

    /// The report of a drafted job.
    pub(in crate::job) fn new(job: &Job, made: &MadePattern, pages: Option<PagesReport>) -> Self {
        let pattern = &made.pattern;
        let girths = pattern.girths().iter().map(|girth| GirthReport {
            name: girth.name.clone(),
            body: rounded(girth.body),
            ease: rounded(girth.ease),
            finished: rounded(pattern.finished(girth)),
        });
        let darts = pattern.pieces().iter().flat_map(|piece| {
            piece.darts().iter().map(|dart| DartReport {
                piece: piece.name().to_owned(),
                name: dart.name.clone(),
                edge: dart.edge.as_ref().map(ToString::to_string),
                intake: rounded(dart.intake()),
                angle: rounded(dart.angle().to_degrees()),
            })
        });
        let warnings = pattern.warnings().iter().map(WarningReport::from);
        #[cfg(feature = "pdf")]
        let warnings = warnings.chain(not_drawn(job, pattern));
        Self {
            title: job.recipe.title.clone(),
            block: job.recipe.options.block.name().to_owned(),
            body: SetReport::new(&job.set),
            pieces: contents(pattern),
            girths: girths.collect(),
            seams: pattern.seams().iter().map(|s| seam(pattern, s)).collect(),
            darts: darts.collect(),
            account: made.accounts.iter().map(AccountReport::new).collect(),
            methods: made.choices.iter().map(MethodsReport::new).collect(),
            pages,
            warnings: warnings.collect(),
            cautions: cautions(job.recipe.allowances.as_ref()).to_vec(),
            unit: job.set.unit(),
            #[cfg(feature = "form")]
            fit_map: crate::job::FitMapReport::of(job, made),
        }
    }
}

/// What the fonts of the printed files lack of the words that the job brings.
#[cfg(feature = "pdf")]
fn not_drawn(job: &Job, pattern: &Pattern) -> Vec<WarningReport> {
    // A font that cannot be used is refused where pages are made.
    let (true, Ok(fonts)) = (
        job.outputs.print(),
        crate::job::making::print_fonts::fonts(&job.print),
    ) else {
        return Vec::new();
    };
    let wearer = job.wearer();
    let (size, date) = (&job.recipe.size, &job.recipe.date);
    let words = [
        ("the title", Some(job.recipe.title.as_str())),
        ("the wearer's name", wearer.as_deref()),
        ("the size", size.as_deref()),
        ("the date", date.as_deref()),
    ];
    let words = words
        .into_iter()
        .filter_map(|(what, text)| Some((what, text?)));
    let pieces = pattern.pieces().iter().map(|p| ("a piece", p.name()));
    let lacking = crate::job::making::print_fonts::letters_lacking(&fonts, words.chain(pieces));
    let warning = |text| WarningReport {
        code: "letters_not_drawn".to_owned(),
        text,
    };
    lacking.into_iter().map(warning).collect()
}

fn seam(pattern: &Pattern, seam: &Seam) -> SeamReport {
    let names = |side: &[EdgeRef]| side.iter().map(ToString::to_string).collect();
    let length = |side: &[EdgeRef]| {
        let lengths = side.iter().filter_map(|edge| pattern.seam_length(edge));
        rounded(lengths.sum())
    };
    SeamReport {
        name: seam.name.clone(),
        a: names(&seam.a),
        b: names(&seam.b),
        a_length: length(&seam.a),
        b_length: length(&seam.b),
        ease: rounded(seam.ease),
        ease_on: seam.ease_on.map(|on| match on {
            EaseOn::A => "a",
            EaseOn::B => "b",
        }),
    }
}
