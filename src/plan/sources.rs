//! Where the numbers of a plan come from.

use super::joint::{Joint, Side};
use super::model::{SeatPlan, Source};
use crate::job::{Job, Seal, Treatment};
use crate::stock::medium::Medium;

const MODELS: [(&str, &str); 9] = [
    ("sizes", "ISO 1: sizes hold at 20 °C"),
    (
        "temperatures against time",
        "heat balance of one body, film coefficient reduced by h/(1 + Bi/3) for a ring or wall and h/(1 + Bi/4) for a \
         cylinder (first term of the series, Carslaw and Jaeger, Conduction of Heat in Solids, from memory); grey-body \
         radiation",
    ),
    (
        "pressure and stress",
        "thick-wall rings (Lamé), plane stress; Timoshenko, Strength of Materials, Part II, from memory",
    ),
    ("press force", "friction x pressure x seat area at the depth reached"),
    (
        "shape of the seat",
        "own finite elements of the section, held against independent ones; else bounds from independent finite elements of one \
         ring in through and blind seats, linear elastic, frictionless (fits/seat_shapes.csv)",
    ),
    (
        "wall behind the part",
        "own finite elements of the section where it was computed (force and moment at the root, both supports of the housing); \
         else annular plate with shear, edge held: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, from memory",
    ),
    ("screw", "ISO 68-1 and ISO 724 geometry, balance of the flank; ISO 898-1 proof stresses; VDI 2230, from memory"),
    (
        "yielding",
        "Tresca and von Mises; partly plastic hub with the modified shear stress of DIN 7190-1, from memory; bush that takes a \
         set by Tresca in plane stress, own derivation",
    ),
    ("internal clearance", "ISO 5753-1 groups; raceways by the rule of bearing handbooks, from memory"),
];

const SEAL_MODELS: [(&str, &str); 3] = [
    (
        "shaft seal, bore and shaft",
        "DIN 3760, ISO 6194-1: allowance, surfaces and lead-ins row by row in fits/seal_seats.csv, with what is from memory",
    ),
    (
        "force to press a seal home",
        "own estimate: limit load of a drawn case, or compression of a bonded strip of rubber (Gent and Lindley, from memory), with \
         common values of sheet, rubber and friction; no published rule was found",
    ),
    ("lip speed", "surface speed of the shaft; limits of the elastomers from memory, makers differ"),
];

const STACK_MODELS: [(&str, &str); 3] = [
    (
        "widths and rings of the stack",
        "ISO 492 ring widths; DIN 471, DIN 472 rings and grooves (fits/retaining_rings.csv)",
    ),
    (
        "play of the stack",
        "worst case; root of the summed squares (Shigley's Mechanical Engineering Design); scatter by folding even distributions",
    ),
    ("axial play of a ball bearing", "free contact angle, T. A. Harris, Rolling Bearing Analysis, from memory"),
];

