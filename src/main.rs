//! The `seatwise` command.

use std::process::ExitCode;

fn main() -> ExitCode {
    seatwise::cli::run()
}
