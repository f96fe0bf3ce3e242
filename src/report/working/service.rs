//! The fit at the ends of service.

use super::formula::Formula;
use super::model::{Line, Value};
use super::press::{compliance, compliance_values, rubbing, rubbing_values, shape, times};
use super::seat::{JOINT, SMOOTHED, SMOOTHING, Seat, Which, line, of, symbol, v};
use crate::job::ServiceEnd;
use crate::plan::ServiceFit;
use crate::quantity::{Force, Length, Worked};

pub(super) fn lines(seat: Seat<'_>) -> Vec<Line> {
    seat.seat.service.iter().enumerate().flat_map(|(number, state)| of_state(seat, number, state)).collect()
}

fn end(state: &ServiceFit) -> &'static str {
    match state.end {
        ServiceEnd::Coldest => "coldest",
        ServiceEnd::Hottest => "hottest",
    }
}

fn of_state(seat: Seat<'_>, number: usize, state: &ServiceFit) -> Vec<Line> {
    let mut lines = vec![interference(seat, number, state, true), interference(seat, number, state, false)];
    // What a part that has yielded holds is no product of its interference.
    let elastic = state.holds_elastically;
    if elastic && state.holds_force.loosest > Force::default() {
        lines.extend(holds(seat, number, state));
    }
    lines
}

fn left(seat: Seat<'_>, number: usize, state: &ServiceFit, tightest: bool) -> Value {
    let (clearance, case) =
        if tightest { (state.clearance.tightest, "tightest") } else { (state.clearance.loosest, "loosest") };
    let meaning = format!("interference in {} service, {case} case", end(state));
    let at = format!("service/{number}/interference_um/{case}");
    seat.value(symbol("U", "s"), meaning, Worked::Small(-clearance), &at)
}

fn interference(seat: Seat<'_>, number: usize, state: &ServiceFit, tightest: bool) -> Line {
    let grown = |which: Which| v(of("D", which)) * (Formula::Whole(1) + v(of("ε", which)));
    let mut formula = grown(Which::Inner) - grown(Which::Outer);
    let strain = |which: Which| {
        let strain = seat.part(which).strain_in_service.get(number).copied().unwrap_or_default();
        let at = format!("strain_in_service_um_m/{number}");
        seat.strain(which, strain, &at, format!("its temperature in {} service", end(state)))
    };
    let (inner, outer) = (seat.size(Which::Inner, tightest), seat.size(Which::Outer, !tightest));
    let mut put_in = vec![inner, strain(Which::Inner), outer, strain(Which::Outer)];
    if seat.seat.basis.turning > Length::default() {
        let turning = symbol("U", "t");
        formula = formula - v(turning);
        let amount = Worked::Small(seat.seat.basis.turning);
        put_in.push(seat.value(turning, "what turning takes from the interference", amount, "basis/turning_um"));
    }
    let result = left(seat, number, state, tightest);
    let remark = if result.amount.si() < 0.0 { "Below zero: a clearance" } else { "" };
    let case = if tightest { "tightest" } else { "loosest" };
    let what = format!("Interference in {} service, {case} case", end(state));
    line(what, result, formula, put_in, seat.sources_of_both("expansion")).with_remark(remark)
}

/// What the loosest case surely holds.
fn holds(seat: Seat<'_>, number: usize, state: &ServiceFit) -> [Line; 2] {
    let factor = shape(seat, "F", seat.seat.press.shape.force.0, "low");
    let remaining = left(seat, number, state, false);
    let mut bears = v(remaining.symbol);
    let mut put_in: Vec<Value> = factor.iter().cloned().chain(rubbing_values(seat, false)).chain([remaining]).collect();
    let mut sources =
        vec![seat.source("pressure and stress"), seat.source("friction"), seat.source("shape of the seat")];
    if let Some(roughness) = seat.roughness() {
        bears = bears - v(SMOOTHING) * (v(of("R", Which::Inner)) + v(of("R", Which::Outer)));
        put_in.extend(roughness);
        sources.push(SMOOTHED.to_owned());
    }
    sources.extend(seat.sources_of_both("elastic modulus"));
    put_in.extend(compliance_values(seat));
    let formula = times(factor.as_ref(), rubbing()) * (bears / compliance());
    let force = || {
        let at = format!("service/{number}/holds_n/loosest");
        seat.value(symbol("F", "h"), "axial force that it holds", Worked::Force(state.holds_force.loosest), &at)
    };
    let source = vec![seat.source("press force"), seat.source("friction")];
    let what = format!("Axial force that the loosest case holds in {} service", end(state));
    let torque = Worked::Torque(state.holds_torque.loosest);
    let at = format!("service/{number}/holds_nm/loosest");
    let torque = seat.value(symbol("M", "h"), "torque that it holds", torque, &at);
    [
        line(what, force(), formula, put_in, sources),
        line(
            format!("Torque that the loosest case holds in {} service, without axial force", end(state)),
            torque,
            v(symbol("F", "h")) * v(JOINT) / Formula::Whole(2),
            vec![force(), seat.joint()],
            source,
        ),
    ]
}
