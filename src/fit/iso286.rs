//! The rules of ISO 286-1 that turn a class and a nominal size into limit deviations.

use super::gaps::{self, Missing};
use super::letter::Placement;
use super::{FitError, Limits, LimitsSource, ToleranceClass};
use crate::quantity::{Deviations, Nanometres};
use crate::stock::iso286::{DeltaRow, DeviationRow, Feature, GradeRow, Tables, tables};

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

pub(super) fn look_up(tables: &Tables, nominal: Nanometres, class: ToleranceClass) -> Result<Limits, Missing> {
    let grade = tables.tolerance(nominal, class.grade()).ok_or(Missing::Grade)?;
    let width = grade.tolerance;
    let placement = class.letter().placement();
    if placement == Placement::Symmetrical {
        let lower = -Nanometres(width.0 / 2);
        let deviations = Deviations { lower, upper: lower + width };
        return Ok(Limits { nominal, deviations, source: cite(class, grade, None) });
    }
    let used = fundamental(tables, nominal, class)?;
    let value = used.value();
    let table_gives_lower = (class.feature() == Feature::Hole) == (placement == Placement::Loose);
    let deviations = if table_gives_lower {
        Deviations { lower: value, upper: value + width }
    } else {
        Deviations { lower: value - width, upper: value }
    };
    Ok(Limits { nominal, deviations, source: cite(class, grade, Some(&used)) })
}

/// The cells that make a fundamental deviation.
struct Fundamental<'a> {
    row: &'a DeviationRow,
    delta: Option<Delta<'a>>,
}

struct Delta<'a> {
    row: &'a DeltaRow,
    /// Whether Delta equals IT(n) - IT(n-1) of published cells, which is the rule behind its table.
    confirmed: bool,
}

impl Fundamental<'_> {
    fn value(&self) -> Nanometres {
        self.row.value + self.delta.as_ref().map_or(Nanometres(0), |delta| delta.row.value)
    }
}

fn fundamental(tables: &Tables, nominal: Nanometres, class: ToleranceClass) -> Result<Fundamental<'_>, Missing> {
    let grade = class.grade();
    let row = tables.deviation(class.feature(), &class.symbol(), nominal, grade).ok_or(Missing::Deviation)?;
    if !row.delta_grades.contains(grade) {
        return Ok(Fundamental { row, delta: None });
    }
    let delta = tables.delta(nominal, grade).ok_or(Missing::Delta)?;
    let step = || {
        let (this, finer) = (tables.tolerance(nominal, grade)?, tables.tolerance(nominal, grade.finer()?)?);
        let published = !this.status.is_memory() && !finer.status.is_memory();
        published.then_some(this.tolerance - finer.tolerance)
    };
    let confirmed = !delta.status.is_memory() || step() == Some(delta.value);
    Ok(Fundamental { row, delta: Some(Delta { row: delta, confirmed }) })
}

fn cite(class: ToleranceClass, grade: &GradeRow, used: Option<&Fundamental<'_>>) -> LimitsSource {
    let mut text = format!("ISO 286-1: IT{} {}", grade.grade, grade.range());
    let mut from_memory = grade.status.is_memory();
    if let Some(used) = used {
        text.push_str(&format!("; deviation {} {}", class.symbol(), used.row.range()));
        from_memory |= used.row.status.is_memory();
        if let Some(delta) = &used.delta {
            text.push_str(&format!("; Delta {} µm", delta.row.value.um()));
            from_memory |= !delta.confirmed;
        }
    }
    LimitsSource { text, from_memory }
}
