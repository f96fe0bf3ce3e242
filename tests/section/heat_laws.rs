//! Physics that must hold whatever the numbers are: balances, exact transformations, bounds; and what is refused.

use crate::heat_alone::{aluminium, film, in_celsius, reference_section, seconds, solid, steel};
use crate::heat_seated::{gap, seated};
use crate::rows::{self, in_mm, mm};
use seatwise::quantity::{HeatTransfer, Pressure, celsius};
use seatwise::section::heat::{
    Conduction, Exposed, Face, FaceLaw, Faces, Film, Growth, HeatHistory, Placement, Property, Solid, Stage, Strength,
    Until,
};
use seatwise::section::{Accuracy, Model, RingSection, Section};
use uom::si::energy::joule;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::pressure::megapascal;
use uom::si::ratio::ratio;
use uom::si::time::second;

const PI: f64 = std::f64::consts::PI;

fn coarse(section: &Section) -> Model {
    Model::new(section, Accuracy::Coarse).unwrap()
}

/// Steel whose heat capacity and conductivity fall with the cold. Round test inputs.
fn cryogenic() -> Solid {
    Solid {
        capacity: Property::new(&[(70.0, 170.0), (120.0, 300.0), (200.0, 410.0), (300.0, 460.0)]).unwrap(),
        conductivity: Property::new(&[(70.0, 30.0), (150.0, 38.0), (300.0, 43.0)]).unwrap(),
        ..steel()
    }
}

/// A boiling curve: nucleate boiling, the fall through transition, film boiling. Round test inputs.
fn boiling() -> Exposed {
    let rows = [(-2.0, 800.0), (2.0, 1000.0), (10.0, 9000.0), (14.0, 6000.0), (30.0, 200.0), (300.0, 150.0)];
    let rows = rows.map(|(excess, film)| (77.36 + excess, film));
    let surroundings = celsius(77.36 - 273.15);
    Exposed { film: Film::OverSurface(Property::new(&rows).unwrap()), emissivity: 0.2, surroundings }
}

fn stage<'a>(faces: Faces<'a>, lasting: f64) -> Stage<'a> {
    Stage { around: vec![faces; 2], seating: None, until: Until::Elapsed(seconds(lasting)) }
}

/// The heat that a ring loses on its way to the boiling point is its mass times the integral of its capacity, the faces
/// counted it, and the ring gets there.
#[test]
fn heat_is_kept_through_a_boiling_curve() {
    let (model, bath) = (coarse(&reference_section(52.0)), boiling());
    let conduction = Conduction::new(&model, &[cryogenic(), cryogenic()]).unwrap();
    let start = conduction.uniform(&[celsius(20.0); 2]).unwrap();
    let history = conduction.run(&start, &[stage(Faces::all(FaceLaw::Exposed(&bath)), 600.0)]).unwrap();
    let balance = history.balance(0).unwrap();
    let mass = 7810.0 * PI * (0.031_f64.powi(2) - 0.026_f64.powi(2)) * 0.016;
    // Trapezoids of the table from 77.36 to 293.15 K.
    let at_end = 170.0 + (300.0 - 170.0) * 7.36 / 50.0;
    let at_start = 410.0 + 50.0 * 93.15 / 100.0;
    let integral = (120.0 - 77.36) * (at_end + 300.0) / 2.0 + 80.0 * 355.0 + 93.15 * (410.0 + at_start) / 2.0;
    let gained = balance.gained[0].get::<joule>();
    assert!((gained / (-mass * integral) - 1.0).abs() < 1e-4, "{gained} J and {}", -mass * integral);
    let through: f64 = balance.faces[0].iter().map(|heat| heat.get::<joule>()).sum();
    assert!((through / gained - 1.0).abs() < 1e-3, "{through} J and {gained} J");
    assert!((balance.missing / balance.gained[0]).get::<ratio>().abs() < 1e-3);
    let end = in_celsius(history.part(0, seconds(600.0)).unwrap().mean);
    assert!((end + 195.79).abs() < 0.01, "{end} °C");
}

