//! What pushing a part home, holding it and drawing it off takes.

mod computed;
mod course;
mod means;
mod model;
mod plastic;
mod play;
mod presser;
mod removal;
mod set;
mod shape;
mod solved;
mod tighter;
mod wall;
mod wall_section;

pub use model::{
    ForceCourse, HowNear, InternalClearancePlan, MeansPlan, Plastic, Pressing, Removal, ScrewPlan, SeatWall,
    ShapeFactor, StopReason, TakesSet, Tighter, WallModel, WallPlan,
};
pub use solved::SolvedSeats;

pub(super) use computed::{Shaped, friction_ends, sections};
pub(super) use course::course;
pub(super) use means::{ALARM, means};
pub(super) use play::internal_clearance;
pub(super) use presser::{Presser, ends};
pub(super) use removal::removal;
pub(super) use set::Yielding;
pub(super) use shape::{has_section, length_stated};
pub(super) use tighter::tighter;
pub(super) use wall::wall;
