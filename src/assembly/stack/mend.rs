use super::Ends;
use crate::quantity::{Length, Nanometres};

/// The play that is wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// Least.
    pub least: Length,
    /// Most; none where more does no harm.
    pub most: Option<Length>,
}

/// What a shim would have to do; a negative thickness is to be taken away.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Change {
    /// The play is as wanted in every case.
    None,
    /// One thickness between these two, added everywhere, suits every case.
    Fixed {
        /// Least.
        least: Length,
        /// Most; none where any more would do too.
        most: Length,
    },
    /// No one thickness suits every case: it is chosen for each assembly, between these two.
    Chosen {
        /// For the fullest assembly.
        least: Length,
        /// For the emptiest assembly.
        most: Length,
    },
}

/// What to add to a stack, or to take from it, so that its play is as wanted.
///
/// In every case the play left is `play - shim`. One shim suits all when it leaves the least play at least the least that is
/// wanted, and the most at most the most that is wanted.
pub fn change(play: Ends, wanted: Wanted) -> Change {
    // Whole nanometres: what is just enough is enough.
    let less = |one: Length, other: Length| Nanometres::from_length(one) - Nanometres::from_length(other);
    let room = less(play.least, wanted.least);
    let zero = Nanometres::default();
    let Some(most) = wanted.most else {
        let most = room.length();
        return if room >= zero { Change::None } else { Change::Fixed { least: most, most } };
    };
    let needed = less(play.most, most);
    if needed <= zero && room >= zero {
        Change::None
    } else if needed <= room {
        Change::Fixed { least: needed.length(), most: room.length() }
    } else {
        Change::Chosen { least: room.length(), most: needed.length() }
    }
}
