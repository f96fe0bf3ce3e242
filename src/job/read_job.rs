//! The tables of a job in the order in which they lean on one another: shop, what goes in, seats, what is done, what runs beside.

use super::model::{self, Bench, Heading, Housing, Job, Part, Press, ServiceState, Shaft, Treatment};
use super::section::{Notes, Section, flatten};
use super::{
    Fasteners, Inspection, Seal, Stack, reach, read_fasteners, read_inspection, read_material, read_media, read_part,
    read_press, read_scatter, read_seal, read_seats, read_shop, read_stack, read_treatment, scatter, smell,
    usual_system,
};
use crate::quantity::{AngularVelocity, Length, TemperatureInterval, ThermodynamicTemperature};
use crate::stock::Library;
use crate::stock::material::Material;
use crate::stock::medium::{Direction, Medium};

/// What goes in, and what it goes into.
struct Seats {
    part: Part,
    housing: Option<Housing>,
    shaft: Option<Shaft>,
    fasteners: Option<Fasteners>,
}

/// What presses, in what shop.
struct Shop {
    press: Option<Press>,
    bench: Option<Bench>,
    media: Option<Vec<Medium>>,
}

/// How it runs; outer `None` where a value was refused.
struct Running {
    ring_difference: Option<Option<(TemperatureInterval, TemperatureInterval)>>,
    speed: Option<Option<AngularVelocity>>,
    service: Vec<ServiceState>,
}

/// What goes together with the bearing; outer `None` where it was refused.
struct Beside {
    inspection: Option<Option<Inspection>>,
    seal: Option<Option<Seal>>,
    stack: Option<Option<Stack>>,
}

/// The whole job. Reading goes on after a mistake wherever nothing leans on what was refused.
pub(super) fn job(top: &Section<'_>, library: &Library, notes: &mut Notes) -> Option<Job> {
    let heading = heading(top, notes);
    let bench_section = top.section("bench", &read_shop::BENCH_KEYS, notes);
    let shop = read_shop::shop_temperature(bench_section.as_ref(), notes);
    let housing = top.section("housing", &read_seats::HOUSING_KEYS, notes);
    let shaft = top.section("shaft", &read_seats::SHAFT_KEYS, notes);
    if !top.has("housing") && !top.has("shaft") {
        notes.problem(top.at.clone(), "there is no seat", "describe a [housing], a [shaft], or both");
    }
    top.missing("bearing", "describe what goes in under [bearing]", notes);
    let wanted = read_part::Wanted { housing: housing.is_some(), shaft: shaft.is_some(), shop };
    let part = top
        .section("bearing", &read_part::KEYS, notes)
        .and_then(|section| read_part::part(&section, &wanted, library, notes));
    let chill = treatment(top, "chill", Direction::Chill, &wanted, library, notes);
    let warm = treatment(top, "warm", Direction::Warm, &wanted, library, notes);
    let Some(seats) = seats(top, part, (housing.as_ref(), shaft.as_ref(), shop), library, notes) else {
        alone(top, bench_section.as_ref(), [housing.as_ref(), shaft.as_ref()], shop, library, notes);
        return None;
    };
    let around = around(top, &seats, (bench_section.as_ref(), shop), library, notes)?;
    let running = running(top, &seats.part, notes);
    let beside = beside(top, &seats.part, (seats.housing.is_some(), seats.shaft.is_some()), notes);
    let (chill, warm) = (flatten(chill)?, flatten(warm)?);
    let drawn = scattered(top, &seats, notes);
    reachable(top, &seats, [("chill", chill.as_ref()), ("warm", warm.as_ref())], &running.service, notes);
    let Seats { part, housing, shaft, fasteners } = seats;
    smell::fits(top, &part, housing.as_ref(), shaft.as_ref(), notes);
    Some(Job {
        heading,
        part,
        housing,
        shaft,
        seal: beside.seal?,
        stack: beside.stack?,
        chill,
        warm,
        bench: around.bench?,
        media: around.media?,
        press: around.press?,
        service: running.service,
        speed: running.speed?,
        ring_difference: running.ring_difference?,
        fasteners,
        inspection: beside.inspection?,
        scatter: flatten(drawn)?,
        system: usual_system(notes),
        entries: Vec::new(),
        assumptions: Vec::new(),
        _sealed: model::Sealed,
    })
}

