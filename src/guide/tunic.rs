#![doc = include_str!("tunic.md")]
