//! The tool run with bounded time and memory.

use std::fs::{self, File};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

use crate::support::command::{Place, Ran};

/// The longest a command may take: a hang is what is guarded against, in an unoptimised build
/// on a busy machine.
const LONGEST: Duration = Duration::from_secs(60);

/// The most address space that a command may take, in KiB; threads and the allocator reserve
/// a good part of it.
const MOST_MEMORY: &str = "1500000";

/// The command of these arguments, its memory bounded where the shell can do that.
fn bounded(place: &Place, args: &[&str]) -> Command {
    if !cfg!(target_os = "linux") {
        return place.command(args);
    }
    let mut command = Command::new("sh");
    let script = format!("ulimit -v {MOST_MEMORY} || exit 99; exec \"$0\" \"$@\"");
    command
        .args(["-c", &script, env!("CARGO_BIN_EXE_blockwright")])
        .args(args)
        .current_dir(place.path());
    command
}

/// Runs the tool to its end; it must end in time, without a panic, with 0, 1 or 2.
pub(crate) fn guarded(place: &Place, args: &[&str]) -> Ran {
    let outputs = tempfile::tempdir().unwrap();
    let file = |name: &str| File::create(outputs.path().join(name)).unwrap();
    let mut child = bounded(place, args)
        .stdin(Stdio::null())
        .stdout(file("out"))
        .stderr(file("err"))
        .spawn()
        .unwrap();
    let begun = Instant::now();
    let status = loop {
        if let Some(status) = child.try_wait().unwrap() {
            break status;
        }
        if begun.elapsed() > LONGEST {
            child.kill().unwrap();
            child.wait().unwrap();
            panic!("{args:?} does not end");
        }
        std::thread::sleep(Duration::from_millis(3));
    };
    let read = |name: &str| fs::read(outputs.path().join(name)).unwrap();
    Ran::from(&std::process::Output {
        status,
        stdout: read("out"),
        stderr: read("err"),
    })
}

/// Runs what must be refused: a message that begins as all do, nothing written; the message.
pub(crate) fn refused(place: &Place, args: &[&str]) -> String {
    let before = place.names(".");
    let ran = guarded(place, args);
    assert!([1, 2].contains(&ran.code), "{args:?}: {ran:?}");
    assert_eq!(ran.out, "", "{args:?}");
    assert!(ran.err.starts_with("error: "), "{args:?}: {}", ran.err);
    assert!(ran.err.len() < 40_000, "{args:?}: {} bytes", ran.err.len());
    let signs = |c: char| c.is_control() && c != '\n';
    assert!(!ran.err.contains(signs), "{args:?}: {}", ran.err);
    assert_eq!(place.names("."), before, "{args:?}");
    ran.err
}
