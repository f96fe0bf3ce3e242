//! Limits of a class from the cells of the tables, or which cell is blank.

use super::letter::Placement;
use super::{Limits, LimitsSource, ToleranceClass};
use crate::quantity::{Deviations, Nanometres};
use crate::stock::iso286::{DeltaRow, DeviationRow, Feature, GradeRow, Tables};

/// Which cell of the tables is blank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Missing {
    /// The standard tolerance.
    Grade,
    /// The fundamental deviation.
    Deviation,
    /// Delta, which only IT3 to IT8 have.
    Delta,
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
