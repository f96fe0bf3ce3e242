//! What a plan holds about force, torque, wall and play.

use crate::mechanics::{ClearanceRange, Landing, WallPlace};
use crate::quantity::{Cases, Force, Length, Pressure, ThermodynamicTemperature, Time, Torque};
use crate::section::WallState;

/// Pressing with both parts at the temperature of the shop.
///
/// Pressures and forces are those of two rings of equal width times the factor of the seat's shape: its high end in the
/// tightest case, its low end in the loosest. Where the inner part takes a set they are those that it bears, with the most that
/// von Mises gives in the tightest case and Tresca's in the loosest.
#[derive(Clone, Debug)]
pub struct Pressing {
    /// Pressure in the joint, mean over its length.
    pub pressure: Cases<Pressure>,
    /// Force to press home, full depth.
    pub force: Cases<Force>,
    /// Hoop stress at the bore of the outer part.
    pub hoop_outer: Cases<Pressure>,
    /// Strength over elastic stress at the weaker part, with the low end of the shape's factor; none where there is no stress.
    pub yield_factor: Cases<Option<f64>>,
    /// Which part is the weaker in the tightest case.
    pub weaker: &'static str,
    /// Interference at which the weaker part surely reaches its strength: with the low end of that factor.
    pub elastic_limit: Length,
    /// The same by Tresca, on the safe side of von Mises; none for a brittle weaker part.
    pub elastic_limit_tresca: Option<Length>,
    /// Length of the joint.
    pub length: Length,
    /// By how much the raceway or bore of the ring closes (or grows, on a shaft) when the joint is fitted; none for a plug.
    pub ring_change: Option<Cases<Length>>,
    /// What the seat is beyond two rings of equal width.
    pub shape: ShapeFactor,
    /// What becomes of the tightest case when a ductile outer part yields; none where all stays elastic.
    pub plastic: Option<Plastic>,
    /// What becomes of it when a bush or hollow shaft takes a set and goes on holding; none where all stays elastic, and where
    /// nothing is computed: it cracks or creeps, closes too far, or the outer part passes its strength as well.
    pub takes_set: Option<TakesSet>,
    /// Flow stress and plastic ratio that bound the pressure of the tightest case from above, where it is not the elastic formula
    /// that does.
    pub flow_high: Option<(Pressure, f64)>,
    /// Whether the change of the ring in the tightest case is in proportion to the pressure.
    pub changes_elastically: bool,
}

/// By what factor the plane formula of two rings of equal width is exceeded.
#[derive(Clone, Debug)]
pub struct ShapeFactor {
    /// Of the force, low and high.
    pub force: (f64, f64),
    /// Of the mean pressure.
    pub pressure: (f64, f64),
    /// Of the closing or growth of the ring.
    pub closing: (f64, f64),
    /// Closing at the shoulder over the mean, as seen in computed seats of this kind; none where nothing is known.
    pub at_shoulder: Option<(f64, f64)>,
    /// The wall behind the ring; none where there is none, or the seat was not computed.
    pub wall: Option<SeatWall>,
    /// How it is known.
    pub known: HowNear,
}

/// The wall behind a ring, computed in the section of its seat: everything is in proportion to interference and push.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeatWall {
    /// Interference on the diameter of the solution after which [`SeatWall::fitted`] is.
    pub interference: Length,
    /// The wall under that interference alone.
    pub fitted: WallState,
    /// Push of the two solutions below.
    pub push: Force,
    /// The wall under that push alone, the housing resting on its front face.
    pub on_front: WallState,
    /// The same with the housing resting on its back face.
    pub on_back: WallState,
}

impl ShapeFactor {
    /// The factor of the force in words: "1.16", or "1.00 to 1.24".
    pub fn words(&self) -> String {
        let (low, high) = (format!("{:.2}", self.force.0), format!("{:.2}", self.force.1));
        if low == high { low } else { format!("{low} to {high}") }
    }

