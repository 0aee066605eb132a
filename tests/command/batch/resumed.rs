//! A batch that was killed is taken up where it stopped, and gives the same bytes.

use std::fs::{self, OpenOptions};
use std::io::Write as _;
use std::process::Stdio;
use std::time::{Duration, Instant};

use super::company::{DRESS, batch, people, place, results};
use crate::support::command::{Place, skip};

const PART: &str = "out/results.jsonl.part";

/// Starts a batch and kills it (SIGKILL on Unix) once it has written something.
fn killed(place: &Place, more: &[&str]) -> usize {
    let mut args = vec!["batch", "job.yaml", "people.csv", "-o", "out"];
    args.extend(more);
    let mut child = place.command(&args).stdout(Stdio::null()).spawn().unwrap();
    let part = place.path().join(PART);
    let before = fs::metadata(&part).map_or(0, |m| m.len());
    let patience = Instant::now();
    while fs::metadata(&part).map_or(0, |m| m.len()) <= before {
        assert!(
            patience.elapsed() < Duration::from_secs(120),
            "nothing was written"
        );
        assert!(
            child.try_wait().unwrap().is_none(),
            "it ended before it was killed"
        );
        std::thread::sleep(Duration::from_millis(1));
    }
    child.kill().unwrap();
    child.wait().unwrap();
    let text = fs::read(&part).unwrap();
    text.iter().filter(|byte| **byte == b'\n').count()
}

/// Rows enough for several rounds of one thread.
const ROWS: u32 = 200;

fn undisturbed(more: &[&str]) -> String {
    let place = place(DRESS, people(ROWS));
    batch(&place, more).done();
    results(&place)
}

#[test]
fn killed_twice_it_ends_with_the_same_bytes() {
    for more in [&["--threads", "1"][..], &["--threads", "1", "--patterns"]] {
        let place = place(DRESS, people(ROWS));
        let first = killed(&place, more);
        assert!(first > 0 && first < ROWS as usize, "{first}");
        assert!(!place.path().join("out/results.jsonl").exists());
        // A line torn in the middle, as a kill during a write leaves it.
        let mut part = OpenOptions::new()
            .append(true)
            .open(place.path().join(PART))
            .unwrap();
        part.write_all(b"{\"id\":\"p0032\",\"status\":\"o").unwrap();
        drop(part);
        let second = killed(&place, more);
        assert!(
            second > first && second < ROWS as usize,
            "{first}, {second}"
        );
        // Taken up with another number of threads.
        let message = batch(&place, &[more, &["--threads", "2"][..]].concat()[2..]).done();
        assert!(
            message.contains(&format!("Taken up behind row {second},")),
            "{message}"
        );
        assert!(message.contains("200 wearers: "), "{message}");
        assert_eq!(place.names("out"), ["results.jsonl"]);
        assert_eq!(results(&place), undisturbed(more));
    }
}

#[test]
fn what_was_taken_up_is_in_the_report() {
    let mut table = people(ROWS);
    // Twice there, in the part that is done first.
    table = table.replace("p0003,", "p0002,");
    let place = place(DRESS, &table);
    killed(&place, &["--threads", "1"]);
    let resumed = batch(&place, &["--json"]).done();
    let whole = batch(&place, &["--json", "--force"]).done();
    let read = |text: &str| {
        let mut report: serde_json::Value = serde_json::from_str(text).unwrap();
        let map = report.as_object_mut().unwrap();
        map.remove("seconds");
        (map.remove("taken_up").unwrap(), report)
    };
    let ((taken_up, resumed), (none, whole)) = (read(&resumed), read(&whole));
    assert_eq!(resumed, whole);
    assert_eq!(whole["repeated_ids"], 1);
    assert!(taken_up.as_u64() > Some(0) && none == 0);
}

#[test]
fn another_job_or_table_leaves_the_part_alone() {
    let place = place(DRESS, people(ROWS));
    killed(&place, &["--threads", "1"]);
    let part = fs::read(place.path().join(PART)).unwrap();
    let refused = |more: &[&str], expected: &str| {
        let message = batch(&place, more).failed(2);
        assert!(
            message.contains("out: the folder holds an unfinished batch, and"),
            "{message}"
        );
        assert!(message.contains(expected), "{message}");
        assert_eq!(fs::read(place.path().join(PART)).unwrap(), part);
    };
    refused(&["--patterns"], "it differs in --patterns");
    place.write("job.yaml", DRESS.replace("12", "13"));
    refused(&[], "its job file was another");
    place.write("job.yaml", DRESS);
    place.write("people.csv", people(ROWS - 1));
    refused(&[], "its people file was another");
    fs::remove_file(place.path().join("out/results.jsonl.part.json")).unwrap();
    refused(&[], "nothing says which job it belongs to");
    // --force begins anew.
    let message = batch(&place, &["--force"]).done();
    assert!(!message.contains("Taken up"), "{message}");
    assert_eq!(results(&place).lines().count(), ROWS as usize - 1);
    assert_eq!(place.names("out"), ["results.jsonl"]);
}

