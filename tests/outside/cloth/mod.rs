//! Cloth on screen against closed solutions of mechanics, which it never saw.

mod cone;
mod drape;
mod elastica;
mod hanging;
mod meshes;
mod same_bits;
mod signal;
mod tube;
