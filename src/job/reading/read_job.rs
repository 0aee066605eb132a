//! Jobs out of what serde reads.

use crate::job::{Job, JobFile};
use crate::measurements::Node;
use serde::de::{Deserialize, Deserializer, Error as _};

/// From a mapping as in a file. A body that stands in a file of its own is wanted when the job is
/// [resolved](Self::resolve).
impl<'de> Deserialize<'de> for JobFile {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::read(&Node::deserialize(deserializer)?, true).map_err(D::Error::custom)
    }
}

/// From a mapping as in a file, with the body in it.
impl<'de> Deserialize<'de> for Job {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let file = JobFile::deserialize(deserializer)?;
        file.resolve(None).map_err(D::Error::custom)
    }
}
