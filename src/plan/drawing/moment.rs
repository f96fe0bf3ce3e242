//! Temperatures, interference and friction of a moment.

use super::{DrawingError, Moment, SectionCase, SectionRequest};
use crate::job::{Job, ServiceEnd};
use crate::plan::SeatPlan;
use crate::plan::clearance::Diameters;
use crate::plan::joint::Joint;
use crate::plan::push::ends;
use crate::plan::seat::effective;
use crate::quantity::{Cases, Length, ThermodynamicTemperature};
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;

/// What the fit is at a moment.
pub(super) struct At {
    pub(super) moment: Moment,
    pub(super) case: SectionCase,
    pub(super) inner: ThermodynamicTemperature,
    pub(super) outer: ThermodynamicTemperature,
    pub(super) interference: Length,
    pub(super) friction: f64,
}

impl At {
    pub(super) fn new(
        job: &Job,
        joint: &Joint<'_>,
        seat: &SeatPlan,
        request: &SectionRequest,
    ) -> Result<Self, DrawingError> {
        let (inner, outer, clearance) = match request.moment {
            Moment::Room => {
                let shop = job.bench.temperature;
                let diameters = Diameters::new(joint).clearance(shop.get::<kelvin>(), shop.get::<kelvin>());
                (shop, shop, diameters.map(Length::new::<meter>))
            }
            Moment::Bore => (seat.at_bore.inner, seat.at_bore.outer, seat.at_bore.clearance),
            Moment::Hottest => service(seat, ServiceEnd::Hottest, "hottest")?,
            Moment::Coldest => service(seat, ServiceEnd::Coldest, "coldest")?,
        };
        let of = |cases: Cases<Length>| match request.case {
            SectionCase::Tightest => cases.tightest,
            SectionCase::Middle => cases.middle,
            SectionCase::Loosest => cases.loosest,
        };
        let friction = ends(job.press.friction);
        let friction = match request.case {
            // What a fit holds is safe with the least friction.
            _ if !request.moment.pushes() => friction.loosest,
            SectionCase::Tightest => friction.tightest,
            SectionCase::Middle => friction.middle,
            SectionCase::Loosest => friction.loosest,
        };
        let interference = of(effective(job, joint, &clearance)?);
        Ok(Self { moment: request.moment, case: request.case, inner, outer, interference, friction })
    }
}

fn service(
    seat: &SeatPlan,
    end: ServiceEnd,
    name: &'static str,
) -> Result<(ThermodynamicTemperature, ThermodynamicTemperature, Cases<Length>), DrawingError> {
    let state = seat.service.iter().find(|state| state.end == end).ok_or(DrawingError::NoService { end: name })?;
    Ok((state.inner, state.outer, state.clearance))
}
