//! What a plan holds. Everything is a quantity; rounding belongs to the report.

use super::basis::Basis;
use super::caution::Caution;
use super::clearance_history::ClearanceHistory;
use super::fasteners::FastenersPlan;
use super::in_section::{Race, SectionHeat, WithoutSection};
use super::inspection::InspectionPlan;
use super::liner::LinerPlan;
use super::push::{ForceCourse, InternalClearancePlan, MeansPlan, Pressing, Removal, Tighter, WallPlan};
use super::seal::SealPlan;
use super::stack::StackPlan;
use super::uneven_wall::UnevenWallPlan;
use crate::fit::FitKind;
use crate::job::{Hold, Job, Piece, ServiceEnd};
use crate::quantity::{
    Area, Cases, Force, HeatTransfer, Length, Mass, Pressure, TemperatureInterval, ThermodynamicTemperature, Time,
    Torque,
};
use crate::thermal::{Coolant, TimeError};
use uom::si::f64::Volume;

/// The answer to a job: made by [`super::plan()`], written by [`crate::report`].
#[derive(Clone, Debug)]
pub struct Plan<'j> {
    /// The job that was planned.
    pub job: &'j Job,
    /// The worst verdict of the seats.
    pub verdict: Verdict,
    /// One plan for each seat: housing first.
    pub seats: Vec<SeatPlan>,
    /// What can go wrong or hurt someone, gravest first.
    pub cautions: Vec<Caution>,
    /// Internal clearance of a bearing; none where it is not known.
    pub internal_clearance: Option<InternalClearancePlan>,
    /// The screws of the cover; none where the job has none.
    pub fasteners: Option<FastenersPlan>,
    /// Readings, findings and what to look at; none where the job says nothing of it.
    pub inspection: Option<InspectionPlan>,
    /// The seat with the thinnest and the thickest wall; none where the wall is the same all round.
    pub uneven_wall: Option<UnevenWallPlan>,
    /// The shaft seal; none where the job does not give its sizes.
    pub seal: Option<SealPlan>,
    /// What stands along the axis; none where the job does not say.
    pub stack: Option<StackPlan>,
    /// Where the numbers come from.
    pub sources: Vec<Source>,
    /// What share of parts does what; none where no parts were drawn.
    pub scatter: Option<super::scatter::Scatter>,
}

/// What to expect, from best to worst.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// Even the tightest case has the placing clearance when the part reaches the seat.
    DropsIn,
    /// The middle case has the placing clearance, the tightest has not.
    SomeWillNot,
    /// The part must be pressed.
    Press,
    /// A limit of a material, the closure, the seal or the elastic range is passed.
    DoNot,
}

impl Verdict {
    /// The words that every output uses.
    pub fn words(self) -> &'static str {
        match self {
            Self::DropsIn => "drops in",
            Self::SomeWillNot => "some will not",
            Self::Press => "press",
            Self::DoNot => "do not",
        }
    }
}

/// Which seat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SeatKind {
    /// The part goes into the housing.
    Housing,
    /// The part goes onto the shaft.
    Shaft,
}

impl SeatKind {
    /// The name that every output uses.
    pub fn name(self) -> &'static str {
        match self {
            Self::Housing => "housing",
            Self::Shaft => "shaft",
        }
    }
}

/// Sizes of the sleeve or drift that pushes a bearing by one of its rings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Driver {
    /// Least diameter of its bore.
    pub inside: Length,
    /// Largest outside diameter.
    pub outside: Length,
}

