//! A progress bar on anything over a second, on a terminal only.

use std::io::IsTerminal as _;
use std::time::{Duration, Instant};

use indicatif::{ProgressBar, ProgressStyle};

/// From when on a bar is shown.
const PATIENCE: Duration = Duration::from_secs(1);

/// How far a command has come.
pub(super) struct Progress {
    started: Instant,
    wanted: bool,
    total: u64,
    bar: Option<ProgressBar>,
}

impl Progress {
    /// Nothing is shown yet; nothing ever if `quiet` or where nobody would see it.
    pub(super) fn new(total: u64, quiet: bool) -> Self {
        Self {
            started: Instant::now(),
            wanted: !quiet && std::io::stderr().is_terminal(),
            total,
            bar: None,
        }
    }

    /// So many are done.
    pub(super) fn at(&mut self, done: u64) {
        if !self.wanted || self.started.elapsed() < PATIENCE {
            return;
        }
        if let Some(bar) = &self.bar {
            bar.set_position(done);
            return;
        }
        let style = "{bar:40} {pos} of {len} wearers, {eta} left";
        let style =
            ProgressStyle::with_template(style).unwrap_or_else(|_| ProgressStyle::default_bar());
        let bar = ProgressBar::new(self.total).with_style(style);
        bar.set_position(done);
        // The time left is estimated from what is done from here on, not from the jump to here.
        bar.reset_eta();
        self.bar = Some(bar);
    }

    /// Takes the bar away; how long it took.
    pub(super) fn finish(self) -> Duration {
        if let Some(bar) = self.bar {
            bar.finish_and_clear();
        }
        self.started.elapsed()
    }
}
