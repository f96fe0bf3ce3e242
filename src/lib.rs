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
//!
//! # For the bench
//!
//! A job's text is checked, planned, and told. Every mistake in it comes back with its place and what to do.
//!
//! ```
//! use seatwise::{job, plan, report, stock::Library};
//! let text = r#"
//!     title = "Pump bearing"
//!     [bearing]
//!     designation = "6206"
//!     closure = "open"
//!     [housing]
//!     bore_limits = "N7"
//!     outside = "90 mm"
//!     material = "cast-aluminium"
//!     [warm]
//!     part = "housing"
//!     medium = "oven"
//!     temperature = "90 °C"
//!     hold = "1 h"
//! "#;
//! let job = job::check(text, &Library::default())?;
//! let plan = plan::plan(&job)?;
//! assert!(report::text::short(&plan, job.system).contains("Pump bearing"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # For the design office
//!
//! Each stage answers by itself. A 62 mm ring of class Normal in a bore N7 lies between 39 µm tight and 4 µm loose (ISO 286-1: -39/-9 µm;
//! ISO 492: 0/-13 µm):
//!
//! ```
//! use seatwise::fit::{Ring, RingClass, ToleranceClass, clearance_band, limits_of_size, ring_limits};
//! use seatwise::quantity::Nanometres;
//! let size = Nanometres::from_mm(62.0);
//! let bore = limits_of_size(size, ToleranceClass::parse("N7")?)?;
//! let ring = ring_limits(size, RingClass::parse("ISO 492 Normal")?, Ring::Outer)?;
//! let clearance = clearance_band(&bore, &ring);
//! assert_eq!((clearance.tightest, clearance.loosest), (Nanometres::from_um(-39.0), Nanometres::from_um(4.0)));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # For the class
//!
//! Problems with their answers, the same for the same seed, and the working of any plan ([`report::working`]):
//!
//! ```
//! use seatwise::plan::exercise::{ExerciseLevel, exercise};
//! use seatwise::quantity::System;
//! use seatwise::report::exercise::{Form, Paper, Solution};
//! let drawn = exercise(7, ExerciseLevel::One, 1, &seatwise::stock::Library::default())?;
//! let sheet = Solution::new(&drawn)?.write(Paper::Sheet, Form::Markdown, System::Metric);
//! assert!(sheet.contains("level 1, seed 7"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

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
