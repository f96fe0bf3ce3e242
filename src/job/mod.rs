//! Job text to a checked [`Job`]: units resolved, names looked up, every mistake with its place.
//!
//! [`check`] reads the whole text and reports every mistake, not only the first. A tolerance class is resolved here, by
//! [`crate::fit`], while its place in the text is still known.

pub mod ask;
mod entry;
mod fasteners;
mod inspection;
mod liner;
mod log;
mod model;
mod model_seal;
mod model_stack;
mod problem;
mod put;
mod reach;
mod read_axial;
mod read_designation;
mod read_fasteners;
mod read_inspection;
mod read_material;
mod read_means;
mod read_media;
mod read_medium;
mod read_part;
mod read_places;
mod read_play;
mod read_press;
mod read_readings;
mod read_ring;
mod read_scatter;
mod read_screw;
mod read_seal;
mod read_seal_seat;
mod read_seal_sizes;
mod read_seats;
mod read_shop;
mod read_size;
mod read_sizes;
mod read_stack;
mod read_stack_parts;
mod read_stack_ring;
mod read_treatment;
pub mod scatter;
mod seal_alone;
mod section;
mod smell;
mod starter;
mod treated;
mod wall;

pub use entry::{AnyValue, Assumption, Entry};
pub use fasteners::{Fasteners, ScrewGroup, Tapped};
pub use inspection::{Feel, Inspection, RemovedThrough};
pub use liner::Liner;
pub(crate) use log::treatment_of;
pub use log::{Log, PieceReadings, Reading, check_log};
pub use model::{
    Bench, FilmChoice, Heading, Hold, Housing, InternalPlay, Job, Measured, MediumStore, Part, PartKind, Piece, Press,
    PressMeans, RacewayGroove, RestsOn, RingShape, SETTLED_WITHIN_SHARE, ScrewJig, ServiceEnd, ServiceState, Shaft,
    Shoulder, Size, Treatment, Wrapping,
};
pub use model_seal::{PassesOver, Seal, SealBody, SealBore, SealLips};
pub use model_stack::{AxialSize, BearingPair, Bed, Stack, StackPart, StackRing};
pub use problem::{Problem, Problems};
pub use put::{PutError, put, typed};
pub use seal_alone::{SealJob, check_seal, is_seal_alone};
pub use starter::{STARTERS, Starter};
pub use treated::TreatmentError;

use crate::quantity::{System, ThermodynamicTemperature};
use crate::stock::Library;
use crate::stock::material::Material;
use crate::stock::medium::Direction;
use section::{Notes, Section, flatten};
use toml::de::DeTable;

/// Longest job text that is read, bytes. A job is a page of text; a larger file is not a job.
pub const LONGEST_TEXT: usize = 1_000_000;

/// Keys and tables that stand at the top of a job.
pub const KEYS: [&str; 20] = [
    "title",
    "reference",
    "revision",
    "prepared_by",
    "date",
    "notes",
    "bearing",
    "housing",
    "shaft",
    "seal",
    "stack",
    "chill",
    "warm",
    "bench",
    "shop",
    "service",
    "press",
    "fasteners",
    "inspection",
    "scatter",
];

/// Checks a job.
///
/// # Errors
/// Every mistake that was found, each with its place in `text`, the range or the choices allowed, and what to do.
///
/// # Examples
/// ```
/// use seatwise::{job, stock::Library};
/// let text = r#"
///     title = "Fan bearing"
///     [bearing]
///     designation = "6205"
///     [housing]
///     bore_limits = "N7"
///     outside = "80 mm"
///     material = "cast-aluminium"
/// "#;
/// let job = job::check(text, &Library::default())?;
/// assert_eq!(job.heading.title, "Fan bearing");
/// # Ok::<(), job::Problems>(())
/// ```
pub fn check(text: &str, library: &Library) -> Result<Job, Problems> {
    let mut notes = Notes::default();
    let job = if text.len() > LONGEST_TEXT {
        let message = format!("the text has {} bytes; a job has at most {LONGEST_TEXT}", text.len());
        notes.problem(0..0, message, "give a job file in TOML: title, [bearing], [housing] and so on");
        None
    } else {
        read(text, library, &mut notes)
    };
    if let Some(problems) = Problems::collect(std::mem::take(&mut notes.problems)) {
        return Err(problems);
    }
    job.map(|job| Job { entries: notes.entries, assumptions: notes.assumptions, ..job }).ok_or_else(|| unreadable(text))
}

/// Holds the invariant that a job that could not be read has said why.
fn unreadable(text: &str) -> Problems {
    let mut notes = Notes::default();
    notes.problem(0..text.len().min(1), "the job could not be read", "check it against the example in the README");
    Problems::collect(notes.problems).unwrap_or_else(|| unreadable(text))
}

