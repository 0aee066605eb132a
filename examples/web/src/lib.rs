//! The library as a WebAssembly module: a message in, its answer out.
//!
//! Whoever asks calls `room` with the length of the message in bytes, writes the message there, calls
//! `ask`, and reads the answer where it says: its place in memory above 32 bits, its length below. Both
//! stay until the next message.

use std::sync::{Mutex, PoisonError};

static MESSAGE: Mutex<Vec<u8>> = Mutex::new(Vec::new());
static ANSWER: Mutex<String> = Mutex::new(String::new());

/// Makes room for a message; where it is.
// A name that the other side can ask for; there is no other item of that name.
#[unsafe(no_mangle)]
pub extern "C" fn room(length: usize) -> usize {
    let mut message = MESSAGE.lock().unwrap_or_else(PoisonError::into_inner);
    message.clear();
    message.resize(length, 0);
    message.as_ptr() as usize
}

/// Answers the message that was written.
#[unsafe(no_mangle)]
pub extern "C" fn ask() -> u64 {
    let message = MESSAGE.lock().unwrap_or_else(PoisonError::into_inner);
    let mut answer = ANSWER.lock().unwrap_or_else(PoisonError::into_inner);
    *answer = blockwright::message::answer(&String::from_utf8_lossy(&message));
    ((answer.as_ptr() as usize as u64) << 32) | answer.len() as u64
}
