//! Folders that this user may not write.
#![cfg(unix)]

use std::fs;
use std::os::unix::fs::PermissionsExt as _;
use std::path::Path;
use std::process::{Command, Stdio};

use super::files::{PEOPLE, TABLE};
use crate::support::command::{Ran, job, skip};

/// A user without rights: `nobody` on most systems; any number that is no user's will do.
const NOBODY: &str = "65534";

/// A command of a user who owns nothing here; as it is, if this user has no more rights than
/// others. None if the rights cannot be given up.
fn unprivileged(folder: &Path) -> Option<Command> {
    let probe = folder.join("probe");
    fs::create_dir(&probe).unwrap();
    fs::set_permissions(&probe, fs::Permissions::from_mode(0o555)).unwrap();
    let writes_anywhere = fs::write(probe.join("file"), "").is_ok();
    fs::remove_dir_all(&probe).unwrap();
    let tool = folder.join("blockwright");
    if !writes_anywhere {
        return Some(Command::new(tool));
    }
    let mut command = Command::new("setpriv");
    command.args(["--reuid", NOBODY, "--regid", NOBODY, "--clear-groups", "--"]);
    let mut reached = Command::new("setpriv");
    reached
        .args(["--reuid", NOBODY, "--regid", NOBODY, "--clear-groups", "--"])
        .arg(&tool)
        .arg("--version")
        .stdout(Stdio::null())
        .stderr(Stdio::null());
    if !reached.status().is_ok_and(|status| status.success()) {
        return None;
    }
    command.arg(tool);
    Some(command)
}

#[test]
fn a_folder_that_may_not_be_written_is_reported_and_stays_as_it_is() {
    // Among the temporary files of the system, where another user may go.
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    fs::set_permissions(at, fs::Permissions::from_mode(0o755)).unwrap();
    fs::copy(env!("CARGO_BIN_EXE_blockwright"), at.join("blockwright")).unwrap();
    fs::write(at.join("job.yaml"), job("skirt")).unwrap();
    fs::write(at.join("table.yaml"), TABLE).unwrap();
    fs::write(at.join("people.csv"), PEOPLE).unwrap();
    let closed = at.join("closed");
    let commands: [&[&str]; 4] = [
        &["draft", "job.yaml"],
        &["grade", "job.yaml", "table.yaml"],
        &[
            "lay", "job.yaml", "--width", "140cm", "--seed", "1", "--rounds", "1",
        ],
        &["batch", "job.yaml", "people.csv"],
    ];
    for args in commands {
        let Some(mut command) = unprivileged(at) else {
            return skip("this user may write anywhere and cannot give that up");
        };
        // An earlier result that belongs to who runs the test, in a folder that is closed.
        fs::create_dir(&closed).unwrap();
        let made = Command::new(at.join("blockwright"))
            .args(args)
            .args(["-o", "closed/old"])
            .current_dir(at)
            .output()
            .unwrap();
        Ran::from(&made).done();
        let old = closed.join("old");
        let names = |folder: &Path| {
            let mut names: Vec<_> = fs::read_dir(folder)
                .unwrap()
                .map(|entry| entry.unwrap().file_name())
                .collect();
            names.sort();
            names
        };
        let whole = names(&old);
        for folder in [&old, &closed] {
            fs::set_permissions(folder, fs::Permissions::from_mode(0o555)).unwrap();
        }
        command.args(args).current_dir(at);
        for more in [&["-o", "closed/new"][..], &["-o", "closed/old", "--force"]] {
            let mut command = again(&command);
            let ran = Ran::from(&command.args(more).output().unwrap());
            let message = ran.failed(2);
            assert!(
                message.contains("nothing was written: cannot") && message.contains("closed"),
                "{args:?} {more:?}: {message}"
            );
        }
        assert_eq!(names(&old), whole, "{args:?}");
        assert_eq!(names(&closed), ["old"], "{args:?}");
        // A job that may not be read is reported too.
        fs::set_permissions(at.join("job.yaml"), fs::Permissions::from_mode(0o200)).unwrap();
        let message = Ran::from(&again(&command).args(["-o", "new"]).output().unwrap()).failed(2);
        assert!(
            message.starts_with("error: job.yaml: the file cannot be read"),
            "{message}"
        );
        fs::set_permissions(at.join("job.yaml"), fs::Permissions::from_mode(0o644)).unwrap();
        for folder in [&closed, &old] {
            fs::set_permissions(folder, fs::Permissions::from_mode(0o755)).unwrap();
        }
        fs::remove_dir_all(&closed).unwrap();
    }
}

/// The same command once more.
fn again(command: &Command) -> Command {
    let mut same = Command::new(command.get_program());
    same.args(command.get_args());
    if let Some(folder) = command.get_current_dir() {
        same.current_dir(folder);
    }
    same
}