/// The plan of one seat.
#[derive(Clone, Debug)]
pub struct SeatPlan {
    /// Which seat.
    pub seat: SeatKind,
    /// Nominal diameter of the joint.
    pub nominal: Length,
    /// What to expect.
    pub verdict: Verdict,
    /// The inner part of the joint.
    pub inner: Member,
    /// The outer part of the joint.
    pub outer: Member,
    /// Fit at 20 °C.
    pub fit: Fit,
    /// Chilling of the inner part.
    pub chill: Option<Soak>,
    /// Warming of the outer part.
    pub warm: Option<Soak>,
    /// State when the part reaches the mouth of the seat.
    pub at_bore: AtBore,
    /// Shortest hold that gives the placing clearance, from the first piece's going into its medium; longer than the planned
    /// hold where that is too short; none where no hold does.
    pub time_to_clear: Cases<Option<Time>>,
    /// Share of its full change that the chilled piece, or else the warmed one, has made by then.
    pub share_at_clear: Cases<Option<f64>>,
    /// Latest moment to start pushing: time in shop air, from leaving the medium, until the placing clearance is gone.
    pub window: Cases<Window>,
    /// What happens once the part stands in its seat; none where neither part is treated.
    pub grip: Option<Grip>,
    /// Common temperature of both parts at which the joint closes; none where it does not.
    pub lock: Cases<Option<ThermodynamicTemperature>>,
    /// Pressing at room temperature.
    pub press: Pressing,
    /// Force of the tightest case against time.
    pub force_course: ForceCourse,
    /// The wall behind the part; none where there is no shoulder.
    pub wall: Option<WallPlan>,
    /// The liner in the bore; none where there is none.
    pub liner: Option<LinerPlan>,
    /// What presses; none where the job does not say.
    pub means: Option<MeansPlan>,
    /// How it comes out again.
    pub removal: Removal,
    /// The nearest class of the seat that keeps the fit in service; none where nothing is loose there, or none does.
    pub tighter: Option<Tighter>,
    /// The fit at the ends of service.
    pub service: Vec<ServiceFit>,
    /// Temperatures on arrival that give the tightest case its placing clearance.
    pub clears_at: ClearsAt,
    /// Clearance against time.
    pub history: ClearanceHistory,
    /// Sizes of the driver that pushes the part; none for a part without rings of its own.
    pub driver: Option<Driver>,
    /// Its temperatures by conduction in the section, or why there are none.
    pub section_heat: Result<SectionHeat, WithoutSection>,
    /// What the numbers are worked from.
    pub basis: Basis,
}

impl SeatPlan {
    /// Whether one of its parts is chilled or warmed.
    pub fn is_treated(&self) -> bool {
        self.chill.is_some() || self.warm.is_some()
    }

    /// Time that the tightest case stays free in its seat; none where it does not grip.
    pub fn free_in_seat(&self) -> Option<Time> {
        match self.grip.map(|grip| grip.times.tightest) {
            Some(GripTime::Grips(time) | GripTime::FreeUntilLock(time)) => Some(time),
            Some(GripTime::DoesNotGoIn) => Some(Time::default()),
            Some(GripTime::StaysFree) | None => None,
        }
    }

    /// The longest planned time in a medium; none where nothing is treated.
    pub fn longest_hold(&self) -> Option<Time> {
        self.chill.iter().chain(&self.warm).map(|soak| soak.hold).reduce(Time::max)
    }
}

/// One of the two parts of a joint.
#[derive(Clone, Debug)]
pub struct Member {
    /// What it is, in trade words.
    pub name: &'static str,
    /// Which piece of the job it belongs to.
    pub piece: Piece,
    /// Name of its material.
    pub material: String,
    /// Smallest and largest diameter at 20 °C.
    pub smallest: Length,
    /// See `smallest`.
    pub largest: Length,
    /// What the limits are: a class, limits, or a reading.
    pub basis: String,
}

/// The fit at 20 °C.
#[derive(Clone, Copy, Debug)]
pub struct Fit {
    /// Clearance: positive is loose.
    pub clearance: Cases<Length>,
    /// Interference after smoothing of the rough peaks; negative where there is clearance.
    pub effective_interference: Cases<Length>,
    /// Clearance, transition or interference fit.
    pub kind: FitKind,
    /// Measuring uncertainty of the two sizes together, when one or both were measured.
    pub uncertainty: Option<Length>,
    /// Whether a diameter was read at several places, so that the band is more than the uncertainty of measurement.
    pub read_over: bool,
}

