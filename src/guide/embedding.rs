#![doc = include_str!("embedding.md")]