    /// How the factor is known, in words; nothing where the plane formula is exact.
    pub(in crate::plan) fn known_words(&self) -> Option<&'static str> {
        match self.known {
            HowNear::Computed => Some("computed in the section of the seat; the range is what friction can make of it"),
            HowNear::Interpolated => Some("interpolated between computed seats"),
            HowNear::Bounds => Some("bounds, not a value"),
            HowNear::Exact => None,
        }
    }

    /// The same with what friction can make of the normal force, as shares of it.
    pub(super) fn with(self, (least, most): (f64, f64)) -> Self {
        let span = |(low, high): (f64, f64)| (low * least, high * most);
        Self { force: span(self.force), pressure: span(self.pressure), closing: span(self.closing), ..self }
    }

    /// Bounds that hold both.
    pub(super) fn either(self, other: Self) -> Self {
        let both = |a: (f64, f64), b: (f64, f64)| (a.0.min(b.0), a.1.max(b.1));
        let computed = self.known == HowNear::Computed && other.known == HowNear::Computed;
        Self {
            force: both(self.force, other.force),
            pressure: both(self.pressure, other.pressure),
            closing: both(self.closing, other.closing),
            at_shoulder: self.at_shoulder.zip(other.at_shoulder).map(|(a, b)| both(a, b)),
            // Only a seat without a wall may lie in two ways.
            wall: self.wall.or(other.wall),
            known: if computed { HowNear::Computed } else { HowNear::Bounds },
        }
    }
}

/// How the factor of a seat's shape is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HowNear {
    /// The plane formula is exact: a through bore as wide as the ring.
    Exact,
    /// Computed in the section of the seat.
    Computed,
    /// Interpolated between computed seats.
    Interpolated,
    /// Bounds only.
    Bounds,
}

/// A hub that has yielded in part.
#[derive(Clone, Copy, Debug)]
pub struct Plastic {
    /// Pressure that is left.
    pub pressure: Pressure,
    /// Share of the wall's section that has yielded.
    pub share: f64,
    /// Interference that the first fitting uses up for good; none where the bore would flow back on relief.
    pub lost: Option<Length>,
}

/// A bush, or a hollow shaft, that yields from its bore outward in the tightest case and goes on holding.
#[derive(Clone, Copy, Debug)]
pub struct TakesSet {
    /// Pressure that it surely bears.
    pub pressure: Pressure,
    /// Share of the wall's section that has yielded.
    pub share: f64,
    /// How far its bore closes, elastic and plastic, with the high end of the closing.
    pub closes: Length,
    /// Interference that is missing at a second fitting.
    pub lost: Length,
    /// Interference beyond that at which the whole wall is plastic, which only closes the bore; none where it is plastic in part.
    pub surplus: Option<Length>,
    /// Hoop stress at which it flows: its strength.
    pub flow: Pressure,
}

/// Force of the tightest case against time, at full depth; it grows in proportion to the depth.
#[derive(Clone, Debug)]
pub struct ForceCourse {
    /// With both parts at the temperature of the shop.
    pub at_shop: Force,
    /// After standing in the seat for a time; the first is the planned moment. Empty where nothing is treated.
    pub after: Vec<(Time, Force)>,
    /// Full depth.
    pub depth: Length,
}

/// Whether what presses at hand can do it.
#[derive(Clone, Debug)]
pub struct MeansPlan {
    /// What presses.
    pub name: &'static str,
    /// Force that the tightest case may need as planned.
    pub needed: Force,
    /// Force that it surely gives; none where nothing is known.
    pub available: Option<Force>,
    /// Gauge pressure of a hydraulic press at the force needed.
    pub gauge: Option<Pressure>,
    /// Force above which to stop and find out why.
    pub alarm: Force,
    /// The screw of a jig.
    pub screw: Option<ScrewPlan>,
    /// What must be said instead of a number.
    pub words: Option<&'static str>,
}

/// A screw jig.
#[derive(Clone, Debug)]
pub struct ScrewPlan {
    /// Designation of the thread.
    pub thread: String,
    /// Torque at the force needed, with the lowest and the highest friction of the screw.
    pub running: (Torque, Torque),
    /// Torque that must not be exceeded; none where nothing limits it.
    pub stop: Option<(Torque, StopReason)>,
    /// Whether the torque that the part may need is above the one that must not be exceeded.
    pub crosses: bool,
    /// What the spanner feels at the shoulder; none where there is no shoulder, or nothing limits the torque.
    pub landing: Option<Landing>,
    /// Stress of the rod at the force needed, twist included, over its proof stress; none without a strength class.
    pub rod_share: Option<f64>,
    /// Proof load of the rod.
    pub proof_load: Option<Force>,
    /// Name of the strength class.
    pub class: Option<String>,
}

