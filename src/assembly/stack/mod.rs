//! A stack of parts between a shoulder and a retaining ring: the play that is left, and what mends it.

mod chain;
mod error;
mod mend;
mod pair;
mod scatter;

pub use chain::{Chain, Ends, Link, Way};
pub use error::StackError;
pub use mend::{Change, Wanted, change};
pub use pair::{Groove, axial_play};
pub use scatter::Scatter;
