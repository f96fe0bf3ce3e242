//! Two parts in the seat: how they exchange heat over the closing gap until the seat grips.
//!
//! A warm housing stands round a cold ring, or a warm ring round a cold shaft. Over the thin film of air between them
//! they come to one temperature within seconds or minutes; the gap closes meanwhile, and the exchange grows as it does.
//! [`Exchange::run`] follows both until they grip ([`Insertion`]), [`Exchange::chilling`] says what chilling the inner
//! part does to the time in hand, and [`Exchange::frees_at`] at what temperature of both a stuck ring is free again.
//!
//! Each part has one temperature, its mean. Its size follows that mean, which is exact for the free outside of a ring
//! and for the free bore of a housing whose temperature varies along the radius only (plane stress, S. P. Timoshenko,
//! J. N. Goodier, "Theory of Elasticity", 3rd ed., art. 150, from memory).
//!
//! Not modelled: heat through the shoulder, frost and moisture, the layer of air that the parts bring with them, grease
//! or oil in the gap (each conducts better than air, so the time is shorter), and a ring that tilts.

mod account;
mod air;
mod balance;
mod exchange;
mod freeing;
mod gap;
mod insertion;
mod part;
mod path;

pub use account::HeatAccount;
pub use air::{AirConductivity, still_air_conductivity};
pub(crate) use exchange::Reach;
pub use exchange::{Chilling, Exchange, Joint, SeatSizes};
pub use freeing::Freeing;
pub use gap::{Gap, Placement};
pub use insertion::{Course, Insertion, Meeting, StaysFree};
pub use part::SeatBody;
