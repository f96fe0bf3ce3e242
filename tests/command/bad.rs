//! Bad inputs: jobs, lists, readings, materials and flags, each with what a mechanic could have meant.

use super::binary::{Run, finished, seatwise};
use super::{example, folder, written};

/// A sound job, of which each bad one differs in one place.
const SOUND: &str = include_str!("../binary/sound.toml");

const LIST: &str = "title,bearing.designation,housing.bore_limits,housing.outside,housing.material\n";

pub fn sound_job() -> String {
    SOUND.to_owned()
}

/// A run that must be refused.
pub struct Case {
    pub name: &'static str,
    pub words: Vec<String>,
    /// Files beside it, by name.
    files: Vec<(&'static str, String)>,
}

impl Case {
    /// Runs it in a folder with its files, so that the names in its messages are short.
    pub fn run(&self, more: &[&str]) -> Run {
        let folder = folder();
        for (name, text) in &self.files {
            written(&folder, name, text);
        }
        let words: Vec<&str> = self.words.iter().map(String::as_str).chain(more.iter().copied()).collect();
        finished(seatwise(&words).current_dir(folder.path()))
    }
}

fn case(name: &'static str, words: &[&str], files: Vec<(&'static str, String)>) -> Case {
    Case { name, words: words.iter().map(|word| (*word).to_owned()).collect(), files }
}

/// What is wrong, a text of the sound job, and what stands in its place.
const JOBS: [(&str, &str, &str); 44] = [
    ("a key is misspelt", "bore =", "boar ="),
    ("a table is misspelt", "[housing]", "[hausing]"),
    ("a size has no unit", "\"62 mm\"", "\"62\""),
    ("a size has no quotes", "\"62 mm\"", "62"),
    ("a size in kilograms", "\"62 mm\"", "\"62 kg\""),
    ("a size in mil", "\"62 mm\"", "\"62000 mil\""),
    ("a comma too many", "\"62 mm\"", "\"62,0,0 mm\""),
    ("a size of nothing", "\"62 mm\"", "\"0 mm\""),
    ("a size below nothing", "\"62 mm\"", "\"-62 mm\""),
    ("a size beyond the tables", "\"62 mm\"", "\"5000 mm\""),
    ("a size that is no number", "\"62 mm\"", "\"nan mm\""),
    ("an empty size", "\"62 mm\"", "\"\""),
    ("bore and outside exchanged", "bore = \"30 mm\"", "bore = \"72 mm\""),
    ("a bore in inches beside millimetres", "bore = \"30 mm\"", "bore = \"0.3 in\""),
    ("a kind that is none", "\"ball bearing\"", "\"ball\""),
    ("a closure that is none", "\"open\"", "\"glued\""),
    ("a class that is none", "\"N7\"", "\"Q7\""),
    ("a class of a shaft", "\"N7\"", "\"n7\""),
    ("a class that is not there at this size", "\"N7\"", "\"CD7\""),
    ("limits the wrong way round", "\"N7\"", "{ lower = \"9 um\", upper = \"-39 um\" }"),
    ("interference that no ring bears", "\"N7\"", "\"-0.5/-0.4 mm\""),
    ("a measured bore of another part", "\"N7\"", "{ measured = \"62.4 mm\", within = \"2 um\" }"),
    ("a measurement off by a millimetre", "\"N7\"", "{ measured = \"61.98 mm\", within = \"2 mm\" }"),
    ("no wall at all", "outside = \"90 mm\"", "outside = \"62 mm\""),
    ("a boss in inches", "outside = \"90 mm\"", "outside = \"3.54 mm\""),
    ("a material that is misspelt", "cast-aluminium", "cast-alumnium"),
    ("a material that is unknown", "cast-aluminium", "unobtainium"),
    ("a medium that is unknown", "domestic-freezer", "fridge"),
    ("a medium that warms", "domestic-freezer", "oven"),
    ("the wrong part is chilled", "part = \"bearing\"", "part = \"housing\""),
    ("a freezer at plus 18", "\"domestic-freezer\"", "\"domestic-freezer\"\ntemperature = \"18 °C\""),
    ("colder than a freezer gets", "\"domestic-freezer\"", "\"domestic-freezer\"\ntemperature = \"-60 °C\""),
    ("below absolute zero", "\"domestic-freezer\"", "\"domestic-freezer\"\ntemperature = \"-300 °C\""),
    ("no hold", "hold = \"2 h\"\n", ""),
    ("a hold of days", "\"2 h\"", "\"100 h\""),
    ("a hold and a target", "hold = \"2 h\"", "hold = \"2 h\"\nuntil = \"settled\""),
    ("humidity as a share of one", "\"50 %\"", "\"0.5\""),
    ("humidity above all", "\"50 %\"", "\"150 %\""),
    ("a shop in °F read as °C", "\"20 °C\"", "\"68 °C\""),
    ("a jig without its thread", "[bench]", "[press]\nmeans = \"screw jig\"\n[bench]"),
    ("a thread that is none", "[bench]", "[press]\nmeans = \"screw jig\"\nthread = \"M11\"\n[bench]"),
    ("friction above what there is", "[bench]", "[press]\nfriction = \"1.4\"\n[bench]"),
    ("a quote is missing", "\"62 mm\"", "\"62 mm"),
    ("a key stands twice", "width =", "bore ="),
];

