//! The nearest tighter class that keeps the fit in service.

use super::model::Tighter;
use crate::fit::{Letter, ToleranceClass, limits_of_size};
use crate::job::{Job, Piece};
use crate::plan::clearance::Diameters;
use crate::plan::joint::Joint;
use crate::plan::seat::effective;
use crate::quantity::{Cases, Length, Nanometres, celsius};
use crate::stock::iso286::Feature;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;

/// The first class of the same grade, going tighter, that leaves no clearance in any case of service; none where the seat was
/// not given as a class, where nothing is loose, or where no letter does.
///
/// The seat is what changes: the bore of a housing, or the shaft; the ring stays as it is.
pub(in crate::plan) fn tighter(job: &Job, joint: &Joint<'_>, limit: Length) -> Option<Tighter> {
    let of_housing = joint.outer.piece == Piece::Housing;
    let seat = if of_housing { &joint.outer } else { &joint.inner };
    let given: ToleranceClass = seat.size.basis.parse().ok()?;
    let feature = if of_housing { Feature::Hole } else { Feature::Shaft };
    let nominal = Nanometres::from_length(joint.nominal);
    let letters = Letter::ALL.into_iter().filter(|letter| *letter > given.letter());
    letters.map(|letter| ToleranceClass::new(feature, letter, given.grade())).find_map(|class| {
        // A letter that the table does not have at this size is passed over.
        let limits = limits_of_size(nominal, class).ok()?;
        let diameters = Diameters::new(joint).with_seat(of_housing, (limits.smallest(), limits.largest()));
        let least = least_in_service(job, joint, &diameters)?;
        let at_20 = celsius(20.0).get::<kelvin>();
        let most = Length::new::<meter>(-diameters.clearance(at_20, at_20).tightest);
        // The limit is one of what bears.
        let elastic = effective(job, joint, &Cases::same(-most)).ok()?.tightest <= limit;
        (least >= Length::default()).then(|| Tighter { class: class.to_string(), least, most, elastic })
    })
}

/// The least interference of any case in any state of service.
fn least_in_service(job: &Job, joint: &Joint<'_>, diameters: &Diameters<'_>) -> Option<Length> {
    let loosest = job.service.iter().map(|state| {
        let (inner, outer) = (state.of(joint.inner.piece), state.of(joint.outer.piece));
        -diameters.clearance(inner.get::<kelvin>(), outer.get::<kelvin>()).loosest
    });
    loosest.reduce(f64::min).map(Length::new::<meter>)
}