/// Every source that a plan leans on: standards first, then materials, media and models.
pub(super) fn of(job: &Job, joints: &[Joint<'_>], seats: &[SeatPlan]) -> Vec<Source> {
    let mut list = Sources::default();
    for joint in joints {
        let seat = joint.seat.name();
        list.add(format!("{seat} seat, {}", joint.inner.name), joint.inner.size.source.clone());
        list.add(format!("{seat} seat, {}", joint.outer.name), joint.outer.size.source.clone());
    }
    for joint in joints {
        material(&joint.inner, &mut list);
        material(&joint.outer, &mut list);
    }
    for treatment in job.chill.iter().chain(&job.warm) {
        medium(treatment, &mut list);
    }
    list.add("friction".to_owned(), job.press.friction_source.clone());
    assembly(job, &mut list);
    for (what, text) in MODELS {
        list.add(what.to_owned(), text.to_owned());
    }
    beside(job, seats, &mut list);
    list.0
}

/// Sources of what only some jobs have.
fn beside(job: &Job, seats: &[SeatPlan], list: &mut Sources) {
    for group in job.fasteners.iter().flat_map(|fasteners| &fasteners.groups) {
        if let Some(class) = &group.class {
            list.add(class.name(), format!("fits/bolt_strength.csv, {} ({})", class.source, class.status));
        }
        list.add("friction of cover screws".to_owned(), group.friction_source.clone());
    }
    if seats.iter().any(|seat| seat.section_heat.is_ok()) {
        list.add("temperatures in the section".to_owned(), IN_SECTION.to_owned());
    }
    if job.fasteners.is_some() {
        for (what, text) in SCREWS {
            list.add(what.to_owned(), text.to_owned());
        }
    }
    if job.housing.as_ref().is_some_and(|housing| housing.uneven_wall.is_some()) {
        list.add("uneven wall".to_owned(), UNEVEN_WALL.to_owned());
    }
}

const IN_SECTION: &str = "conduction on the finite elements of the section, films and gap as for the bodies; within 0.1 K and, until the seat \
                          grips, 0.5 % in time of independent ones (tests/reference/bodies, mechanics/transient_gap.csv)";

const SCREWS: [(&str, &str); 3] = [
    (
        "torque and preload",
        "balance of the flank with both ends of the friction; permitted preload of VDI 2230 Part 1, from memory, held against a \
         printed table of it",
    ),
    (
        "stripping of threads",
        "shear areas of FED-STD-H28/2 and VDI 2230 Part 1, from memory, held against a printed table; sizes at least metal \
         (ISO 965-1, ASME B1.1); shear over tensile strength from memory of VDI 2230",
    ),
    ("order of tightening", "common practice, no published source; ASME PCC-1 for flanges, from memory"),
];

const UNEVEN_WALL: &str = "force and pressure lie between those of concentric rings with the thinnest and with the thickest wall; the \
                           equivalent wall is their geometric mean (own reasoning, no published source); stress of the thin side: \
                           eccentric cylinder, Jeffery (1921), Timoshenko and Goodier, Theory of Elasticity (from memory)";
/// What a seal and a stack lean on.
fn assembly(job: &Job, list: &mut Sources) {
    if let Some(seal) = &job.seal {
        seal_models(seal, list);
    }
    if job.stack.is_some() {
        for (what, text) in STACK_MODELS {
            list.add(what.to_owned(), text.to_owned());
        }
    }
}

fn seal_models(seal: &Seal, list: &mut Sources) {
    let Some(body) = seal.body.as_deref() else { return };
    for (what, text) in SEAL_MODELS {
        list.add(what.to_owned(), text.to_owned());
    }
    list.add("shaft under the seal".to_owned(), body.shaft.source.to_string());
    for (what, limit) in [("coldest", seal.lip.coldest()), ("hottest", seal.lip.hottest())] {
        list.add(format!("lip of {}, {what}", seal.lip.id()), limit.provenance.to_string());
    }
}

/// Every source that a plan of a seal alone leans on.
pub(super) fn of_seal(seal: &Seal) -> Vec<Source> {
    let mut list = Sources::default();
    seal_models(seal, &mut list);
    list.0
}

#[derive(Default)]
struct Sources(Vec<Source>);

impl Sources {
    fn add(&mut self, what: String, text: String) {
        let source = Source { what, text };
        if !self.0.contains(&source) {
            self.0.push(source);
        }
    }
}

fn material(side: &Side<'_>, list: &mut Sources) {
    for (property, provenance) in side.material.sources() {
        list.add(format!("{}, {}", side.material.id(), property.replace('_', " ")), provenance.to_string());
    }
}

fn medium(treatment: &Treatment, list: &mut Sources) {
    let medium: &Medium = &treatment.medium;
    for (property, provenance) in medium.sources() {
        list.add(format!("{}, {property}", medium.id()), provenance.to_string());
    }
}
