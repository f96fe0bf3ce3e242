//! What goes in: bearing, bush or plug.

use super::entry::AnyValue;
use super::model::{Part, PartKind, Size};
use super::read_designation::{designated_class, designated_closure, designation};
use super::read_material::material_at;
use super::read_play::{internal_play, static_rating};
use super::read_ring::{Plain, ring_shape};
use super::read_size::{Seating, size};
use super::read_sizes::{Sizes, sizes};
use super::section::{Notes, Section, flatten, nearest};
use crate::fit::{Feature, Ring, RingClass};
use crate::mechanics;
use crate::quantity::{self, Length, Mass, Roughness, ThermodynamicTemperature};
use crate::stock::Library;
use crate::stock::closure::{self, Closure};
use crate::stock::dimensions::{self, Designation};
use crate::stock::material::{Material, TemperatureLimit};
use uom::si::length::millimeter;
use uom::si::mass::kilogram;

pub(super) const KEYS: [&str; 17] = [
    "designation",
    "kind",
    "bore",
    "outside",
    "width",
    "outside_limits",
    "bore_limits",
    "material",
    "mass",
    "closure",
    "outer_ring_inside",
    "inner_ring_outside",
    "roughness",
    "internal_clearance",
    "static_rating",
    "chamfer",
    "groove",
];

const MASS_WHY: &str = "from the sizes: 68 % of the full ring is steel, within about 6 % for single-row ball bearings \
                        (masses from memory); state mass when it is known";

/// What the seats ask of the part.
pub(super) struct Wanted {
    pub(super) housing: bool,
    pub(super) shaft: bool,
    pub(super) shop: ThermodynamicTemperature,
}

pub(super) fn part(section: &Section<'_>, wanted: &Wanted, library: &Library, notes: &mut Notes) -> Option<Part> {
    let designation = designation(section, notes);
    if section.has("designation") && designation.is_none() {
        // What it would have said is not missing.
        return None;
    }
    let kind = kind(section, designation.is_some(), notes);
    let sizes = sizes(section, kind, designation.as_ref(), notes);
    let material = part_material(section, kind, library, notes);
    let (kind, sizes, material) = (kind?, sizes?, material?);
    let outside = sizes.outside.value;
    let bore = sizes.bore.as_ref().map(|found| found.value);
    let seating = |nominal, feature, ring: Ring| Seating {
        nominal,
        feature,
        ring: kind.is_bearing().then_some(ring),
        shop: wanted.shop,
    };
    let outside_size = wanted.housing.then(|| {
        let seating = seating(outside, Feature::Shaft, Ring::Outer);
        part_size(section, "outside_limits", &seating, designation.as_ref(), library, notes)
    });
    let bore_size = bore.filter(|_| wanted.shaft).map(|bore| {
        let seating = seating(bore, Feature::Hole, Ring::Inner);
        part_size(section, "bore_limits", &seating, designation.as_ref(), library, notes)
    });
    let (outside_size, bore_size) = (flatten(outside_size), flatten(bore_size));
    let precise = [&outside_size, &bore_size].into_iter().flatten().flatten().any(is_precise)
        || matches!(designated_class(designation.as_ref()), RingClass::P5 | RingClass::P4);
    let (outer_ring_inside, inner_ring_outside) = rings(section, kind, bore, outside, notes);
    let seated = [
        outer_ring_inside.filter(|_| wanted.housing).map(|inside| (outside - inside) * 0.5),
        bore.filter(|_| wanted.shaft).map(|bore| (inner_ring_outside - bore) * 0.5),
    ];
    let walls = seated.into_iter().flatten().collect();
    let plain = Plain { kind, bore, outside, width: sizes.width.value, walls };
    let ring_shape = ring_shape(section, &plain, notes);
    let mass = mass(section, kind, &sizes, &material, notes);
    Some(Part {
        kind,
        unread_suffixes: designation.as_ref().map(|named| named.unknown.clone()).unwrap_or_default(),
        bore,
        outside,
        width: sizes.width.value,
        outside_size: outside_size?,
        bore_size: bore_size?,
        material,
        mass: mass?,
        closure: if kind.is_bearing() { Some(read_closure(section, designation.as_ref(), notes)?) } else { None },
        precision_limit: precision_limit(kind.is_bearing() && precise, section, notes)?,
        outer_ring_inside,
        inner_ring_outside,
        roughness_rz: roughness(section, notes),
        internal_play: internal_play(section, kind, bore, designation.as_ref(), notes)?,
        static_rating: static_rating(section, kind, notes)?,
        ring_shape: ring_shape?,
    })
}

