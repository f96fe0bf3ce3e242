//! The search against trying every setting and every hold on the clock.

use super::*;
use seatwise::job::{Hold, Piece};
use seatwise::plan::{GripTime, SeatPlan, Window};
use seatwise::quantity::{Time, celsius};
use seatwise::stock::medium::Medium;

/// Holds on the clock, written out apart from the search.
fn clock() -> Vec<f64> {
    let spread = |from: u32, to: u32, step: u32| (from..=to).step_by(step as usize).map(f64::from);
    spread(5, 60, 5)
        .chain(spread(90, 600, 30))
        .chain(spread(900, 7200, 300))
        .chain(spread(8100, 21_600, 900))
        .chain(spread(25_200, 86_400, 3600))
        .collect()
}

/// The tightest case: a minute in hand at the seat and ten seconds in it.
fn comfortable(seat: &SeatPlan, carry: f64) -> bool {
    let in_hand = match seat.window.tightest {
        Window::Lasts(time) => time.get::<second>() - carry >= 60.0,
        Window::Always | Window::Beyond(_) => true,
    };
    let in_seat = match seat.grip.unwrap().times.tightest {
        GripTime::Grips(time) | GripTime::FreeUntilLock(time) => time.get::<second>() >= 10.0,
        GripTime::StaysFree => true,
        GripTime::DoesNotGoIn => false,
    };
    seat.verdict == Verdict::DropsIn && in_hand && in_seat
}

pub(super) struct Trying {
    job: Job,
    freezer: Option<Medium>,
    oven: Medium,
    carry: f64,
}

impl Trying {
    pub(super) fn new(text: &str, chill: Option<&str>) -> Self {
        let (library, job) = (Library::default(), checked(text));
        let carry = job.bench.carry.get::<second>();
        let freezer = chill.map(|name| library.medium(name).unwrap());
        Self { job, freezer, oven: library.medium("oven").unwrap(), carry }
    }

    fn plan(&self, setting: f64, chill: Hold, warm: Hold) -> SeatPlan {
        let oven = self.job.treatment_in(Piece::Housing, &self.oven, Some(celsius(setting)), warm).unwrap();
        let freezer =
            self.freezer.as_ref().map(|medium| self.job.treatment_in(Piece::Part, medium, None, chill).unwrap());
        let job = self.job.with_treatments(freezer, Some(oven)).unwrap();
        plan::plan(&job).unwrap().seats.swap_remove(0)
    }

    fn is_comfortable(&self, setting: f64, chill: Hold, warm: Hold) -> bool {
        comfortable(&self.plan(setting, chill, warm), self.carry)
    }

    /// Settling times on the clock at a setting: of the chilled and of the warmed piece.
    fn settles(&self, setting: f64) -> (f64, f64) {
        let seat = self.plan(setting, Hold::Settled, Hold::Settled);
        let on_clock = |time: Time| clock().into_iter().find(|hold| *hold >= time.get::<second>()).unwrap();
        (seat.chill.map_or(0.0, |soak| on_clock(soak.hold)), on_clock(seat.warm.unwrap().hold))
    }

    /// The mildest setting, and for it the shortest hold, by trying all of them.
    pub(super) fn all(&self) -> (f64, f64) {
        let good: Vec<bool> =
            (8..=24).map(|step| self.is_comfortable(5.0 * f64::from(step), Hold::Settled, Hold::Settled)).collect();
        assert!(good.windows(2).all(|pair| pair[0] <= pair[1]), "a hotter housing never gives less: {good:?}");
        let setting = 40.0 + 5.0 * good.iter().position(|good| *good).unwrap() as f64;
        let (cold, hot) = self.settles(setting);
        let hold = clock().into_iter().find(|time| {
            let held = |end: f64| Hold::For(Time::new::<second>(time.min(end)));
            self.is_comfortable(setting, held(cold), held(hot))
        });
        (setting, hold.unwrap())
    }
}

fn agrees(text: &str, chill: Option<&str>) {
    let trying = Trying::new(text, chill);
    let (setting, hold) = trying.all();
    let media: Vec<&str> = chill.into_iter().chain(["oven"]).collect();
    let seat = ways(text, &media);
    let found = way(&seat, &media);
    let ready = worked(found).ready_after().get::<second>();
    assert!(
        (setting_c(found) - setting).abs() < 1e-6 && (ready - hold).abs() < 1e-6,
        "{} °C, {ready} s; trying all gives {setting} °C, {hold} s",
        setting_c(found)
    );
    // One step less in either would not do.
    assert!(!trying.is_comfortable(setting - 5.0, Hold::Settled, Hold::Settled) || setting <= 40.0);
}

#[test]
fn the_search_finds_what_trying_everything_finds_for_the_oven_alone() {
    agrees(&(exact("6205", "open", 30, 70, ALLOY) + "[bench]\ncarry = \"8 s\"\n"), None);
    agrees(&exact("6202", "open", 8, 60, ALLOY), None);
}

#[test]
fn the_search_finds_what_trying_everything_finds_for_the_oven_with_a_freezer() {
    agrees(&(exact("6308", "open", 35, 130, IRON) + "[bench]\ncarry = \"15 s\"\n"), Some("domestic-freezer"));
}
