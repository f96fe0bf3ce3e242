//! The embedded materials, media, friction and closures: files, published values, faults of user files.

#![allow(clippy::unwrap_used, reason = "an unwrap that fails in a helper is a test that fails")]

#[path = "../checked/mod.rs"]
mod checked;
mod closures;
mod faults;
mod files;
mod media;
mod reference;
mod room_values;
