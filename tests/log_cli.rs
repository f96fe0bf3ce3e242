//! `seatwise log`: known films from noisy readings, a published cooling curve, and readings that are wrong.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

mod binary;

use binary::{done, run};
use seatwise::job::{self, Job};
use seatwise::plan::log::{self, LogPlan, NoFilm, NoMedium};
use seatwise::stock::Library;
use std::fmt::Write as _;
use std::fs;
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::temperature_interval::kelvin;
use uom::si::time::second;

/// A plug of constant properties, warmed in oil: nothing radiates, so the closed form of one body is exact.
const PLUG: &str = r#"
[bearing]
kind = "solid plug"
outside = "40 mm"
width = "60 mm"
outside_limits = "k6"
material = "carbon-steel"
[housing]
bore_limits = "H7"
outside = "80 mm"
length = "60 mm"
material = { name = "test iron", family = "cast iron", density = "7200 kg/m3", modulus = "110 GPa", poisson = "0.26", strength = "250 MPa", expansion = "11 um/mK", heat_capacity = "500 J/kgK", conductivity = "50 W/mK", coldest = "-50 °C", hottest = "300 °C" }
[warm]
part = "housing"
medium = "oil-bath"
temperature = "120 °C"
hold = "20 min"
"#;

fn checked(text: &str) -> Job {
    job::check(text, &Library::default()).unwrap_or_else(|problems| panic!("{problems}"))
}

fn compared<'j>(job: &'j Job, readings: &str) -> LogPlan<'j> {
    let readings = job::check_log(readings, job).unwrap_or_else(|problems| panic!("{problems}"));
    log::compare(job, &readings).unwrap()
}

fn film(plan: &LogPlan<'_>) -> f64 {
    plan.pieces[0].fitted.as_ref().unwrap().film.get::<watt_per_square_meter_kelvin>()
}

/// Noise of a deviation near one: twelve even numbers less six, from a linear congruential generator (Knuth's MMIX).
struct Noise(u64);

impl Noise {
    fn even(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }
}

/// Temperature of the boss of [`PLUG`] in oil, by hand: `θ = exp(-t h A / (m c (1 + h L / (3 k))))`, with the faces of a tube
/// and the flow of heat through half its wall from both sides.
fn boss_c(seconds: f64, film: f64) -> f64 {
    let (inside, outside, length) = (0.040, 0.080, 0.060);
    let end = std::f64::consts::PI / 4.0 * (outside * outside - inside * inside);
    let area = std::f64::consts::PI * (outside + inside) * length + 2.0 * end;
    let volume = end * length;
    let biot = film * (volume / area) / 50.0;
    120.0 - 100.0 * (-seconds * film * area / (7200.0 * 500.0 * volume * (1.0 + biot / 3.0))).exp()
}

#[test]
fn a_known_film_comes_back_from_noisy_readings() {
    let job = checked(PLUG);
    for (film_known, seed) in [(80.0, 1), (80.0, 2), (150.0, 3), (300.0, 4)] {
        let mut noise = Noise(seed);
        let mut text = "time,part,value\n0 s,housing,20 °C\n".to_owned();
        for step in 1..=40 {
            let time = f64::from(step) * 15.0;
            writeln!(text, "{time} s,housing,{:.2} °C", boss_c(time, film_known) + 0.4 * noise.normal()).unwrap();
        }
        let plan = compared(&job, &text);
        let found = film(&plan);
        assert!((found / film_known - 1.0).abs() < 0.03, "{film_known} W/m²K came back as {found}");
        let fitted = plan.pieces[0].fitted.as_ref().unwrap();
        assert!(
            (0.2..0.7).contains(&fitted.off.root_mean_square.get::<kelvin>()),
            "the noise of 0.4 K is what is left"
        );
        assert!(fitted.halves.is_none() && !fitted.unbounded, "one film describes it");
    }
}

