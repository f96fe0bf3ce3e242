use crate::plan::PlanError;
use crate::plan::model::SeatKind;
use crate::quantity::{Force, Length, Pressure, ThermodynamicTemperature};
use crate::section::{Field, Node, Peak, Section, State, WallState};
use thiserror::Error;

/// Which section is wanted.
#[derive(Clone, Copy, Debug)]
pub struct SectionRequest {
    /// The seat; all of the job without one.
    pub seat: Option<SeatKind>,
    /// The moment.
    pub moment: Moment,
    /// The case of the fit.
    pub case: SectionCase,
}

/// At which temperatures a section is computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Moment {
    /// Both parts at the temperature of the shop.
    Room,
    /// As they come to the mouth of the seat, with the part in its place.
    Bore,
    /// The hottest state of service.
    Hottest,
    /// The coldest state of service.
    Coldest,
}

impl Moment {
    /// The moment in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Room => "at the temperature of the shop",
            Self::Bore => "at the temperatures at the bore",
            Self::Hottest => "hottest in service",
            Self::Coldest => "coldest in service",
        }
    }

    /// The name that a result for other programs uses.
    pub fn name(self) -> &'static str {
        match self {
            Self::Room => "room",
            Self::Bore => "bore",
            Self::Hottest => "hottest",
            Self::Coldest => "coldest",
        }
    }

    /// Whether the ring is pushed then; in service the fit holds.
    pub fn pushes(self) -> bool {
        matches!(self, Self::Room | Self::Bore)
    }
}

/// Which case of the fit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SectionCase {
    /// Largest inner part in the smallest outer part.
    Tightest,
    /// Both at the middle of their limits.
    Middle,
    /// Smallest inner part in the largest outer part.
    Loosest,
}

impl SectionCase {
    /// The name that every output uses.
    pub fn name(self) -> &'static str {
        match self {
            Self::Tightest => "tightest",
            Self::Middle => "middle",
            Self::Loosest => "loosest",
        }
    }
}

/// The section of a seat at a moment.
///
/// Deformation is what the fit does to the parts, beyond their free expansion to the temperatures of the moment.
#[derive(Clone, Debug)]
pub struct SectionPlan {
    /// Which seat.
    pub seat: SeatKind,
    /// Nominal diameter of the joint.
    pub nominal: Length,
    /// The ring of the part, in trade words.
    pub ring: &'static str,
    /// Inner and outer part, in trade words.
    pub parts: [&'static str; 2],
    /// Their materials.
    pub materials: [String; 2],
    /// Width of the ring.
    pub width: Length,
    /// Ring and seat as they are drawn.
    pub section: Section,
    /// Whether the job gives the length of the seat; else it is the least that it can be.
    pub length_stated: bool,
    /// Mean pressure if the longer seat goes on at the front alone instead of on both sides, or the other way round; none where
    /// that makes no difference.
    pub softer: Option<Pressure>,
    /// The moment.
    pub moment: Moment,
    /// The case of the fit.
    pub case: SectionCase,
    /// Temperatures of the inner and of the outer part.
    pub temperatures: [ThermodynamicTemperature; 2],
    /// Interference on the diameter that bears then; negative where there is clearance.
    pub interference: Length,
    /// Coefficient of friction of the case.
    pub friction: f64,
    /// Force to press home, full depth; in service what the fit holds along the axis.
    pub force: Force,
    /// The same with what friction adds to the pressure, and as stiff as a seat of unstated length may be: the most that the plan
    /// counts with. Never below `force`.
    pub force_most: Force,
    /// Whether rolling elements run on the ring.
    pub rolls: bool,
    /// How far the ring closes in a housing, or grows on a shaft; none for a ring without the other surface.
    pub closing: Option<Closing>,
    /// The shoulder while the ring is pushed against it; none where there is none, or nothing is pushed.
    pub shoulder: Option<ShoulderLoad>,
    /// The same seat as two plain rings of equal width.
    pub plane: PlaneSeat,
    /// Largest stresses of the inner and of the outer part, away from singular places.
    pub peaks: [Option<Peak>; 2],
    /// Contact and changes of size.
    pub state: State,
    /// Displacements and stresses at the nodes.
    pub field: Field,
}

/// Share of the force from which it counts that a push may need more.
const MORE: f64 = 1.005;

impl SectionPlan {
    /// Whether the parts touch.
    pub fn touches(&self) -> bool {
        self.interference > Length::default()
    }

    /// The most that pressing home may take, where that is more than `force`: nothing where nothing is pushed.
    pub fn may_need(&self) -> Option<Force> {
        let pushed = self.moment.pushes() && self.touches();
        Some(self.force_most).filter(|most| pushed && *most > self.force * MORE)
    }

    /// Radial room that a node of the inner part takes beyond the bore before it is fitted: nothing at its inside, half the
    /// interference at the seat, so that both surfaces meet after it. Nothing for the outer part.
    pub fn oversize(&self, part: usize, node: &Node) -> Length {
        if part > 0 {
            return Length::default();
        }
        let radii = self.field.parts[0].nodes.iter().map(|node| node.place.radius);
        let (inner, outer) = (radii.fold(self.nominal, Length::min), self.nominal * 0.5);
        let share: f64 = ((node.place.radius - inner) / (outer - inner)).into();
        self.interference * (0.5 * share.clamp(0.0, 1.0))
    }

