//! Temperatures that a treatment or a state of service leads to, held against the tables of the materials.

use super::model::{Hold, Housing, Measured, Part, Piece, ServiceState, Shaft, Size, Treatment};
use super::section::{Notes, Section};
use crate::quantity::ThermodynamicTemperature;
use crate::stock::curve::Curve;
use crate::stock::material::Material;
use std::ops::Range;
use uom::si::thermodynamic_temperature::{degree_celsius, kelvin};

/// The checked parts of a job whose temperatures are looked at.
pub(super) struct Pieces<'j> {
    pub(super) part: &'j Part,
    pub(super) housing: Option<&'j Housing>,
    pub(super) shaft: Option<&'j Shaft>,
}

impl<'j> Pieces<'j> {
    /// What it is made of.
    fn of(&self, piece: Piece) -> impl Iterator<Item = &'j Material> {
        self.all().filter(move |(of, _)| *of == piece).map(|(_, material)| material)
    }

    fn all(&self) -> impl Iterator<Item = (Piece, &'j Material)> {
        let part = std::iter::once((Piece::Part, &self.part.material));
        let housing = self.housing.into_iter().flat_map(Housing::materials).map(|material| (Piece::Housing, material));
        let shaft = self.shaft.map(|shaft| (Piece::Shaft, &shaft.material));
        part.chain(housing).chain(shaft)
    }
}

/// A treatment must lead to where it is asked to, and stay inside the tables of its piece.
pub(super) fn treatment(top: &Section<'_>, key: &str, treatment: &Treatment, pieces: &Pieces<'_>, notes: &mut Notes) {
    let powered = treatment.power.value > 0.0;
    let leads_to = match treatment.hold {
        Hold::Reaches(target) => {
            if !powered && beyond(target, treatment) {
                unreachable(top.place_in(key, "until"), target, treatment, notes);
                return;
            }
            target
        }
        Hold::For(_) | Hold::Settled => treatment.temperature,
    };
    let at = top.place_in(key, "medium");
    for material in pieces.of(treatment.piece) {
        covered(&at, material, leads_to, "choose a milder medium, or write until = \"...\"", notes);
    }
}

/// Whether a target lies beyond the medium that is to bring the piece there.
fn beyond(target: ThermodynamicTemperature, treatment: &Treatment) -> bool {
    let chills = treatment.medium.direction() == crate::stock::medium::Direction::Chill;
    if chills { target <= treatment.temperature } else { target >= treatment.temperature }
}

fn unreachable(at: Range<usize>, target: ThermodynamicTemperature, treatment: &Treatment, notes: &mut Notes) {
    let message = format!(
        "{:.1} °C is never reached in a medium at {:.1} °C",
        target.get::<degree_celsius>(),
        treatment.temperature.get::<degree_celsius>()
    );
    let side = if treatment.medium.direction() == crate::stock::medium::Direction::Chill { "colder" } else { "hotter" };
    notes.problem(at, message, format!("choose a {side} medium, a target short of it, or until = \"settled\""));
}

/// Every state of service must lie inside the expansion tables.
pub(super) fn service(top: &Section<'_>, states: &[ServiceState], pieces: &Pieces<'_>, notes: &mut Notes) {
    for state in states {
        for (piece, material) in pieces.all() {
            let temperature = match piece {
                Piece::Part => state.part,
                Piece::Housing => state.housing,
                Piece::Shaft => state.shaft,
            };
            let at = top.place("service");
            inside(
                &at,
                material,
                ("thermal expansion", material.expansion()),
                temperature,
                "state a milder service",
                notes,
            );
        }
    }
}

/// A measured size must have been measured inside the tables of part and gauge.
pub(super) fn measured(at: &Range<usize>, size: Option<&Size>, material: &Material, notes: &mut Notes) {
    let Some(Size::Measured(measured)) = size else { return };
    let Measured { part_temperature, gauge_temperature, gauge_material, .. } = measured.as_ref();
    let help = "measure nearer to room temperature";
    inside(at, material, ("thermal expansion", material.expansion()), *part_temperature, help, notes);
    inside(at, gauge_material, ("thermal expansion", gauge_material.expansion()), *gauge_temperature, help, notes);
}

fn covered(
    at: &Range<usize>,
    material: &Material,
    temperature: ThermodynamicTemperature,
    help: &str,
    notes: &mut Notes,
) {
    let tables = [
        ("thermal expansion", material.expansion()),
        ("heat capacity", material.heat_capacity()),
        ("thermal conductivity", material.conductivity()),
    ];
    for table in tables {
        if !inside(at, material, table, temperature, help, notes) {
            return;
        }
    }
}

fn inside(
    at: &Range<usize>,
    material: &Material,
    (property, table): (&str, &Curve),
    temperature: ThermodynamicTemperature,
    help: &str,
    notes: &mut Notes,
) -> bool {
    let (from, to) = table.range();
    let asked = temperature.get::<kelvin>();
    if table.at(asked).is_ok() {
        return true;
    }
    let message = format!(
        "the {property} of {} is known from {:.1} °C to {:.1} °C, not at {:.1} °C",
        material.id(),
        from - 273.15,
        to - 273.15,
        temperature.get::<degree_celsius>()
    );
    notes.problem(at.clone(), message, format!("{help}; or add a material whose tables reach there"));
    false
}
