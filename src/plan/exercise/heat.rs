//! Level 2: how long in a cold bath, and how long it lasts.

use super::draw::Draw;
use super::fits::{AT_20, CONSTANT, OTHER_WAITS, allowed, bench};
use super::model::{Answer, Drawn, Properties, ask};
use crate::plan::{Verdict, Window};
use uom::si::time::second;

/// Least and most time in hand that is worth asking for, s: what is gone at once shows nothing.
const WINDOW_S: (f64, f64) = (30.0, 7200.0);

/// A part in dry ice and alcohol, with a stated film.
pub(super) fn in_a_bath(draw: &mut Draw) -> Drawn {
    let pair = draw.pair();
    let title = draw.scene(pair.part);
    let part = draw.one_of(&["k6", "m6", "n6", "p6"]);
    let (film, hold) = (draw.stepped(100, 400, 20), draw.stepped(1, 8, 1));
    let air = draw.stepped(6, 16, 1);
    let text = pair.text(&title, &format!("\"{part}\""), "\"H7\"")
        + &format!(
            "\n[chill]\npart = \"{}\"\nmedium = \"dry-ice-alcohol\"\ntemperature = \"-72 °C\"\nfilm = \"{film} W/m2K\"\n\
             hold = \"{hold} min\"\n",
            pair.part
        )
        + &bench(draw.stepped(5, 10, 5))
        + &format!("film = \"{air} W/m2K\"\n");
    let questions = vec![
        ask("How large is the time constant in the bath?", &[Answer::Number(0, "chill/time_constant_s")]),
        ask("How cold is it when it is taken out?", &[Answer::Number(0, "chill/end_c")]),
        ask("How much clearance has the tightest case then?", &[Answer::Number(0, "at_bore/clearance_um/tightest")]),
        ask(
            "How long must it be in the bath at least, for the tightest case to have the placing clearance?",
            &[Answer::Number(0, "time_to_clear_s/tightest")],
        )
        .with_slip("The way still to go shrinks by the factor e in each time constant; it does not go evenly"),
        ask(
            "How long does the placing clearance last in the air of the shop?",
            &[Answer::Number(0, "window_s/tightest")],
        )
        .with_slip(
            "Start from the temperature on leaving, and do not leave radiation out: it is about as large as still air",
        ),
    ];
    Drawn {
        story: format!(
            "A {} of {}, tolerance class {part}, goes into a bore H7 in {}. It is chilled in dry ice and alcohol, and placed at once or \
             left to lie in the shop for a while.",
            pair.part, pair.inner.name, pair.outer.name
        ),
        title,
        supposed: vec![
            CONSTANT,
            AT_20,
            OTHER_WAITS,
            "The film coefficients are constant; in the bath nothing is radiated, in the shop the part radiates to walls as \
             warm as the air",
            "The part has one temperature; the resistance inside it makes h / (1 + Bi/n) of a film coefficient h, with the number n \
             of the shortest way out: 4 across a cylinder, 3 through a wall or along a short cylinder. In the shop Bi is \
             smaller in proportion to the coefficient, radiation included",
            "The Stefan-Boltzmann constant is 5.670374419e-8 W/(m² K⁴) (CODATA 2018); temperatures count in kelvin there",
            "The air is dry",
        ],
        cases: vec![("chilled".to_owned(), text)],
        properties: Properties::Constant,
        questions,
        suits: |plans| {
            let Some(seat) = plans.first().and_then(|plan| plan.seats.first()) else { return false };
            let window = matches!(seat.window.tightest, Window::Lasts(time)
                if (WINDOW_S.0..WINDOW_S.1).contains(&time.get::<second>()));
            allowed(plans) && window && seat.verdict == Verdict::DropsIn && seat.time_to_clear.tightest.is_some()
        },
    }
}
