//! What stands along the axis: the play that a retaining ring leaves, and two bearings with their spacer.

mod model;
mod pair;
mod steps;

pub use model::{BedPlan, Binds, Closes, PairPlan, SpacerFit, StackPlan, StackRow};

use super::PlanError;
use super::push::InternalClearancePlan;
use crate::assembly::stack::{Chain, Link, Wanted, Way, change};
use crate::job::{AxialSize, Bed, Job};
use crate::quantity::{Length, Nanometres};

/// Shares between which 98 of 100 lie.
const SCATTER: (f64, f64) = (0.01, 0.99);

/// The stack of a job; none where it has none.
pub(super) fn plan(job: &Job, play: Option<&InternalClearancePlan>) -> Result<Option<StackPlan>, PlanError> {
    let Some(stack) = &job.stack else { return Ok(None) };
    Ok(Some(StackPlan {
        bed: stack.bed.as_deref().map(bed).transpose()?,
        pair: stack.pair.as_ref().map(|pair| pair::plan(job, pair, play)).transpose()?,
    }))
}

fn bed(bed: &Bed) -> Result<BedPlan, PlanError> {
    let rows = rows(bed);
    let chain = chain(&rows)?;
    let wanted = Wanted { least: whole(bed.least_play), most: bed.most_play.map(whole) };
    let (play, scatter) = (chain.worst_case(), chain.scatter());
    let zero = Length::default();
    let closes = if play.least >= zero {
        Closes::Always
    } else if play.most >= zero {
        Closes::Sometimes
    } else {
        Closes::Never
    };
    let thickness = &bed.ring.thickness;
    let mut plan = BedPlan {
        ring: bed.ring.name.clone(),
        usual_play: chain.root_sum_square(),
        scatter: (scatter.at_share(SCATTER.0), scatter.at_share(SCATTER.1)),
        share_short: if play.least < wanted.least { scatter.share_below(wanted.least) } else { 0.0 },
        share_long: wanted.most.map(|most| if play.most > most { 1.0 - scatter.share_below(most) } else { 0.0 }),
        least_wanted: wanted.least,
        most_wanted: wanted.most,
        closes,
        slack: (less(bed.groove_width.least, thickness.most), less(bed.groove_width.most, thickness.least)),
        land: land(bed),
        change: change(play, wanted),
        widest: chain.widest(),
        widest_by: less(rows[chain.widest()].most, rows[chain.widest()].least),
        reading: reading(bed),
        gap: gap(bed)?,
        play,
        rows,
        kinds: Vec::new(),
        steps: Vec::new(),
    };
    (plan.kinds, plan.steps) = steps::steps(bed, &plan).into_iter().unzip();
    Ok(plan)
}

fn whole(length: Length) -> Length {
    Nanometres::from_length(length).length()
}

/// A difference in whole nanometres, so that nothing is nothing.
fn less(one: Length, other: Length) -> Length {
    (Nanometres::from_length(one) - Nanometres::from_length(other)).length()
}

fn row(what: &str, size: &AxialSize, way: Way) -> StackRow {
    StackRow { what: what.to_owned(), least: size.least, most: size.most, way, basis: size.basis.clone() }
}

/// The dimensions that open the play, then the parts, then the ring.
fn rows(bed: &Bed) -> Vec<StackRow> {
    let mut rows = opening(bed);
    rows.extend(bed.parts.iter().map(|part| row(&part.name, &part.size, Way::Fills)));
    rows.push(row(&bed.ring.name, &bed.ring.thickness, Way::Fills));
    rows
}

/// From the shoulder to the wall that holds the ring.
fn opening(bed: &Bed) -> Vec<StackRow> {
    match (&bed.from_shoulder, &bed.depth, &bed.from_face) {
        (Some(wall), ..) => vec![row("shoulder to groove wall", wall, Way::Opens)],
        (None, Some(depth), Some(wall)) => {
            vec![row("depth of the shoulder", depth, Way::Opens), row("face to groove wall", wall, Way::Fills)]
        }
        _ => Vec::new(),
    }
}

/// The gap between the last part and the wall, before the ring is in: the play of a stack without its ring.
fn gap(bed: &Bed) -> Result<(Length, Length), PlanError> {
    let rows = rows(bed);
    let ends = chain(&rows[..rows.len() - 1])?.worst_case();
    Ok((ends.least, ends.most))
}

fn chain(rows: &[StackRow]) -> Result<Chain, PlanError> {
    let links = rows.iter().map(|row| Link { least: row.least, most: row.most, way: row.way });
    Ok(Chain::new(links.collect())?)
}

/// Least land between the groove and the face, and the least that it should be.
fn land(bed: &Bed) -> Option<(Length, Length)> {
    let wanted = bed.ring.least_land?;
    let land = match (&bed.from_face, &bed.from_shoulder, &bed.depth) {
        (Some(wall), ..) => wall.least,
        (None, Some(wall), Some(depth)) => less(depth.least, wall.most),
        _ => return None,
    };
    Some((land, wanted))
}

/// Depth of the bearing's outer face below the face, once all is home.
fn reading(bed: &Bed) -> Option<(Length, Length)> {
    let depth = bed.depth.as_ref()?;
    let last = bed.parts.iter().position(|part| part.is("bearing"))?;
    let up_to = &bed.parts[..=last];
    let sum = |size: fn(&AxialSize) -> Length| {
        up_to.iter().map(|part| size(&part.size)).fold(Length::default(), |sum, size| sum + size)
    };
    Some((depth.least - sum(|size| size.most), depth.most - sum(|size| size.least)))
}
