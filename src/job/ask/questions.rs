//! The questions, in the order in which they are asked. Each stands for a key of the job file.

use super::Answers;

/// What an empty answer means.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Usual {
    /// There is none: the job cannot do without.
    Needed,
    /// This answer.
    Value(&'static str),
    /// The key is left out, and the plan does this.
    LeftOut(&'static str),
}

/// One question.
#[derive(Clone, Copy, Debug)]
pub struct Question {
    /// The key of the job file that it stands for.
    pub key: &'static str,
    /// The question; `{part}` stands for what goes in.
    pub words: &'static str,
    /// Answers to choose from, by number or by word; empty where any is read.
    pub choices: &'static [&'static str],
    /// What an empty answer means.
    pub usual: Usual,
    /// Why it is asked, and how to find out.
    pub why: &'static str,
    pub(super) when: fn(&Answers) -> bool,
}

use Usual::{LeftOut, Needed, Value};

fn always(_: &Answers) -> bool {
    true
}

fn sized(a: &Answers) -> bool {
    !is_bearing(a) || a.is_empty("bearing.designation")
}

fn is_bearing(a: &Answers) -> bool {
    a.is("bearing.kind", "bearing")
}

fn in_housing(a: &Answers) -> bool {
    !a.is("seat", "shaft")
}

fn on_shaft(a: &Answers) -> bool {
    is_bearing(a) && !a.is("seat", "housing")
}

fn own_class(a: &Answers) -> bool {
    !is_bearing(a)
}

fn chilled(a: &Answers) -> bool {
    !a.is("chill.medium", "none")
}

fn warmed(a: &Answers) -> bool {
    !a.is("warm.medium", "none")
}

fn heated_from_within(a: &Answers) -> bool {
    a.is("warm.medium", "induction-heater")
}

fn warmed_around(a: &Answers) -> bool {
    warmed(a) && !heated_from_within(a)
}

/// A plate or a gun never brings the part to its own temperature, so there is nothing to settle at.
fn from_one_side(a: &Answers) -> bool {
    a.is("warm.medium", "hot-plate") || a.is("warm.medium", "hot-air-gun")
}

fn warm_adjustable(a: &Answers) -> bool {
    warmed_around(a) && !a.is("warm.medium", "boiling-water")
}

const fn question(
    key: &'static str,
    words: &'static str,
    (choices, usual): (&'static [&'static str], Usual),
    why: &'static str,
    when: fn(&Answers) -> bool,
) -> Question {
    Question { key, words, choices, usual, why, when }
}

const SURE: &str = "A bore gauge or micrometer in good hands is sure to about 2 um, a caliper to 30 um. The plan counts with the worse end.";
const FIT: &str = "The class on the drawing (N7), its deviations (-39/-9 um), the size you measured (61.975 mm), or several readings \
                   across (61.972 mm / 61.979 mm). The fit hangs on it.";
const COLDER: &str = "The temperature that a thermometer in it shows, not that on the dial.";
const HOLD: &str = "From putting it in to taking it out, such as 45 min or 2 h. Empty: until it has all but come to the temperature of \
                    its medium, and the plan says how long that is. A temperature, such as -15 °C: until it has that.";

