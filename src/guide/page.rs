#![doc = include_str!("page.md")]
