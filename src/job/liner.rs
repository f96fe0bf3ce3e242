//! A liner in the housing's bore: what it is, and how it is read.

use super::entry::AnyValue;
use super::read_material::material_at;
use super::section::{Notes, Section, in_mm};
use crate::quantity::{self, Length};
use crate::stock::{Library, Material};
use uom::si::length::micrometer;

const KEYS: [&str; 5] = ["outside", "wall", "material", "interference", "within"];

/// Thinnest liner and thinnest wall around it, as a share of the bore: below it is a coating, or no wall at all.
const THINNEST: f64 = 0.01;

/// Largest interference of a liner over its outside, past any usual press fit: more is taken for a slip of the decimal point (common
/// practice, no published source). Whether parts bear less than that is for the plan, which holds both against their strength.
const TIGHTEST: f64 = 0.005;

/// A sleeve that stays in the housing and has the seat's bore.
#[derive(Clone, Debug)]
pub struct Liner {
    /// Outside diameter, where it meets the housing.
    pub outside: Length,
    /// Material.
    pub material: Material,
    /// Least and most diametral interference at 20 °C with which it is pressed in; none where it is cast in.
    pub interference: Option<(Length, Length)>,
}

/// The liner of a housing; `None` only where it was refused.
pub(super) fn liner(
    section: &Section<'_>,
    bore: Length,
    housing_outside: Option<Length>,
    library: &Library,
    notes: &mut Notes,
) -> Option<Option<Liner>> {
    if !section.has("liner") {
        return Some(None);
    }
    let table = section.section("liner", &KEYS, notes)?;
    table.missing("material", "name the liner's material (`seatwise materials` lists them)", notes);
    let material = material_at(&table, "material", library, notes);
    let outside = outside(&table, bore, housing_outside?, notes);
    let interference = interference(&table, outside, notes);
    Some(Some(Liner { outside: outside?, material: material?, interference: interference? }))
}

fn outside(table: &Section<'_>, bore: Length, housing: Length, notes: &mut Notes) -> Option<Length> {
    let key = match (table.has("outside"), table.has("wall")) {
        (true, true) => {
            notes.problem(table.place("wall"), "both `outside` and `wall` are given", "keep one of the two");
            return None;
        }
        (false, true) => "wall",
        _ => "outside",
    };
    table.missing(key, "give the liner's outside diameter, or its wall", notes);
    let found = table.quantity(key, quantity::length, notes)?;
    let outside = if key == "wall" { bore + 2.0 * found.value } else { found.value };
    let (least, most) = (bore * (1.0 + 2.0 * THINNEST), housing - bore * (2.0 * THINNEST));
    if outside >= least && outside <= most {
        return Some(outside);
    }
    let message = format!(
        "the liner is {:.3} mm outside, between a bore of {} mm and a housing of {} mm, but must lie from {:.3} to {:.3} mm",
        in_mm(outside),
        in_mm(bore),
        in_mm(housing),
        in_mm(least),
        in_mm(most)
    );
    notes.problem(
        found.at,
        message,
        "the liner and the housing around it both need a wall; check the size and its unit",
    );
    None
}

/// How it is held; outer `None` only where that was refused.
fn interference(table: &Section<'_>, outside: Option<Length>, notes: &mut Notes) -> Option<Option<(Length, Length)>> {
    if !table.has("interference") {
        if table.has("within") {
            notes.problem(table.place("within"), "`within` needs `interference` beside it", "give both, or none");
            return None;
        }
        let why = "no interference stated: the liner follows the housing and never comes free in it; state interference \
                   for one that is pressed or shrunk in";
        notes.assume(table.path("held"), AnyValue::Text("cast in".to_owned()), why);
        return Some(None);
    }
    let found = table.small_length("interference", notes)?;
    let within = if table.has("within") {
        table.small_length("within", notes)?.value
    } else {
        let why =
            "no limits of the liner's interference stated: taken as exact; state `within` for how far it may be off";
        notes.assume(table.path("within"), AnyValue::SmallLength(Length::default()), why);
        Length::default()
    };
    let (least, most) = (found.value - within, found.value + within);
    let limit = TIGHTEST * outside?;
    if within >= Length::default() && least > Length::default() && most <= limit {
        return Some(Some((least, most)));
    }
    let um = |length: Length| length.get::<micrometer>();
    let message = format!(
        "the liner's interference is {:.1} to {:.1} µm but must lie above 0 µm and up to {:.0} µm, 0.5 % of its outside: no \
         usual press fit has more",
        um(least),
        um(most),
        um(limit)
    );
    notes.problem(
        found.at,
        message,
        "give the difference of the diameters before fitting; leave it out for one cast in",
    );
    None
}
