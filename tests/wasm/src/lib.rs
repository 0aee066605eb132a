//! The library as a WebAssembly module, asked by `tests/wasm/run.mjs`.

#[path = "../../support/seeded_jobs.rs"]
mod seeded_jobs;

/// Hands a text over: its place in memory above 32 bits, its length below. It is never freed.
fn handed_over(text: String) -> u64 {
    let text: &'static [u8] = Box::leak(text.into_boxed_str().into_boxed_bytes());
    ((text.as_ptr() as usize as u64) << 32) | text.len() as u64
}

/// What comes of a job: a line for each file.
// A name that the other side can ask for; there is no other item of that name.
#[unsafe(no_mangle)]
pub extern "C" fn summary(number: u32) -> u64 {
    handed_over(seeded_jobs::summary(number))
}

/// The files themselves, to look at a difference.
#[unsafe(no_mangle)]
pub extern "C" fn whole(number: u32) -> u64 {
    handed_over(seeded_jobs::whole(number))
}
