//! How long it takes to draw, tile, grade and run a batch, each beside its floor: a raw copy of
//! the bytes that come out.

mod three_alterations;
mod wearers;

use std::hint::black_box;

use blockwright::alterations::Request;
use blockwright::draft::{Block, draft};
use blockwright::drawing::{PatternLabels, SHEET_GAP_MM, SHEET_WIDTH_MM};
use blockwright::drawing::{pattern_parts, pattern_sheet, place_on_sheet};
use blockwright::grading::grade;
use blockwright::job::{BatchColumns, BatchJob, Job, Output, Outputs, run};
use blockwright::measurements::{MeasurementSet, Size, SizeTable};
use blockwright::recipe::{Recipe, Ways};
use blockwright::render::pdf::{PaperFormat, PrintInfo, TileOptions, sheet, tiles, tiles_of};
use blockwright::render::svg;
use blockwright::units::Unit;
use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use three_alterations::three;
use wearers::{body, dress};

/// The three alterations as a job asks for them.
fn requests() -> Vec<Request> {
    [
        ("back_length_reduction", r#"{"amount": 20}"#),
        ("shoulder_slope", r#"{"degrees": 3}"#),
        (
            "dart_relocation",
            r#"{"dart": "bust", "to": "shoulder", "at": 0.5}"#,
        ),
    ]
    .map(|(name, settings)| {
        let settings = serde_json::from_str(settings).expect("settings in JSON");
        Request::new(name, settings).expect("an alteration of the catalogue")
    })
    .to_vec()
}

fn drawing(c: &mut Criterion) {
    let pattern = draft(&body(920.0), &dress()).expect("the dress is drafted");
    let labels = PatternLabels::new("Dress");
    let parts = pattern_parts(&pattern, &labels, None).expect("it can be drawn");
    let placed = place_on_sheet(&parts, SHEET_WIDTH_MM, SHEET_GAP_MM).expect("and laid");
    let whole = pattern_sheet(&pattern, &labels).expect("on a sheet");
    let info = PrintInfo::new("Dress");
    let options = TileOptions::default();
    let tile = || tiles_of(&parts, &placed, PaperFormat::A4, &options, &info);
    let bytes = tile().expect("tiles").bytes;
    let mut group = c.benchmark_group("print a dress with sleeve");
    group.throughput(Throughput::Bytes(bytes.len() as u64));
    group.bench_function("floor: copy of the tiles' bytes", |b| {
        b.iter(|| black_box(&bytes).clone());
    });
    group.bench_function("draw", |b| {
        b.iter(|| pattern_parts(black_box(&pattern), &labels, None));
    });
    group.bench_function("svg", |b| b.iter(|| svg::render(black_box(&whole))));
    group.bench_function("sheet", |b| b.iter(|| sheet(black_box(&whole), &info)));
    group.bench_function("tiles of the sheet as it lies", |b| {
        b.iter(|| tiles(black_box(&whole), PaperFormat::A4, &options, &info));
    });
    group.bench_function("tiles, pieces placed for the pages", |b| b.iter(tile));
    let mut job = Job::new(
        "Dress",
        Block::Dress,
        MeasurementSet::new("Ada", Unit::Cm, body(920.0)),
    );
    job.recipe.options = dress();
    job.recipe.alterations = requests();
    group.sample_size(30);
    group.bench_function("job with three alterations to all files", |b| {
        b.iter(|| run(black_box(&job)));
    });
    job.outputs = Outputs::none().with(Output::Svg);
    job.ways = Ways::Skipped;
    group.bench_function("job with three alterations to a preview", |b| {
        b.iter(|| run(black_box(&job)));
    });
    group.finish();
}

fn ranges(c: &mut Criterion) {
    let sizes: Vec<Size> = (0..12)
        .map(|step| {
            Size::new(
                (32 + 2 * step).to_string(),
                body(800.0 + 30.0 * f64::from(step)),
            )
        })
        .collect();
    let table = SizeTable::new("Twelve sizes", Unit::Cm, sizes);
    let mut recipe = Recipe::new("Dress", Block::Dress);
    recipe.options = dress();
    recipe.alterations = requests();
    let mut group = c.benchmark_group("many");
    group.sample_size(20);
    group.bench_function("grade 12 sizes, three alterations", |b| {
        b.iter(|| grade(black_box(&recipe), &table));
    });
    let mut job = BatchJob::new("Dress", Block::Dress);
    job.recipe.options = dress();
    job.recipe.alterations = requests();
    let columns = BatchColumns::read(["id", "height", "bust_girth", "waist_girth", "hip_girth"])
        .expect("columns of measurements");
    let rows: Vec<[String; 5]> = (0..1000)
        .map(|row| {
            let bust = 800.0 + 0.3 * f64::from(row);
            let cells = [
                1600.0 + 0.1 * f64::from(row),
                bust,
                bust - 160.0,
                bust + 80.0,
            ];
            let [height, bust, waist, hip] = cells.map(|cell| cell.to_string());
            [row.to_string(), height, bust, waist, hip]
        })
        .collect();
    let all = || -> usize {
        let lines = rows.iter().zip(1..);
        lines
            .map(|(cells, row)| job.record(&columns, row, cells).line().len())
            .sum()
    };
    group.sample_size(10);
    group.throughput(Throughput::Elements(1000));
    group.bench_function(
        "floor: draft and alterations of one row, 1,000 times",
        |b| {
            let (body, chain) = (body(920.0), three());
            b.iter(|| {
                for _ in 0..1000 {
                    let drafted = draft(black_box(&body), &dress()).expect("the dress is drafted");
                    let _ = black_box(blockwright::alterations::alter(&drafted, &chain));
                }
            });
        },
    );
    group.bench_function("batch of 1,000 rows on one thread", |b| b.iter(all));
    group.finish();
}

criterion_group!(benches, drawing, ranges);
criterion_main!(benches);
