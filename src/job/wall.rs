//! A boss whose wall is not the same all round.

use super::entry::AnyValue;
use super::read_seats::possible_outside;
use super::section::{Found, Notes, Section, in_mm};
use crate::mechanics::LARGEST_OFFSET;
use crate::quantity::{self, Length};
use uom::si::length::millimeter;

const WANTED: &str = "write wall = \"14 mm\", or \"7 mm to 25 mm\" for a boss that is thinner on one side";

const FAR_OUT: &str = "check the units; farther out of the middle the thin side is no ring any more: plan with the thinnest wall alone \
                       (wall = \"7 mm\") and have its strength looked at";

/// Thinnest and thickest wall, where `wall` names both; `None` only where it could not be read.
pub(super) fn uneven(section: &Section<'_>, notes: &mut Notes) -> Option<Option<(Length, Length)>> {
    if !section.has("wall") || section.has("outside") {
        return Some(None);
    }
    let Some(words) = section.words("wall", WANTED, &mut Notes::default()) else { return Some(None) };
    let Some((first, second)) = words.text.split_once(" to ") else { return Some(None) };
    let mut ends = Vec::new();
    for text in [first, second] {
        match quantity::length(text) {
            Ok(entered) => ends.push((entered.value, entered.system)),
            Err(error) => {
                let begin = text.as_ptr() as usize - words.text.as_ptr() as usize;
                let place = words.part(begin + error.at.start..begin + error.at.end);
                notes.problem(place, format!("`{}`: {}", section.path("wall"), error.problem), error.help);
                return None;
            }
        }
    }
    let [(thin, system), (thick, other)] = ends[..] else { return Some(None) };
    if !(Length::default() < thin && thin < thick) {
        let message = format!(
            "`{}` goes from {} mm to {} mm; the thin side must come first and be above zero",
            section.path("wall"),
            in_mm(thin),
            in_mm(thick)
        );
        notes.problem(words.at, message, WANTED);
        return None;
    }
    section.enter("wall", first, AnyValue::Size(thin), system, notes);
    section.enter("wall", second, AnyValue::Size(thick), other, notes);
    Some(Some((thin, thick)))
}

/// Outside of the concentric ring that stands for a boss with these walls.
///
/// In an eccentric boss of wall `a + b cos θ` the hoop force is much the same all round, and the stretch of each piece goes
/// with one over its wall; the mean of that over the turn is `1/√(a² - b²)`, so the equivalent wall is the geometric mean
/// of the thinnest and the thickest. Own reasoning for thin walls, no published source.
pub(super) fn equivalent_outside(
    section: &Section<'_>,
    bore: Length,
    (thin, thick): (Length, Length),
    notes: &mut Notes,
) -> Option<Length> {
    let at = section.place("wall");
    for wall in [thin, thick] {
        possible_outside(Found { value: bore + 2.0 * wall, at: at.clone(), system: None }, bore, notes)?;
    }
    let (thin, thick) = (thin.get::<millimeter>(), thick.get::<millimeter>());
    let most = LARGEST_OFFSET * in_mm(bore);
    if thick - thin >= most {
        let [thin, thick, most] = [thin, thick, most].map(|wall| (wall * 1e6).round() / 1e6);
        let message = format!(
            "`{}` goes from {thin} mm to {thick} mm; they must differ by less than half the bore, {most} mm",
            section.path("wall")
        );
        notes.problem(at, message, FAR_OUT);
        return None;
    }
    let wall = Length::new::<millimeter>((thin * thick).sqrt());
    let why = "the geometric mean of both walls: the concentric ring whose hoop stretches as much as that of an eccentric \
               boss (own reasoning, no published source)";
    notes.assume("housing: equivalent wall", AnyValue::RoughSize(wall), why);
    Some(bore + 2.0 * wall)
}
