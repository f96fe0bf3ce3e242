//! A boss that is thinner on one side.

use crate::job::AnyValue;
use crate::plan::caution::{Caution, Level};
use crate::plan::sentence::say;
use crate::plan::uneven_wall::UnevenWallPlan;
use crate::quantity::Toward;

const SOURCE: &str = "thick-wall rings (Lamé) with the thinnest and the thickest wall as bounds; equivalent wall: own reasoning, no \
                      published source";
const THIN: &str = "eccentric cylinder under internal pressure, Jeffery (1921), as in Timoshenko and Goodier, Theory of Elasticity \
                    (from memory), with the pressure of the equivalent wall all round";

pub(super) fn of_job(plan: &UnevenWallPlan, found: &mut Vec<Caution>) {
    let size = AnyValue::RoughSize;
    let sentence = say("housing seat: the wall runs from ")
        .value(size(plan.thin.wall), Toward::Nearest)
        .text(" to ")
        .value(size(plan.thick.wall), Toward::Nearest)
        .text(", but the theory is axisymmetric: every result is that of a ring with the same wall all round. The plan uses the \
               equivalent wall of ")
        .value(size(plan.equivalent.wall), Toward::Nearest)
        .text(". The tightest case takes ")
        .value(AnyValue::Force(plan.thin.force.tightest), Toward::Up)
        .text(" with the thin wall all round and ")
        .value(AnyValue::Force(plan.thick.force.tightest), Toward::Up)
        .text(
            " with the thick one; force and pressure lie between, the stress of the thin side does not. The bore goes oval when the ring is in, and the thin side warms and \
             cools first: turn the piece in the oven, and measure across and along afterwards.",
        );
    found.push(Caution::new("uneven-wall", Level::Caution, sentence, SOURCE));
    let Some((side, factor)) =
        plan.thin_side.and_then(|side| Some((side, side.yield_factor.tightest?))).filter(|(_, factor)| *factor < 1.0)
    else {
        return;
    };
    let sentence = say("housing seat: the tightest case stresses the thin side to ")
        .value(AnyValue::Pressure(side.hoop.tightest), Toward::Up)
        .text(" around the bore, and strength over stress is ")
        .value(AnyValue::Number(factor), Toward::Down)
        .text(": it may yield or crack. Choose a fit with less interference.");
    found.push(Caution::new("thin-side", Level::Warning, sentence, THIN));
}
