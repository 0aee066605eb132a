#![doc = include_str!("range.md")]
