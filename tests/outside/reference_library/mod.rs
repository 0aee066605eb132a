//! Drafted curves and outlines measured by general-purpose geometry libraries, and figures whose
//! pattern is known from geometry alone.

mod cone;
mod convex;
mod crossing;
mod cylinder;
mod flat;
mod lengths;
mod outlines;
mod polylines;
