//! A checked job: every name looked up, every value in range.

use super::entry::{Assumption, Entry};
use super::fasteners::Fasteners;
use super::inspection::Inspection;
use super::liner::Liner;
use super::model_seal::Seal;
use super::model_stack::Stack;
use crate::assembly::readings::Readings;
use crate::fit::Limits;
use crate::quantity::{
    AngularVelocity, Force, HeatCapacity, HeatTransfer, Length, Mass, Power, Pressure, Ratio, System,
    TemperatureInterval, ThermodynamicTemperature, Time, Torque,
};
use crate::stock::closure::Closure;
use crate::stock::dimensions::{ClearanceGroup, RollingElement};
use crate::stock::iso5753::BearingFamily;
use crate::stock::material::{Material, TemperatureLimit};
use crate::stock::medium::{Film, Medium};
use crate::stock::threads::{HexagonNut, StrengthClass, Thread};
use uom::si::f64::Volume;

/// A job that has passed every check. It can be made only by [`super::check`], and varied only by methods that check again.
///
/// # Examples
/// ```
/// use seatwise::{job, stock::Library};
/// let text = "[bearing]\ndesignation = \"6206\"\n[housing]\nbore_limits = \"N7\"\noutside = \"9O mm\"\nmaterial = \"grey-iron\"\n";
/// let problems = job::check(text, &Library::default()).unwrap_err();
/// // The letter O in place of a nought is found at its place.
/// let problem = problems.iter().next().unwrap();
/// assert!(text[problem.at.clone()].contains('O'));
/// let job = job::check(&text.replace("9O", "90"), &Library::default())?;
/// assert!((job.housing.unwrap().outside.value - 0.090).abs() < 1e-12);
/// # Ok::<(), job::Problems>(())
/// ```
#[derive(Clone, Debug)]
pub struct Job {
    /// Title block.
    pub heading: Heading,
    /// What goes in.
    pub part: Part,
    /// The seat that the part goes into.
    pub housing: Option<Housing>,
    /// The seat that the part goes onto.
    pub shaft: Option<Shaft>,
    /// The shaft seal.
    pub seal: Option<Seal>,
    /// What stands along the axis, and the retaining ring that holds it.
    pub stack: Option<Stack>,
    /// What is made cold, and how.
    pub chill: Option<Treatment>,
    /// What is made warm, and how.
    pub warm: Option<Treatment>,
    /// The shop.
    pub bench: Bench,
    /// What the shop has to chill and to warm with, where the job says so.
    pub media: Vec<Medium>,
    /// How it is pressed if it does not drop in.
    pub press: Press,
    /// The coldest and the hottest state in service.
    pub service: Vec<ServiceState>,
    /// Speed at which the shaft and what sits on it turn in service, when given.
    pub speed: Option<AngularVelocity>,
    /// By how much the inner ring of a bearing runs warmer than the outer one, least and most; none where there is no
    /// service.
    pub ring_difference: Option<(TemperatureInterval, TemperatureInterval)>,
    /// The screws of the cover.
    pub fasteners: Option<Fasteners>,
    /// What was found when the parts were looked at.
    pub inspection: Option<Inspection>,
    /// How its quantities scatter, where the job says so.
    pub scatter: Option<super::scatter::Scatter>,
    /// Every value that was typed.
    pub entries: Vec<Entry>,
    /// Every value that was put in for one that was not typed.
    pub assumptions: Vec<Assumption>,
    /// The system of units in which most sizes were typed.
    pub system: System,
    pub(super) _sealed: Sealed,
}

/// Keeps [`Job`] from being made outside this module.
#[derive(Clone, Debug)]
pub(super) struct Sealed;

/// The title block of a job.
#[derive(Clone, Debug, Default)]
pub struct Heading {
    /// What the job is.
    pub title: String,
    /// Reference number.
    pub reference: Option<String>,
    /// Revision of the job.
    pub revision: Option<String>,
    /// Who prepared it.
    pub prepared_by: Option<String>,
    /// Date as typed.
    pub date: Option<String>,
    /// Remarks.
    pub notes: Option<String>,
}

