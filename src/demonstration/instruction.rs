//! What a cutter says of one piece.

/// What is done with a piece: what to cut, what to move, and what is drawn besides the outline.
#[derive(Debug)]
pub(super) struct Instruction {
    pub cut: String,
    pub moved: String,
    pub drawn: String,
}

impl Instruction {
    pub fn new(cut: impl Into<String>, moved: impl Into<String>) -> Self {
        Self {
            cut: cut.into(),
            moved: moved.into(),
            drawn: String::new(),
        }
    }

    pub fn drawn(mut self, drawn: impl Into<String>) -> Self {
        self.drawn = drawn.into();
        self
    }
}
