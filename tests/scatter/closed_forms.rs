//! Drawn parts against what can be computed without drawing.

use crate::jobs::{job, s31};
use seatwise::job::Job;
use seatwise::plan::scatter::{
    Distribution, InputKind, OneByOne, Output, OutputSummary, Random, Request, SeatScatter, Share, scatter, seat_models,
};
use seatwise::plan::{Method, plan_by};
use std::f64::consts::PI;

const DRAWS: u64 = 200_000;

fn drawn(table: &str) -> SeatScatter {
    drawn_of(table, DRAWS)
}

fn drawn_of(table: &str, draws: u64) -> SeatScatter {
    let request = Request { draws, seed: 7, force_limit: None, method: Method::Plane };
    scatter(&s31(table), &request, &OneByOne).unwrap().seats.remove(0)
}

fn of(seat: &SeatScatter, output: Output) -> OutputSummary {
    seat.outputs.iter().find(|summary| summary.output == output).unwrap().clone()
}

/// Both limits of the interference of S31, µm: ring -13/0, bore -39/-9.
const RING: f64 = 13.0;
const BORE: f64 = 30.0;
const MIDDLE: f64 = 17.5;

#[test]
fn two_uniform_sizes_give_the_trapezoid_of_their_sum() {
    let seat = drawn("sizes = \"uniform\"");
    let interference = of(&seat, Output::Interference);
    let deviation = ((RING * RING + BORE * BORE) / 12.0).sqrt();
    // Five standard errors of mean and deviation.
    let error = deviation * 1e-6 / (DRAWS as f64).sqrt();
    assert!((interference.mean.unwrap() - MIDDLE * 1e-6).abs() < 5.0 * error);
    assert!((interference.deviation.unwrap() - deviation * 1e-6).abs() < 5.0 * error);
    // Below zero lies the corner of the trapezoid from -4 to 0: 4²/(2 · 13 · 30) = 2.05 %.
    let loose = 4.0 * 4.0 / (2.0 * RING * BORE);
    assert!((seat.loose.low..=seat.loose.high).contains(&loose), "{:?} against {loose}", seat.loose);
    // The first percentile x of the corner: (x + 4)²/(2 · 13 · 30) = 0.01.
    let first = (0.01 * 2.0 * RING * BORE).sqrt() - 4.0;
    assert!((interference.percentiles[1] * 1e6 - first).abs() < 0.1, "{:?}", interference.percentiles);
}

#[test]
fn the_bars_of_the_histogram_hold_every_part_and_follow_the_trapezoid() {
    let seat = drawn("sizes = \"uniform\"");
    let bars = &seat.histogram;
    assert_eq!(bars.iter().map(|bar| bar.count).sum::<u64>(), DRAWS);
    // The edges join, and reach from the least to the most clearance: 4 µm loose to 39 µm tight, but for the thin corners.
    assert!(bars.windows(2).all(|pair| (pair[0].to - pair[1].from).abs().value < 1e-12 && pair[0].from < pair[0].to));
    let (first, last) = (bars[0].from.value * 1e6, bars[bars.len() - 1].to.value * 1e6);
    assert!((first + 39.0).abs() < 0.5 && (last - 4.0).abs() < 0.5, "{first} to {last}");
    // Share of parts below x µm of interference: the area of the trapezoid with slopes of 13 and a top of 1/30.
    let below = |x: f64| {
        let corner = |x: f64| 0.5 * x.max(0.0).powi(2) / (RING * BORE);
        corner(x + 4.0) - corner(x + 4.0 - RING) - corner(x + 4.0 - BORE) + corner(x + 4.0 - RING - BORE)
    };
    for bar in bars {
        let share = below(-bar.from.value * 1e6) - below(-bar.to.value * 1e6);
        // Five standard errors of a count, and one part.
        let error = 5.0 * (share * (1.0 - share) / DRAWS as f64).max(0.0).sqrt() + 1.0 / DRAWS as f64;
        assert!((bar.count as f64 / DRAWS as f64 - share).abs() < error, "{bar:?}: {share}");
    }
}

#[test]
fn only_what_the_job_leaves_open_is_assumed_and_says_why() {
    for (table, stated) in [("", false), ("sizes = \"uniform\"\nfriction = \"uniform\"", true)] {
        let seat = drawn_of(table, 100);
        let input = |kind: InputKind| seat.inputs.iter().find(|input| input.kind == kind).unwrap();
        for kind in [InputKind::InnerSize, InputKind::OuterSize, InputKind::Friction] {
            let why = input(kind).assumed.as_deref();
            assert_eq!(why.is_none(), stated, "{kind:?}: {why:?}");
            assert!(why.is_none_or(|why| why.contains("under [scatter]")), "{kind:?}: {why:?}");
        }
    }
}

