//! What each quantity of a scatter is drawn from, held against the ranges that the job and the help state.

use crate::jobs::{job, s31};
use seatwise::job::Job;
use seatwise::plan::Method;
use seatwise::plan::scatter::{
    Distribution, InputKind, OneByOne, Output, Random, Request, SeatScatter, scatter, seat_models,
};
use seatwise::quantity::Time;
use uom::si::time::second;

/// A bush from a freezer at -18 °C, a housing from an oven at 80 °C; half an hour, an hour, 20 s.
const BOTH: &str = "[bearing]\nkind = \"plain bush\"\nbore = \"40 mm\"\noutside = \"52 mm\"\nwidth = \"20 mm\"\n\
    outside_limits = \"p6\"\nmaterial = \"bronze\"\n[housing]\nbore_limits = \"H7\"\noutside = \"80 mm\"\n\
    material = \"cast-aluminium\"\n[chill]\npart = \"bush\"\nmedium = \"freezer\"\ntemperature = \"-18 °C\"\nhold = \"30 min\"\n\
    [warm]\npart = \"housing\"\nmedium = \"oven\"\ntemperature = \"80 °C\"\nhold = \"1 h\"\n[bench]\ncarry = \"20 s\"\n[scatter]\n";

fn seat(job: &Job) -> SeatScatter {
    let request = Request { draws: 100, seed: 1, force_limit: None, method: Method::Plane };
    scatter(job, &request, &OneByOne).unwrap().seats.remove(0)
}

/// What a quantity is drawn from; none where it does not scatter.
fn of(seat: &SeatScatter, kind: InputKind) -> Option<Distribution> {
    seat.inputs.iter().find(|input| input.kind == kind).map(|input| input.distribution.clone())
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-9
}

/// A quantity with the least and the most that is drawn.
type Drawn = (InputKind, f64, f64);

const ICE: f64 = 273.15;

#[test]
fn times_and_temperatures_scatter_by_what_is_stated_or_else_by_the_usual_share() {
    use InputKind::{Carry, ChillHold, ChillMedium, WarmHold, WarmMedium};
    // 5 % of a hold, 30 % of a carry; what is stated holds for both media, as a time or as a share; nobody is at the seat
    // before leaving.
    let cases: [(&str, &[Drawn]); 3] = [
        ("", &[(ChillHold, 1710.0, 1890.0), (WarmHold, 3420.0, 3780.0), (Carry, 14.0, 26.0)]),
        (
            "hold = \"2 min\"\ncarry = \"30 s\"\nmedium = \"2 K\"",
            &[
                (ChillHold, 1680.0, 1920.0),
                (WarmHold, 3480.0, 3720.0),
                (Carry, 0.0, 50.0),
                (ChillMedium, ICE - 20.0, ICE - 16.0),
                (WarmMedium, ICE + 78.0, ICE + 82.0),
            ],
        ),
        (
            "hold = \"10 %\"\ncarry = \"5 s\"",
            &[(ChillHold, 1620.0, 1980.0), (WarmHold, 3240.0, 3960.0), (Carry, 15.0, 25.0)],
        ),
    ];
    for (table, quantities) in cases {
        let seat = seat(&job(&format!("{BOTH}film = \"fixed\"\n{table}\n")));
        for (kind, low, high) in quantities {
            let found = of(&seat, *kind).unwrap();
            let (least, most) = found.ends();
            assert!(near(least, *low) && near(most, *high), "{table} {kind:?}: {least} to {most}");
            assert!(near(found.middle(), 0.5 * (low + high)) && !found.is_fixed(), "{table} {kind:?}");
        }
        for kind in [InputKind::ChillFilm, InputKind::WarmFilm, InputKind::AirFilm] {
            assert_eq!(of(&seat, kind), None, "{kind:?} is fixed");
        }
    }
}

