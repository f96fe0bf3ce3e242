//! Where parts begin to yield, what a hub or a bush holds that has yielded, and what it has lost when it is fitted again.

// Helpers outside the test functions unwrap too; a panic is how a test fails.
#![allow(clippy::unwrap_used)]

mod checked;

use checked::mechanics_units::{close, in_mm, in_mpa, joint, mpa, ring};
use checked::plastic::{at, hub, rows};
use checked::prove;
use checked::reference_rows::number;
use proptest::prelude::*;
use seatwise::mechanics::*;
use uom::si::ratio::ratio;

/// Twelve printed digits: half a unit of the last one is below 5e-12 of the value.
const PRINTED: f64 = 5e-12;

#[path = "mechanics_plastic/bushes.rs"]
mod bushes;

mod exact {
    use super::*;

    #[test]
    fn both_parts_begin_to_yield_where_the_exact_solution_says() {
        prove("First yield of either part");
        for row in rows("elastic limit") {
            let hub = hub(&row, FlowRule::Tresca);
            let outer = yield_start(&hub.joint, Part::Outer, hub.hub_yield).unwrap();
            let first = hub.limits().unwrap().first;
            close(in_mm(first.interference), in_mm(outer.tresca.interference), 1e-12, &row["case"]);
        }
    }

    #[test]
    fn partly_plastic_hubs_agree_with_the_exact_solution() {
        prove("Partly plastic hubs");
        assert!(rows("partly plastic").iter().all(|row| row["valid"] == "yes"));
    }

    #[test]
    fn a_solid_shaft_of_the_same_metal_has_a_closed_form() {
        // δ/d = (Y/E) ζ², rows P01 to P03; a ratio taken over the diameter for the radius, or the wall, would miss it.
        for row in rows("partly plastic").iter().filter(|row| ["P01", "P02", "P03"].contains(&row["case"].as_str())) {
            let zeta = number(row, "zeta_c_over_a");
            close(number(row, "delta_mm"), 60.0 * 300.0 / 206e3 * zeta * zeta, PRINTED, &row["case"]);
        }
    }

    #[test]
    fn the_formula_for_the_elastic_hub_would_promise_too_much() {
        for row in rows("partly plastic") {
            let hub = at(hub(&row, FlowRule::Tresca), 0.999 * number(&row, "delta_mm"));
            let elastic = hub.joint.solve().unwrap().pressure;
            assert!(elastic > hub.solve().unwrap().pressure * 1.01, "{}", row["case"]);
        }
    }
}

mod limits {
    use super::*;

    fn steel_hub(outside: f64) -> PlasticHub {
        let (shaft, hub) = (ring(0.0, 60.0, 206e3, 0.3), ring(60.0, outside, 206e3, 0.3));
        let (hub_yield, inner_yield) = (mpa(300.0), mpa(600.0));
        PlasticHub { joint: joint(shaft, hub, 0.0), hub_yield, inner_yield, rule: FlowRule::Tresca }
    }

    #[test]
    fn beyond_the_theory_is_refused_with_the_size_at_which_it_ends() {
        let said = at(steel_hub(120.0), 0.36).solve().unwrap_err().to_string();
        assert!(said.contains("0.3600") && said.contains("0.3495"), "{said}");
        // A wall thicker than e times the bore ends at p = Y, before it is plastic throughout.
        let thick = steel_hub(240.0).limits().unwrap();
        close(in_mpa(thick.last.pressure), 300.0, 1e-12, "p = Y");
        // The shaft yields first.
        let weak = PlasticHub { inner_yield: mpa(170.0), ..at(steel_hub(120.0), 0.16) };
        let said = weak.solve().unwrap_err().to_string();
        // A solid shaft bears the pressure all round, and by Tresca no more: the pressure of a shaft that holds.
        let pressure = at(steel_hub(120.0), 0.16).solve().unwrap().pressure;
        let stressed = format!("inner part is stressed to {:.0} MPa but yields at 170 MPa", in_mpa(pressure));
        assert!(said.contains(&stressed), "{said}, not {stressed}");
        for bad in [f64::NAN, 0.0, -1.0, f64::INFINITY] {
            assert!(PlasticHub { hub_yield: mpa(bad), ..at(steel_hub(120.0), 0.1) }.solve().is_err());
            assert!(PlasticHub { inner_yield: mpa(bad), ..at(steel_hub(120.0), 0.1) }.solve().is_err());
        }
        assert!(at(steel_hub(120.0), f64::NAN).solve().is_err());
    }

