//! The command line as a whole: files, flags, help, errors for people and for programs.

#![allow(clippy::unwrap_used, reason = "a failed unwrap is a failed test")]
#![allow(clippy::print_stderr, reason = "what was skipped is said")]

mod bad;
#[path = "../binary/mod.rs"]
mod binary;
mod catalogue;
mod errors_json;
mod files;
mod flags;
mod sheets;

use binary::{as_str, folder, written};
use std::fs;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

const PUMP: &str = "examples/pump-case.toml";

fn example(name: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(name)).unwrap()
}

/// The names in a folder, in order.
fn names(folder: &TempDir) -> Vec<String> {
    let mut names: Vec<String> =
        fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    names
}