/// Kind of part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PartKind {
    /// Ball bearing.
    BallBearing,
    /// Roller bearing.
    RollerBearing,
    /// Plain bush: one ring.
    PlainBush,
    /// Solid plug: no bore.
    SolidPlug,
}

impl PartKind {
    /// Every kind with the name that a job uses.
    pub const NAMES: [(&'static str, PartKind); 4] = [
        ("ball bearing", PartKind::BallBearing),
        ("roller bearing", PartKind::RollerBearing),
        ("plain bush", PartKind::PlainBush),
        ("solid plug", PartKind::SolidPlug),
    ];

    /// Whether the part has rolling elements.
    pub fn is_bearing(self) -> bool {
        matches!(self, Self::BallBearing | Self::RollerBearing)
    }

    /// The name that a job uses.
    pub fn name(self) -> &'static str {
        Self::NAMES.iter().find(|(_, kind)| *kind == self).map_or("part", |(name, _)| name)
    }

    /// One word for sentences.
    pub fn noun(self) -> &'static str {
        match self {
            Self::BallBearing | Self::RollerBearing => "bearing",
            Self::PlainBush => "bush",
            Self::SolidPlug => "plug",
        }
    }
}

/// The part that goes into a housing, onto a shaft, or both.
#[derive(Clone, Debug)]
pub struct Part {
    /// Kind of part.
    pub kind: PartKind,
    /// What stands behind the basic symbol of its designation and is no symbol of an open standard: nothing was taken from it.
    pub unread_suffixes: Vec<String>,
    /// Nominal bore; none for a solid plug.
    pub bore: Option<Length>,
    /// Nominal outside diameter.
    pub outside: Length,
    /// Width, or length of a bush or plug.
    pub width: Length,
    /// Outside diameter with its limits; present when there is a housing.
    pub outside_size: Option<Size>,
    /// Bore with its limits; present when there is a shaft.
    pub bore_size: Option<Size>,
    /// Material.
    pub material: Material,
    /// Mass.
    pub mass: Mass,
    /// Closure of a bearing.
    pub closure: Option<Closure>,
    /// Hottest that rings of a precision class (P5, P4) may get while they are fitted; none for other classes.
    pub precision_limit: Option<TemperatureLimit>,
    /// Inside diameter of the ring that sits in the housing (the equivalent outer ring of a bearing); none for a plug.
    pub outer_ring_inside: Option<Length>,
    /// Outside diameter of the ring that sits on the shaft (the equivalent inner ring of a bearing).
    pub inner_ring_outside: Length,
    /// Roughness Rz of the seating surface, when given.
    pub roughness_rz: Option<Length>,
    /// Internal clearance of a bearing, where its table knows it.
    pub internal_play: Option<InternalPlay>,
    /// Static load rating of a bearing, when given.
    pub static_rating: Option<Force>,
    /// Chamfers and raceway groove.
    pub ring_shape: RingShape,
}

/// What a ring has beyond plain cylinders; none of it where the job does not say so.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct RingShape {
    /// Chamfer of 45° at both ends of its seat; zero is a sharp edge.
    pub chamfer: Length,
    /// Raceway groove on the other side.
    pub groove: Option<RacewayGroove>,
}

impl RingShape {
    /// Whether there is anything of it.
    pub fn is_plain(&self) -> bool {
        self.chamfer <= Length::default() && self.groove.is_none()
    }
}

/// A raceway groove whose section is an arc of a circle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RacewayGroove {
    /// Largest depth below the shoulders of the ring.
    pub depth: Length,
    /// Width between its edges.
    pub width: Length,
    /// Distance of its middle from the back face.
    pub middle: Length,
}

impl RacewayGroove {
    /// Area of the groove over the width of a ring: `S = ρ² arccos((ρ - h)/ρ) - (ρ - h) b` with `ρ = (b² + h²)/(2 h)`, h the depth
    /// and b half the width of the groove.
    ///
    /// A ring with a groove stands for the plain ring of the same area when its shoulders stand out by so much.
    pub fn mean_depth(&self, width: Length) -> Length {
        let (h, b) = (self.depth, self.width * 0.5);
        let radius = (b * b + h * h) / (2.0 * h);
        let turn = f64::from((radius - h) / radius).clamp(-1.0, 1.0).acos();
        (radius * radius * turn - (radius - h) * b) / width
    }
}

