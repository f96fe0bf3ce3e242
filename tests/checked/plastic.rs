//! First yield and hubs that have yielded in part.

use super::mechanics_units::{in_mm, in_mpa, joint, mm, mpa, ring};
use super::reference_rows::{Row, number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::mechanics::*;
use uom::si::ratio::ratio;

pub const SETS: &[Set] = &[
    Set {
        family: "Press fits",
        title: "First yield of either part",
        allowed: "5e-12 of the value: half a unit of the twelfth printed digit",
        checks: first_yield,
    },
    Set {
        family: "Press fits",
        title: "Partly plastic hubs",
        allowed: "5e-12 of the value; 2e-11 for the plastic ratio and growth, 2e-10 for the plastic share, which move by \
                  more than the rounding of the interference",
        checks: partly_plastic,
    },
];

/// Twelve printed digits: half a unit of the last one is below 5e-12 of the value.
const PRINTED: [f64; 2] = [5e-12, 1e-12];

/// The rows whose kind starts so.
pub fn rows(kind: &str) -> Vec<Row> {
    let all = read("mechanics/elastic_plastic.csv").into_iter();
    let rows: Vec<Row> = all.filter(|row| row["kind"].starts_with(kind)).collect();
    assert!(rows.len() > 5, "{kind}");
    rows
}

pub fn hub(row: &Row, rule: FlowRule) -> PlasticHub {
    let get = |column: &str| number(row, column);
    let inner = ring(get("di_mm"), get("dF_mm"), get("E_s"), get("nu_s"));
    let outer = ring(get("dF_mm"), get("Da_mm"), get("E_h"), get("nu_h"));
    PlasticHub { joint: joint(inner, outer, 0.0), hub_yield: mpa(get("Y_h")), inner_yield: mpa(get("Y_s")), rule }
}

pub fn at(hub: PlasticHub, interference: f64) -> PlasticHub {
    PlasticHub { joint: Joint { interference: mm(interference), ..hub.joint }, ..hub }
}

fn first_yield() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/elastic_plastic.csv");
    for row in rows("elastic limit") {
        sheet.row(row["case"].clone());
        let hub = hub(&row, FlowRule::Tresca);
        let outer = yield_start(&hub.joint, Part::Outer, hub.hub_yield).unwrap();
        let inner = yield_start(&hub.joint, Part::Inner, hub.inner_yield).unwrap();
        let mut pressure = |column: &str, onset: Onset| {
            sheet.within((column, "MPa"), of(&row, column, in_mpa(onset.pressure)), bound(&row, column))
        };
        pressure("p_hub_tresca", outer.tresca);
        pressure("p_hub_mises", outer.von_mises);
        // A ring pressed from outside alone: both criteria say the same.
        pressure("p_shaft", inner.tresca);
        pressure("p_shaft", inner.von_mises);
        let first = |a: Onset, b: Onset| if a.interference < b.interference { a } else { b };
        let (tresca, mises) = (first(inner.tresca, outer.tresca), first(inner.von_mises, outer.von_mises));
        pressure("p_limit_tresca", tresca);
        pressure("p_limit_mises", mises);
        let limits = hub.limits().unwrap();
        pressure("p_hub_tresca", limits.first);
        let din = PlasticHub { rule: FlowRule::ModifiedShearStress, ..hub };
        pressure("p_hub_dinstyle", din.limits().unwrap().first);
        sheet.column(&row, "delta_limit_tresca_mm", in_mm(tresca.interference), PRINTED);
        sheet.column(&row, "delta_limit_mises_mm", in_mm(mises.interference), PRINTED);
    }
    sheet.done()
}

fn of(row: &Row, column: &str, computed: f64) -> [f64; 2] {
    [number(row, column), computed]
}

fn bound(row: &Row, column: &str) -> f64 {
    PRINTED[0] * number(row, column).abs() + PRINTED[1]
}

fn partly_plastic() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/elastic_plastic.csv");
    for row in rows("partly plastic") {
        sheet.row(row["case"].clone());
        let state = solved(&row, FlowRule::Tresca, "delta_mm");
        sheet.column(&row, "p_MPa", in_mpa(state.pressure), PRINTED);
        zone(&mut sheet, &row, &state);
        sheet.column(&row, "hub_bore_growth_mm", in_mm(state.bore_growth), [2e-11, 1e-12]);
        sheet.column(&row, "p_over_Y", in_mpa(state.pressure) / number(&row, "Y_h"), PRINTED);
        let state = solved(&row, FlowRule::ModifiedShearStress, "delta_dinstyle_mm");
        sheet.column(&row, "p_dinstyle_MPa", in_mpa(state.pressure), PRINTED);
        zone(&mut sheet, &row, &state);
    }
    sheet.done()
}

fn solved(row: &Row, rule: FlowRule, interference: &str) -> PartlyPlastic {
    let hub = hub(row, rule);
    // Rows of a wall that is plastic throughout lie on the end itself; their twelfth digit may lie beyond it.
    let last = in_mm(hub.limits().unwrap().last.interference);
    let given = number(row, interference);
    assert!(given <= last * (1.0 + PRINTED[0]), "{} {given} {last}", row["case"]);
    at(hub, given.min(last)).solve().unwrap()
}

fn zone(sheet: &mut Sheet, row: &Row, state: &PartlyPlastic) {
    // ζ is printed whole; it moves by the rounding of the interference, little more than in proportion.
    sheet.column(row, "zeta_c_over_a", state.plastic_ratio.get::<ratio>(), [2e-11, 1e-12]);
    sheet.column(row, "area_plastic_share", state.plastic_share.get::<ratio>(), [2e-10, 1e-12]);
}
