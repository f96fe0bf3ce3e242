use serde::{Deserialize, Serialize};

/// The family of units in which a shop works.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum System {
    /// mm, µm, °C, N, MPa, N·m.
    #[default]
    Metric,
    /// in, thou, °F, lbf, psi, in·lb and ft·lb.
    Inch,
}

/// A quantity with the family of the unit in which it was typed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entered<Q> {
    /// The quantity.
    pub value: Q,
    /// The family of the typed unit; `None` when both use it (s, min, h, K, %, W).
    pub system: Option<System>,
}

impl<Q> Entered<Q> {
    /// The same entry with its value changed by `f`.
    pub fn map<U>(self, f: impl FnOnce(Q) -> U) -> Entered<U> {
        Entered { value: f(self.value), system: self.system }
    }
}