/// The bad jobs with `plan`.
pub fn jobs() -> Vec<Case> {
    let mut all: Vec<Case> = JOBS
        .iter()
        .map(|(name, from, to)| {
            assert!(SOUND.contains(from), "{name}: the sound job has no {from}");
            case(name, &["plan", "job.toml"], vec![("job.toml", SOUND.replacen(from, to, 1))])
        })
        .collect();
    let several = SOUND.replace("\"62 mm\"", "\"62\"").replace("\"N7\"", "\"Q7\"").replace("\"2 h\"", "\"100 h\"");
    all.push(case("three mistakes at once", &["plan", "job.toml"], vec![("job.toml", several)]));
    all.push(case("an empty job", &["plan", "job.toml"], vec![("job.toml", "\n".to_owned())]));
    all.push(case("no job there", &["plan", "jobb.toml"], Vec::new()));
    all.push(case("a folder for a job", &["plan", "."], Vec::new()));
    all.push(case(
        "a seal where a seat is asked for",
        &["section", "seal.toml"],
        vec![("seal.toml", example("examples/mixer-seal.toml"))],
    ));
    all.push(case(
        "a seal without its size",
        &["plan", "seal.toml"],
        vec![("seal.toml", "[seal]\nlip = \"NBR\"\n".to_owned())],
    ));
    all.push(case(
        "a bad job of two in a comparison",
        &["compare", "good.toml", "bad.toml"],
        vec![("good.toml", SOUND.to_owned()), ("bad.toml", SOUND.replace("\"N7\"", "\"Q7\""))],
    ));
    all
}

/// Bad lists with `batch`.
pub fn lists() -> Vec<Case> {
    let rows = |name, rows: &str| case(name, &["batch", "list.csv"], vec![("list.csv", rows.to_owned())]);
    let under = |name, row: &str| rows(name, &format!("{LIST}{row}\n"));
    vec![
        rows("an empty list", ""),
        rows("a column that is no key", "title,bearing.designation,colour\nx,6205,red\n"),
        rows("a column twice", "title,title\nx,y\n"),
        under("a cell too few", "Pump,6205"),
        under("a class that is none", "Pump,6205,Q99,80 mm,cast-aluminium"),
        under("a designation that is none", "Pump,9999,N7,80 mm,cast-aluminium"),
        under("a brace that is not closed", "Pump,6205,N7,{ broken,cast-aluminium"),
        under("three mistakes in one row", "Pump,6205,Q7,80,gold"),
        case("no list there", &["batch", "lisst.csv"], Vec::new()),
        case(
            "a result that exists",
            &["batch", "list.csv", "-o", "out.csv"],
            vec![("list.csv", format!("{LIST}Pump,6205,N7,80 mm,cast-aluminium\n")), ("out.csv", "old".to_owned())],
        ),
        case(
            "a run that is left over",
            &["batch", "list.csv", "-o", "out.csv"],
            vec![
                ("list.csv", format!("{LIST}Pump,6205,N7,80 mm,cast-aluminium\n")),
                ("out.csv.part", "old".to_owned()),
            ],
        ),
    ]
}

/// Bad readings with `log`.
pub fn readings() -> Vec<Case> {
    let with = |name, rows: &str| {
        let job = ("job.toml", SOUND.to_owned());
        case(name, &["log", "job.toml", "readings.csv"], vec![job, ("readings.csv", rows.to_owned())])
    };
    let head = "time,part,value\n";
    vec![
        with("no heading", "5 min,bearing,-3 °C\n"),
        with("a part that was not chilled", &format!("{head}5 min,housing,-3 °C\n10 min,housing,-4 °C\n")),
        with("a part that is none", &format!("{head}5 min,beering,-3 °C\n")),
        with("a time without a unit", &format!("{head}5,bearing,-3 °C\n")),
        with("a temperature without a unit", &format!("{head}5 min,bearing,-3\n")),
        with(
            "times that go back",
            &format!("{head}10 min,bearing,5 °C\n5 min,bearing,12 °C\n20 min,bearing,0 °C\n40 min,bearing,-9 °C\n"),
        ),
        with(
            "warmer than when it went in",
            &format!("{head}5 min,bearing,45 °C\n10 min,bearing,6 °C\n20 min,bearing,-3 °C\n40 min,bearing,-9 °C\n"),
        ),
        with("too few", &format!("{head}5 min,bearing,12 °C\n")),
        with("a size without one before", &format!("{head}5 min,bearing,61.99 mm\n10 min,bearing,61.98 mm\n")),
    ]
}

