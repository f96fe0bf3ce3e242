use serde::Serialize;

/// The same quantity in the three cases of a fit.
///
/// `tightest` is the largest inner with the smallest outer part, `loosest` the opposite, `middle` the mean sizes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Cases<T> {
    /// Largest inner part in the smallest outer part.
    pub tightest: T,
    /// Both parts at the middle of their limits.
    pub middle: T,
    /// Smallest inner part in the largest outer part.
    pub loosest: T,
}

impl<T: Clone> Cases<T> {
    /// The same for all three.
    pub fn same(value: T) -> Self {
        Self { tightest: value.clone(), middle: value.clone(), loosest: value }
    }
}

impl<T> Cases<T> {
    /// Applies `f` to each case.
    pub fn map<U>(self, mut f: impl FnMut(T) -> U) -> Cases<U> {
        Cases { tightest: f(self.tightest), middle: f(self.middle), loosest: f(self.loosest) }
    }

    /// Each case by reference.
    pub fn each(&self) -> Cases<&T> {
        Cases { tightest: &self.tightest, middle: &self.middle, loosest: &self.loosest }
    }

    /// Pairs each case with the same case of `other`.
    pub fn zip<U>(self, other: Cases<U>) -> Cases<(T, U)> {
        Cases {
            tightest: (self.tightest, other.tightest),
            middle: (self.middle, other.middle),
            loosest: (self.loosest, other.loosest),
        }
    }

    /// Applies `f`, and stops at the first error.
    ///
    /// # Errors
    /// The first error of `f`, tightest case first.
    pub fn try_map<U, E>(self, mut f: impl FnMut(T) -> Result<U, E>) -> Result<Cases<U>, E> {
        Ok(Cases { tightest: f(self.tightest)?, middle: f(self.middle)?, loosest: f(self.loosest)? })
    }
}