impl Fit {
    /// Whether the measuring uncertainty leaves open if the joint is loose or tight.
    pub fn undecided(&self) -> bool {
        let zero = Length::default();
        !self.read_over && self.uncertainty.is_some() && self.clearance.tightest < zero && self.clearance.loosest > zero
    }
}

/// Chilling or warming of one piece.
#[derive(Clone, Debug)]
pub struct Soak {
    /// What is treated.
    pub piece: Piece,
    /// Id of the medium.
    pub medium: String,
    /// Where the piece is, in words, such as "in the oven".
    pub phrase: String,
    /// Temperature of the medium.
    pub medium_temperature: ThermodynamicTemperature,
    /// Why it is taken out when it is.
    pub hold_rule: Hold,
    /// Whether it was followed in its section, and its temperature is the even one at which its seat would be as large.
    pub in_section: bool,
    /// Biot number with the film coefficient used.
    pub biot: f64,
    /// Film coefficient used: the end of the range that is slower.
    pub film: HeatTransfer,
    /// Whether radiation is added to it.
    pub radiates: bool,
    /// Time constant at the start; none where a power, not a medium, sets the pace.
    pub time_constant: Option<Time>,
    /// Time in the medium.
    pub hold: Time,
    /// Temperature on leaving the medium.
    pub end: ThermodynamicTemperature,
    /// Temperature on leaving with the quicker end of the film range.
    pub end_quick: ThermodynamicTemperature,
    /// Mass that is treated.
    pub mass: Mass,
    /// Surface that is exposed.
    pub area: Area,
    /// Whether a bearing was followed as outer ring, rolling elements and inner ring.
    pub three_bodies: bool,
    /// Largest difference of the inner ring from the outer one on the way; none for one body.
    pub ring_difference: Option<TemperatureInterval>,
    /// By how much the time may be off because one body has one temperature; none for a shape without a bound.
    pub time_error: Option<TimeError>,
    /// Share of the full change to the medium's temperature that is reached; none where a power sets the pace.
    pub share_reached: Option<f64>,
    /// Time after which waiting longer gains nothing: 95 % of the full change.
    pub enough_after: Option<Time>,
    /// By how much the medium comes nearer to the piece at most while it takes up its heat; none where it is taken as large.
    pub medium_drift: Option<TemperatureInterval>,
    /// How long the innermost place of the piece, such as the middle of a wall, is behind its mean temperature.
    pub middle_lag: Time,
    /// What evaporates to take up the heat of the piece.
    pub coolant: Option<ConsumedCoolant>,
    /// Water and frost that settle on the piece until it is as warm as the shop, when the humidity is known.
    pub water: Option<Mass>,
}

/// A coolant that evaporates.
#[derive(Clone, Copy, Debug)]
pub struct ConsumedCoolant {
    /// Which.
    pub coolant: Coolant,
    /// Its mass.
    pub mass: Mass,
    /// Its volume as liquid or solid block.
    pub volume: Volume,
}

/// State when the part reaches the mouth of the seat.
#[derive(Clone, Copy, Debug)]
pub struct AtBore {
    /// Temperature of the inner part.
    pub inner: ThermodynamicTemperature,
    /// Temperature of the outer part.
    pub outer: ThermodynamicTemperature,
    /// Clearance then.
    pub clearance: Cases<Length>,
    /// Pressure in the joint at that moment.
    pub pressure: Cases<Pressure>,
    /// Force to press home at that moment, full depth.
    pub force: Cases<Force>,
}

/// How long the placing clearance lasts in shop air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Window {
    /// It is gone after this time; zero when it was never there.
    Lasts(Time),
    /// It never goes: the fit itself has the placing clearance at the temperature of the shop.
    Always,
    /// It outlasts the longest time that was computed.
    Beyond(Time),
}

