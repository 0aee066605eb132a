//! Digests of files, to know them again.

use std::fmt::Write as _;

use sha2::{Digest as _, Sha256};

/// The digest of a text (SHA-256).
pub(super) fn digest(text: &str) -> String {
    digest_of(text.as_bytes())
}

/// The digest of some bytes (SHA-256).
pub(super) fn digest_of(bytes: &[u8]) -> String {
    let mut hasher = Sha256::new();
    hasher.update(bytes);
    hex(hasher)
}

/// What a hasher has come to, in hexadecimal.
pub(super) fn hex(hasher: Sha256) -> String {
    let mut text = String::new();
    for byte in hasher.finalize() {
        // Writing to a string cannot fail.
        let _ = write!(text, "{byte:02x}");
    }
    text
}
