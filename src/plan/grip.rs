//! The part in its seat: how long it stays free, and whether chilling it helps.

use super::PlanError;
use super::clearance_history::{ClearancePoint, InSeat, Moment, MomentKind};
use super::joint::{Joint, Side};
use super::model::{AtBore, Grip, GripTime, SeatKind, Soak};
use super::subject::Subject;
use super::surroundings::{Pace, shop_film_at};
use crate::job::{Job, Piece};
use crate::quantity::{Area, Cases, Length, Mass, ThermodynamicTemperature, Time};
use crate::thermal::ConductionPath;
use crate::thermal::bore::{self, Chilling, Course, Exchange, Gap, Insertion, Placement, Reach, SeatBody, SeatSizes};
use std::f64::consts::PI;
use uom::si::area::square_meter;
use uom::si::time::{hour, second};

/// Longest time in the seat that is followed.
const LONGEST_H: f64 = 4.0;

/// Points of a plot in the seat, how far beyond the grip it goes, and the least that it shows, s.
const POINTS: u32 = 60;
const SHOWN_AFTER: f64 = 3.0;
const LEAST_SHOWN_S: f64 = 5.0;

/// Smallest share of a piece's surface that gives heat to the shop while it stands in its seat: a face at the least.
const LEAST_FREE_SHARE: f64 = 0.05;

/// What happens in the seat, with the parts as they arrive; nothing where neither was treated. Given are also how warm they come
/// at the latest, the common temperature that frees the tightest case again, and whether a page will show the curves of the cases.
pub(super) fn grip<'a>(
    job: &'a Job,
    joint: &'a Joint<'_>,
    at_bore: &AtBore,
    (latest, frees_at, pages): (Option<Arrival>, Option<ThermodynamicTemperature>, bool),
    (chill, warm): (Option<&Soak>, Option<&Soak>),
) -> Result<Option<(Grip, Seated<'a>)>, PlanError> {
    if chill.is_none() && warm.is_none() {
        return Ok(None);
    }
    let (inner, outer) = (Subject::new(job, joint.inner.piece)?, Subject::new(job, joint.outer.piece)?);
    let concentric = Exchange {
        inner: body(job, joint, &joint.inner, &inner, at_bore.inner)?,
        outer: body(job, joint, &joint.outer, &outer, at_bore.outer)?,
        joint: bore::Joint { diameter: joint.nominal, length: job.part.width },
        gap: Gap::usual(Placement::Concentric),
        shop: job.bench.temperature,
    };
    let longest = Time::new::<hour>(LONGEST_H);
    let cases = sizes(joint);
    let [of_tightest, of_others] = if pages { [Reach::Whole; 2] } else { [Reach::Meeting, Reach::Grip] };
    let reaches = Cases { tightest: of_tightest, middle: of_others, loosest: of_others };
    let insertions = cases.zip(reaches).try_map(|(sizes, reach)| concentric.run_as_far(sizes, longest, reach))?;
    let tightest = &insertions.tightest;
    // Without clearance it does not go in, wherever it stands.
    let one_sided = if goes_in(tightest) {
        let one_sided = Exchange { gap: Gap::usual(Placement::OneSide), ..concentric };
        time(&one_sided.run_as_far(cases.tightest, longest, Reach::Grip)?)
    } else {
        GripTime::DoesNotGoIn
    };
    let at_latest = latest.map(|arrival| arrival.insertion(&concentric, cases.tightest, longest)).transpose()?;
    let both = chill.is_some() && warm.is_some();
    let unchilled = if both { Some(left_in_the_shop(&concentric, cases.tightest, tightest, longest)?) } else { None };
    let grip = Grip {
        one_sided,
        at_latest: at_latest.as_ref().map(time),
        meets_at: insertions.tightest.meeting.map(|meeting| meeting.temperature),
        chilling_shortens: unchilled.as_ref().is_some_and(|both| both.shortens() && goes_in(&both.unchilled)),
        unchilled: unchilled.as_ref().map(|both| time(&both.unchilled)),
        frees_at,
        times: Cases {
            tightest: time(&insertions.tightest),
            middle: time(&insertions.middle),
            loosest: time(&insertions.loosest),
        },
    };
    Ok(Some((grip, Seated { insertions })))
}

/// The insertions, for what they say beside the grip.
pub(super) struct Seated<'a> {
    insertions: Cases<Insertion<'a>>,
}

impl Seated<'_> {
    /// The curves for a plot.
    pub(super) fn curves(&self) -> InSeat {
        in_seat(&self.insertions)
    }

    /// Clearance of the tightest case after standing in the seat for some times.
    pub(super) fn standing(&self) -> [(Time, Length); 4] {
        let times = STANDING_S.map(Time::new::<second>);
        let tightest = Stood::new(&self.insertions.tightest, times[3]);
        times.map(|time| (time, tightest.clearance_at(time)))
    }
}

/// An insertion that is followed on after the parts have come together.
struct Stood<'a>(Insertion<'a>);

impl<'a> Stood<'a> {
    /// What comes after does not decide whether a job can be done: where a part leaves its tables then, it stays as it came
    /// together.
    fn new(insertion: &Insertion<'a>, until: Time) -> Self {
        Self(insertion.clone().followed_to(until).unwrap_or_else(|_| insertion.clone()))
    }

    /// One that stays free ends after the longest time, and stays as it is.
    fn clearance_at(&self, time: Time) -> Length {
        self.0.clearance_at(time.min(self.0.end())).unwrap_or_default()
    }
}

/// Times for which a part may stand half-way before it is pushed on, s.
const STANDING_S: [f64; 4] = [0.0, 30.0, 60.0, 120.0];

