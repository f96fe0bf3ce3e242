//! What was found once: a text each in `tests/corpus`, and what must become of it.

use super::{can_be_underlined, outputs};
use outputs::Fate;
use seatwise::job;
use seatwise::stock::Library;

/// A text that went wrong.
struct Found {
    /// What went wrong with it.
    name: &'static str,
    text: &'static str,
    /// What becomes of it now.
    fate: Fate,
    /// Words of its refusal.
    says: &'static str,
}

const FOUND: &[Found] = &[Found {
    name: "a text that is no TOML was no reason for a seal's refusal, and half of its first sign was underlined",
    text: include_str!("../../corpus/no-break-space.toml"),
    fate: Fate::Refused,
    says: "this is not TOML",
}];

#[test]
fn what_was_found_once_is_answered() {
    for Found { name, text, fate, says } in FOUND {
        assert_eq!(outputs::of(text, &Library::default()), *fate, "{name}");
        if *fate == Fate::Refused {
            for problems in [job::check(text, &Library::default()).err(), job::check_seal(text).err()] {
                let problems = problems.unwrap_or_else(|| panic!("{name}: sound"));
                assert!(problems.to_string().contains(says), "{name}: {problems}");
                assert!(problems.iter().all(|problem| can_be_underlined(text, &problem.at)), "{name}: {problems:?}");
            }
        }
    }
}
