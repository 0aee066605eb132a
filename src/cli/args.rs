//! The arguments.

use std::path::PathBuf;

use blockwright::grading::Align;
use blockwright::job::PaperSize;
use blockwright::toile::Seating;
use blockwright::units::{Length, Unit};
use clap::{ColorChoice, Parser, Subcommand};

/// How many rounds a lay is searched for at most, by the clock and by `--rounds`.
pub(super) const MOST_ROUNDS: u32 = 1_000_000_000;

/// Drafts sewing blocks from body measurements and prints them full size.
///
/// Ends with 0 when done, 1 when the pattern or a measurement was refused, 2 when the command
/// or a file is wrong.
#[derive(Debug, Parser)]
#[command(version, color = ColorChoice::Never, max_term_width = 100)]
pub(super) struct Args {
    #[command(subcommand)]
    pub(super) command: Command,
    /// Report and problems as JSON: the report on standard output, problems on standard error
    #[arg(long, global = true)]
    pub(super) json: bool,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Draft a job and write its files into a folder, whole or not at all
    ///
    /// The folder is made; the folder around it must be there. A folder that holds something
    /// already is left alone, unless --force is given and it holds an earlier result and
    /// nothing else.
    Draft {
        /// The job file (YAML)
        job: PathBuf,
        /// The folder to write
        #[arg(short, long, value_name = "DIR")]
        output: PathBuf,
        /// Paper of the tiled file, instead of the job's: a4, letter, a3, legal or a0
        #[arg(long, value_parser = paper)]
        paper: Option<PaperSize>,
        /// Also write the pieces as pattern.dxf, as `dxf: true` in the job does
        #[arg(long)]
        dxf: bool,
        /// Another wearer's measurement set: say where the pattern is too long or too short for her
        #[arg(long, value_name = "SET")]
        wearer: Option<PathBuf>,
        /// Also show every alteration on paper, as demonstration.pdf
        #[arg(long)]
        demonstration: bool,
        /// Replace an earlier result in the folder
        #[arg(long)]
        force: bool,
    },
    /// Draft a job, print the report and write nothing
    ///
    /// With --document the pattern document is printed instead of the report, for programs in any
    /// language: `program | blockwright check - --document`. A job on standard input may be JSON, and
    /// hold its body: `body: {unit: cm, measurements: {...}}`; paths in it are meant from the current
    /// folder.
    Check {
        /// The job file (YAML or JSON); `-` reads it from standard input
        job: PathBuf,
        /// Another wearer's measurement set: say where the pattern is too long or too short for her
        #[arg(long, value_name = "SET")]
        wearer: Option<PathBuf>,
        /// Print the pattern document (pattern.json) instead of the report
        #[arg(long)]
        document: bool,
        /// List what changed since an earlier pattern.json, measure by measure
        #[arg(long, value_name = "pattern.json", conflicts_with = "document")]
        against: Option<PathBuf>,
    },
    /// Draft a job in every size of a table and lay the sizes over one another
    ///
    /// Every size is drafted, altered and proved for itself. The folder is written as by draft:
    /// the nest (PDF in pages and on one sheet, SVG; one layer a size), range.json,
    /// increments.csv and pattern-LABEL.json for every size. The job needs no body.
    Grade {
        /// The job file (YAML)
        job: PathBuf,
        /// The size table (YAML)
        table: PathBuf,
        /// The folder to write
        #[arg(short, long, value_name = "DIR")]
        output: PathBuf,
        /// Only this size of the table; may be given several times
        #[arg(long, value_name = "LABEL")]
        size: Vec<String>,
        /// On which point the sizes are laid: waist_centre, nape, underarm or hem_centre
        #[arg(long, value_parser = align)]
        align: Option<Align>,
        /// Paper of the tiled file, instead of the job's: a4, letter, a3, legal or a0
        #[arg(long, value_parser = paper)]
        paper: Option<PaperSize>,
        /// Also write the pieces of all sizes as range.dxf, as `dxf: true` in the job does
        #[arg(long)]
        dxf: bool,
        /// Replace an earlier result in the folder
        #[arg(long)]
        force: bool,
    },
    /// Alter a job's block until it fits a wearer, and say which measurement asked for what
    ///
    /// The job's body is the one the block is made for: another person, or a size of a table; with a
    /// table and no size the nearest is chosen, by upper chest and back width first. Every step is
    /// proved. With -o the files are written as by draft, and the job with all its steps as
    /// fitted-job.yaml, to go on with by hand.
    Fit {
        /// The job file (YAML)
        job: PathBuf,
        /// The measurement set of the wearer (YAML)
        wearer: PathBuf,
        /// The folder to write; without it the report is printed alone
        #[arg(short, long, value_name = "DIR")]
        output: Option<PathBuf>,
        /// The least that is worth a step, with its unit: 3mm if left out
        #[arg(long, value_name = "LENGTH", value_parser = length)]
        least: Option<Length>,
        /// The same of angles, in degrees: 0.5 if left out
        #[arg(long, value_name = "DEGREES", value_parser = degrees)]
        least_angle: Option<f64>,
        /// Replace an earlier result in the folder
        #[arg(long)]
        force: bool,
    },
    /// What the cloth shows on a toile, what to rule out first, and which alteration follows
    ///
    /// Without words all signs are listed, from the neck down; with words those that they describe:
    /// `blockwright signs folds back waist`. With -o signs.html is written, each with a drawing.
    Signs {
        /// Where it is and what the cloth does there
        words: Vec<String>,
        /// The folder to write the page with drawings into
        #[arg(short, long, value_name = "DIR")]
        output: Option<PathBuf>,
        /// Replace an earlier result in the folder
        #[arg(long)]
        force: bool,
    },
    /// Lay a job's pieces on cloth of a width: the length to buy, and a picture of how they lie
    ///
    /// Pieces keep the grain and lie both ways along the cloth, turned end to end where that
    /// helps; with --one-way none is turned. The job's allowances are included. The search runs
    /// for some seconds and reports its seed and rounds; given both, it gives the same lay again,
    /// byte for byte, however fast the machine. Ctrl-C ends the search and writes the shortest lay so
    /// far. The folder is written as by draft: lay.svg, lay.pdf,
    /// lay.json.
    Lay {
        /// The job file (YAML)
        job: PathBuf,
        /// Width of the cloth between the selvedges, with its unit: 140cm
        #[arg(long, value_parser = length)]
        width: Length,
        /// Lay sizes of this table together instead of the job's body (YAML)
        #[arg(long, value_name = "TABLE")]
        table: Option<PathBuf>,
        /// A size of the table, and how often it is cut: 12, or 12=2; may be given several times. Every
        /// size once if left out
        #[arg(long, value_name = "LABEL=N", requires = "table")]
        size: Vec<String>,
        /// Lay for this measurement set instead of the job's body, and how often it is cut: ada.yaml, or
        /// ada.yaml=2; may be given several times (YAML)
        #[arg(long, value_name = "SET=N", conflicts_with = "table")]
        wearer: Vec<String>,
        /// The cloth lies folded lengthwise, selvedges together
        #[arg(long)]
        folded: bool,
        /// The cloth has a nap, a pile or a print with an upper end: no piece is turned
        #[arg(long)]
        one_way: bool,
        /// What pieces keep from one another, from selvedges and ends: 5mm if left out
        #[arg(long, value_parser = length)]
        gap: Option<Length>,
        /// How long to search
        #[arg(long, value_name = "N", default_value_t = 10, value_parser = clap::value_parser!(u64).range(1..=3600),
              conflicts_with_all = ["seed", "rounds"])]
        seconds: u64,
        /// Search from this seed, and for as many rounds as --rounds says (20000 if left out)
        #[arg(long, value_name = "N")]
        seed: Option<u64>,
        /// Search for so many rounds, however long that takes; at most 1000000000
        #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(..=i64::from(MOST_ROUNDS)))]
        rounds: Option<u32>,
        /// The folder to write
        #[arg(short, long, value_name = "DIR")]
        output: PathBuf,
        /// Replace an earlier result in the folder
        #[arg(long)]
        force: bool,
    },
    /// Sew a job's pattern on a wearer on screen: a picture of how it hangs, good to about 5 mm
    ///
    /// The pattern before and after the job's alterations, and with --wearer the same block drafted for
    /// her, hang beside one another on a form of her measurements. The folder is written as by draft:
    /// toile.html, toile.json, and for each pattern pictures (PNG) of the cloth, where it is tight and
    /// where it stands off, and a model (OBJ). It replaces no toile in cloth.
    Toile {
        /// The job file (YAML)
        job: PathBuf,
        /// The measurement set of the wearer (YAML), instead of the job's own body
        #[arg(long, value_name = "SET")]
        wearer: Option<PathBuf>,
        /// The folder to write
        #[arg(short, long, value_name = "DIR")]
        output: PathBuf,
        /// Larger triangles: sooner done, shows no small folds
        #[arg(long)]
        draft: bool,
        /// Where it is pinned: neckline, neck_points or loose
        #[arg(long, value_name = "HOW", default_value = "neckline", value_parser = seating)]
        seating: Seating,
        /// Weight of the cloth in g/m²; a plain wool of 168 g/m² if left out
        #[arg(long, value_name = "GRAMS", requires = "bending_length")]
        weight: Option<f64>,
        /// Bending length of the cloth, with its unit: half of what a strip of it must hang over the edge
        /// of a table to sink by 41.5 degrees
        #[arg(long, value_name = "LENGTH", requires = "weight", value_parser = length)]
        bending_length: Option<Length>,
        /// Replace an earlier result in the folder
        #[arg(long)]
        force: bool,
    },
    /// Make a job for every row of a table of people (CSV), without drawing it
    ///
    /// The columns are measurements in mm, or with their unit: `waist_girth (cm)`. The column id
    /// names the wearer; other columns are ignored, and reported. An empty cell is estimated. The
    /// job needs no body. DIR/results.jsonl has one line a row, in their order; a row that is
    /// refused says why and stops nothing. A command that was stopped goes on where it was when
    /// it is run again. With `-` for the table, rows are read from standard input and the lines
    /// written to standard output.
    Batch {
        /// The job file (YAML)
        job: PathBuf,
        /// The table of people (CSV); `-` reads it from standard input
        people: PathBuf,
        /// The folder to write; needed unless the table is read from standard input
        #[arg(short, long, value_name = "DIR")]
        output: Option<PathBuf>,
        /// Fit the block of the job's body to every wearer instead of drafting for her: a line has
        /// her steps and what is left. With a table and no size, from each one's nearest size
        #[arg(long)]
        fit: bool,
        /// Write the pattern document of every wearer into her line
        #[arg(long)]
        patterns: bool,
        /// Draw and print for every wearer too: the files of `draft` in a folder of her own, named by her
        /// id, below `files` in the folder
        #[arg(long, requires = "output")]
        files: bool,
        /// How many threads work; as many as the machine has if left out
        #[arg(long, value_name = "N", value_parser = clap::value_parser!(u16).range(1..=256))]
        threads: Option<u16>,
        /// Replace an earlier result in the folder, or an unfinished one of something else
        #[arg(long)]
        force: bool,
    },
    /// What each measurement is; or for a set or size table, what is taken, estimated, doubtful
    Measurements {
        /// A measurement set or a size table (YAML)
        file: Option<PathBuf>,
        /// The unit to show lengths in: mm, cm or in; that of the file if left out
        #[arg(long, value_parser = unit)]
        unit: Option<Unit>,
        /// Write a form to take measurements with (PDF): every measurement with a picture of where the
        /// tape runs and a line to write on; the pictures are of the set, if one is given
        #[arg(long, requires = "output")]
        form: bool,
        /// The file to write the form to
        #[arg(short, long, value_name = "FILE.pdf", requires = "form")]
        output: Option<PathBuf>,
        /// Paper of the form: a4 or letter
        #[arg(long, value_parser = form_paper, requires = "form")]
        paper: Option<PaperSize>,
        /// Replace the file of an earlier form
        #[arg(long, requires = "form")]
        force: bool,
    },
    /// Open a page in the browser that measures, drafts, fits and prints
    ///
    /// It is served to this machine alone, by the address that is printed, until Ctrl-C. With a folder
    /// the job and the wearer are read from and saved into it, as job.yaml and wearer.yaml, which the
    /// other commands read too.
    #[cfg(feature = "page")]
    Page {
        /// The folder of the work; without it files are opened and downloaded in the browser
        folder: Option<PathBuf>,
        /// Print the address alone, and open no browser
        #[arg(long)]
        no_open: bool,
        /// The port to listen on; one that is free if left out
        #[arg(long, value_name = "N", value_parser = clap::value_parser!(u16).range(1..))]
        port: Option<u16>,
    },
}

