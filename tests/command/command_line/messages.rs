//! What people write wrong, and what they read then: the line, the cause and the cure, one message,
//! without the words of a parser.

use crate::support::command::Place;

const SET: &str = "name: Ada\nunit: cm\nmeasurements:\n  height: 168\n  bust_girth: 92\n  \
                   waist_girth: 76\n  hip_girth: 100\n";
const JOB: &str = "title: Dress\nunit: mm\nblock: dress\nbody: ada.yaml\n";

/// A set or a job, and all that is said of it.
fn reply(place: &Place, name: &str, text: &str) -> Vec<String> {
    place.write(name, text);
    let command = if text.contains("block") {
        "check"
    } else {
        "measurements"
    };
    let ran = place.run(&[command, name]);
    assert_ne!(ran.code, 0, "{text}");
    let errors = ran.err.lines().filter(|line| line.starts_with("error: "));
    errors.map(str::to_owned).collect()
}

#[test]
fn slips_of_everyday_have_one_message_with_line_cause_and_cure() {
    let place = Place::new();
    place.write("ada.yaml", SET);
    let set = |from: &str, to: &str| SET.replace(from, to);
    let job = |more: &str| format!("{JOB}{more}\n");
    let step = |step: &str| job(&format!("alterations:\n  - {step}"));
    let inches = SET
        .replace("168", "66")
        .replace("92", "36 1/2")
        .replace("76", "30");
    for (text, line, cause, cure) in [
        (job("print:\n\tpaper: a4"), 6, "a tab", "use spaces"),
        (
            set("\n  ", "\n"),
            4,
            "same column as `measurements`",
            "two spaces",
        ),
        (
            job("print:\npaper: a4\nmargin: 20"),
            6,
            "same column as `print`",
            "two spaces",
        ),
        (
            inches.replace("100", "39"),
            4,
            "4 measurements are impossible in cm",
            "`unit: in`",
        ),
        (
            set("100", "8,4"),
            7,
            "8.4 cm is impossible",
            "was 84 cm meant?",
        ),
        (JOB.replace("Dress", "A: b"), 1, "second colon", "quotes"),
        (
            set("girth: 92", "girth:92"),
            5,
            "no space follows the colon",
            "a space",
        ),
        (
            step("hip_girth: {amount: 2,5 cm}"),
            6,
            "the comma in `2,5 cm`",
            "a point",
        ),
        (
            step("hip_girth: {amount: 9, side: lefft}"),
            6,
            "`lefft`",
            "`left`",
        ),
        (
            step("back_length_reduction: {amount: 9, hinge: share}"),
            6,
            "`share`",
            "`shared`",
        ),
        (
            job("sleeve: yes"),
            5,
            "true or false",
            "`none`, `short` or `long`",
        ),
        (step("bust: {amount: 200}"), 6, "bust by 20 cm", "at most"),
        (
            job("").replace("ada.yaml", "{table: t.yaml, size: 41}"),
            4,
            "no size `41`",
            "it has 40, 42",
        ),
    ] {
        place.write(
            "t.yaml",
            "name: T\nunit: cm\ncommon: {height: 168}\nsizes:\n  \
             '40': {bust_girth: 92, waist_girth: 76, hip_girth: 100}\n  \
             '42': {bust_girth: 96, waist_girth: 80, hip_girth: 104}\n",
        );
        let reply = reply(&place, "file.yaml", &text);
        let [one] = reply.as_slice() else {
            panic!("{text}{reply:#?}");
        };
        assert!(
            one.starts_with(&format!("error: file.yaml:{line}:")),
            "{text}{one}"
        );
        assert!(one.contains(cause) && one.contains(cure), "{text}{one}");
        for word in [
            "mapping values",
            "simple key",
            "variant",
            "field",
            "expected",
            "f64",
        ] {
            assert!(!one.contains(word), "{one}");
        }
    }
}

#[test]
fn one_kind_of_file_in_place_of_another_is_known() {
    let place = Place::new();
    place.write("ada.yaml", SET);
    place.write("job.yaml", JOB);
    for (args, kinds) in [
        (["check", "ada.yaml"], ["a set of measurements", "a job"]),
        (
            ["measurements", "job.yaml"],
            ["a job", "a set of measurements"],
        ),
    ] {
        let reply = place.run(&args).failed(2);
        let [found, wanted] = kinds;
        let expected = format!("this is {found}, and {wanted} is wanted here");
        assert!(reply.contains(&expected), "{reply}");
        assert_eq!(reply.matches("error: ").count(), 1, "{reply}");
    }
}

