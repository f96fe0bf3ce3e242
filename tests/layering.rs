//! A module uses only those above it in the order of the crate's documentation.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]

use std::fs;
use std::path::{Path, PathBuf};

/// Modules from the base upward; each may use those before it.
const ORDER: [&str; 11] =
    ["quantity", "stock", "fit", "thermal", "mechanics", "section", "assembly", "job", "plan", "report", "cli"];

/// Modules that know nothing of each other, though they stand side by side in the order.
const STRANGERS: [(&str, &str); 11] = [
    ("assembly", "mechanics"),
    ("assembly", "fit"),
    ("assembly", "thermal"),
    ("assembly", "section"),
    ("thermal", "fit"),
    ("mechanics", "fit"),
    ("mechanics", "thermal"),
    ("section", "fit"),
    ("section", "thermal"),
    ("section", "mechanics"),
    ("section", "stock"),
];

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(sources(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") {
            files.push(path);
        }
    }
    files
}

/// The text of a file without its comments and its tests.
fn code(file: &Path) -> String {
    let text = fs::read_to_string(file).unwrap();
    let code = text.split("#[cfg(test)]").next().unwrap();
    code.lines().filter(|line| !line.trim_start().starts_with("//")).collect::<Vec<_>>().join("\n")
}

/// Names of the modules that a text reaches through `crate::`, groups such as `crate::{fit, job}` included.
fn used(text: &str) -> Vec<String> {
    let mut names = Vec::new();
    for after in text.split("crate::").skip(1) {
        let list = after.strip_prefix('{').map_or(after, |group| group.split_inclusive('}').next().unwrap_or(group));
        let grouped = after.starts_with('{');
        for part in list.split(',').take(if grouped { usize::MAX } else { 1 }) {
            names.push(part.trim().chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect());
        }
    }
    names
}

fn place(module: &str) -> Option<usize> {
    ORDER.iter().position(|known| *known == module)
}

#[test]
fn every_module_uses_only_those_before_it() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut looked_at = 0;
    for module in ORDER {
        for file in sources(&root.join(module)) {
            looked_at += 1;
            for name in used(&code(&file)) {
                let Some(other) = place(&name) else { continue };
                assert!(other <= place(module).unwrap(), "{} uses `{name}`, which stands after it", file.display());
                let strangers = STRANGERS.contains(&(module, name.as_str()));
                assert!(!strangers, "{} uses `{name}`, of which it must know nothing", file.display());
            }
        }
    }
    assert!(looked_at > 40, "only {looked_at} files were found: the test looks in the wrong place");
}

#[test]
fn a_use_in_a_group_is_seen() {
    assert_eq!(used("use crate::{fit::Limits, job};"), ["fit", "job"]);
    assert_eq!(used("use crate::plan::Plan;"), ["plan"]);
}

#[test]
fn the_core_touches_no_files_clock_threads_or_streams() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for module in ORDER.iter().filter(|module| **module != "cli") {
        for file in sources(&root.join(module)) {
            let code = code(&file);
            for word in ["std::fs", "std::env", "std::thread", "std::net", "SystemTime", "Instant", "std::process"] {
                assert!(!code.contains(word), "{} uses {word}", file.display());
            }
        }
    }
}
