//! Level 3: a whole job, with the ways to do it and what would change it.

use super::draw::Draw;
use super::fits::allowed;
use super::model::{Answer, Drawn, Properties, Question, ask};
use crate::plan::{Plan, Verdict};

const NAMES: [&str; 4] = ["A: freezer", "B: dry ice", "C: oven", "D: looser class"];

/// A job's text without its treatment, and the housing with another class.
struct Job {
    part: &'static str,
    text: String,
    other: String,
}

/// A ball bearing into its housing.
pub(super) fn bearing(draw: &mut Draw) -> Drawn {
    let title = draw.scene("bearing");
    let (designation, outside) = draw.one_of(&[
        ("6204", 47),
        ("6205", 52),
        ("6206", 62),
        ("6207", 72),
        ("6208", 80),
        ("6306", 72),
        ("6308", 90),
    ]);
    let (class, looser) = draw.one_of(&[("N7", "M7"), ("P7", "N7"), ("R7", "P7"), ("P6", "N6")]);
    let material = draw.one_of(&["cast-aluminium", "grey-iron", "carbon-steel", "aluminium-6061-t6"]);
    let boss = outside + 2 * draw.stepped(10, 22, 1);
    let text = |class: &str| {
        format!(
            "title = \"{title}\"\n\n[bearing]\ndesignation = \"{designation}\"\nclosure = \"open\"\n\n[housing]\n\
             bore_limits = \"{class}\"\noutside = \"{boss} mm\"\nmaterial = \"{material}\"\n"
        )
    };
    let story = format!(
        "An open bearing {designation} of normal tolerance (ISO 492) goes into a housing of {material}, class {class}. Three \
         ways are open: a freezer, dry ice, or an oven for the housing. Someone proposes the looser class {looser}."
    );
    let job = Job { part: "bearing", text: text(class), other: text(looser) };
    drawn(draw, title, story, &job)
}

/// A bronze bush into its housing.
pub(super) fn bush(draw: &mut Draw) -> Drawn {
    let title = draw.scene("bush");
    let outside = draw.stepped(30, 70, 5);
    let (bore, width) = (outside * draw.stepped(60, 80, 5) / 100, outside * draw.stepped(60, 100, 10) / 100);
    let boss = outside * draw.stepped(160, 220, 10) / 100;
    let material = draw.one_of(&["carbon-steel", "grey-iron", "ductile-iron"]);
    let (class, looser) = draw.one_of(&[("p6", "n6"), ("r6", "p6"), ("n6", "m6")]);
    let text = |class: &str| {
        format!(
            "title = \"{title}\"\n\n[bearing]\nkind = \"plain bush\"\nbore = \"{bore} mm\"\noutside = \"{outside} mm\"\n\
             width = \"{width} mm\"\noutside_limits = \"{class}\"\nmaterial = \"bronze\"\n\n[housing]\nbore_limits = \"H7\"\n\
             outside = \"{boss} mm\"\nlength = \"{width} mm\"\nmaterial = \"{material}\"\n"
        )
    };
    let story = format!(
        "A bronze bush, class {class}, goes into a bore H7 in {material}. Three ways are open: a freezer, dry ice, or an oven \
         for the housing. Someone proposes the looser class {looser}."
    );
    let job = Job { part: "bush", text: text(class), other: text(looser) };
    drawn(draw, title, story, &job)
}

fn drawn(draw: &mut Draw, title: String, story: String, job: &Job) -> Drawn {
    let shop = format!(
        "\n[bench]\ntemperature = \"{} °C\"\ncarry = \"{} s\"\nplacing_clearance = \"10 um\"\n\n[service]\n\
         coldest = \"{} °C\"\nhottest = \"{} °C\"\n",
        draw.stepped(16, 26, 1),
        draw.stepped(10, 30, 5),
        draw.one_of(&["-10", "-5", "0", "5"]),
        draw.stepped(50, 90, 5),
    );
    let chill = |medium: &str, hold: &str| {
        format!("\n[chill]\npart = \"{}\"\nmedium = \"{medium}\"\nhold = \"{hold}\"\n", job.part)
    };
    let oven = format!(
        "\n[warm]\npart = \"housing\"\nmedium = \"oven\"\ntemperature = \"{} °C\"\nhold = \"2 h 30 min\"\n",
        draw.stepped(60, 100, 10)
    );
    let texts = [
        format!("{}{}{shop}", job.text, chill("domestic-freezer", "4 h")),
        format!("{}{}{shop}", job.text, chill("dry-ice", "1 h 30 min")),
        format!("{}{oven}{shop}", job.text),
        format!("{}{}{shop}", job.other, chill("domestic-freezer", "4 h")),
    ];
    Drawn {
        title,
        story,
        supposed: vec![
            "Temperatures on arrival, changes of length and the factors of the seat's shape are given: they are followed in \
             small steps, read from tables, or computed in the section",
            "Each part is a plain elastic ring (Lamé); a bearing's outer ring has the wall that is given",
        ],
        cases: NAMES.iter().map(ToString::to_string).zip(texts).collect(),
        properties: Properties::Library,
        questions: questions(),
        suits,
    }
}

fn questions() -> Vec<Question> {
    let number = Answer::Number;
    vec![
        ask(
            "How large are the largest and the least interference at 20 °C, and what is left of them in coldest and in \
             hottest service?",
            &[
                number(0, "fit/interference_um/tightest"),
                number(0, "fit/interference_um/loosest"),
                number(0, "service/0/interference_um/tightest"),
                number(0, "service/0/interference_um/loosest"),
                number(0, "service/1/interference_um/tightest"),
                number(0, "service/1/interference_um/loosest"),
            ],
        )
        .with_slip("The part that expands more decides whether warmth loosens the fit or tightens it"),
        ask(
            "Pressed at the temperature of the shop in place of A: which pressure, force and hoop stress, and what reserve of strength?",
            &[
                number(0, "press/pressure_mpa/tightest"),
                number(0, "press/force_n/tightest"),
                number(0, "press/hoop_outer_mpa/tightest"),
                number(0, "press/yield_factor/tightest"),
            ],
        ),
        ask(
            "Which of the ways A, B and C lets even the tightest case drop in with the placing clearance?",
            &[
                number(0, "at_bore/clearance_um/tightest"),
                Answer::Verdict(0),
                number(1, "at_bore/clearance_um/tightest"),
                Answer::Verdict(1),
                number(2, "at_bore/clearance_um/tightest"),
                Answer::Verdict(2),
            ],
        )
        .with_slip(
            "Ask of each way: enough clearance, with no limit of material, closure or fit passed, and which danger",
        ),
        ask(
            "What would the looser class change in the freezer (D beside A), and what does it cost in hottest service?",
            &[
                number(3, "at_bore/clearance_um/tightest"),
                Answer::Verdict(3),
                number(3, "service/1/interference_um/loosest"),
            ],
        ),
    ]
}

/// No way is forbidden; one at least drops in, and one at least does not.
fn suits(plans: &[Plan<'_>]) -> bool {
    let ways = plans.get(..3).unwrap_or_default();
    let free = ways.iter().filter(|plan| plan.verdict == Verdict::DropsIn).count();
    let strong = plans
        .first()
        .and_then(|plan| plan.seats.first())
        .is_some_and(|seat| seat.press.yield_factor.tightest.is_some() && seat.service.len() == 2);
    allowed(plans) && strong && (1..3).contains(&free)
}