fn kind(section: &Section<'_>, designated: bool, notes: &mut Notes) -> Option<PartKind> {
    let names = PartKind::NAMES.map(|(name, _)| name);
    let wanted = format!("write kind = one of: {}", names.join(", "));
    if !section.has("kind") {
        if designated {
            return Some(PartKind::BallBearing);
        }
        section.missing("kind", &wanted, notes);
        return None;
    }
    let words = section.words("kind", &wanted, notes)?;
    let found = PartKind::NAMES.iter().find(|(name, _)| name.eq_ignore_ascii_case(words.text.trim()));
    if found.is_none() {
        let help = nearest(words.text, names.into_iter())
            .map_or(wanted.clone(), |meant| format!("did you mean \"{meant}\"? {wanted}"));
        notes.problem(words.at.clone(), format!("there is no kind of part `{}`", words.text), help);
    }
    found.map(|(_, kind)| *kind)
}

fn part_size(
    section: &Section<'_>,
    key: &str,
    seating: &Seating,
    designation: Option<&Designation>,
    library: &Library,
    notes: &mut Notes,
) -> Option<Size> {
    if section.has(key) {
        return size(section, key, seating, library, notes);
    }
    let Some(ring) = seating.ring else {
        section.missing(key, "give the class or the limits, such as \"s6\" or \"+20/+45 um\"", notes);
        return None;
    };
    let class = designated_class(designation);
    let nominal = quantity::Nanometres::from_length(seating.nominal);
    match crate::fit::ring_limits(nominal, class, ring) {
        Ok(limits) => {
            let why = "ISO 492 class of an ordinary bearing: state it if the bearing is of another class";
            let basis = class.to_string();
            notes.assume(section.path(key), AnyValue::Text(basis.clone()), why);
            Some(Size::Limits { limits, basis })
        }
        Err(error) => {
            notes.advised(section.at.clone(), &section.path(key), &error.to_string(), "give the limits yourself");
            None
        }
    }
}

/// Whether a size was stated in a precision class of ISO 492.
fn is_precise(size: &Size) -> bool {
    match size {
        Size::Limits { basis, .. } => matches!(RingClass::parse(basis), Ok(RingClass::P5 | RingClass::P4)),
        Size::Measured(_) => false,
    }
}

/// `None` only when the limit was wanted and the embedded data could not be read.
fn precision_limit(precise: bool, section: &Section<'_>, notes: &mut Notes) -> Option<Option<TemperatureLimit>> {
    if !precise {
        return Some(None);
    }
    match closure::precision_hottest() {
        Ok(limit) => Some(Some(limit)),
        Err(error) => {
            notes.problem(section.at.clone(), error.to_string(), "state the class of the bearing as Normal or P6");
            None
        }
    }
}

fn part_material(
    section: &Section<'_>,
    kind: Option<PartKind>,
    library: &Library,
    notes: &mut Notes,
) -> Option<Material> {
    if section.has("material") {
        return material_at(section, "material", library, notes);
    }
    if kind.is_some_and(PartKind::is_bearing) {
        let why = "rings of ordinary rolling bearings are of this steel; state material for another";
        notes.assume("bearing.material", AnyValue::Text("bearing-steel".into()), why);
        return library.material("bearing-steel").ok();
    }
    // Of a kind that is unknown no one can say whether it needs one.
    if kind.is_some() {
        section.missing("material", "name the material of the part (`seatwise materials` lists them)", notes);
    }
    None
}