/// A diameter with its limits.
#[derive(Clone, Debug)]
pub enum Size {
    /// From a tolerance class or explicit limits.
    Limits {
        /// The limits.
        limits: Limits,
        /// What they were given as: a class, or limits as typed.
        basis: String,
    },
    /// As measured; still to be brought to 20 °C.
    Measured(Box<Measured>),
}

/// A diameter as measured.
#[derive(Clone, Debug)]
pub struct Measured {
    /// Nominal diameter that it belongs to.
    pub nominal: Length,
    /// The reading; of several, the middle between the smallest and the largest.
    pub reading: Length,
    /// How far the size may lie above or below: the measuring uncertainty, and half the spread of several readings.
    pub within: Length,
    /// Measuring uncertainty of one reading alone.
    pub uncertainty: Length,
    /// The readings, where there are several.
    pub readings: Option<Readings>,
    /// Temperature of the part when measured.
    pub part_temperature: ThermodynamicTemperature,
    /// Temperature of the gauge.
    pub gauge_temperature: ThermodynamicTemperature,
    /// Material of the gauge.
    pub gauge_material: Material,
}

/// The housing around the seat.
#[derive(Clone, Debug)]
pub struct Housing {
    /// Bore with its limits.
    pub size: Size,
    /// Outside diameter of the boss.
    pub outside: Length,
    /// Another outside behind a step; `outside` is then that at the front.
    pub step: Option<Step>,
    /// Thinnest and thickest wall of a boss that is not concentric; `outside` is then that of the equivalent ring.
    pub uneven_wall: Option<(Length, Length)>,
    /// Length of the boss that takes part in warming.
    pub length: Length,
    /// Whether that was stated; else it is the least that it can be, and the boss may go on beyond the ring.
    pub length_stated: bool,
    /// Material.
    pub material: Material,
    /// Liner in its bore.
    pub liner: Option<Liner>,
    /// Shoulder and back wall.
    pub shoulder: Option<Shoulder>,
    /// Mass that is warmed, when given; else from the geometry.
    pub mass: Option<Mass>,
    /// Roughness Rz of the bore, when given.
    pub roughness_rz: Option<Length>,
}

/// A step in the outside of a boss.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// Outside diameter behind it, towards the back.
    pub outside: Length,
    /// Its distance from the front face of the boss.
    pub from_front: Length,
}

impl Step {
    /// Outside of the plain boss of the same volume, `D² = (D_f² l_f + D_b² l_b)/l`, with the outside at the front and the whole
    /// length.
    pub fn even_outside(&self, front: Length, length: Length) -> Length {
        let share: f64 = (self.from_front / length).into();
        (front * front * share + self.outside * self.outside * (1.0 - share)).sqrt()
    }
}

impl Housing {
    /// Outside of the thinner part of a stepped boss, else the outside.
    pub fn thinner_outside(&self) -> Length {
        self.step.map_or(self.outside, |step| step.outside.min(self.outside))
    }

    /// Outside of the plain boss of the same volume.
    pub fn even_outside(&self) -> Length {
        self.step.map_or(self.outside, |step| step.even_outside(self.outside, self.length))
    }

    /// Material at the seat: the liner's where there is one.
    pub fn bore_material(&self) -> &Material {
        self.liner.as_ref().map_or(&self.material, |liner| &liner.material)
    }

    /// What it is made of: the housing itself, then its liner.
    pub fn materials(&self) -> impl Iterator<Item = &Material> {
        [Some(&self.material), self.liner.as_ref().map(|liner| &liner.material)].into_iter().flatten()
    }
}

/// The shoulder that the ring stops against.
#[derive(Clone, Copy, Debug)]
pub struct Shoulder {
    /// Diameter of the hole through the shoulder.
    pub inside: Length,
    /// Thickness of the wall behind the ring.
    pub wall: Length,
}