#[test]
fn two_films_one_after_the_other_come_back_as_two_and_two_that_are_nearly_one_as_one() {
    let job = checked(PLUG);
    let compare = |(early, late): (f64, f64), readings: u32| {
        let mut noise = Noise(5);
        let mut text = "time,part,value\n0 s,housing,20 °C\n".to_owned();
        let split = 20.0 * 15.0;
        for step in 1..=readings {
            let time = f64::from(step) * 600.0 / f64::from(readings);
            // What is left of 100 K, in the first film and then in the second.
            let left = |time: f64, film: f64| (120.0 - boss_c(time, film)) / 100.0;
            let kelvins = 100.0 * left(time.min(split), early) * left((time - split).max(0.0), late);
            writeln!(text, "{time} s,housing,{:.3} °C", 120.0 - kelvins + 0.1 * noise.normal()).unwrap();
        }
        let halves = compared(&job, &text).pieces[0].fitted.as_ref().unwrap().halves;
        halves.map(|(early, late)| [early, late].map(|film| film.get::<watt_per_square_meter_kelvin>()))
    };
    for films in [(160.0, 80.0), (80.0, 160.0)] {
        let [early, late] = compare(films, 40).expect("one film does not describe it");
        assert!(
            (early / films.0 - 1.0).abs() < 0.05 && (late / films.1 - 1.0).abs() < 0.05,
            "{early} {late} of {films:?}"
        );
    }
    // A quarter either way is worth telling, a tenth is not.
    assert_eq!(compare((100.0, 110.0), 40), None);
    assert_eq!(compare((100.0, 100.0), 40), None);
    // Two readings bear no film of their own; three do.
    assert_eq!(compare((160.0, 80.0), 4), None);
    assert!(compare((160.0, 80.0), 6).is_some());
}

#[test]
fn a_kept_film_is_the_fitted_curve_and_sizes_say_the_same_as_temperatures() {
    let text = fs::read_to_string("examples/pump-case.toml").unwrap();
    let job = checked(&text);
    let truth = checked(&job::put(&text, "chill.film", "14 W/m²K").unwrap());
    let rows =
        "time,part,value\n5 min,bearing,15 °C\n10 min,bearing,10 °C\n20 min,bearing,5 °C\n40 min,bearing,-5 °C\n";
    let curve = compared(&truth, rows);
    let mut read = "time,part,value\n".to_owned();
    let mut sized = "time,part,value\n0 s,bearing,61.9960 mm\n".to_owned();
    let expansion = truth.part.material.expansion();
    let at = |kelvins: f64| 1.0 + expansion.at(kelvins).unwrap();
    for point in curve.pieces[0].curve.iter().skip(8).step_by(8) {
        let (time, kelvins) = (point.time.get::<second>(), point.expected[1].value);
        writeln!(read, "{time} s,bearing,{:.3} °C", kelvins - 273.15).unwrap();
        writeln!(sized, "{time} s,bearing,{:.6} mm", 61.996 * at(kelvins) / at(truth.bench.temperature.value)).unwrap();
    }
    for (what, text) in [("temperatures", read), ("sizes", sized)] {
        let plan = compared(&job, &text);
        let found = film(&plan);
        assert!((found - 14.0).abs() < 0.05, "{what}: {found}");
        assert!(plan.pieces[0].fitted.as_ref().unwrap().off.root_mean_square.get::<kelvin>() < 0.02, "{what}");
    }
}

/// Readings tell a film from a change of two kelvins on, either way, and not where something else than a film decides.
#[test]
fn readings_that_hardly_change_and_films_that_do_not_decide_give_no_film() {
    let job = checked(PLUG);
    let fitted = |last: f64| {
        let rows = format!(
            "time,part,value\n0 s,housing,20 °C\n20 s,housing,20.5 °C\n30 s,housing,20.6 °C\n40 s,housing,20.7 °C\n60 s,housing,{last} °C\n"
        );
        compared(&job, &rows).pieces.remove(0).fitted.map(|found| found.unbounded)
    };
    assert!(matches!(fitted(21.99), Err(NoFilm::Still)) && matches!(fitted(20.5), Err(NoFilm::Still)));
    assert!(fitted(22.01).is_ok() && fitted(40.0).is_ok());
    let cold = "[chill]\npart = \"plug\"\nmedium = \"liquid-nitrogen\"\nhold = \"5 min\"\n";
    let boiling = checked(&(PLUG.split_once("[warm]").unwrap().0.to_owned() + cold));
    let rows = "time,part,value\n0 s,plug,20 °C\n20 s,plug,10 °C\n30 s,plug,0 °C\n40 s,plug,-9 °C\n60 s,plug,-20 °C\n";
    assert!(matches!(compared(&boiling, rows).pieces.remove(0).fitted, Err(NoFilm::Boiling)));
}

