//! Temperature of one piece against time: in its medium, then in shop air.

use super::PlanError;
use super::model::{SeatKind, Soak};
use super::run::Run;
use super::soak;
use super::soaking::{Places, Soaking, from_kelvin};
use super::subject::Subject;
use super::surroundings::Pace;
use crate::job::{Hold, Job, Piece, Treatment};
use crate::quantity::{ThermodynamicTemperature, Time};
use crate::thermal::BearingPart;
use std::sync::Arc;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Temperature of a piece. Time zero is when the pieces leave their media. What was followed is shared by its copies.
#[derive(Clone)]
pub(super) struct Track {
    shop: f64,
    soaked: Option<Arc<Soaked>>,
    /// Temperatures (K) that count for the fit, from the section of the piece, against time since it left its medium (s).
    in_section: Vec<(f64, f64)>,
}

struct Soaked {
    hold: f64,
    /// The body whose temperature counts for the fit.
    counts: BearingPart,
    places: Places,
    in_medium: Run,
    on_bench: Run,
}

impl Track {
    /// Time that the piece spends in its medium, s, as [`time_in_medium`] finds it.
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

    /// Time that the piece needs in its medium to a temperature; none where it was in no medium.
    pub(super) fn time_to(
        &self,
        (job, piece): (&Job, Piece),
        treatment: &Treatment,
        target: ThermodynamicTemperature,
    ) -> Result<Option<Time>, PlanError> {
        let Some(soaked) = &self.soaked else { return Ok(None) };
        let subject = Subject::new(job, piece)?;
        let course = soaked.course(job, &subject, treatment);
        course.until(Pace::Slow, target).map(|(_, reached)| Some(reached))
    }

    /// Goes by the curve of the section from here on.
    pub(super) fn by_section(&mut self, curve: Vec<(f64, f64)>) {
        self.in_section = curve;
    }

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

/// Time that a piece spends in its medium, s.
pub(super) fn time_in_medium(
    job: &Job,
    seat: SeatKind,
    piece: Piece,
    treatment: Option<&Treatment>,
) -> Result<f64, PlanError> {
    let Some(treatment) = treatment else { return Ok(0.0) };
    let subject = Subject::new(job, piece)?;
    Ok(Soaking::new(job, &subject, treatment, counts(seat))?.held(Pace::Slow)?.1.get::<second>())
}

/// The body of a bearing whose temperature counts for the fit.
fn counts(seat: SeatKind) -> BearingPart {
    if seat == SeatKind::Housing { BearingPart::OuterRing } else { BearingPart::InnerRing }
}

/// Follows one piece through its treatment, with the ends of the film ranges that leave the least in hand: slow in the
/// medium, quick in shop air.
pub(super) fn follow(
    job: &Job,
    seat: SeatKind,
    piece: Piece,
    treatment: Option<&Treatment>,
) -> Result<Track, PlanError> {
    let Some(treatment) = treatment else {
        return Ok(Track { shop: job.bench.temperature.get::<kelvin>(), soaked: None, in_section: Vec::new() });
    };
    let subject = Subject::new(job, piece)?;
    followed(&Soaking::new(job, &subject, treatment, counts(seat))?)
}

/// As [`follow`], with the soak that a report shows.
pub(super) fn treat(
    job: &Job,
    seat: SeatKind,
    piece: Piece,
    treatment: &Treatment,
) -> Result<(Track, Option<Soak>), PlanError> {
    let subject = Subject::new(job, piece)?;
    let course = Soaking::new(job, &subject, treatment, counts(seat))?;
    let track = followed(&course)?;
    let soak = track.soaked.as_ref().map(|soaked| soaked.soak(&course)).transpose()?;
    Ok((track, soak))
}

/// The soak of a piece that was followed before.
pub(super) fn soak_of(
    job: &Job,
    piece: Piece,
    treatment: &Treatment,
    track: &Track,
) -> Result<Option<Soak>, PlanError> {
    let Some(soaked) = &track.soaked else { return Ok(None) };
    let subject = Subject::new(job, piece)?;
    soaked.soak(&soaked.course(job, &subject, treatment)).map(Some)
}

fn followed(course: &Soaking<'_, '_>) -> Result<Track, PlanError> {
    let (in_medium, hold) = course.held(Pace::Slow)?;
    let on_bench = course.bench(&in_medium)?;
    let (counts, places) = (course.counts, course.places());
    let soaked = Soaked { hold: hold.get::<second>(), counts, places, in_medium, on_bench };
    let shop = course.job.bench.temperature.get::<kelvin>();
    Ok(Track { shop, soaked: Some(Arc::new(soaked)), in_section: Vec::new() })
}

impl Soaked {
    /// The piece in the same medium once more.
    fn course<'a, 'j>(&self, job: &'j Job, subject: &'a Subject<'j>, treatment: &'j Treatment) -> Soaking<'a, 'j> {
        Soaking::again(job, subject, treatment, (self.counts, Arc::clone(&self.places)))
    }

    fn soak(&self, course: &Soaking<'_, '_>) -> Result<Soak, PlanError> {
        let hold = Time::new::<second>(self.hold);
        let quick = match course.treatment.hold {
            // A piece that is taken out by its temperature is taken out sooner when it is quicker.
            Hold::Reaches(_) => None,
            Hold::For(_) | Hold::Settled => Some(course.follow(Pace::Quick, hold)?),
        };
        let end = |run: &Run| from_kelvin(run.kelvin_at(self.counts, self.hold));
        let end_quick = quick.as_ref().map_or_else(|| end(&self.in_medium), end);
        let ends = soak::Ends { hold, end: end(&self.in_medium), end_quick };
        soak::soak(course, &self.in_medium, &self.on_bench, &ends)
    }
}