/// Bad material files with `materials`.
pub fn materials() -> Vec<Case> {
    let text = example("materials/cast-aluminium.toml");
    let with = |name, from: &str, to: &str| {
        assert!(text.contains(from), "{name}: the material has no {from}");
        let files = vec![("our-alloy.toml", text.replacen(from, to, 1))];
        case(name, &["materials", "our-alloy", "--material", "our-alloy.toml"], files)
    };
    let density = text.lines().find(|line| line.starts_with("kg_m3")).unwrap();
    let poisson = text.lines().skip_while(|line| *line != "[poisson_ratio]").nth(1).unwrap();
    vec![
        with("a density in g/cm³", density, "kg_m3 = 2.7"),
        with("Poisson's ratio above a half", poisson, "value = 0.7"),
        with("a section that is misspelt", "[poisson_ratio]", "[poison_ratio]"),
        with("no density", density, ""),
        with("a density in quotes", density, "kg_m3 = \"2700\""),
        with("a strength of no known kind", "0.2 % proof", "0.2 % prof"),
        case(
            "six mistakes of keys and values at once",
            &["materials", "--material", "our-alloy.toml"],
            vec![("our-alloy.toml", spoiled(&text, [density, poisson]))],
        ),
        case(
            "a quote missing and a bracket open",
            &["materials", "--material", "our-alloy.toml"],
            vec![("our-alloy.toml", "names = [\"x\nfamily = \"steel\nabout =\n".to_owned())],
        ),
        case(
            "two mistakes at once",
            &["materials", "--material", "our-alloy.toml"],
            vec![("our-alloy.toml", text.replacen(density, "kg_m3 = 2.7", 1).replacen(poisson, "value = 0.7", 1))],
        ),
        case(
            "an empty material",
            &["materials", "--material", "our-alloy.toml"],
            vec![("our-alloy.toml", String::new())],
        ),
        case(
            "a name with capitals",
            &["materials", "--material", "Our Alloy.toml"],
            vec![("Our Alloy.toml", text.clone())],
        ),
        case("no material there", &["materials", "--material", "alloy.toml"], Vec::new()),
    ]
}

/// The material with a mistake in six of its sections; a key that is misspelt is not missing as well.
fn spoiled(text: &str, [density, poisson]: [&str; 2]) -> String {
    let low = text.lines().skip_while(|line| *line != "[emissivity]").nth(1).unwrap();
    let limit = text.lines().skip_while(|line| *line != "[hottest]").nth(1).unwrap();
    let mut spoiled = text.to_owned();
    for (from, to) in [
        (density, "kg_m3 = 2.7"),
        ("[elastic_modulus]", "[elastic_modulus]\ncolour = \"grey\""),
        (poisson, "valeu = 0.33"),
        ("family = \"light alloy\"", "family = \"light aloy\""),
        (low, "low = \"0.1\""),
        (limit, "c = 9000"),
    ] {
        assert!(spoiled.contains(from), "the material has no {from}");
        spoiled = spoiled.replacen(from, to, 1);
    }
    spoiled
}

/// A sound medium, of which each bad one differs.
const MEDIUM: &str = r#"[[medium]]
id = "our-freezer"
phrase = "in our freezer"
names = ["freezer in the yard"]
direction = "chill"
leaves = "nothing"
cautions = []
notes = []

[medium.temperature]
default_c = -20
low_c = -25
high_c = -15
tolerance_k = 3
source = "thermometer of the shop"
status = "common practice"

[medium.film]
low_w_m2k = 5
high_w_m2k = 9
radiates = true
source = "readings of the shop"
status = "common practice"
"#;