/// Every question.
pub const QUESTIONS: &[Question] = &[
    question(
        "title",
        "What is the job, in a few words?",
        (&[], Value("Job without a name")),
        "It stands over the plan, so that you find it again: \"Rear bearing, raw-water pump\".",
        always,
    ),
    question(
        "bearing.kind",
        "What goes in?",
        (&["bearing", "bush", "plug"], Value("bearing")),
        "A bearing has two rings and something that rolls; a bush is one ring; a plug has no bore.",
        always,
    ),
    question(
        "bearing.designation",
        "Which bearing? The number on it, such as 6206 or 6309-2RS C3; empty to give its sizes",
        (&[], LeftOut("the sizes are asked for")),
        "Deep groove ball bearings of the usual series are known by their number. For roller and inch bearings give the sizes.",
        is_bearing,
    ),
    question(
        "seat",
        "Where does it go?",
        (&["housing", "shaft", "both"], Value("housing")),
        "The seat that is tight in this job: the outer ring in its housing, the inner ring on its shaft, or both at once.",
        is_bearing,
    ),
    question(
        "rolling",
        "What rolls in it?",
        (&["balls", "rollers"], Value("balls")),
        "It decides the mass and the play of the bearing.",
        |a| is_bearing(a) && sized(a),
    ),
    question(
        "bearing.bore",
        "Bore of the {part}, nominal",
        (&[], Needed),
        "As the drawing names it: 30 mm, or 1-1/8 in.",
        |a| sized(a) && !a.is("bearing.kind", "plug"),
    ),
    question(
        "bearing.outside",
        "Outside diameter of the {part}, nominal",
        (&[], Needed),
        "As the drawing names it: 62 mm, or 2-1/4 in.",
        sized,
    ),
    question(
        "bearing.width",
        "Width of the {part}",
        (&[], Needed),
        "Along the axis; for a bush or a plug its length.",
        sized,
    ),
    question(
        "bearing.outside_limits",
        "Outside of the {part}: class, deviations, or the size you measured",
        (&[], Needed),
        FIT,
        own_class,
    ),
    question(
        "bearing.outside_limits.within",
        "How sure is that reading, either way?",
        (&[], Value("2 um")),
        SURE,
        |a| own_class(a) && a.is_measured("bearing.outside_limits"),
    ),
    question(
        "bearing.material",
        "What is the {part} made of?",
        (&[], Needed),
        "Such as bronze, carbon-steel, ductile-iron; `seatwise materials` lists them.",
        own_class,
    ),
    question(
        "bearing.closure",
        "How is the bearing closed?",
        (&["open", "shields", "NBR contact seals"], LeftOut("NBR contact seals are assumed, the most sensitive")),
        "Seals and grease bear less heat and cold than an open bearing: it limits what chills and what warms.",
        is_bearing,
    ),
    question(
        "housing.bore_limits",
        "Bore of the housing: class, deviations, or the size you measured",
        (&[], Needed),
        FIT,
        in_housing,
    ),
    question("housing.bore_limits.within", "How sure is that reading, either way?", (&[], Value("2 um")), SURE, |a| {
        in_housing(a) && a.is_measured("housing.bore_limits")
    }),
    question(
        "housing.material",
        "What is the housing made of?",
        (&[], Needed),
        "Such as cast-aluminium, grey-iron, carbon-steel; `seatwise materials` lists them.",
        in_housing,
    ),
    question(
        "housing.outside",
        "Outside of the boss around the bore, or \"wall 14 mm\"",
        (&[], LeftOut("a thick boss is assumed, which presses hardest and warms slowest")),
        "A thin boss gives way: less force, and warm sooner. Measure where it is thinnest.",
        in_housing,
    ),
    question(
        "shaft.outside_limits",
        "Outside of the shaft: class, deviations, or the size you measured",
        (&[], Needed),
        "The class on the drawing (k6), its deviations (+2/+18 um), or the size you measured (45.011 mm). The fit hangs on it.",
        on_shaft,
    ),
    question("shaft.outside_limits.within", "How sure is that reading, either way?", (&[], Value("2 um")), SURE, |a| {
        on_shaft(a) && a.is_measured("shaft.outside_limits")
    }),
    question(
        "shaft.material",
        "What is the shaft made of?",
        (&[], Value("carbon-steel")),
        "Such as carbon-steel; `seatwise materials` lists them.",
        on_shaft,
    ),
    question(
        "chill.medium",
        "What do you chill the {cold} with?",
        (
            &[
                "none",
                "domestic-freezer",
                "chest-freezer",
                "deep-freezer-80",
                "dry-ice",
                "dry-ice-alcohol",
                "liquid-nitrogen",
            ],
            Value("none"),
        ),
        "Cold shrinks what goes in. Dry ice and liquid nitrogen burn skin and drive the air out of a room: the plan says what to mind. \
         `seatwise media` shows each.",
        always,
    ),
    question(
        "chill.temperature",
        "How cold is it in there?",
        (&[], LeftOut("the usual temperature of the medium")),
        COLDER,
        |a| chilled(a) && a.get("chill.medium").is_some_and(|medium| medium.contains("freezer")),
    ),
    question("chill.hold", "How long does it stay in?", (&[], Value("settled")), HOLD, chilled),
    question(
        "warm.medium",
        "What do you warm the {hot} with?",
        (&["none", "oven", "hot-plate", "oil-bath", "boiling-water", "induction-heater", "hot-air-gun"], Value("none")),
        "Warmth widens what it goes into. Mind the grease and the seals of a bearing, and your hands. `seatwise media` shows each.",
        always,
    ),
    question(
        "warm.power",
        "Power that the heater puts into the part, such as 1 kW",
        (&[], Needed),
        "It stands on the plate of the heater; what goes into the part is less, often half.",
        heated_from_within,
    ),
    question(
        "warm.temperature",
        "How hot is it?",
        (&[], Needed),
        "The temperature that a thermometer in it, or on it, shows, not that on the dial.",
        warm_adjustable,
    ),
    question(
        "warm.until",
        "At what temperature is it taken off?",
        (&[], Needed),
        "A heater from within does not stop by itself: 100 °C on the part is common; read it on the inner ring.",
        heated_from_within,
    ),
    question("warm.hold", "How long does it stay there?", (&[], Value("settled")), HOLD, |a| {
        warmed_around(a) && !from_one_side(a)
    }),
    question(
        "warm.hold",
        "How long does it stay there, or until what temperature?",
        (&[], Needed),
        "Such as 15 min, or 100 °C read on the part itself: it stays cooler than what warms it from one side.",
        from_one_side,
    ),
    question(
        "bench.temperature",
        "How warm is the shop?",
        (&[], LeftOut("20 °C is assumed")),
        "The air at the bench, and all that is neither chilled nor warmed.",
        always,
    ),
    question(
        "bench.humidity",
        "How damp is the air, such as 55 %?",
        (&[], LeftOut("frost and dew are not counted")),
        "Moisture settles on a cold part and warms it: the window is shorter.",
        chilled,
    ),
    question(
        "bench.carry",
        "How long from there to the mouth of the seat?",
        (&[], LeftOut("10 s is assumed: it stands beside the bench")),
        "Count it once with the cold or hot part in hand: seconds decide.",
        |a| chilled(a) || warmed(a),
    ),
    question(
        "press.means",
        "What do you have to press with, if it comes to that?",
        (&["none", "arbor press", "hydraulic press", "screw jig", "hammer and sleeve"], Value("none")),
        "The plan compares the force that is left with what it gives.",
        always,
    ),
    question(
        "press.capacity",
        "How much does the press give, such as 20 kN or 2 t?",
        (&[], LeftOut("the force is told, and not compared")),
        "It stands on the plate of the press.",
        |a| a.get("press.means").is_some_and(|means| means.ends_with("press")),
    ),
    question(
        "press.thread",
        "Which thread has the jig, such as M12?",
        (&[], Needed),
        "The torque follows from its pitch and friction.",
        |a| a.is("press.means", "screw jig"),
    ),
];
