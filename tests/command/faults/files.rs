//! What is no file of ours, given to every command that reads one.

use std::fs;
use std::io::Write as _;
use std::process::{Command, Stdio};

use super::guard::{guarded, refused};
use crate::support::command::{Place, Ran, job, skip};

pub(crate) const TABLE: &str = "name: A range\nunit: cm\ncommon: {height: 168}\nsizes:\n  \
    '38': {bust_girth: 88, waist_girth: 72, hip_girth: 96}\n  \
    '40': {bust_girth: 92, waist_girth: 76, hip_girth: 100}\n";

pub(crate) const PEOPLE: &str = "id,height,bust_girth,waist_girth,hip_girth\n\
    ada,1680,920,760,1000\n";

/// A place with a sound file of every kind.
pub(crate) fn place() -> Place {
    let place = Place::with_job(&job("skirt"));
    place.write("table.yaml", TABLE);
    place.write("people.csv", PEOPLE);
    place
}

/// Every command that reads a file, with this one in the place of a sound one.
fn commands(bad: &str) -> Vec<Vec<&str>> {
    vec![
        vec!["check", bad],
        vec!["draft", bad, "-o", "out"],
        vec!["grade", bad, "table.yaml", "-o", "out"],
        vec!["grade", "job.yaml", bad, "-o", "out"],
        vec!["lay", bad, "--width", "140cm", "--seed", "1", "-o", "out"],
        vec!["batch", bad, "people.csv", "-o", "out"],
        vec!["batch", "job.yaml", bad, "-o", "out"],
        vec!["measurements", bad],
    ]
}

#[test]
fn what_is_no_text_of_ours_is_refused_by_every_command() {
    let place = place();
    let bomb = {
        let mut text = String::from("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for level in 1..10 {
            let refs = vec![format!("*a{}", level - 1); 9].join(", ");
            text.push_str(&format!("a{level}: &a{level} [{refs}]\n"));
        }
        text
    };
    let files: Vec<(&str, Vec<u8>)> = vec![
        ("empty", Vec::new()),
        ("garbage", (0..=255_u8).cycle().take(5000).collect()),
        ("not utf-8", b"title: caf\xe9\nblock: skirt\n".to_vec()),
        ("utf-16", b"\xff\xfet\x00i\x00t\x00l\x00e\x00".to_vec()),
        ("brackets", vec![b'['; 100_000]),
        ("braces", b"{a: ".repeat(50_000)),
        ("alias growth", bomb.into_bytes()),
        ("merge", b"a: &a {b: c}\n<<: [*a, *a]\n".to_vec()),
        ("one line", vec![b'k'; 1_000_000]),
        ("too large", vec![b'#'; 1024 * 1024 + 1]),
        (
            "equal keys",
            b"title: T\ntitle: T\nname: T\nname: T\n".to_vec(),
        ),
    ];
    for (name, bytes) in files {
        place.write(name, bytes);
        for args in commands(name) {
            let message = refused(&place, &args);
            assert!(message.contains(name), "{args:?}: {message}");
        }
    }
}

#[test]
fn what_is_no_file_at_all_is_refused_by_every_command() {
    let place = place();
    fs::create_dir(place.path().join("folder")).unwrap();
    let mut all = vec!["folder", "gone.yaml", "job.yaml/inside"];
    if cfg!(unix) {
        let path = |name: &str| place.path().join(name);
        #[cfg(unix)]
        std::os::unix::fs::symlink("loop", path("loop")).unwrap();
        all.push("loop");
        let made = Command::new("mkfifo").arg(path("pipe")).status();
        if made.is_ok_and(|status| status.success()) {
            all.push("pipe");
        } else {
            skip("no named pipe can be made");
        }
        // The first never ends.
        all.extend(["/dev/zero", "/dev/null"]);
    }
    for bad in all {
        for args in commands(bad) {
            let message = refused(&place, &args);
            assert!(message.contains(bad), "{args:?}: {message}");
        }
    }
    // As the file that a job names.
    for (body, expected) in [
        ("/dev/zero", "larger than 1048576 bytes"),
        ("pipe", "a named pipe"),
        ("folder", "a folder"),
    ] {
        if !cfg!(unix) || !place.path().join("pipe").exists() {
            continue;
        }
        place.write(
            "bad.yaml",
            format!("title: T\nblock: skirt\nbody: {body}\n"),
        );
        let message = refused(&place, &["draft", "bad.yaml", "-o", "out"]);
        assert!(
            message.starts_with("error: bad.yaml:3:7: body: ") && message.contains(expected),
            "{message}"
        );
        fs::remove_file(place.path().join("bad.yaml")).unwrap();
    }
}

