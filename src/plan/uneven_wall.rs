//! A boss that is thinner on one side: the seat with the thinnest and with the thickest wall all round.

use super::joint::joints;
use super::model::SeatPlan;
use super::push::Presser;
use super::strength::strength;
use super::{Method, PlanError, SeatKind, SolvedSeats};
use crate::job::Job;
use crate::mechanics::{EccentricRing, Part, Strength, YieldCheck};
use crate::quantity::{Cases, Force, Length, Pressure};

/// The seat with the two ends of its wall; the plan itself uses the equivalent one.
#[derive(Clone, Copy, Debug)]
pub struct UnevenWallPlan {
    /// As if the thinnest wall went all round.
    pub thin: WallEnd,
    /// The wall of the concentric ring that stands for the boss.
    pub equivalent: WallEnd,
    /// As if the thickest wall went all round.
    pub thick: WallEnd,
    /// The thin side as it is, under the pressure of the equivalent wall; none for a bore with a liner.
    pub thin_side: Option<ThinSidePlan>,
}

/// Stress at the thin side of the boss.
#[derive(Clone, Copy, Debug)]
pub struct ThinSidePlan {
    /// Hoop stress at the bore or the outside, the larger of the two.
    pub hoop: Cases<Pressure>,
    /// Strength over stress; none where there is no stress.
    pub yield_factor: Cases<Option<f64>>,
}

/// The seat with one wall all round, at the temperature of the shop.
#[derive(Clone, Copy, Debug)]
pub struct WallEnd {
    /// The wall.
    pub wall: Length,
    /// Pressure in the joint.
    pub pressure: Cases<Pressure>,
    /// Force to press home, full depth.
    pub force: Cases<Force>,
    /// By how much the ring closes; none for a plug.
    pub ring_change: Option<Cases<Length>>,
}

pub(super) fn uneven_wall(
    job: &Job,
    seats: &[SeatPlan],
    method: (Method, &SolvedSeats),
) -> Result<Option<UnevenWallPlan>, PlanError> {
    let Some(((thin, thick), housing)) = job.housing.as_ref().and_then(|housing| Some((housing.uneven_wall?, housing)))
    else {
        return Ok(None);
    };
    let Some(seat) = seats.iter().find(|seat| seat.seat == SeatKind::Housing) else { return Ok(None) };
    let equivalent = end((housing.outside - seat.nominal) / 2.0, &seat.press);
    Ok(Some(UnevenWallPlan {
        thin: with_wall(job, seat, thin, method)?,
        equivalent,
        thick: with_wall(job, seat, thick, method)?,
        thin_side: match housing.liner {
            None => Some(thin_side(seat, (thin, thick), &strength(&housing.material))?),
            Some(_) => None,
        },
    }))
}

/// The thin side of an eccentric ring: a wall that is thin all round gives way, and is stressed less than this.
fn thin_side(seat: &SeatPlan, (thin, thick): (Length, Length), strength: &Strength) -> Result<ThinSidePlan, PlanError> {
    let ring = EccentricRing { bore: seat.nominal, thin, thick };
    let sides = seat.press.pressure.try_map(|pressure| ring.thin_side(pressure))?;
    let checks = sides.try_map(|side| YieldCheck::at((&side.at_bore, &side.at_outside), Part::Outer, strength))?;
    Ok(ThinSidePlan { hoop: sides.map(|side| side.hoop()), yield_factor: checks.map(|check| check.factor) })
}

fn end(wall: Length, press: &super::push::Pressing) -> WallEnd {
    WallEnd { wall, pressure: press.pressure, force: press.force, ring_change: press.ring_change }
}

/// The housing seat of the same job with another wall all round.
fn with_wall(job: &Job, seat: &SeatPlan, wall: Length, method: (Method, &SolvedSeats)) -> Result<WallEnd, PlanError> {
    let mut job = job.clone();
    if let Some(housing) = &mut job.housing {
        housing.outside = seat.nominal + 2.0 * wall;
    }
    let joints = joints(&job)?;
    let Some(joint) = joints.iter().find(|joint| joint.seat == SeatKind::Housing) else {
        return Ok(end(wall, &seat.press));
    };
    let presser = Presser::new(&job, joint, method)?;
    Ok(end(wall, &super::seat::at_shop_of(&job, joint, &presser)?))
}
