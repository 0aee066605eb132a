#![doc = include_str!("document.md")]
