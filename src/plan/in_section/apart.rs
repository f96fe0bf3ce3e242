//! Pieces in their media and in shop air, each in its section.

use super::{Curve, Seat, Spread, UnevenStress, Without, solids};
use crate::job::{Job, Piece, Treatment};
use crate::plan::PlanError;
use crate::plan::model::{SeatKind, Soak};
use crate::plan::soaking::{LONGEST_ON_BENCH_S, Soaking, from_kelvin};
use crate::plan::subject::Subject;
use crate::plan::surroundings::{self, Pace, Surroundings};
use crate::quantity::{ThermodynamicTemperature, Time};
use crate::section::heat::{
    Conduction, Exposed, FaceLaw, Faces, Growth, HeatHistory, Stage, Strength, Temperatures, Until,
};
use crate::thermal::{BearingPart, temperature_for_strain};
use uom::si::power::watt;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// By how much the mass of a piece may differ from that of its section.
const SAME_MASS: f64 = 0.02;
/// Readings of the curve in each step of the history.
const READINGS: u32 = 3;

/// A piece that is followed in its section from its medium on.
pub(super) struct Followed {
    /// s in the medium.
    pub(super) hold: f64,
    pub(super) one_body_end: ThermodynamicTemperature,
    medium: Surroundings,
    air: Surroundings,
}

/// What a piece meets, when its section can be followed there: see the head of this module.
pub(super) fn followed(
    job: &Job,
    seat: SeatKind,
    subject: &Subject<'_>,
    (treatment, soak): (&Treatment, &Soak),
) -> Result<Option<Followed>, PlanError> {
    let counts = if seat == SeatKind::Housing { BearingPart::OuterRing } else { BearingPart::InnerRing };
    let own_mass = match subject.piece {
        Piece::Part => job.part.kind.is_bearing(),
        Piece::Housing => job.housing.as_ref().is_some_and(|housing| housing.mass.is_some()),
        Piece::Shaft => job.shaft.as_ref().is_some_and(|shaft| shaft.mass.is_some()),
    };
    let drawn = (subject.shape.volume * subject.material.density() / subject.mass).get::<ratio>();
    if own_mass || (drawn - 1.0).abs() > SAME_MASS || treatment.power.get::<watt>() > 0.0 {
        return Ok(None);
    }
    let course = Soaking::new(job, subject, treatment, counts)?;
    let place = course.place(Pace::Slow);
    let air = surroundings::shop_air(job, subject, treatment.temperature, Pace::Quick)?;
    let warm = treatment.temperature >= job.bench.temperature;
    let bare = |around: &Surroundings| around.wrap.resistance_m2k_w() <= 0.0 && around.moisture.is_none();
    // Nothing settles on a piece that is warmer than the air.
    let dry = warm || air.moisture.is_none();
    if !(place.is_all_round() && place.medium.is_none() && bare(&place.around) && dry) {
        return Ok(None);
    }
    let hold = soak.hold.get::<second>();
    Ok((hold > 0.0).then(|| Followed { hold, one_body_end: soak.end, medium: place.around.clone(), air }))
}

/// The same on every face; a piece that is not followed there keeps its heat.
fn faces(exposed: &Option<Exposed>) -> Faces<'_> {
    Faces::all(exposed.as_ref().map_or(FaceLaw::Insulated, FaceLaw::Exposed))
}

