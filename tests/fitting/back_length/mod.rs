//! Back-length reduction by hinges against its closed form:
//! sin s' = sin s - (1 - k) a / L, and the fold gains e = L (cos s' - cos s).

mod back;
mod drafted;
mod worked;
