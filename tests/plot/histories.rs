//! Invented histories of the shapes that a plan gives: exponential approach in the medium and in air.

use seatwise::plan::clearance_history::{ClearanceHistory, ClearancePoint, InSeat, Moment, MomentKind};
use seatwise::quantity::{Cases, Length, System, Time};
use seatwise::report::plot::PlotRequest;
use uom::si::length::micrometer;
use uom::si::time::second;

/// A history with the words to draw it under.
pub struct Example {
    pub name: &'static str,
    pub title: &'static str,
    pub subtitle: &'static str,
    pub system: System,
    pub history: ClearanceHistory,
}

impl Example {
    pub fn request(&self) -> PlotRequest<'_> {
        PlotRequest { history: &self.history, title: self.title, subtitle: self.subtitle, system: self.system }
    }
}

pub fn um(value: f64) -> Length {
    Length::new::<micrometer>(value)
}

pub fn s(value: f64) -> Time {
    Time::new::<second>(value)
}

/// Fit at 20 °C, gain in the medium and its time constant, time constant in air, all in µm and s.
#[derive(Clone, Copy)]
struct Course {
    fit: [f64; 3],
    gain: f64,
    medium_s: f64,
    air_s: f64,
    hold_s: f64,
    end_s: f64,
}

impl Course {
    fn gained(&self, time: f64) -> f64 {
        let full = self.gain * (1.0 - (-self.hold_s / self.medium_s).exp());
        if time < 0.0 {
            self.gain * (1.0 - (-(time + self.hold_s) / self.medium_s).exp())
        } else {
            full * (-time / self.air_s).exp()
        }
    }

    fn points(&self) -> Vec<ClearancePoint> {
        let steps = |from: f64, to: f64| (0..=120).map(move |i| from + (to - from) * f64::from(i) / 120.0);
        let before: Vec<f64> = if self.hold_s > 0.0 { steps(-self.hold_s, 0.0).collect() } else { vec![] };
        let times = before.into_iter().chain(steps(0.0, self.end_s));
        times
            .map(|t| {
                let [tightest, middle, loosest] = self.fit.map(|fit| um(fit + self.gained(t)));
                ClearancePoint { time: s(t), clearance: Cases { tightest, middle, loosest } }
            })
            .collect()
    }

    fn moment(&self, kind: MomentKind, time: f64) -> Moment {
        Moment { time: s(time), kind, clearance: um(self.fit[1] + self.gained(time)) }
    }

    fn history(&self, placing: f64, moments: &[(MomentKind, f64)]) -> ClearanceHistory {
        ClearanceHistory {
            points: self.points(),
            placing_clearance: um(placing),
            moments: moments.iter().map(|(kind, time)| self.moment(*kind, *time)).collect(),
            in_seat: InSeat::default(),
        }
    }
}

use MomentKind::{AtBore, FirstClears, NoLongerClears, OutOfMedium};

/// Chilled in a freezer; the middle case drops in, the tightest does not.
fn freezer() -> Example {
    let course =
        Course { fit: [-33.0, -14.5, 4.0], gain: 28.5, medium_s: 380.0, air_s: 130.0, hold_s: 1800.0, end_s: 60.0 };
    Example {
        name: "freezer",
        title: "Some will not drop in: the tightest pair still has 8 µm of interference at the bore, the middle one 11 µm of clearance.",
        subtitle: "62 mm N7, bearing chilled 30 min at −18 °C, 13 s from the freezer to the bore",
        system: System::Metric,
        history: course.history(5.0, &[(OutOfMedium, 0.0), (AtBore, 13.0)]),
    }
}

/// Cold ring and warm light-alloy housing: clear for a long time.
fn roomy() -> Example {
    let course =
        Course { fit: [-33.0, -14.5, 4.0], gain: 130.0, medium_s: 700.0, air_s: 150.0, hold_s: 2700.0, end_s: 240.0 };
    let window = 150.0 * (130.0_f64 * (1.0 - (-2700.0_f64 / 700.0).exp()) / 48.0).ln();
    let opens = -2700.0 - 700.0 * (1.0_f64 - 48.0 / 130.0).ln();
    let moments = [(FirstClears, opens), (OutOfMedium, 0.0), (AtBore, 20.0), (NoLongerClears, window)];
    Example {
        name: "roomy",
        title: "Drops in: even the tightest pair has 78 µm of clearance at the bore.",
        subtitle: "62 mm N7, bearing at −18 °C, housing at 90 °C",
        system: System::Metric,
        history: course.history(15.0, &moments),
    }
}

/// Pressed as it is.
fn press() -> Example {
    let course = Course { fit: [-33.0, -14.5, 4.0], gain: 0.0, medium_s: 1.0, air_s: 1.0, hold_s: 0.0, end_s: 60.0 };
    Example {
        name: "press",
        title: "Press: up to 33 µm of interference is left.",
        subtitle: "",
        system: System::Metric,
        history: course.history(10.0, &[(AtBore, 0.0)]),
    }
}

/// The same freezer in inch units, with all four moments close together.
fn inch() -> Example {
    let course =
        Course { fit: [-20.0, -8.0, 4.0], gain: 36.0, medium_s: 200.0, air_s: 100.0, hold_s: 1200.0, end_s: 90.0 };
    let window = 100.0 * (36.0_f64 * (1.0 - (-6.0_f64).exp()) / 28.0).ln();
    let opens = -1200.0 - 200.0 * (1.0_f64 - 28.0 / 36.0).ln();
    let moments = [(FirstClears, opens), (OutOfMedium, 0.0), (AtBore, 13.0), (NoLongerClears, window)];
    Example {
        name: "inch",
        title: "Drops in, with 11 s to spare at the bore.",
        subtitle: "2.4409 in bore, bearing chilled 20 min at 0 °F",
        system: System::Inch,
        history: course.history(8.0, &moments),
    }
}

/// Words that take many lines, and a curve that is never in interference.
fn long_title() -> Example {
    let course =
        Course { fit: [2.0, 14.0, 26.0], gain: 40.0, medium_s: 60.0, air_s: 90.0, hold_s: 170.0, end_s: 120.0 };
    Example {
        name: "long-title",
        title: "Rear bearing of the raw-water pump, second overhaul, housing 7 with the sleeved bore (drawing revision C): drops in from liquid nitrogen with room to spare, but do not chill the seal, and keep the bearing in its bag until the moment it is placed.",
        subtitle: "62 mm G7 in a sleeve of cast iron; every size measured at 23 °C and brought to 20 °C; the shaft seat is drawn on a page of its own",
        system: System::Metric,
        history: course.history(10.0, &[(OutOfMedium, 0.0), (AtBore, 6.0)]),
    }
}

/// Eight hours in the freezer.
fn overnight() -> Example {
    let course = Course {
        fit: [-58.0, -40.0, -22.0],
        gain: 36.0,
        medium_s: 4500.0,
        air_s: 900.0,
        hold_s: 28800.0,
        end_s: 600.0,
    };
    Example {
        name: "overnight",
        title: "Press: chilling overnight leaves 24 µm of interference in the tightest pair.",
        subtitle: "120 mm P7, heavy ring",
        system: System::Metric,
        history: course.history(12.0, &[(OutOfMedium, 0.0), (AtBore, 30.0)]),
    }
}

pub fn all() -> Vec<Example> {
    vec![freezer(), roomy(), press(), inch(), long_title(), overnight()]
}
