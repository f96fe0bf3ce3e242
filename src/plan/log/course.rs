//! A piece in its medium, from the temperature that it had, at the ends and in the middle of every range.

use crate::job::{FilmChoice, Job, Piece, Treatment, treatment_of};
use crate::plan::PlanError;
use crate::plan::run::Run;
use crate::plan::soaking::Soaking;
use crate::plan::subject::Subject;
use crate::plan::surroundings::Pace;
use crate::quantity::{HeatTransfer, ThermodynamicTemperature, Time};
use crate::thermal::BearingPart;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// The middle of every range.
const MIDDLE: f64 = 0.5;

/// A piece of a job in its medium.
pub(super) struct Course<'j> {
    pub(super) job: &'j Job,
    pub(super) piece: Piece,
}

/// A course that was followed.
pub(super) struct Followed {
    run: Run,
    counts: BearingPart,
    /// When a heater stops putting heat in, after which the piece is expected as it is then; a medium never stops.
    switched_off: Option<Time>,
}

impl Followed {
    pub(super) fn kelvin(&self, time: Time) -> f64 {
        let time = self.switched_off.map_or(time, |off| time.min(off));
        self.run.kelvin_at(self.counts, time.get::<second>())
    }
}

impl Course<'_> {
    fn treatment(&self) -> Result<&Treatment, PlanError> {
        // The log's check has refused every piece without one.
        treatment_of(self.job, self.piece).ok_or(PlanError::Untreated)
    }

    /// Whether heat is put into it, by a heater or a gun.
    pub(super) fn is_powered(&self) -> Result<bool, PlanError> {
        Ok(self.treatment()?.power.get::<watt>() > 0.0)
    }

    /// The ring that sits in the seat for which the piece is treated.
    fn counts(&self) -> BearingPart {
        let chilled = self.job.chill.as_ref().is_some_and(|chill| chill.piece == self.piece);
        if chilled { BearingPart::OuterRing } else { BearingPart::InnerRing }
    }

    fn with<T>(
        &self,
        share: Option<f64>,
        see: impl FnOnce(&Soaking<'_, '_>) -> Result<T, PlanError>,
    ) -> Result<T, PlanError> {
        let (treatment, counts) = (self.treatment()?, self.counts());
        let subject = Subject::new(self.job, self.piece)?;
        match share {
            None => see(&Soaking::new(self.job, &subject, treatment, counts)?),
            Some(share) => see(&Soaking::between(self.job, &subject, treatment, (counts, share, None))?),
        }
    }

    fn followed(&self, share: Option<f64>, pace: Pace, time: Time) -> Result<Followed, PlanError> {
        let powered = self.is_powered()?;
        self.with(share, |soaking| {
            // Heat that is put in on and on would leave the material's table: a heater is off when the hold of the job is over.
            let held = if powered { Some(soaking.held(pace)?) } else { None };
            let (run, switched_off) = match held {
                Some((run, off)) => (run, Some(off)),
                None => (soaking.follow(pace, time)?, None),
            };
            Ok(Followed { run, counts: self.counts(), switched_off })
        })
    }

    /// Slow end, middle, quick end.
    pub(super) fn ends(&self, time: Time) -> Result<[Followed; 3], PlanError> {
        let end = |pace| self.followed(None, pace, time);
        Ok([end(Pace::Slow)?, self.middle(time)?, end(Pace::Quick)?])
    }

    /// The middle of every range.
    pub(super) fn middle(&self, time: Time) -> Result<Followed, PlanError> {
        self.followed(Some(MIDDLE), Pace::Between(MIDDLE), time)
    }

    /// Film of convection with the surface at a temperature, slow and quick.
    pub(super) fn films(&self, surface: ThermodynamicTemperature) -> Result<(HeatTransfer, HeatTransfer), PlanError> {
        self.with(None, |soaking| {
            let film = |pace| Ok::<_, PlanError>(soaking.film_at(pace, surface)?.convective);
            Ok((film(Pace::Slow)?, film(Pace::Quick)?))
        })
    }

    /// The temperature that it heads for; that it is taken out with, where it is heated from within.
    pub(super) fn heads_for(&self) -> Result<ThermodynamicTemperature, PlanError> {
        let treatment = self.treatment()?;
        match treatment.hold {
            crate::job::Hold::Reaches(target) if self.is_powered()? => Ok(target),
            _ => Ok(treatment.temperature),
        }
    }

    /// Temperature and time at which the plan takes it out, at the slow end of every range.
    pub(super) fn held(&self) -> Result<(ThermodynamicTemperature, Time), PlanError> {
        self.with(None, |soaking| {
            let (run, time) = soaking.held(Pace::Slow)?;
            let kelvins = run.kelvin_at(self.counts(), time.get::<second>());
            Ok((ThermodynamicTemperature::new::<kelvin>(kelvins), time))
        })
    }

    /// When the middle of every range has come to a temperature; none where it never does.
    pub(super) fn time_to(&self, target: ThermodynamicTemperature) -> Option<Time> {
        let until = |soaking: &Soaking<'_, '_>| Ok(soaking.until(Pace::Between(MIDDLE), target)?.1);
        self.with(Some(MIDDLE), until).ok()
    }
}

/// The job with this film for a piece.
pub(super) fn with_film(job: &Job, piece: Piece, film: HeatTransfer) -> Job {
    let mut job = job.clone();
    for treatment in job.chill.iter_mut().chain(&mut job.warm).filter(|treatment| treatment.piece == piece) {
        treatment.film = FilmChoice::Stated(film);
    }
    job
}
