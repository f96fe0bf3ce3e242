//! Transient conduction in the section.

mod conduction;
mod edges;
mod error;
mod face;
mod growth;
mod history;
mod newton;
mod property;
mod run;
mod seating;
mod solid;
mod sparse;
mod stage;
mod step;
mod stress;
mod surface;
mod system;

pub use conduction::{Conduction, Temperatures};
pub use error::HeatError;
pub use face::{Exposed, Face, FaceLaw, Faces, Film};
pub use history::{ClearanceAt, HeatBalance, HeatHistory, PartTemperatures, SeatClearance, StageTimes, TemperatureAt};
pub use property::Property;
pub use seating::{Gap, Growth, Placement, Seating};
pub use solid::Solid;
pub use stage::{Stage, Until};
pub use stress::{Strength, ThermalStress};

#[cfg(test)]
mod proofs;
