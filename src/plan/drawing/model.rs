use crate::plan::PlanError;
use crate::plan::model::SeatKind;
use crate::quantity::{Force, Length, Pressure, Ratio, ThermodynamicTemperature};
use crate::section::{Field, Node, Peak, Section, State, SurfaceChange, WallState};
use thiserror::Error;
use uom::si::ratio::ratio;

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
    /// The parts from the inside outward, in trade words: inner part, a liner where there is one, outer part.
    pub parts: Vec<&'static str>,
    /// Their materials.
    pub materials: Vec<String>,
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
    /// Temperatures of the inner and of the outer part; a liner is as warm as its housing.
    pub temperatures: [ThermodynamicTemperature; 2],
    /// Interference on the diameter that bears then; negative where there is clearance.
    pub interference: Length,
    /// Interference of each contact: that of the ring, and of a liner in its housing.
    pub interferences: Vec<Length>,
    /// The seam of a liner and its housing; none without a liner.
    pub seam: Option<Seam>,
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
    /// Largest stresses of each part, away from singular places.
    pub peaks: Vec<Peak>,
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

    /// Radial room that a node takes beyond where it is drawn in the mesh, before it is fitted, so that surfaces which touch meet
    /// after it: nothing at the inside of a part, half the interference at its seat, nothing in the outermost part. The bore of a
    /// liner lies outside of what it is finished to by as much as its fit will close it.
    pub fn oversize(&self, part: usize, node: &Node) -> Length {
        let share = self.share_of_wall(part, node);
        let over = self.interferences.get(part).map_or(Length::default(), |over| *over * (0.5 * share));
        over - self.closed(part, node) * (1.0 - share)
    }

    /// Radius of a node with all parts at the size that they have before they are fitted: at each contact the inner part is larger,
    /// the outer one smaller, by half of what they overlap on the mean, in proportion over each part's whole wall; where a liner's bore
    /// departs from the mean, the whole wall of the ring lies farther out or in.
    ///
    /// So no wall changes by more than a few ten-thousandths.
    pub fn unfitted_radius(&self, part: usize, node: &Node) -> Length {
        let mean = self.seam.as_ref().map_or(Length::default(), |seam| seam.bore.mean);
        let overlaps = self.interferences.iter().enumerate().map(|(k, over)| if k == 0 { *over + mean } else { *over });
        let shares = overlaps.zip(&self.state.contacts).map(|(over, at)| over / (2.0 * at.diameter));
        let signed = |(contact, share): (usize, Ratio)| if contact < part { -share } else { share };
        let share: Ratio = shares.enumerate().map(signed).sum();
        let uneven = |seam: &Seam| (seam.bore.at(node.place.position) - mean) * 0.5;
        let own = self.seam.as_ref().filter(|_| part == 0).map_or(Length::default(), uneven);
        node.place.radius * (1.0 + share.get::<ratio>()) + own
    }

    /// Where a node lies in the wall of its part, from its inside at zero to its contact with the next part at one.
    fn share_of_wall(&self, part: usize, node: &Node) -> f64 {
        let Some(contact) = self.state.contacts.get(part) else { return 0.0 };
        let inner = match part.checked_sub(1).and_then(|before| self.state.contacts.get(before)) {
            Some(before) => before.diameter * 0.5,
            None => {
                let radii = self.field.parts[part].nodes.iter().map(|node| node.place.radius);
                radii.fold(contact.diameter * 0.5, Length::min)
            }
        };
        let share: f64 = ((node.place.radius - inner) / (contact.diameter * 0.5 - inner)).into();
        share.clamp(0.0, 1.0)
    }

    /// How far outward the bore of a liner moved as that was fitted, on the radius at the position of a node of it.
    fn closed(&self, part: usize, node: &Node) -> Length {
        let seam = self.seam.as_ref().filter(|_| part == 1);
        seam.map_or(Length::default(), |seam| seam.bore.at(node.place.position) * 0.5)
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

/// The seam of a liner and the housing around it.
#[derive(Clone, Debug, PartialEq)]
pub struct Seam {
    /// Interference on the diameter at the moment, before the liner is fitted; negative where the liner would stand apart, and
    /// pulls if it is bonded.
    pub interference: Length,
    /// Whether the liner is cast in; else it is pressed in and may come free.
    pub bonded: bool,
    /// How the bore of the liner changed as that was fitted, before the bore was finished.
    pub bore: SurfaceChange,
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
#[derive(Clone, Debug, PartialEq)]
pub struct PlaneSeat {
    /// Pressure.
    pub pressure: Pressure,
    /// Force along the axis.
    pub force: Force,
    /// How far the ring closes, or grows; none for a solid inner part.
    pub closing: Option<Length>,
    /// Largest von Mises stress of each part.
    pub von_mises: Vec<Pressure>,
    /// Largest hoop stress of each part.
    pub hoop: Vec<Pressure>,
    /// Pressure between a liner and its housing; negative where a bonded one pulls, none without a liner.
    pub seam: Option<Pressure>,
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
