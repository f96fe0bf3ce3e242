//! Lists, rows and files that are refused.

use super::*;

#[test]
fn what_is_no_list_is_refused_before_anything_is_written() {
    let folder = folder();
    let out = folder.path().join("out.csv");
    let cases: [(&[u8], &str); 7] = [
        (b"", "empty"),
        (b"title,bearing.designation,colour\nx,6205,red\n", "\"colour\" is no key"),
        (b"title,title\nx,y\n", "twice"),
        (b"title,bearing..bore\nx,y\n", "no key of a job"),
        (b"title,\nx,y\n", "no key of a job"),
        (b"just some words\nand more\n", "no key of a job"),
        (b"title,\xff\xfe\nx,y\n", "cannot be read"),
    ];
    for (text, says) in cases {
        let list = written(&folder, "list.csv", text);
        let run = run(&["batch", as_str(&list), "-o", as_str(&out)]);
        assert_eq!((run.code, run.out.as_str()), (2, ""), "{says}");
        assert!(run.err.contains(says) && run.err.contains("--template"), "{says}: {}", run.err);
        assert!(!out.exists() && fs::read_dir(folder.path()).unwrap().count() == 1, "{says}");
    }
    assert!(run(&["batch", as_str(folder.path())]).err.contains("is a folder"));
    assert!(run(&["batch", "no-such-list.csv"]).err.contains("cannot read"));
    assert_eq!(run(&["batch"]).code, 2, "a list or --template is asked for");
}

#[test]
fn rows_that_are_torn_or_wild_are_reported_and_the_rest_is_planned() {
    let folder = folder();
    let good = jobs(1).concat();
    let mut text = HEAD.as_bytes().to_vec();
    text.extend_from_slice(good.as_bytes());
    text.extend_from_slice(b"too,few\n");
    text.extend_from_slice(b"Gr\xf6\xdfe,6205,open,N7,80 mm,cast-aluminium,,,,\n");
    text.extend_from_slice("Wild,6205,open,1e308,-5 mm,\"\"\"] [x\",,,NaN,\n".as_bytes());
    text.extend_from_slice(b"=1+1,,,,,,,,,\n");
    text.extend_from_slice(b"Brace,6205,open,N7,{ broken,cast-aluminium,,,,\n");
    text.extend_from_slice(good.as_bytes());
    let list = written(&folder, "list.csv", text);
    let run = run(&["batch", as_str(&list)]);
    assert_eq!(run.code, 4);
    let told = rows(&run.out);
    let status: Vec<&str> = told.iter().map(|row| row["status"].as_str()).collect();
    assert_eq!(status, ["planned", "error", "error", "error", "error", "error", "planned"]);
    for (row, says) in [
        (1, "2 cells, and the heading 10"),
        (2, "not UTF-8"),
        (3, "housing.outside: "),
        (4, "bearing"),
        (5, "housing.outside: "),
    ] {
        assert!(told[row]["error"].contains(says), "{}", told[row]["error"]);
    }
    assert_eq!(told[4]["title"], "'=1+1", "a spreadsheet must not run it");
    assert!(!run.out.contains("NaN,") && !run.err.contains("panicked"), "{}", run.err);
}

#[test]
fn a_quote_that_never_ends_is_stopped_before_it_fills_memory() {
    let folder = folder();
    let text = format!("{HEAD}\"Seat{}", "x".repeat(3_000_000));
    let run = run(&["batch", as_str(&written(&folder, "list.csv", text))]);
    assert_eq!(run.code, 2);
    assert!(run.err.contains("a quote may be missing"), "{}", run.err);
}

#[test]
fn the_list_is_never_written_over_and_a_result_only_with_force() {
    let folder = folder();
    let text = list(&jobs(3));
    let path = written(&folder, "list.csv", &text);
    let onto_itself = run(&["batch", as_str(&path), "-o", as_str(&path), "--force"]);
    assert!(onto_itself.code == 2 && onto_itself.err.contains("never written over"), "{}", onto_itself.err);
    assert_eq!(fs::read_to_string(&path).unwrap(), text);
    let out = written(&folder, "out.csv", "old");
    assert_eq!(run(&["batch", as_str(&path), "-o", as_str(&out)]).code, 2);
    assert_eq!(fs::read_to_string(&out).unwrap(), "old");
    assert_eq!(run(&["batch", as_str(&path), "-o", as_str(&out), "--force"]).code, 0);
    assert_eq!(rows(&fs::read_to_string(&out).unwrap()).len(), 3);
}

#[test]
fn no_bar_is_drawn_in_a_pipe() {
    let folder = folder();
    let list = written(&folder, "list.csv", list(&jobs(5)));
    let run = run(&["batch", as_str(&list), "-o", as_str(&folder.path().join("out.csv"))]);
    assert_eq!((run.code, run.out.as_str(), run.err.as_str()), (0, "", ""));
}
