//! Curves, constructions and rigid motions over `kurbo`; knows nothing of clothes.