#[cfg(unix)]
#[test]
fn a_pipe_that_a_shell_has_made_is_read() {
    let place = place();
    if !fs::exists("/dev/stdin").unwrap() {
        return skip("there is no /dev/stdin");
    }
    let mut child = place
        .command(&["check", "/dev/stdin"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut input = child.stdin.take().unwrap();
    input.write_all(job("skirt").as_bytes()).unwrap();
    drop(input);
    Ran::from(&child.wait_with_output().unwrap()).done();
}

#[cfg(unix)]
#[test]
fn an_output_that_is_no_folder_stays_what_it_is() {
    let place = place();
    place.write("file", "mine");
    let path = |name: &str| place.path().join(name);
    std::os::unix::fs::symlink("file", path("to_file")).unwrap();
    std::os::unix::fs::symlink("gone", path("dangling")).unwrap();
    std::os::unix::fs::symlink("loop", path("loop")).unwrap();
    place.write("foreign/notes.txt", "mine");
    std::os::unix::fs::symlink("foreign", path("to_foreign")).unwrap();
    let pipe = Command::new("mkfifo").arg(path("pipe")).status();
    for out in [
        "file",
        "to_file",
        "dangling",
        "loop",
        "foreign",
        "to_foreign",
        "pipe",
        "/dev/null",
    ] {
        if out == "pipe" && !pipe.as_ref().is_ok_and(|status| status.success()) {
            continue;
        }
        for force in [&[][..], &["--force"]] {
            for args in [
                &["draft", "job.yaml", "-o", out][..],
                &["grade", "job.yaml", "table.yaml", "-o", out],
                &["batch", "job.yaml", "people.csv", "-o", out],
                &[
                    "lay", "job.yaml", "--width", "140cm", "--seed", "1", "--rounds", "1", "-o",
                    out,
                ],
            ] {
                let message = refused(&place, &[args, force].concat());
                assert!(message.starts_with(&format!("error: {out}: ")), "{message}");
            }
        }
    }
    assert_eq!(fs::read_to_string(path("file")).unwrap(), "mine");
    assert_eq!(place.names("foreign"), ["notes.txt"]);
}

#[test]
fn foreign_line_ends_and_a_mark_of_byte_order_change_nothing() {
    let place = place();
    let foreign = |text: &str| format!("\u{feff}{}", text.replace('\n', "\r\n"));
    place.write("job2.yaml", foreign(&job("skirt")));
    place.write("table2.yaml", foreign(TABLE));
    place.write("people2.csv", foreign(PEOPLE));
    for (args, out) in [
        (&["draft", "job.yaml", "-o", "a"][..], "a/pattern.json"),
        (&["draft", "job2.yaml", "-o", "b"], "b/pattern.json"),
        (
            &["grade", "job.yaml", "table.yaml", "-o", "c"],
            "c/range.json",
        ),
        (
            &["grade", "job2.yaml", "table2.yaml", "-o", "d"],
            "d/range.json",
        ),
        (
            &["batch", "job.yaml", "people.csv", "-o", "e"],
            "e/results.jsonl",
        ),
        (
            &["batch", "job2.yaml", "people2.csv", "-o", "f"],
            "f/results.jsonl",
        ),
    ] {
        guarded(&place, args).done();
        assert!(place.path().join(out).exists());
    }
    for (one, other) in [
        ("a/pattern.json", "b/pattern.json"),
        ("c/range.json", "d/range.json"),
        ("e/results.jsonl", "f/results.jsonl"),
    ] {
        let read = |name: &str| fs::read(place.path().join(name)).unwrap();
        assert!(read(one) == read(other), "{one} {other}");
    }
}
