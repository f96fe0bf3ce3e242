//! What the program is built from: how much, under which licences, and nothing of it in C.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

use serde_json::Value;
use std::collections::BTreeSet;
use std::process::Command;

/// Output of cargo, from what is on this machine already.
fn cargo(arguments: &[&str]) -> String {
    let mut command = Command::new(env!("CARGO"));
    let output = command.args(arguments).current_dir(env!("CARGO_MANIFEST_DIR")).output().unwrap();
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    String::from_utf8(output.stdout).unwrap()
}

/// Names of the crates that the binary with the default features is built from, on this system.
fn crates() -> BTreeSet<String> {
    let tree =
        cargo(&["tree", "--edges", "normal,build", "--prefix", "none", "--format", "{p}", "--locked", "--offline"]);
    tree.lines().filter_map(|line| line.split(' ').next()).map(str::to_owned).collect()
}

/// Packages for this system; those for others need not be on this machine.
fn packages() -> Vec<Value> {
    let version = cargo(&["-vV"]);
    let host = version.lines().find_map(|line| line.strip_prefix("host: ")).unwrap();
    let text = cargo(&["metadata", "--format-version", "1", "--filter-platform", host, "--locked", "--offline"]);
    let metadata: Value = serde_json::from_str(&text).unwrap();
    metadata["packages"].as_array().unwrap().clone()
}

/// Whether a licence expression can be met with the allowed ones: some choice of each `OR`, every part of each `AND`.
fn is_met(expression: &str, allowed: &[&str]) -> bool {
    let expression = expression.replace('/', " OR ");
    let parts = expression.split(" AND ").map(|part| part.trim().trim_matches(['(', ')']).to_owned());
    parts.into_iter().all(|part| part.split(" OR ").any(|licence| allowed.contains(&licence.trim())))
}

#[test]
fn a_licence_is_met_by_one_of_a_choice_and_all_of_a_sum() {
    let allowed = ["MIT", "Zlib", "Unicode-3.0"];
    for (expression, met) in [
        ("MIT OR Apache-2.0", true),
        ("Apache-2.0/MIT", true),
        ("(MIT OR Apache-2.0) AND Unicode-3.0", true),
        ("(MIT OR Apache-2.0) AND GPL-3.0", false),
        ("MPL-2.0", false),
    ] {
        assert_eq!(is_met(expression, &allowed), met, "{expression}");
    }
}

#[test]
fn the_binary_is_built_from_fewer_than_150_crates() {
    let crates = crates();
    assert!(crates.contains("uom") && crates.contains("clap"), "{crates:?}");
    assert!(crates.len() < 150, "{} crates: {crates:?}", crates.len());
}

#[test]
fn every_licence_in_the_binary_is_permissive() {
    let allowed = ["MIT", "Apache-2.0", "Zlib", "ISC", "Unicode-3.0", "Unlicense", "BSD-2-Clause", "BSL-1.0", "0BSD"];
    let crates = crates();
    for package in packages() {
        let name = package["name"].as_str().unwrap();
        if crates.contains(name) {
            let licence = package["license"].as_str().unwrap_or("none stated");
            assert!(is_met(licence, &allowed), "{name}: {licence}");
        }
    }
}

#[test]
fn nothing_in_the_binary_links_a_library_of_the_system() {
    // It claims the name so that two of its versions cannot share one pool of threads; there is no such library.
    let names_only = ["rayon-core"];
    let crates = crates();
    for package in packages() {
        let name = package["name"].as_str().unwrap();
        if crates.contains(name) && !names_only.contains(&name) {
            assert!(package["links"].is_null(), "{name} links {}", package["links"]);
        }
    }
    assert!(!crates.contains("cc") && !crates.contains("pkg-config"), "a C compiler is asked for: {crates:?}");
}

#[test]
fn every_dependency_has_its_reason_in_the_contributors_guide() {
    let guide = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/DEVELOPERS.md")).unwrap();
    let (_, section) = guide.split_once("## Dependencies").unwrap();
    let section = section.split("\n## ").next().unwrap();
    let own = packages().into_iter().find(|package| package["name"] == "seatwise").unwrap();
    for dependency in own["dependencies"].as_array().unwrap() {
        let name = dependency["name"].as_str().unwrap();
        assert!(section.contains(&format!("`{name}`")), "DEVELOPERS.md does not say why {name} is there");
    }
}
