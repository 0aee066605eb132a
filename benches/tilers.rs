//! An A0 sheet cut into A4 pages: this library and general-purpose tilers in one run.
//!
//! `cargo build --release`, then `cargo bench --manifest-path benches/Cargo.toml --bench tilers`. The
//! others (`pdfposter`, `mutool poster`) are run where they are installed; each is started as a
//! command, so beside the library in this process stands the whole command of this project, which
//! drafts, proves, draws and writes everything else too.

mod wearers;

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use blockwright::draft::draft;
use blockwright::drawing::{
    Drawing, PatternLabels, SHEET_GAP_MM, lay, pattern_parts, place_on_sheet,
};
use blockwright::render::pdf::{PaperFormat, PrintInfo, TileOptions, sheet, tiles};
use wearers::{body, dress};

/// How often each is run; the median is told.
const RUNS: usize = 21;

/// An A0 sheet full of pattern pieces: dresses with sleeves for three wearers, as many of their
/// pieces as it holds.
fn drawing() -> Drawing {
    let mut parts = Vec::new();
    for bust in [840.0, 900.0, 960.0] {
        let pattern = draft(&body(bust), &dress()).expect("the dress is drafted");
        let labels = PatternLabels::new(format!("Dress, bust {bust}"));
        parts.extend(pattern_parts(&pattern, &labels, None).expect("it can be drawn"));
    }
    loop {
        let placed = place_on_sheet(&parts, 841.0, SHEET_GAP_MM).expect("it can be laid");
        let drawing = lay(&parts, &placed).expect("and drawn");
        if drawing.bounds().height() <= 1189.0 {
            return drawing;
        }
        parts.pop();
    }
}

fn median(mut run: impl FnMut()) -> Duration {
    let mut took: Vec<Duration> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            run();
            start.elapsed()
        })
        .collect();
    took.sort();
    took[RUNS / 2]
}

fn print_row(name: &str, took: Duration, ours: Duration) {
    let ratio = took.as_secs_f64() / ours.as_secs_f64();
    println!(
        "{name:<44} {:>9.2} ms  {ratio:>7.1} x",
        took.as_secs_f64() * 1e3
    );
}

/// The command, ready to run, if it is installed.
fn found(name: &str, arguments: &[&str]) -> Option<Command> {
    let quiet = |command: &mut Command| {
        command.stdout(Stdio::null()).stderr(Stdio::null());
    };
    let mut asked = Command::new(name);
    quiet(&mut asked);
    if asked.arg("--help").status().is_err() {
        println!("{name:<44} SKIPPED: not installed");
        return None;
    }
    let mut command = Command::new(name);
    quiet(&mut command);
    command.args(arguments);
    Some(command)
}

fn main() {
    let folder = tempfile::tempdir().expect("a temporary folder");
    let path = |name: &str| folder.path().join(name).to_string_lossy().into_owned();
    let (drawing, info) = (drawing(), PrintInfo::new("A0"));
    let options = TileOptions::default();
    let (source, pages) = (path("a0.pdf"), path("a4.pdf"));
    std::fs::write(&source, sheet(&drawing, &info).expect("a sheet")).expect("written");
    let (bytes, plan) = tiles(&drawing, PaperFormat::A4, &options, &info).expect("tiles");
    let (columns, rows) = (plan.columns.to_string(), plan.rows.to_string());
    println!(
        "A0 sheet to {columns} x {rows} pages of A4, {} bytes",
        bytes.len()
    );
    let ours = median(|| {
        let (bytes, _) = tiles(&drawing, PaperFormat::A4, &options, &info).expect("tiles");
        std::fs::write(path("ours.pdf"), bytes).expect("written");
    });
    print_row("this library: tiled and written", ours, ours);
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let job = root.join("examples/jobs/linen-tunic.yaml");
    let target = std::env::var_os("CARGO_TARGET_DIR").map_or(root.join("target"), PathBuf::from);
    let built = target.join("release").join("blockwright");
    if built.exists() {
        let command = median(|| {
            let mut command = Command::new(&built);
            command
                .arg("draft")
                .arg(&job)
                .args(["--force", "-o", &path("tunic")]);
            let done = command.stdout(Stdio::null()).status().expect("it runs");
            assert!(done.success());
        });
        print_row("this command: a tunic from job to all files", command, ours);
    } else {
        println!("{:<44} SKIPPED: cargo build --release", "this command");
    }
    let others = [
        (
            "mutool",
            vec!["poster", "-x", &columns, "-y", &rows, &source, &pages],
        ),
        ("pdfposter", vec!["-m", "A4", "-p", "A0", &source, &pages]),
    ];
    for (name, arguments) in others {
        if let Some(mut command) = found(name, &arguments) {
            let took = median(|| assert!(command.status().is_ok_and(|s| s.success()), "{name}"));
            print_row(name, took, ours);
        }
    }
}
