//! A diameter with its limits: a tolerance class, a bearing class, explicit limits, or a measured size.

use super::entry::AnyValue;
use super::model::{Measured, Size};
use super::read_material::material_named;
use super::read_readings;
use super::section::{Notes, Section, Words, in_mm};
use crate::fit::{self, Feature, Limits, Ring, RingClass, ToleranceClass};
use crate::quantity::{self, Deviations, Length, Nanometres, ThermodynamicTemperature};
use crate::stock::{Library, Material};
use uom::si::length::micrometer;

const WANTED: &str = "write a tolerance class such as \"N7\", a bearing class such as \"ISO 492 Normal\", limits such as \
                      \"-13/0 um\", or { measured = \"61.994 mm\", within = \"2 um\" }";

/// Whose limits are read.
pub(super) struct Seating {
    /// Nominal diameter.
    pub(super) nominal: Length,
    /// Whether the surface is a hole or a shaft in the sense of ISO 286.
    pub(super) feature: Feature,
    /// Which ring it is, when the surface belongs to a bearing.
    pub(super) ring: Option<Ring>,
    /// Temperature at which a measurement without its own is taken to be made.
    pub(super) shop: ThermodynamicTemperature,
}

/// Reads the limits under `key`.
pub(super) fn size(
    section: &Section<'_>,
    key: &str,
    seating: &Seating,
    library: &Library,
    notes: &mut Notes,
) -> Option<Size> {
    if section.is_table(key) {
        return size_table(section, key, seating, library, notes);
    }
    let words = section.words(key, WANTED, notes)?;
    let limits = limits_from_words(section, key, &words, seating, notes)?;
    Some(Size::Limits { limits, basis: words.text.trim().to_owned() })
}

fn limits_from_words(
    section: &Section<'_>,
    key: &str,
    words: &Words<'_>,
    seating: &Seating,
    notes: &mut Notes,
) -> Option<Limits> {
    let text = words.text.trim();
    if text.starts_with(|c: char| c.is_ascii_digit() || "+-±−".contains(c)) {
        let found = section.parse_words(key, words, quantity::limits, notes)?;
        return Some(Limits::stated(Nanometres::from_length(seating.nominal), found.value));
    }
    match class_limits(text, seating) {
        Ok(limits) => {
            section.enter(key, words.text, AnyValue::Limits(limits.deviations), None, notes);
            Some(limits)
        }
        Err(refusal) => {
            notes.advised(words.part(0..words.text.len()), &section.path(key), &refusal, WANTED);
            None
        }
    }
}

/// Limits of a class: of a bearing ring where the surface belongs to one and the class is named so, else of ISO 286-1.
fn class_limits(text: &str, seating: &Seating) -> Result<Limits, String> {
    let nominal = Nanometres::from_length(seating.nominal);
    let words = |error: &dyn std::fmt::Display| error.to_string();
    if let Some(ring) = seating.ring {
        match RingClass::parse(text) {
            Ok(class) => return fit::ring_limits(nominal, class, ring).map_err(|error| words(&error)),
            Err(error) if text.len() > LONGEST_CLASS => return Err(words(&error)),
            Err(_) => {}
        }
    }
    let class = ToleranceClass::parse(text).map_err(|error| words(&error))?;
    if class.feature() != seating.feature {
        let (is_for, wanted, other) = match seating.feature {
            Feature::Hole => ("a shaft", "a hole", text.to_uppercase()),
            Feature::Shaft => ("a hole", "a shaft", text.to_lowercase()),
        };
        return Err(format!("{text} is a class of {is_for}, but this is {wanted}\n  help: did you mean {other}?"));
    }
    fit::limits_of_size(nominal, class).map_err(|error| words(&error))
}

/// Characters of the longest class of ISO 286-1, such as js16; a longer text was meant as a bearing class.
const LONGEST_CLASS: usize = 4;

fn size_table(
    section: &Section<'_>,
    key: &str,
    seating: &Seating,
    library: &Library,
    notes: &mut Notes,
) -> Option<Size> {
    let known = ["measured", "readings", "within", "at", "gauge_at", "gauge", "lower", "upper"];
    let table = section.section(key, &known, notes)?;
    if table.has("lower") || table.has("upper") {
        return explicit(&table, seating, notes);
    }
    if table.has("readings") {
        if table.has("measured") {
            notes.problem(table.place("measured"), "both `measured` and `readings` are given", "keep one of the two");
            return None;
        }
        let within = within(&table, notes)?;
        return read_readings::measured(&table, seating, within, library, notes)
            .map(|measured| Size::Measured(Box::new(measured)));
    }
    let wanted = "give the reading, such as measured = \"61.994 mm\", or several as readings = [[...]]";
    table.missing("measured", wanted, notes);
    let reading = table.quantity("measured", quantity::length, notes);
    let within = within(&table, notes);
    let gauge = gauge(&table, seating, library, notes)?;
    let (reading, within) = (reading?, within?);
    near_nominal(&table, "measured", (reading.value, reading.at), seating.nominal, notes)?;
    Some(Size::Measured(Box::new(Measured {
        nominal: seating.nominal,
        reading: reading.value,
        within,
        uncertainty: within,
        readings: None,
        part_temperature: gauge.part_temperature,
        gauge_temperature: gauge.gauge_temperature,
        gauge_material: gauge.material,
    })))
}

