//! Level 2: pressure, force and torque of two plain rings.

use super::draw::Draw;
use super::fits::{AT_20, CONSTANT, allowed, bench};
use super::model::{Answer, Drawn, Properties, ask};
use crate::quantity::{Force, Length};

/// A part pressed into a through bore of its own length.
pub(super) fn pressed(draw: &mut Draw) -> Drawn {
    let pair = draw.pair();
    let title = draw.scene(pair.part);
    let part = draw.one_of(&["p6", "r6", "s6"]);
    let friction = draw.stepped(6, 16, 1);
    let text = pair.text(&title, &format!("\"{part}\""), "\"H7\"")
        + &bench(10)
        + &format!(
            "\n[press]\nfriction = \"0.{friction:02}\"\n\n[service]\nhottest = \"{} °C\"\n",
            draw.stepped(30, 60, 5)
        );
    let number = |at| Answer::Number(0, at);
    let questions = vec![
        ask("How large is the pressure in the tightest case?", &[number("press/pressure_mpa/tightest")]),
        ask("Which force presses it home?", &[number("press/force_n/tightest")])
            .with_slip("The force is that of the full depth; at half the depth it is half as much"),
        ask("How large is the hoop stress at the bore?", &[number("press/hoop_outer_mpa/tightest")]),
        ask(
            "The interference at which the weaker part reaches its strength is given. By which factor is the strength above \
             the stress?",
            &[number("press/yield_factor/tightest")],
        ),
        ask(
            "Which axial force, and without it which torque, does the loosest case surely hold when hottest?",
            &[number("service/0/holds_n/loosest"), number("service/0/holds_nm/loosest")],
        )
        .with_slip("Force times half the diameter is the torque"),
    ];
    Drawn {
        story: format!(
            "A {} of {}, tolerance class {part}, is pressed into a through bore H7 in {}, as long as the part. In service both get \
             equally warm.",
            pair.part, pair.inner.name, pair.outer.name
        ),
        title,
        supposed: vec![
            CONSTANT,
            AT_20,
            "Both parts are plain rings of equal width, elastic, in plane stress (Lamé)",
            "The surfaces are smooth: nothing of the interference is lost to roughness",
        ],
        cases: vec![("pressed".to_owned(), text)],
        properties: Properties::Constant,
        questions,
        suits: |plans| {
            let Some(seat) = plans.first().and_then(|plan| plan.seats.first()) else { return false };
            let holds = seat.service.first().is_some_and(|state| state.holds_force.loosest > Force::default());
            let bears = seat.fit.effective_interference.loosest > Length::default();
            allowed(plans) && holds && bears && seat.press.yield_factor.tightest.is_some()
        },
    }
}
