//! The least-distortion method of the back-length reduction, on women of the survey and on
//! bodies made up.
#![cfg(feature = "least-distortion")]

#[path = "../survey/people.rs"]
#[allow(dead_code)]
mod people;

mod choice;
mod women;
