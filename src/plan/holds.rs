//! How long a piece must be held for each case to get its placing clearance, and how far it has come by then.

use super::clearance::{Case, Course, EACH};
use super::joint::{Joint, Side};
use super::track::Track;
use crate::job::{Job, Treatment};
use crate::quantity::{Cases, ThermodynamicTemperature, Time, warming};
use crate::thermal::temperature_for_strain;
use uom::si::power::watt;
use uom::si::temperature_interval::kelvin as step_kelvin;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// The shortest hold of each case.
pub(super) struct Holds {
    /// From the first piece's going into its medium; longer than the planned hold where that does not do.
    pub(super) times: Cases<Option<Time>>,
    /// Share of its full change that the chilled piece, or else the warmed one, has made by then.
    pub(super) shares: Cases<Option<f64>>,
}

/// The shortest holds, of which the planned holds give those in `within`.
pub(super) fn shortest(job: &Job, joint: &Joint<'_>, course: &Course<'_, '_>, within: Cases<Option<Time>>) -> Holds {
    let planned = within.zip(shares(job, joint, course, within));
    let held = planned.zip(EACH).map(|((time, share), case)| match time {
        Some(_) => (time, share),
        None => longer(job, joint, course, case).unzip(),
    });
    Holds { times: held.map(|(time, _)| time), shares: held.map(|(_, share)| share) }
}

/// The hold after which the one treated piece gives a case its placing clearance, and its share of the change; none where
/// two pieces are treated, for then there is no one answer.
fn longer(job: &Job, joint: &Joint<'_>, course: &Course<'_, '_>, case: Case) -> Option<(Time, f64)> {
    let (wanted, shop, diameters) = (job.bench.placing_clearance.value, job.bench.temperature, course.diameters);
    let shop_k = shop.get::<kelvin>();
    let (side, treatment, strain, track): (&Side<'_>, &Treatment, f64, &Track) =
        match (joint.inner.treatment, joint.outer.treatment) {
            (Some(treatment), None) => {
                (&joint.inner, treatment, diameters.inner_strain_for(wanted, shop_k, case), course.inner)
            }
            (None, Some(treatment)) => {
                (&joint.outer, treatment, diameters.outer_strain_for(wanted, shop_k, case), course.outer)
            }
            _ => return None,
        };
    let target = temperature_for_strain(&side.expansion, strain).ok()?;
    let share = share(treatment, shop, target)?;
    // A temperature that the medium has not, or the material does not reach, has no hold.
    let time = track.time_to((job, side.piece), treatment, target).ok()??;
    Some((time, share))
}

fn shares(job: &Job, joint: &Joint<'_>, course: &Course<'_, '_>, times: Cases<Option<Time>>) -> Cases<Option<f64>> {
    let chilled = joint.inner.treatment.map(|treatment| (treatment, course.inner));
    let Some((treatment, track)) = chilled.or(joint.outer.treatment.map(|treatment| (treatment, course.outer))) else {
        return Cases::same(None);
    };
    let longest = course.longest_hold();
    times.map(|time| {
        let then = track.kelvin_at(time?.get::<second>() - longest);
        share(treatment, job.bench.temperature, ThermodynamicTemperature::new::<kelvin>(then))
    })
}

/// Share of the full change from the shop to the medium; none where a power sets the pace, and beyond the medium.
fn share(treatment: &Treatment, shop: ThermodynamicTemperature, then: ThermodynamicTemperature) -> Option<f64> {
    let whole = warming(treatment.temperature, shop).get::<step_kelvin>();
    let share = warming(then, shop).get::<step_kelvin>() / whole;
    (treatment.power.get::<watt>() <= 0.0 && (0.0..=1.0).contains(&share)).then_some(share)
}
