//! A plan as text, JSON, CSV or a plot. Nothing is computed here; quantities are rounded here, once.

pub mod csv;
pub mod fits;
pub mod json;
#[cfg(feature = "cli")]
pub mod plot;
pub mod stock;
pub mod text;
pub(crate) mod words;