/// Where capacity and conductivity are in the same proportion at every temperature, the flux potential obeys the linear
/// equation (G. Kirchhoff's transformation): under the same flux it is the temperature of constant properties.
#[test]
fn properties_in_proportion_are_a_linear_problem_in_disguise() {
    let model = coarse(&reference_section(52.0));
    let warming = |_: f64, time: f64| 2e5 * (1.0 - time / 40.0);
    let faces = Faces::all(FaceLaw::Insulated).with(Face::Back, FaceLaw::Flux(&warming));
    let run = |ring: Solid| {
        let conduction = Conduction::new(&model, &[ring, steel()]).unwrap();
        let start = conduction.uniform(&[celsius(20.0); 2]).unwrap();
        let history = conduction.run(&start, &[stage(faces, 20.0)]).unwrap();
        history.nodes(0, seconds(20.0)).unwrap()
    };
    // f(T) = 1 + (T - 293.15)/400, so that ∫f = x + x²/800.
    let share = |constant: f64| Property::line(constant / 400.0, 293.15 - 400.0);
    let bent = run(Solid { capacity: share(460.0), conductivity: share(40.0), ..steel() });
    let straight = run(steel());
    let mut warmest: f64 = 0.0;
    for (bent, straight) in bent.iter().zip(straight) {
        let (x, linear) = (in_celsius(bent.temperature) - 20.0, in_celsius(straight.temperature) - 20.0);
        warmest = warmest.max(linear);
        assert!((x + x * x / 800.0 - linear).abs() < 0.05, "{x} K and {linear} K");
    }
    assert!(warmest > 40.0, "{warmest}");
}

/// Radiation alone between T and walls, one temperature throughout: the time from T₀ to T has a closed form.
#[test]
fn radiation_cools_as_the_closed_form_says() {
    let model = coarse(&reference_section(52.0));
    // A conductor so good that the ring has one temperature.
    let conduction = Conduction::new(&model, &[solid(7810.0, 460.0, 4e5, 12.5e-6), aluminium()]).unwrap();
    let film = Film::Constant(HeatTransfer::new::<watt_per_square_meter_kelvin>(0.0));
    let walls = Exposed { film, emissivity: 0.8, surroundings: celsius(20.0) };
    let start = conduction.uniform(&[celsius(226.85); 2]).unwrap();
    let history = conduction.run(&start, &[stage(Faces::all(FaceLaw::Exposed(&walls)), 1000.0)]).unwrap();
    let found = history.part(0, seconds(1000.0)).unwrap().mean.get::<uom::si::thermodynamic_temperature::kelvin>();
    // ∫ dT/(T⁴ - w⁴) = 1/(4 w³) ln((T - w)/(T + w)) - 1/(2 w³) atan(T/w)
    let w: f64 = 293.15;
    let primitive = |t: f64| ((t - w) / (t + w)).ln() / (4.0 * w.powi(3)) - (t / w).atan() / (2.0 * w.powi(3));
    let (a, b, width) = (0.026_f64, 0.031_f64, 0.016);
    let area = 2.0 * PI * (a + b) * width + 2.0 * PI * (b * b - a * a);
    let capacity = 7810.0 * 460.0 * PI * (b * b - a * a) * width;
    let time = (primitive(500.0) - primitive(found)) * capacity / (0.8 * 5.670_374_419e-8 * area);
    assert!((time / 1000.0 - 1.0).abs() < 1e-3, "{found} K after {time} s");
}

fn grip(history: &HeatHistory<'_>) -> f64 {
    history.stages()[0].grip.unwrap().get::<second>()
}

/// A ring on one side grips earlier; a shoulder that conducts brings the two together earlier; local touch comes before
/// the mean clearance is gone.
#[test]
fn what_conducts_more_grips_earlier() {
    let (model, air) = (coarse(&reference_section(52.0)), film(10.0, 20.0));
    let conduction = Conduction::new(&model, &[steel(), aluminium()]).unwrap();
    let run = |placement, growth, shoulder: Option<f64>| {
        let mut stage = seated(&air, (mm(0.03), gap(placement), growth), 60.0);
        let conductance = shoulder.map(HeatTransfer::new::<watt_per_square_meter_kelvin>);
        stage.seating.iter_mut().for_each(|seating| seating.shoulder = conductance);
        let start = conduction.uniform(&[celsius(-190.0), celsius(20.0)]).unwrap();
        conduction.run(&start, &[stage]).unwrap()
    };
    let concentric = run(Placement::Concentric, Growth::Local, None);
    let one_side = grip(&run(Placement::OneSide, Growth::Local, None));
    let shoulder = run(Placement::Concentric, Growth::Local, Some(3000.0));
    assert!(one_side < 0.7 * grip(&concentric), "{one_side} s and {} s", grip(&concentric));
    assert!(grip(&shoulder) < 0.9 * grip(&concentric), "{} s and {} s", grip(&shoulder), grip(&concentric));
    let times = concentric.stages()[0];
    let touch = times.first_touch.unwrap().get::<second>();
    assert!(touch < grip(&concentric) && touch > 0.5 * grip(&concentric), "{times:?}");
    let at_touch = concentric.clearance(0, mm(0.03), Growth::Local, times.first_touch.unwrap()).unwrap();
    assert!(in_mm(at_touch.least).abs() < 2e-4 && in_mm(at_touch.mean) > 1e-3, "{at_touch:?}");
    for history in [&concentric, &shoulder] {
        let balance = history.balance(0).unwrap();
        assert!((balance.missing / balance.gained[0]).get::<ratio>().abs() < 1e-3, "{balance:?}");
        assert!(balance.gained[0].get::<joule>() > 5000.0 && balance.gained[1].get::<joule>() < -5000.0);
    }
}

