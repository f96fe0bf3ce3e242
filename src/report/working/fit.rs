//! Largest and least interference at 20 °C, and what smoothing leaves of it.

use super::model::Line;
use super::seat::{INTERFERENCE, SMOOTHED, SMOOTHING, Seat, Which, line, of, symbol, v};
use crate::quantity::{Length, Worked};

const LARGEST: &str = "The tightest case: largest inner part in the smallest outer part";

pub(super) fn lines(seat: Seat<'_>) -> Vec<Line> {
    let fit = &seat.seat.fit;
    let sizes = || v(of("D", Which::Inner)) - v(of("D", Which::Outer));
    let source = vec![seat.source("sizes")];
    let mut lines = vec![
        line(
            "Largest interference",
            seat.interference(),
            sizes(),
            vec![seat.size(Which::Inner, true), seat.size(Which::Outer, false)],
            source.clone(),
        )
        .with_remark(LARGEST),
    ];
    let least = seat.value(
        symbol("U", "min"),
        "least interference at 20 °C",
        Worked::Small(-fit.clearance.loosest),
        "fit/interference_um/loosest",
    );
    let is_loose = fit.clearance.loosest > Length::default();
    let remark = if is_loose { "Below zero: a clearance" } else { "The loosest case: smallest in largest" };
    let put_in = vec![seat.size(Which::Inner, false), seat.size(Which::Outer, true)];
    lines.push(line("Least interference", least, sizes(), put_in, source).with_remark(remark));
    lines.extend(smoothed(seat));
    lines
}

fn smoothed(seat: Seat<'_>) -> Option<Line> {
    let left = seat.seat.fit.effective_interference.tightest;
    let roughness = seat.roughness().filter(|_| left > Length::default())?;
    let rough = v(of("R", Which::Inner)) + v(of("R", Which::Outer));
    let result = seat.value(
        symbol("U", "w"),
        "interference that bears",
        Worked::Small(left),
        "fit/effective_interference_um/tightest",
    );
    let put_in = [seat.interference()].into_iter().chain(roughness).collect();
    let formula = v(INTERFERENCE) - v(SMOOTHING) * rough;
    Some(line("Interference after smoothing of the rough peaks", result, formula, put_in, vec![SMOOTHED.to_owned()]))
}
