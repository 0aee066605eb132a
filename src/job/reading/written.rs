//! Jobs written with the keys of a job file, so that what was read goes out as it came in.

use super::read_body::JobBody;
#[cfg(feature = "toile")]
use super::read_cloth::Written;
use crate::job::{Job, JobFile, Output, Outputs, PrintOptions};
use crate::measurements::Measurement;
#[cfg(feature = "yaml")]
use crate::measurements::yaml_text;
use crate::recipe::optional;
use serde::ser::{Serialize, SerializeMap, Serializer};

/// With the keys of a job file, the body in it; lengths are numbers in millimetres, save those of
/// the body, and what is as usual is left out.
///
/// Of the files that are made only DXF has a key. Which others are made, and whether ways are
/// compared, is chosen by who makes the job, not written with it. A block of one's own is named by
/// its file, which whoever reads the job has to give again.
///
/// ```
/// use blockwright::draft::Block;
/// use blockwright::job::Job;
/// use blockwright::measurements::{Body, Measurement, MeasurementSet};
/// use blockwright::units::Unit;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let mut job = Job::new("First block", Block::Skirt, MeasurementSet::new("Ada", Unit::Cm, body));
/// job.recipe.options.length = Some(650.0);
/// let text = serde_json::to_string(&job)?;
/// assert_eq!(serde_json::from_str::<Job>(&text)?, job);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
impl Serialize for Job {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        self.recipe.write(&mut map)?;
        map.serialize_entry("body", &self.set)?;
        #[cfg(feature = "form")]
        optional(&mut map, "wearer", self.compared.as_ref())?;
        files(&mut map, &self.print, (self.outputs, self.private))?;
        #[cfg(feature = "toile")]
        optional(&mut map, "cloth", self.cloth.map(Written))?;
        map.end()
    }
}

/// As a [`Job`], with a body that stands in another file named as it was.
///
/// ```
/// use blockwright::job::JobFile;
/// let text = r#"{"title":"Skirt","unit":"mm","block":"skirt","ease":"regular","body":"ada.yaml"}"#;
/// assert_eq!(serde_json::to_string(&JobFile::from_json(text)?)?, text);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
impl Serialize for JobFile {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        self.recipe.write(&mut map)?;
        optional(&mut map, "body", self.body.as_ref())?;
        optional(&mut map, "wearer", self.wearer.as_ref())?;
        files(&mut map, &self.print, (self.outputs, self.private))?;
        #[cfg(feature = "toile")]
        optional(&mut map, "cloth", self.cloth.map(Written))?;
        map.end()
    }
}

#[cfg(feature = "yaml")]
impl Job {
    /// The job as a file in YAML, with the body in it, which reads as the same job; needs the feature
    /// `yaml`.
    ///
    /// ```
    /// use blockwright::job::JobFile;
    /// let text = "title: Skirt\nunit: mm\nblock: skirt\nease: regular\nlength: 650.0\nbody:\n  name: Ada\n  unit: cm\n  \
    ///             measurements:\n    height: 168.0\n    bust_girth: 92.0\n    waist_girth: 76.0\n    hip_girth: 100.0\n";
    /// let job = JobFile::parse(text)?.resolve(None)?;
    /// assert_eq!(job.to_yaml(), text);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn to_yaml(&self) -> String {
        yaml_text(self)
    }
}

#[cfg(feature = "yaml")]
impl JobFile {
    /// The job file in YAML, a body in another file named as it was; needs the feature `yaml`.
    #[must_use]
    pub fn to_yaml(&self) -> String {
        yaml_text(self)
    }
}

/// How it is printed and what else is made, where that is not as usual.
fn files<M: SerializeMap>(
    map: &mut M,
    print: &PrintOptions,
    (outputs, private): (Outputs, bool),
) -> Result<(), M::Error> {
    if *print != PrintOptions::default() {
        map.serialize_entry("print", print)?;
    }
    optional(map, "dxf", outputs.has(Output::Dxf).then_some(true))?;
    let shown = outputs.has(Output::Demonstration).then_some(true);
    optional(map, "demonstration", shown)?;
    optional(map, "private", private.then_some(true))
}

impl Serialize for JobBody {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::File { path, .. } => serializer.serialize_str(path),
            Self::Here(set) => set.serialize(serializer),
            Self::Table {
                path, size, others, ..
            } => {
                let mut map = serializer.serialize_map(None)?;
                map.serialize_entry("table", path)?;
                optional(&mut map, "size", size.as_ref())?;
                let sizes = Sizes(others);
                optional(&mut map, "sizes", (!others.is_empty()).then_some(sizes))?;
                map.end()
            }
        }
    }
}

/// The sizes of single measurements.
struct Sizes<'a>(&'a [(Measurement, String)]);

impl Serialize for Sizes<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(of, size)| (of.name(), size)))
    }
}
