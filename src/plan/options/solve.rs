//! The mildest setting, and for it the shortest hold, of one way.

use super::grid::{DIAL_C, FINE_C, first, holds, is_settable, settings};
use super::model::{Outcome, Used, Way, Worked};
use super::suits;
use super::trial::{Dose, Refusal, Trials, forbidden, longest, pieces};
use crate::job::{Hold, Job};
use crate::plan::SolvedSeats;
use crate::plan::model::{SeatKind, Verdict};
use crate::plan::sentence::say;
use crate::quantity::{ThermodynamicTemperature, Time, Toward};
use crate::stock::medium::{Law, Medium};
use std::cell::Cell;
use uom::si::time::hour;

/// Finds ways for one seat.
pub(super) struct Solver<'j> {
    pub(super) job: &'j Job,
    pub(super) seat: SeatKind,
    pub(super) solved: &'j SolvedSeats,
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
    /// The way with these media.
    pub(super) fn solve(&self, chill: Option<&Medium>, warm: Option<&Medium>) -> Way {
        let trials = Trials { job: self.job, seat: self.seat, solved: self.solved, made: Cell::new(0) };
        let search = Search { trials, chill, warm };
        let (inner, outer) = pieces(self.seat);
        let (outcome, setting, least, lacks_force) = match search.find() {
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
        let comfortable =
            |setting: Setting| self.settled(setting).is_ok_and(|worked| worked.is_comfortable() && allowed(&worked));
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

    fn run(&self, setting: Setting, chill: Hold, warm: Hold) -> Result<Worked, Refusal> {
        let chill = self.chill.map(|medium| Dose { medium, setting: None, hold: chill });
        let warm = self.warm.map(|medium| Dose { medium, setting, hold: warm });
        self.trials.run(chill, warm)
    }

    /// Everything as cold and as hot as it gets.
    fn settled(&self, setting: Setting) -> Result<Worked, Refusal> {
        self.run(setting, self.chill.map_or(Hold::Settled, settling), self.warm.map_or(Hold::Settled, settling))
    }

    /// The least setting that clears on arrival; only settings up to one that is known to are asked.
    fn least(&self, best: &Worked, setting: Setting) -> Result<Setting, Refusal> {
        let Some(known) = setting.filter(|_| best.seat.verdict == Verdict::DropsIn) else { return Ok(None) };
        let fine: Vec<Setting> =
            self.settings(FINE_C)?.into_iter().filter(|fine| fine.is_some_and(|fine| fine < known)).collect();
        let clears = |i: usize| self.settled(fine[i]).is_ok_and(|worked| worked.seat.verdict == Verdict::DropsIn);
        Ok(fine.get(first(fine.len(), clears)).copied().flatten().or(setting))
    }

    /// Taken out when waiting longer gains little, where that changes nothing in what comes of it.
    fn nearly_settled(&self, setting: Setting, settled: Worked) -> Result<Worked, Refusal> {
        let enough = ENOUGH_SHARE * gained(&settled);
        let verdict = settled.seat.verdict;
        self.shortest_that(setting, settled, |worked| worked.seat.verdict <= verdict && gained(worked) >= enough)
    }

    /// Taken out as soon as the time is comfortable.
    fn shortest(&self, setting: Setting, settled: Worked) -> Result<Worked, Refusal> {
        self.shortest_that(setting, settled, Worked::is_comfortable)
    }

    /// The plan with the shortest time on the clock that is good enough, as the settled one is. Where two pieces are treated,
    /// the one that settles sooner goes in later, and both come out together.
    fn shortest_that(
        &self,
        setting: Setting,
        settled: Worked,
        enough: impl Fn(&Worked) -> bool,
    ) -> Result<Worked, Refusal> {
        let ends = (settle_time(&settled.seat.chill), settle_time(&settled.seat.warm));
        if ends.0.is_none() && ends.1.is_none() {
            return Ok(settled);
        }
        let clock = holds();
        let last = clock.iter().position(|hold| *hold >= longest(ends.0, ends.1)).unwrap_or(clock.len() - 1);
        let held = |end: Option<Time>, time: Time| end.map_or(Hold::Settled, |end| Hold::For(time.min(end)));
        let at = |i: usize| self.run(setting, held(ends.0, clock[i]), held(ends.1, clock[i]));
        let good = |worked: &Worked| enough(worked) && allowed(worked);
        let found = first(last, |i| at(i).is_ok_and(|worked| good(&worked)));
        let shortest = at(found)?;
        // The time in the seat may fall while the part grows colder, so the end is looked at once more.
        Ok(if good(&shortest) { shortest } else { settled })
    }
}

/// Share of what chilling and warming can gain after which waiting longer is not worth the while.
const ENOUGH_SHARE: f64 = 0.95;

/// Clearance on arrival beyond that of the fit at 20 °C, in metres.
fn gained(worked: &Worked) -> f64 {
    (worked.seat.at_bore.clearance.tightest - worked.seat.fit.clearance.tightest).value
}

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
