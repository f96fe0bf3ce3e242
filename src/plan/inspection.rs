//! Readings of the seats, findings on the parts, and what to look at; each only where the job has that part.

use super::PlanError;
use super::model::{SeatKind, SeatPlan};
use super::seal::source as seal_source;
use super::sentence::{Sentence, say};
use crate::assembly::readings::{Form, Readings};
use crate::fit::{ToleranceClass, limits_of_size};
use crate::job::{AnyValue, Feel, Inspection, Job, RemovedThrough, Size};
use crate::quantity::{Length, Nanometres, Toward};
use crate::stock::closure::ClosureKind;
use crate::stock::seal_seats::{Asked, SealRow, asked};
use uom::si::length::{micrometer, millimeter};

/// Shortest chamfer at the mouth of a seat, mm.
///
/// Common practice, no published source: 10° to 20° over 1 mm or more, and never less than half a millimetre.
pub const LEAST_LEAD_IN_MM: f64 = 0.5;
/// Roughness Ra that the track of a lip should have.
#[derive(Clone, Debug)]
pub struct LipTrack {
    /// Least and most.
    pub wanted: (Length, Length),
    /// Where that comes from.
    pub source: String,
}

/// What was read, what was found and what to look at.
#[derive(Clone, Debug)]
pub struct InspectionPlan {
    /// Form of each diameter that was read at several places.
    pub forms: Vec<FormPlan>,
    /// What to look at, and what was found; empty where the job has no `[inspection]`.
    pub checks: Vec<Check>,
    /// Whether the bearing goes in again; none where there is none or nothing is said of it.
    pub reuse: Option<Reuse>,
    /// What the track of a lip should be like; none without a seal.
    pub lip_track: Option<LipTrack>,
    /// Radial run-out found, and the most that is allowed.
    pub run_out: Option<(Length, Length)>,
}

/// Form of a diameter.
#[derive(Clone, Debug)]
pub struct FormPlan {
    /// Which seat it belongs to.
    pub seat: SeatKind,
    /// What was read, in trade words.
    pub name: &'static str,
    /// The readings, as typed.
    pub readings: Readings,
    /// Mean, extremes, out-of-round and taper, as read.
    pub form: Form,
    /// Most that out-of-round and taper may be: IT5 of the diameter.
    pub allowed: Length,
}

/// Whether a bearing goes in again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reuse {
    /// It is new.
    New,
    /// Nothing that was found speaks against it.
    NothingAgainst,
    /// It must be looked at first.
    LookFirst,
    /// It must be replaced.
    Replace,
}

impl Reuse {
    /// The words that every output uses.
    pub fn words(self) -> &'static str {
        match self {
            Self::New => "new",
            Self::NothingAgainst => "nothing found against it yet",
            Self::LookFirst => "look at it first",
            Self::Replace => "replace it",
        }
    }
}

/// One thing to look at.
#[derive(Clone, Debug)]
pub struct Check {
    /// The part it belongs to.
    pub part: &'static str,
    /// What to look for, and what it means.
    pub text: Sentence,
    /// What was found.
    pub state: CheckState,
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CheckState {
    /// Still to be looked at.
    ToDo,
    /// The job states it, and it is in order.
    Good,
    /// The job states it, and it is not in order.
    Bad,
}

impl CheckState {
    /// The words that every output uses.
    pub fn words(self) -> &'static str {
        match self {
            Self::ToDo => "to do",
            Self::Good => "good",
            Self::Bad => "not in order",
        }
    }
}

pub(super) fn inspection(job: &Job, seats: &[SeatPlan]) -> Result<Option<InspectionPlan>, PlanError> {
    let forms = forms(job);
    let found = job.inspection.as_ref();
    if forms.is_empty() && found.is_none() {
        return Ok(None);
    }
    let shaft = seats.iter().find(|seat| seat.seat == SeatKind::Shaft);
    let run_out = found
        .and_then(|found| found.run_out)
        .zip(shaft)
        .and_then(|(run_out, seat)| Some((run_out, grade_width(seat.nominal, "h6")?)));
    let lip_track = lip_track(job)?;
    Ok(Some(InspectionPlan {
        checks: found.map_or_else(Vec::new, |found| checks(job, found, run_out, lip_track.as_ref())),
        reuse: found.filter(|_| job.part.kind.is_bearing()).and_then(reuse),
        forms,
        lip_track,
        run_out,
    }))
}

