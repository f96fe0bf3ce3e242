//! The wall behind the part as the section of its seat shows it: stress at root and free edge, and how far it gives way.

use super::model::{SeatWall, WallModel, WallPlan};
use crate::mechanics::{Strength, Stress, WallPlace};
use crate::quantity::{Force, Length, Pressure};
use crate::section::WallState;
use std::f64::consts::PI;
use uom::si::force::newton;
use uom::si::pressure::pascal;

/// What a wall is held against.
pub(super) struct Under {
    pub(super) strength: Strength,
    /// Strength over stress that is kept.
    pub(super) reserve: f64,
    pub(super) needed: Force,
    /// Interference with which the ring sits in front of it.
    pub(super) interference: Length,
}

/// A stress in one direction that grows with the push, Pa and Pa/N.
#[derive(Clone, Copy)]
struct Growing {
    fitted: f64,
    per_newton: f64,
    place: WallPlace,
}

impl Growing {
    fn at(&self, force: f64) -> f64 {
        self.fitted + self.per_newton * force
    }
}

/// The wall in the section, beside what it is as a `plate`.
///
/// Fit and push are added: that a ring which sits tight also stiffens the root is left out, on the safe side. At the root the
/// radial stress counts alone, for the hoop stress beside it is smaller and of the same sign; at a hole there is no other than
/// the hoop stress, and in the middle of a closed wall both are the same.
pub(super) fn of(seat: &SeatWall, under: &Under, (around, thickness): (Length, Length), plate: WallPlan) -> WallPlan {
    let shear = 1.0 / (PI * around * thickness).value;
    let limit = |push: &WallState| {
        let bending = stresses(seat, push, under).into_iter().map(|stress| (until(&stress, under), stress.place));
        let around = under.strength.share(&pure_shear(shear)) * under.reserve;
        let all = bending.chain([(1.0 / around, WallPlace::Shear)]);
        all.reduce(|least, next| if next.0 < least.0 { next } else { least }).unwrap_or((0.0, WallPlace::Root))
    };
    let (front, back) = (limit(&seat.on_front), limit(&seat.on_back));
    let (weaker, place) = if front.0 < back.0 { front } else { back };
    let gives = seat.on_front.face_deflection.min(seat.on_back.face_deflection) / seat.push.get::<newton>();
    let needed = under.needed.get::<newton>();
    let newtons = Force::new::<newton>;
    WallPlan {
        allowable: Some(newtons(weaker)),
        allowable_free: None,
        supports: Some((newtons(front.0), newtons(back.0))),
        model: WallModel::Section,
        reserve: under.reserve,
        place: Some(place),
        root_stress: Some(Pressure::new::<pascal>(root_stress(seat, under))),
        gives_per_newton: gives,
        deflection: Some(gives * needed),
        ..plate
    }
}

/// Stresses on both faces of the wall, at its root and at its free edge.
fn stresses(seat: &SeatWall, push: &WallState, under: &Under) -> [Growing; 4] {
    let fit: f64 = (under.interference / seat.interference).into();
    let push_n = seat.push.get::<newton>();
    let growing = |of: fn(&WallState) -> Pressure, place| Growing {
        fitted: fit * of(&seat.fitted).get::<pascal>(),
        per_newton: of(push).get::<pascal>() / push_n,
        place,
    };
    [
        growing(|wall| wall.root_membrane + wall.root_bending, WallPlace::Root),
        growing(|wall| wall.root_membrane - wall.root_bending, WallPlace::Root),
        growing(|wall| wall.edge_membrane + wall.edge_bending, WallPlace::Hole),
        growing(|wall| wall.edge_membrane - wall.edge_bending, WallPlace::Hole),
    ]
}

/// Push up to which a stress stays below strength over reserve, N; without end where it never comes there.
fn until(stress: &Growing, under: &Under) -> f64 {
    let sign = stress.per_newton.signum();
    // Share of the strength for a stress of one in the direction in which the push drives it.
    let per_pascal = under.strength.share(&one_way(sign));
    if per_pascal <= 0.0 || stress.per_newton.abs() <= 0.0 {
        return f64::INFINITY;
    }
    let left = 1.0 / (under.reserve * per_pascal) - sign * stress.fitted;
    (left / stress.per_newton.abs()).max(0.0)
}

/// Largest stress at the root under fit and the force needed, with the worse support.
fn root_stress(seat: &SeatWall, under: &Under) -> f64 {
    let of = |push: &WallState| {
        let root = stresses(seat, push, under).into_iter().filter(|stress| stress.place == WallPlace::Root);
        root.map(|stress| stress.at(under.needed.get::<newton>()).abs()).fold(0.0, f64::max)
    };
    of(&seat.on_front).max(of(&seat.on_back))
}

fn one_way(stress: f64) -> Stress {
    let none = Pressure::default();
    Stress { radial: Pressure::new::<pascal>(stress), hoop: none, axial: none }
}

fn pure_shear(stress: f64) -> Stress {
    let [one, other] = [stress, -stress].map(Pressure::new::<pascal>);
    Stress { radial: one, hoop: other, axial: Pressure::default() }
}
