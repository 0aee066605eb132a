#![doc = include_str!("measuring.md")]
