//! What the plane formula misses in a blind bore, a longer housing or a chamfered seat.

mod factor;
mod shape;
mod stiffness;

pub use factor::{HowKnown, SeatFactor, Span, seat_factor};
pub use shape::{Back, SeatShape};
