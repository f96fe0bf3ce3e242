//! What a list of ways holds.

use super::aim::{Aim, Odds};
use super::map::WaysMap;
use super::{COMFORTABLE_IN_HAND_S, COMFORTABLE_IN_SEAT_S};
use crate::job::{Job, Piece, Treatment};
use crate::plan::caution::{Caution, Level};
use crate::plan::model::{SeatKind, SeatPlan, Verdict, Window};
use crate::plan::seat::Arrives;
use crate::plan::sentence::Sentence;
use crate::quantity::{ThermodynamicTemperature, Time};
use crate::stock::medium::Medium;
use uom::si::time::second;

/// The ways for one seat, best first.
#[derive(Clone, Debug)]
pub struct SeatWays {
    /// Which seat.
    pub seat: SeatKind,
    /// The job with this seat alone.
    pub job: Job,
    /// What each way had to do.
    pub aim: Aim,
    /// The ways, best first; those that are refused last.
    pub ways: Vec<Way>,
    /// Pairs of media that were not tried, because one of the two alone is comfortable and the other adds a danger.
    pub left_out: usize,
    /// The trade-off between chilling and warming, with the ways in it.
    pub map: WaysMap,
}

/// One way to fit the part.
#[derive(Clone, Debug)]
pub struct Way {
    /// What chills the inner part.
    pub chill: Option<Used>,
    /// What warms the outer part.
    pub warm: Option<Used>,
    /// What comes of it.
    pub outcome: Outcome,
    /// Plans that were made to find it.
    pub trials: usize,
    /// Whether nothing but the size of the press refuses it, so that a second medium may help.
    pub(super) lacks_force: bool,
}

/// A medium in a way.
#[derive(Clone, Debug)]
pub struct Used {
    /// Which.
    pub medium: Medium,
    /// What is put into it.
    pub piece: Piece,
    /// The temperature that it is set to, or that the piece is heated to; none where it has its own.
    pub setting: Option<ThermodynamicTemperature>,
    /// The lowest whole degree at which the tightest case has its placing clearance on arrival and nothing to spare; none
    /// where the medium has its own temperature, or no setting does it.
    pub least_setting: Option<ThermodynamicTemperature>,
}

/// What comes of a way.
#[derive(Clone, Debug)]
pub enum Outcome {
    /// It can be done: the plan with these settings.
    Worked(Box<Worked>),
    /// It must not or cannot be done, with the reason.
    Refused(Sentence),
}

/// A way that can be done.
#[derive(Clone, Debug)]
pub struct Worked {
    /// The plan of the seat; of the part that stands for the share where a share was asked for, so that all three cases are
    /// that part.
    pub seat: SeatPlan,
    /// The cautions of the plan, with all that the limits allow.
    pub cautions: Vec<Caution>,
    /// What becomes of all parts, where a share of them was asked for.
    pub odds: Option<Odds>,
    /// Time in hand at the seat in the tightest case, after the way to it; none where it does not end.
    pub in_hand: Option<Time>,
    /// What chills and what warms.
    pub(super) treatments: (Option<Treatment>, Option<Treatment>),
}

impl Way {
    /// The way as it can be done.
    pub fn worked(&self) -> Option<&Worked> {
        match &self.outcome {
            Outcome::Worked(worked) => Some(worked),
            Outcome::Refused(_) => None,
        }
    }

    /// Why it is refused.
    pub fn reason(&self) -> Option<&Sentence> {
        match &self.outcome {
            Outcome::Worked(_) => None,
            Outcome::Refused(reason) => Some(reason),
        }
    }

    /// The media of the way: what chills, then what warms.
    pub fn used(&self) -> impl Iterator<Item = &Used> {
        self.chill.iter().chain(&self.warm)
    }

    /// What is done, in words.
    pub fn words(&self) -> &'static str {
        let pressed = self.worked().is_some_and(|worked| worked.seat.verdict != Verdict::DropsIn);
        match (self.chill.is_some(), self.warm.is_some(), pressed) {
            (false, false, false) if self.worked().is_some() => "as it is",
            (false, false, _) => "press at shop temperature",
            (true, false, false) => "chill",
            (true, false, true) => "chill, then press",
            (false, true, false) => "warm",
            (false, true, true) => "warm, then press",
            (true, true, false) => "chill and warm",
            (true, true, true) => "chill and warm, then press",
        }
    }
}

impl Worked {
    /// Whether the tightest case drops in, and neither the way to the seat nor the push home is a race.
    pub fn is_comfortable(&self) -> bool {
        self.seat.verdict == Verdict::DropsIn && self.comfort() >= 1.0
    }

    /// Whether a part that arrives so can be comfortable: nothing is said of its time in the seat yet.
    pub(super) fn may_be_comfortable(arrives: &Arrives, job: &Job) -> bool {
        let in_hand = in_hand(arrives.window, job.bench.carry);
        let enough = in_hand.is_none_or(|time| time.get::<second>() >= COMFORTABLE_IN_HAND_S);
        enough && arrives.clearance >= job.bench.placing_clearance
    }

    /// Whether it drops in, but in a race.
    pub fn is_race(&self) -> bool {
        self.seat.verdict == Verdict::DropsIn && self.comfort() < 1.0
    }

    /// Whether the part would go in warm alone, and its chill makes it grip sooner.
    pub fn chilling_shortens(&self) -> bool {
        self.seat.grip.is_some_and(|grip| grip.chilling_shortens)
    }

    /// Time until it is ready: the longest hold.
    pub fn ready_after(&self) -> Time {
        self.seat.longest_hold().unwrap_or_default()
    }

    /// Time that the tightest case stays free in its seat; none where it does not grip.
    pub fn in_seat(&self) -> Option<Time> {
        self.seat.free_in_seat()
    }

    /// The lesser of the two times over what is comfortable, at most 1.
    pub(super) fn comfort(&self) -> f64 {
        let share = |time: Option<Time>, enough: f64| time.map_or(1.0, |time| time.get::<second>() / enough).min(1.0);
        share(self.in_hand, COMFORTABLE_IN_HAND_S).min(share(self.in_seat(), COMFORTABLE_IN_SEAT_S))
    }

    /// The gravest level among what its media and a press do to people; none where they are harmless.
    pub fn hazard(&self, way: &Way) -> Option<Level> {
        let of_media = |code: &str| way.used().any(|used| used.medium.hazards().iter().any(|h| h.code() == code));
        // Of a share that drops in, the few parts that do not are sorted out or pressed with the cautions of the list.
        let pressed = self.odds.is_none() || self.seat.verdict != Verdict::DropsIn;
        let counts = |caution: &&Caution| (pressed && caution.code() == "press") || of_media(caution.code());
        let named = self.cautions.iter().filter(counts).map(Caution::level).min();
        // A part that stops half-way in a race has to be pressed after all.
        if self.is_race() { Some(named.map_or(Level::Warning, |level| level.min(Level::Warning))) } else { named }
    }
}

/// Time in hand at the seat; none where the placing clearance does not go.
pub(super) fn in_hand(window: Window, carry: Time) -> Option<Time> {
    crate::plan::answer::in_hand(window, carry)
}
