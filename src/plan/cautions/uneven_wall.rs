//! A boss that is thinner on one side.

use crate::job::AnyValue;
use crate::plan::caution::{Caution, Level};
use crate::plan::sentence::say;
use crate::plan::uneven_wall::UnevenWallPlan;
use crate::quantity::Toward;

const SOURCE: &str = "thick-wall rings (Lamé) with the thinnest and the thickest wall as bounds; equivalent wall: own reasoning, no \
                      published source";

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
        .value(AnyValue::Force(plan.thin.force.tightest), Toward::Nearest)
        .text(" with the thin wall all round and ")
        .value(AnyValue::Force(plan.thick.force.tightest), Toward::Up)
        .text(
            " with the thick one; the truth lies between. The bore goes oval when the ring is in, and the thin side warms and \
             cools first: turn the piece in the oven, and measure across and along afterwards.",
        );
    found.push(Caution::new("uneven-wall", Level::Caution, sentence, SOURCE));
    let Some(factor) = plan.thin.yield_factor.tightest.filter(|factor| *factor < 1.0) else { return };
    let sentence = say("housing seat: with the thin wall all round the tightest case stresses it to ")
        .value(AnyValue::Pressure(plan.thin.hoop.tightest), Toward::Up)
        .text(" at the bore, and strength over stress is ")
        .value(AnyValue::Number(factor), Toward::Down)
        .text(": the thin side may yield or crack. Choose a fit with less interference.");
    found.push(Caution::new("thin-side", Level::Warning, sentence, SOURCE));
}
