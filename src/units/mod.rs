//! Lengths and angles: read in the units of the trade, held in millimetres and radians.
