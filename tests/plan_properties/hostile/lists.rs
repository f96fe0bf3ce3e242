//! Lists of jobs after an accident, through the program itself: the core does not read lists.

#[path = "../../binary/mod.rs"]
mod binary;

use super::quantities;
use proptest::collection::vec;
use proptest::prelude::*;
use proptest::sample::select;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;

const HEAD: &str = "title,bearing.designation,bearing.closure,housing.bore_limits,housing.outside,housing.material,\
                    chill.part,chill.medium,chill.hold";

#[rustfmt::skip]
const CELLS: &[&str] = &[
    "", "6205", "open", "N7", "80 mm", "cast-aluminium", "bearing", "domestic-freezer", "2 h", "{ inside = \"50 mm\" }",
    "[[[[[[", "{ a = { b = { c = 1 } } }", "\"", "\"\"", "=1+1", "\r", "'", ";", "\t",
];

/// A cell as a spreadsheet would write it, or as no spreadsheet would.
fn cell() -> impl Strategy<Value = String> {
    let usual = select(CELLS);
    prop_oneof![4 => usual.prop_map(str::to_owned), 1 => quantities::text()]
}

/// A row: mostly of the right length, its cells mostly quoted.
fn row() -> impl Strategy<Value = String> {
    let quoted = |cells: Vec<(String, bool)>| {
        let cells = cells
            .into_iter()
            .map(|(cell, bare)| if bare { cell } else { format!("\"{}\"", cell.replace('"', "\"\"")) });
        cells.collect::<Vec<_>>().join(",")
    };
    let length = prop_oneof![9 => Just(9_usize), 1 => 0..20_usize];
    length.prop_flat_map(|length| vec((cell(), prop::bool::weighted(0.05)), length)).prop_map(quoted)
}

#[test]
fn a_list_of_wrecked_rows_is_read_to_its_end_or_refused_where_it_tears() {
    let mut runner = TestRunner::new(super::cases(4));
    for _ in 0..runner.config().cases {
        let rows = vec(row(), 150).new_tree(&mut runner).unwrap().current();
        let list = format!("{HEAD}\n{}\n", rows.join("\n"));
        let run = binary::run(&["batch", "-"], &list);
        // A torn list and refused rows have codes of their own; a panic has 101, and a signal none.
        assert!(matches!(run.code, 0 | 2 | 4), "{} {}\n{list}", run.code, run.err);
        assert!(!run.err.contains("panicked"), "{}\n{list}", run.err);
    }
}
