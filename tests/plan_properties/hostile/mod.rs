//! Texts that were not written to be read, and jobs of any sizes: nothing may panic, hang, or print what is no number.
//!
//! `SEATWISE_FUZZ_CASES` is the number of cases of each property. What was found once is a file in `tests/corpus`.

mod corpus;
mod jobs;
mod lists;
mod outputs;
mod quantities;
mod texts;

use proptest::test_runner::Config;
use std::ops::Range;

/// Cases of a property: as many as the environment asks for, or these.
fn cases(usual: u32) -> Config {
    let asked = std::env::var("SEATWISE_FUZZ_CASES").ok();
    let cases = asked.map_or(usual, |cases| cases.parse().expect("SEATWISE_FUZZ_CASES is a whole number"));
    // A text of many pieces is cut down to the few that matter; what is found goes into the corpus by hand.
    Config { cases, max_shrink_iters: 4000, failure_persistence: None, ..Config::default() }
}

/// A place of a message must be one that a terminal can underline.
fn can_be_underlined(text: &str, at: &Range<usize>) -> bool {
    text.get(at.clone()).is_some()
}

/// The jobs that are shown and given to begin with.
const JOBS: [&str; 18] = [
    include_str!("../../../examples/bronze-bush.toml"),
    include_str!("../../../examples/conveyor-drive.toml"),
    include_str!("../../../examples/core-plug.toml"),
    include_str!("../../../examples/fan-shaft.toml"),
    include_str!("../../../examples/gear-cover.toml"),
    include_str!("../../../examples/half-hour-freezer.toml"),
    include_str!("../../../examples/inch-gearbox.toml"),
    include_str!("../../../examples/iron-hub.toml"),
    include_str!("../../../examples/lined-bore.toml"),
    include_str!("../../../examples/mixer-seal.toml"),
    include_str!("../../../examples/pump-case.toml"),
    include_str!("../../../examples/trailer-hub.toml"),
    include_str!("../../../examples/warm-measured.toml"),
    include_str!("../../../examples/starters/bearing.toml"),
    include_str!("../../../examples/starters/bush.toml"),
    include_str!("../../../examples/starters/plug.toml"),
    include_str!("../../../examples/starters/seal.toml"),
    include_str!("../../../examples/starters/shaft-bearing.toml"),
];