fn read(text: &str, library: &Library, notes: &mut Notes) -> Option<Job> {
    let (table, errors) = DeTable::parse_recoverable(text);
    for error in &errors {
        let at = error.span().unwrap_or(0..0);
        notes.problem(
            at,
            format!("this is not TOML: {}", error.message()),
            "a job is lines of key = \"value\" under [tables]",
        );
    }
    if !errors.is_empty() {
        return None;
    }
    if table.get_ref().is_empty() {
        notes.problem(0..0, "the job is empty", "describe at least the [bearing] and its [housing] or [shaft]");
        return None;
    }
    let top = Section::top(text, &table, &KEYS, notes);
    sections(&top, library, notes)
}

fn sections(top: &Section<'_>, library: &Library, notes: &mut Notes) -> Option<Job> {
    let heading = heading(top, notes);
    let bench_section = top.section("bench", &read_shop::BENCH_KEYS, notes);
    let shop = read_shop::shop_temperature(bench_section.as_ref(), notes);
    let housing_section = top.section("housing", &read_seats::HOUSING_KEYS, notes);
    let shaft_section = top.section("shaft", &read_seats::SHAFT_KEYS, notes);
    if !top.has("housing") && !top.has("shaft") {
        notes.problem(top.at.clone(), "there is no seat", "describe a [housing], a [shaft], or both");
    }
    top.missing("bearing", "describe what goes in under [bearing]", notes);
    let wanted = read_part::Wanted { housing: housing_section.is_some(), shaft: shaft_section.is_some(), shop };
    let part = top
        .section("bearing", &read_part::KEYS, notes)
        .and_then(|section| read_part::part(&section, &wanted, library, notes));
    let chill = treatment(top, "chill", Direction::Chill, &wanted, library, notes);
    let warm = treatment(top, "warm", Direction::Warm, &wanted, library, notes);
    let seal_section = top.section("seal", &read_seal::KEYS, notes);
    let stack_section = top.section("stack", &read_stack::KEYS, notes);
    // The screws are read even where the seat is none, so that all mistakes come in one run.
    let cover = |into: Option<&Material>, notes: &mut Notes| {
        top.section("fasteners", &read_fasteners::keys(), notes)
            .map(|section| read_fasteners::fasteners(&section, into, library, notes))
    };
    let Some(part) = part else {
        cover(None, notes);
        return None;
    };
    let housing = housing_section.as_ref().map(|section| read_seats::housing(section, &part, shop, library, notes));
    let shaft = shaft_section.as_ref().map(|section| read_seats::shaft(section, &part, shop, library, notes));
    let fasteners = cover(housing.as_ref().and_then(Option::as_ref).map(|housing| &housing.material), notes);
    let (housing, shaft) = (flatten(housing)?, flatten(shaft)?);
    let pair = match (&housing, &shaft) {
        (Some(housing), _) => read_press::Pair { inner: &part.material, outer: housing.bore_material() },
        (None, Some(shaft)) => read_press::Pair { inner: &shaft.material, outer: &part.material },
        (None, None) => return None,
    };
    let press_section = top.section("press", &read_press::press_keys(), notes);
    let press = read_press::press(press_section.as_ref(), &pair, notes);
    let bench = read_shop::bench(bench_section.as_ref(), shop, part.outside, library, notes);
    let media =
        top.section("shop", &read_media::KEYS, notes).map(|section| read_media::media(&section, library, notes));
    let service_section = top.section("service", &read_shop::SERVICE_KEYS, notes);
    let ring_difference = service_section.as_ref().map(|section| read_shop::ring_difference(section, part.kind, notes));
    let speed = service_section.as_ref().map(|section| read_shop::speed(section, notes));
    let service = service_section.map_or_else(Vec::new, |section| read_shop::service(&section, &part, notes));
    let has = read_inspection::Has { shaft: shaft.is_some(), seal: top.has("seal") };
    let inspection = top
        .section("inspection", &read_inspection::KEYS, notes)
        .map(|section| read_inspection::inspection(&section, &part, &has, notes));
    let (fasteners, inspection) = (flatten(fasteners)?, flatten(inspection)?);
    let seal = seal_section.as_ref().map(|section| {
        read_seal::seal(section, &read_seal::Beside { part: &part, housing: housing_section.is_some() }, notes)
    });
    let place = read_stack::Place { part: &part, housing: housing_section.is_some() };
    let stack = stack_section.as_ref().map(|section| read_stack::stack(section, &place, notes));
    let (ring_difference, speed) = (flatten(ring_difference)?.flatten(), flatten(speed)?.flatten());
    let (seal, stack) = (flatten(seal)?, flatten(stack)?);
    let (chill, warm) = (flatten(chill)?, flatten(warm)?);
    let scatter = scatter(top, &part, (housing.is_some(), shaft.is_some()), notes);
    let pieces = reach::Pieces { part: &part, housing: housing.as_ref(), shaft: shaft.as_ref() };
    for (key, treatment) in [("chill", &chill), ("warm", &warm)] {
        if let Some(treatment) = treatment {
            reach::treatment(top, key, treatment, &pieces, notes);
        }
    }
    reach::service(top, &service, &pieces, notes);
    reach::measured(&top.place("bearing"), part.outside_size.as_ref(), &part.material, notes);
    reach::measured(&top.place("bearing"), part.bore_size.as_ref(), &part.material, notes);
    if let Some(housing) = &housing {
        for material in housing.materials() {
            reach::measured(&top.place("housing"), Some(&housing.size), material, notes);
        }
    }
    if let Some(shaft) = &shaft {
        reach::measured(&top.place("shaft"), Some(&shaft.size), &shaft.material, notes);
    }
    smell::fits(top, &part, housing.as_ref(), shaft.as_ref(), notes);
    Some(Job {
        heading,
        part,
        housing,
        shaft,
        seal,
        stack,
        chill,
        warm,
        bench: bench?,
        media: flatten(media)?.unwrap_or_default(),
        press: press?,
        service,
        speed,
        ring_difference,
        fasteners,
        inspection,
        scatter: flatten(scatter)?,
        system: usual_system(notes),
        entries: Vec::new(),
        assumptions: Vec::new(),
        _sealed: model::Sealed,
    })
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
    let shop: ThermodynamicTemperature = wanted.shop;
    let asked = read_treatment::Asked { direction, housing: wanted.housing, shaft: wanted.shaft, shop };
    Some(read_treatment::treatment(&section, &asked, library, notes))
}