#[test]
fn steps_too_few_are_counted_and_sizes_too_many_refused_before_they_are_made() {
    let place = Place::new();
    place.write("job.yaml", "title: Skirt\nblock: skirt\n");
    let table = |labels: usize, steps: &str| {
        let labels: Vec<String> = (0..labels).map(|n| format!("s{n}")).collect();
        format!(
            "name: T\nunit: cm\nbase: {{label: s0, measurements: {{height: 168, bust_girth: 80, \
             waist_girth: 64, hip_girth: 88}}}}\nsteps:\n  labels: [{}]\n  per_size: {{hip_girth: \
             {steps}}}\n",
            labels.join(", ")
        )
    };
    let grade = ["grade", "job.yaml", "table.yaml", "-o", "out"];
    place.write("table.yaml", table(9, "[4, 4, 4, 4, 4, 4, 4]"));
    let reply = place.run(&grade).failed(2);
    assert!(
        reply.contains("table.yaml:6:") && reply.contains("7 steps given, 8 needed"),
        "{reply}"
    );
    place.write("table.yaml", table(900, "1 mm"));
    let begun = std::time::Instant::now();
    let reply = place.run(&grade).failed(2);
    assert!(reply.contains("at most 36"), "{reply}");
    // 900 skirts take half a minute.
    assert!(begun.elapsed().as_secs() < 8, "{:?}", begun.elapsed());
}

/// Everything that a command said and wrote for people.
fn said(place: &Place, files: &[&str], report: &str) -> String {
    let mut all = report.to_owned();
    for file in files {
        all.push_str(&std::fs::read_to_string(place.path().join("out").join(file)).unwrap());
    }
    all
}

#[test]
fn bare_lengths_are_in_the_unit_of_the_job_and_warned_of_where_it_says_none() {
    let place = Place::new();
    let set = "name: Ada\nunit: in\nmeasurements: {height: 66, bust_girth: 36 1/2, waist_girth: 30, \
               hip_girth: 39 1/2}\n";
    place.write("ada.yaml", set);
    let job = |unit: &str, allowance: &str, amount: &str| {
        format!(
            "title: Skirt\n{unit}block: skirt\nbody: ada.yaml\nallowance: {allowance}\n\
             alterations:\n  - hip_girth: {{amount: {amount}}}\n"
        )
    };
    let document = |text: String| -> serde_json::Value {
        place.write("job.yaml", text);
        let done = place.run(&["check", "job.yaml", "--document"]).done();
        serde_json::from_str(&done).unwrap()
    };
    // The same lengths, written in two ways.
    let inches = document(job("unit: in\n", "5/8", "0.5"));
    let mm = document(job("", "15.875", "12.7"));
    assert_eq!(inches["pieces"], mm["pieces"]);
    let codes = |document: &serde_json::Value| -> Vec<String> {
        let warnings = document["warnings"].as_array().unwrap().iter();
        warnings
            .map(|w| w["code"].as_str().unwrap().to_owned())
            .collect()
    };
    assert!(!codes(&inches).contains(&"bare_lengths".to_owned()));
    assert!(codes(&mm).contains(&"bare_lengths".to_owned()));
    // Both readings, once, and a width that nobody sews.
    let one = document(job("", "1", "1"));
    let bare: Vec<&str> = one["warnings"]
        .as_array()
        .unwrap()
        .iter()
        .filter(|w| w["code"] == "bare_lengths")
        .map(|w| w["text"].as_str().unwrap())
        .collect();
    let [text] = bare.as_slice() else {
        panic!("{bare:?}");
    };
    for reading in ["`1 mm`", "1/16 in", "`1 in`", "`unit: in`", "`unit: mm`"] {
        assert!(text.contains(reading), "{text}");
    }
    assert!(codes(&one).contains(&"allowance_unusual".to_owned()));
    // What is measured in inches is reported in nothing else.
    place.write("job.yaml", job("unit: in\n", "5/8", "1/2"));
    let report = place.run(&["draft", "job.yaml", "-o", "out"]).done();
    let words = said(&place, &["fitting.html"], &report);
    let metric = |text: &str| {
        let unit = |word: &str| matches!(word.trim_matches(['.', ',', ';', ')']), "mm" | "cm");
        let lines = text
            .lines()
            .filter(|line| line.split_whitespace().any(unit));
        lines.map(str::to_owned).collect::<Vec<_>>()
    };
    let known = |line: &String| line.contains("test square") || line.contains("10 cm");
    let odd: Vec<String> = metric(&words).into_iter().filter(|l| !known(l)).collect();
    assert!(odd.is_empty(), "{odd:#?}");
}

#[test]
fn a_file_that_was_edited_outlives_force() {
    let place = Place::new();
    place.write("ada.yaml", SET);
    place.write("job.yaml", JOB.replace("dress", "skirt"));
    let draft = ["draft", "job.yaml", "-o", "out", "--force"];
    place.run(&draft).done();
    assert!(!place.run(&draft).done().contains("kept as"));
    let drawn = std::fs::read_to_string(place.path().join("out/pattern.svg")).unwrap();
    for (number, kept) in [(1, "pattern.edited.svg"), (2, "pattern.edited-2.svg")] {
        place.write("out/pattern.svg", format!("<!-- mine {number} -->"));
        let report = place.run(&draft).done();
        assert!(
            report.contains(&format!(
                "pattern.svg was changed since it was written: your version is kept as {kept}"
            )),
            "{report}"
        );
        let now =
            |name: &str| std::fs::read_to_string(place.path().join("out").join(name)).unwrap();
        assert_eq!(now("pattern.svg"), drawn);
        assert_eq!(now(kept), format!("<!-- mine {number} -->"));
        assert_eq!(now("pattern.edited.svg"), "<!-- mine 1 -->");
    }
}
