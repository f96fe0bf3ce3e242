//! The seats: housing and shaft.

use super::entry::AnyValue;
use super::liner::liner;
use super::model::{Housing, Part, Shaft, Shoulder};
use super::read_material::material_at;
use super::read_part::roughness;
use super::read_size::{Seating, size, unit_hint};
use super::section::{Found, Notes, Section, in_mm};
use super::step::{Boss, step};
use super::wall;
use crate::fit::Feature;
use crate::quantity::{self, Length, Mass, ThermodynamicTemperature};
use crate::stock::{Library, Material};
use uom::si::length::millimeter;
use uom::si::mass::kilogram;

pub(super) const HOUSING_KEYS: [&str; 11] =
    ["bore", "bore_limits", "outside", "wall", "step", "length", "material", "liner", "shoulder", "mass", "roughness"];
pub(super) const SHAFT_KEYS: [&str; 7] =
    ["outside", "outside_limits", "inside", "length", "material", "mass", "roughness"];

/// Outside over bore of a housing whose outside is not stated.
///
/// Common practice, no published source: a boss of half the bore in wall thickness on either side counts as thick.
const THICK_HOUSING: f64 = 1.5;

/// Thinnest and thickest housing that is planned, outside over bore: a thinner one is a sleeve that yields at once, and
/// beyond the thickest nothing changes any more.
const THINNEST: f64 = 1.02;
const THICKEST: f64 = 20.0;

/// Least and largest mass that is treated, as shares of that of a plain ring of the seat's sizes: a boss cut away, and a
/// whole machine that goes into the oven with its seat.
const LIGHTEST: f64 = 0.3;
const HEAVIEST: f64 = 10_000.0;

const MM_PER_INCH: f64 = 25.4;

pub(super) fn housing(
    section: &Section<'_>,
    part: &Part,
    shop: ThermodynamicTemperature,
    library: &Library,
    notes: &mut Notes,
) -> Option<Housing> {
    let nominal = part.outside;
    agrees(section, "bore", nominal, "the part's outside", notes);
    let seating = Seating { nominal, feature: Feature::Hole, ring: None, shop };
    section.missing("bore_limits", "give the class or the limits of the bore, such as \"N7\" or \"-39/-9 um\"", notes);
    let size = size(section, "bore_limits", &seating, library, notes);
    let uneven_wall = wall::uneven(section, notes)?;
    let outside = match uneven_wall {
        Some(ends) => wall::equivalent_outside(section, nominal, ends, notes),
        None => housing_outside(section, nominal, notes),
    };
    let shoulder = shoulder(section, nominal, notes);
    section.missing("material", "name the housing's material (`seatwise materials` lists them)", notes);
    let material = material_at(section, "material", library, notes);
    let behind = shoulder.map_or(Length::new::<millimeter>(0.0), |s| s.wall);
    let length = length(section, part.width + behind, "the part's width and the wall behind it", notes);
    if let Some(length) = length.filter(|length| section.has("length") && *length < behind) {
        let message = format!(
            "the wall behind the ring is {} mm thick but the whole housing only {} mm long",
            in_mm(behind),
            in_mm(length)
        );
        notes.problem(section.place("length"), message, "give the length of seat and wall together");
    }
    let boss = Boss { bore: nominal, outside, length, uneven: uneven_wall.is_some() };
    let step = step(section, &boss, notes);
    // A liner needs a wall around it on the thin side too.
    let thinner = outside.map(|outside| step.flatten().map_or(outside, |step| step.outside.min(outside)));
    let around_liner = uneven_wall.map_or(thinner, |(thin, _)| Some(nominal + 2.0 * thin));
    let liner = liner(section, nominal, around_liner, library, notes);
    let around = outside.zip(length).map(|(outside, length)| {
        let even = step.flatten().map_or(outside, |step| step.even_outside(outside, length));
        (Some(nominal), even, length)
    });
    let mass = mass(section, around, material.as_ref(), notes)?;
    let roughness_rz = roughness(section, notes);
    Some(Housing {
        size: size?,
        outside: outside?,
        step: step?,
        uneven_wall,
        length: length?,
        length_stated: section.has("length"),
        material: material?,
        liner: liner?,
        shoulder,
        mass,
        roughness_rz,
    })
}