    /// Radius of a node with both parts at the size that they have before they are fitted: the radii of the inner part are larger,
    /// those of the outer one smaller, by a quarter of the interference at the seat and in proportion elsewhere.
    ///
    /// So no wall changes by more than a few ten-thousandths.
    pub fn unfitted_radius(&self, part: usize, node: &Node) -> Length {
        let share: f64 = (self.interference / (2.0 * self.nominal)).into();
        node.place.radius * if part == 0 { 1.0 + share } else { 1.0 - share }
    }

    /// Nodes of the ring along the surface that closes or grows, from back to front.
    pub fn closing_nodes(&self) -> Vec<usize> {
        let (part, of): (_, fn(Length, Length) -> Length) = match self.seat {
            SeatKind::Housing => (&self.field.parts[0], Length::min),
            SeatKind::Shaft => (&self.field.parts[1], Length::max),
        };
        let mut rows: Vec<usize> = (0..part.nodes.len()).collect();
        let position = |node: &usize| part.nodes[*node].place.position;
        rows.sort_by(|a, b| position(a).value.total_cmp(&position(b).value));
        // The surface is the innermost, or the outermost, node of each row of equal position.
        let same = |a: &usize, b: &usize| position(a).value.total_cmp(&position(b).value).is_eq();
        let radius = |node: &usize| part.nodes[*node].place.radius;
        let edge = |row: &[usize]| {
            row.iter().copied().reduce(|a, b| if of(radius(&a), radius(&b)) == radius(&a) { a } else { b })
        };
        rows.chunk_by(same).filter_map(edge).collect()
    }
}

/// How far a ring closes, or grows on a shaft, along its width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Closing {
    /// At the front face.
    pub front: Length,
    /// At mid-width.
    pub middle: Length,
    /// At the back face.
    pub back: Length,
    /// At the raceway: the middle of its groove, or of the width where no groove is known.
    pub raceway: Length,
    /// Mean over the width.
    pub mean: Length,
}

/// A shoulder with the ring pushed against it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShoulderLoad {
    /// Force on it: that of pressing home, with which a push ends that goes on against the shoulder.
    pub force: Force,
    /// The wall under the fit alone.
    pub fitted: WallState,
    /// The wall under fit and force.
    pub pushed: WallState,
}

impl ShoulderLoad {
    /// How far its edge gives way to the push.
    pub fn deflects(&self) -> Length {
        self.pushed.edge_deflection - self.fitted.edge_deflection
    }
}

/// By what share a quantity of the section exceeds that of two plain rings, both in one unit; none where that gives nothing, or the
/// other sign.
pub fn over_plane(section: f64, plane: f64) -> Option<f64> {
    let share = section / plane - 1.0;
    (plane * section > 0.0 && share.is_finite()).then_some(share)
}

/// The one seat of a deck, which must press.
///
/// # Errors
/// [`DrawingError::TwoSeats`], and [`DrawingError::Free`] where there is nothing to solve.
pub fn for_deck(seats: &[SectionPlan]) -> Result<&SectionPlan, DrawingError> {
    let [seat] = seats else { return Err(DrawingError::TwoSeats) };
    if seat.touches() { Ok(seat) } else { Err(DrawingError::Free { ring: seat.ring, moment: seat.moment.words() }) }
}

/// Two plain rings of equal width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaneSeat {
    /// Pressure.
    pub pressure: Pressure,
    /// Force along the axis.
    pub force: Force,
    /// How far the ring closes, or grows; none for a solid inner part.
    pub closing: Option<Length>,
    /// Largest von Mises stress of the inner and of the outer part.
    pub von_mises: [Pressure; 2],
    /// Largest hoop stress of the inner and of the outer part.
    pub hoop: [Pressure; 2],
}

/// Why a section cannot be drawn.
#[derive(Clone, Debug, Error)]
pub enum DrawingError {
    /// The job has no such seat.
    #[error("the job has no seat in a {seat}, or on one")]
    NoSeat {
        /// Which seat was asked for.
        seat: &'static str,
    },
    /// A part without a bore has no ring.
    #[error("a {part} without a bore has no ring to make a section of")]
    NoRing {
        /// What the part is.
        part: &'static str,
    },
    /// A bore with a liner has a third part, which is not drawn.
    #[error("a bore with a liner has a part more than the picture and the deck know")]
    Lined,
    /// The job does not say that state of service.
    #[error("the job says nothing of its {end} state in service")]
    NoService {
        /// Which end.
        end: &'static str,
    },
    /// A deck holds one seat.
    #[error("the job has two seats, and a deck holds one")]
    TwoSeats,
    /// A seat that does not touch has nothing to solve.
    #[error("the {ring} is free in its seat {moment}: there is nothing to solve")]
    Free {
        /// The ring.
        ring: &'static str,
        /// When.
        moment: &'static str,
    },
    /// The job cannot be planned, or its section not be divided.
    #[error("{0}")]
    Plan(#[from] PlanError),
}

impl DrawingError {
    /// What to do about it.
    pub fn help(&self) -> &'static str {
        match self {
            Self::NoSeat { .. } => "give --seat housing or --seat shaft as the job has it, or leave it out",
            Self::NoRing { .. } => "`seatwise plan` plans it with the plane formula",
            Self::Lined => {
                "`seatwise plan` computes its section with the liner; leave `liner` out to see the seat without it"
            }
            Self::NoService { .. } => "add [service] with coldest and hottest to the job, or choose another moment",
            Self::TwoSeats => "add --seat housing or --seat shaft",
            Self::Free { .. } => "choose another moment with --at, or --case tightest",
            Self::Plan(PlanError::Section(_)) => {
                "check the sizes of the seat; `seatwise plan --model plane` does without"
            }
            Self::Plan(error) => error.help(),
        }
    }
}
