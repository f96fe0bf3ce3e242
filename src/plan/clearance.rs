//! Clearance of a joint against time and temperature.

use super::clearance_history::{ClearanceHistory, ClearancePoint, InSeat, Moment, MomentKind};
use super::joint::Joint;
use super::model::Window;
use super::soaking::LONGEST_ON_BENCH_S;
use super::track::Track;
use crate::quantity::{Cases, Length, Nanometres, ThermodynamicTemperature, Time};
use crate::stock::Curve;
use crate::thermal::Meetings;
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::kelvin;
use uom::si::time::second;

/// Sizes are whole nanometres: a clearance of less than a thousandth of one is the noise of a temperature that was
/// converted to kelvin, and a joint with no clearance must not be given a stress by it. In metres.
const NOISE_M: f64 = 1e-12;

/// Whether a clearance is as much as is wanted. Two decimal sizes and their difference have last binary digits of their own, and
/// those must not say that a joint with just the wanted clearance lacks it.
pub(super) fn is_enough(clearance: Length, wanted: Length) -> bool {
    (clearance - wanted).get::<meter>() > -NOISE_M
}

/// Points of a plot in the medium and in shop air.
const POINTS: (u32, u32) = (60, 60);

/// Diameters of a joint at 20 °C in metres, and how they change.
pub(super) struct Diameters<'j> {
    inner: Cases<f64>,
    outer: Cases<f64>,
    inner_expansion: &'j Curve,
    outer_expansion: &'j Curve,
}

impl<'j> Diameters<'j> {
    pub(super) fn new(joint: &'j Joint<'_>) -> Self {
        let (inner, outer) = (&joint.inner.size, &joint.outer.size);
        let middle = |a: f64, b: f64| 0.5 * (a + b);
        let metres = |size: Nanometres| size.0 as f64 * 1e-9;
        let (inner_low, inner_high) = (metres(inner.smallest), metres(inner.largest));
        let (outer_low, outer_high) = (metres(outer.smallest), metres(outer.largest));
        let inner_middle = inner.mean.map_or(middle(inner_low, inner_high), metres);
        let outer_middle = outer.mean.map_or(middle(outer_low, outer_high), metres);
        Self {
            inner: Cases { tightest: inner_high, middle: inner_middle, loosest: inner_low },
            outer: Cases { tightest: outer_low, middle: outer_middle, loosest: outer_high },
            inner_expansion: &joint.inner.expansion,
            outer_expansion: &joint.outer.expansion,
        }
    }

    /// The same with a seat of other limits: the bore of the outer part, or the outside of the inner one.
    pub(super) fn with_seat(mut self, outer: bool, (smallest, largest): (Nanometres, Nanometres)) -> Self {
        let metres = |size: Nanometres| size.0 as f64 * 1e-9;
        let (low, high) = (metres(smallest), metres(largest));
        let middle = 0.5 * (low + high);
        if outer {
            self.outer = Cases { tightest: low, middle, loosest: high };
        } else {
            self.inner = Cases { tightest: high, middle, loosest: low };
        }
        self
    }

    /// Clearance in metres with the parts at these temperatures (K), which lie in the tables.
    pub(super) fn clearance(&self, inner_k: f64, outer_k: f64) -> Cases<f64> {
        let inner_strain = self.inner_expansion.at_inside(inner_k);
        let outer_strain = self.outer_expansion.at_inside(outer_k);
        self.outer.zip(self.inner).map(|(outer, inner)| {
            // The difference at 20 °C is taken first: it is small, and must not drown in the diameters.
            let clearance = (outer - inner) + (outer * outer_strain - inner * inner_strain);
            if clearance.abs() < NOISE_M { 0.0 } else { clearance }
        })
    }

    /// Diameters of the tightest case at 20 °C: inner part, outer part.
    pub(super) fn tightest(&self) -> (Length, Length) {
        (Length::new::<meter>(self.inner.tightest), Length::new::<meter>(self.outer.tightest))
    }

    /// Strain of the inner part that gives a case this clearance, the outer part being at `outer_k`.
    pub(super) fn inner_strain_for(&self, clearance: f64, outer_k: f64, case: Case) -> f64 {
        let outer = case(&self.outer) * (1.0 + self.outer_expansion.at_inside(outer_k));
        (outer - clearance) / case(&self.inner) - 1.0
    }

    /// Strain of the outer part that gives a case this clearance, the inner part being at `inner_k`.
    pub(super) fn outer_strain_for(&self, clearance: f64, inner_k: f64, case: Case) -> f64 {
        let inner = case(&self.inner) * (1.0 + self.inner_expansion.at_inside(inner_k));
        (inner + clearance) / case(&self.outer) - 1.0
    }

    /// Common temperature at which each case closes.
    pub(super) fn lock(&self) -> Cases<Option<ThermodynamicTemperature>> {
        let Some(meetings) = Meetings::new(self.inner_expansion, self.outer_expansion) else {
            return Cases::same(None);
        };
        let metres = Length::new::<meter>;
        self.outer.zip(self.inner).map(|(outer, inner)| meetings.contact(metres(inner), metres(outer)))
    }
}

/// A joint whose parts follow their tracks.
pub(super) struct Course<'a, 'j> {
    pub(super) diameters: &'a Diameters<'j>,
    pub(super) inner: &'a Track,
    pub(super) outer: &'a Track,
    /// Placing clearance, m.
    pub(super) placing: f64,
}

