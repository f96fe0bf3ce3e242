//! The part in its seat: both go to one temperature over a gap that closes at some places before others.

use super::{Race, Seat, Without, solids};
use crate::plan::surroundings::{Pace, shop_film_at};
use crate::quantity::{Cases, Length, Time};
use crate::section::heat::{
    Conduction, Exposed, FaceLaw, Faces, Growth, HeatHistory, Placement, Seating, Stage, Temperatures, Until,
};
use uom::si::time::second;

/// How long the part is followed in its seat, s.
const FOLLOWED_S: f64 = 1800.0;
/// Points of the curve in the seat, and over how many times the grip it goes.
const POINTS: u32 = 30;
const SHOWN_AFTER: f64 = 3.0;

/// Clearance along the seat from the back face of the ring.
type Along = Vec<(Length, Length)>;

impl Seat<'_, '_> {
    /// Every case in its seat, and the tightest one lying on one side.
    pub(super) fn race<'c>(
        &self,
        conduction: &'c Conduction<'c>,
        start: &Temperatures,
    ) -> Result<(Option<Race>, Along), Without> {
        let interference = self.interference();
        let airs = [self.in_shop(0)?, self.in_shop(1)?];
        let run = |interference, placement| self.seated(conduction, start, (&airs, interference, placement));
        let tightest = run(interference.tightest, Placement::Concentric)?;
        let begin = tightest.clearance(0, interference.tightest, Growth::Local, Time::default())?;
        let along = begin.along.iter().map(|at| (at.position, at.clearance)).collect();
        let Some(grip) = gripped(&tightest).filter(|_| begin.least > Length::default()) else {
            return Ok((None, along));
        };
        let middle = gripped(&run(interference.middle, Placement::Concentric)?);
        let loosest = gripped(&run(interference.loosest, Placement::Concentric)?);
        let one_sided = gripped(&run(interference.tightest, Placement::OneSide)?);
        let shown = (SHOWN_AFTER * grip).min(Time::new::<second>(FOLLOWED_S));
        let mut clearance = Vec::new();
        for k in 0..=POINTS {
            let time = shown * (f64::from(k) / f64::from(POINTS));
            let at = tightest.clearance(0, interference.tightest, Growth::Local, time)?;
            let most = at.along.iter().map(|at| at.clearance).fold(at.least, Length::max);
            clearance.push((time, [at.least, at.mean, most]));
        }
        let first_touch = tightest.stages().first().and_then(|stage| stage.first_touch);
        let grip = Cases { tightest: Some(grip), middle, loosest };
        Ok((Some(Race { first_touch, grip, one_sided, clearance }), along))
    }

    fn in_shop(&self, side: usize) -> Result<Exposed, Without> {
        let film = shop_film_at(self.job, &self.subjects[side], self.arrives[side], Pace::Quick)?;
        Ok(solids::in_shop(self.sides[side], film, self.job.bench.temperature))
    }

    fn seated<'c>(
        &self,
        conduction: &'c Conduction<'c>,
        start: &Temperatures,
        (airs, interference, placement): (&[Exposed; 2], Length, Placement),
    ) -> Result<HeatHistory<'c>, Without> {
        let [inner, outer] = self.sides.map(|side| side.material.emissivity().high);
        // The law of the gap takes one emissivity for both: that with the same exchange, 2/ε - 1 = 1/ε₁ + 1/ε₂ - 1.
        let emissivity = 2.0 / (1.0 / inner + 1.0 / outer);
        let gap = solids::gap(placement, emissivity)?;
        let stage = Stage {
            around: airs.iter().map(|air| Faces::all(FaceLaw::Exposed(air))).collect(),
            seating: Some(Seating { interference: vec![interference], gap, growth: Growth::Local, shoulder: None }),
            until: Until::Elapsed(Time::new::<second>(FOLLOWED_S)),
        };
        Ok(conduction.run(start, &[stage])?)
    }
}

fn gripped(history: &HeatHistory<'_>) -> Option<Time> {
    history.stages().first().and_then(|stage| stage.grip)
}
