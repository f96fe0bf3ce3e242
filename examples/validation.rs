//! Writes the validation page of the README again: `cargo run --example validation`.
//!
//! The reference rows, what the program computes for them and the errors allowed are those of the tests.

#[path = "../tests/checked/mod.rs"]
mod checked;

use checked::{Check, page, picture, sets};
use std::{fs, io};

fn main() -> io::Result<()> {
    let all: Vec<Vec<Check>> = sets().map(|set| (set.checks)()).collect();
    let write = |name: &str, text: String| fs::write(format!("{}/{name}", env!("CARGO_MANIFEST_DIR")), text);
    write(page::PAGE, page::page(&all))?;
    write(page::PICTURE, picture::picture(&all))
}
