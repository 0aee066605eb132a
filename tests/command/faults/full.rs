//! Files that may not grow: a limit on their size, and outputs that are full or closed.

use std::fs;
use std::process::{Command, Stdio};

use super::files::{PEOPLE, place};
use crate::support::command::{Place, Ran, job, skip};

/// The commands that write a folder, here `out`.
const COMMANDS: [&[&str]; 4] = [
    &["draft", "job.yaml", "-o", "out"],
    &["grade", "job.yaml", "table.yaml", "-o", "out"],
    &[
        "lay", "job.yaml", "--width", "140cm", "--seed", "1", "--rounds", "1", "-o", "out",
    ],
    &["batch", "job.yaml", "people.csv", "-o", "out", "--patterns"],
];

/// Runs the tool while no file may grow beyond so many blocks of 512 bytes. What is over is
/// refused to the tool by the system as on a full disk, since the shell sets aside the signal.
fn limited(place: &Place, blocks: u32, args: &[&str]) -> Option<Ran> {
    let script = format!(
        "trap '' XFSZ; ulimit -f {blocks} || exit 99; \"$0\" \"$@\" >message 2>&1; echo $? >code"
    );
    let status = Command::new("sh")
        .args(["-c", &script, env!("CARGO_BIN_EXE_blockwright")])
        .args(args)
        .current_dir(place.path())
        .status();
    if !status.is_ok_and(|status| status.success()) {
        skip("the size of files cannot be limited here");
        return None;
    }
    let read = |name: &str| {
        let path = place.path().join(name);
        let text = fs::read_to_string(&path).unwrap();
        fs::remove_file(path).unwrap();
        text
    };
    let (code, err) = (read("code").trim().parse().unwrap(), read("message"));
    assert!(!err.contains("panicked"), "{err}");
    Some(Ran {
        code,
        out: String::new(),
        err,
    })
}

fn snapshot(place: &Place, folder: &str) -> Vec<(String, Vec<u8>)> {
    let names = place.names(folder).into_iter();
    names
        .map(|name| {
            let bytes = fs::read(place.path().join(folder).join(&name)).unwrap();
            (name, bytes)
        })
        .collect()
}

#[cfg(unix)]
#[test]
fn a_file_that_may_not_grow_leaves_nothing_or_the_old_result() {
    for args in COMMANDS {
        let place = place();
        // Enough rows that a batch cannot end within the limit.
        place.write(
            "people.csv",
            PEOPLE.to_owned() + &"bea,1700,930,770,1010\n".repeat(40),
        );
        let before = place.names(".");
        let Some(ran) = limited(&place, 4, args) else {
            return;
        };
        assert_eq!(ran.code, 2, "{args:?}: {ran:?}");
        assert!(
            ran.err.contains("cannot write") && ran.err.contains("out"),
            "{}",
            ran.err
        );
        if args[0] == "batch" {
            // What was finished is kept, and never under the name of the whole.
            assert!(!place.path().join("out/results.jsonl").exists());
            place.run(args).done();
        } else {
            assert_eq!(place.names("."), before, "{args:?}");
            place.run(args).done();
        }
        let whole = snapshot(&place, "out");
        let ran = limited(&place, 4, &[args, &["--force"]].concat()).unwrap();
        assert_eq!(ran.code, 2, "{args:?}: {ran:?}");
        let left = snapshot(&place, "out");
        assert!(whole.iter().all(|file| left.contains(file)), "{args:?}");
        assert_eq!(place.names(".").len(), before.len() + 1);
    }
}

#[cfg(unix)]
#[test]
fn an_output_that_is_closed_or_full_loses_no_result() {
    for args in COMMANDS {
        let place = place();
        let mut child = place
            .command(args)
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        drop(child.stdout.take());
        assert_eq!(child.wait().unwrap().code(), Some(0), "{args:?}");
        let whole = snapshot(&place, "out");
        let forced = [args, &["--force"]].concat();
        for script in ["exec >&-", "exec >/dev/full", "exec <&-"] {
            let output = Command::new("sh")
                .args(["-c", &format!("{script}; exec \"$0\" \"$@\"")])
                .arg(env!("CARGO_BIN_EXE_blockwright"))
                .args(&forced)
                .current_dir(place.path())
                .output()
                .unwrap();
            let ran = Ran::from(&output);
            let expected = if script.contains("full") { 2 } else { 0 };
            assert_eq!(ran.code, expected, "{script} {args:?}: {ran:?}");
            assert!(snapshot(&place, "out") == whole, "{script} {args:?}");
        }
    }
}

#[test]
fn a_job_that_is_wrong_leaves_the_old_result() {
    let place = place();
    place.run(COMMANDS[0]).done();
    let whole = snapshot(&place, "out");
    place.write("job.yaml", job("skirt").replace("92", "9"));
    place
        .run(&["draft", "job.yaml", "-o", "out", "--force"])
        .failed(1);
    assert!(snapshot(&place, "out") == whole);
}
