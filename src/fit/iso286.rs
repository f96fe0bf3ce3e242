//! The rules of ISO 286-1 that turn a class and a nominal size into limit deviations.

use super::gaps;
use super::look_up::look_up;
use super::{FitError, Limits, ToleranceClass};
use crate::quantity::Nanometres;
use crate::stock::iso286::tables;

/// The largest nominal size of ISO 286-1.
const LARGEST: Nanometres = Nanometres(3_150_000_000);

/// Limits of size of a tolerance class at 20 °C.
///
/// One limit is the fundamental deviation of the letter, the other lies the standard tolerance of the grade away:
///
/// | class | lower | upper |
/// |---|---|---|
/// | a to h | es - IT | es |
/// | j to zc | ei | ei + IT |
/// | A to H | EI | EI + IT |
/// | J to ZC | ES - IT | ES |
/// | js, JS | -IT/2 | +IT/2 |
///
/// ES of K, M, N up to IT8 and of P to ZC up to IT7 is the table's figure plus Delta, over 3 mm up to 500 mm. M6 over
/// 250 up to 315 mm is -9 µm as printed. Half micrometres of js and JS are kept.
///
/// **Arguments**: `nominal`, the nominal size; a size on the edge of a band belongs to the band below it (80 mm is read
/// in "over 50, up to and including 80"); `class`, of a hole or a shaft.
///
/// **Valid for** nominal sizes above 0 up to 3150 mm, parts at 20 °C (ISO 1).
///
/// # Errors
/// [`FitError::SizeOutside`] beyond the tables; [`FitError::ClassNotGiven`] where the standard leaves the class out,
/// with the sizes or grades for which it is given and the nearest class that exists.
///
/// **Source**: ISO 286-1:2010 clauses on standard tolerances and fundamental deviations, Tables 1 to 5, through the
/// texts named in `fits/iso286_*.csv`.
///
/// # Examples
/// ```
/// use seatwise::fit::{ToleranceClass, limits_of_size};
/// use seatwise::quantity::Nanometres;
/// let n7 = limits_of_size(Nanometres::from_mm(62.0), ToleranceClass::parse("N7")?)?;
/// assert_eq!((n7.deviations.lower, n7.deviations.upper), (Nanometres::from_um(-39.0), Nanometres::from_um(-9.0)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn limits_of_size(nominal: Nanometres, class: ToleranceClass) -> Result<Limits, FitError> {
    if nominal <= Nanometres(0) || nominal > LARGEST {
        return Err(FitError::SizeOutside { nominal });
    }
    let tables = tables()?;
    look_up(tables, nominal, class).map_err(|missing| gaps::explain(tables, nominal, class, &missing))
}
