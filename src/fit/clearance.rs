use super::Limits;
use crate::quantity::{Cases, Nanometres};
use std::fmt;

/// Clearance between two parts at 20 °C in the three cases of their limits, positive when loose.
///
/// tightest = smallest outer - largest inner, loosest = largest outer - smallest inner, middle = their mean (rounded
/// down to a whole nanometre, towards tight).
///
/// **Arguments**: `outer`, limits of the bore of the outer part; `inner`, limits of the outside of the inner part. Their
/// nominal sizes may differ.
///
/// **Source**: ISO 286-1:2010, definitions of clearance and interference.
///
/// # Examples
/// ```
/// use seatwise::fit::{ToleranceClass, clearance_band, limits_of_size};
/// use seatwise::quantity::Nanometres;
/// let limits = |class: &str| -> Result<_, Box<dyn std::error::Error>> {
///     Ok(limits_of_size(Nanometres::from_mm(50.0), ToleranceClass::parse(class)?)?)
/// };
/// // H7 is 0/+25 µm and r6 +34/+50 µm at 50 mm (ISO 286-1).
/// let band = clearance_band(&limits("H7")?, &limits("r6")?);
/// assert_eq!((band.tightest, band.loosest), (Nanometres::from_um(-50.0), Nanometres::from_um(-9.0)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn clearance_band(outer: &Limits, inner: &Limits) -> Cases<Nanometres> {
    let tightest = outer.smallest() - inner.largest();
    let loosest = outer.largest() - inner.smallest();
    Cases { tightest, middle: Nanometres((tightest.0 + loosest.0).div_euclid(2)), loosest }
}

/// What kind of fit a band of clearances is, in the terms of ISO 286-1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FitKind {
    /// Always clearance; in the extreme case the sizes are equal.
    Clearance,
    /// Clearance or interference, as the sizes fall.
    Transition,
    /// Always interference; in the extreme case the sizes are equal.
    Interference,
}

impl FitKind {
    /// The kind of fit of a band of clearances.
    pub fn of(band: &Cases<Nanometres>) -> Self {
        if band.tightest >= Nanometres(0) {
            Self::Clearance
        } else if band.loosest <= Nanometres(0) {
            Self::Interference
        } else {
            Self::Transition
        }
    }
}

impl fmt::Display for FitKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Clearance => "clearance fit",
            Self::Transition => "transition fit",
            Self::Interference => "interference fit",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Deviations;

    fn limits(lower_um: f64, upper_um: f64) -> Limits {
        let deviations = Deviations { lower: Nanometres::from_um(lower_um), upper: Nanometres::from_um(upper_um) };
        Limits::stated(Nanometres::from_mm(62.0), deviations)
    }

    #[test]
    fn the_tightest_case_is_the_largest_inner_in_the_smallest_outer_part() {
        let band = clearance_band(&limits(-39.0, -9.0), &limits(-13.0, 0.0));
        assert_eq!(band.map(Nanometres::um).middle.to_string(), "-17.5");
        assert_eq!((band.tightest, band.loosest), (Nanometres(-39_000), Nanometres(4_000)));
        assert_eq!(FitKind::of(&band), FitKind::Transition);
    }

    #[test]
    fn equal_sizes_at_the_extreme_still_make_a_clearance_or_an_interference_fit() {
        assert_eq!(FitKind::of(&clearance_band(&limits(0.0, 30.0), &limits(-19.0, 0.0))), FitKind::Clearance);
        assert_eq!(FitKind::of(&clearance_band(&limits(0.0, 30.0), &limits(30.0, 49.0))), FitKind::Interference);
        assert_eq!(FitKind::of(&clearance_band(&limits(0.0, 30.0), &limits(29.0, 49.0))), FitKind::Transition);
    }
}
