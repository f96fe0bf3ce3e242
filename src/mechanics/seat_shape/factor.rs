//! From the yielding of a seat to the factors on the plane formula.

use super::shape::{Normal, SeatShape};
use super::stiffness::{Yielding, yielding};
use crate::mechanics::error::MechanicsError;
use crate::mechanics::joint::Joint;
use crate::mechanics::seam::compliance;
use crate::quantity::within;
use crate::stock::seat_shapes::SeatRow;
use uom::si::length::meter;
use uom::si::pressure::pascal;

/// Chamfer over width, and friction, of the rows that were computed with them.
const TESTED_CHAMFER: f64 = 1.0 / 16.0;
const TESTED_FRICTION: f64 = 0.12;
/// What such a chamfer takes from the force (0.6 and 1.5 % in rows A6, B13), and takes from or adds to the closing (A6, B13).
const CHAMFER_FORCE: f64 = 0.016;
const CHAMFER_CLOSING: (f64, f64) = (0.004, 0.006);
/// What such friction adds to force and closing: with equal width (row A5), and else (row B18 against B19); and what it takes
/// from the closing with equal width (A5).
const FRICTION_EQUAL: f64 = 0.0045;
const FRICTION_ELSE: f64 = 0.072;
const FRICTION_CLOSING_LOSS: f64 = 0.001;

/// Lowest and highest value of a ratio.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Lowest.
    pub lowest: f64,
    /// Highest.
    pub highest: f64,
}

/// How a range is known.
#[derive(Clone, Debug, PartialEq)]
pub enum HowKnown {
    /// The plane formula is exact: a through bore as wide as the ring, without chamfers.
    Exact,
    /// Interpolated between computed seats, widened by what leaving out each of them shows. Ring and width over bore are
    /// within 10 % of those computed; the range is widened for the rest.
    Interpolated,
    /// Bounds: the seat holds all the metal of one computed seat and is held by another.
    Envelope {
        /// Row of the table that gives way more; `None`: a plane ring.
        softer: Option<String>,
        /// Row of the table that gives way less; `None`: a rigid seat.
        stiffer: Option<String>,
    },
}

/// By what factors the plane formula is exceeded.
#[derive(Clone, Debug, PartialEq)]
pub struct SeatFactor {
    /// True total contact force, and with it press force at the same friction, over that of [`Joint::solve`] on the whole
    /// width.
    pub force: Span,
    /// True mean pressure on the contact between the chamfers over that of [`Joint::solve`].
    pub pressure: Span,
    /// True mean closing of the ring's bore over that of [`Joint::solve`].
    pub closing: Span,
    /// Closing of the ring's bore at its back face over the mean, as far as seen in computed seats of this kind; no bound.
    /// The raceway lies between the faces: the mean is not its value.
    pub at_shoulder: Option<Span>,
    /// The same at the front face.
    pub at_front: Option<Span>,
    /// How force, pressure and closing are known.
    pub known: HowKnown,
}

impl Span {
    fn of(values: impl Iterator<Item = f64>) -> Option<Self> {
        values.fold(None, |span, value| {
            let Self { lowest, highest } = span.unwrap_or(Self { lowest: value, highest: value });
            Some(Self { lowest: lowest.min(value), highest: highest.max(value) })
        })
    }

    fn widened(self, less: f64, more: f64) -> Self {
        Self { lowest: self.lowest * (1.0 - less), highest: self.highest * (1.0 + more) }
    }
}

impl SeatFactor {
    /// The same with friction between ring and seat, which hinders both from sliding on each other axially and so stiffens
    /// the joint: the top of each range rises by what was computed for 0.12, in proportion above that.
    ///
    /// **Valid for** friction that acts while the interference closes everywhere at once, as after a chill; the way of a press
    /// was not computed.
    ///
    /// # Errors
    /// A coefficient of friction outside 0 to 1.
    ///
    /// **Source**: independent finite elements, rows A5, B18 and B19 (friction 0.12; housing 90 mm on 62 mm).
    pub fn with_friction(self, friction: f64) -> Result<Self, MechanicsError> {
        let share = beyond(within("coefficient of friction", friction, (0.0, 1.0), "")?, TESTED_FRICTION);
        let exact = self.known == HowKnown::Exact;
        let more = share * if exact { FRICTION_EQUAL } else { FRICTION_ELSE };
        Ok(Self {
            force: self.force.widened(0.0, more),
            pressure: self.pressure.widened(0.0, more),
            closing: self.closing.widened(share * FRICTION_CLOSING_LOSS, more),
            ..self
        })
    }
}

