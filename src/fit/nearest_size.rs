//! The size of a table that is nearest to a wearer.

use crate::measurements::{Body, Measurement, SizeTable};

/// How far one size is from the wearer.
///
/// ```
/// use blockwright::fit::SizeDistance;
/// fn is_her_size(size: &SizeDistance) -> bool { size.frame < 10.0 }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct SizeDistance {
    /// The label.
    pub size: String,
    /// How far upper chest and back width are off, in millimetres of girth: the first deviation,
    /// and twice the second, as root of the mean of squares.
    pub frame: f64,
    /// How far bust, waist and hip are off, in millimetres: root of the mean of squares.
    pub girths: f64,
    /// What the wearer has more than the size, in millimetres, in the order in which it decided.
    pub differences: Vec<(Measurement, f64)>,
}

/// The nearest size, and all others.
///
/// ```
/// use blockwright::fit::NearestSize;
/// fn label(nearest: &NearestSize) -> &str { &nearest.chosen.size }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct NearestSize {
    /// The size to begin with.
    pub chosen: SizeDistance,
    /// The next best, if there is one.
    pub next: Option<SizeDistance>,
}

/// Sizes whose frames are off by hardly more than the best one's are decided by girths, in
/// millimetres: half a step of a usual table on the upper chest (value from memory).
const ALIKE: f64 = 20.0;

/// The size whose shoulders and chest fit: upper chest and back width decide, since a frame is hard
/// to alter, and among sizes that are nearly alike in them bust, waist and hip (common practice).
/// None for an empty table.
///
/// ```
/// use blockwright::fit::nearest_size;
/// use blockwright::measurements::{Body, Measurement, Size, SizeTable};
/// use blockwright::units::Unit;
/// let body = |bust: f64| Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
///     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// ]);
/// let sizes = vec![Size::new("38", body(880.0)?), Size::new("42", body(960.0)?)];
/// let table = SizeTable::new("range", Unit::Cm, sizes);
/// let nearest = nearest_size(&table, &body(948.0)?);
/// assert_eq!(nearest.map(|n| n.chosen.size), Some("42".to_owned()));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn nearest_size(table: &SizeTable, wearer: &Body) -> Option<NearestSize> {
    let mut all: Vec<SizeDistance> = table
        .sizes()
        .iter()
        .map(|size| distance(size.label(), size.body(), wearer))
        .collect();
    let least = all
        .iter()
        .map(|size| size.frame)
        .fold(f64::INFINITY, f64::min);
    let rank = |size: &SizeDistance| {
        if size.frame <= least + ALIKE {
            (false, size.girths + size.frame)
        } else {
            (true, size.frame)
        }
    };
    all.sort_by(|a, b| {
        let (a, b) = (rank(a), rank(b));
        a.0.cmp(&b.0).then(a.1.total_cmp(&b.1))
    });
    let mut all = all.into_iter();
    Some(NearestSize {
        chosen: all.next()?,
        next: all.next(),
    })
}

fn distance(label: &str, size: &Body, wearer: &Body) -> SizeDistance {
    let more = |measurement| wearer.value(measurement) - size.value(measurement);
    let mean = |values: &[f64]| {
        let squares: f64 = values.iter().map(|v| v * v).sum();
        (squares / values.len() as f64).sqrt()
    };
    let [chest, back] = [Measurement::UpperChestGirth, Measurement::BackWidth].map(more);
    let girths = [
        Measurement::BustGirth,
        Measurement::WaistGirth,
        Measurement::HipGirth,
    ];
    let differences = [
        Measurement::UpperChestGirth,
        Measurement::BackWidth,
        Measurement::BustGirth,
        Measurement::WaistGirth,
        Measurement::HipGirth,
    ];
    SizeDistance {
        size: label.to_owned(),
        frame: mean(&[chest, 2.0 * back]),
        girths: mean(&girths.map(more)),
        differences: differences.map(|of| (of, more(of))).to_vec(),
    }
}
