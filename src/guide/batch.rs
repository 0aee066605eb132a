#![doc = include_str!("batch.md")]