/// Aluminium cylinder in iced water: data posted by A. Kaw, University of South Florida, 2008-07-03 (opened); its lumped films
/// of 1700 and 1100 W/m²K in the first ten seconds and 140 to 550 after stand beside it, 539 of all (derived).
#[test]
fn the_published_curve_of_a_cylinder_in_iced_water_is_told_to_be_no_one_film() {
    let job = checked(
        r#"
[bearing]
kind = "solid plug"
outside = "44.57 mm"
width = "105.47 mm"
outside_limits = "0/0 um"
material = { name = "aluminium", family = "light alloy", density = "2700 kg/m3", modulus = "70 GPa", poisson = "0.33", strength = "160 MPa", expansion = "23 um/mK", heat_capacity = "901 J/kgK", conductivity = "240 W/mK", coldest = "-100 °C", hottest = "150 °C" }
[housing]
bore_limits = "0/0 um"
outside = "90 mm"
material = "carbon-steel"
[chill]
part = "plug"
medium = "dry-ice-alcohol"
film = "539 W/m²K"
hold = "1 min"
"#,
    );
    // No medium of the library is water at 1.1 °C: the library's own value is replaced for this comparison.
    let mut job = job;
    job.chill.as_mut().unwrap().temperature = seatwise::quantity::celsius(1.1);
    let rows = fs::read_to_string("tests/reference/thermal/iced_water.csv").unwrap();
    let plan = compared(&job, &rows);
    let piece = &plan.pieces[0];
    let fitted = piece.fitted.as_ref().unwrap();
    let (early, late) = fitted.halves.expect("one film does not describe it");
    let [early, late] = [early, late].map(|film| film.get::<watt_per_square_meter_kelvin>());
    assert!((140.0..550.0).contains(&late) && early > 2.0 * late, "earlier {early}, later {late}");
    assert!((539.4 / 2.0..539.4 * 2.0).contains(&film(&plan)), "within a factor of two of the published fit");
    assert!(fitted.off.root_mean_square.get::<kelvin>() > 0.5, "and it is not said to be good");
}

#[test]
fn the_example_is_told_drawn_and_kept() {
    let folder = tempfile::tempdir().unwrap();
    let name = |file: &str| folder.path().join(file).to_str().unwrap().to_owned();
    let (plot, kept) = (name("log.svg"), name("kept.toml"));
    let (pump, readings) = ("examples/pump-case.toml", "examples/pump-case-readings.csv");
    let out = done(&["log", pump, readings, "--plot", &plot, "--keep", &kept]);
    insta::assert_snapshot!(out);
    let svg = fs::read_to_string(&plot).unwrap();
    assert!(svg.contains("Readings: 300 s 13.4 °C"), "the description holds the readings");
    let (before, after) = (fs::read_to_string(pump).unwrap(), fs::read_to_string(&kept).unwrap());
    assert_eq!(after.lines().filter(|line| !before.contains(line)).count(), 1, "one line is new: {after}");
    let json: serde_json::Value = serde_json::from_str(&done(&["log", pump, readings, "--format", "json"])).unwrap();
    assert_eq!(json["format"], "seatwise.log/1");
    let found = json["parts"][0]["film_w_m2k"].as_f64().unwrap();
    assert!(out.contains(&format!("film = \"{found:.2} W/m²K\"")), "{found}");
    // With the kept film the readings are what is expected.
    let json: serde_json::Value = serde_json::from_str(&done(&["log", &kept, readings, "--format", "json"])).unwrap();
    assert!(json["parts"][0]["expected_off"]["root_mean_square_k"].as_f64().unwrap() < 0.2);
    assert_eq!(done(&["log", pump, readings, "--format", "csv"]).lines().count(), 11);
}

