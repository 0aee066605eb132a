//! How far apart what belongs together may be drawn.

/// Ends of edges that lie no farther apart than this are brought together, in millimetres: the
/// width of a pencil line, and what a careful tracing misses by (value from memory).
pub const CLOSED_WITHIN: f64 = 1.0;
