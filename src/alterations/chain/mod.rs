//! The chain: alterations made one after another, each proved, with an account of what changed.

pub(super) mod account;
pub(super) mod alteration;
pub(super) mod amounts;
pub(super) mod asked_ease;
pub(super) mod catalogue;
pub(super) mod error;
pub(super) mod girths;
pub(super) mod halves;
pub(super) mod joined_halves;
pub(super) mod one_sided;
pub(super) mod pipeline;
pub(super) mod plain_words;
pub(super) mod promise;
pub(super) mod proof;
pub(super) mod readings;
pub(super) mod refused;
pub(super) mod request;
pub(super) mod setting_words;
pub(super) mod structure;
pub(super) mod targeted;
pub(super) mod way_back;
pub(super) mod whole;