/// Betti's theorem: the mean growth of a plain tube is that of its mean temperature, however uneven it is.
#[test]
fn a_plain_tube_grows_by_its_mean_temperature() {
    let section = rows::plain(rows::ring(0.0, None), rows::housing(90.0, 0.0, rows::open()));
    let apart = |model: Model| {
        let conduction = Conduction::new(&model, &[steel(), aluminium()]).unwrap();
        let (hot, cold) = (film(2000.0, 150.0), film(500.0, -72.0));
        let faces = Faces::all(FaceLaw::Exposed(&cold)).with(Face::Back, FaceLaw::Exposed(&hot));
        let start = conduction.uniform(&[celsius(20.0); 2]).unwrap();
        let history = conduction.run(&start, &[stage(faces, 5.0)]).unwrap();
        let ring = history.part(0, seconds(5.0)).unwrap();
        assert!(in_celsius(ring.most) - in_celsius(ring.least) > 40.0, "{ring:?}");
        let [local, mean] =
            [Growth::Local, Growth::Mean].map(|growth| history.clearance(0, mm(0.0), growth, seconds(5.0)).unwrap());
        assert!(in_mm(local.mean - local.least).abs() > 1e-3, "{local:?}");
        (in_mm(local.mean) - in_mm(mean.mean)).abs()
    };
    // Exact for a tube, whose stress under a pressure has the same trace everywhere; elements hold its 1/r² as a parabola, to a
    // thousandth of a micrometre, and smaller ones better.
    let (coarse, normal) = (apart(coarse(&section)), apart(rows::model(&section)));
    assert!(coarse < 1e-6 && normal < coarse / 2.0, "{coarse} {normal}");
}

/// Largest tension and largest von Mises stress of a disc with steady radial heat flow, as shares of the exact ones: hoop
/// stress at the cold outside and at the hot bore (S. P. Timoshenko and J. N. Goodier, "Theory of Elasticity", art. 151 of
/// the 3rd edition, from memory, for a thin disc).
fn disc(accuracy: Accuracy) -> [f64; 2] {
    // Thirty times the slowest time constant, L²/(π² a) = 4 s with 21 mm and 1.1e-5 m²/s: steady to 1e-13.
    const LASTING_S: f64 = 120.0;
    let (a, b) = (10.0_f64, 31.0_f64);
    let disc = RingSection { bore: mm(2.0 * a), width: mm(1.0), ..rows::ring(0.0, None) };
    let model = Model::new(&rows::plain(disc, rows::housing(90.0, 0.0, rows::open())), accuracy).unwrap();
    let conduction = Conduction::new(&model, &[steel(), aluminium()]).unwrap();
    let (hot, cold) = (film(1e6, 120.0), film(1e6, 20.0));
    let faces = Faces::all(FaceLaw::Insulated)
        .with(Face::Inside, FaceLaw::Exposed(&hot))
        .with(Face::Outside, FaceLaw::Exposed(&cold));
    let start = conduction.uniform(&[celsius(70.0); 2]).unwrap();
    let history = conduction.run(&start, &[stage(faces, LASTING_S)]).unwrap();
    let end = history.part(0, seconds(LASTING_S)).unwrap();
    let span = in_celsius(end.inside.unwrap()) - in_celsius(end.outside);
    assert!((span - 100.0).abs() < 0.5, "{span}");
    let log = (b / a).ln();
    let scale = 208e3 * 12.5e-6 * span / (2.0 * log);
    let hoop = [a, b].map(|far| scale * (1.0 - 2.0 * far * far / (b * b - a * a) * log));
    let stress = history.thermal_stress(0, seconds(LASTING_S)).unwrap();
    let brittle = Strength::Brittle { tensile: Pressure::new::<megapascal>(hoop[0]) };
    let ductile = Strength::Ductile { proof: Pressure::new::<megapascal>(-hoop[1]) };
    [brittle, ductile].map(|strength| stress.share_of(strength).unwrap().get::<ratio>())
}

/// At the bore stress is steepest: the error there is 2 % at normal accuracy, and shrinks with the square of the elements.
#[test]
fn uneven_heat_stresses_a_disc_as_the_closed_form_says() {
    let [normal, fine] = [Accuracy::Normal, Accuracy::Fine].map(disc);
    assert!((normal[0] - 1.0).abs() < 0.01 && (fine[0] - 1.0).abs() < 0.01, "{normal:?} {fine:?}");
    assert!((normal[1] - 1.0).abs() < 0.03 && (fine[1] - 1.0).abs() < 0.01, "{normal:?} {fine:?}");
    assert!((fine[1] - 1.0).abs() < 0.5 * (normal[1] - 1.0).abs(), "{normal:?} {fine:?}");
}

