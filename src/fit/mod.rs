//! Limits of size at 20 °C, and the clearance band that two of them make.
//!
//! Owns the rules that turn the tables of ISO 286-1 and ISO 492 into limits ([`limits_of_size`], [`ring_limits`]),
//! limits about a measured size ([`measured`]), the clearance band ([`clearance_band`]) and the smoothing of rough
//! surfaces ([`effective_interference`]). It knows neither temperatures nor job files: a size measured warm or cold is
//! brought to 20 °C before it comes here.
//!
//! Clearance is positive when the joint is loose; interference is its negative.

mod class;
mod clearance;
mod error;
mod gaps;
mod iso286;
mod letter;
mod limits;
mod look_up;
mod measured;
mod ring;
mod smoothing;

pub use crate::stock::iso286::{Feature, Grade};
pub use crate::stock::iso492::{Ring, RingClass};
pub use class::{ClassError, ToleranceClass};
pub use clearance::{FitKind, clearance_band};
pub use error::FitError;
pub use iso286::limits_of_size;
pub use letter::Letter;
pub use limits::{Limits, LimitsSource};
pub use measured::{Decision, Sign, decide, measured};
pub use ring::{ring_limits, ring_width_limits};
pub use smoothing::{RZ_PER_RA, SMOOTHING_FACTOR, effective_interference, rz_from_ra};
