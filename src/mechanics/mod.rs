//! What an interference does: pressure, stress, change of size, force and torque; and what the tools do that push a part
//! home: screws, presses, the wall behind the part, the play left in a bearing.
//!
//! Plane stress of thick-walled rings (Lamé): exact for a seat that is as wide as the ring in it and open at both ends.
//! A blind bore, or a housing longer than the ring, is stiffer: there the plane pressure, press force and closing of
//! the ring are too low by 9 to 37 % (against independent finite elements of such seats); [`seat_factor`] says by how much.
//! Knows no media, no temperatures and no files: an interference at one moment comes in, numbers go out.
//!
//! | question | answer |
//! |---|---|
//! | two rings at one interference | [`Joint`], [`Press`] |
//! | a sleeve, a band: more than two | [`Compound`] |
//! | a bore with a liner in it | [`LinedBore`] |
//! | a boss that is thinner on one side | [`EccentricRing`] |
//! | the plain ring that stands for a bearing ring | [`outer_ring_inside`], [`inner_ring_outside`], [`Groove`] |
//! | which part is nearest to its strength, and where yielding begins | [`weakest`], [`yield_interference`], [`yield_start`] |
//! | what a fit loses by turning | [`Ring::growth_at`] |
//! | a hub that has yielded in part, and its next fitting | [`PlasticHub`] |
//! | a bush or hollow shaft that has yielded, and how far its bore closes | [`PlasticBush`] |
//! | a seat that is not two rings of equal width | [`seat_factor`] |

mod bearing_ring;
mod compound;
mod eccentric;
mod elastic;
mod error;
mod internal_clearance;
mod joint;
mod landing;
mod lined;
mod means;
mod plastic;
mod press;
mod rating;
mod ring;
mod rotation;
mod screw;
mod seam;
mod seat_shape;
mod stop;
mod stress;
mod wall;
mod yield_start;

pub use bearing_ring::{Groove, inner_ring_outside, outer_ring_inside};
pub use compound::{Compound, CompoundState, Interface, InterfaceState, Layer};
pub use eccentric::{EccentricRing, LARGEST_OFFSET, ThinSide};
pub use elastic::{Criterion, Elastic, Part, Strength, Surface, YieldCheck, weakest, yield_interference};
pub use error::MechanicsError;
pub use internal_clearance::{ClearanceRange, FittedClearance, InternalClearance, temperature_loss};
pub use joint::{Joint, PressFit};
pub use landing::Landing;
pub use lined::{Held, LinedBore, LinedState};
pub use means::{Means, Reach, hydraulic_force, hydraulic_pressure};
pub use plastic::{FlowRule, PartlyPlastic, PlasticBush, PlasticHub, PlasticLimits, YieldedBush};
pub use press::Press;
pub use rating::{STATIC_RATING_CAUTION, share_of_static_rating};
pub use ring::{Ends, Ring, RingState};
pub use rotation::Growth;
pub use screw::{
    RodCheck, RodStress, Screw, ScrewFriction, ScrewFrictionRange, ScrewThread, ScrewTorque, nut_face_diameter,
};
pub use seat_shape::{Back, HowKnown, SeatFactor, SeatShape, Span, seat_factor};
pub use stop::StopTorque;
pub use stress::Stress;
pub use wall::{AllowableForce, Edge, LoadZone, Wall, WallPlace, WallState};
pub use yield_start::{Onset, YieldStart, yield_start};
