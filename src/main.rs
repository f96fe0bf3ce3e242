//! The `seatwise` command.

fn main() {}