/// S31: "-4..39 µm worst, 17.5 mean, 1.2..33.8 3-sigma, 0.066 % loose". The scenario takes plain normal sizes whose limits
/// lie at three standard deviations and does not sort out what falls beyond them: σ = √(30² + 13²)/6 = 5.449 µm.
#[test]
fn s31_with_nothing_sorted_out_gives_the_normal_sum_of_the_scenario() {
    let seat = drawn("sizes = { shape = \"normal\", capability = \"1\", beyond_limits = \"fitted\" }");
    let interference = of(&seat, Output::Interference);
    let (mean, deviation) = (interference.mean.unwrap() * 1e6, interference.deviation.unwrap() * 1e6);
    let error = 5.449 / (DRAWS as f64).sqrt();
    assert!((mean - 17.5).abs() < 4.0 * error, "{mean}");
    assert!(
        (mean - 3.0 * deviation - 1.15).abs() < 15.0 * error && (mean + 3.0 * deviation - 33.85).abs() < 15.0 * error
    );
    assert!((seat.loose.low..=seat.loose.high).contains(&0.000_66), "{:?}", seat.loose);
}

/// With parts beyond their limits sorted out, as they are where every part is measured, fewer are loose: the tails of both
/// sizes are cut. The share is the double integral of the two cut normal densities, here by Simpson's rule.
#[test]
fn s31_with_parts_beyond_the_limits_sorted_out_has_fewer_loose_ones() {
    let seat = drawn("sizes = { shape = \"normal\", capability = \"1\" }");
    let interference = of(&seat, Output::Interference);
    let loose = loose_of_cut_normals();
    assert!(loose < 0.000_5, "{loose}");
    assert!((seat.loose.low..=seat.loose.high).contains(&loose), "{:?} against {loose}", seat.loose);
    assert!(interference.least > -4.0e-6 && interference.most < 39.0e-6, "the worst case bounds them");
    // Cut at three standard deviations, a normal keeps 1 - 6 φ(3)/(2 Φ(3) - 1) = 0.97334 of its variance.
    let deviation = ((BORE * BORE + RING * RING) / 36.0 * 0.973_34_f64).sqrt();
    assert!((interference.deviation.unwrap() * 1e6 - deviation).abs() < 0.04);
}

/// Probability that a ring below its middle by `u` is smaller than a bore above its middle by `v`, both cut at ±3σ.
fn loose_of_cut_normals() -> f64 {
    let (ring, bore) = (RING / 6.0, BORE / 6.0);
    let density = |x: f64| (-0.5 * x * x).exp() / (2.0 * PI).sqrt();
    let simpson = |f: &dyn Fn(f64) -> f64, (a, b): (f64, f64)| {
        let n = 400;
        let h = (b - a) / f64::from(n);
        (0..=n)
            .map(|i| f64::from(if i == 0 || i == n { 1 } else { 2 + 2 * (i % 2) }) * f(a + h * f64::from(i)))
            .sum::<f64>()
            * h
            / 3.0
    };
    let inside = simpson(&density, (-3.0, 3.0));
    // Interference = 17.5 + ring·x - bore·y < 0 where y > (17.5 + ring·x)/bore.
    let tail = |x: f64| {
        let from = (MIDDLE + ring * x) / bore;
        if from < 3.0 { simpson(&density, (from, 3.0)) } else { 0.0 }
    };
    // The tail begins at a corner, which Simpson's rule must not straddle.
    let corner = (3.0 * bore - MIDDLE) / ring;
    simpson(&|x| density(x) * tail(x), (-3.0, corner)) / (inside * inside)
}

#[test]
fn measured_sizes_are_drawn_each_as_likely() {
    let table =
        "outside = { measured = [\"51.990 mm\", \"51.992 mm\", \"51.992 mm\", \"51.998 mm\"] }\nhousing = \"fixed\"";
    let interference = of(&drawn(table), Output::Interference);
    // Bore fixed at its middle, -24 µm; rings at -10, -8, -8, -2: interferences 14, 16, 16, 22 with mean 17 and σ = 3.
    let error = 3.0e-6 / (DRAWS as f64).sqrt();
    assert!((interference.mean.unwrap() - 17.0e-6).abs() < 5.0 * error);
    assert!((interference.deviation.unwrap() - 3.0e-6).abs() < 5.0 * error);
    assert!((interference.least - 14.0e-6).abs() < 1e-10 && (interference.most - 22.0e-6).abs() < 1e-10);
}