    #[test]
    fn an_elastic_or_open_joint_is_the_plain_one() {
        for interference in [-0.1, 0.0, 0.03, 0.08] {
            let hub = at(steel_hub(120.0), interference);
            let (state, plain) = (hub.solve().unwrap(), hub.joint.solve().unwrap());
            close(in_mpa(state.pressure), in_mpa(plain.pressure), 1e-14, "pressure");
            close(in_mm(state.bore_growth), in_mm(plain.outer.inside_change.unwrap()), 1e-12, "growth");
            assert!((state.plastic_ratio.get::<ratio>() - 1.0).abs() < 1e-15);
            assert!(in_mm(state.permanent_set.unwrap()).abs() < 1e-15);
        }
    }

    #[test]
    fn a_thick_wall_that_flows_back_has_no_stated_set() {
        // k = 4: elastic up to 140.625 MPa, flows back above 281.25 MPa, ends at 300 MPa.
        let hub = steel_hub(240.0);
        let last = in_mm(hub.limits().unwrap().last.interference);
        let state = at(hub, last * 0.999).solve().unwrap();
        assert!(in_mpa(state.pressure) > 281.25 && state.permanent_set.is_none(), "{state:?}");
        let early = at(hub, last * 0.5).solve().unwrap();
        assert!(in_mpa(early.pressure) < 281.25 && in_mm(early.permanent_set.unwrap()) > 0.0, "{early:?}");
    }
}

mod properties {
    use super::*;

    proptest! {
        #[test]
        fn a_second_fitting_stays_elastic_and_comes_to_the_pressure_of_the_first(
            bore in 0.0..0.6_f64, wall in 1.05..2.2_f64, share in 0.0..1.0_f64, soft in 40e3..210e3_f64, more in 0.0..0.05_f64,
        ) {
            let (shaft, outer) = (ring(60.0 * bore, 60.0, 206e3, 0.3), ring(60.0, 60.0 * wall, soft, 0.31));
            let hub = PlasticHub {
                joint: joint(shaft, outer, 0.0), hub_yield: mpa(150.0), inner_yield: mpa(2000.0), rule: FlowRule::Tresca,
            };
            let limits = hub.limits().unwrap();
            let (from, to) = (in_mm(limits.first.interference), in_mm(limits.last.interference));
            let interference = from + share * (to - from) * 0.999;
            let first = at(hub, interference).solve().unwrap();
            let set = in_mm(first.permanent_set.unwrap());
            prop_assert!(set >= 0.0 && set < interference);
            let second = at(hub, interference - set).joint.solve().unwrap();
            close(in_mpa(second.pressure), in_mpa(first.pressure), 1e-9, "second fitting");
            // Tighter: more pressure, more of the wall, more lost.
            let tighter = at(hub, (interference * (1.0 + more)).min(to)).solve().unwrap();
            prop_assert!(tighter.pressure >= first.pressure * (1.0 - 1e-12));
            prop_assert!(tighter.plastic_share.get::<ratio>() >= first.plastic_share.get::<ratio>() - 1e-12);
            prop_assert!(tighter.plastic_share.get::<ratio>() <= 1.0 + 1e-12);
            prop_assert!(in_mm(tighter.permanent_set.unwrap()) >= set - 1e-12);
            // What the hub gives and the shaft takes is the interference.
            let taken = in_mpa(first.pressure) * -in_mm(at(hub, from).joint.solve().unwrap().inner.outside_change)
                / in_mpa(limits.first.pressure);
            close(in_mm(first.bore_growth) + taken, interference, 1e-9, "interference");
        }
    }
}