/// What leans on no seat, read for its own mistakes where there is none that is sound; what was told before is told once.
fn alone(
    top: &Section<'_>,
    bench: Option<&Section<'_>>,
    seats: [Option<&Section<'_>>; 2],
    shop: ThermodynamicTemperature,
    library: &Library,
    notes: &mut Notes,
) {
    // The size sets a default alone, which no one will see.
    read_shop::bench(bench, shop, Length::default(), library, notes);
    if let Some(section) = top.section("shop", &read_media::KEYS, notes) {
        read_media::media(&section, library, notes);
    }
    for section in seats.into_iter().flatten().filter(|section| section.has("material")) {
        read_material::material_at(section, "material", library, notes);
    }
}

fn seats(
    top: &Section<'_>,
    part: Option<Part>,
    (housing, shaft, shop): (Option<&Section<'_>>, Option<&Section<'_>>, ThermodynamicTemperature),
    library: &Library,
    notes: &mut Notes,
) -> Option<Seats> {
    // The screws are read even where the seat is none, so that all mistakes come in one run.
    let cover = |into: Option<&Material>, notes: &mut Notes| {
        top.section("fasteners", &read_fasteners::keys(), notes)
            .map(|section| read_fasteners::fasteners(&section, into, library, notes))
    };
    let Some(part) = part else {
        cover(None, notes);
        return None;
    };
    let housing = housing.map(|section| read_seats::housing(section, &part, shop, library, notes));
    let shaft = shaft.map(|section| read_seats::shaft(section, &part, shop, library, notes));
    let fasteners = cover(housing.as_ref().and_then(Option::as_ref).map(|housing| &housing.material), notes);
    let described = (housing.is_some(), shaft.is_some());
    match (flatten(housing), flatten(shaft), flatten(fasteners)) {
        (Some(housing), Some(shaft), Some(fasteners)) => Some(Seats { part, housing, shaft, fasteners }),
        _ => {
            // For what is wrong there too.
            beside(top, &part, described, notes);
            None
        }
    }
}

fn around(
    top: &Section<'_>,
    seats: &Seats,
    (bench, shop): (Option<&Section<'_>>, ThermodynamicTemperature),
    library: &Library,
    notes: &mut Notes,
) -> Option<Shop> {
    let pair = match (&seats.housing, &seats.shaft) {
        (Some(housing), _) => read_press::Pair { inner: &seats.part.material, outer: housing.bore_material() },
        (None, Some(shaft)) => read_press::Pair { inner: &shaft.material, outer: &seats.part.material },
        (None, None) => return None,
    };
    let press_section = top.section("press", &read_press::press_keys(), notes);
    let press = read_press::press(press_section.as_ref(), &pair, notes);
    let bench = read_shop::bench(bench, shop, seats.part.outside, library, notes);
    let media =
        top.section("shop", &read_media::KEYS, notes).map(|section| read_media::media(&section, library, notes));
    Some(Shop { press, bench, media: flatten(media).map(Option::unwrap_or_default) })
}

fn running(top: &Section<'_>, part: &Part, notes: &mut Notes) -> Running {
    let section = top.section("service", &read_shop::SERVICE_KEYS, notes);
    let ring_difference = section.as_ref().map(|section| read_shop::ring_difference(section, part.kind, notes));
    let speed = section.as_ref().map(|section| read_shop::speed(section, notes));
    let service = section.map_or_else(Vec::new, |section| read_shop::service(&section, part, notes));
    Running {
        ring_difference: flatten(ring_difference).map(Option::flatten),
        speed: flatten(speed).map(Option::flatten),
        service,
    }
}

fn beside(top: &Section<'_>, part: &Part, (housing, shaft): (bool, bool), notes: &mut Notes) -> Beside {
    let has = read_inspection::Has { shaft, seal: top.has("seal") };
    let inspection = top
        .section("inspection", &read_inspection::KEYS, notes)
        .map(|section| read_inspection::inspection(&section, part, &has, notes));
    let seal = top
        .section("seal", &read_seal::KEYS, notes)
        .map(|section| read_seal::seal(&section, &read_seal::Beside { part, housing }, notes));
    let stack = top
        .section("stack", &read_stack::KEYS, notes)
        .map(|section| read_stack::stack(&section, &read_stack::Place { part, housing }, notes));
    Beside { inspection: flatten(inspection), seal: flatten(seal), stack: flatten(stack) }
}

/// Holds every temperature that the job leads to against the tables of what reaches it.
fn reachable(
    top: &Section<'_>,
    seats: &Seats,
    treated: [(&str, Option<&Treatment>); 2],
    service: &[ServiceState],
    notes: &mut Notes,
) {
    let Seats { part, housing, shaft, .. } = seats;
    let pieces = reach::Pieces { part, housing: housing.as_ref(), shaft: shaft.as_ref() };
    for (key, treatment) in treated {
        if let Some(treatment) = treatment {
            reach::treatment(top, key, treatment, &pieces, notes);
        }
    }
    reach::service(top, service, &pieces, notes);
    reach::measured(&top.place("bearing"), part.outside_size.as_ref(), &part.material, notes);
    reach::measured(&top.place("bearing"), part.bore_size.as_ref(), &part.material, notes);
    if let Some(housing) = housing {
        for material in housing.materials() {
            reach::measured(&top.place("housing"), Some(&housing.size), material, notes);
        }
    }
    if let Some(shaft) = shaft {
        reach::measured(&top.place("shaft"), Some(&shaft.size), &shaft.material, notes);
    }
}

fn treatment(
    top: &Section<'_>,
    key: &str,
    direction: Direction,
    wanted: &read_part::Wanted,
    library: &Library,
    notes: &mut Notes,
) -> Option<Option<Treatment>> {
    let section = top.section(key, &read_treatment::KEYS, notes)?;
    let asked = read_treatment::Asked { direction, housing: wanted.housing, shaft: wanted.shaft, shop: wanted.shop };
    Some(read_treatment::treatment(&section, &asked, library, notes))
}

/// How the quantities scatter, where the job says so.
fn scattered(top: &Section<'_>, seats: &Seats, notes: &mut Notes) -> Option<Option<scatter::Scatter>> {
    let section = top.section("scatter", &read_scatter::KEYS, notes)?;
    let found = read_scatter::scatter(&section, notes);
    let outside = seats.housing.as_ref().map(|_| seats.part.outside);
    let bore = seats.part.bore.filter(|_| seats.shaft.is_some());
    let nominals = [("outside", outside), ("bore", bore), ("housing", outside), ("shaft", bore)];
    if let Some(found) = &found {
        read_scatter::fits(&section, found, &nominals, notes);
    }
    Some(found)
}

pub(super) fn heading(top: &Section<'_>, notes: &mut Notes) -> Heading {
    let mut read =
        |key: &str| top.words(key, "write it as text in quotes", notes).map(|words| words.text.trim().to_owned());
    Heading {
        title: read("title").unwrap_or_default(),
        reference: read("reference"),
        revision: read("revision"),
        prepared_by: read("prepared_by"),
        date: read("date"),
        notes: read("notes"),
    }
}