/// The capability is that of the nearer limit: a mean off the middle makes the spread smaller, not the share beyond larger.
#[test]
fn a_capability_holds_at_the_limit_nearer_to_the_mean() {
    let Distribution::Normal { mean, deviation, .. } =
        Distribution::capable((0.0, 30.0), 1.33, Some(10.0), false).unwrap()
    else {
        panic!("it is a normal distribution")
    };
    assert!((mean - 10.0).abs() < 1e-12 && (deviation - 10.0 / 3.99).abs() < 1e-12);
    assert!(Distribution::capable((0.0, 30.0), 1.0, Some(31.0), false).is_err());
}

/// Intervals by method 3 (E. B. Wilson) of R. G. Newcombe, Stat. Med. 17 (1998) 857-872, Table I, from memory: 15/148
/// 0.0624 to 0.1605, 0/20 0 to 0.1611, 81/263 0.2553 to 0.3662.
#[test]
fn the_interval_of_a_share_is_the_score_interval() {
    for (count, draws, low, high) in [(15, 148, 0.0624, 0.1605), (0, 20, 0.0, 0.1611), (81, 263, 0.2553, 0.3662)] {
        let share = Share::of(count, draws);
        assert!((share.low - low).abs() < 5.1e-5 && (share.high - high).abs() < 5.1e-5, "{share:?}");
    }
    assert!((Share::of(20, 20).high - 1.0).abs() < 1e-12);
}

#[test]
fn no_number_repeats_from_chunk_to_chunk_and_none_leaves_its_range() {
    let mut all: Vec<f64> = (0..20)
        .flat_map(|chunk| {
            let mut random = Random::new(3, chunk);
            (0..500).map(move |_| random.even()).collect::<Vec<_>>()
        })
        .collect();
    assert!(all.iter().all(|value| (0.0..1.0).contains(value)));
    all.sort_by(f64::total_cmp);
    assert!(all.windows(2).all(|pair| pair[1] > pair[0]));
}

/// The force is friction times the pressure of the plan: with everything fixed, every part is the middle case.
#[test]
fn with_everything_fixed_every_part_is_the_middle_case_of_the_plan() {
    let job = job(&crate::jobs::NITROGEN.replace("hold = \"5 min\"", "hold = \"20 s\"").replace(
        "carry = \"12 s\"",
        "carry = \"12 s\"\n[press]\nfriction = \"0.1\"\n[scatter]\nsizes = \"fixed\"\nmedium = \"0 K\"\nhold = \"0 s\"\n\
         carry = \"0 s\"\nfilm = \"fixed\"",
    ));
    let planned = seatwise::plan::plan_by(&job, Method::Plane).unwrap();
    let request = Request { draws: 100, seed: 1, force_limit: None, method: Method::Plane };
    let seat = scatter(&job, &request, &OneByOne).unwrap().seats.remove(0);
    let clearance = of(&seat, Output::Clearance);
    let middle = planned.seats[0].at_bore.clearance.middle.value;
    assert!(
        (clearance.most - middle).abs() < 1e-9 && (clearance.least - middle).abs() < 1e-9,
        "{} {middle}",
        clearance.most
    );
    let force = of(&seat, Output::Force);
    // Nothing but the shape of the seat is left to vary: between the plane formula times the ends of its factor.
    let (seat, interference) = (&planned.seats[0], -middle);
    assert!(interference > 1e-6, "a fit that is open says nothing of its force: {middle}");
    let gives = |part: &seatwise::plan::PartBasis| part.give / part.elastic_modulus.value;
    let elastic = interference / seat.nominal.value / (gives(&seat.basis.inner) + gives(&seat.basis.outer));
    let plane = 0.1 * elastic * std::f64::consts::PI * (seat.nominal * seat.press.length).value;
    let (low, high) = seat.press.shape.force;
    assert!(low < high && force.least >= low * plane * (1.0 - 1e-6) && force.most <= high * plane * (1.0 + 1e-6));
    // 100 even draws leave a gap at an end of more than a tenth once in 38 000.
    let reached = 0.1 * (high - low);
    assert!(force.least < (low + reached) * plane && force.most > (high - reached) * plane, "{force:?} {plane}");
    let shape = seat_shape(&job);
    assert!(shape.contains("bounds, not a value") && shape.contains("state the length"), "{shape}");
    let computed = job_with_length();
    let why = seat_shape(&computed);
    assert!(why.contains("computed in the section") && !why.contains("state the length"), "{why}");
}

