//! Tables that nobody meant: each row is refused by name or made, and nothing else happens.

use super::company::{HEADER, batch, lines, one, place};

const JOB: &str = "title: S\nblock: skirt\n";

#[test]
fn cells_that_are_no_measurement_refuse_the_row() {
    for cell in [
        "NaN",
        "nan",
        "inf",
        "-inf",
        "infinity",
        "1e308",
        "1e3",
        "-760",
        "0",
        "1e-9",
        "0x2f8",
        "760 ells",
        "760,5,5",
        "--",
        "'",
        "=A1*10",
        "７６０",
        "∞",
        "760\u{0}",
        "1/0",
        "99999999999",
        "1.7976931348623157e309",
        "<b>760</b>",
        "760;DROP",
        "\u{202e}067",
    ] {
        let (line, _) = one(&format!("ada,1680,920,\"{cell}\",1000\n"));
        assert_eq!(line["status"], "refused", "{cell}");
        let reason = line["reason"].as_str().unwrap();
        assert!(reason.starts_with("waist_girth_"), "{cell}: {reason}");
        assert!(reason.len() < 400 && !reason.contains('\n'), "{reason}");
    }
    // All of them are reported at once.
    let (line, _) = one("ada,tall,-920,many,1000\n");
    let reason = line["reason"].as_str().unwrap();
    for message in [
        "height: `tall` is not a number",
        "-920 mm is negative",
        "`many`",
    ] {
        assert!(reason.contains(message), "{reason}");
    }
}

#[test]
fn quotes_line_ends_and_empty_lines_are_read_as_csv() {
    let table = "\u{feff}\"id\",\"height\",\"bust_girth\",\"waist_girth\",\"hip_girth\"\r\n\
                 \"Ada \"\"the tall\"\", queen\",\"1680\",\"920\",\"760\",\"1000\"\r\n\r\n\
                 \"two\nlines\",1680,920,760,1000\r\n\
                 last,1680,920,760,1000";
    let place = place(JOB, table);
    batch(&place, &[]).done();
    let all = lines(&place);
    let ids: Vec<&str> = all.iter().map(|l| l["id"].as_str().unwrap()).collect();
    assert_eq!(ids, ["Ada \"the tall\", queen", "two\nlines", "last"]);
    assert!(all.iter().all(|line| line["status"] == "ok"), "{all:?}");
}

#[test]
fn ids_never_become_names_of_files() {
    let ids = [
        "../../up",
        "/etc/passwd",
        "a/b",
        "C:\\x",
        "..",
        "nul",
        "-o",
        "\u{1b}[31mred",
    ];
    let mut table = HEADER.to_owned();
    for id in ids {
        table.push_str(&format!("{id},1680,920,,1000\n"));
    }
    let place = place(JOB, table);
    let message = batch(&place, &["--patterns"]).done();
    assert!(!message.contains('\u{1b}'), "{message:?}");
    assert_eq!(place.names("."), ["job.yaml", "out", "people.csv"]);
    assert_eq!(place.names("out"), ["results.jsonl"]);
    let all = lines(&place);
    let found: Vec<&str> = all.iter().map(|l| l["id"].as_str().unwrap()).collect();
    assert_eq!(found, ids);
}

#[test]
fn a_header_alone_is_a_batch_of_nobody() {
    for table in [HEADER, HEADER.trim_end()] {
        let place = place(JOB, table);
        let message = batch(&place, &[]).done();
        assert!(
            message.contains("0 wearers: 0 made, 0 refused"),
            "{message}"
        );
        assert_eq!(lines(&place).len(), 0);
        batch(&place, &["--force"]).done();
    }
}

#[test]
fn ten_thousand_columns_are_passed_over() {
    let others: Vec<String> = (0..10_000).map(|n| format!("c{n}")).collect();
    let table = format!(
        "{},{}\nada,1680,920,760,1000{}\nbea,1680,920,760,1000\n",
        HEADER.trim_end(),
        others.join(","),
        ",9".repeat(10_000)
    );
    let place = place(JOB, table);
    let message = batch(&place, &[]).done();
    assert!(message.contains("c11 and 9988 more\n"), "{message}");
    assert_eq!(lines(&place)[0]["status"], "ok");
    let reason = lines(&place)[1]["reason"].as_str().unwrap().to_owned();
    assert!(
        reason.contains("the row has 5 cells, the header 10005"),
        "{reason}"
    );
}

#[test]
fn a_western_table_is_read_and_one_that_is_no_text_refused() {
    let mut table = b"sep=;\nid;role;height;bust_girth;waist_girth;hip_girth\n".to_vec();
    table.extend(b"ada;prot\xe9g\xe9;1680;920;760;1000\n;;;;;\n");
    table.extend(b"Zo\xeb;;1680;920;760;1000\n;; ;;;\n");
    table.extend(b"bea;;16\xff80;920;760;1000\n;;;;;\n");
    let place = place(JOB, table);
    let message = batch(&place, &[]).done();
    assert!(message.contains("read as Western European"), "{message}");
    let all = lines(&place);
    assert_eq!(all.len(), 3);
    assert_eq!(all[0]["status"], "ok");
    assert_eq!(
        (&all[1]["id"], &all[1]["status"]),
        (&"Zoë".into(), &"ok".into())
    );
    let reason = all[2]["reason"].as_str().unwrap();
    assert!(reason.starts_with("height_unreadable: "), "{reason}");
    for table in [
        // What Windows-1252 has no sign for.
        [HEADER.as_bytes(), b"a\x81,1680,920,760,1000\n"].concat(),
        "id,height"
            .encode_utf16()
            .flat_map(u16::to_be_bytes)
            .chain([0xd8, 0])
            .collect(),
        [&b"\xff\xfe"[..], b"i\0d\0"].concat(),
    ] {
        let place = super::company::place(JOB, table);
        batch(&place, &[]).failed(2);
        assert_eq!(place.names("."), ["job.yaml", "people.csv"]);
    }
}

#[test]
fn a_quote_left_open_is_reported_and_not_read_into_memory() {
    let mut table = format!("{HEADER}ada,1680,920,760,1000\n\"bea,1680,920,760,1000\n");
    for n in 0..100_000 {
        table.push_str(&format!("p{n},1680,920,760,1000\n"));
    }
    let place = place(JOB, table);
    let message = batch(&place, &[]).failed(2);
    assert!(
        message.contains("the row that begins in line 3 is longer than"),
        "{message}"
    );
    assert!(!place.path().join("out").exists());
}
