//! Set files: what is read, and how everything wrong is told.

use std::fs;
use std::path::PathBuf;

use blockwright::job::JobFile;
use blockwright::measurements::{Body, Measurement, MeasurementFile, MeasurementSet, SizeTable};

#[test]
fn every_set_in_the_repository_is_read_without_doubt() {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("measurement-sets");
    let mut read = 0;
    for entry in fs::read_dir(folder).expect("the sets") {
        let path = entry.expect("an entry").path();
        let text = fs::read_to_string(&path).expect("a text");
        let shown = path.display();
        let file = MeasurementFile::parse(&text).unwrap_or_else(|e| panic!("{shown}:\n{e}"));
        let bodies: Vec<Body> = match file {
            MeasurementFile::Table(table) => {
                assert!(table.source().is_some(), "{shown} names no source");
                let sizes = table.sizes().iter();
                sizes.map(|size| size.body().clone()).collect()
            }
            MeasurementFile::Set(set) => vec![set.body().clone()],
        };
        for body in bodies {
            assert_eq!(body.doubts(), [], "{shown}");
        }
        read += 1;
    }
    assert!(read >= 5);
}

#[test]
fn all_problems_of_a_set_are_reported_with_their_lines() {
    let errors = MeasurementSet::parse(
        "name: Ada\n\
         unit: cm\n\
         measurments: {}\n\
         measurements:\n  \
           height: 1680\n  \
           bust_grith: 92\n  \
           waist_girth: -76\n  \
           hip_girth: [100]\n  \
           neck_base_girth: .nan\n  \
           wrist_girth: 6 1/0 in\n  \
           elbow_girth:\n",
    )
    .unwrap_err();
    let message: Vec<(u64, String)> = errors
        .all()
        .iter()
        .map(|problem| (problem.place.line, problem.to_string()))
        .collect();
    for (line, text) in [
        (3, "did you mean `measurements`"),
        (5, "was it meant in mm?"),
        (6, "did you mean `bust_girth`"),
        (7, "negative"),
        (8, "a list stands here"),
        (9, "not a finite number"),
        (10, "not a fraction"),
        (11, "nothing stands here"),
    ] {
        assert!(
            message
                .iter()
                .any(|(at, what)| *at == line && what.contains(text)),
            "line {line}: {text} in\n{errors}"
        );
    }
    // What is spoiled is not told to be missing as well.
    assert_eq!(message.len(), 8, "{errors}");
    assert_eq!(errors.all()[2].place.column, 3);
}

#[test]
fn a_file_that_is_no_yaml_is_reported_with_its_place() {
    for (text, line) in [
        ("name: Ada\nunit: cm\nunit: mm\n", 3),
        ("name: 'Ada\n", 1),
        ("name: [Ada\nunit: cm\n", 1),
    ] {
        let errors = MeasurementSet::parse(text).unwrap_err();
        let place = errors.all()[0].place;
        assert!(place.line >= line, "{place}: {errors}");
    }
    for text in ["", "- 1\n- 2\n", "just a text", "42", "{}"] {
        assert!(MeasurementSet::parse(text).is_err(), "{text}");
        assert!(SizeTable::parse(text).is_err(), "{text}");
    }
    for depth in [16, 60, 100, 1000, 1900, 100_000] {
        let open = "[".repeat(depth);
        let closed = open.clone() + &"]".repeat(depth);
        assert!(MeasurementSet::parse(&open).is_err());
        assert!(MeasurementSet::parse(&closed).is_err());
    }
}

#[test]
fn a_set_can_stand_inside_another_document() {
    // In a job, with its place.
    let text = "title: A\nblock: skirt\nbody:\n  unit: cm\n  measurements:\n    height: 168\n    \
                bust_girth: 92\n    waist_girth: 76\n    hip_girth: 1000\n";
    let errors = JobFile::parse(text).unwrap_err();
    assert_eq!(errors.all().len(), 1);
    assert_eq!(errors.all()[0].place.line, 9);
    assert_eq!(errors.all()[0].path, "body.measurements");
    // As a field of a document that serde reads, in any format, without its place.
    #[derive(Debug, serde::Deserialize)]
    struct Fitting {
        day: u32,
        body: MeasurementSet,
    }
    let json = r#"{"day": 2, "body": {"unit": "cm", "measurements":
        {"height": 168, "bust_girth": 92, "waist_girth": 76, "hip_girth": 100}}}"#;
    for fitting in [
        serde_yaml::from_str::<Fitting>(json).unwrap(),
        serde_json::from_str::<Fitting>(json).unwrap(),
    ] {
        assert_eq!(fitting.day, 2);
        assert_eq!(fitting.body.body().value(Measurement::HipGirth), 1000.0);
    }
    let wide = json.replace("100}", "\"wide\"}");
    let wrong = serde_json::from_str::<Fitting>(&wide).unwrap_err();
    assert!(wrong.to_string().contains("hip_girth"), "{wrong}");
}