/// Temperatures of part and gauge, and what the gauge is made of.
pub(super) struct Gauge {
    pub(super) part_temperature: ThermodynamicTemperature,
    pub(super) gauge_temperature: ThermodynamicTemperature,
    pub(super) material: Material,
}

/// How a size was measured; `None` only where the gauge's material could not be read.
pub(super) fn gauge(table: &Section<'_>, seating: &Seating, library: &Library, notes: &mut Notes) -> Option<Gauge> {
    let part_temperature = temperature_of(table, "at", seating.shop, "temperature of the part when measured", notes);
    let gauge_temperature =
        temperature_of(table, "gauge_at", part_temperature, "temperature of the gauge when measuring", notes);
    let material = if table.has("gauge") {
        material_named(table, "gauge", library, notes)?
    } else {
        let why = "common practice, no published source: gauges are steel; state gauge = \"...\" for another";
        notes.assume(
            format!("{}: gauge material", table.path("").trim_end_matches('.')),
            AnyValue::Text("carbon steel".into()),
            why,
        );
        library.material("carbon-steel").ok()?
    };
    Some(Gauge { part_temperature, gauge_temperature, material })
}

/// The measuring uncertainty.
fn within(table: &Section<'_>, notes: &mut Notes) -> Option<Length> {
    table.missing("within", "give the measuring uncertainty, such as within = \"2 um\"", notes);
    let within = table.small_length("within", notes)?;
    let micrometres = within.value.get::<micrometer>();
    if (0.0..=1000.0).contains(&micrometres) {
        return Some(within.value);
    }
    let message = format!("`{}` is {micrometres} um but must lie from 0 to 1000 um", table.path("within"));
    notes.problem(within.at, message, "give how far the reading may be off, either way");
    None
}

fn temperature_of(
    table: &Section<'_>,
    key: &str,
    otherwise: ThermodynamicTemperature,
    what: &str,
    notes: &mut Notes,
) -> ThermodynamicTemperature {
    match table.quantity(key, quantity::temperature, notes) {
        Some(found) => found.value,
        None => {
            if !table.has(key) {
                let why = "not stated: taken to be that of the shop, or of the part";
                notes.assume(format!("{}: {what}", table.path(key)), AnyValue::Temperature(otherwise), why);
            }
            otherwise
        }
    }
}

fn explicit(table: &Section<'_>, seating: &Seating, notes: &mut Notes) -> Option<Size> {
    table.missing("lower", "give both limits, such as lower = \"-13 um\"", notes);
    table.missing("upper", "give both limits, such as upper = \"0 um\"", notes);
    let lower = table.small_length("lower", notes);
    let upper = table.small_length("upper", notes);
    let (lower, upper) = (lower?, upper?);
    if lower.value > upper.value {
        let message = format!(
            "the lower limit, {} um, is above the upper limit, {} um",
            lower.value.get::<micrometer>(),
            upper.value.get::<micrometer>()
        );
        notes.problem(lower.at, message, "exchange the two limits, or check their signs");
        return None;
    }
    let deviations =
        Deviations { lower: Nanometres::from_length(lower.value), upper: Nanometres::from_length(upper.value) };
    let limits = Limits::stated(Nanometres::from_length(seating.nominal), deviations);
    Some(Size::Limits { limits, basis: "limits as stated".to_owned() })
}

/// A measured size a whole per cent from its nominal belongs to another part, or to another unit.
pub(super) fn near_nominal(
    table: &Section<'_>,
    key: &str,
    (reading, at): (Length, std::ops::Range<usize>),
    nominal: Length,
    notes: &mut Notes,
) -> Option<()> {
    let (reading_mm, nominal_mm) = (in_mm(reading), in_mm(nominal));
    if (reading_mm / nominal_mm - 1.0).abs() <= 0.01 {
        return Some(());
    }
    let message = format!("`{}` is {reading_mm:.3} mm but the nominal diameter is {nominal_mm:.3} mm", table.path(key));
    notes.problem(at, message, unit_hint(reading_mm, nominal_mm));
    None
}

/// What was probably meant when two sizes that should agree do not.
pub(super) fn unit_hint(given_mm: f64, expected_mm: f64) -> String {
    let ratio = expected_mm / given_mm;
    if (ratio / 25.4 - 1.0).abs() < 0.01 {
        "the numbers agree if this one is in inches: write the unit in".to_owned()
    } else if (ratio * 25.4 - 1.0).abs() < 0.01 {
        "the numbers agree if this one is in millimetres: write the unit mm".to_owned()
    } else {
        "check that the reading and the nominal belong to the same surface, and the unit of both".to_owned()
    }
}
