#![doc = include_str!("fit.md")]