/// Bad files of media with `media`.
pub fn media() -> Vec<Case> {
    let with = |name, changes: &[(&str, &str)]| {
        let text = changes.iter().fold(MEDIUM.to_owned(), |text, (from, to)| {
            assert!(text.contains(from), "{name}: the medium has no {from}");
            text.replacen(from, to, 1)
        });
        case(name, &["media", "--medium", "ours.toml"], vec![("ours.toml", text)])
    };
    vec![
        with("a film that falls", &[("low_w_m2k = 5", "low_w_m2k = 50")]),
        with("a default out of its range", &[("default_c = -20", "default_c = 20")]),
        with("a danger that is none", &[("cautions = []", "cautions = [\"dry ice\"]")]),
        with("no film", &[(MEDIUM.split_once("\n[medium.film]").unwrap().1, ""), ("\n[medium.film]", "")]),
        with("a speed of air without a law", &[("radiates = true", "radiates = true\nair_m_s = [0, 1]")]),
        with(
            "five mistakes at once",
            &[
                ("phrase =", "phrse ="),
                ("\"chill\"", "\"chil\""),
                ("tolerance_k = 3", "tolerance_k = 0"),
                ("high_w_m2k = 9", "high_w_m2k = \"9\""),
                ("status = \"common practice\"\n\n", "status = \"sure\"\n\n"),
            ],
        ),
        case("an empty file of media", &["media", "--medium", "ours.toml"], vec![("ours.toml", String::new())]),
    ]
}

/// Flags that are wrong.
pub fn flags() -> Vec<Case> {
    let job = || vec![("job.toml", SOUND.to_owned())];
    let with = |name, words: &[&str]| case(name, words, job());
    vec![
        with("a command that is misspelt", &["plann", "job.toml"]),
        with("a flag that is misspelt", &["plan", "job.toml", "--formt", "json"]),
        with("a format that is misspelt", &["plan", "job.toml", "--format", "jsn"]),
        with("no job", &["plan"]),
        with("a word too many", &["limits", "62", "N7", "h6"]),
        with("a flag without its value", &["plan", "job.toml", "--plot"]),
        with("a flag twice", &["plan", "job.toml", "--units", "inch", "--units", "metric"]),
        with("a seed without draws", &["plan", "job.toml", "--seed", "5"]),
        with("a seed in words", &["exercise", "--seed", "seven"]),
        with("a level that is none", &["exercise", "--level", "9"]),
        with("one job to compare", &["compare", "job.toml"]),
        with("too many draws", &["plan", "job.toml", "--draws", "99999999999"]),
        with("a picture of no kind", &["plan", "job.toml", "--plot", "plot.gif"]),
        with("a text under the name of a picture", &["plan", "job.toml", "-o", "plan.png"]),
        with("a result onto its job", &["plan", "job.toml", "-o", "job.toml", "--force"]),
        with("a result in no folder", &["plan", "job.toml", "-o", "results/plan.txt"]),
        with("screws that are not there", &["plan", "job.toml", "--screw-plot", "screws.svg"]),
        with("a force in newton metres", &["plan", "job.toml", "--draws", "1000", "--force-limit", "8 Nm"]),
        with("a force below nothing", &["plan", "job.toml", "--draws", "1000", "--force-limit=-8 kN"]),
        with("a size that is no number", &["limits", "sixty-two", "N7"]),
        with("a class that is none", &["limits", "62", "Q99"]),
        with("a size beyond the tables", &["limits", "4000", "H7"]),
        with("a class of the other side", &["pair", "62", "h7", "s6"]),
        with("a material that is misspelt", &["materials", "cast-alumnium"]),
        with("a material beyond its tables", &["materials", "acetal", "--at", "-195.8 °C"]),
        with("a temperature without its unit", &["materials", "acetal", "--at", "20"]),
        with("a medium that is misspelt", &["media", "domestic-freezr"]),
        with("a medium that is unknown", &["options", "job.toml", "--with", "fridge"]),
        with("a sweep without values", &["sweep", "job.toml", "--over", "warm.temperature"]),
        with("a sweep of one value", &["sweep", "job.toml", "--over", "chill.hold=1 h..2 h/1"]),
        with("a sweep over two units", &["sweep", "job.toml", "--over", "chill.hold=60 min..2 h/3"]),
        with("a sweep over a key that is none", &["sweep", "job.toml", "--over", "chill.holds=1 h|2 h"]),
        with("a sweep over a value that is none", &["sweep", "job.toml", "--over", "housing.bore_limits=N7|Q7"]),
        with("a chart hotter than it goes", &["table", "job.toml", "--outer", "60 °C..900 °C/3"]),
        with("contours of a table", &["section", "job.toml", "--show", "hoop"]),
        with("a shaft that the job has not", &["section", "job.toml", "--seat", "shaft"]),
        with("the hottest state of no service", &["section", "job.toml", "--at", "hottest"]),
        with("standard input twice", &["compare", "-", "-"]),
        with("a kind of job that is none", &["new", "gear"]),
        with("a shell that is none", &["completions", "sh"]),
        with("a page of no command", &["manual", "plann"]),
        with("questions that no one answers", &["ask"]),
    ]
}

pub fn cases() -> Vec<Case> {
    [jobs(), lists(), readings(), materials(), media(), flags()].into_iter().flatten().collect()
}
