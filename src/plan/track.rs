//! Temperature of one piece against time: in its medium, then in shop air.

use super::PlanError;
use super::model::{SeatKind, Soak};
use super::run::Run;
use super::soak;
use super::soaking::{Soaking, from_kelvin};
use super::subject::Subject;
use super::surroundings::Pace;
use crate::job::{Hold, Job, Piece, Treatment};
use crate::thermal::BearingPart;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Temperature of a piece. Time zero is when the pieces leave their media.
pub(super) struct Track {
    shop: f64,
    soaked: Option<Soaked>,
    /// Temperatures (K) that count for the fit, from the section of the piece, against time since it left its medium (s).
    in_section: Vec<(f64, f64)>,
}

struct Soaked {
    hold: f64,
    /// The body whose temperature counts for the fit.
    counts: BearingPart,
    in_medium: Run,
    on_bench: Run,
}

impl Track {
    /// Time that the piece spends in its medium, s.
    pub(super) fn hold(&self) -> f64 {
        self.soaked.as_ref().map_or(0.0, |soaked| soaked.hold)
    }

    /// Temperature in kelvin `time` seconds after leaving the medium; negative times are in it, and after a time without
    /// end the piece is as warm as the shop.
    pub(super) fn kelvin_at(&self, time: f64) -> f64 {
        let Some(soaked) = &self.soaked else { return self.shop };
        if time < -soaked.hold || time.is_infinite() {
            self.shop
        } else if let Some(level) = self.read_section(time) {
            level
        } else if time < 0.0 {
            soaked.in_medium.kelvin_at(soaked.counts, time + soaked.hold)
        } else {
            soaked.on_bench.kelvin_at(soaked.counts, time)
        }
    }
}

impl Track {
    /// The curve of the section, straight between its readings; none without one.
    fn read_section(&self, time: f64) -> Option<f64> {
        let after = self.in_section.partition_point(|(at, _)| *at < time);
        let (last, next) = (after.checked_sub(1).map(|k| self.in_section[k]), self.in_section.get(after));
        Some(match (last, next) {
            (Some((from, low)), Some(&(to, high))) => low + (high - low) * (time - from) / (to - from),
            (Some((_, end)), None) => end,
            (None, Some(&(_, begin))) => begin,
            (None, None) => return None,
        })
    }
}

impl Treated {
    /// Lets the piece go by the curve of its section from here on.
    pub(super) fn go_by(&mut self, curve: Vec<(f64, f64)>) {
        self.track.in_section = curve;
        let end = from_kelvin(self.track.kelvin_at(0.0));
        if let Some(soak) = &mut self.soak {
            (soak.end, soak.in_section) = (end, true);
        }
    }
}

/// A piece's track, and the soak that a report shows when it is treated.
pub(super) struct Treated {
    pub(super) track: Track,
    pub(super) soak: Option<Soak>,
}

/// Follows one piece through its treatment, with the ends of the film ranges that leave the least in hand: slow in the
/// medium, quick in shop air.
pub(super) fn treat(
    job: &Job,
    seat: SeatKind,
    piece: Piece,
    treatment: Option<&Treatment>,
) -> Result<Treated, PlanError> {
    let shop = job.bench.temperature.get::<kelvin>();
    let Some(treatment) = treatment else {
        return Ok(Treated { track: Track { shop, soaked: None, in_section: Vec::new() }, soak: None });
    };
    let subject = Subject::new(job, piece)?;
    let counts = if seat == SeatKind::Housing { BearingPart::OuterRing } else { BearingPart::InnerRing };
    let course = Soaking::new(job, &subject, treatment, counts)?;
    let (slow, hold) = course.held(Pace::Slow)?;
    let quick = match treatment.hold {
        // A piece that is taken out by its temperature is taken out sooner when it is quicker.
        Hold::Reaches(_) => None,
        Hold::For(_) | Hold::Settled => Some(course.follow(Pace::Quick, hold)?),
    };
    let end = |run: &Run| from_kelvin(run.kelvin_at(counts, hold.get::<second>()));
    let end_quick = quick.as_ref().map_or_else(|| end(&slow), end);
    let on_bench = course.bench(&slow)?;
    let ends = soak::Ends { hold, end: end(&slow), end_quick };
    let soak = soak::soak(&course, &slow, &on_bench, &ends)?;
    let soaked = Soaked { hold: hold.get::<second>(), counts, in_medium: slow, on_bench };
    Ok(Treated { track: Track { shop, soaked: Some(soaked), in_section: Vec::new() }, soak: Some(soak) })
}
