//! The command `page`: a page in the browser, served from this machine for this machine.
//!
//! It listens on loopback alone. What it gives without the run's token is the page itself, which holds
//! no data; all else are messages by `POST`, with the token in a header and a host and an origin that
//! are this server's. It touches files of one folder alone, under names of its own.

mod address;
mod assets;
mod folder;
mod guard;
mod serve;
mod talk;

pub(crate) use serve::{PageError, PageOptions, serve};