/// The row that the seal itself is held against.
fn lip_track(job: &Job) -> Result<Option<LipTrack>, PlanError> {
    let Some(seal) = &job.seal else { return Ok(None) };
    let shaft = seal.body.as_ref().map(|body| body.inside).or(job.part.bore).unwrap_or_default();
    let track = |row: &SealRow| {
        let micrometres = Length::new::<micrometer>;
        Some(LipTrack { wanted: (micrometres(row.low?), micrometres(row.high?)), source: seal_source(row) })
    };
    Ok(asked(Asked::ShaftRa, "", shaft)?.and_then(track))
}

/// Width of the tolerance of a class; none outside its table.
fn grade_width(nominal: Length, class: &str) -> Option<Length> {
    let class = ToleranceClass::parse(class).ok()?;
    limits_of_size(Nanometres::from_length(nominal), class).ok().map(|limits| limits.width().length())
}

fn forms(job: &Job) -> Vec<FormPlan> {
    let bearing = job.part.kind.is_bearing();
    let sizes = [
        (SeatKind::Housing, "housing bore", job.housing.as_ref().map(|housing| &housing.size)),
        (SeatKind::Housing, if bearing { "outer ring" } else { job.part.kind.noun() }, job.part.outside_size.as_ref()),
        (SeatKind::Shaft, "shaft", job.shaft.as_ref().map(|shaft| &shaft.size)),
        (SeatKind::Shaft, if bearing { "inner ring bore" } else { "bush bore" }, job.part.bore_size.as_ref()),
    ];
    let form = |(seat, name, size): (SeatKind, &'static str, Option<&Size>)| {
        let Some(Size::Measured(measured)) = size else { return None };
        let readings = measured.readings.clone()?;
        let allowed = grade_width(measured.nominal, "h5")?;
        Some(FormPlan { seat, name, form: readings.form(), readings, allowed })
    };
    sizes.into_iter().filter_map(form).collect()
}

fn reuse(found: &Inspection) -> Option<Reuse> {
    let bad = matches!(found.feel, Some(Feel::Gritty | Feel::Notchy | Feel::Loose))
        || found.removed == Some(RemovedThrough::RollingElements);
    match (bad, found.used, found.feel) {
        (true, _, _) => Some(Reuse::Replace),
        (false, Some(false), _) => Some(Reuse::New),
        (false, Some(true), Some(_)) => Some(Reuse::NothingAgainst),
        (false, Some(true), None) => Some(Reuse::LookFirst),
        (false, None, _) => None,
    }
}

fn state(found: Option<bool>) -> CheckState {
    match found {
        None => CheckState::ToDo,
        Some(true) => CheckState::Good,
        Some(false) => CheckState::Bad,
    }
}

fn todo(part: &'static str, text: &'static str) -> Check {
    Check { part, text: say(text), state: CheckState::ToDo }
}

fn checks(
    job: &Job,
    found: &Inspection,
    run_out: Option<(Length, Length)>,
    lip_track: Option<&LipTrack>,
) -> Vec<Check> {
    let mut list = Vec::new();
    of_part(job, found, &mut list);
    if job.housing.is_some() {
        of_housing(job, found, &mut list);
    }
    if job.shaft.is_some() {
        of_shaft(job, run_out, &mut list);
    }
    if job.seal.is_some() {
        of_seal(found, job.shaft.is_some(), lip_track, &mut list);
    }
    if job.fasteners.is_some() {
        of_screws(&mut list);
    }
    list
}

const FEEL_OPEN: &str = "Washed, dried, lightly oiled and turned slowly by hand, loaded along its axis both ways, it must run evenly. A \
                         place that it falls into, grit that washing does not take away, or play that can be heard: replace it.";
const FEEL_CLOSED: &str = "Wiped, never washed, and turned slowly by hand, loaded along its axis both ways, it must run evenly. A place \
                           that it falls into, grit, or play that can be heard: replace it.";
const LOOK_OPEN: &str = "Raceways, balls or rollers and cage under a lamp: pits, flakes, dents at the spacing of the balls, brown or \
                         blue colour, rust, or a cage that is worn or loose: replace it.";
const LOOK_CLOSED: &str = "Its seals or shields hide the raceways: a seal that is cut, hard or loose, or grease that is dry or dark at \
                           the lip: replace it.";

