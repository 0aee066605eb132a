#![doc = include_str!("signs.md")]