impl Seat<'_, '_> {
    /// The media, one piece after the other so that both leave together, then shop air.
    pub(super) fn apart<'c>(&self, conduction: &'c Conduction<'c>) -> Result<HeatHistory<'c>, Without> {
        let shop = self.job.bench.temperature;
        let mut media: [Option<Exposed>; 2] = [None, None];
        let mut airs: [Option<Exposed>; 2] = [None, None];
        for (k, part) in self.parts.iter().enumerate() {
            if let Some(part) = part {
                (media[k], airs[k]) = (Some(solids::exposed(&part.medium)?), Some(solids::exposed(&part.air)?));
            }
        }
        let holds = self.parts.each_ref().map(|part| part.as_ref().map_or(0.0, |part| part.hold));
        let (longest, shortest) = (holds[0].max(holds[1]), holds[0].min(holds[1]));
        let alone = [0, 1].map(|k| if holds[k] >= longest { faces(&media[k]) } else { faces(&None) });
        let spans = [
            (alone.to_vec(), longest - shortest),
            (media.iter().map(faces).collect(), shortest),
            (airs.iter().map(faces).collect(), LONGEST_ON_BENCH_S),
        ];
        let stage = |(around, lasting): (Vec<_>, f64)| {
            let until = Until::Elapsed(Time::new::<second>(lasting));
            (lasting > 0.0).then_some(Stage { around, seating: None, until })
        };
        let stages: Vec<Stage<'_>> = spans.into_iter().filter_map(stage).collect();
        Ok(conduction.run(&conduction.uniform(&[shop; 2])?, &stages)?)
    }

    /// A piece at a time (s) since the first one went into its medium.
    pub(super) fn spread(&self, history: &HeatHistory<'_>, part: usize, time: f64) -> Result<Spread, Without> {
        let found = history.part(part, Time::new::<second>(time))?;
        let fit = from_kelvin(self.fit_kelvin(history, part, time)?);
        Ok(Spread { mean: found.mean, least: found.least, most: found.most, fit })
    }

    /// The even temperature at which the seat of a piece would be as large as it is in the mean.
    fn fit_kelvin(&self, history: &HeatHistory<'_>, part: usize, time: f64) -> Result<f64, Without> {
        let growth = history.seat_growth(part, Growth::Local, Time::new::<second>(time))?;
        Ok(temperature_for_strain(&self.sides[part].expansion, growth.get::<ratio>())?.get::<kelvin>())
    }

    /// Temperatures that count for the fit against time since the piece left its medium.
    pub(super) fn curve(&self, history: &HeatHistory<'_>, part: usize, left: f64) -> Result<Curve, Without> {
        let steps: Vec<f64> = history.times(part)?.into_iter().map(|time| time.get::<second>()).collect();
        let mut curve = Vec::with_capacity(steps.len() * READINGS as usize);
        for pair in steps.windows(2) {
            for k in 0..READINGS {
                let time = pair[0] + (pair[1] - pair[0]) * f64::from(k) / f64::from(READINGS);
                curve.push((time - left, self.fit_kelvin(history, part, time)?));
            }
        }
        if let Some(&last) = steps.last() {
            curve.push((last - left, self.fit_kelvin(history, part, last)?));
        }
        Ok(curve)
    }

    /// Temperatures with which both parts come to the seat: a piece that is not followed has one.
    pub(super) fn at_seat(&self, history: &HeatHistory<'_>, carry: f64) -> Result<Temperatures, Without> {
        let mut all = history.temperatures(Time::new::<second>(carry))?;
        for (part, followed) in self.parts.iter().enumerate() {
            if followed.is_none() {
                all = all.with_even(part, self.arrives[part])?;
            }
        }
        Ok(all)
    }

    /// What its uneven temperature does to a piece, in medium and shop air.
    pub(super) fn stress(&self, history: &HeatHistory<'_>, part: usize) -> Result<UnevenStress, Without> {
        let material = self.sides[part].material.strength();
        let brittle = material.kind.is_brittle();
        let strength = if brittle {
            Strength::Brittle { tensile: material.value }
        } else {
            Strength::Ductile { proof: material.value }
        };
        let (after, stress) = history.hardest_moment(part, strength)?;
        let place = if brittle { stress.tension } else { stress.von_mises };
        Ok(UnevenStress { stress: place.stress, share: stress.share_of(strength)?.get::<ratio>(), brittle, after })
    }
}