#[test]
fn quenching_is_hardest_soon_and_pulls_at_the_surface() {
    let (model, bath) = (coarse(&reference_section(52.0)), film(3000.0, -72.0));
    let conduction = Conduction::new(&model, &[steel(), aluminium()]).unwrap();
    let start = conduction.uniform(&[celsius(20.0); 2]).unwrap();
    let history = conduction.run(&start, &[stage(Faces::all(FaceLaw::Exposed(&bath)), 60.0)]).unwrap();
    let brittle = Strength::Brittle { tensile: Pressure::new::<megapascal>(200.0) };
    let (when, hardest) = history.hardest_moment(0, brittle).unwrap();
    let (when, tension) = (when.get::<second>(), hardest.tension.stress.get::<megapascal>());
    assert!(when > 0.01 && when < 2.0, "{when} s");
    // Fully hindered, the whole step of 92 K would make E α ΔT/(1 - ν) = 342 MPa.
    assert!(tension > 20.0 && tension < 342.0, "{tension} MPa");
    let even = history.thermal_stress(0, seconds(60.0)).unwrap();
    assert!(even.von_mises.stress.get::<megapascal>() < 0.1 * tension, "{even:?}");
}

#[test]
fn what_cannot_be_is_refused_with_its_range() {
    let model = coarse(&reference_section(52.0));
    let new = |ring: Solid| Conduction::new(&model, &[ring, aluminium()]).map(|_| ()).unwrap_err().to_string();
    let negative = Solid { capacity: Property::constant(-1.0), ..steel() };
    assert!(new(negative).contains("the heat capacity is -1 J/(kg K); it must be above zero"));
    assert!(new(Solid { strain: Property::constant(f64::NAN), ..steel() }).contains("free thermal strain"));
    let one = Conduction::new(&model, &[steel()]).unwrap_err().to_string();
    assert!(one.contains("1 solids and the section needs 2"), "{one}");

    let short = Solid { capacity: Property::new(&[(250.0, 440.0), (300.0, 460.0)]).unwrap(), ..steel() };
    let conduction = Conduction::new(&model, &[short, aluminium()]).unwrap();
    let start = conduction.uniform(&[celsius(20.0); 2]).unwrap();
    let bath = film(300.0, -72.0);
    let run = |stages: &[Stage<'_>]| conduction.run(&start, stages).map(|_| ()).unwrap_err().to_string();
    let left = run(&[stage(Faces::all(FaceLaw::Exposed(&bath)), 600.0)]);
    assert!(
        left.contains("the ring reaches") && left.contains("heat capacity is known from -23.15 to 26.85"),
        "{left}"
    );
    let hot = Exposed { emissivity: 1.2, ..film(10.0, 20.0) };
    assert!(run(&[stage(Faces::all(FaceLaw::Exposed(&hot)), 1.0)]).contains("the emissivity is 1.2;"));
    let film = film(10.0, 20.0);
    let faces = Faces::all(FaceLaw::Exposed(&film));
    assert!(run(&[stage(faces, 0.0)]).contains("the length of a stage is 0 s; it must be above zero"));
    assert!(run(&[stage(faces, f64::INFINITY)]).contains("length of a stage"));
    let open = |_: f64, _: f64| f64::NAN;
    assert!(run(&[stage(Faces::all(FaceLaw::Flux(&open)), 1.0)]).contains("flux of a face"));
    let breaks = |_: f64, time: f64| if time > 1.0 { f64::NAN } else { 0.0 };
    let stopped = run(&[stage(Faces::all(FaceLaw::Flux(&breaks)), 5.0)]);
    assert!(stopped.contains("cannot be followed beyond 1.0000") || stopped.contains("beyond 0.99"), "{stopped}");
    let alone = Stage { around: vec![faces], seating: None, until: Until::Elapsed(seconds(1.0)) };
    assert!(run(&[alone]).contains("1 lists of faces"));
    let wide = seated(&film, (mm(2.0), gap(Placement::Concentric), Growth::Mean), 1.0);
    assert!(run(&[wide]).contains("the interference is 2 mm; it must be from -62 to 1.24 mm"));

    let history = conduction.run(&start, &[stage(faces, 10.0)]).unwrap();
    let beyond = history.part(0, seconds(11.0)).unwrap_err().to_string();
    assert!(beyond.contains("the time is 11 s; this history holds 0 to 10 s"), "{beyond}");
    assert!(history.part(2, seconds(1.0)).unwrap_err().to_string().contains("the part is 2"));
    let zero = conduction.uniform(&[celsius(-300.0), celsius(20.0)]).unwrap_err().to_string();
    assert!(zero.contains("temperature at the start"), "{zero}");
}
