//! The short answer for the bench, and what can hurt someone: `cargo run --example mechanic`.

use seatwise::plan::Level;
use seatwise::stock::Library;
use seatwise::{job, plan, report};
use std::error::Error;
use std::io::{self, Write};

/// A bearing that goes cold into a warm pump case.
const JOB: &str = include_str!("pump-case.toml");

fn main() -> Result<(), Box<dyn Error>> {
    answer(&mut io::stdout().lock())
}

/// Writes the answer, then every caution of which someone could be hurt.
pub fn answer(out: &mut impl Write) -> Result<(), Box<dyn Error>> {
    let job = job::check(JOB, &Library::default())?;
    let plan = plan::plan(&job)?;
    writeln!(out, "{}", report::text::short(&plan, job.system))?;
    let dangers = plan.cautions.iter().filter(|caution| caution.level() == Level::Danger);
    writeln!(out, "{} dangers; `seatwise plan` prints each with what to do.", dangers.count())?;
    Ok(())
}