#[test]
fn sizes_and_friction_keep_their_ends_in_every_shape_and_do_not_scatter_when_fixed() {
    // N7 of 52 mm: -39 to -9 µm; the ring -13 to 0.
    let of_job = |table: &str| {
        let job = s31(table);
        (job.press.friction, seat(&job))
    };
    let ends = |distribution: &Distribution, nominal: f64, um: (f64, f64)| {
        let (low, high) = distribution.ends();
        ((low - nominal) * 1e6 - um.0).abs() < 1e-6 && ((high - nominal) * 1e6 - um.1).abs() < 1e-6
    };
    let ((least, most), even) = of_job("sizes = \"uniform\"");
    assert!(least > 0.0 && most > least);
    assert_eq!(of(&even, InputKind::Friction), Some(Distribution::Uniform { low: least, high: most }));
    for (kind, um) in [(InputKind::OuterSize, (-39.0, -9.0)), (InputKind::InnerSize, (-13.0, 0.0))] {
        assert!(ends(&of(&even, kind).unwrap(), 0.052, um), "{kind:?}");
    }
    // Limits at three standard deviations for a capability of one.
    let (_, capable) = of_job("friction = { shape = \"normal\", capability = \"1\" }");
    let Some(Distribution::Normal { mean, deviation, low, high }) = of(&capable, InputKind::Friction) else {
        panic!("not normal")
    };
    assert!(near(mean, 0.5 * (least + most)) && near(deviation, (most - least) / 6.0), "{mean} {deviation}");
    assert!(near(low, least) && near(high, most), "{low} {high}");
    let (_, fixed) = of_job("sizes = \"uniform\"\nfriction = \"fixed\"");
    assert_eq!(of(&fixed, InputKind::Friction), None);
    // The middle of the range is what it is fixed at: the same parts need the same force on the average, within the error of
    // the mean of 100 draws of the friction, a third of its mean over ten.
    let force = |seat: &SeatScatter| {
        seat.outputs.iter().find(|summary| summary.output == Output::Force).and_then(|summary| summary.mean).unwrap()
    };
    assert!((force(&fixed) / force(&even) - 1.0).abs() < 0.1, "{} {}", force(&fixed), force(&even));
    // Pressed as it is, nothing of heat scatters.
    for kind in
        [InputKind::AirFilm, InputKind::Carry, InputKind::ChillHold, InputKind::WarmHold, InputKind::ChillMedium]
    {
        assert_eq!(of(&fixed, kind), None, "{kind:?}");
    }
}

#[test]
fn a_medium_that_is_drawn_colder_or_hotter_moves_the_clearance_by_the_expansion() {
    let long = BOTH.replace("30 min", "24 h").replace("1 h", "24 h").replace("20 s", "1 s");
    let job = job(&format!("{long}film = \"fixed\"\nmedium = \"10 K\"\n"));
    let model = seat_models(&job, Method::Plane, &OneByOne).unwrap().remove(0);
    let mut inputs = model.draw(&mut Random::new(3, 0));
    let mut at = |kind: InputKind, off: f64, planned: f64| {
        inputs[kind.index()] = ICE + planned + off;
        let clearance = model.evaluate(&inputs)[Output::Clearance.index()];
        let directly =
            model.clearance_directly(&inputs, Time::new::<second>(inputs[InputKind::Carry.index()])).unwrap();
        assert!((clearance - directly.value).abs() < 0.2e-6, "{clearance} {directly:?}");
        inputs[kind.index()] = ICE + planned;
        clearance
    };
    // 52 mm of the bush, bronze at 17 to 19 µm/(m K), and of the bore, light alloy at 20 to 24, over 20 K.
    let colder = at(InputKind::ChillMedium, -10.0, -18.0) - at(InputKind::ChillMedium, 10.0, -18.0);
    assert!((0.052 * 20.0 * 16e-6..0.052 * 20.0 * 19e-6).contains(&colder), "{colder}");
    let hotter = at(InputKind::WarmMedium, 10.0, 80.0) - at(InputKind::WarmMedium, -10.0, 80.0);
    assert!((0.052 * 20.0 * 20e-6..0.052 * 20.0 * 24.5e-6).contains(&hotter), "{hotter}");
}

#[test]
fn a_piece_taken_out_by_its_temperature_scatters_with_the_thermometer_and_has_no_time_of_its_own() {
    let until = BOTH.replace("hold = \"1 h\"", "until = \"70 °C\"");
    let seat = seat(&job(&format!("{until}film = \"fixed\"\n")));
    let (low, high) = of(&seat, InputKind::WarmMedium).unwrap().ends();
    assert!(near(low, ICE + 68.0) && near(high, ICE + 72.0), "a thermometer is within 2 K: {low} to {high}");
    assert_eq!(of(&seat, InputKind::WarmHold), None);
    assert!(of(&seat, InputKind::ChillHold).is_some());
}
