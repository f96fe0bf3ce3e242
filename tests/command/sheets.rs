//! CSV that is opened in a spreadsheet: no text of a user runs as a formula, and numbers stay numbers.

use super::binary::{done, run};
use super::*;
use serde_json::Value;

/// Beginnings that a spreadsheet would take for a formula.
const SIGNS: [char; 4] = ['=', '+', '-', '@'];

/// A job whose title, reference and medium begin with `sign`.
fn job(sign: char) -> String {
    example(PUMP)
        .lines()
        .map(|line| match line.split(" =").next().unwrap() {
            "title" => format!("title = \"{sign}SUM(1)\"\nreference = \"{sign}cmd\"\n"),
            "reference" => String::new(),
            _ => format!("{line}\n"),
        })
        .collect()
}

/// Cells that a spreadsheet would run: those that begin like a formula and are no number.
fn formulas(csv: &str) -> Vec<String> {
    let mut reader = csv::ReaderBuilder::new().has_headers(false).flexible(true).from_reader(csv.as_bytes());
    let cells = reader.records().flat_map(|record| record.unwrap().iter().map(str::to_owned).collect::<Vec<_>>());
    cells.filter(|cell| cell.starts_with(['=', '+', '-', '@', '\t', '\r']) && cell.parse::<f64>().is_err()).collect()
}

#[test]
fn no_command_writes_a_cell_that_a_spreadsheet_would_run() {
    let folder = folder();
    for sign in SIGNS {
        let name = format!("{sign}job.toml");
        let path = written(&folder, &name, job(sign));
        let path = as_str(&path);
        let over = "title==1+1|-2+3|@x|+y";
        for words in [
            vec!["plan", path, "--format", "csv"],
            vec!["compare", path, path, "--format", "csv"],
            vec!["sweep", path, "--over", over, "--format", "csv"],
            vec!["table", path, "--with", "freezer", "--outer", "60 °C|80 °C", "--format", "csv"],
            vec!["options", path, "--with", "oven", "--format", "csv"],
            vec!["log", path, "examples/pump-case-readings.csv", "--format", "csv"],
        ] {
            let csv = done(&words);
            assert!(csv.lines().count() > 1, "{words:?}");
            assert_eq!(formulas(&csv), Vec::<String>::new(), "{words:?}");
            // All but the log hold something that the user has typed.
            assert_eq!(csv.contains(&format!("'{sign}")), words[0] != "log", "{words:?}: {csv}");
        }
    }
    let seal = example("examples/mixer-seal.toml").replace("title = \"Shaft", "title = \"=1+1 Shaft");
    let seal = run(&["plan", "-", "--format", "csv"], &seal);
    assert!(seal.out.contains("'=1+1") && formulas(&seal.out).is_empty(), "{}{}", seal.out, seal.err);
}

#[test]
fn a_list_with_formulas_in_good_and_bad_rows_comes_back_harmless_and_its_json_as_typed() {
    let folder = folder();
    let list = written(
        &folder,
        "list.csv",
        "title,reference,bearing.designation,housing.bore_limits,housing.outside,housing.material\n\
         =1+1,+2,6205,N7,80 mm,cast-aluminium\n-3+4,@5,6205,=Q7,80 mm,cast-aluminium\n",
    );
    let csv = run(&["batch", as_str(&list)], "");
    assert_eq!(csv.code, 4);
    assert!(formulas(&csv.out).is_empty(), "{}", csv.out);
    for cell in ["'=1+1", "'+2", "'-3+4", "'@5"] {
        assert!(csv.out.contains(cell), "{cell}: {}", csv.out);
    }
    let json = run(&["batch", as_str(&list), "--format", "json"], "");
    let titles: Vec<Value> = json.out.lines().map(|line| serde_json::from_str::<Value>(line).unwrap()).collect();
    assert_eq!((titles[0]["title"].as_str(), titles[1]["reference"].as_str()), (Some("=1+1"), Some("@5")));
}

#[test]
fn numbers_are_never_given_an_apostrophe_though_they_are_negative() {
    let csv = done(&["plan", PUMP, "--format", "csv"]);
    let cells: Vec<&str> = csv.lines().nth(1).unwrap().split(',').collect();
    let negative = cells.iter().filter(|cell| cell.starts_with('-')).count();
    assert!(negative > 0 && cells.iter().all(|cell| !cell.starts_with('\'')), "{csv}");
    // A job's own words are in its JSON as they were typed.
    let json = run(&["sweep", "-", "--over", "bench.carry=10 s|20 s", "--format", "json"], &job('='));
    let json: Value = serde_json::from_str(&json.out).unwrap();
    assert_eq!(json["steps"][0]["seats"][0]["title"], "=SUM(1)");
}
