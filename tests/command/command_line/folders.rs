//! The folder is written whole or not at all, and nobody's files are lost.

use std::fs;
use std::process::Command;
use std::time::Duration;

use crate::support::command::{Place, Ran, job, skip};

const FILES: [&str; 5] = [
    "fitting.html",
    "pattern-a4.pdf",
    "pattern-sheet.pdf",
    "pattern.json",
    "pattern.svg",
];

#[test]
fn an_empty_folder_is_taken_and_a_full_one_refused() {
    let place = Place::with_job(&job("skirt"));
    fs::create_dir(place.path().join("out")).unwrap();
    place.run(&["draft", "job.yaml", "-o", "out/"]).done();
    assert_eq!(place.names("out"), FILES);
    let message = place.run(&["draft", "job.yaml", "-o", "out"]).failed(2);
    assert!(
        message.contains("out: the folder holds something already (fitting.html, "),
        "{message}"
    );
    assert!(message.contains("--force"), "{message}");
}

#[test]
fn force_replaces_an_earlier_result_whole() {
    let place = Place::with_job(&job("skirt"));
    place.run(&["draft", "job.yaml", "-o", "out"]).done();
    place.write("job.yaml", job("bodice"));
    place
        .run(&[
            "draft", "job.yaml", "-o", "out", "--force", "--paper", "letter",
        ])
        .done();
    // The A4 file of the skirt is gone with the rest of it.
    assert!(!place.names("out").contains(&"pattern-a4.pdf".to_owned()));
    let text = fs::read_to_string(place.path().join("out/pattern.json")).unwrap();
    assert!(text.contains("\"block\": \"bodice\""));
    assert_eq!(place.names("."), ["job.yaml", "out"]);
    // On a new name it has nothing to do.
    place
        .run(&["draft", "job.yaml", "-o", "new", "--force"])
        .done();
}

#[test]
fn force_touches_nothing_that_is_not_an_earlier_result() {
    let place = Place::with_job(&job("skirt"));
    place.run(&["draft", "job.yaml", "-o", "out"]).done();
    place.write("out/notes.txt", "took in 5 mm at the waist");
    place.write("out/photos/toile.jpg", "");
    let message = place
        .run(&["draft", "job.yaml", "-o", "out", "--force"])
        .failed(2);
    assert!(message.contains("notes.txt, photos"), "{message}");
    let notes = fs::read_to_string(place.path().join("out/notes.txt")).unwrap();
    assert_eq!(notes, "took in 5 mm at the waist");
    assert_eq!(place.names("out").len(), FILES.len() + 2);
    // Someone else's file that happens to have such a name.
    place.write("mine/pattern.svg", "<svg/>");
    let message = place
        .run(&["draft", "job.yaml", "-o", "mine", "--force"])
        .failed(2);
    assert!(message.contains("no pattern.json"), "{message}");
    place.write("mine/pattern.json", "{}");
    place
        .run(&["draft", "job.yaml", "-o", "mine", "--force"])
        .failed(2);
    assert_eq!(place.names("mine"), ["pattern.json", "pattern.svg"]);
}

#[test]
fn what_cannot_be_a_folder_is_refused() {
    let place = Place::with_job(&job("skirt"));
    for (output, expected) in [
        ("no/such/out", "the folder around it, no/such, is not there"),
        ("job.yaml", "this is not a folder"),
        ("job.yaml/out", ""),
        (".", "the folder the command runs in"),
        ("/", ""),
        ("..", ""),
        ("new/..", ""),
        ("", ""),
        (&"x".repeat(300), ""),
    ] {
        let message = place.run(&["draft", "job.yaml", "-o", output]).failed(2);
        assert!(message.contains(expected), "{output}: {message}");
    }
    assert_eq!(place.names("."), ["job.yaml"]);
}

#[test]
fn a_wrong_job_makes_no_folder() {
    let place = Place::with_job("title: T\n");
    place.run(&["draft", "job.yaml", "-o", "out"]).failed(2);
    assert_eq!(place.names("."), ["job.yaml"]);
}

#[cfg(unix)]
#[test]
fn links_are_followed_to_the_folder_itself() {
    let place = Place::with_job(&job("skirt"));
    fs::create_dir(place.path().join("real")).unwrap();
    std::os::unix::fs::symlink("real", place.path().join("link")).unwrap();
    place.run(&["draft", "job.yaml", "-o", "link"]).done();
    assert_eq!(place.names("real"), FILES);
    assert!(
        fs::symlink_metadata(place.path().join("link"))
            .unwrap()
            .is_symlink()
    );
    std::os::unix::fs::symlink("gone", place.path().join("dangling")).unwrap();
    place
        .run(&["draft", "job.yaml", "-o", "dangling"])
        .failed(2);
}

