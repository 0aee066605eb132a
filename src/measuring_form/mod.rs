//! A form to take to a fitting: every measurement with a picture of where the tape runs, how it is
//! taken, and a line to write on.

mod form_page;

pub use form_page::measuring_form;
