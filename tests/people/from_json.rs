//! Bodies, options and whole jobs as another program would send them: JSON, with the keys, units
//! and errors of a job file.
#![allow(clippy::unwrap_used, clippy::panic)]

use blockwright::allowance::Allowances;
use blockwright::alterations::Request;
use blockwright::draft::{Block, DraftOptions, Ease, Fit, Side, SleeveLength, draft};
use blockwright::explain::Explain;
use blockwright::job::{Job, JobFile, Output, Outputs, PageTurn, PaperSize, PrintOptions, run};
use blockwright::measurements::{Body, Measurement, MeasurementSet, SizeTable};
use blockwright::recipe::{Recipe, Ways, make};
use blockwright::units::Unit;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};

fn read<T: DeserializeOwned>(value: Value) -> T {
    serde_json::from_value(value).unwrap()
}

fn refused<T: DeserializeOwned + std::fmt::Debug>(value: Value) -> String {
    let shown = value.to_string();
    match serde_json::from_value::<T>(value) {
        Ok(found) => panic!("{shown} was read as {found:?}"),
        Err(error) => error.to_string(),
    }
}

fn ada() -> Value {
    json!({"unit": "cm", "measurements":
        {"height": 168, "bust_girth": "36 1/2 in", "waist_girth": 76, "hip_girth": "1000 mm"}})
}

#[test]
fn bodies_and_tables() {
    let body: Body = read(ada());
    assert_eq!(body.value(Measurement::BustGirth), 927.1);
    let set: MeasurementSet = read(ada());
    assert_eq!((set.unit(), set.body()), (Unit::Cm, &body));
    let table: SizeTable = read(
        json!({"name": "Range", "unit": "in", "common": {"height": 66},
        "sizes": {"8": {"bust_girth": 36, "waist_girth": 28, "hip_girth": 38}}}),
    );
    assert_eq!(table.body("8").unwrap().value(Measurement::HipGirth), 965.2);

    let message = refused::<Body>(json!({"unit": "cm", "measurements": {"bust_grith": 92}}));
    assert!(message.contains("did you mean `bust_girth`?"), "{message}");
    assert!(message.contains("height is missing"), "{message}");
    let message = refused::<Body>(json!({"measurements": {}}));
    assert!(message.contains("`unit` is missing"), "{message}");
}

#[test]
fn options_and_what_is_in_them() {
    let options: DraftOptions = read(json!({"block": ["bodice", "skirt"], "sleeve": "long",
        "ease": {"fit": "close", "bust": "2 in"}, "length": "60 cm", "cap_ease": 28}));
    assert_eq!(options.block, Block::BodiceAndSkirt);
    assert_eq!((options.ease.bust, options.length), (50.8, Some(600.0)));
    assert_eq!(options.ease.waist, Ease::of(Fit::Close).waist);
    assert_eq!(options.sleeve, Some(SleeveLength::Long));
    assert_eq!(read::<Side>(json!("straight")), Side::Straight);
    assert_eq!(read::<Ease>(json!("loose")), Ease::of(Fit::Loose));
    assert_eq!(read::<Fit>(json!("close")), Fit::Close);
    let print: PrintOptions = read(json!({"paper": "letter", "margin": "3/4 in"}));
    assert_eq!((print.paper, print.margin), (PaperSize::Letter, 19.05));
    assert_eq!(read::<PageTurn>(json!("landscape")), PageTurn::Landscape);
    let widths: Allowances = read(json!({"default": "5/8 in", "hem": "4 cm"}));
    let expected = Allowances::all_round(15.875).unwrap().with("hem", 40.0);
    assert_eq!(widths, expected.unwrap());
    let step: Request = read(json!({"back_length_reduction": {"amount": "1 in"}}));
    assert_eq!(step.alteration().unwrap().amount(), Some(25.4));

    let cases: [(String, &str); 7] = [
        (refused::<Block>(json!("tunik")), "did you mean `tunic`?"),
        (refused::<Fit>(json!(3)), "write `close`"),
        (refused::<Ease>(json!({"bust": "5 m"})), "ease.bust"),
        (
            refused::<DraftOptions>(json!({"ease": "close"})),
            "`block` is missing",
        ),
        (refused::<Allowances>(json!({"default": -1})), "0 to 100 mm"),
        (
            refused::<Request>(json!({"back_length_reduction": {"amuont": 3}})),
            "amuont",
        ),
        (refused::<PaperSize>(json!("a5")), "write one of `a4`"),
    ];
    for (message, expected) in cases {
        assert!(message.contains(expected), "{message}");
        assert!(!message.contains("line 0"), "{message}");
    }
}

