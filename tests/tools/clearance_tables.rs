//! The tables of internal clearance against other texts and against themselves.

use super::{number, um};
use crate::checked::prove;
use crate::checked::tables::clearances;
use crate::reference_rows;
use seatwise::quantity::Nanometres;
use seatwise::stock::dimensions::ClearanceGroup;
use seatwise::stock::iso286::Status;
use seatwise::stock::iso5753::{BearingFamily, tables};

#[test]
fn other_texts_agree_but_for_the_figures_that_are_known_to_differ() {
    prove("Internal clearance, ISO 5753-1");
    let rows = reference_rows::read("fits/internal_clearance.csv");
    assert_eq!(rows.len(), 5 * 26 + 3 + 5 * 8 + 5 + 1);
    for row in &rows {
        for (_, got) in clearances(row) {
            let range = (got.range().over.mm(), got.range().to.mm());
            assert_eq!(range, (number(row, "over_mm"), number(row, "to_mm")), "{row:?}");
            let figure = |column| Nanometres::from_um(number(row, column));
            let same = got.least == figure("min_um") && got.most == figure("max_um");
            assert_eq!(same, row["differs"].is_empty(), "{row:?}: {got:?}");
        }
    }
}

#[test]
fn bands_follow_each_other_groups_rise_and_so_do_the_figures_with_the_bore() {
    for family in BearingFamily::ALL {
        for group in ClearanceGroup::ALL {
            let rows: Vec<_> = tables().unwrap().rows(family).filter(|row| row.group == group).collect();
            assert!(rows.len() >= 20, "{family:?} {group:?}");
            for pair in rows.windows(2) {
                assert_eq!(pair[0].range().to, pair[1].range().over, "{pair:?}");
                assert!(pair[0].least <= pair[1].least && pair[0].most <= pair[1].most, "{pair:?}");
            }
            for row in rows {
                let next = ClearanceGroup::ALL.into_iter().find(|other| *other > group);
                let next = next.and_then(|next| tables().unwrap().clearance(family, next, row.range().to));
                assert!(next.is_none_or(|next| next.least > row.least && next.most > row.most), "{row:?} {next:?}");
            }
        }
    }
}

#[test]
fn rows_from_memory_are_the_large_ball_bearings_and_the_smallest() {
    for row in tables().unwrap().rows(BearingFamily::DeepGrooveBall) {
        let opened_band = row.range().over.mm() >= 6.0 && row.range().to.mm() <= 100.0;
        let opened_cell = match row.group {
            ClearanceGroup::CN => row.range().to == Nanometres::from_mm(120.0),
            ClearanceGroup::C3 => row.range().to == Nanometres::from_mm(6.0),
            _ => false,
        };
        assert_eq!(row.status == Status::Published, opened_band || opened_cell, "{row:?}");
    }
    assert!(tables().unwrap().rows(BearingFamily::CylindricalRoller).all(|row| row.status == Status::Published));
}

#[test]
fn a_bore_or_group_outside_the_table_has_no_row() {
    let find =
        |group, bore| tables().unwrap().clearance(BearingFamily::DeepGrooveBall, group, Nanometres::from_mm(bore));
    assert!(find(ClearanceGroup::CN, 2.5).is_none() && find(ClearanceGroup::CN, 500.001).is_none());
    assert!(find(ClearanceGroup::C5, 450.0).is_none() && find(ClearanceGroup::CN, 500.0).is_some());
}

#[test]
fn the_tightest_group_that_will_do_is_found_from_a_group_on() {
    let find = |from, loss| {
        let bore = Nanometres::from_mm(30.0);
        let found =
            tables().unwrap().tightest(BearingFamily::DeepGrooveBall, from, bore, |row| row.least.length() >= um(loss));
        found.map(|row| row.group)
    };
    // Bore over 24 up to 30 mm: least clearances 1, 5, 13, 23, 30 µm.
    let from = ClearanceGroup::CN;
    for (loss, wanted) in [
        (-3.0, Some(ClearanceGroup::CN)),
        (5.0, Some(ClearanceGroup::CN)),
        (5.1, Some(ClearanceGroup::C3)),
        (13.1, Some(ClearanceGroup::C4)),
        (30.0, Some(ClearanceGroup::C5)),
        (30.1, None),
        (f64::NAN, None),
    ] {
        assert_eq!(find(from, loss), wanted, "{loss}");
    }
    assert_eq!(find(ClearanceGroup::C4, 0.0), Some(ClearanceGroup::C4));
}
