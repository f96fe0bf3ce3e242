//! The built program, run as a user runs it from the project's folder, without colours.
#![allow(dead_code, missing_docs, clippy::unwrap_used, reason = "shared by several test files")]

use assert_cmd::Command;
use std::fs;
use std::path::{Path, PathBuf};
use tempfile::TempDir;

/// How a run ended.
pub struct Run {
    pub code: i32,
    pub out: String,
    pub err: String,
}

/// The program with these arguments, not run yet.
pub fn seatwise(arguments: &[&str]) -> Command {
    let mut command = Command::cargo_bin("seatwise").unwrap();
    command.env("NO_COLOR", "1").env_remove("COLUMNS").current_dir(env!("CARGO_MANIFEST_DIR")).args(arguments);
    command
}

/// Runs a command to its end.
pub fn finished(command: &mut Command) -> Run {
    let output = command.output().unwrap();
    Run {
        code: output.status.code().unwrap(),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

/// Runs the program with `input` on its standard input.
pub fn run(arguments: &[&str], input: &str) -> Run {
    finished(seatwise(arguments).write_stdin(input))
}

/// What a run prints that must end well and say nothing on standard error.
pub fn done(arguments: &[&str]) -> String {
    let run = run(arguments, "");
    assert_eq!((run.code, run.err.as_str()), (0, ""), "{arguments:?}");
    run.out
}

/// A folder that goes away with the test.
pub fn folder() -> TempDir {
    tempfile::tempdir().unwrap()
}

/// A file in it.
pub fn written(folder: &TempDir, name: &str, text: impl AsRef<[u8]>) -> PathBuf {
    let path = folder.path().join(name);
    fs::write(&path, text).unwrap();
    path
}

/// A path as an argument.
pub fn as_str(path: &Path) -> &str {
    path.to_str().unwrap()
}