#[test]
fn a_job_is_the_same_in_json_as_in_yaml() {
    let json = json!({"title": "Tunic", "block": "tunic", "size": 40, "ease": {"hip": "3 1/2 in"},
        "sleeve": "long", "alterations": [{"back_length_reduction": {"amount": "1/2 in"}}, {"shoulder_slope": {"to": "body"}}],
        "allowance": "usual", "print": {"paper": "letter"}, "dxf": true, "body": ada()});
    let job: Job = read(json.clone());
    assert!(job.outputs.has(Output::Dxf));
    let file = JobFile::from_json(&json.to_string()).unwrap();
    assert_eq!(file.resolve(None).unwrap(), job);
    #[cfg(feature = "yaml")]
    {
        let yaml = "title: Tunic\nblock: tunic\nsize: 40\nease: {hip: 3 1/2 in}\nsleeve: long\n\
            alterations:\n  - back_length_reduction: {amount: 1/2 in}\n  - shoulder_slope: {to: body}\n\
            allowance: usual\nprint: {paper: letter}\ndxf: true\nbody:\n  unit: cm\n  measurements:\n    \
            {height: 168, bust_girth: 36 1/2 in, waist_girth: 76, hip_girth: 1000 mm}\n";
        let from_yaml = JobFile::parse(yaml).unwrap().resolve(None).unwrap();
        assert_eq!(from_yaml, job);
    }
    // The recipe alone, made for the body alone, is the same pattern.
    let mut recipe = json;
    for key in ["body", "print", "dxf"] {
        recipe.as_object_mut().unwrap().remove(key);
    }
    let recipe: Recipe = read(recipe);
    let made = make(&recipe, &read(ada()), Unit::Cm, Ways::Skipped).unwrap();
    assert_eq!(made.pattern, run(&job).unwrap().pattern);
}

/// What comes in goes out, and comes in again as the same: for every block and ease, with units,
/// and with what a block has no use for.
#[test]
fn requests_go_out_as_they_come_in() {
    fn comes_back<T>(value: &T) -> Value
    where
        T: serde::Serialize + DeserializeOwned + PartialEq + std::fmt::Debug,
    {
        let written = serde_json::to_value(value).unwrap();
        assert_eq!(&read::<T>(written.clone()), value, "{written}");
        written
    }
    let blocks = [
        "bodice",
        "skirt",
        "bodice and skirt",
        "dress",
        "tunic",
        "shirt",
    ];
    let eases = [
        json!("close"),
        json!("loose"),
        json!({"bust": "2 1/3 in"}),
        json!({"fit": "loose", "hip": 33.3, "upper_arm": "6 cm", "waist": 100.0 / 3.0}),
    ];
    for block in blocks {
        for ease in &eases {
            let recipe: Recipe = read(json!({"title": "No. 3", "size": 40, "date": "May",
                "block": block, "ease": ease, "length": "24 1/8 in", "sleeve": "long",
                "cap_ease": "1.1 in", "waist_darts": true, "side": "straight",
                "alterations": [{"back_length_reduction": {"amount": "1/3 in"}},
                    {"shoulder_slope": {"to": "body"}}, {"dart_relocation":
                        {"dart": "bust", "to": "shoulder", "at": 0.3}}],
                "allowance": {"default": "5/8 in", "hem": "4 cm"}}));
            // What had no effect is noted when it is read, and is no part of the request.
            let text = serde_json::to_string(&recipe).unwrap();
            let again: Recipe = serde_json::from_str(&text).unwrap();
            let without_notes = |mut recipe: Recipe| {
                recipe.notes.clear();
                recipe
            };
            assert_eq!(
                without_notes(again),
                without_notes(recipe.clone()),
                "{text}"
            );
            let written = comes_back(&recipe.options);
            assert_eq!(written["block"], block);
            comes_back(&recipe.options.ease);
        }
    }
    let plain: Recipe = read(json!({"title": "A", "unit": "mm", "block": "dress"}));
    let expected = json!({"title": "A", "unit": "mm", "block": "dress", "ease": "regular"});
    assert_eq!(comes_back(&plain), expected);
    for name in PaperSize::ALL.map(PaperSize::name) {
        let print: PrintOptions = read(json!({"paper": name, "margin": "3/4 in"}));
        assert_eq!(comes_back(&print)["paper"], name);
    }
    comes_back(&Allowances::usual());
}

/// A body that cannot be drafted is refused in the unit in which it was measured.
#[test]
fn a_refusal_speaks_the_unit_of_the_wearer() {
    let girths = [("in", 25.4), ("cm", 10.0), ("mm", 1.0)];
    for (unit, mm) in girths {
        let [height, bust, waist, hip] = [1650.0, 1550.0, 620.0, 1650.0].map(|size| size / mm);
        let job: Job = read(json!({"title": "A", "block": "bodice", "ease": "close",
            "body": {"unit": unit, "measurements": {"height": height, "bust_girth": bust,
                "waist_girth": waist, "hip_girth": hip}}}));
        let Err(refused) = run(&job) else {
            panic!("{unit}: drafted all the same");
        };
        let message = refused.to_string();
        let numbers = message.matches(&format!(" {unit}")).count();
        assert!(numbers >= 2, "{message}");
        assert_eq!(message.contains(" mm"), unit == "mm", "{message}");
    }
}

