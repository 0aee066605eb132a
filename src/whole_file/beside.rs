//! A file in the making beside its place.

use std::io::{self, Write as _};
use std::path::Path;

use tempfile::NamedTempFile;

/// A file in the making in that folder, complete and on the disk; `persist` gives it its name.
pub(crate) fn beside(folder: &Path, bytes: &[u8]) -> io::Result<NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(".blockwright-").suffix(".part");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        builder.permissions(std::fs::Permissions::from_mode(0o644));
    }
    let mut file = builder.tempfile_in(folder)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    Ok(file)
}
