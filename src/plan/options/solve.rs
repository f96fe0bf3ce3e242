//! The mildest setting, and for it the shortest hold, of one way.

use super::aim::Drawn;
use super::grid::{DIAL_C, FINE_C, first, holds, is_settable, settings};
use super::model::{Outcome, Used, Way, Worked};
use super::suits;
use super::trial::{Dose, Refusal, Trials, forbidden, longest, pieces, planned};
use crate::job::{Hold, Job};
use crate::plan::model::{SeatKind, Verdict};
use crate::plan::seat::Arrives;
use crate::plan::sentence::say;
use crate::plan::{SolvedSeats, joint};
use crate::quantity::{ThermodynamicTemperature, Time, Toward};
use crate::stock::medium::{Law, Medium};
use std::cell::Cell;
use uom::si::time::hour;

/// Finds ways for one seat.
pub(super) struct Solver<'j> {
    pub(super) job: &'j Job,
    pub(super) seat: SeatKind,
    pub(super) solved: &'j SolvedSeats,
    /// The parts of which a share must go in, and the job of the one that stands for it.
    pub(super) drawn: Option<&'j (Drawn, Job)>,
}

/// One way while it is looked for.
struct Search<'a> {
    trials: Trials<'a>,
    chill: Option<&'a Medium>,
    warm: Option<&'a Medium>,
}

/// A setting with the plan that it leads to.
struct Found {
    setting: Option<ThermodynamicTemperature>,
    least: Option<ThermodynamicTemperature>,
    worked: Worked,
}

type Setting = Option<ThermodynamicTemperature>;

impl Solver<'_> {
    /// The job by which a way is judged.
    pub(super) fn judged(&self) -> &Job {
        self.drawn.map_or(self.job, |(_, one)| one)
    }

    /// The way with these media.
    pub(super) fn solve(&self, chill: Option<&Medium>, warm: Option<&Medium>) -> Way {
        let trials = Trials { job: self.judged(), seat: self.seat, solved: self.solved, made: Cell::new(0) };
        let search = Search { trials, chill, warm };
        let (inner, outer) = pieces(self.seat);
        let (outcome, setting, least, lacks_force) = match search.find().and_then(|found| self.among_all(found)) {
            Ok(found) => (Outcome::Worked(Box::new(found.worked)), found.setting, found.least, false),
            Err(refusal) => (Outcome::Refused(refusal.reason), None, None, refusal.lacks_force),
        };
        let used = |medium: &Medium, piece, setting, least_setting| Used {
            medium: medium.clone(),
            piece,
            setting,
            least_setting,
        };
        Way {
            chill: chill.map(|medium| used(medium, inner, None, None)),
            warm: warm.map(|medium| used(medium, outer, setting, least)),
            outcome,
            trials: search.trials.made.get(),
            lacks_force,
        }
    }

    /// What was found by one part that stands for a share, with what becomes of all parts.
    fn among_all(&self, mut found: Found) -> Result<Found, Refusal> {
        let Some((drawn, _)) = self.drawn else { return Ok(found) };
        let (chill, warm) = found.worked.treatments.clone();
        let full = planned(self.job, chill, warm, self.solved)?;
        // Parts that the press is too small for are sorted out; anything else that forbids one part forbids the way.
        if let Some(refusal) = forbidden(&full).filter(|refusal| !refusal.lacks_force) {
            return Err(refusal);
        }
        let joints = joint::joints(self.job).map_err(|error| say(error.to_string()))?;
        found.worked.odds = joints.first().map(|joint| drawn.odds(joint, &full.seat));
        found.worked.cautions = full.cautions;
        Ok(found)
    }
}

