//! Level 1: the band of a fit, and the temperature that clears it.

use super::draw::Draw;
use super::model::{Answer, Drawn, Properties, ask};
use crate::plan::push::Pressing;
use crate::plan::{Plan, Verdict};
use uom::si::thermodynamic_temperature::degree_celsius;

/// What closed formulas suppose.
pub(super) const CONSTANT: &str = "The values of both materials are constant";
pub(super) const AT_20: &str = "Sizes are given at 20 °C, and the shop is at that temperature";
pub(super) const OTHER_WAITS: &str = "The other part stays at the temperature of the shop";

/// A shop at 20 °C in which nothing is lost on the way.
pub(super) fn bench(placing_um: u32) -> String {
    format!("\n[bench]\ntemperature = \"20 °C\"\ncarry = \"0 s\"\nplacing_clearance = \"{placing_um} um\"\n")
}

const SIZES: [Answer; 4] = [
    Answer::Number(0, "basis/inner/smallest_mm"),
    Answer::Number(0, "basis/inner/largest_mm"),
    Answer::Number(0, "basis/outer/smallest_mm"),
    Answer::Number(0, "basis/outer/largest_mm"),
];
const BAND: [Answer; 2] =
    [Answer::Number(0, "fit/interference_um/tightest"), Answer::Number(0, "fit/interference_um/loosest")];

/// A hole and what goes into it, by classes.
pub(super) fn of_classes(draw: &mut Draw) -> Drawn {
    let pair = draw.pair();
    let title = draw.scene(pair.part);
    let (hole, part) = draw.one_of(&[
        ("H7", "p6"),
        ("H7", "r6"),
        ("H7", "s6"),
        ("H7", "n6"),
        ("H7", "k6"),
        ("H7", "m6"),
        ("H7", "g6"),
        ("H8", "f7"),
        ("N7", "h6"),
        ("P7", "h6"),
        ("K7", "h6"),
        ("R7", "h6"),
    ]);
    let text = pair.text(&title, &format!("\"{part}\""), &format!("\"{hole}\"")) + &bench(10);
    let questions = vec![
        ask("Write down the limits of both sizes.", &SIZES),
        ask("How large are the largest and the least interference?", &BAND)
            .with_slip("The tightest case is the largest part in the smallest bore, not nominal in nominal"),
        ask("What kind of fit is it?", &[Answer::Kind(0)]),
    ];
    Drawn {
        story: format!(
            "A {} of tolerance class {part} goes into a bore {hole}. Materials: {} in {}.",
            pair.part, pair.inner.name, pair.outer.name
        ),
        title,
        supposed: vec!["Sizes are at 20 °C (ISO 1)"],
        cases: vec![("as drawn".to_owned(), text)],
        properties: Properties::Constant,
        questions,
        suits: |_| true,
    }
}

/// What a chill must reach.
pub(super) fn chilled(draw: &mut Draw) -> Drawn {
    let pair = draw.pair();
    let title = draw.scene(pair.part);
    let part = draw.one_of(&["n6", "p6", "r6", "m6"]);
    let text = pair.text(&title, &format!("\"{part}\""), "\"H7\"") + &bench(draw.stepped(5, 20, 5));
    let questions = vec![
        ask("How large are the largest and the least interference?", &BAND),
        ask(
            format!("To which temperature must the {} be chilled to clear in the tightest case?", pair.part),
            &[Answer::Number(0, "clears_at/inner_c")],
        )
        .with_slip(
            "Diameter with diameter: the radius with an interference of diameters doubles the step of temperature, and one \
             of 100 °F is a step of 56 K",
        ),
    ];
    Drawn {
        story: format!(
            "A {} of {}, tolerance class {part}, shall drop into a bore H7 in {}. It is chilled.",
            pair.part, pair.inner.name, pair.outer.name
        ),
        title,
        supposed: vec![CONSTANT, AT_20, OTHER_WAITS],
        cases: vec![("chilled".to_owned(), text)],
        properties: Properties::Constant,
        questions,
        suits: |plans| {
            let clears = plans.first().and_then(|plan| plan.seats.first()?.clears_at.inner);
            clears.is_some_and(|at| (-90.0..10.0).contains(&at.get::<degree_celsius>()))
        },
    }
}

/// What warming must reach, from sizes that were measured.
pub(super) fn warmed(draw: &mut Draw) -> Drawn {
    let pair = draw.pair();
    let title = draw.scene(pair.part);
    let (part_over, bore_over) = (draw.stepped(15, 45, 1), draw.stepped(0, 12, 1));
    let measured = |over: u32, within: u32| {
        format!("{{ measured = \"{}.{over:03} mm\", within = \"{within} um\", at = \"20 °C\" }}", pair.outside)
    };
    let (inner, outer) = (measured(part_over, draw.stepped(1, 3, 1)), measured(bore_over, draw.stepped(2, 5, 1)));
    let text = pair.text(&title, &inner, &outer) + &bench(draw.stepped(5, 20, 5));
    let questions = vec![
        ask("How large are the largest and the least interference, with the uncertainty of both readings?", &BAND),
        ask(
            "To which temperature must the housing be warmed so that the part drops in, in the tightest case?",
            &[Answer::Number(0, "clears_at/outer_c")],
        )
        .with_slip("The bore grows as the metal around it does: a hole gets larger when it is warmed, not smaller"),
    ];
    Drawn {
        story: format!(
            "A {} of {} and its bore in {} were measured; the sizes given include the uncertainty. The housing is warmed.",
            pair.part, pair.inner.name, pair.outer.name
        ),
        title,
        supposed: vec![CONSTANT, AT_20, OTHER_WAITS],
        cases: vec![("warmed".to_owned(), text)],
        properties: Properties::Constant,
        questions,
        suits: |plans| {
            let clears = plans.first().and_then(|plan| plan.seats.first()?.clears_at.outer);
            clears.is_some_and(|at| (35.0..120.0).contains(&at.get::<degree_celsius>()))
        },
    }
}

/// Whether no plan forbids the job.
pub(super) fn allowed(plans: &[Plan<'_>]) -> bool {
    // What yields and goes on holding has no closed formula in a class.
    let elastic =
        |press: &Pressing| press.takes_set.is_none() && press.flow_high.is_none() && press.changes_elastically;
    let solved = |plan: &Plan<'_>| plan.verdict != Verdict::DoNot && plan.seats.iter().all(|seat| elastic(&seat.press));
    plans.iter().all(solved)
}
