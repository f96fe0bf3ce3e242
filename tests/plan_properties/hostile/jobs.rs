//! Jobs that can be read, with values of any size at their keys.

use super::outputs::{self, Fate};
use super::{JOBS, cases};
use proptest::prelude::*;
use proptest::sample::{Index, select};
use proptest::strategy::ValueTree;
use seatwise::job;
use seatwise::stock::Library;
use std::collections::BTreeMap;

/// Values of keys that no example has, or of which more is to be tried.
const VALUES: &[(&str, &str)] = &[
    ("bearing.designation", "6001"),
    ("bearing.designation", "6336 C4"),
    ("bearing.designation", "16004-2Z"),
    ("bearing.designation", "NU 210"),
    ("bearing.kind", "roller bearing"),
    ("bearing.kind", "plain bush"),
    ("bearing.kind", "solid plug"),
    ("bearing.bore", "20 mm"),
    ("bearing.outside", "400 mm"),
    ("bearing.outside", "1.25 in"),
    ("bearing.width", "12 mm"),
    ("bearing.outside_limits", "{ measured = \"61.994 mm\", within = \"2 um\", at = \"23 °C\" }"),
    ("bearing.outside_limits", "0/-13 um"),
    ("bearing.outside_limits", "ISO 492 P6"),
    ("bearing.bore_limits", "0/-10 um"),
    ("bearing.mass", "0.2 kg"),
    ("bearing.closure", "FKM contact seals"),
    ("bearing.closure", "shields"),
    ("bearing.material", "silicon-nitride"),
    ("bearing.material", "bronze"),
    ("bearing.internal_clearance", "C4"),
    ("bearing.internal_clearance", "10/25 um"),
    ("bearing.outer_ring_inside", "52 mm"),
    ("bearing.inner_ring_outside", "38 mm"),
    ("bearing.groove", "estimated"),
    ("bearing.roughness", "Rz 6.3 um"),
    ("housing.bore_limits", "P7"),
    ("housing.bore_limits", "ZC11"),
    ("housing.bore_limits", "-80/-20 um"),
    ("housing.wall", "3 mm"),
    ("housing.wall", "2 mm to 40 mm"),
    ("housing.length", "40 mm"),
    ("housing.roughness", "Ra 3.2 um"),
    ("housing.mass", "3 kg"),
    ("housing.material", "acetal"),
    ("housing.material", "magnesium-az91"),
    ("housing.material", "titanium-6al-4v"),
    ("housing.shoulder", "{ inside = \"40 mm\", wall = \"2 mm\" }"),
    ("housing.liner", "{ outside = \"70 mm\", material = \"grey-iron\", limits = \"s6\", bore_limits = \"H7\" }"),
    ("shaft.outside_limits", "p6"),
    ("shaft.inside", "12 mm"),
    ("shaft.material", "carbon-steel"),
    ("shaft.length", "25 mm"),
    ("chill.medium", "liquid-nitrogen"),
    ("chill.medium", "dry-ice"),
    ("chill.medium", "dry-ice-alcohol"),
    ("chill.part", "shaft"),
    ("chill.part", "bearing"),
    ("chill.temperature", "-40 °C"),
    ("chill.hold", "settled"),
    ("chill.hold", "1 min"),
    ("chill.film", "5 W/m2K to 25 W/m2K"),
    ("chill.wrap", "{ thickness = \"0.1 mm\", conductivity = \"0.3 W/mK\" }"),
    ("chill.wrap", "bag"),
    ("chill.until", "-10 °C"),
    ("warm.medium", "induction-heater"),
    ("warm.medium", "hot-plate"),
    ("warm.medium", "hot-oil"),
    ("warm.medium", "heat-gun"),
    ("warm.part", "bearing"),
    ("warm.part", "housing"),
    ("warm.power", "500 W"),
    ("warm.holding_power", "30 W"),
    ("warm.temperature", "150 °C"),
    ("warm.until", "110 °C"),
    ("warm.heat_capacity", "900 J/K"),
    ("warm.rests_on", "timber"),
    ("bench.film", "10 W/m2K"),
    ("bench.humidity", "95 %"),
    ("bench.elevation", "1500 m"),
    ("bench.placing_clearance", "15 um"),
    ("bench.temperature", "35 °C"),
    ("bench.carry", "5 min"),
    ("bench.room", "30 m3"),
    ("press.capacity", "10 kN"),
    ("press.means", "hydraulic press"),
    ("press.means", "arbor press"),
    ("press.means", "screw jig"),
    ("press.ram", "50 mm"),
    ("press.ram_pressure", "20 MPa"),
    ("press.condition", "dry"),
    ("press.friction", "0.08 to 0.2"),
    ("press.smoothing", "0.8"),
    ("press.thread", "M16"),
    ("press.torque", "40 N·m"),
    ("service.coldest", "-40 °C"),
    ("service.hottest", "{ part = \"120 °C\", housing = \"60 °C\" }"),
    ("service.ring_difference", "10 K"),
    ("service.speed", "12000 rpm"),
    ("inspection.run_out", "40 um"),
    ("inspection.lip_track", "0.1 mm"),
    ("scatter.draws", "500"),
    ("scatter.sizes", "normal"),
    ("stack.shim", "0.1 mm"),
    ("stack.spacer", "3 mm ±0.1 mm"),
    ("seal.pressure", "0.3 bar"),
    ("seal.size", "25x52x10"),
    ("seal.lip", "PTFE"),
    ("shop.media", "[\"domestic-freezer\", \"oven\", \"liquid-nitrogen\"]"),
];

