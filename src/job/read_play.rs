//! What a bearing carries inside: its internal clearance and its static load rating.

use super::entry::AnyValue;
use super::model::{InternalPlay, PartKind};
use super::section::{Notes, Section, nearest};
use crate::quantity::{self, Force, Length, Nanometres};
use crate::stock::dimensions::{ClearanceGroup, Designation, RollingElement, Suffix};
use crate::stock::iso5753::{BearingFamily, tables};
use std::ops::Range;
use uom::si::force::kilonewton;

/// What rolls in a part, and the table of its clearance.
fn family(kind: PartKind) -> Option<(BearingFamily, RollingElement)> {
    match kind {
        PartKind::BallBearing => Some((BearingFamily::DeepGrooveBall, RollingElement::Ball)),
        PartKind::RollerBearing => Some((BearingFamily::CylindricalRoller, RollingElement::Roller)),
        PartKind::PlainBush | PartKind::SolidPlug => None,
    }
}

/// The internal clearance as delivered: stated, of the designation's group, or normal. `None` only when it was refused.
pub(super) fn internal_play(
    section: &Section<'_>,
    kind: PartKind,
    bore: Option<Length>,
    designation: Option<&Designation>,
    notes: &mut Notes,
) -> Option<Option<InternalPlay>> {
    let Some(((family, element), bore)) = family(kind).zip(bore) else {
        if section.has("internal_clearance") {
            let message = format!("a {} has no internal clearance", kind.noun());
            notes.problem(section.place("internal_clearance"), message, "leave it out");
            return None;
        }
        return Some(None);
    };
    let at = section.place("internal_clearance");
    let table = Table { family, element, bore };
    if section.has("internal_clearance") {
        return written(section, &table, at, notes);
    }
    let named = designated(designation);
    let play = table.group(named.unwrap_or(ClearanceGroup::CN), at, notes)?;
    if let (None, Some(play)) = (named, &play) {
        let why = format!("the ordinary group, {}; state internal_clearance, such as \"C3\"", play.source);
        notes.assume(section.path("internal_clearance"), AnyValue::Text("CN".to_owned()), why);
    }
    Some(play)
}

/// Where a bearing stands in the tables.
struct Table {
    family: BearingFamily,
    element: RollingElement,
    bore: Length,
}

impl Table {
    /// The clearance of a group; inner `None` where the tables have no such bore.
    fn group(&self, group: ClearanceGroup, at: Range<usize>, notes: &mut Notes) -> Option<Option<InternalPlay>> {
        match tables() {
            Ok(tables) => {
                let row = tables.clearance(self.family, group, Nanometres::from_length(self.bore));
                Some(row.map(|row| InternalPlay {
                    family: self.family,
                    element: self.element,
                    group: Some(group),
                    least: row.least.length(),
                    most: row.most.length(),
                    source: format!("ISO 5753-1 group {group:?} ({})", row.status),
                }))
            }
            Err(error) => {
                notes.problem(at, error.to_string(), "state the limits, such as \"5/20 um\"");
                None
            }
        }
    }
}

/// A group or limits, as the job has them.
fn written(section: &Section<'_>, table: &Table, at: Range<usize>, notes: &mut Notes) -> Option<Option<InternalPlay>> {
    let wanted = "write a group, C2, CN, C3, C4 or C5, or limits such as \"5/20 um\"";
    let words = section.words("internal_clearance", wanted, notes)?;
    let typed = words.text.trim().to_uppercase();
    if let Some(group) = ClearanceGroup::ALL.into_iter().find(|group| format!("{group:?}") == typed) {
        section.enter("internal_clearance", words.text, AnyValue::Text(typed), None, notes);
        let found = table.group(group, at, notes)?;
        if found.is_none() {
            let message = format!("`{}`: the table has no such bore", section.path("internal_clearance"));
            notes.problem(words.at, message, "state the limits, such as \"5/20 um\"");
            return None;
        }
        return Some(found);
    }
    if typed.starts_with('C') {
        let names = ClearanceGroup::ALL.map(|group| format!("{group:?}"));
        let help =
            nearest(&typed, names.iter().map(String::as_str)).map_or(String::new(), |n| format!("did you mean {n}? "));
        let message = format!("`{}` cannot be \"{}\"", section.path("internal_clearance"), words.text);
        notes.problem(words.at, message, help + wanted);
        return None;
    }
    stated(section, (table.family, table.element), notes)
}

fn stated(
    section: &Section<'_>,
    (family, element): (BearingFamily, RollingElement),
    notes: &mut Notes,
) -> Option<Option<InternalPlay>> {
    let found = section.quantity("internal_clearance", quantity::limits, notes)?;
    let (least, most) = (found.value.lower.length(), found.value.upper.length());
    if least < Length::default() || most <= Length::default() {
        let message = format!("`{}` must not be below zero", section.path("internal_clearance"));
        notes.problem(found.at, message, "give the play across the diameter before fitting, such as \"5/20 um\"");
        return None;
    }
    let source = "stated in the job".to_owned();
    Some(Some(InternalPlay { family, element, group: None, least, most, source }))
}

fn designated(designation: Option<&Designation>) -> Option<ClearanceGroup> {
    designation?.suffixes.iter().find_map(|suffix| match suffix {
        Suffix::InternalClearance(group) => Some(*group),
        _ => None,
    })
}

/// The static load rating C0, when it is given; `None` only when it was refused.
pub(super) fn static_rating(section: &Section<'_>, kind: PartKind, notes: &mut Notes) -> Option<Option<Force>> {
    if !section.has("static_rating") {
        return Some(None);
    }
    let found = section.quantity("static_rating", quantity::force, notes)?;
    let kilonewtons = found.value.get::<kilonewton>();
    if kind.is_bearing() && (0.01..=100_000.0).contains(&kilonewtons) {
        return Some(Some(found.value));
    }
    let message = format!(
        "`{}` is {kilonewtons} kN, but a bearing's rating lies from 0.01 kN to 100000 kN, and a {} has none",
        section.path("static_rating"),
        if kind.is_bearing() { "bush" } else { kind.noun() }
    );
    notes.problem(found.at, message, "give the static load rating C0 from the data of the bearing's maker");
    None
}