/// How warm both parts are when they come to the seat.
#[derive(Clone, Copy)]
pub(super) struct Arrival {
    pub(super) inner: ThermodynamicTemperature,
    pub(super) outer: ThermodynamicTemperature,
}

impl Arrival {
    fn insertion<'a>(
        self,
        planned: &Exchange<'a>,
        sizes: SeatSizes,
        longest: Time,
    ) -> Result<Insertion<'a>, PlanError> {
        let inner = SeatBody { start: self.inner, ..planned.inner };
        let outer = SeatBody { start: self.outer, ..planned.outer };
        Ok(Exchange { inner, outer, ..*planned }.run_as_far(sizes, longest, Reach::Grip)?)
    }
}

/// The curves in the seat for a plot: until a while after the tightest case has gripped, or the parts have come together.
fn in_seat(insertions: &Cases<Insertion<'_>>) -> InSeat {
    let grip = |insertion: &Insertion<'_>| match insertion.course {
        Course::GripsWhileEvening { at } | Course::HeldUntilLock { locks: at, .. } => Some(at),
        Course::NoClearance | Course::StaysFree(_) => None,
    };
    let Cases { tightest, middle, loosest } = insertions;
    let grips = grip(tightest);
    let met = tightest.meeting.map_or_else(|| tightest.end(), |meeting| meeting.at);
    let ends = grips.or_else(|| grip(middle)).or_else(|| grip(loosest)).unwrap_or(met);
    let shown = (SHOWN_AFTER * ends).max(Time::new::<second>(LEAST_SHOWN_S));
    let followed = insertions.clone().map(|insertion| Stood::new(&insertion, shown));
    let point = |i: u32| {
        let time = shown * (f64::from(i) / f64::from(POINTS));
        let [tightest, middle, loosest] =
            [&followed.tightest, &followed.middle, &followed.loosest].map(|insertion| insertion.clearance_at(time));
        ClearancePoint { time, clearance: Cases { tightest, middle, loosest } }
    };
    let moment = |time| Moment { time, kind: MomentKind::Grips, clearance: Length::default() };
    InSeat { points: (0..=POINTS).map(point).collect(), moments: grips.map(moment).into_iter().collect() }
}

/// The tightest case as planned, beside the same with the inner part left at the temperature of the shop.
fn left_in_the_shop<'a>(
    exchange: &Exchange<'a>,
    sizes: SeatSizes,
    chilled: &Insertion<'a>,
    longest: Time,
) -> Result<Chilling<'a>, PlanError> {
    let inner = SeatBody { start: exchange.shop, ..exchange.inner };
    let unchilled = Exchange { inner, ..*exchange }.run_as_far(sizes, longest, Reach::Grip)?;
    Ok(Chilling { chilled: chilled.clone(), unchilled })
}

fn goes_in(insertion: &Insertion<'_>) -> bool {
    !matches!(insertion.course, Course::NoClearance)
}

fn time(insertion: &Insertion<'_>) -> GripTime {
    match insertion.course {
        Course::NoClearance => GripTime::DoesNotGoIn,
        Course::GripsWhileEvening { at } => GripTime::Grips(at),
        Course::HeldUntilLock { locks, .. } => GripTime::FreeUntilLock(locks),
        Course::StaysFree(_) => GripTime::StaysFree,
    }
}

fn sizes(joint: &Joint<'_>) -> Cases<SeatSizes> {
    let (inner, outer) = (&joint.inner.size, &joint.outer.size);
    let mean = |a: crate::quantity::Nanometres, b: crate::quantity::Nanometres| 0.5 * (a.length() + b.length());
    Cases {
        tightest: SeatSizes { inner_at_20: inner.largest.length(), outer_at_20: outer.smallest.length() },
        middle: SeatSizes {
            inner_at_20: mean(inner.smallest, inner.largest),
            outer_at_20: mean(outer.smallest, outer.largest),
        },
        loosest: SeatSizes { inner_at_20: inner.smallest.length(), outer_at_20: outer.largest.length() },
    }
}

/// A side of the joint as the exchange needs it: the ring that sits in the seat, not the whole bearing.
fn body<'a>(
    job: &Job,
    joint: &Joint<'_>,
    side: &'a Side<'_>,
    subject: &Subject<'a>,
    start: ThermodynamicTemperature,
) -> Result<SeatBody<'a>, PlanError> {
    let (mass, area) = part_of(joint.seat, subject)?;
    let seat = PI * joint.nominal * job.part.width;
    let least = area * LEAST_FREE_SHARE;
    let to_joint = match side.wall {
        Some(wall) => ConductionPath::one_face(wall),
        None => ConductionPath::cylinder(side.ring.outside),
    };
    Ok(SeatBody {
        mass,
        // The mass is that of this material: a liner counts as so much more of its housing.
        heat_capacity: subject.material.heat_capacity(),
        conductivity: side.material.conductivity(),
        expansion: &side.expansion,
        emissivity: side.material.emissivity().high,
        to_joint,
        to_air: subject.shape.path,
        free_area: if area - seat > least { area - seat } else { least },
        film: shop_film_at(job, subject, start, Pace::Quick)?,
        radiates: true,
        start,
    })
}

/// Mass and surface of what sits in the seat.
fn part_of(seat: SeatKind, subject: &Subject<'_>) -> Result<(Mass, Area), PlanError> {
    let Some(rings) = subject.rings.as_ref().filter(|_| subject.piece == Piece::Part) else {
        return Ok((subject.mass, subject.shape.area));
    };
    let index = if seat == SeatKind::Housing { 0 } else { 2 };
    let (masses, areas) = (rings.masses()?, rings.areas()?);
    Ok((masses[index], areas[index].max(Area::new::<square_meter>(1e-9))))
}
