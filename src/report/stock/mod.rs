//! The embedded records as text and JSON: materials and media with their sources.

mod material;
mod medium;

pub use material::{material_at_json, material_at_text, material_json, material_text, materials_json, materials_text};
pub use medium::{media_json, media_text, medium_json, medium_text};