/// The shaft under the seat.
#[derive(Clone, Debug)]
pub struct Shaft {
    /// Outside diameter with its limits.
    pub size: Size,
    /// Bore of a hollow shaft.
    pub inside: Option<Length>,
    /// Length that is chilled.
    pub length: Length,
    /// Whether that was stated; else it is the least that it can be, and the shaft may go on beyond the ring.
    pub length_stated: bool,
    /// Material.
    pub material: Material,
    /// Mass that is chilled, when given; else from the geometry.
    pub mass: Option<Mass>,
    /// Roughness Rz of the seat, when given.
    pub roughness_rz: Option<Length>,
}

/// A part of the joint that can be chilled or warmed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Piece {
    /// The part that goes in.
    Part,
    /// The housing.
    Housing,
    /// The shaft.
    Shaft,
}

/// Chilling or warming of one piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Treatment {
    /// What is treated.
    pub piece: Piece,
    /// In what.
    pub medium: Medium,
    /// Temperature of the medium.
    pub temperature: ThermodynamicTemperature,
    /// Convective film coefficient.
    pub film: FilmChoice,
    /// What the piece is wrapped in while it is in the medium.
    pub wrap: Option<Wrapping>,
    /// What it lies on there.
    pub rests_on: RestsOn,
    /// How much heat the medium itself can take up or give, when it is not large against the piece.
    pub store: Option<MediumStore>,
    /// Power put into the piece; zero but for induction heating.
    pub power: Power,
    /// Power of the blower, weak and strong, where hot air is blown on the piece.
    pub blower: Option<(Power, Power)>,
    /// For how long.
    pub hold: Hold,
}

/// Where a film coefficient comes from.
#[derive(Clone, Debug, PartialEq)]
pub enum FilmChoice {
    /// The job states it.
    Stated(HeatTransfer),
    /// The data of the medium: a correlation, or a range.
    OfMedium(Film),
}

/// What a piece is wrapped in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wrapping {
    /// A sealed plastic bag: no moisture gets at the piece.
    PlasticBag,
    /// Paper.
    Paper,
    /// A cardboard box.
    CardboardBox,
}

impl Wrapping {
    /// Every wrapping with the name that a job uses.
    pub const NAMES: [(&'static str, Wrapping); 3] =
        [("plastic bag", Self::PlasticBag), ("paper", Self::Paper), ("cardboard box", Self::CardboardBox)];

    /// The name that a job uses.
    pub fn name(self) -> &'static str {
        Self::NAMES.iter().find(|(_, wrapping)| *wrapping == self).map_or("wrap", |(name, _)| name)
    }
}

/// What a piece lies on in its medium.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RestsOn {
    /// A wire grate, a string, or its edge: the medium gets at every face.
    Grate,
    /// A metal shelf that is as cold, or as hot, as the medium.
    Shelf,
    /// A tray or a board, which keeps the medium from one face.
    Tray,
}

impl RestsOn {
    /// Every support with the name that a job uses.
    pub const NAMES: [(&'static str, RestsOn); 3] =
        [("grate", Self::Grate), ("metal shelf", Self::Shelf), ("tray", Self::Tray)];
}

/// A medium that warms, or cools, while it exchanges heat with the piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MediumStore {
    /// Heat capacity of all that is as cold or hot as the medium.
    pub capacity: HeatCapacity,
    /// Power that keeps the empty medium at its temperature.
    pub holding: Power,
}

/// When the piece is taken out.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hold {
    /// After a time.
    For(Time),
    /// When it has all but reached the medium's temperature.
    Settled,
    /// When the piece has reached a temperature.
    Reaches(ThermodynamicTemperature),
}

/// The shop in which the job is done.
#[derive(Clone, Debug)]
pub struct Bench {
    /// Air temperature, and that of everything that is neither chilled nor warmed.
    pub temperature: ThermodynamicTemperature,
    /// Relative humidity, when given.
    pub humidity: Option<Ratio>,
    /// Time from leaving the medium to the mouth of the seat.
    pub carry: Time,
    /// Convective film coefficient of shop air.
    pub film: FilmChoice,
    /// Pressure of the air, from the elevation.
    pub pressure: Pressure,
    /// Volume of the room, when given.
    pub room: Option<Volume>,
    /// Clearance that lets the part drop in.
    pub placing_clearance: Length,
    /// Whether the job states it; the usual one is not asked of a clearance fit that nobody chills or warms.
    pub placing_is_stated: bool,
}

