//! Where the parts of a seat lie, for a drawing to scale.
//!
//! Owns places and names only; what the fit does to the parts is [`super::drawing`]. A place is a radius and a distance along
//! the axis from the stop of the part, positive towards the mouth of the seat.

use super::model::{Plan, SeatKind};
use crate::job::{Bed, Housing, Job, PartKind, Seal, SealBore};
use crate::quantity::Length;
use crate::stock::retaining_rings::RingPlace;

/// A place in the half section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Distance along the axis from the stop of the part.
    pub along: Length,
    /// Distance from the axis.
    pub radius: Length,
}

/// What a drawn part is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrawnKind {
    /// Housing, liner or shaft.
    Seat,
    /// A ring of a bearing, a bush or a plug.
    Ring,
    /// What rolls between the rings: its place, not its size.
    Rolling,
    /// A shaft seal.
    Seal,
    /// A groove, cut out of the part before it.
    Groove,
    /// A retaining ring: its thickness and its groove, not its breadth.
    RetainingRing,
}

/// A part in the half section.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnPart {
    /// What it is.
    pub kind: DrawnKind,
    /// Its name; empty for what needs none.
    pub name: String,
    /// Its corners in order.
    pub outline: Vec<Spot>,
}

/// A fit in the half section.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DrawnFit {
    /// Which seat.
    pub seat: SeatKind,
    /// Diameter of the joint.
    pub nominal: Length,
    /// Ends of the joint along the axis.
    pub along: (Length, Length),
    /// Clearance of the tightest case at 20 °C, on the diameter; negative is interference.
    pub clearance: Length,
}

/// The half section of a job.
#[derive(Clone, Debug, PartialEq)]
pub struct Arrangement {
    /// The parts, the hindmost first.
    pub parts: Vec<DrawnPart>,
    /// The fits of its seats.
    pub fits: Vec<DrawnFit>,
}

impl Plan<'_> {
    /// The seat in half section, as far as the job says where things lie.
    pub fn arrangement(&self) -> Arrangement {
        let job = self.job;
        let zero = Length::default();
        let mut parts = Vec::new();
        let mouth = job.housing.as_ref().map_or(job.part.width, |housing| mouth(job, housing));
        if let Some(housing) = &job.housing {
            parts.extend(of_housing(job, housing, mouth));
        }
        let behind = job.housing.as_ref().and_then(|housing| housing.shoulder).map_or(zero, |shoulder| shoulder.wall);
        if let (Some(shaft), Some(bore)) = (&job.shaft, job.part.bore) {
            let inside = shaft.inside.unwrap_or_default();
            // A shaft goes on behind its part; a third of its diameter shows that.
            let ends = (-behind.max(bore / 3.0), mouth.max(shaft.length).max(job.part.width));
            parts.push(part(DrawnKind::Seat, named("shaft", shaft.material.id()), ends, (inside, bore)));
        }
        let at = place_of_part(job);
        parts.extend(of_part(job, at));
        if let Some(bed) = bed(job) {
            parts.extend(beside(job, bed));
            parts.extend(retained(job, bed));
        }
        if let Some(seal) = job.seal.as_ref().filter(|_| bed_depth(job).is_some()) {
            parts.extend(self.of_seal(seal, mouth));
        }
        let fits = self.seats.iter().map(|seat| DrawnFit {
            seat: seat.seat,
            nominal: seat.nominal,
            along: (at, at + job.part.width),
            clearance: seat.fit.clearance.tightest,
        });
        Arrangement { parts, fits: fits.collect() }
    }

    /// A seal in the bore of the bearing, at the depth that it reaches below the face.
    fn of_seal(&self, seal: &Seal, mouth: Length) -> Option<DrawnPart> {
        let body = seal.body.as_deref().filter(|body| matches!(body.bore, SealBore::OfBearing))?;
        let stand = self.seal.as_ref()?.stand;
        let ends = (mouth - stand.reached, mouth - stand.below_face);
        Some(part(DrawnKind::Seal, "shaft seal".to_owned(), ends, (body.inside, body.outside)))
    }
}

fn named(what: &str, material: &str) -> String {
    format!("{what}, {material}")
}

/// A rectangle between two diameters.
fn part(kind: DrawnKind, name: String, (from, to): (Length, Length), (inside, outside): (Length, Length)) -> DrawnPart {
    let spot = |along: Length, diameter: Length| Spot { along, radius: diameter * 0.5 };
    let outline = vec![spot(from, inside), spot(to, inside), spot(to, outside), spot(from, outside)];
    DrawnPart { kind, name, outline }
}

fn bed(job: &Job) -> Option<&Bed> {
    job.stack.as_ref()?.bed.as_deref()
}

/// Depth of the stop below the face of the housing, where the job gives it.
fn bed_depth(job: &Job) -> Option<Length> {
    let bed = bed(job).filter(|bed| bed.place == RingPlace::Bore)?;
    bed.depth.as_ref().map(|depth| depth.nominal)
}