/// A freezer that was read becomes a medium of the shop's own, for other jobs too.
#[test]
fn the_fitted_film_is_kept_as_a_medium_of_the_shop_and_planned_with() {
    let folder = tempfile::tempdir().unwrap();
    let medium = folder.path().join("Our freezer.toml").to_str().unwrap().to_owned();
    let (pump, readings) = ("examples/pump-case.toml", "examples/pump-case-readings.csv");
    let json: serde_json::Value =
        serde_json::from_str(&done(&["log", pump, readings, "--format", "json", "--keep-medium", &medium])).unwrap();
    let shown = done(&["media", "our freezer", "--medium", &medium]);
    assert!(shown.contains("our-freezer") && shown.contains("film fitted to"), "{shown}");
    assert!(done(&["media", "--medium", &medium]).contains("our-freezer"), "it stands in the list");
    let job = fs::read_to_string(pump).unwrap().replace("medium = \"domestic-freezer\"", "medium = \"our freezer\"");
    let other = folder.path().join("other.toml");
    fs::write(&other, job).unwrap();
    let other = other.to_str().unwrap();
    let plan: serde_json::Value =
        serde_json::from_str(&done(&["plan", other, "--medium", &medium, "--format", "json"])).unwrap();
    let chill = &plan["seats"][0]["chill"];
    assert_eq!(chill["medium"], "our-freezer");
    // The plan takes the slow end of the fitted range.
    let (film, found) = (chill["film_w_m2k"].as_f64().unwrap(), json["parts"][0]["film_w_m2k"].as_f64().unwrap());
    assert!(film <= found && film > 0.8 * found, "{film} {found}");
    assert!(plan["sources"].to_string().contains("film fitted to"), "the plan names where the film comes from");
    // Nobody knows it without the file, and a file that is none is shown at its place.
    let unknown = run(&["plan", other], "");
    assert!(unknown.code == 2 && unknown.err.contains("our freezer"), "{}", unknown.err);
    let wrong = run(&["plan", other, "--medium", pump], "");
    assert!(wrong.code == 2 && wrong.err.contains("--keep-medium"), "{}", wrong.err);
}

#[test]
fn what_cannot_be_kept_as_a_medium_says_why_and_what_to_do() {
    for (why, said, help) in [
        (NoMedium::NoFilm, "no fitted film", "--keep-medium"),
        (NoMedium::Unbounded, "do not bound the film", "read more often"),
        (NoMedium::Several, "several pieces", "one piece at a time"),
    ] {
        assert!(why.to_string().contains(said) && why.help().contains(help), "{why}: {}", why.help());
    }
}

/// Readings slower than any film, and quicker than any, bound none; nor is one made a medium of.
#[test]
fn readings_beyond_every_film_bound_none() {
    let job = checked(PLUG);
    let rows = |step: &str, read: [f64; 4]| {
        let row = |(k, read): (usize, f64)| format!("{} {step},housing,{read} °C\n", k + 1);
        "time,part,value\n0 s,housing,20 °C\n".to_owned() + &read.into_iter().enumerate().map(row).collect::<String>()
    };
    for (step, read, unbounded) in [
        ("h", [20.6, 21.2, 21.8, 22.4], true),
        ("min", [40.0, 56.0, 69.0, 79.0], false),
        ("s", [119.9, 119.9, 119.9, 119.9], true),
    ] {
        let plan = compared(&job, &rows(step, read));
        assert_eq!(plan.pieces[0].fitted.as_ref().unwrap().unbounded, unbounded, "{read:?} {}", film(&plan));
        assert_eq!(log::own_medium(&plan, "bath").err(), unbounded.then_some(NoMedium::Unbounded), "{read:?}");
    }
    let still = compared(&job, &rows("h", [20.1, 20.2, 20.3, 20.4]));
    assert_eq!(log::own_medium(&still, "bath").err(), Some(NoMedium::NoFilm));
    let both = checked(&format!("{PLUG}[chill]\npart = \"plug\"\nmedium = \"domestic-freezer\"\nhold = \"1 h\"\n"));
    let warmed = rows("min", [40.0, 56.0, 69.0, 79.0]);
    let rows = warmed + "0 s,plug,20 °C\n5 min,plug,15 °C\n10 min,plug,11 °C\n15 min,plug,8 °C\n20 min,plug,5 °C\n";
    assert_eq!(log::own_medium(&compared(&both, &rows), "bath").err(), Some(NoMedium::Several));
}

