use super::{FitError, Limits, LimitsSource};
use crate::quantity::{Cases, Deviations, Nanometres};
use std::fmt;

/// Limits about a measured size at 20 °C: the reading, plus and minus its uncertainty.
///
/// **Arguments**: `reading`, brought to 20 °C by the caller; `within`, half the width of the interval that holds the
/// true size, gauge and temperature included.
///
/// # Errors
/// [`FitError::Measurement`] when the reading is not above zero, or the uncertainty is negative or as large as the
/// reading.
pub fn measured(reading: Nanometres, within: Nanometres) -> Result<Limits, FitError> {
    if within < Nanometres(0) || within >= reading {
        return Err(FitError::Measurement { reading, within });
    }
    let text = format!("measured {} mm within {} µm", reading.mm(), within.um());
    let deviations = Deviations { lower: -within, upper: within };
    Ok(Limits { nominal: reading, deviations, source: LimitsSource { text, from_memory: false } })
}

/// Whether two measured parts are known to be loose or tight.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Sign {
    /// Clearance, whatever the true sizes within the uncertainty.
    Loose,
    /// Interference, whatever the true sizes within the uncertainty.
    Tight,
    /// The uncertainty is as wide as the fit: it may be either.
    Undecided,
}

/// What a clearance band of measured parts settles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Decision {
    /// The clearance that the readings give, positive when loose.
    pub clearance: Nanometres,
    /// Uncertainty of that clearance, plus and minus: the uncertainties of both parts added.
    pub uncertainty: Nanometres,
    /// Whether the sign of the clearance is settled.
    pub sign: Sign,
}

/// Judges a clearance band whose width is all uncertainty of measurement.
///
/// The sign is settled when no true size within the uncertainty changes it: uncertainty < |clearance|. The
/// uncertainties of the two parts are added, not combined by squares, because one gauge may err the same way on both.
///
/// **Arguments**: `band`, from [`clearance_band`](super::clearance_band) of two [`measured`] parts.
pub fn decide(band: &Cases<Nanometres>) -> Decision {
    let sign = if band.tightest > Nanometres(0) {
        Sign::Loose
    } else if band.loosest < Nanometres(0) {
        Sign::Tight
    } else {
        Sign::Undecided
    };
    Decision { clearance: band.middle, uncertainty: band.loosest - band.middle, sign }
}

impl Decision {
    /// Whether the sign of the clearance is settled.
    pub fn is_settled(&self) -> bool {
        self.sign != Sign::Undecided
    }
}

impl fmt::Display for Decision {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (kind, size) = if self.clearance < Nanometres(0) {
            ("interference", -self.clearance)
        } else {
            ("clearance", self.clearance)
        };
        let (size, uncertainty) = (size.um(), self.uncertainty.um());
        write!(f, "the readings give {size} µm {kind}, known within {uncertainty} µm")?;
        match self.sign {
            Sign::Undecided => write!(f, ": the parts may be loose or tight\n  help: measure closer, or fit for both"),
            Sign::Loose | Sign::Tight => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::clearance_band;

    fn judged(outer_mm: f64, inner_mm: f64, within_um: f64) -> Decision {
        let part = |mm| measured(Nanometres::from_mm(mm), Nanometres::from_um(within_um)).unwrap();
        decide(&clearance_band(&part(outer_mm), &part(inner_mm)))
    }

    #[test]
    fn uncertainties_of_both_parts_add() {
        let said = judged(61.990, 61.994, 2.0);
        assert_eq!((said.clearance, said.uncertainty), (Nanometres(-4_000), Nanometres(4_000)));
        assert_eq!(said.sign, Sign::Undecided);
        assert!(
            said.to_string().contains("give 4 µm interference, known within 4 µm: the parts may be loose or tight")
        );
    }

    #[test]
    fn a_fit_wider_than_its_uncertainty_is_settled() {
        assert_eq!(judged(61.985, 61.994, 2.0).sign, Sign::Tight);
        assert_eq!(judged(62.003, 61.994, 2.0).sign, Sign::Loose);
        assert!(judged(62.003, 61.994, 2.0).is_settled());
        let none = judged(61.994, 61.994, 0.0);
        assert!(none.sign == Sign::Undecided && !none.is_settled());
        assert!(none.to_string().contains("give 0 µm clearance"), "size for size is no interference: {none}");
    }

    #[test]
    fn readings_that_cannot_be_are_refused() {
        for (reading, within) in [(0.0, 1.0), (-5.0, 1.0), (62.0, -1.0), (0.001, 1.0)] {
            assert!(measured(Nanometres::from_mm(reading), Nanometres::from_um(within)).is_err(), "{reading} {within}");
        }
    }
}
