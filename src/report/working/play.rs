//! Internal clearance from delivery to running.

use super::formula::Symbol;
use super::model::{Line, Value};
use super::seat::{line, symbol, v};
use crate::mechanics::ClearanceRange;
use crate::plan::Plan;
use crate::quantity::Worked;

const DELIVERED: Symbol = symbol("G", "");
const OUTER: Symbol = symbol("ΔG", "o");
const INNER: Symbol = symbol("ΔG", "i");
const WARM: Symbol = symbol("ΔG", "t");
const FITTED: Symbol = symbol("G", "f");
const RUNNING: Symbol = symbol("G", "r");

pub(super) fn lines(plan: &Plan<'_>) -> Vec<Line> {
    let Some(play) = &plan.internal_clearance else { return Vec::new() };
    let value = |symbol, meaning: &str, range: ClearanceRange, key: &str, most: bool| {
        let (amount, end) = if most { (range.most, "most") } else { (range.least, "least") };
        let at = format!("/internal_clearance/{key}/{end}");
        Value { symbol, meaning: format!("{end} {meaning}"), amount: Worked::Small(amount), at }
    };
    let both_ends = |most: bool| {
        let end = if most { "Most" } else { "Least" };
        let mut formula = v(DELIVERED);
        let mut put_in = vec![value(DELIVERED, "clearance as delivered", play.delivered, "delivered_um", most)];
        let losses = [
            (OUTER, "outer ring", play.outer_ring, "outer_ring_um"),
            (INNER, "inner ring", play.inner_ring, "inner_ring_um"),
        ];
        for (symbol, ring, loss, key) in losses {
            if let Some(loss) = loss {
                formula = formula - v(symbol);
                put_in.push(value(symbol, &format!("lost to the fit of the {ring}"), loss, key, !most));
            }
        }
        let fitted = || value(FITTED, "clearance when fitted", play.fitted, "fitted_um", most);
        let warm = value(WARM, "lost to the warmer inner ring", play.temperature, "temperature_um", !most);
        let running = value(RUNNING, "clearance while running", play.running, "running_um", most);
        let source = vec![play.source.clone()];
        [
            line(format!("{end} internal clearance when fitted"), fitted(), formula, put_in, source.clone()),
            line(
                format!("{end} internal clearance while running, without load"),
                running,
                v(FITTED) - v(WARM),
                vec![fitted(), warm],
                source,
            ),
        ]
    };
    both_ends(false).into_iter().chain(both_ends(true)).collect()
}