fn rings(
    section: &Section<'_>,
    kind: PartKind,
    bore: Option<Length>,
    outside: Length,
    notes: &mut Notes,
) -> (Option<Length>, Length) {
    let Some(bore) = bore else { return (None, outside) };
    if !kind.is_bearing() {
        return (Some(bore), outside);
    }
    let mut equivalent = |key: &str, rule: Length| {
        let given = section.quantity(key, quantity::length, notes);
        if let Some(found) = &given {
            if found.value <= bore || found.value >= outside {
                let message = format!("`{}` must lie between the bore and the outside", section.path(key));
                notes.problem(found.at.clone(), message, "give the diameter where the ring's section ends");
            }
        } else if !section.has(key) {
            let why = "common practice, no published source: each ring as a plain ring of 15 % of (outside - bore)";
            notes.assume(section.path(key), AnyValue::Size(rule), why);
        }
        given.map_or(rule, |found| found.value)
    };
    let outer_inside = equivalent("outer_ring_inside", mechanics::outer_ring_inside(bore, outside));
    let inner_outside = equivalent("inner_ring_outside", mechanics::inner_ring_outside(bore, outside));
    if outer_inside < inner_outside {
        let message = format!(
            "the outer ring begins at {:.3} mm, inside the inner ring, which ends at {:.3} mm: the rings overlap",
            outer_inside.get::<millimeter>(),
            inner_outside.get::<millimeter>()
        );
        let key = if section.has("outer_ring_inside") { "outer_ring_inside" } else { "inner_ring_outside" };
        notes.problem(section.place(key), message, "exchange the two, or check their units");
    }
    (Some(outer_inside), inner_outside)
}

fn mass(section: &Section<'_>, kind: PartKind, sizes: &Sizes, material: &Material, notes: &mut Notes) -> Option<Mass> {
    let bore = sizes.bore.as_ref().map_or(Length::new::<millimeter>(0.0), |found| found.value);
    let (outside, width) = (sizes.outside.value, sizes.width.value);
    let section_area = std::f64::consts::FRAC_PI_4 * (outside * outside - bore * bore);
    let full: Mass = section_area * width * material.density();
    if section.has("mass") {
        let found = section.quantity("mass", quantity::mass, notes)?;
        let share = found.value.get::<kilogram>() / full.get::<kilogram>();
        if !(0.2..=1.2).contains(&share) {
            let message = format!(
                "`{}` is {:.3} kg but a full ring of this size and material weighs {:.3} kg",
                section.path("mass"),
                found.value.get::<kilogram>(),
                full.get::<kilogram>()
            );
            notes.problem(found.at, message, "check the unit of the mass and the sizes, or leave `mass` out");
            return None;
        }
        return Some(found.value);
    }
    let (fill, why) = if kind.is_bearing() {
        (dimensions::SINGLE_ROW_FILL, MASS_WHY)
    } else {
        (1.0, "from the sizes and the density of the material")
    };
    notes.assume("bearing.mass", AnyValue::Mass(full * fill), why);
    Some(full * fill)
}

/// Why a closure is assumed that neither the job nor the designation tells.
pub(crate) const CLOSURE_NOT_STATED: &str =
    "not stated: the most sensitive of the ordinary closures is assumed; state closure";

fn read_closure(section: &Section<'_>, designation: Option<&Designation>, notes: &mut Notes) -> Option<Closure> {
    let wanted = "write \"open\", \"shields\", or \"NBR contact seals\"";
    if let Some(words) = section.words("closure", wanted, notes) {
        return match Closure::parse(words.text) {
            Ok(closure) => Some(closure),
            Err(error) => {
                notes.problem(words.at, format!("`{}`: {error}", section.path("closure")), wanted);
                None
            }
        };
    }
    if section.has("closure") {
        return None;
    }
    let (name, why) = match designated_closure(designation) {
        Some(name) => (name, "from the suffix of the designation (DIN 623-1)"),
        None => ("NBR contact seals", CLOSURE_NOT_STATED),
    };
    notes.assume("bearing.closure", AnyValue::Text(name.to_owned()), why);
    Closure::parse(name).ok()
}

/// Roughness Rz of the seating surface under `roughness`.
pub(super) fn roughness(section: &Section<'_>, notes: &mut Notes) -> Option<Length> {
    let wanted = "write the roughness as \"Ra 1.6 um\" or \"Rz 6.3 um\"";
    let words = section.words("roughness", wanted, notes)?;
    match quantity::roughness(words.text) {
        Ok(entered) => {
            let rz = match entered.value {
                Roughness::Rz(rz) => rz,
                Roughness::Ra(ra) => {
                    let rz = crate::fit::rz_from_ra(ra);
                    let why = "common practice, no published source: Rz from Ra by a fixed ratio; state Rz instead";
                    notes.assume(section.path("roughness as Rz"), AnyValue::SmallLength(rz), why);
                    rz
                }
            };
            section.enter("roughness", words.text, AnyValue::SmallLength(rz), entered.system, notes);
            Some(rz)
        }
        Err(error) => {
            notes.problem(
                words.part(error.at),
                format!("`{}`: {}", section.path("roughness"), error.problem),
                error.help,
            );
            None
        }
    }
}
