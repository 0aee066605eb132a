#![doc = include_str!("lay.md")]