/// How the part is pressed home.
#[derive(Clone, Debug)]
pub struct Press {
    /// Coefficient of friction, low and high, with its source.
    pub friction: (f64, f64),
    /// Where the friction comes from.
    pub friction_source: String,
    /// Largest force of the means at hand.
    pub capacity: Option<Force>,
    /// What presses.
    pub means: Option<PressMeans>,
    /// Share of (Rz inner + Rz outer) that is smoothed away.
    pub smoothing: f64,
}

/// What presses.
#[derive(Clone, Debug, PartialEq)]
pub enum PressMeans {
    /// A lever or rack press; its force is the stated capacity.
    Arbor,
    /// A hydraulic press.
    Hydraulic {
        /// Diameter of the ram's piston.
        ram: Option<Length>,
        /// Highest pressure on it.
        pressure: Option<Pressure>,
    },
    /// A screw that draws or pushes the part home.
    Screw(Box<ScrewJig>),
    /// Hammer and sleeve.
    HammerAndSleeve,
}

impl PressMeans {
    /// The names that a job uses.
    pub const NAMES: [&'static str; 4] = ["arbor press", "hydraulic press", "screw jig", "hammer and sleeve"];

    /// The name that a job uses.
    pub fn name(&self) -> &'static str {
        match self {
            Self::Arbor => Self::NAMES[0],
            Self::Hydraulic { .. } => Self::NAMES[1],
            Self::Screw(_) => Self::NAMES[2],
            Self::HammerAndSleeve => Self::NAMES[3],
        }
    }
}

/// A screw jig.
#[derive(Clone, Debug, PartialEq)]
pub struct ScrewJig {
    /// The thread.
    pub thread: Thread,
    /// Strength of the screw; none where no class of the tables covers its size.
    pub class: Option<StrengthClass>,
    /// The nut that turns under load; none where the table has no nut of its size.
    pub nut: Option<HexagonNut>,
    /// Friction in the thread and under the nut, low and high.
    pub friction: (f64, f64),
    /// Where that comes from.
    pub friction_source: String,
    /// Largest torque that is put on it.
    pub torque: Option<Torque>,
    /// Free length of the rod between its nut and what holds it.
    pub rod_length: Option<Length>,
}

/// The internal clearance of a bearing as delivered.
#[derive(Clone, Debug, PartialEq)]
pub struct InternalPlay {
    /// The table that it belongs to.
    pub family: BearingFamily,
    /// What rolls.
    pub element: RollingElement,
    /// The group; none where limits are stated.
    pub group: Option<ClearanceGroup>,
    /// Smallest play across the diameter.
    pub least: Length,
    /// Largest play.
    pub most: Length,
    /// Where the two come from.
    pub source: String,
}

/// Which end of service.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ServiceEnd {
    /// The coldest state.
    Coldest,
    /// The hottest state.
    Hottest,
}

/// Temperatures in one state of service.
#[derive(Clone, Copy, Debug)]
pub struct ServiceState {
    /// Which end.
    pub end: ServiceEnd,
    /// Temperature of the part that goes in.
    pub part: ThermodynamicTemperature,
    /// Temperature of the housing.
    pub housing: ThermodynamicTemperature,
    /// Temperature of the shaft.
    pub shaft: ThermodynamicTemperature,
}

impl ServiceState {
    /// Temperature of a piece.
    pub fn of(&self, piece: Piece) -> ThermodynamicTemperature {
        match piece {
            Piece::Part => self.part,
            Piece::Housing => self.housing,
            Piece::Shaft => self.shaft,
        }
    }
}

/// How close to its medium a piece must come to count as settled.
pub const SETTLED_WITHIN_SHARE: f64 = 0.02;