fn form_paper(text: &str) -> Result<PaperSize, String> {
    let known = PaperSize::named(text);
    let known = known.filter(|paper| matches!(paper, PaperSize::A4 | PaperSize::Letter));
    known.ok_or_else(|| "a form is printed on a4 or letter".to_owned())
}

fn paper(text: &str) -> Result<PaperSize, String> {
    let names = PaperSize::ALL.map(PaperSize::name).join(", ");
    PaperSize::named(text).ok_or_else(|| format!("known papers are {names}"))
}

fn seating(text: &str) -> Result<Seating, String> {
    let names = Seating::ALL.map(Seating::name).join(", ");
    Seating::named(text).ok_or_else(|| format!("known ways are {names}"))
}

fn length(text: &str) -> Result<Length, String> {
    Length::parse(text, None).map_err(|error| error.to_string())
}

fn degrees(text: &str) -> Result<f64, String> {
    let read = text.trim().parse::<f64>().ok();
    let read = read.filter(|degrees| (0.0..=45.0).contains(degrees));
    read.ok_or_else(|| "write degrees from 0 to 45, such as 0.5".to_owned())
}

fn align(text: &str) -> Result<Align, String> {
    let names = Align::ALL.map(Align::name).join(", ");
    Align::named(text).ok_or_else(|| format!("known points are {names}"))
}

fn unit(text: &str) -> Result<Unit, String> {
    Unit::from_name(text).ok_or_else(|| "known units are mm, cm and in".to_owned())
}
