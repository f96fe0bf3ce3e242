//! How long a piece must be held for each case to get its placing clearance, and how far it has come by then.

use super::clearance::{Course, Diameters};
use super::joint::{Joint, Side};
use super::track::{Track, treat};
use crate::job::{Hold, Job, Treatment};
use crate::quantity::{Cases, Time};
use uom::si::power::watt;
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
pub(super) fn shortest(
    job: &Job,
    joint: &Joint<'_>,
    (course, diameters): (&Course<'_, '_>, &Diameters<'_>),
    within: Cases<Option<Time>>,
) -> Holds {
    let planned = Holds { times: within, shares: shares(job, joint, course, within) };
    if within.map(|time| time.is_some()) == Cases::same(true) {
        return planned;
    }
    // A medium in which the piece never settles has no longer hold to offer.
    settled(job, joint, (course, diameters)).unwrap_or(planned)
}

/// The one treated piece held until it is as warm or cold as its medium.
fn settled(job: &Job, joint: &Joint<'_>, (course, diameters): (&Course<'_, '_>, &Diameters<'_>)) -> Option<Holds> {
    let longer = |side: &Side<'_>| {
        let treatment = side.treatment.filter(|treatment| matches!(treatment.hold, Hold::For(_)))?;
        let longer = Treatment { hold: Hold::Settled, ..treatment.clone() };
        treat(job, joint.seat, side.piece, Some(&longer)).ok().map(|treated| treated.track)
    };
    let replaced: Track;
    let course = match (joint.inner.treatment, joint.outer.treatment) {
        (Some(_), None) => {
            replaced = longer(&joint.inner)?;
            Course { diameters, inner: &replaced, outer: course.outer, placing: course.placing }
        }
        (None, Some(_)) => {
            replaced = longer(&joint.outer)?;
            Course { diameters, inner: course.inner, outer: &replaced, placing: course.placing }
        }
        // With two holds there is no one answer.
        _ => return None,
    };
    let times = course.time_to_clear();
    Some(Holds { times, shares: shares(job, joint, &course, times) })
}

fn shares(job: &Job, joint: &Joint<'_>, course: &Course<'_, '_>, times: Cases<Option<Time>>) -> Cases<Option<f64>> {
    let chilled = joint.inner.treatment.map(|treatment| (treatment, course.inner));
    let Some((treatment, track)) = chilled.or(joint.outer.treatment.map(|treatment| (treatment, course.outer))) else {
        return Cases::same(None);
    };
    if treatment.power.get::<watt>() > 0.0 {
        return Cases::same(None);
    }
    let shop = job.bench.temperature.get::<kelvin>();
    let whole = treatment.temperature.get::<kelvin>() - shop;
    let longest = course.longest_hold();
    times.map(|time| {
        let share = (track.kelvin_at(time?.get::<second>() - longest) - shop) / whole;
        share.is_finite().then_some(share)
    })
}
