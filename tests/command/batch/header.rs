//! What the names of the columns say.

use super::company::{HEADER, batch, lines, place, results};

const JOB: &str = "title: B\nblock: bodice\n";

#[test]
fn the_same_wearer_in_any_unit_gives_the_same_line() {
    let mut all = Vec::new();
    for table in [
        "id,height,bust_girth,waist_girth,hip_girth,shoulder_slope\nada,1680,927.1,762,1016,21\n",
        "id,height (cm),bust_girth [in],waist_girth (IN),hip_girth( mm ),shoulder_slope (deg)\n\
         ada,168,36.5,30,1016,21°\n",
        "id,Height [mm],bust girth,waist-girth,HIP_GIRTH,shoulder_slope [°]\n\
         ada,1.68 m,36 1/2 in,76.2 cm,\"40\"\"\",21 deg\n",
        // As spreadsheets write where the comma is the decimal mark.
        "id;height (cm);bust_girth (cm);waist_girth (cm);hip_girth (cm);shoulder_slope\n\
         ada;168;92,71;76,2;101,6;21\n",
        "id\theight\tbust_girth\twaist_girth\thip_girth\tshoulder_slope\n\
         ada\t1680\t927.1\t762\t1016\t21\n",
        // Any order, a byte order mark, lines that end as on Windows.
        "\u{feff}shoulder_slope,hip_girth,waist_girth,bust_girth,height,id\r\n\
         21,1016,762,927.1,1680,ada\r\n",
    ] {
        let place = place(JOB, table);
        batch(&place, &["--patterns"]).done();
        let line = lines(&place).remove(0);
        assert_eq!(line["status"], "ok", "{table}: {line}");
        assert_eq!(line["id"], "ada");
        all.push(numbers(&line["pattern"]["pieces"].to_string()));
    }
    assert!(!all[0].is_empty());
    for line in &all {
        assert_eq!(line.len(), all[0].len());
        // 36 1/2 in and 927.1 mm differ in their last bits, which documents keep.
        let same = line.iter().zip(&all[0]).all(|(a, b)| (a - b).abs() < 1e-6);
        assert!(same, "{line:?}\n{:?}", all[0]);
    }
}

#[test]
fn the_wearer_is_named_by_id_then_name_then_row() {
    for (header, cells, expected) in [
        ("id,name", "7,Ada", "7"),
        ("name,id", "Ada,7", "7"),
        ("name,role", "Ada,queen", "Ada"),
        ("NAME,role", " Ada ,queen", "Ada"),
        ("who,role", "Ada,queen", "1"),
        ("id,role", ",queen", "1"),
    ] {
        let place = place(
            JOB,
            format!(
                "{header},height,bust_girth,waist_girth,hip_girth\n{cells},1680,920,760,1000\n"
            ),
        );
        batch(&place, &[]).done();
        assert_eq!(lines(&place)[0]["id"], expected, "{header}");
    }
}

#[test]
fn other_columns_are_named_once_and_passed_over() {
    let table = "id,role,height,bust_girth,waist_girth,hip_girth,back_wasit_length,\
                 shoulder_slope_deg\nada,queen,1680,920,760,1000,400,21\nbea,,1680,920,760,1000,,\n";
    let place = place(JOB, table);
    let message = batch(&place, &[]).done();
    let expected = "Columns not used: role, back_wasit_length (did you mean \
                    back_waist_length?), shoulder_slope_deg (did you mean shoulder_slope?)\n";
    assert_eq!(message.matches(expected).count(), 1, "{message}");
    let plain = super::company::place(
        JOB,
        format!("{HEADER}ada,1680,920,760,1000\nbea,1680,920,760,1000\n"),
    );
    batch(&plain, &[]).done();
    assert_eq!(results(&place), results(&plain));
}

#[test]
fn a_header_that_cannot_be_meant_is_refused_and_writes_nothing() {
    for (header, expected) in [
        ("", "no header"),
        (
            "id,height,bust_girth,waist_girth",
            "there is no column hip_girth",
        ),
        (
            "id,height,bust_girth,waste_girth,hip_girth",
            "no column waist_girth; height, bust_girth, waist_girth and hip_girth must be there; \
             was `waste_girth` meant?",
        ),
        (
            "height,bust_girth,waist_girth,hip_girth,Bust-Girth (cm)",
            "`bust_girth` stands in column 2 and again in column 5",
        ),
        (
            "id,height,bust_girth,waist_girth,hip_girth,ID",
            "`id` stands in column 1",
        ),
        (
            "id,height (ells),bust_girth,waist_girth,hip_girth",
            "`ells` in column 2, `height (ells)`, is no unit of height; use `mm`, `cm` or `in`",
        ),
        (
            "id,height,bust_girth,waist_girth,hip_girth,shoulder_slope (cm)",
            "is no unit of shoulder_slope; use `deg`",
        ),
        (
            "id,height (),bust_girth,waist_girth,hip_girth",
            "is no unit",
        ),
        ("ada,1680,920,760,1000", "there is no column height"),
    ] {
        let place = place(JOB, format!("{header}\nada,1680,920,760,1000,950\n"));
        if header.is_empty() {
            place.write("people.csv", "");
        }
        let message = batch(&place, &[]).failed(2);
        assert!(message.contains(expected), "{header}: {message}");
        assert!(message.starts_with("error: people.csv: "), "{message}");
        assert_eq!(place.names("."), ["job.yaml", "people.csv"]);
    }
}

#[test]
fn wrong_files_are_reported_before_anything_is_written() {
    let place = place(JOB, HEADER);
    let run = |job: &str, people: &str| place.run(&["batch", job, people, "-o", "out"]).failed(2);
    assert!(run("job.yaml", "nobody.csv").contains("nobody.csv: the file cannot be read"));
    assert!(run("job.yaml", ".").contains("no plain file"));
    assert!(run("nothing.yaml", "people.csv").contains("nothing.yaml"));
    place.write("bad.yaml", "title: B\nblock: cloak\n");
    assert!(run("bad.yaml", "people.csv").contains("cloak"));
    place.write(
        "bad.yaml",
        format!("{JOB}alterations: [{{magic: {{amount: 3}}}}]\n"),
    );
    assert!(run("bad.yaml", "people.csv").contains("magic"));
    let message = place
        .run(&["batch", "job.yaml", "people.csv", "-o", "no/such"])
        .failed(2);
    assert!(
        message.contains("the folder around it, no, is not there"),
        "{message}"
    );
    assert!(!place.path().join("out").exists());
}

/// Every number that stands in a text.
fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !(c.is_ascii_digit() || ".-e".contains(c)))
        .filter_map(|word| word.parse().ok())
        .collect()
}
