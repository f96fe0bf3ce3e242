//! What friction can make of a contact.
//!
//! Pressure and gaps are found without friction. Friction changes them in one of two ways, which bound it: the parts
//! stick to one another from the first touch, or the ring slides and the traction acts one way along the whole seat.

mod both_ways;
mod sliding;
mod stuck;

use super::error::SectionError;
use super::loads::Loads;
use super::model::Model;
use crate::quantity::within;
use both_ways::BothWays;
use sliding::Way;
use stuck::Drift;

/// Largest coefficient of friction taken as one; metals seizing dry come near it.
const LARGEST_FRICTION: f64 = 1.0;

/// Normal force with friction over that without, at the ring's seat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FrictionSpan {
    /// While the ring is pushed home, resting on the back of the seat.
    pub pushed: f64,
    /// While the ring is pulled out, the seat held at its front.
    pub pulled: f64,
    /// When ring and seat stick from the first touch and both may drift along the axis, as after a chill.
    pub stuck: f64,
    /// The same when each is held along the axis by its own support, as between jig and table.
    pub stuck_and_held: f64,
}

impl FrictionSpan {
    /// The least and the most of them and of one, that without friction; a ring between two supports only where it is `held` against
    /// a stop.
    pub fn ends(&self, held: bool) -> (f64, f64) {
        let between = held.then_some(self.stuck_and_held);
        [self.pushed, self.pulled, self.stuck]
            .into_iter()
            .chain(between)
            .fold((1.0, 1.0), |(least, most), k| (least.min(k), most.max(k)))
    }
}

impl Model {
    /// What friction up to a coefficient can make of the normal force.
    ///
    /// **Valid for** the loads of [`Model::solve`], Coulomb friction at the ring's seat alone while it slides, at all contacts
    /// where they stick. Stuck, the traction has no bound, so that it holds for any coefficient.
    ///
    /// # Errors
    /// As for [`Model::solve`]; a friction outside 0 to 1; loads under which the ring does not touch its seat.
    ///
    /// **Source**: linear elasticity; the limits of Coulomb friction.
    pub fn friction_span(&self, loads: &Loads, friction: f64) -> Result<FrictionSpan, SectionError> {
        let friction = within("coefficient of friction", friction, (0.0, LARGEST_FRICTION), "")?;
        let plain = self.plain(loads)?;
        let settled = self.settle(&plain)?;
        let both = BothWays::of(self);
        let without = both.at_ring(self, &settled.pressure);
        if without <= 0.0 {
            return Err(SectionError::NotTouching);
        }
        let free = [self.free_gaps(&plain), self.free_slips(&plain)].concat();
        let stuck = |drift| stuck::pressure(self, &both, &free, &settled, drift);
        let slides = |way| sliding::pressure(self, &both, &free, (&settled, friction), way);
        let over = |pressure: Vec<f64>| both.at_ring(self, &pressure) / without;
        Ok(FrictionSpan {
            pushed: over(slides(Way::Home)?),
            pulled: over(slides(Way::Out)?),
            stuck: over(stuck(Drift::Free)?),
            stuck_and_held: over(stuck(Drift::Held)?),
        })
    }
}