/// What sets the stop torque.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StopReason {
    /// The wall behind the part.
    Wall,
    /// The proof stress of the screw.
    Rod,
}

impl StopReason {
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Wall => "the wall behind it",
            Self::Rod => "the screw itself",
        }
    }
}

/// The wall behind the part, against which it is pushed.
#[derive(Clone, Debug)]
pub struct WallPlan {
    /// Force that it bears, with the reserve taken off; none where it is too thick to be a plate and no section tells. In the
    /// section that of the weaker support, beside the interference with which the ring sits in front of it.
    pub allowable: Option<Force>,
    /// As a plate, if its edge could turn freely: the other bound, far below an integral wall where there is a hole; none in
    /// the section, which knows how the edge is held.
    pub allowable_free: Option<Force>,
    /// In the section, with the housing resting on its front and on its back face; none as a plate.
    pub supports: Option<(Force, Force)>,
    /// As a plate held at its edge; none where it is too thick to be one.
    pub as_plate: Option<Force>,
    /// What the numbers were computed with.
    pub model: WallModel,
    /// Reserve: strength over stress at that force.
    pub reserve: f64,
    /// Where its strength is reached first.
    pub place: Option<WallPlace>,
    /// Stress at its root at the force needed: of bending as a plate, linearised with what the fit adds in the section.
    pub root_stress: Option<Pressure>,
    /// How far it gives way for a newton: the least it can be. As a plate the free edge, held at its root; in the section the
    /// mean under the ring's face, with the stiffer support; zero where nothing tells.
    pub gives_per_newton: Length,
    /// How far it gives way so at the force needed.
    pub deflection: Option<Length>,
    /// Pressure of the ring's face on the shoulder at the force needed.
    pub face_pressure: Pressure,
}

/// What a wall was computed with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WallModel {
    /// Annular plate held at its edge.
    Plate,
    /// Section of the seat.
    Section,
}

/// What draws the part off again.
#[derive(Clone, Debug)]
pub struct Removal {
    /// What comes out before it, in order.
    pub first_out: Vec<&'static str>,
    /// Temperature of the outer part alone that frees the tightest case, the inner one at that of the shop; none where none
    /// in its table does.
    pub outer_alone: Option<ThermodynamicTemperature>,
    /// Whether that is above a limit.
    pub outer_limit: Option<ThermodynamicTemperature>,
    /// Common temperature of both parts that frees the tightest case; none where none does.
    pub both: Option<ThermodynamicTemperature>,
    /// Force to break it loose at the temperature of the shop.
    pub pull: Cases<Force>,
    /// Torque of the jig's screw at that force, at the highest friction; none without a screw.
    pub torque: Option<Torque>,
    /// Stress of its rod over the proof stress then.
    pub rod_share: Option<f64>,
}

/// The internal clearance of a bearing from delivery to running.
#[derive(Clone, Debug)]
pub struct InternalClearancePlan {
    /// Group; none where limits were stated.
    pub group: Option<String>,
    /// As delivered.
    pub delivered: ClearanceRange,
    /// Lost in the housing; none where there is no such seat.
    pub outer_ring: Option<ClearanceRange>,
    /// Lost on the shaft; none where there is no such seat.
    pub inner_ring: Option<ClearanceRange>,
    /// Lost to the difference of the rings in service.
    pub temperature: ClearanceRange,
    /// Fitted.
    pub fitted: ClearanceRange,
    /// Running.
    pub running: ClearanceRange,
    /// Running, in 997 of 1000 bearings: the root of the summed squares.
    pub usual: ClearanceRange,
    /// The tightest group that keeps play in 997 of 1000; none where none in the table does, or where the present one will do.
    pub usual_group: Option<String>,
    /// The tightest group that keeps play in every case; none as above.
    pub sure_group: Option<String>,
    /// Where the delivered limits come from.
    pub source: String,
}

/// A tighter class that keeps the fit in service.
#[derive(Clone, Debug)]
pub struct Tighter {
    /// Its name.
    pub class: String,
    /// Least interference at the worse end of service.
    pub least: Length,
    /// Largest interference at 20 °C.
    pub most: Length,
    /// Whether the weaker part stays elastic with it.
    pub elastic: bool,
}