/// What stands between the stop and the part, a shim for one, moves it.
fn place_of_part(job: &Job) -> Length {
    let parts = bed(job).map_or(&[][..], |bed| &bed.parts);
    let before = parts.iter().take_while(|part| part.name != "bearing");
    if parts.iter().any(|part| part.name == "bearing") {
        before.fold(Length::default(), |sum, part| sum + part.size.nominal)
    } else {
        Length::default()
    }
}

/// Spacers and shims, as wide as the ring that they bear on.
fn beside(job: &Job, bed: &Bed) -> Vec<DrawnPart> {
    let ring = match bed.place {
        RingPlace::Bore => (job.part.outer_ring_inside.unwrap_or(job.part.outside), job.part.outside),
        RingPlace::Shaft => (job.part.bore.unwrap_or_default(), job.part.inner_ring_outside),
    };
    let mut at = Length::default();
    let mut parts = Vec::new();
    for piece in &bed.parts {
        let ends = (at, at + piece.size.nominal);
        at = ends.1;
        if piece.name == "spacer" || piece.name == "shim" {
            parts.push(part(DrawnKind::Seat, piece.name.to_owned(), ends, ring));
        }
    }
    parts
}

fn mouth(job: &Job, housing: &Housing) -> Length {
    // The length of a housing has the wall behind the ring in it.
    let wall = housing.shoulder.map_or(Length::default(), |shoulder| shoulder.wall);
    bed_depth(job).unwrap_or_else(|| (housing.length - wall).max(job.part.width))
}

/// The housing with its back wall, and its liner.
fn of_housing(job: &Job, housing: &Housing, mouth: Length) -> Vec<DrawnPart> {
    let zero = Length::default();
    let bore = housing.liner.as_ref().map_or(job.part.outside, |liner| liner.outside);
    let spot = |along: Length, diameter: Length| Spot { along, radius: diameter * 0.5 };
    let (wall, hole) = housing.shoulder.map_or((zero, bore), |shoulder| (shoulder.wall, shoulder.inside));
    let mut outline = vec![spot(-wall, hole)];
    if housing.shoulder.is_some() {
        outline.extend([spot(zero, hole), spot(zero, bore)]);
    }
    outline.extend([spot(mouth, bore), spot(mouth, housing.outside)]);
    let outside = match housing.step {
        Some(step) => {
            let at = mouth - step.from_front;
            outline.extend([spot(at, housing.outside), spot(at, step.outside)]);
            step.outside
        }
        None => housing.outside,
    };
    outline.push(spot(-wall, outside));
    let outer = DrawnPart { kind: DrawnKind::Seat, name: named("housing", housing.material.id()), outline };
    let liner = housing.liner.as_ref().map(|liner| {
        part(DrawnKind::Seat, named("liner", liner.material.id()), (zero, mouth), (job.part.outside, liner.outside))
    });
    std::iter::once(outer).chain(liner).collect()
}

fn of_part(job: &Job, at: Length) -> Vec<DrawnPart> {
    let part_of_job = &job.part;
    let ends = (at, at + part_of_job.width);
    let ring = |name: &str, diameters| part(DrawnKind::Ring, name.to_owned(), ends, diameters);
    let bore = part_of_job.bore.unwrap_or_default();
    let Some(raceway) = part_of_job.outer_ring_inside.filter(|_| part_of_job.kind.is_bearing()) else {
        return vec![ring(&named(part_of_job.kind.noun(), part_of_job.material.id()), (bore, part_of_job.outside))];
    };
    let rolling = match part_of_job.kind {
        PartKind::BallBearing => "balls",
        _ => "rollers",
    };
    vec![
        ring("outer ring", (raceway, part_of_job.outside)),
        part(DrawnKind::Rolling, rolling.to_owned(), ends, (part_of_job.inner_ring_outside, raceway)),
        ring("inner ring", (bore, part_of_job.inner_ring_outside)),
    ]
}

/// The groove and the retaining ring against its wall; none where the job does not place them, or the tables do not know them.
fn retained(job: &Job, bed: &Bed) -> Vec<DrawnPart> {
    let from_face = || Some(bed.depth.as_ref()?.nominal - bed.from_face.as_ref()?.nominal);
    let wall = bed.from_shoulder.as_ref().map(|size| size.nominal).or_else(from_face);
    let Some((wall, groove)) = wall.zip(bed.ring.groove) else { return Vec::new() };
    let Some(seat) = (match bed.place {
        RingPlace::Bore => Some(job.part.outside),
        RingPlace::Shaft => job.part.bore,
    }) else {
        return Vec::new();
    };
    // Out of the groove by twice its depth: the breadth of a ring is in no table here.
    let free = seat - (groove - seat) * 2.0;
    let ring = (wall - bed.ring.thickness.nominal, wall);
    vec![
        part(
            DrawnKind::Groove,
            String::new(),
            (wall - bed.groove_width.nominal, wall),
            (seat.min(groove), seat.max(groove)),
        ),
        part(DrawnKind::RetainingRing, "retaining ring".to_owned(), ring, (free.min(groove), free.max(groove))),
    ]
}
