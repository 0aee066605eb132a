#![doc = include_str!("alterations.md")]