pub(super) fn shaft(
    section: &Section<'_>,
    part: &Part,
    shop: ThermodynamicTemperature,
    library: &Library,
    notes: &mut Notes,
) -> Option<Shaft> {
    let Some(nominal) = part.bore else {
        notes.problem(section.at.clone(), "a solid plug cannot go onto a shaft", "leave [shaft] out");
        return None;
    };
    agrees(section, "outside", nominal, "the part's bore", notes);
    let seating = Seating { nominal, feature: Feature::Shaft, ring: None, shop };
    section.missing(
        "outside_limits",
        "give the class or the limits of the shaft, such as \"k6\" or \"+2/+15 um\"",
        notes,
    );
    let size = size(section, "outside_limits", &seating, library, notes);
    let inside = hollow(section, nominal, notes);
    section.missing("material", "name the shaft's material (`seatwise materials` lists them)", notes);
    let material = material_at(section, "material", library, notes);
    let length = length(section, part.width, "the part's width", notes);
    let under = length.map(|length| (inside, nominal, length));
    let mass = mass(section, under, material.as_ref(), notes)?;
    let roughness_rz = roughness(section, notes);
    Some(Shaft {
        size: size?,
        inside,
        length: length?,
        length_stated: section.has("length"),
        material: material?,
        mass,
        roughness_rz,
    })
}

/// The stated mass of what is treated; `None` only where it was refused. The outline is inside, outside and length.
fn mass(
    section: &Section<'_>,
    outline: Option<(Option<Length>, Length, Length)>,
    material: Option<&Material>,
    notes: &mut Notes,
) -> Option<Option<Mass>> {
    if !section.has("mass") {
        return Some(None);
    }
    let found = section.quantity("mass", quantity::mass, notes)?;
    let Some(((inside, outside, length), material)) = outline.zip(material) else { return Some(Some(found.value)) };
    let inside = inside.unwrap_or_default();
    let plain: Mass = std::f64::consts::FRAC_PI_4 * (outside * outside - inside * inside) * length * material.density();
    let (low, high) = (LIGHTEST * plain, HEAVIEST * plain);
    if found.value >= low && found.value <= high {
        return Some(Some(found.value));
    }
    let kg = |mass: Mass| mass.get::<kilogram>();
    let message = format!(
        "`{}` is {} kg but must lie from {:.3} kg to {:.0} kg: a plain ring of these sizes weighs {:.3} kg",
        section.path("mass"),
        kg(found.value),
        kg(low),
        kg(high),
        kg(plain)
    );
    notes.problem(
        found.at,
        message,
        "give the mass of all that is treated together, with its unit, or leave `mass` out",
    );
    None
}

/// A nominal size stated twice must agree.
fn agrees(section: &Section<'_>, key: &str, nominal: Length, of: &str, notes: &mut Notes) {
    let Some(found) = section.quantity(key, quantity::length, notes) else { return };
    let (mm, nominal_mm) = (in_mm(found.value), in_mm(nominal));
    if (mm - nominal_mm).abs() > 1e-6 {
        let message =
            format!("`{}` is {mm} mm but {of} is {nominal_mm} mm: both take the same nominal size", section.path(key));
        let help = if (mm / nominal_mm - 1.0).abs() < 0.01 {
            "write the nominal here and the real size as limits, such as { measured = \"...\", within = \"...\" }"
                .into()
        } else {
            unit_hint(mm, nominal_mm)
        };
        notes.problem(found.at, message, help);
    }
}