#[test]
fn a_bush_that_takes_a_set_needs_the_force_of_the_plan_and_no_more_for_a_tighter_fit() {
    let forces = |um: u32| {
        let job = job(&format!(
            "[bearing]\nkind = \"plain bush\"\nbore = \"15 mm\"\noutside = \"20 mm\"\nwidth = \"20 mm\"\nchamfer = \"0 mm\"\n\
             material = \"bronze\"\noutside_limits = \"+{um}/+{um} um\"\n[housing]\nbore_limits = \"0/0 um\"\n\
             outside = \"50 mm\"\nlength = \"20 mm\"\nmaterial = \"carbon-steel\"\n[press]\nfriction = \"0.1\"\n"
        ));
        let planned = seatwise::plan::plan_by(&job, Method::Plane).unwrap();
        let request = Request { draws: 100, seed: 1, force_limit: None, method: Method::Plane };
        let force = of(&scatter(&job, &request, &OneByOne).unwrap().seats[0], Output::Force);
        let middle = planned.seats[0].at_bore.force.middle.value;
        assert!(
            (force.least / middle - 1.0).abs() < 1e-9 && (force.most / middle - 1.0).abs() < 1e-9,
            "{force:?} {middle}"
        );
        middle
    };
    let (elastic, through, tighter) = (forces(15), forces(40), forces(50));
    assert!(through < 2.0 * elastic && (tighter / through - 1.0).abs() < 1e-9, "{elastic} {through} {tighter}");
}

/// Why the shape of the seat has its distribution.
fn seat_shape(job: &Job) -> String {
    let models = seat_models(job, Method::Auto, &OneByOne).unwrap();
    let inputs = models[0].inputs().to_vec();
    let shape = inputs.into_iter().find(|input| input.kind == InputKind::Shape).unwrap();
    shape.assumed.map_or_else(String::new, |why| why.into_owned())
}

/// S31 in a blind bore of stated length, whose section is computed.
fn job_with_length() -> Job {
    let text = "[bearing]\ndesignation = \"6205\"\n[housing]\nbore_limits = \"N7\"\noutside = \"80 mm\"\nlength = \"22 mm\"\n\
                material = \"cast-aluminium\"\nshoulder = { inside = \"42 mm\", wall = \"5 mm\" }\n";
    job(text)
}

/// Where nothing scatters, every drawn part is the middle case of the plan, whatever was done to it.
#[test]
fn a_part_that_nothing_scatters_for_is_the_middle_case_of_the_plan() {
    let chill = "[chill]\npart = \"bush\"\nmedium = \"dry-ice-alcohol\"\nhold = \"2 min\"\n";
    let warm = "[warm]\npart = \"housing\"\nmedium = \"oil-bath\"\ntemperature = \"60 °C\"\nhold = \"10 min\"\n";
    for treatment in [String::new(), chill.to_owned(), warm.to_owned(), format!("{chill}{warm}")] {
        let job = job(&format!(
            "[bearing]\nkind = \"plain bush\"\nbore = \"40 mm\"\noutside = \"60 mm\"\nwidth = \"20 mm\"\noutside_limits = \"s6\"\n\
             material = \"bronze\"\nroughness = \"Rz 6 um\"\n[housing]\nbore_limits = \"H7\"\noutside = \"100 mm\"\n\
             length = \"20 mm\"\nmaterial = \"grey-iron\"\nroughness = \"Rz 10 um\"\n{treatment}[bench]\ntemperature = \"24 °C\"\n\
             carry = \"20 s\"\n[service]\ncoldest = \"-10 °C\"\nhottest = {{ part = \"70 °C\", housing = \"60 °C\" }}\n\
             [scatter]\nsizes = \"fixed\"\nfilm = \"fixed\"\nfriction = \"fixed\"\nmedium = \"0 K\"\nhold = \"0 s\"\ncarry = \"0 s\"\n"
        ));
        let planned = plan_by(&job, Method::Plane).unwrap().seats.remove(0);
        let request = Request { draws: 100, seed: 7, force_limit: None, method: Method::Plane };
        let seat = scatter(&job, &request, &OneByOne).unwrap().seats.remove(0);
        let middle = |output: Output| {
            let found = of(&seat, output);
            assert!(found.most - found.least <= 1e-9 * found.most.abs(), "{output:?} scatters: {found:?}");
            found.least
        };
        for (output, wanted, within) in [
            (Output::Interference, -planned.fit.clearance.middle.value, 1e-11),
            (Output::Clearance, planned.at_bore.clearance.middle.value, 0.05e-6),
            (Output::Force, planned.at_bore.force.middle.value, 0.01 * planned.press.force.middle.value),
            (Output::Coldest, -planned.service[0].clearance.middle.value, 1e-11),
            (Output::Hottest, -planned.service[1].clearance.middle.value, 1e-11),
        ] {
            let found = middle(output);
            assert!((found - wanted).abs() <= within, "{output:?}: {found}, planned {wanted} with {treatment}");
        }
        // Rough surfaces bear less: of the 16 µm of both a share is smoothed away before anything presses.
        assert!(planned.fit.effective_interference.middle < -planned.fit.clearance.middle);
    }
}