impl Course<'_, '_> {
    /// Clearance in metres at a time (s) from leaving the media.
    pub(super) fn at(&self, time: f64) -> Cases<f64> {
        self.diameters.clearance(self.inner.kelvin_at(time), self.outer.kelvin_at(time))
    }

    fn in_hand(&self, time: f64, case: Case) -> f64 {
        let in_hand = case(&self.at(time)) - self.placing;
        if in_hand.abs() < NOISE_M { 0.0 } else { in_hand }
    }

    pub(super) fn longest_hold(&self) -> f64 {
        self.inner.hold().max(self.outer.hold())
    }

    /// Time from the first piece's going into its medium to the placing clearance.
    pub(super) fn time_to_clear(&self) -> Cases<Option<Time>> {
        EACH.map(|case| {
            let (start, end) = (-self.longest_hold(), 0.0);
            let in_hand = |time| self.in_hand(time, case);
            if in_hand(start) >= 0.0 {
                return Some(Time::default());
            }
            (in_hand(end) >= 0.0).then(|| Time::new::<second>(crossing(in_hand, (start, end)) - start))
        })
    }

    /// Time in shop air until the placing clearance is gone.
    pub(super) fn window(&self) -> Cases<Window> {
        EACH.map(|case| {
            let in_hand = |time| self.in_hand(time, case);
            if in_hand(0.0) < 0.0 {
                Window::Lasts(Time::default())
            } else if in_hand(LONGEST_ON_BENCH_S) < 0.0 {
                Window::Lasts(Time::new::<second>(crossing(in_hand, (0.0, LONGEST_ON_BENCH_S))))
            } else if in_hand(f64::INFINITY) >= 0.0 {
                Window::Always
            } else {
                Window::Beyond(Time::new::<second>(LONGEST_ON_BENCH_S))
            }
        })
    }

    /// The curve that a plot shows: the time in the medium, and in shop air until a little after the last case closes.
    pub(super) fn history(
        &self,
        window: &Cases<Window>,
        to_clear: &Cases<Option<Time>>,
        carry: Time,
        in_seat: InSeat,
    ) -> ClearanceHistory {
        let hold = self.longest_hold();
        let bench = shown_after(window, carry.get::<second>(), hold > 0.0);
        let spread = |from: f64, to: f64, count: u32| {
            (0..=count).map(move |i| from + (to - from) * f64::from(i) / f64::from(count))
        };
        let before = spread(-hold, 0.0, POINTS.0).take(if hold > 0.0 { POINTS.0 as usize } else { 0 });
        let points = before.chain(spread(0.0, bench, POINTS.1)).map(|time| self.point(time)).collect();
        ClearanceHistory {
            points,
            placing_clearance: Length::new::<meter>(self.placing),
            moments: self.moments(window, to_clear, carry, hold),
            in_seat,
        }
    }

    fn point(&self, time: f64) -> ClearancePoint {
        ClearancePoint { time: Time::new::<second>(time), clearance: self.at(time).map(Length::new::<meter>) }
    }

    fn moments(&self, window: &Cases<Window>, to_clear: &Cases<Option<Time>>, carry: Time, hold: f64) -> Vec<Moment> {
        let moment = |time: f64, kind| Moment {
            time: Time::new::<second>(time),
            kind,
            clearance: Length::new::<meter>(self.at(time).middle),
        };
        let mut moments = Vec::new();
        if hold > 0.0 {
            let first = to_clear.tightest.map(|time| time.get::<second>()).filter(|time| *time > 0.0);
            moments.extend(first.map(|time| moment(time - hold, MomentKind::FirstClears)));
            moments.push(moment(0.0, MomentKind::OutOfMedium));
            moments.push(moment(carry.get::<second>(), MomentKind::AtBore));
            if let Window::Lasts(time) = window.tightest
                && time > Time::default()
            {
                moments.push(moment(time.get::<second>(), MomentKind::NoLongerClears));
            }
        }
        moments
    }
}

/// How a case is taken out of the three.
pub(super) type Case = fn(&Cases<f64>) -> f64;

/// Each of the three.
pub(super) const EACH: Cases<Case> =
    Cases { tightest: |cases| cases.tightest, middle: |cases| cases.middle, loosest: |cases| cases.loosest };

/// The zero of a monotone function that changes sign between the ends, to a hundredth of a second.
fn crossing(in_hand: impl Fn(f64) -> f64, (mut low, mut high): (f64, f64)) -> f64 {
    let rises = in_hand(high) >= 0.0;
    while high - low > 0.01 {
        let middle = 0.5 * (low + high);
        if (in_hand(middle) >= 0.0) == rises { high = middle } else { low = middle }
    }
    0.5 * (low + high)
}

/// How far into the middle case's time in shop air a plot looks, s: half an hour, by which anyone has pushed.
const LONGEST_MIDDLE_S: f64 = 1800.0;

/// How much of the time in shop air a plot shows, s.
fn shown_after(window: &Cases<Window>, carry: f64, treated: bool) -> f64 {
    if !treated {
        return 60.0;
    }
    let lasts = |window: Window| match window {
        Window::Lasts(time) => time.get::<second>(),
        Window::Always | Window::Beyond(_) => 0.0,
    };
    // What the tightest case does decides, and has its place on the axis however long it lasts.
    let last = lasts(window.tightest).max(lasts(window.middle).min(LONGEST_MIDDLE_S));
    (1.5 * last).min(LONGEST_ON_BENCH_S).max(3.0 * carry).max(30.0)
}

/// Temperature from kelvin.
pub(super) fn from_kelvin(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<kelvin>(value)
}