#[cfg(unix)]
#[test]
fn the_result_is_as_open_to_others_as_any_new_folder() {
    use std::os::unix::fs::PermissionsExt as _;
    let place = Place::with_job(&job("skirt"));
    fs::create_dir(place.path().join("plain")).unwrap();
    place.run(&["draft", "job.yaml", "-o", "out"]).done();
    let mode = |name| {
        fs::metadata(place.path().join(name))
            .unwrap()
            .permissions()
            .mode()
    };
    assert_eq!(mode("out"), mode("plain"));
}

#[cfg(unix)]
#[test]
fn a_place_that_cannot_be_written_is_reported() {
    use std::os::unix::fs::PermissionsExt as _;
    let place = Place::with_job(&job("skirt"));
    let locked = place.path().join("locked");
    fs::create_dir(&locked).unwrap();
    fs::set_permissions(&locked, fs::Permissions::from_mode(0o555)).unwrap();
    if fs::write(locked.join("probe"), "").is_ok() {
        skip("this user may write anywhere");
    } else {
        let message = place
            .run(&["draft", "job.yaml", "-o", "locked/out"])
            .failed(2);
        assert!(
            message.contains("nothing was written: cannot make a folder in locked"),
            "{message}"
        );
    }
    fs::set_permissions(&locked, fs::Permissions::from_mode(0o755)).unwrap();
    // Nobody can make a folder there.
    if fs::metadata("/proc/self").is_ok() {
        let message = place
            .run(&["draft", "job.yaml", "-o", "/proc/out"])
            .failed(2);
        assert!(
            message.contains("nothing was written: cannot make a folder in /proc"),
            "{message}"
        );
    }
}

#[test]
fn a_full_disk_leaves_nothing_and_the_old_result() {
    let place = Place::with_job(&job("[bodice, skirt]"));
    fs::create_dir(place.path().join("disk")).unwrap();
    let tool = env!("CARGO_BIN_EXE_blockwright");
    // A disk of 24 KiB, seen by this shell alone.
    let script = format!(
        "mount -t tmpfs -o size=24k none disk || exit 77; \
         '{tool}' draft job.yaml -o disk/out; echo $? >code; ls -A disk >left; \
         mount -o remount,size=4m disk && '{tool}' draft job.yaml -o disk/out >first && \
         mount -o remount,size=144k disk; \
         '{tool}' draft job.yaml -o disk/out --force; echo $? >code2; \
         ls -A disk >left2; cp disk/out/pattern.json kept; exit 0"
    );
    let run = Command::new("unshare")
        .args(["--user", "--map-root-user", "--mount", "sh", "-c", &script])
        .current_dir(place.path())
        .output();
    let output = match run {
        Ok(output) if output.status.code() == Some(0) => output,
        _ => return skip("no small disk can be mounted here"),
    };
    let read = |name: &str| fs::read_to_string(place.path().join(name)).unwrap();
    let message = Ran::from(&output).err;
    assert_eq!(
        (read("code").as_str(), read("left").as_str()),
        ("2\n", ""),
        "{message}"
    );
    assert!(
        message.contains("nothing was written: cannot write disk/out/"),
        "{message}"
    );
    assert_eq!(
        (read("code2").as_str(), read("left2").as_str()),
        ("2\n", "out\n"),
        "{message}"
    );
    assert!(read("kept").ends_with("}\n"));
}

#[cfg(unix)]
#[test]
fn killed_at_any_moment_it_leaves_no_half_folder() {
    let place = Place::with_job(&job("skirt"));
    let (mut killed, mut finished) = (0, 0);
    for moment in 0..40 {
        let mut child = place
            .command(&["draft", "job.yaml", "-o", "out"])
            .stdout(std::process::Stdio::null())
            .spawn()
            .unwrap();
        std::thread::sleep(Duration::from_millis(moment * 2));
        // By its own handle, and no matter if it has ended.
        let _ = child.kill();
        child.wait().unwrap();
        let out = place.path().join("out");
        if out.exists() {
            assert_eq!(place.names("out"), FILES);
            let text = fs::read_to_string(out.join("pattern.json")).unwrap();
            serde_json::from_str::<serde_json::Value>(&text).unwrap();
            fs::remove_dir_all(&out).unwrap();
            finished += 1;
        } else {
            killed += 1;
        }
    }
    assert!(killed > 0, "{killed} killed, {finished} finished");
}
