//! What an interference does: pressure, stress, change of size, force and torque.
//!
//! Plane stress of thick-walled rings (Lamé): exact for a seat that is as wide as the ring in it and open at both ends.
//! A blind bore, or a housing longer than the ring, is stiffer: there the plane pressure, press force and closing of
//! the ring are too low by 9 to 37 % (against independent finite elements of such seats); [`seat_factor`] says by how much.
//! Knows no media, no temperatures and no files: an interference at one moment comes in, numbers go out.
//!
//! | question | answer |
//! |---|---|
//! | two rings at one interference | [`Joint`], [`Press`] |
//! | a liner, a sleeve, a band: more than two | [`Compound`] |
//! | the plain ring that stands for a bearing ring | [`outer_ring_inside`], [`inner_ring_outside`], [`Groove`] |
//! | which part is nearest to its strength, and where yielding begins | [`weakest`], [`yield_interference`], [`yield_start`] |
//! | a hub that has yielded in part, and its next fitting | [`PlasticHub`] |
//! | a seat that is not two rings of equal width | [`seat_factor`] |

mod bearing_ring;
mod compound;
mod elastic;
mod error;
mod joint;
mod plastic;
mod press;
mod ring;
mod seam;
mod seat_shape;
mod stress;
mod yield_start;

pub use bearing_ring::{Groove, RING_SHARE, inner_ring_outside, outer_ring_inside};
pub use compound::{Compound, CompoundState, Interface, InterfaceState, Layer};
pub use elastic::{Criterion, Elastic, Part, Strength, Surface, YieldCheck, weakest, yield_interference};
pub use error::MechanicsError;
pub use joint::{Joint, PressFit};
pub use plastic::{FlowRule, PartlyPlastic, PlasticHub, PlasticLimits};
pub use press::Press;
pub use ring::{Ends, Ring, RingState};
pub use seat_shape::{Back, HowKnown, SeatFactor, SeatShape, Span, seat_factor};
pub use stress::Stress;
pub use yield_start::{Onset, YieldStart, yield_start};