#[test]
fn readings_that_cannot_be_are_shown_at_their_place() {
    let four = "5 min,bearing,13 °C\n10 min,bearing,7 °C\n20 min,bearing,-1 °C\n30 min,bearing,-6 °C\n";
    for (rows, says) in [
        (four.replace("10 min", "25 min"), "put the rows of a part in order of time"),
        (four.replace("-1 °C", "30 °F difference"), "value:"),
        (four.replace("13 °C", "68 °C"), "was it the other unit"),
        (four.replace("20 min", "20 mm"), "time:"),
        (four.replace("-6 °C", "61.98 mm"), "add its row at 0 s"),
        (four.replace("30 min,bearing", "30 min,axle"), "part cannot be"),
        (four.replace("bearing", "shaft"), "neither chilled nor warmed"),
        (four.replace("30 min,bearing,-6 °C\n", ""), "a fit needs 4"),
        (four.replace("-6 °C", "NaN"), "not a finite number"),
        (four.replace("-6 °C", "-6 °C,extra"), "not as many cells"),
        (String::new(), "there are no readings"),
    ] {
        let run = run(&["log", "examples/pump-case.toml", "-"], &format!("time,part,value\n{rows}"));
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{rows}");
        assert!(run.err.contains(says) && run.err.contains("help"), "{says}: {}", run.err);
    }
    let run = run(&["log", "examples/pump-case.toml", "-"], "when,what\n1 min,bearing\n");
    assert!(run.code == 2 && run.err.contains("time, part and value are wanted"), "{}", run.err);
}

#[test]
fn gaps_are_told_and_empty_cells_are_counted() {
    let rows = "time;part;value\n5 min;bearing;13,4 °C\n8 min;bearing;\n10 min;bearing;7,6 °C\n15 min;bearing;2,9 °C\n90 min;bearing;-17 °C\n";
    let run = run(&["log", "examples/pump-case.toml", "-"], rows);
    assert_eq!(run.code, 0, "{}", run.err);
    assert!(
        run.out.contains("no reading from 15 min to 1 h 30 min") && run.out.contains("1 row without a value"),
        "{}",
        run.out
    );
}

/// A bearing on an induction heater that the job credits with 800 W: the plan has it warm within seconds.
const HEATED: &str = r#"
[bearing]
designation = "6206"
closure = "open"
[shaft]
outside_limits = "k6"
material = "carbon-steel"
[warm]
part = "bearing"
medium = "induction-heater"
until = "100 °C"
power = "800 W"
"#;

#[test]
fn a_heater_far_slower_than_planned_is_told_and_leaves_no_table() {
    let job = checked(HEATED);
    let slow = "time,part,value\n0 s,bearing,20 °C\n60 s,bearing,40 °C\n5 min,bearing,60 °C\n10 min,bearing,80 °C\n20 min,bearing,95 °C\n";
    let plan = compared(&job, slow);
    let piece = &plan.pieces[0];
    assert!(piece.behind().is_some() && piece.fitted.is_err());
    // The heater is off when the plan takes the bearing out: nothing is expected to go on warming.
    for point in &piece.points {
        let [slow, _, quick] = point.expected.map(|t| t.get::<uom::si::thermodynamic_temperature::degree_celsius>());
        assert!((99.9..100.5).contains(&slow) && (99.9..100.5).contains(&quick), "{slow} {quick}");
    }
    let text = seatwise::report::log::text(&plan, seatwise::quantity::System::Metric);
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for said in [
        "warms so slowly that it is at 95.0 °C after 20 min",
        "where the plan has 100.0 °C after 3 s",
        "power of the job",
    ] {
        assert!(text.contains(said), "{said}: {text}");
    }
    // As the plan has it, nothing is said.
    let as_planned = "time,part,value\n0 s,bearing,20 °C\n1 s,bearing,45 °C\n2 s,bearing,75 °C\n3 s,bearing,99 °C\n4 s,bearing,99 °C\n";
    assert!(compared(&job, as_planned).pieces[0].behind().is_none());
}
