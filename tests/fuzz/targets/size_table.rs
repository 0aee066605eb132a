#![no_main]

use libfuzzer_sys::fuzz_target;

#[allow(dead_code)]
#[path = "../../command/corpus/targets.rs"]
mod targets;

fuzz_target!(|bytes: &[u8]| targets::size_table(bytes));
