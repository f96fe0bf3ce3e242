//! One kind of screw: its thread, torque, friction, head, and what it goes into.

use super::entry::AnyValue;
use super::fasteners::{ScrewGroup, Tapped};
use super::read_material::material_at;
use super::read_means::{friction_range, thread, within};
use super::read_places;
use super::section::{Notes, Section};
use crate::quantity::{self, Length, Pressure, Ratio, Torque};
use crate::stock::Library;
use crate::stock::material::Material;
use crate::stock::threads::{StrengthClass, Thread, hexagon_nut, strength_class};
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::ratio::ratio;
use uom::si::torque::newton_meter;

/// Friction of a screw as it comes from the shelf or with a trace of oil.
const FRICTION: (f64, f64) = (0.10, 0.16);
const FRICTION_WHY: &str = "steel screws with a trace of oil, VDI 2230 friction class B is 0.08 to 0.16 (from memory), its \
     slippery end left out; state friction = \"0.12 to 0.20\" for dry ones, lower with grease or thread lock";

/// What a torque spanner is off by.
const TORQUE_WITHIN: f64 = 0.06;
const TORQUE_WITHIN_WHY: &str = "a click spanner in its calibration, ISO 6789 (4 % above 10 N·m and 6 % below, from memory); \
     by feel it is 25 % or more; state torque_within";

/// Head and hole of a screw that the table does not know, over its diameter: those of a cap screw.
const HEAD: f64 = 1.5;
const HOLE: f64 = 1.1;

/// One kind of screw: its own table, and the one whose values it shares.
pub(super) struct Kind<'s, 't> {
    pub(super) own: &'s Section<'t>,
    pub(super) shared: Option<&'s Section<'t>>,
}

impl<'s, 't> Kind<'s, 't> {
    /// The table in which `key` stands; its own where none has it.
    fn of(&self, key: &str) -> &'s Section<'t> {
        match self.shared {
            Some(shared) if !self.own.has(key) && shared.has(key) => shared,
            _ => self.own,
        }
    }

    fn has(&self, key: &str) -> bool {
        self.of(key).has(key)
    }

    /// What a value that holds for every kind is called.
    fn common(&self, key: &str) -> String {
        self.shared.unwrap_or(self.own).path(key)
    }
}

pub(super) fn group(
    kind: &Kind<'_, '_>,
    housing: Option<&Material>,
    library: &Library,
    notes: &mut Notes,
) -> Option<ScrewGroup> {
    kind.of("thread").missing("thread", "give the thread, such as \"M6\" or \"1/4-20 UNC\"", notes);
    let thread = thread(kind.of("thread"), notes);
    let places = read_places::places(kind.own, notes);
    let friction = friction(kind, notes);
    let newton_metres = |torque: Torque| torque.get::<newton_meter>();
    let range = (newton_metres as fn(Torque) -> f64, 0.05..=10_000.0, "0.05 N·m to 10000 N·m");
    let torque = within(kind.of("torque"), "torque", quantity::torque, range, notes);
    let torque_within = torque_within(kind, notes);
    let mm = |length: Length| length.get::<millimeter>();
    let engagement_range = (mm as fn(Length) -> f64, 1.0..=500.0, "1 mm to 500 mm");
    let engagement = within(kind.of("engagement"), "engagement", quantity::length, engagement_range, notes);
    let into = into(kind, housing, library, notes);
    let thread = thread?;
    let class = class(kind, &thread, notes);
    let (head, hole) = face(kind, &thread, notes)?;
    let (torque, class) = (torque?, class?);
    if torque.is_none() {
        estimate(kind, class.as_ref(), &thread, notes)?;
    }
    let engagement = engagement?;
    if let Some(length) = engagement.filter(|length| *length < thread.pitch) {
        let message = format!(
            "`{}` is {:.2} mm, less than one pitch of {}",
            kind.of("engagement").path("engagement"),
            mm(length),
            thread.designation
        );
        notes.problem(
            kind.of("engagement").place("engagement"),
            message,
            "give the length of full threads in the hole",
        );
        return None;
    }
    let (friction, friction_source) = friction?;
    Some(ScrewGroup {
        thread,
        class,
        places: places?,
        torque,
        torque_within: torque_within?,
        friction,
        friction_source,
        head,
        hole,
        engagement,
        into: into?,
    })
}

/// Says that the torque is estimated, where it can be.
fn estimate(kind: &Kind<'_, '_>, class: Option<&StrengthClass>, thread: &Thread, notes: &mut Notes) -> Option<()> {
    if class.is_none() {
        let message =
            format!("no strength class is known for {}, so that its torque cannot be estimated", thread.designation);
        notes.problem(kind.of("thread").place("thread"), message, "state torque = \"...\" from the maker's manual");
        return None;
    }
    let why = "the maker's value is not stated: 90 % of the yield strength at the lowest friction (VDI 2230, from memory), less \
               where proof load or the tapped thread allow less; the maker's manual goes before it";
    notes.assume(kind.own.path("torque"), AnyValue::Text("estimated".into()), why);
    Some(())
}

