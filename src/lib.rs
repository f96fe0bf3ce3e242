//! Plans how a bearing, bush or plug goes into its seat.
//!
//! The modules stand in the order in which a job flows through them; each uses only those above it:
//!
//! | module | owns |
//! |---|---|
//! | [`quantity`] | units, parsing and printing of what a shop writes |
//! | [`stock`] | the embedded data: materials, media, tables of the standards |
//! | [`fit`] | limits of size and the clearance band at 20 °C |
//! | [`thermal`] | temperatures against time, sizes against temperature |
//! | [`mechanics`] | interference to pressure, stress and force; screws, presses, the wall behind a part, play left in a bearing |
//! | [`section`] | the same for a seat as it is drawn, by finite elements of its section |
//! | [`assembly`] | what else goes in beside the bearing: shaft seals, stacks with their retaining ring, screws and their order, readings |
//! | [`job`] | job text to a checked [`job::Job`], every error with its place |
//! | [`plan`] | runs the others, judges, collects cautions and assumptions |
//! | `report` | text, JSON, CSV and plots of a plan; computes nothing |
//!
//! Clearance is positive when the joint is loose; interference is its negative. Sizes are at 20 °C (ISO 1).

pub mod assembly;
pub mod fit;
pub mod job;
pub mod mechanics;
pub mod plan;
pub mod quantity;
pub mod report;
pub mod section;
pub mod stock;
pub mod thermal;

#[cfg(feature = "cli")]
pub mod cli;
