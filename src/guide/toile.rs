#![doc = include_str!("toile.md")]