impl Search<'_> {
    fn find(&self) -> Result<Found, Refusal> {
        self.suits()?;
        let mut dial = self.settings(DIAL_C)?;
        let mut best = self.settled(dial.last().copied().flatten());
        if best.is_err() {
            // A part that meets so hot a piece may leave its own tables; a milder setting may not.
            dial.truncate(first(dial.len(), |i| self.settled(dial[i]).is_err()));
            best = dial.last().map_or(best, |setting| self.settled(*setting));
        }
        let (best, strongest) = (best?, dial.last().copied().flatten());
        if let Some(reason) = forbidden(&best) {
            return Err(reason);
        }
        if !best.is_comfortable() {
            let least = self.least(&best, strongest)?;
            return Ok(Found { setting: strongest, least, worked: self.nearly_settled(strongest, best)? });
        }
        let comfortable = |setting: Setting| {
            self.arrives_settled(setting).is_ok_and(|arrives| self.may_be_comfortable(&arrives))
                && self.settled(setting).is_ok_and(|worked| worked.is_comfortable() && allowed(&worked))
        };
        let mildest = dial.get(first(dial.len() - 1, |i| comfortable(dial[i]))).copied().flatten();
        let settled = if mildest == strongest { best } else { self.settled(mildest)? };
        let least = self.least(&settled, mildest)?;
        Ok(Found { setting: mildest, least, worked: self.shortest(mildest, settled)? })
    }

    fn suits(&self) -> Result<(), Refusal> {
        let (inner, outer) = pieces(self.trials.seat);
        let job = self.trials.job;
        let alone = [(self.chill, inner), (self.warm, outer)]
            .into_iter()
            .find_map(|(medium, piece)| medium.and_then(|medium| suits::refusal(job, piece, medium)));
        let pair = || self.chill.filter(|_| self.warm.is_some()).and_then(suits::together);
        alone.or_else(pair).map_or(Ok(()), |reason| Err(reason.into()))
    }

    /// What the warming medium can be set to, coolest first; one entry without a setting where it cannot be set.
    fn settings(&self, step: f64) -> Result<Vec<Setting>, Refusal> {
        let Some(warm) = self.warm.filter(|medium| is_settable(medium)) else { return Ok(vec![None]) };
        let (_, outer) = pieces(self.trials.seat);
        let found = settings(self.trials.job, self.trials.seat, (outer, warm), step);
        if !found.is_empty() {
            return Ok(found.into_iter().map(Some).collect());
        }
        // At its lowest it is too hot; the plan there says for what.
        let low = warm.temperature().low;
        let worked = self.settled(Some(low))?;
        Err(forbidden(&worked).unwrap_or_else(|| {
            say(format!("{} cannot be set below ", warm.id()))
                .temperature(low, Toward::Nearest)
                .text(", which is too hot here.")
                .into()
        }))
    }

    fn run(&self, setting: Setting, holds: (Hold, Hold)) -> Result<Worked, Refusal> {
        let (chill, warm) = self.doses(setting, holds);
        self.trials.run(chill, warm)
    }

    fn arrives(&self, setting: Setting, holds: (Hold, Hold)) -> Result<Arrives, Refusal> {
        let (chill, warm) = self.doses(setting, holds);
        self.trials.arrives(chill, warm)
    }

    fn doses(&self, setting: Setting, holds: (Hold, Hold)) -> (Option<Dose<'_>>, Option<Dose<'_>>) {
        let chill = self.chill.map(|medium| Dose { medium, setting: None, hold: holds.0 });
        (chill, self.warm.map(|medium| Dose { medium, setting, hold: holds.1 }))
    }

    fn may_be_comfortable(&self, arrives: &Arrives) -> bool {
        Worked::may_be_comfortable(arrives, self.trials.job)
    }

    /// Everything as cold and as hot as it gets.
    fn settled(&self, setting: Setting) -> Result<Worked, Refusal> {
        self.run(setting, self.settled_holds())
    }

    fn arrives_settled(&self, setting: Setting) -> Result<Arrives, Refusal> {
        self.arrives(setting, self.settled_holds())
    }

    fn settled_holds(&self) -> (Hold, Hold) {
        (self.chill.map_or(Hold::Settled, settling), self.warm.map_or(Hold::Settled, settling))
    }

    /// The least setting that clears on arrival; only settings up to one that is known to, and is allowed, are asked.
    fn least(&self, best: &Worked, setting: Setting) -> Result<Setting, Refusal> {
        let Some(known) = setting.filter(|_| best.seat.verdict == Verdict::DropsIn) else { return Ok(None) };
        let fine: Vec<Setting> =
            self.settings(FINE_C)?.into_iter().filter(|fine| fine.is_some_and(|fine| fine < known)).collect();
        let wanted = self.trials.job.bench.placing_clearance;
        let clears = |i: usize| self.arrives_settled(fine[i]).is_ok_and(|arrives| arrives.clearance >= wanted);
        Ok(fine.get(first(fine.len(), clears)).copied().flatten().or(setting))
    }

    /// Taken out when waiting longer gains little, where that changes nothing in what comes of it.
    fn nearly_settled(&self, setting: Setting, settled: Worked) -> Result<Worked, Refusal> {
        let before = settled.seat.fit.clearance.tightest;
        let enough = before + ENOUGH_SHARE * (settled.seat.at_bore.clearance.tightest - before);
        let verdict = settled.seat.verdict;
        let may = |arrives: &Arrives| arrives.clearance >= enough;
        self.shortest_that(setting, settled, (may, |worked| worked.seat.verdict <= verdict))
    }

    /// Taken out as soon as the time is comfortable.
    fn shortest(&self, setting: Setting, settled: Worked) -> Result<Worked, Refusal> {
        let may = |arrives: &Arrives| self.may_be_comfortable(arrives);
        self.shortest_that(setting, settled, (may, Worked::is_comfortable))
    }

    /// The plan with the shortest time on the clock that is good enough, as the settled one is: one that may be by how it
    /// arrives, and is by its plan. Where two pieces are treated, the one that settles sooner goes in later, and both come out
    /// together.
    fn shortest_that(
        &self,
        setting: Setting,
        settled: Worked,
        (may, enough): (impl Fn(&Arrives) -> bool, impl Fn(&Worked) -> bool),
    ) -> Result<Worked, Refusal> {
        let ends = (settle_time(&settled.seat.chill), settle_time(&settled.seat.warm));
        if ends.0.is_none() && ends.1.is_none() {
            return Ok(settled);
        }
        let clock = holds();
        let last = clock.iter().position(|hold| *hold >= longest(ends.0, ends.1)).unwrap_or(clock.len() - 1);
        let held = |end: Option<Time>, time: Time| end.map_or(Hold::Settled, |end| Hold::For(time.min(end)));
        let holds = |i: usize| (held(ends.0, clock[i]), held(ends.1, clock[i]));
        let may = |i: usize| self.arrives(setting, holds(i)).is_ok_and(|arrives| may(&arrives));
        let good = |worked: &Worked| enough(worked) && allowed(worked);
        let found = first(last, |i| may(i) && self.run(setting, holds(i)).is_ok_and(|worked| good(&worked)));
        let shortest = self.run(setting, holds(found))?;
        // The time in the seat may fall while the part grows colder, so the end is looked at once more.
        Ok(if may(found) && good(&shortest) { shortest } else { settled })
    }
}

/// Share of what chilling and warming can gain over the fit at 20 °C, after which waiting longer is not worth the while.
const ENOUGH_SHARE: f64 = 0.95;

fn allowed(worked: &Worked) -> bool {
    forbidden(worked).is_none()
}

/// Time after which a piece on a plate or under a gun is as hot as it gets, h; it never comes to the temperature of either.
const AS_HOT_AS_IT_GETS_H: f64 = 8.0;

/// When a piece is as cold or as hot as a medium makes it.
fn settling(medium: &Medium) -> Hold {
    let loses = medium.film().is_some_and(|film| film.resting_face_only || matches!(film.law, Law::Stream { .. }));
    if loses { Hold::For(Time::new::<hour>(AS_HOT_AS_IT_GETS_H)) } else { Hold::Settled }
}

/// The time on the clock after which a soak has settled; none where it ends by its temperature.
fn settle_time(soak: &Option<crate::plan::Soak>) -> Option<Time> {
    soak.as_ref().filter(|soak| !matches!(soak.hold_rule, Hold::Reaches(_))).map(|soak| on_clock(soak.hold))
}

/// The next time on the clock.
fn on_clock(time: Time) -> Time {
    holds().into_iter().find(|hold| *hold >= time).unwrap_or(time)
}