/// The part in its seat, exchanging heat with what it stands in.
#[derive(Clone, Copy, Debug)]
pub struct Grip {
    /// How long it stays free, with the same gap all round.
    pub times: Cases<GripTime>,
    /// The same for the tightest case when the part lies on one side: the pessimistic bound.
    pub one_sided: GripTime,
    /// The same for the tightest case when the push starts at the latest moment; none where there is no such moment.
    pub at_latest: Option<GripTime>,
    /// Common temperature at which both parts of the tightest case meet, when they do.
    pub meets_at: Option<ThermodynamicTemperature>,
    /// Whether chilling the part shortens the time in hand in the tightest case, where the warm part alone would do.
    pub chilling_shortens: bool,
    /// The tightest case with the inner part left at the temperature of the shop; none where it is not chilled as well.
    pub unchilled: Option<GripTime>,
    /// Common temperature to which both must be brought to free a part that has stopped half-way; none where no common
    /// temperature does.
    pub frees_at: Option<ThermodynamicTemperature>,
}

/// How long a part stays free in its seat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GripTime {
    /// There is no clearance when it arrives.
    DoesNotGoIn,
    /// It grips while the two are still at different temperatures.
    Grips(Time),
    /// Both come to one temperature while it is free, and it grips when the shop has brought them to the lock
    /// temperature: it must be held until then.
    FreeUntilLock(Time),
    /// It does not grip within the time that was followed.
    StaysFree,
}

impl GripTime {
    /// The time at which it grips; none where it does not go in, or stays free.
    pub fn at(self) -> Option<Time> {
        match self {
            Self::Grips(at) | Self::FreeUntilLock(at) => Some(at),
            Self::DoesNotGoIn | Self::StaysFree => None,
        }
    }

    /// The same with the time that the section says, where it grips while the two even out.
    fn by(self, section: Option<Time>) -> Self {
        match (self, section) {
            (Self::Grips(_), Some(at)) => Self::Grips(at),
            (own, _) => own,
        }
    }
}

impl Grip {
    /// Takes the times of the section.
    pub(super) fn go_by(&mut self, race: &Race) {
        self.times = self.times.zip(race.grip).map(|(own, section)| own.by(section));
        self.one_sided = self.one_sided.by(race.one_sided);
    }
}

/// The fit at one end of service.
#[derive(Clone, Copy, Debug)]
pub struct ServiceFit {
    /// Which end.
    pub end: ServiceEnd,
    /// Temperature of the inner part.
    pub inner: ThermodynamicTemperature,
    /// Temperature of the outer part.
    pub outer: ThermodynamicTemperature,
    /// Clearance then.
    pub clearance: Cases<Length>,
    /// Interference that bears in the tightest case, with the rough peaks smoothed away.
    pub bears: Length,
    /// Interference that the tightest case loses for good, beyond what fitting it took, where a bush or hollow shaft yields then
    /// and goes on holding; none elsewhere.
    pub yields: Option<Length>,
    /// Whether the loosest case stays elastic.
    pub holds_elastically: bool,
    /// Axial force that the fit holds at the lowest friction, once fitting and every state of service have taken what yields.
    pub holds_force: Cases<Force>,
    /// Torque that it holds at the lowest friction, without axial force.
    pub holds_torque: Cases<Torque>,
}

/// Temperatures that give the tightest case its placing clearance, the other part being as planned.
#[derive(Clone, Copy, Debug)]
pub struct ClearsAt {
    /// Temperature of the inner part, or colder; none where no temperature of its table does it.
    pub inner: Option<ThermodynamicTemperature>,
    /// Temperature of the outer part, or warmer; none where no temperature of its table does it.
    pub outer: Option<ThermodynamicTemperature>,
}

/// Where a number comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Source {
    /// What comes from it.
    pub what: String,
    /// Standard, book, dataset, or the words that there is none.
    pub text: String,
}

impl Source {
    /// Whether the user stated a value and named no source of it, so that nobody can check it.
    pub fn is_missing(&self) -> bool {
        self.text.contains("no source given")
    }
}