fn housing_outside(section: &Section<'_>, bore: Length, notes: &mut Notes) -> Option<Length> {
    if section.has("outside") && section.has("wall") {
        notes.problem(section.place("wall"), "both `outside` and `wall` are given", "keep one of the two");
        return None;
    }
    let found = if section.has("wall") {
        let mut found = section.quantity("wall", quantity::length, notes)?;
        found.value = bore + 2.0 * found.value;
        found
    } else if section.has("outside") {
        section.quantity("outside", quantity::length, notes)?
    } else {
        let why = "common practice, no published source: a thick boss; a thinner one presses less and cools faster, \
                   so state outside or wall";
        notes.assume("housing.outside", AnyValue::Size(THICK_HOUSING * bore), why);
        return Some(THICK_HOUSING * bore);
    };
    possible_outside(found, bore, notes)
}

/// Refuses a housing that is a sleeve or a whole plate around its bore.
pub(super) fn possible_outside(found: Found<Length>, bore: Length, notes: &mut Notes) -> Option<Length> {
    let (outside_mm, bore_mm) = (in_mm(found.value), in_mm(bore));
    let possible = |mm: f64| (THINNEST * bore_mm..=THICKEST * bore_mm).contains(&mm);
    if !possible(outside_mm) {
        let message = format!(
            "the housing is {outside_mm:.3} mm outside around a bore of {bore_mm:.3} mm, but must lie from {:.3} to {:.0} mm",
            THINNEST * bore_mm,
            THICKEST * bore_mm
        );
        let help = if possible(outside_mm * MM_PER_INCH) {
            "in inches it would be possible: write the unit in".to_owned()
        } else if possible(outside_mm / MM_PER_INCH) {
            "in millimetres it would be possible: write the unit mm".to_owned()
        } else {
            "give the diameter of the boss around the bore, or its wall".to_owned()
        };
        notes.problem(found.at, message, help);
        return None;
    }
    Some(found.value)
}

fn shoulder(section: &Section<'_>, bore: Length, notes: &mut Notes) -> Option<Shoulder> {
    let table = section.section("shoulder", &["inside", "wall"], notes)?;
    table.missing("inside", "give the diameter of the hole through the shoulder", notes);
    table.missing("wall", "give the thickness of the wall behind the ring", notes);
    let inside = table.quantity("inside", quantity::length, notes);
    let wall = table.quantity("wall", quantity::length, notes);
    let (inside, wall) = (inside?, wall?);
    if inside.value >= bore {
        let message = format!(
            "the hole through the shoulder, {} mm, must be smaller than the bore, {} mm",
            in_mm(inside.value),
            in_mm(bore)
        );
        notes.problem(inside.at, message, "give the diameter that the ring cannot pass");
        return None;
    }
    Some(Shoulder { inside: inside.value, wall: wall.value })
}

fn hollow(section: &Section<'_>, outside: Length, notes: &mut Notes) -> Option<Length> {
    if !section.has("inside") {
        notes.assume("shaft.inside", AnyValue::Text("solid".into()), "not stated; a hollow shaft presses less");
        return None;
    }
    let found = section.quantity("inside", quantity::length, notes)?;
    let (inside_mm, outside_mm) = (in_mm(found.value), in_mm(outside));
    if inside_mm > 0.98 * outside_mm {
        let message = format!("the shaft's bore, {inside_mm} mm, must be under 98 % of its outside, {outside_mm} mm");
        notes.problem(found.at, message, "check the size and its unit");
        return None;
    }
    Some(found.value)
}

fn length(section: &Section<'_>, otherwise: Length, of: &str, notes: &mut Notes) -> Option<Length> {
    if !section.has("length") {
        let why = format!(
            "not stated: {of}; it sets how much metal takes up heat. The force counts with any more beyond the ring"
        );
        notes.assume(section.path("length"), AnyValue::Size(otherwise), why);
        return Some(otherwise);
    }
    let found = section.quantity("length", quantity::length, notes)?;
    let mm = in_mm(found.value);
    if !(1.0..=5000.0).contains(&mm) {
        let message = format!("`{}` is {mm} mm but must lie from 1 mm to 5000 mm", section.path("length"));
        notes.problem(found.at, message, "check the number and its unit");
        return None;
    }
    Some(found.value)
}
