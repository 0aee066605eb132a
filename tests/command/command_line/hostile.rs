//! Files made to break a reader: all end with 2 and a sentence.

use std::time::{Duration, Instant};

use crate::support::command::{BODY, Place, job};

#[test]
fn no_file_breaks_the_tool() {
    let place = Place::new();
    let bomb = {
        let mut text = String::from("title: T\na0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for level in 1..10 {
            let refs = vec![format!("*a{}", level - 1); 9].join(", ");
            text.push_str(&format!("a{level}: &a{level} [{refs}]\n"));
        }
        text
    };
    let files: Vec<(&str, Vec<u8>)> = vec![
        ("empty", Vec::new()),
        ("blank", b"\n\n  \n".to_vec()),
        ("comment", b"# nothing\n".to_vec()),
        ("null", b"~\n".to_vec()),
        ("scalar", b"42\n".to_vec()),
        ("garbage", (0..=255_u8).cycle().take(5000).collect()),
        ("zeros", vec![0; 5000]),
        ("not utf-8", b"title: caf\xe9\nblock: skirt\n".to_vec()),
        ("utf-16", b"\xff\xfet\x00i\x00t\x00l\x00e\x00".to_vec()),
        ("brackets", vec![b'['; 100_000]),
        ("braces", b"{a: ".repeat(50_000)),
        ("dashes", b"- ".repeat(50_000)),
        ("alias bomb", bomb.into_bytes()),
        ("self alias", b"title: &a [*a]\n".to_vec()),
        (
            "duplicate",
            format!("{}title: again\n", job("skirt")).into_bytes(),
        ),
        (
            "two documents",
            format!("{0}---\n{0}", job("skirt")).into_bytes(),
        ),
        (
            "unclosed",
            b"title: \"never closed\nblock: skirt\n".to_vec(),
        ),
        ("tab", b"title: T\n\tblock: skirt\n".to_vec()),
        (
            "tag",
            b"title: !!binary AAAA\nblock: !evil skirt\n".to_vec(),
        ),
        (
            "long line",
            format!("title: T\n{}: 1\n", "k".repeat(500_000)).into_bytes(),
        ),
        (
            "many keys",
            (0..20_000)
                .flat_map(|n| format!("k{n}: {n}\n").into_bytes())
                .collect(),
        ),
        ("too large", vec![b'#'; 1024 * 1024 + 1]),
        (
            "strange keys",
            format!("{}? [a, b]\n: 1\n? {{c: d}}\n: 2\n", job("skirt")).into_bytes(),
        ),
        (
            "huge title",
            job("skirt")
                .replace("A block", &"long ".repeat(100_000))
                .into_bytes(),
        ),
        (
            "many blocks",
            job(&format!("[{}skirt]", "skirt, ".repeat(20_000))).into_bytes(),
        ),
        ("body list", b"title: T\nblock: skirt\nbody: [a]\n".to_vec()),
        (
            "body itself",
            b"title: T\nblock: skirt\nbody: 'body itself'\n".to_vec(),
        ),
        (
            "body nul",
            b"title: T\nblock: skirt\nbody: \"a\\0b\"\n".to_vec(),
        ),
        (
            "body long",
            format!("title: T\nblock: skirt\nbody: {}\n", "x".repeat(9000)).into_bytes(),
        ),
        ("body folder", b"title: T\nblock: skirt\nbody: .\n".to_vec()),
        ("body nan", job("skirt").replace("92", ".nan").into_bytes()),
        ("body inf", job("skirt").replace("92", "-.inf").into_bytes()),
        (
            "body 1e999",
            job("skirt").replace("92", "1e999").into_bytes(),
        ),
        (
            "escapes",
            b"title: T\nblock: \"\\e[31mred\\a\"\nbody: a\n".to_vec(),
        ),
    ];
    for (name, bytes) in files {
        place.write(name, bytes);
        for args in [
            &["check", name][..],
            &["draft", name, "-o", "out"],
            &["check", name, "--json"],
            &["measurements", name],
        ] {
            let started = Instant::now();
            let message = place.run(args).failed(2);
            assert!(
                started.elapsed() < Duration::from_secs(60),
                "{name} takes too long"
            );
            assert!(
                message.len() < 40_000,
                "{name}: {} bytes of problems",
                message.len()
            );
            assert!(
                !message.is_empty() && !message.contains(['\u{1b}', '\u{7}', '\0']),
                "{name}"
            );
            if args.contains(&"--json") {
                serde_json::from_str::<serde_json::Value>(&message).unwrap();
            }
        }
        assert!(!place.path().join("out").exists());
    }
}

#[test]
fn the_ends_of_what_a_job_may_say_are_drafted_or_refused() {
    let place = Place::new();
    for block in ["bodice", "skirt", "[bodice, skirt]"] {
        for (girths, width) in [(0, 0), (400, 80), (0, 80), (400, 0)] {
            for length in [200, 1400] {
                let text = format!(
                    "{}ease: {{bust: {girths}, waist: {girths}, hip: {girths}, \
                     back_width: {width}, armscye_depth: {width}, upper_arm: 0}}\n\
                     length: {length}\n",
                    job(block)
                );
                place.write("job.yaml", text);
                let ran = place.run(&["check", "job.yaml"]);
                assert!(
                    ran.code < 2,
                    "{block} {girths} {width} {length}: {}",
                    ran.err
                );
            }
        }
    }
}

#[test]
fn a_mark_of_byte_order_and_foreign_line_ends_are_no_fault() {
    let text = format!("\u{feff}{}", job("skirt").replace('\n', "\r\n"));
    Place::with_job(&text).run(&["check", "job.yaml"]).done();
    let place = Place::with_job(&format!(
        "\u{feff}{}fit: 1\r\n",
        job("skirt").replace('\n', "\r\n")
    ));
    let message = place.run(&["check", "job.yaml"]).failed(2);
    assert!(message.contains("job.yaml:4:1: `fit`"), "{message}");
}

#[test]
fn names_from_files_cannot_command_a_terminal() {
    let body = BODY.replace("name: Ada", "name: \"Ada\\e[31m\\nerror: all is lost\"");
    let place = Place::with_job(&format!("title: \"T\\e[2J\"\nblock: skirt\nbody: {body}\n"));
    let report = place.run(&["check", "job.yaml"]).done();
    assert!(
        !report.contains('\u{1b}') && !report.contains("\nerror:"),
        "{report}"
    );
}
