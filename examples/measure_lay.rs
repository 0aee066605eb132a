//! How short the lay gets in a time, from outlines kept in `tests/data/lay`:
//!
//! ```sh
//! cargo run --release --no-default-features --features lay --example measure_lay -- 10
//! ```
//!
//! lays every file there for 10 seconds of processor time in one thread; names of files after the
//! seconds pick some, `--seed N` takes another seed. `-- outlines` writes the files from today's
//! drafts in place of measuring: that moves the goal.

use blockwright::allowance::{Allowances, CutLines};
use blockwright::alterations::{Alteration, DartRelocation, DartToSeam, alter};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::geometry::Point;
use blockwright::lay::{Cloth, CutShape, LayPart, Pose, Search, parts};
use blockwright::measurements::{Body, Measurement as M};
use blockwright::piece::Pattern;
use serde_json::{Value, json};
use std::error::Error;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments: Vec<String> = std::env::args().skip(1).collect();
    if arguments.first().is_some_and(|word| word == "outlines") {
        return write_outlines();
    }
    let mut seed = 1;
    if let Some(at) = arguments.iter().position(|word| word == "--seed") {
        seed = arguments.get(at + 1).ok_or("a seed")?.parse()?;
        arguments.drain(at..at + 2);
    }
    let seconds: f64 = arguments.first().map_or(Ok(10.0), |word| word.parse())?;
    for file in files()? {
        let name = file
            .file_stem()
            .unwrap_or_default()
            .to_string_lossy()
            .into_owned();
        if arguments.len() < 2 || arguments.contains(&name) {
            measure(&name, &file, seconds, seed)?;
        }
    }
    Ok(())
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/data/lay")
}

fn files() -> Result<Vec<PathBuf>, Box<dyn Error>> {
    let mut files: Vec<PathBuf> = std::fs::read_dir(folder())?
        .map(|entry| entry.map(|entry| entry.path()))
        .collect::<Result<_, _>>()?;
    files.retain(|path| path.extension().is_some_and(|end| end == "json"));
    files.sort();
    Ok(files)
}

/// Processor time of this thread, where the system says it; the clock elsewhere.
fn spent(begun: Instant) -> Duration {
    let said = std::fs::read_to_string("/proc/thread-self/schedstat").ok();
    let nanoseconds = said.and_then(|text| text.split(' ').next()?.parse().ok());
    nanoseconds.map_or_else(|| begun.elapsed(), Duration::from_nanos)
}

fn measure(name: &str, file: &Path, seconds: f64, seed: u64) -> Result<(), Box<dyn Error>> {
    let document: Value = serde_json::from_slice(&std::fs::read(file)?)?;
    let (cloth, parts) = read(&document).ok_or("an outline that cannot be read")?;
    let begun = Instant::now();
    let before = spent(begun);
    let mut search = Search::new(&cloth, parts, seed)?;
    let first = search.length();
    let mut looks = [0.1, 0.3, 1.0, 3.0, seconds].into_iter().peekable();
    let mut line = format!("{name:16} first {first:7.1}");
    while let Some(look) = looks.next_if(|look| *look <= seconds) {
        while (spent(begun) - before).as_secs_f64() < look {
            search.run(search.rounds() + 5, &mut |_| {
                std::ops::ControlFlow::Continue(())
            });
        }
        line += &format!("  {look} s {:7.1}", search.length());
    }
    println!(
        "{line}  {:.1} % used, {} rounds{}",
        100.0 * search.lay().density(),
        search.rounds(),
        document["length"]
            .as_f64()
            .map_or(String::new(), |kept| format!(
                ", {:.4} of {kept:.1} mm",
                search.length() / kept
            ))
    );
    Ok(())
}

fn read(document: &Value) -> Option<(Cloth, Vec<LayPart>)> {
    let number = |key: &str| document[key].as_f64();
    let cloth = Cloth::new(number("width")?)
        .ok()?
        .with_gap(number("gap")?)
        .ok()?;
    let mut parts = Vec::new();
    for part in document["parts"].as_array()? {
        let mut points = Vec::new();
        for point in part["outline"].as_array()? {
            points.push(Point::new(point[0].as_f64()?, point[1].as_f64()?));
        }
        let pose = |pose: &Value| {
            let turned = pose["turned"].as_bool()?;
            Some(Pose {
                turned,
                face_down: pose["face_down"].as_bool()?,
            })
        };
        let poses: Option<Vec<Pose>> = part["poses"].as_array()?.iter().map(pose).collect();
        let name = part["name"].as_str()?;
        parts.push(LayPart::new(name, CutShape::new(points).ok()?).with_poses(&poses?));
    }
    Some((cloth, parts))
}

fn body(bust: f64) -> Result<Body, Box<dyn Error>> {
    Ok(Body::from_taken([
        (M::Height, 1680.0),
        (M::BustGirth, bust),
        (M::WaistGirth, bust - 160.0),
        (M::HipGirth, bust + 80.0),
    ])?)
}

fn garment(block: Block, bust: f64, princess: bool) -> Result<Pattern, Box<dyn Error>> {
    let mut options = DraftOptions::of(block);
    options.sleeve = block.has_armscye().then_some(SleeveLength::Long);
    let pattern = draft(&body(bust)?, &options)?;
    if !princess {
        return Ok(pattern);
    }
    let steps: [Box<dyn Alteration>; 3] = [
        Box::new(DartRelocation::to("bust", "shoulder", 0.5).on("front")),
        Box::new(DartToSeam::of("bust", "waist").on("front")),
        Box::new(DartToSeam::of("shoulder", "waist").on("back")),
    ];
    Ok(alter(&pattern, &steps)?.pattern)
}

fn write_outlines() -> Result<(), Box<dyn Error>> {
    let sizes = |block, busts: &[f64], princess| -> Result<Vec<Pattern>, Box<dyn Error>> {
        busts
            .iter()
            .map(|bust| garment(block, *bust, princess))
            .collect()
    };
    let three = [880.0, 920.0, 960.0];
    for (name, patterns) in [
        ("tunic", sizes(Block::Tunic, &[920.0], false)?),
        ("shirt", sizes(Block::Shirt, &[920.0], false)?),
        ("princess-dress", sizes(Block::Dress, &[920.0], true)?),
        ("three-dresses", sizes(Block::Dress, &three, false)?),
        (
            "six-dresses",
            sizes(
                Block::Dress,
                &[840.0, 880.0, 920.0, 960.0, 1000.0, 1040.0],
                false,
            )?,
        ),
    ] {
        let cloth = Cloth::new(1400.0)?;
        let mut laid = Vec::new();
        for pattern in &patterns {
            let cut = CutLines::new(pattern, &Allowances::usual())?;
            laid.extend(parts(pattern, Some(&cut), &cloth)?);
        }
        let micron = |mm: f64| (mm * 1000.0).round() / 1000.0;
        let laid: Vec<Value> = laid
            .iter()
            .map(|part| {
                let points = part.shape.points().iter();
                let points: Vec<[f64; 2]> = points.map(|p| [micron(p.x), micron(p.y)]).collect();
                let poses = part.poses.iter();
                let poses: Vec<Value> = poses
                    .map(|pose| json!({"turned": pose.turned, "face_down": pose.face_down}))
                    .collect();
                json!({"name": part.name, "poses": poses, "outline": points})
            })
            .collect();
        println!("{name}: {} parts", laid.len());
        let document = json!({"width": cloth.width(), "gap": cloth.gap(), "parts": laid});
        std::fs::write(
            folder().join(format!("{name}.json")),
            format!("{document}\n"),
        )?;
    }
    Ok(())
}