/// One change of a job.
#[derive(Clone, Debug)]
pub enum Change {
    /// The value of another job, or of the list, at some key.
    Value(Index),
    /// The numbers of a value that the job has, by a factor.
    Scaled(Index, f64),
    /// All lengths that the job has, by a factor.
    Sized(f64),
    /// A number of no reasonable size.
    Absurd(Index, &'static str),
    /// Without a line.
    Left(Index),
}

/// Keys and values of all jobs and of the list.
fn pool() -> Vec<(String, String)> {
    let mut pool: Vec<_> = JOBS.iter().flat_map(|text| job::typed(text)).collect();
    pool.extend(VALUES.iter().map(|(key, value)| ((*key).to_owned(), (*value).to_owned())));
    pool.retain(|(key, _)| key != "notes" && key != "title");
    pool.sort();
    pool.dedup();
    pool
}

/// A value with its numbers by a factor, to five figures.
fn scaled(value: &str, factor: f64) -> String {
    let mut scaled = String::new();
    let mut rest = value;
    while let Some(from) = rest.find(|c: char| c.is_ascii_digit()) {
        let (before, number) = rest.split_at(from);
        let to = number.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(number.len());
        scaled.push_str(before);
        let in_a_word = before.ends_with(|c: char| c.is_alphanumeric());
        match number[..to].parse::<f64>() {
            Ok(number) if !in_a_word => {
                let by = number * factor;
                let places = (4.0 - by.abs().max(1e-6).log10().floor()).clamp(0.0, 6.0) as usize;
                scaled.push_str(&format!("{by:.places$}"));
            }
            _ => scaled.push_str(&number[..to]),
        }
        rest = &number[to..];
    }
    scaled + rest
}

/// What is given with a unit, not the number of a bearing or a class.
fn has_unit(value: &str) -> bool {
    value.contains(' ') && value.contains(|c: char| c.is_ascii_digit())
}

fn changed(text: String, pool: &[(String, String)], change: &Change) -> String {
    let with_unit = || job::typed(&text).into_iter().filter(|(_, value)| has_unit(value)).collect::<Vec<_>>();
    let put = |key: &str, value: &str| job::put(&text, key, value).unwrap_or_else(|_| text.clone());
    match change {
        Change::Value(which) => {
            let (key, value) = which.get(pool);
            put(key, value)
        }
        Change::Scaled(which, factor) => match with_unit().as_slice() {
            [] => text,
            own => put(&which.get(own).0, &scaled(&which.get(own).1, *factor)),
        },
        Change::Sized(factor) => {
            let is_length = |value: &str| value.ends_with(" mm") || value.ends_with(" in");
            let lengths = with_unit().into_iter().filter(|(_, value)| is_length(value));
            lengths.fold(text.clone(), |text, (key, value)| {
                job::put(&text, &key, &scaled(&value, *factor)).unwrap_or(text)
            })
        }
        Change::Absurd(which, number) => match with_unit().as_slice() {
            [] => text,
            own => {
                let (key, value) = which.get(own);
                let unit = value.split(' ').next_back().unwrap_or_default();
                put(key, &format!("{number} {unit}"))
            }
        },
        Change::Left(which) => {
            let lines: Vec<&str> = text.lines().collect();
            let out = which.index(lines.len());
            lines.iter().enumerate().filter(|(at, _)| *at != out).flat_map(|(_, line)| [*line, "\n"]).collect()
        }
    }
}

fn change() -> impl Strategy<Value = Change> {
    let absurd = select(vec!["0", "-0", "1e-9", "0.001", "-5", "1e6", "1e300", "99999999999999999999999", "0.000001"]);
    let factor = prop_oneof![3 => 0.8..1.25_f64, 2 => (-1.5..1.5_f64).prop_map(|power| 10_f64.powf(power))];
    prop_oneof![
        5 => any::<Index>().prop_map(Change::Value),
        6 => (any::<Index>(), factor).prop_map(|(which, factor)| Change::Scaled(which, factor)),
        2 => (-1.0..1.5_f64).prop_map(|power| Change::Sized(10_f64.powf(power))),
        1 => (any::<Index>(), absurd).prop_map(|(which, number)| Change::Absurd(which, number)),
        1 => any::<Index>().prop_map(Change::Left),
    ]
}

/// A job of any sizes.
pub fn job() -> impl Strategy<Value = String> {
    let pool = pool();
    (select(&JOBS[..]), proptest::collection::vec(change(), 1..7)).prop_map(move |(text, changes)| {
        changes.iter().fold(text.to_owned(), |text, change| changed(text, &pool, change))
    })
}

proptest! {
    #![proptest_config(cases(60))]

    #[test]
    fn a_job_of_any_sizes_is_planned_or_refused_with_its_reason(text in job()) {
        outputs::of(&text, &Library::default());
    }
}

proptest! {
    #![proptest_config(cases(3))]

    #[test]
    fn ways_charts_sections_and_scatter_of_a_job_of_any_sizes_stand_it_too(text in job()) {
        let library = Library::default();
        let media = ["domestic-freezer", "oven"].map(|name| library.medium(name).unwrap());
        outputs::more_of(&text, &library, &media);
    }
}

#[test]
fn the_jobs_of_any_sizes_are_neither_all_planned_nor_all_refused() {
    // Guards the properties above: a job that is refused at its first line would prove nothing of the plan.
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut seen = BTreeMap::<Fate, u32>::new();
    for _ in 0..80 {
        let text = job().new_tree(&mut runner).unwrap().current();
        *seen.entry(outputs::of(&text, &Library::default())).or_default() += 1;
    }
    let of = |fate: Fate| seen.get(&fate).copied().unwrap_or_default();
    assert!(of(Fate::Planned) >= 16 && of(Fate::Refused) >= 8, "{seen:?}");
}
