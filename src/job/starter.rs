//! Jobs to begin with: each counts as it stands, and says beside each line what may stand there instead.

/// A job to begin with.
#[derive(Clone, Copy, Debug)]
pub struct Starter {
    /// What it is asked for by.
    pub name: &'static str,
    /// What it is for.
    pub what: &'static str,
    /// The text of the job file.
    pub text: &'static str,
}

/// Every job to begin with.
///
/// # Examples
/// ```
/// use seatwise::{job, stock::Library};
/// let bush = job::STARTERS.iter().find(|starter| starter.name == "bush").unwrap();
/// assert!(job::check(bush.text, &Library::default()).is_ok());
/// ```
pub const STARTERS: [Starter; 5] = [
    Starter {
        name: "bearing",
        what: "a bearing into its housing",
        text: include_str!("../../examples/starters/bearing.toml"),
    },
    Starter {
        name: "shaft-bearing",
        what: "a bearing onto its shaft",
        text: include_str!("../../examples/starters/shaft-bearing.toml"),
    },
    Starter {
        name: "bush",
        what: "a plain bush into its housing",
        text: include_str!("../../examples/starters/bush.toml"),
    },
    Starter { name: "plug", what: "a solid plug into a bore", text: include_str!("../../examples/starters/plug.toml") },
    Starter { name: "seal", what: "a shaft seal alone", text: include_str!("../../examples/starters/seal.toml") },
];