#[test]
fn lines_that_are_not_those_of_their_rows_are_made_again() {
    let place = place(DRESS, people(ROWS));
    killed(&place, &["--threads", "1"]);
    let path = place.path().join(PART);
    let part = fs::read_to_string(&path).unwrap();
    let mut lines: Vec<&str> = part.lines().collect();
    lines.remove(10);
    fs::write(&path, lines.join("\n") + "\n").unwrap();
    let message = batch(&place, &[]).done();
    assert!(message.contains("Taken up behind row 10,"), "{message}");
    assert_eq!(results(&place), undisturbed(&[]));
}

#[test]
fn two_runs_do_not_write_one_folder() {
    let place = place(DRESS, people(2_000));
    let mut child = place
        .command(&[
            "batch",
            "job.yaml",
            "people.csv",
            "-o",
            "out",
            "--threads",
            "1",
        ])
        .stdout(Stdio::null())
        .spawn()
        .unwrap();
    while fs::metadata(place.path().join(PART)).map_or(0, |m| m.len()) == 0 {
        std::thread::sleep(Duration::from_millis(1));
    }
    let message = batch(&place, &[]).failed(2);
    child.kill().unwrap();
    child.wait().unwrap();
    assert!(
        message.contains("another run is writing this folder"),
        "{message}"
    );
}

#[test]
fn a_finished_result_is_replaced_by_force_only_and_in_one_step() {
    let place = place(DRESS, people(ROWS));
    batch(&place, &[]).done();
    let before = results(&place);
    let message = batch(&place, &[]).failed(2);
    assert!(
        message.contains("holds something already (results.jsonl)"),
        "{message}"
    );
    place.write("job.yaml", format!("{DRESS}ease: loose\n"));
    killed(&place, &["--threads", "1", "--force"]);
    assert_eq!(
        results(&place),
        before,
        "the old one stands until the new one is whole"
    );
    let message = batch(&place, &["--force"]).done();
    assert!(message.contains("Taken up behind row"), "{message}");
    assert_ne!(results(&place), before);
    // Nobody else's files.
    place.write("out/notes.txt", "hem by hand");
    let message = batch(&place, &["--force"]).failed(2);
    assert!(message.contains("notes.txt"), "{message}");
    fs::remove_file(place.path().join("out/notes.txt")).unwrap();
    place.write("out/results.jsonl", "{\"score\": 3}\n");
    batch(&place, &["--force"]).failed(2);
    assert_eq!(results(&place), "{\"score\": 3}\n");
}

#[test]
fn a_full_disk_keeps_what_was_finished() {
    let place = place(DRESS, people(ROWS));
    fs::create_dir(place.path().join("disk")).unwrap();
    let tool = env!("CARGO_BIN_EXE_blockwright");
    // A disk of 24 KiB, seen by this shell alone.
    let script = format!(
        "mount -t tmpfs -o size=24k none disk || exit 77; \
         '{tool}' batch job.yaml people.csv -o disk/out 2>message; echo $? >code; \
         mount -o remount,size=4m disk && '{tool}' batch job.yaml people.csv -o disk/out >again; \
         cp disk/out/results.jsonl kept; exit 0"
    );
    let run = std::process::Command::new("unshare")
        .args(["--user", "--map-root-user", "--mount", "sh", "-c", &script])
        .current_dir(place.path())
        .status();
    if !run.is_ok_and(|status| status.success()) {
        return skip("no small disk can be mounted here");
    }
    let read = |name: &str| fs::read_to_string(place.path().join(name)).unwrap();
    assert_eq!(read("code"), "2\n");
    assert!(
        read("message").contains("what was finished is kept"),
        "{}",
        read("message")
    );
    assert!(
        read("again").contains("Taken up behind row"),
        "{}",
        read("again")
    );
    assert_eq!(read("kept"), undisturbed(&[]));
}