fn friction(kind: &Kind<'_, '_>, notes: &mut Notes) -> Option<((f64, f64), String)> {
    if kind.has("friction") {
        return Some((friction_range(kind.of("friction"), "friction", notes)?, "stated in the job".to_owned()));
    }
    let value = AnyValue::Text(format!("{:.2} to {:.2}", FRICTION.0, FRICTION.1));
    notes.assume(kind.common("friction"), value, FRICTION_WHY);
    Some((FRICTION, "a trace of oil, from memory of VDI 2230".to_owned()))
}

fn torque_within(kind: &Kind<'_, '_>, notes: &mut Notes) -> Option<f64> {
    if !kind.has("torque_within") {
        let value = AnyValue::Share(Ratio::new::<ratio>(TORQUE_WITHIN));
        notes.assume(kind.common("torque_within"), value, TORQUE_WITHIN_WHY);
        return Some(TORQUE_WITHIN);
    }
    let share = |share: Ratio| share.get::<ratio>();
    let range = (share as fn(Ratio) -> f64, 0.0..=0.5, "0 % to 50 %");
    let found = within(kind.of("torque_within"), "torque_within", quantity::share, range, notes)?;
    found.map(share)
}

/// `None` only when a class was given and is none.
fn class(kind: &Kind<'_, '_>, thread: &Thread, notes: &mut Notes) -> Option<Option<StrengthClass>> {
    let section = kind.of("strength");
    let help = "give the class on the screw's head, such as \"8.8\" or \"SAE grade 5\"";
    if section.has("strength") {
        let words = section.words("strength", help, notes)?;
        return match strength_class(words.text, thread.nominal) {
            Ok(class) => {
                section.enter("strength", words.text, AnyValue::Text(class.name()), None, notes);
                Some(Some(class))
            }
            Err(error) => {
                notes.advised(words.at, &section.path("strength"), &error.to_string(), help);
                None
            }
        };
    }
    let usual = if thread.series.is_metric() { "8.8" } else { "SAE grade 5" };
    // A size that the usual class does not cover is judged without one.
    let Ok(class) = strength_class(usual, thread.nominal) else { return Some(None) };
    let why = "the usual class of cover screws (common practice, no published source); read the mark on the head and state strength";
    notes.assume(kind.own.path("strength"), AnyValue::Text(class.name()), why);
    Some(Some(class))
}

/// Outside diameter of the face under the head, and the hole under it.
fn face(kind: &Kind<'_, '_>, thread: &Thread, notes: &mut Notes) -> Option<(Length, Length)> {
    let known = match hexagon_nut(thread) {
        Ok(nut) => nut.map(|nut| (nut.across_flats, nut.hole)),
        Err(error) => {
            notes.problem(kind.of("thread").place("thread"), error.to_string(), "choose another thread");
            return None;
        }
    };
    let (usual_head, usual_hole) = known.unwrap_or((HEAD * thread.nominal, HOLE * thread.nominal));
    let why = match known {
        Some(_) => {
            "hexagon or cap screw on its usual clearance hole (ISO 272, ISO 273, from memory); state it for another head"
        }
        None => "about that of a cap screw (common practice, no published source); state it for another head",
    };
    let mut read = |key: &str, usual: Length| -> Option<Length> {
        let section = kind.of(key);
        if !section.has(key) {
            notes.assume(kind.own.path(key), AnyValue::Size(usual), why);
            return Some(usual);
        }
        Some(section.quantity(key, quantity::length, notes)?.value)
    };
    let (head, hole) = (read("head", usual_head), read("hole", usual_hole));
    let (head, hole) = (head?, hole?);
    let mm = |length: Length| length.get::<millimeter>();
    if !(thread.nominal <= hole && hole < head && head <= 5.0 * thread.nominal) {
        let message = format!(
            "a head of {:.2} mm over a hole of {:.2} mm does not suit {}: the hole must be from {:.2} mm, the head wider than the \
             hole and at most {:.2} mm",
            mm(head),
            mm(hole),
            thread.designation,
            mm(thread.nominal),
            mm(5.0 * thread.nominal)
        );
        let key = if kind.has("head") { "head" } else { "hole" };
        notes.problem(
            kind.of(key).place(key),
            message,
            "give the diameter of the face under the head and of the hole under it",
        );
        return None;
    }
    Some((head, hole))
}

fn into(
    kind: &Kind<'_, '_>,
    housing: Option<&Material>,
    library: &Library,
    notes: &mut Notes,
) -> Option<Option<Tapped>> {
    let material = if kind.has("into") {
        material_at(kind.of("into"), "into", library, notes)?
    } else {
        let Some(material) = housing else { return Some(None) };
        let why = "the housing, as the job has one; state into when the screws go into another part";
        notes.assume(kind.common("into"), AnyValue::Text(material.id().to_owned()), why);
        material.clone()
    };
    let mpa = |pressure: Pressure| pressure.get::<megapascal>();
    let range = (mpa as fn(Pressure) -> f64, 10.0..=3000.0, "10 MPa to 3000 MPa");
    let stated = within(kind.of("into_tensile"), "into_tensile", quantity::pressure, range, notes)?;
    let tensile = stated.unwrap_or_else(|| {
        let strength = material.strength();
        let why = "the strength of the material's record, for a ductile one its proof stress: on the safe side; state its tensile \
                   strength when it is known";
        notes.assume(kind.common("into_tensile"), AnyValue::Pressure(strength.value), why);
        strength.value
    });
    Some(Some(Tapped { material, tensile, stated: stated.is_some() }))
}
