//! The least-distortion method of the back-length reduction, on women of the survey and on
//! bodies made up.
#![cfg(feature = "least-distortion")]

mod choice;
mod women;
