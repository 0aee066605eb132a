#![doc = include_str!("own_block.md")]
