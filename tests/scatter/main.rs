//! Scatter of a plan: against closed forms, published indices, samples of another library, and plain plans of every draw.
#![allow(clippy::unwrap_used, reason = "a test may stop at once")]

#[path = "../checked/mod.rs"]
mod checked;

mod closed_forms;
mod command;
mod indices;
mod inputs;
mod jobs;
mod plain;
mod reference;
mod refused;
