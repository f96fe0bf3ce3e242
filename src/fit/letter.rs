use crate::stock::iso286::Feature;

/// The fundamental deviation of a tolerance class, as its letter or letters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs, reason = "the variants are the letters of ISO 286-1 themselves")]
pub enum Letter {
    A,
    B,
    C,
    Cd,
    D,
    E,
    Ef,
    F,
    Fg,
    G,
    H,
    Js,
    J,
    K,
    M,
    N,
    P,
    R,
    S,
    T,
    U,
    V,
    X,
    Y,
    Z,
    Za,
    Zb,
    Zc,
}

/// Where the tolerance interval lies, seen from the nominal size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Placement {
    /// On the clearance side: the table gives the limit nearer to nominal, the tolerance leads away from the mate.
    Loose,
    /// Half the tolerance on each side.
    Symmetrical,
    /// On the interference side or across nominal: the table gives the upper limit of a hole and the lower limit of a
    /// shaft, and the tolerance leads down from the one and up from the other.
    Tight,
}

impl Letter {
    /// All letters in the order of ISO 286-1, from the loosest to the tightest.
    pub const ALL: [Self; 28] = {
        use Letter::*;
        [A, B, C, Cd, D, E, Ef, F, Fg, G, H, Js, J, K, M, N, P, R, S, T, U, V, X, Y, Z, Za, Zb, Zc]
    };

    /// Each of [`Self::ALL`] as a hole writes it.
    const CAPITALS: [&'static str; 28] = [
        "A", "B", "C", "CD", "D", "E", "EF", "F", "FG", "G", "H", "JS", "J", "K", "M", "N", "P", "R", "S", "T", "U",
        "V", "X", "Y", "Z", "ZA", "ZB", "ZC",
    ];

    /// The letter as a class of `feature` writes it: capitals for a hole, small letters for a shaft.
    pub fn symbol(self, feature: Feature) -> String {
        let capitals = Self::CAPITALS[self as usize];
        match feature {
            Feature::Hole => capitals.to_owned(),
            Feature::Shaft => capitals.to_ascii_lowercase(),
        }
    }

    pub(super) fn read(symbol: &str) -> Option<Self> {
        let capitals = Self::CAPITALS.iter().position(|capitals| capitals.eq_ignore_ascii_case(symbol));
        capitals.map(|place| Self::ALL[place])
    }

    pub(super) fn placement(self) -> Placement {
        use Letter::*;
        match self {
            A | B | C | Cd | D | E | Ef | F | Fg | G | H => Placement::Loose,
            Js => Placement::Symmetrical,
            J | K | M | N | P | R | S | T | U | V | X | Y | Z | Za | Zb | Zc => Placement::Tight,
        }
    }
}
