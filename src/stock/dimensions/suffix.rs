use crate::stock::iso492::RingClass;
use serde::Deserialize;
use std::fmt;

/// A group of radial internal clearance of ISO 5753-1, tightest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
pub enum ClearanceGroup {
    /// Less than normal.
    C2,
    /// Normal; usually not written.
    CN,
    /// More than normal.
    C3,
    /// More than C3.
    C4,
    /// More than C4.
    C5,
}

impl ClearanceGroup {
    /// All groups, tightest first.
    pub const ALL: [Self; 5] = [Self::C2, Self::CN, Self::C3, Self::C4, Self::C5];
}

/// What a suffix of a designation says, as far as open standards settle it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Suffix {
    /// Group of internal clearance, ISO 5753-1.
    InternalClearance(ClearanceGroup),
    /// Tolerance class of the rings, ISO 492.
    RingClass(RingClass),
    /// Metal shields on so many sides, DIN 623-1: Z, 2Z. The trade also writes ZZ.
    Shields {
        /// 1 or 2.
        sides: u8,
    },
    /// Rubbing seals on so many sides, DIN 623-1: RS, 2RS.
    Seals {
        /// 1 or 2.
        sides: u8,
    },
}

/// The suffixes that are read, as written in capitals. Letters that only one maker uses are not among them.
const KNOWN: [(&str, Suffix); 13] = [
    ("C2", Suffix::InternalClearance(ClearanceGroup::C2)),
    ("CN", Suffix::InternalClearance(ClearanceGroup::CN)),
    ("C3", Suffix::InternalClearance(ClearanceGroup::C3)),
    ("C4", Suffix::InternalClearance(ClearanceGroup::C4)),
    ("C5", Suffix::InternalClearance(ClearanceGroup::C5)),
    ("P6", Suffix::RingClass(RingClass::P6)),
    ("P5", Suffix::RingClass(RingClass::P5)),
    ("P4", Suffix::RingClass(RingClass::P4)),
    ("2RS", Suffix::Seals { sides: 2 }),
    ("RS", Suffix::Seals { sides: 1 }),
    ("2Z", Suffix::Shields { sides: 2 }),
    ("ZZ", Suffix::Shields { sides: 2 }),
    ("Z", Suffix::Shields { sides: 1 }),
];

impl Suffix {
    /// Reads one word as one suffix or as several written together (`2RSC3`); none when any part of it is unknown.
    pub(super) fn read(word: &str) -> Option<Vec<Self>> {
        if word.is_empty() {
            return Some(Vec::new());
        }
        KNOWN.iter().find_map(|(name, suffix)| {
            let mut found = vec![*suffix];
            found.extend(Self::read(word.strip_prefix(name)?)?);
            Some(found)
        })
    }
}

impl fmt::Display for Suffix {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = KNOWN.iter().find(|(_, suffix)| suffix == self).map_or("", |(name, _)| *name);
        f.write_str(name)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn suffixes_written_together_are_parted_only_when_every_part_is_known() {
        let both = vec![Suffix::Seals { sides: 2 }, Suffix::InternalClearance(ClearanceGroup::C3)];
        assert_eq!(Suffix::read("2RSC3"), Some(both));
        for word in ["2RS1", "2RSR", "DDU", "C6", "P63", "C", "2"] {
            assert_eq!(Suffix::read(word), None, "{word}");
        }
    }

    #[test]
    fn zz_and_2z_are_the_same_two_shields() {
        assert_eq!(Suffix::read("ZZ"), Suffix::read("2Z"));
        assert_ne!(Suffix::read("Z"), Suffix::read("2Z"));
        assert_eq!(Suffix::Shields { sides: 2 }.to_string(), "2Z");
    }
}
