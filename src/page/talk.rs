//! Messages: those about the folder and other pages are answered here, all others by the library.

use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Mutex, PoisonError};
use std::time::{Duration, Instant};

use blockwright::message::answer;
use serde::Deserialize;
use serde_json::{Value, json};

use super::folder::{Folder, Kept, SaveError};

/// A page that was not heard of for so long is gone.
const GONE: Duration = Duration::from_secs(25);

/// What a run of the command knows.
pub(super) struct Talk {
    folder: Option<Folder>,
    /// Pages by the names they gave themselves, and when they were last heard of.
    pages: Mutex<BTreeMap<String, Instant>>,
    /// One page saves at a time.
    saving: Mutex<()>,
}

#[derive(Deserialize)]
#[serde(tag = "ask", rename_all = "snake_case")]
enum AboutFolder {
    /// A page begins.
    Hello { page: String },
    /// It is still there.
    Here { page: String },
    /// It is closed.
    Bye { page: String },
    /// It saves: unless it says so, only over what it has read.
    Save {
        read: Option<String>,
        files: BTreeMap<String, String>,
    },
}

impl Talk {
    pub(super) fn new(folder: Option<Folder>) -> Self {
        Self {
            folder,
            pages: Mutex::default(),
            saving: Mutex::default(),
        }
    }

    /// Answers a message. A fault of the library is an answer too.
    pub(super) fn answer(&self, message: &str) -> String {
        match serde_json::from_str::<AboutFolder>(message) {
            Ok(about) => self.about_folder(about).to_string(),
            Err(_) => catch_unwind(AssertUnwindSafe(|| answer(message))).unwrap_or_else(|_| {
                wrong(
                    "internal_fault",
                    "the program failed at this, which is a fault in it; please report it",
                    "undo the last change",
                )
                .to_string()
            }),
        }
    }

    /// How many other pages there are.
    fn others(&self, page: &str, stays: bool) -> usize {
        let mut pages = self.pages.lock().unwrap_or_else(PoisonError::into_inner);
        let now = Instant::now();
        pages.retain(|_, heard| now.duration_since(*heard) < GONE);
        if stays {
            let name: String = page.chars().take(64).collect();
            pages.insert(name, now);
        } else {
            pages.remove(page);
        }
        pages.len().saturating_sub(usize::from(stays))
    }

    fn about_folder(&self, about: AboutFolder) -> Value {
        match about {
            AboutFolder::Hello { page } => {
                let others = self.others(&page, true);
                let Some(folder) = &self.folder else {
                    return json!({"status": "ok", "folder": null, "others": 0});
                };
                let Kept { files, digest } = folder.read();
                json!({
                    "status": "ok", "folder": folder.name(), "files": files, "digest": digest,
                    "others": others, "alone": folder.is_alone(),
                })
            }
            AboutFolder::Here { page } => {
                let others = self.others(&page, true);
                let digest = self.folder.as_ref().map(Folder::digest);
                let others = if digest.is_some() { others } else { 0 };
                json!({"status": "ok", "others": others, "digest": digest})
            }
            AboutFolder::Bye { page } => {
                self.others(&page, false);
                json!({"status": "ok"})
            }
            AboutFolder::Save { read, files } => self.save(read.as_deref(), files),
        }
    }

    fn save(&self, read: Option<&str>, files: BTreeMap<String, String>) -> Value {
        let Some(folder) = &self.folder else {
            return wrong(
                "no_folder",
                "the page was opened without a folder",
                "download the files instead",
            );
        };
        let _one = self.saving.lock().unwrap_or_else(PoisonError::into_inner);
        let files: Vec<(String, String)> = files.into_iter().collect();
        match folder.save(&files, read) {
            Ok(Kept { digest, .. }) => json!({"status": "ok", "digest": digest}),
            Err(SaveError::Changed) => wrong(
                "changed_elsewhere",
                "another page or program has changed the files since they were opened here",
                "open theirs, or save over them",
            ),
            Err(SaveError::Name) => wrong(
                "no_such_file",
                "the page keeps other files than these",
                "save the job and the wearer",
            ),
            Err(SaveError::Write(error)) => wrong(
                "not_saved",
                &format!("nothing was saved: {error}"),
                "make room, or download the files instead",
            ),
        }
    }
}

fn wrong(code: &str, text: &str, cure: &str) -> Value {
    json!({"status": "wrong", "errors": [{"code": code, "text": text, "cure": cure}]})
}