/// How the quantities scatter, where the job says so.
fn scatter(
    top: &Section<'_>,
    part: &Part,
    (housing, shaft): (bool, bool),
    notes: &mut Notes,
) -> Option<Option<scatter::Scatter>> {
    let section = top.section("scatter", &read_scatter::KEYS, notes)?;
    let found = read_scatter::scatter(&section, notes);
    let (outside, bore) = (Some(part.outside), part.bore);
    let nominals = [
        ("outside", outside.filter(|_| housing)),
        ("bore", bore.filter(|_| shaft)),
        ("housing", outside.filter(|_| housing)),
        ("shaft", bore.filter(|_| shaft)),
    ];
    if let Some(found) = &found {
        read_scatter::fits(&section, found, &nominals, notes);
    }
    Some(found)
}

fn heading(top: &Section<'_>, notes: &mut Notes) -> Heading {
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

/// The system in which most sizes were typed; where they leave it open, that of most quantities. A material's values come
/// from a data sheet, often metric in an inch shop, and must not outvote the sizes.
fn usual_system(notes: &Notes) -> System {
    let lead = |counts: fn(&Entry) -> bool| {
        let typed_in =
            |system| notes.entries.iter().filter(|entry| counts(entry) && entry.system == Some(system)).count();
        typed_in(System::Inch).cmp(&typed_in(System::Metric))
    };
    let is_size =
        |entry: &Entry| matches!(entry.value, AnyValue::Size(_) | AnyValue::SmallLength(_) | AnyValue::Limits(_));
    if lead(is_size).then_with(|| lead(|_| true)).is_gt() { System::Inch } else { System::Metric }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn system(sizes: &str, rest: &str) -> System {
        let text = format!(
            "[bearing]\ndesignation = \"6205\"\n[housing]\nbore_limits = \"N7\"\n{sizes}\n\
             material = {{ name = \"case\", family = \"light alloy\", density = \"2700 kg/m3\", modulus = \"70 GPa\", \
             poisson = \"0.33\", strength = \"160 MPa\", expansion = \"23 um/mK\", heat_capacity = \"900 J/kgK\", \
             conductivity = \"150 W/mK\" }}\n{rest}"
        );
        check(&text, &Library::default()).unwrap().system
    }

    #[test]
    fn the_sizes_choose_the_system_not_the_data_sheet_of_a_material() {
        assert_eq!(system("outside = \"3-1/2 in\"", ""), System::Inch);
        assert_eq!(system("outside = \"90 mm\"", "[bench]\ntemperature = \"68 °F\""), System::Metric);
        // Without a size, what else was typed decides.
        assert_eq!(system("", "[bench]\ntemperature = \"20 °C\""), System::Metric);
    }
}
