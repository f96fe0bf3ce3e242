//! A cold ring in a warm housing, followed in its section until it grips.

use super::section_heat::{aluminium, film, in_celsius, reference_section, seconds, steel};
use super::section_rows::{Row, in_mm, mm, number, rows};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::quantity::{HeatTransfer, Length, celsius};
use seatwise::section::heat::{
    Conduction, Exposed, FaceLaw, Faces, Gap, Growth, Placement, Property, Seating, Stage, Until,
};
use seatwise::section::{Accuracy, Model};
use uom::si::heat_transfer::watt_per_square_meter_kelvin;
use uom::si::length::micrometer;
use uom::si::time::second;

pub const SETS: &[Set] = &[Set {
    family: "Section of a seat",
    title: "A ring until it grips",
    allowed: "0.5 % of the time; temperatures 0.1 K; clearance 0.1 µm",
    checks: seated_races,
}];

/// The gap of the reference rows.
pub fn gap(placement: Placement) -> Gap {
    Gap {
        air: Property::line(8.1e-5, 300.0 - 0.0263 / 8.1e-5),
        smallest: Length::new::<micrometer>(1.0),
        emissivity: 0.3,
        contact: HeatTransfer::new::<watt_per_square_meter_kelvin>(5000.0),
        placement,
    }
}

/// A stage in the seat, until it grips.
pub fn seated<'a>(around: &'a Exposed, (delta, gap, growth): (Length, Gap, Growth), at_most: f64) -> Stage<'a> {
    Stage {
        around: vec![Faces::all(FaceLaw::Exposed(around)); 2],
        seating: Some(Seating { interference: vec![delta], gap, growth, shoulder: None }),
        until: Until::Grips { at_most: seconds(at_most) },
    }
}

fn races() -> Vec<Vec<Row>> {
    let mut races: Vec<Vec<Row>> = Vec::new();
    for row in rows(include_str!("../reference/mechanics/transient_gap.csv")) {
        match races.last_mut() {
            Some(race) if race[0]["case"] == row["case"] => race.push(row),
            _ => races.push(vec![row]),
        }
    }
    races
}

fn seated_races() -> Vec<Check> {
    let mut sheet = Sheet::of("mechanics/transient_gap.csv");
    let model = Model::new(&reference_section(52.0), Accuracy::Coarse).unwrap();
    let conduction = Conduction::new(&model, &[steel(), aluminium()]).unwrap();
    let air = film(10.0, 20.0);
    for race in races() {
        let expected = number(&race[0], "t_contact_s");
        let delta = mm(number(&race[0], "delta_mm"));
        let stage = seated(&air, (delta, gap(Placement::Concentric), Growth::Mean), 2.0 * expected);
        let start = ["T_ring0_C", "T_housing0_C"].map(|column| celsius(number(&race[0], column)));
        let history = conduction.run(&conduction.uniform(&start).unwrap(), &[stage]).unwrap();
        sheet.row(format!("{}, {}", race[0]["case"], race[0]["note"]));
        sheet.column(&race[0], "t_contact_s", history.stages()[0].grip.unwrap().get::<second>(), [0.005, 0.0]);
        // The last row is the contact itself, where temperatures change fastest.
        for row in &race[..race.len() - 1] {
            let at = seconds(number(row, "t_s"));
            let (ring, housing) = (history.part(0, at).unwrap(), history.part(1, at).unwrap());
            sheet.row(format!("{}, {} s", row["case"], row["t_s"]));
            for (column, found) in [
                ("T_ring_mean_C", ring.mean),
                ("T_ring_OD_C", ring.outside),
                ("T_wall_mean_C", housing.tube),
                ("T_bore_C", housing.inside.unwrap()),
            ] {
                sheet.column(row, column, in_celsius(found), [0.0, 0.1]);
            }
            let clear = history.clearance(0, delta, Growth::Mean, at).unwrap();
            sheet.column(row, "clearance_dia_um", in_mm(clear.mean) * 1e3, [0.0, 0.1]);
            // The growth of either side, over the diameter of 62 mm, says the same.
            let growth = |part| f64::from(history.seat_growth(part, Growth::Mean, at).unwrap());
            let by_growth = 62.0 * (growth(1) - growth(0)) - in_mm(delta);
            assert!((by_growth - in_mm(clear.mean)).abs() < 1e-9, "{row:?}: {by_growth}");
        }
    }
    sheet.done()
}