/// Zero for nothing, one up to the tested value, in proportion above it.
fn beyond(value: f64, tested: f64) -> f64 {
    if value <= 0.0 { 0.0 } else { (value / tested).max(1.0) }
}

/// By what factors the true pressure, force and closing of the ring's bore exceed those of two rings of equal width.
///
/// The factor is `(c_ring + c_housing)/(c_ring + s c_housing)` with the Lamé compliances of `joint` and the yielding s of the real
/// housing over that of the plane ring: one for equal width, and from the table for others. Where the table holds seats
/// around this one, s is interpolated; elsewhere it lies between a computed seat that has all the metal of this one and one of
/// which this one has all the metal, or between the plane ring and the rigid seat. For a ring or a width unlike those of
/// the table the range is widened by what elasticity allows to a ring that acts as a bed of springs.
///
/// **Valid for** housing seats, linear elasticity, one temperature in each part, no axial contact between ring face and
/// shoulder. The table is of a ring of 52/62/16 mm, steel in aluminium, `c_ring E/d = 1.83`, housing outside/bore 1.21 to
/// 1.94, wall/width 0.19 to 0.5, hole/bore 0.65 (one row 0.32), 0 to 0.63 widths of housing in front, width/bore 0.258. The ring
/// counts as a plain one: bring a raceway groove in by its equivalent ring. Two chamfers of the same size up to 1/16 of the
/// width were computed; longer ones widen the range in proportion, which was not.
///
/// # Errors
/// As for [`Joint::solve`]; a thickness that is not positive; a hole larger than the bore; negative lengths; chamfers
/// that leave less than a quarter of the width.
///
/// **Source**: own derivation; independent finite elements (`fits/seat_shapes.csv`), linear elastic, frictionless.
pub fn seat_factor(joint: &Joint, shape: &SeatShape, table: &[SeatRow]) -> Result<SeatFactor, MechanicsError> {
    let seat = shape.normal(joint)?;
    let (inner, outer) = joint.checked_rings()?;
    let housing = outer.change(1.0, 0.0, outer.inside_radius);
    let ring = compliance(&inner, &outer) - housing;
    let (span, known) = if seat.is_equal_width() {
        let known = if seat.chamfer > 0.0 { envelope(None, None) } else { HowKnown::Exact };
        (Span { lowest: 1.0, highest: 1.0 }, known)
    } else {
        let relative = ring * joint.outer.elastic_modulus.get::<pascal>() / joint.diameter.get::<meter>();
        let found = yielding(table, &seat, relative);
        let factor = |s: f64| (ring + housing) / (ring + s * housing);
        (Span { lowest: factor(found.highest), highest: factor(found.lowest) }, how_known(found, &seat))
    };
    let chamfer = beyond(seat.chamfer, TESTED_CHAMFER);
    let force = span.widened(chamfer * CHAMFER_FORCE, 0.0);
    let contact = 1.0 - 2.0 * seat.chamfer;
    Ok(SeatFactor {
        force,
        pressure: Span { lowest: force.lowest / contact, highest: force.highest / contact },
        closing: span.widened(chamfer * CHAMFER_CLOSING.0, chamfer * CHAMFER_CLOSING.1),
        at_shoulder: unevenness(table, &seat, |row| row.at_shoulder),
        at_front: unevenness(table, &seat, |row| row.at_front),
        known,
    })
}

fn envelope(softer: Option<String>, stiffer: Option<String>) -> HowKnown {
    HowKnown::Envelope { softer, stiffer }
}

fn how_known(found: Yielding, seat: &Normal) -> HowKnown {
    let plain = found.interpolated && seat.chamfer <= 0.0;
    if plain { HowKnown::Interpolated } else { envelope(found.softer, found.stiffer) }
}

/// Span of a column over the computed seats of the same kind: with or without a wall, flush in front or not. Between flush
/// and longer both kinds count.
fn unevenness(table: &[SeatRow], seat: &Normal, column: impl Fn(&SeatRow) -> Option<f64>) -> Option<Span> {
    if seat.is_equal_width() {
        return Some(Span { lowest: 1.0, highest: 1.0 });
    }
    let alike = |row: &&SeatRow| {
        (row.wall_over_width > 0.0) == (seat.wall > 0.0) && (seat.front > 0.0 || row.front_over_width <= 0.0)
    };
    Span::of(table.iter().filter(alike).filter_map(column))
}