#[test]
fn all_errors_of_a_job_come_at_once() {
    let error = JobFile::from_json(
        r#"{"titel": "A", "block": "dress", "length": "3 m", "side": "bent", "body": 7}"#,
    )
    .unwrap_err();
    let message = error.to_string();
    for part in [
        "did you mean `title`?",
        "`title` is missing",
        "length",
        "side",
        "body",
    ] {
        assert!(message.contains(part), "{part}: {message}");
    }
    let codes: Vec<_> = error.all().iter().map(|p| p.cause.code()).collect();
    assert!(
        codes.contains(&"unknown_key".to_owned()) && codes.contains(&"out_of_reach".to_owned()),
        "{codes:?}"
    );
    let message = JobFile::from_json("{\"title\": \"A\",\n \"title\": \"B\"}").unwrap_err();
    assert!(
        message.to_string().contains("`title` stands twice"),
        "{message}"
    );
    let message = JobFile::from_json("{\"title\": \"A\"").unwrap_err();
    assert_eq!(
        (
            message.all()[0].cause.code().as_str(),
            message.all()[0].place.line
        ),
        ("syntax", 1)
    );
    let message = refused::<Job>(json!({"title": "A", "block": "skirt", "body": "ada.yaml"}));
    assert!(message.contains("`ada.yaml` were not given"), "{message}");
}

#[test]
fn a_preview_is_the_picture_of_the_whole_job_and_nothing_else() {
    let mut job: Job = read(json!({"title": "Dress", "block": "dress", "sleeve": "long",
        "alterations": [{"bust": {"amount": 8}}], "body": ada()}));
    let whole = run(&job).unwrap();
    job.outputs = Outputs::none().with(Output::Svg);
    let preview = run(&job).unwrap();
    let names: Vec<_> = preview
        .files
        .iter()
        .map(|file| file.name.as_str())
        .collect();
    assert_eq!(names, ["pattern.svg"]);
    assert_eq!(preview.file("pattern.svg"), whole.file("pattern.svg"));
    assert_eq!(preview.pattern, whole.pattern);
    // Pages are not even planned.
    assert_eq!(preview.report.pages, None);
    assert_eq!(whole.report.pages.is_some(), cfg!(feature = "pdf"));
    for output in Output::ALL {
        job.outputs = Outputs::none().with(output);
        let printed = matches!(
            output,
            Output::Pages | Output::Sheet | Output::Demonstration
        );
        let expected = usize::from(!printed || cfg!(feature = "pdf"));
        let files = run(&job).unwrap().files;
        assert_eq!(files.len(), expected, "{output}");
        let unusual = matches!(output, Output::Dxf | Output::Demonstration);
        let same = |file| whole.files.contains(file) || unusual;
        assert!(files.iter().all(same), "{output}");
    }
    job.outputs = Outputs::none();
    assert!(run(&job).unwrap().files.is_empty());
}

#[test]
fn options_made_in_a_program_have_the_bounds_of_a_job() {
    let body: Body = read(ada());
    let draw = |change: fn(&mut DraftOptions)| {
        let mut options = DraftOptions::of(Block::Dress);
        options.sleeve = Some(SleeveLength::Long);
        change(&mut options);
        draft(&body, &options)
    };
    assert!(draw(|_| {}).is_ok());
    type Change = fn(&mut DraftOptions);
    let cases: [(Change, &str, Value); 6] = [
        (
            |o| o.ease.bust = 500.0,
            "ease.bust",
            json!({"ease": {"bust": 500}}),
        ),
        (
            |o| o.ease.waist = -5.0,
            "ease.waist",
            json!({"ease": {"waist": -5}}),
        ),
        (
            |o| o.ease.upper_arm = 250.0,
            "ease.upper_arm",
            json!({"ease": {"upper_arm": 250}}),
        ),
        (|o| o.length = Some(20.0), "length", json!({"length": 20})),
        (
            |o| o.length = Some(2000.0),
            "length",
            json!({"length": 2000}),
        ),
        (
            |o| o.cap_ease = Some(80.0),
            "cap_ease",
            json!({"cap_ease": 80}),
        ),
    ];
    for (change, option, mut in_job) in cases {
        let error = draw(change).unwrap_err().to_string();
        assert!(error.starts_with(option), "{error}");
        in_job["block"] = json!("dress");
        in_job["sleeve"] = json!("long");
        let message = refused::<DraftOptions>(in_job);
        assert!(message.contains(option), "{message}");
        // Both name the same bounds.
        let bounds = error.split(" mm; ").nth(1).unwrap();
        let bounds = bounds.trim_start_matches("it can be ");
        assert!(message.contains(bounds), "{message} / {bounds}");
    }
    let error = draw(|o| o.ease.hip = f64::NAN).unwrap_err().to_string();
    assert!(
        error.contains("ease.hip") && !error.contains("NaN"),
        "{error}"
    );
}
