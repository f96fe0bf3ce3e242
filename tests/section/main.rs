//! The section solver against exact solutions, against other ways to its own answers, and against independent finite
//! elements.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

#[path = "../checked/mod.rs"]
mod checked;
mod exact;
mod friction;
mod heat_alone;
mod heat_laws;
mod heat_seated;
mod properties;
mod reference_seats;
mod reference_walls;
mod refused;
mod shafts;
mod shapes;
mod superposed;

use checked::section_rows as rows;
