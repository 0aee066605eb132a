//! How far long work has come, and whether it is to go on.

use std::ops::ControlFlow;

/// How far long work has come.
///
/// Long work takes a `&mut dyn FnMut(Progress) -> ControlFlow<()>` and calls it again and again;
/// when that returns `ControlFlow::Break(())`, the work stops there. The library reads no clock:
/// whoever calls decides by time, by a button, or by what was reached.
///
/// ```
/// use blockwright::progress::Progress;
/// use std::ops::ControlFlow;
/// let mut show = |progress: Progress| {
///     println!("{} of {}", progress.done, progress.total);
///     if progress.done < 100 { ControlFlow::Continue(()) } else { ControlFlow::Break(()) }
/// };
/// assert!(show(Progress::new(3, 12)).is_continue());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Progress {
    /// How many steps are done: sizes, rows, rounds.
    pub done: u64,
    /// How many there will be.
    pub total: u64,
    /// The best that a search has found so far, in mm; none where nothing is searched.
    pub best: Option<f64>,
}

impl Progress {
    /// So many steps of so many are done.
    #[must_use]
    pub const fn new(done: u64, total: u64) -> Self {
        Self {
            done,
            total,
            best: None,
        }
    }

    /// With the best that was found so far, in mm.
    #[must_use]
    pub const fn with_best(self, best: f64) -> Self {
        Self {
            best: Some(best),
            ..self
        }
    }
}

/// How long work ended.
///
/// ```
/// use blockwright::progress::Ending;
/// use std::ops::ControlFlow;
/// assert_eq!(Ending::from(ControlFlow::Break(())), Ending::Stopped);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Ending {
    /// All of it was done.
    Complete,
    /// It was stopped before its end; what was done so far stands.
    Stopped,
}

impl From<ControlFlow<()>> for Ending {
    fn from(flow: ControlFlow<()>) -> Self {
        match flow {
            ControlFlow::Continue(()) => Self::Complete,
            ControlFlow::Break(()) => Self::Stopped,
        }
    }
}
