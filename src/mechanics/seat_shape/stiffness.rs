//! How far a housing gives way, over a plane ring of the same bore and outside.
//!
//! The table holds factors of one ring. What carries over to another ring is the housing's share: the yielding `s` of the
//! housing over that of a plane ring of the same bore and outside, one for equal width and zero for a rigid seat, from
//! `factor = (c_ring + c_housing)/(c_ring + s c_housing)`.

use super::shape::{Normal, SAME};
use crate::stock::seat_shapes::SeatRow;

/// Yielding of the ring of the table over bore and housing modulus, `c_ring E_housing/d`: 52/62 mm, 208 and 70 GPa, 0.3.
pub(super) const TESTED_RING: f64 = 70.0 / 208.0 * ((62.0 * 62.0 + 52.0 * 52.0) / (62.0 * 62.0 - 52.0 * 52.0) - 0.3);
/// Width over bore of the ring of the table, 16/62.
pub(super) const TESTED_WIDTH: f64 = 16.0 / 62.0;
/// Poisson ratio of the housing of the table.
const TESTED_POISSON: f64 = 0.33;
/// How near to the tested ring another must be, in yielding and in width over bore, for its factor to count as interpolated.
const LIKE: f64 = 0.1;
/// By how much an interpolated `s` may be off. Each row left out in turn and interpolated from the others is off by 0.006 at
/// most.
const INTERPOLATION: f64 = 0.008;
/// By how much a row itself may be off in `s`: its factor is known to 0.1 % at worst.
const ROW: f64 = 0.002;

/// Lowest and highest `s`, and how they are known.
pub(super) struct Yielding {
    pub(super) lowest: f64,
    pub(super) highest: f64,
    pub(super) interpolated: bool,
    /// Names of the rows that bound it; `None` where the physical bound does.
    pub(super) softer: Option<String>,
    pub(super) stiffer: Option<String>,
}

/// A plane ring's `c E/d` for an outside over bore.
fn plane(outside: f64) -> f64 {
    let square = outside * outside;
    (square + 1.0) / (square - 1.0) + TESTED_POISSON
}

fn shape(row: &SeatRow) -> Normal {
    Normal {
        outside: row.outside_over_bore,
        wall: row.wall_over_width,
        hole: row.hole_over_bore,
        front: row.front_over_width,
        chamfer: 0.0,
        width: TESTED_WIDTH,
    }
}

fn row_yielding(row: &SeatRow) -> f64 {
    let housing = plane(row.outside_over_bore);
    ((TESTED_RING + housing) / row.factor - TESTED_RING) / housing
}

/// `s` of a seat for a ring of this yielding, `c_ring E_housing/d`.
pub(super) fn yielding(table: &[SeatRow], seat: &Normal, ring: f64) -> Yielding {
    let mut found = bounded(table, seat);
    let like = |value: f64, tested: f64| (value / tested - 1.0).abs() <= LIKE;
    let comparable = like(ring, TESTED_RING) && like(seat.width, TESTED_WIDTH);
    if let Some(s) = interpolated(table, seat).filter(|_| comparable) {
        let (low, high) = (found.lowest, found.highest);
        found.lowest = (s - INTERPOLATION).max(low);
        found.highest = (s + INTERPOLATION).min(high);
        found.interpolated = true;
    }
    for_width(&mut found, seat.width);
    for_ring(&mut found, ring);
    found
}

/// Bounds by metal: a housing that holds all the metal of another gives way less under the same ring.
///
/// True of linear elasticity without friction: adding metal, at fixed loads, can only lower the work they do, so the pressures
/// that close a given interference can only grow in sum. A plane ring is held by every seat of its bore and outside, and
/// nothing gives way less than a rigid seat.
fn bounded(table: &[SeatRow], seat: &Normal) -> Yielding {
    let own = plane(seat.outside);
    let mut found = Yielding { lowest: 0.0, highest: 1.0, interpolated: false, softer: None, stiffer: None };
    for row in table {
        let metal = shape(row);
        let s = row_yielding(row) * plane(metal.outside) / own;
        if seat.holds(&metal) && s + ROW < found.highest {
            found.highest = s + ROW;
            found.softer = Some(row.row.clone());
        }
        if metal.holds(seat) && s - ROW > found.lowest {
            found.lowest = s - ROW;
            found.stiffer = Some(row.row.clone());
        }
    }
    found
}

/// Between rows of the same front and hole: over `1/outside²` among rows of one wall, then over `1/wall`, in which `s` runs
/// nearly straight.
fn interpolated(table: &[SeatRow], seat: &Normal) -> Option<f64> {
    let same = |a: f64, b: f64| (a - b).abs() <= SAME;
    let level: Vec<&SeatRow> = table
        .iter()
        .filter(|row| same(row.front_over_width, seat.front) && same(row.hole_over_bore, seat.hole))
        .collect();
    let over_outside = |wall: f64| {
        let points = level.iter().filter(|row| same(row.wall_over_width, wall));
        between(points.map(|row| (row.outside_over_bore.powi(-2), row_yielding(row))), seat.outside.powi(-2))
    };
    if let Some(s) = over_outside(seat.wall) {
        return Some(s);
    }
    if seat.wall <= 0.0 {
        return None;
    }
    let walls = level.iter().filter(|row| row.wall_over_width > 0.0);
    let points = walls.filter_map(|row| Some((1.0 / row.wall_over_width, over_outside(row.wall_over_width)?)));
    between(points, 1.0 / seat.wall)
}

/// On the straight line between the nearest points on either side; `None` outside of them.
fn between(points: impl Iterator<Item = (f64, f64)>, at: f64) -> Option<f64> {
    let (mut below, mut above) = (None::<(f64, f64)>, None::<(f64, f64)>);
    for point in points {
        if point.0 <= at + SAME && below.is_none_or(|known| point.0 > known.0) {
            below = Some(point);
        }
        if point.0 >= at - SAME && above.is_none_or(|known| point.0 < known.0) {
            above = Some(point);
        }
    }
    let (below, above) = (below?, above?);
    let span = above.0 - below.0;
    let share = if span > SAME { ((at - below.0) / span).clamp(0.0, 1.0) } else { 0.5 };
    Some(below.1 + share * (above.1 - below.1))
}

/// Ends of the seat stiffen it as far as they reach, which goes with the bore, not with the width: a narrower ring lies
/// more, a wider one less within their reach, in proportion at most. Not tested; beyond a quarter either way only the
/// physical bounds are kept.
fn for_width(found: &mut Yielding, width: f64) {
    let reach = TESTED_WIDTH / width;
    if !(0.8..=1.25).contains(&reach) {
        (found.lowest, found.highest) = (0.0, 1.0);
        (found.softer, found.stiffer) = (None, None);
    } else if reach > 1.0 {
        found.lowest = (1.0 - (1.0 - found.lowest) * reach).max(0.0);
    } else {
        found.highest = 1.0 - (1.0 - found.highest) * reach;
    }
}

/// A stiffer ring spreads its load so that the housing gives way less, a softer one so that it gives way more; neither by
/// more than in proportion.
///
/// With the ring as a bed of springs c and the housing's yielding spread as dμ(λ), `C(c) = 1/∫dμ/(c + λ) - c` rises with c, is
/// concave and not negative at zero, so `C(c)/c` falls.
fn for_ring(found: &mut Yielding, ring: f64) {
    let share = ring / TESTED_RING;
    if share < 1.0 {
        found.lowest *= share;
    } else {
        found.highest = (found.highest * share).min(1.0);
    }
}
