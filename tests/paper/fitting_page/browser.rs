//! The page as a browser reads it.

use super::tools::{CAPTIONS, TUNIC, page};
use std::process::Command;

/// The page as a browser has it after loading, if there is one.
fn loaded(html: &str) -> Option<String> {
    let folder = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    let file = folder.path().join("fitting.html");
    std::fs::write(&file, html).unwrap();
    let profile = folder.path().join("profile");
    let output = Command::new("chromium")
        .args([
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-background-networking",
            "--dump-dom",
        ])
        .arg(format!("--user-data-dir={}", profile.display()))
        .arg(format!("file://{}", file.display()))
        .output()
        .ok()?;
    output
        .status
        .success()
        .then(|| String::from_utf8_lossy(&output.stdout).into_owned())
}

#[test]
fn a_browser_finds_every_table_and_figure() {
    let html = page(TUNIC, &[]);
    let Some(dom) = loaded(&html) else {
        eprintln!("SKIPPED: no chromium that runs, the page was not loaded in a browser");
        return;
    };
    for caption in CAPTIONS {
        assert!(
            dom.contains(&format!("<caption>{caption}</caption>")),
            "{caption}"
        );
    }
    for tag in ["<table", "<tr", "<svg", "<path", "<input", "<h2"] {
        let count = |text: &str| text.matches(tag).count();
        assert_eq!(count(&dom), count(&html), "{tag}");
    }
    // The scripts a page could have would have run by now: there are none.
    assert!(!dom.contains("<script"));
}