fn of_part(job: &Job, found: &Inspection, list: &mut Vec<Check>) {
    let noun = job.part.kind.noun();
    if !job.part.kind.is_bearing() {
        list.push(todo(noun, "Edges without burrs, a chamfer at the leading end, no scores along the seat."));
        return;
    }
    if found.used == Some(false) {
        list.push(todo(
            noun,
            "Leave it in its wrapping until it goes in; do not wash out its grease or its preserving oil.",
        ));
        return;
    }
    let open = job.part.closure.as_ref().is_none_or(|closure| closure.kind() == ClosureKind::Open);
    let (feel, look) = if open { (FEEL_OPEN, LOOK_OPEN) } else { (FEEL_CLOSED, LOOK_CLOSED) };
    list.push(Check { part: noun, text: say(feel), state: state(found.feel.map(|feel| feel == Feel::Smooth)) });
    list.push(todo(noun, look));
    let removed = "A bearing that came out by force through its balls or rollers is dented, seen or not: replace it.";
    let through = found.removed.map(|removed| removed == RemovedThrough::TightRing);
    list.push(Check { part: noun, text: say(removed), state: state(through) });
}

fn of_housing(job: &Job, found: &Inspection, list: &mut Vec<Check>) {
    let part = "housing";
    list.push(todo(part, "Bore and shoulder free of old sealant, chips and rust; wiped with a clean lint-free cloth just before fitting."));
    list.push(todo(part, "Burrs and raised edges, also at screw holes and grooves, taken off by hand with a fine stone; no file on the seat."));
    list.push(todo(part, "A bore that is polished or has brown rust in patches shows that the ring has crept: read it again, and ask for a tighter fit."));
    let lead_in = say("A chamfer at the mouth of ")
        .value(AnyValue::RoughSize(Length::new::<millimeter>(LEAST_LEAD_IN_MM)), Toward::Up)
        .text(" or more, better 1 mm at 10° to 20°, lets the ring start square.");
    let enough = found.lead_in.map(|length| length >= Length::new::<millimeter>(LEAST_LEAD_IN_MM));
    list.push(Check { part, text: lead_in, state: state(enough) });
    let read = job
        .housing
        .as_ref()
        .is_some_and(|housing| matches!(&housing.size, Size::Measured(measured) if measured.readings.is_some()));
    if !read {
        list.push(todo(
            part,
            "Bore read at two depths or more and in three directions, so that ovality and taper are known.",
        ));
    }
}

fn of_shaft(job: &Job, run_out: Option<(Length, Length)>, list: &mut Vec<Check>) {
    let part = "shaft";
    list.push(todo(
        part,
        "Burrs at keyways, grooves and the end taken off, the edge rounded; the seat wiped clean just before fitting.",
    ));
    list.push(todo(part, "The seat polished along its turning with fine paper and oil where it is scored; a shaft that has crept or measures under its limits is not made good by polish."));
    let text = match run_out {
        Some((_, allowed)) => say(
            "Run-out at the seat, full reading of a dial with the shaft in its other bearing or in centres: at most ",
        )
        .small(allowed, Toward::Down)
        .text("."),
        None => say(
            "Run-out at the seat, full reading of a dial with the shaft in its other bearing or in centres: at most IT6 of its diameter.",
        ),
    };
    list.push(Check { part, text, state: state(run_out.map(|(found, allowed)| found <= allowed)) });
    if job.part.kind.is_bearing() {
        list.push(todo(part, "The shoulder square and clear of the ring's corner: the fillet of the shaft smaller than that of the ring."));
    }
}

fn of_seal(found: &Inspection, shaft: bool, lip_track: Option<&LipTrack>, list: &mut Vec<Check>) {
    let part = "seal";
    list.push(todo(part, "A new one whenever it was out; its lip and its seat in the bore without a nick, the lip oiled before it goes on."));
    let Some((low, high)) = lip_track.map(|track| track.wanted) else { return };
    let track = say(if shaft { "The track of the lip on the shaft: Ra " } else { "The track of its lip: Ra " })
        .small(low, Toward::Nearest)
        .text(" to ")
        .small(high, Toward::Nearest)
        .text(
            ", without spiral marks, and no groove that a nail feels; else move the seal along, or sleeve the shaft.",
        );
    let good = found.lip_track.map(|ra| ra >= low && ra <= high);
    list.push(Check { part, text: track, state: state(good) });
}

fn of_screws(list: &mut Vec<Check>) {
    let part = "cover screws";
    list.push(todo(part, "Threads clean and straight; a screw that is stretched, rusted or worn at its head is replaced by one of the same class."));
    list.push(todo(part, "Blind holes dry to the bottom: oil or water under a screw splits a light-alloy boss. Friction as the torque was meant for: dry, oiled, or with thread lock."));
    list.push(todo(part, "Faces of cover and housing clean and flat, edges of the tapped holes without a raised rim; gasket or sealant as the maker says."));
}
