//! Stacks of dimensions.

use super::mechanics_units::{in_mm, mm};
use super::reference_rows::{number, read};
use super::sheet::Sheet;
use super::{Check, Set};
use seatwise::assembly::readings::{Readings, ReadingsError};
use seatwise::assembly::stack::{Chain, Ends, Link, Scatter, Way};
use seatwise::quantity::Length;
use uom::si::length::{inch, micrometer, millimeter};

pub const SETS: &[Set] = &[
    Set {
        family: "Assembly",
        title: "Printed stacks",
        allowed: "half a unit of the last printed digit",
        checks: worked_stacks,
    },
    Set {
        family: "Assembly",
        title: "Scatter of stacks",
        allowed: "2e-6: the square of the step of the grid of 2000 cells",
        checks: shares,
    },
    Set {
        family: "Assembly",
        title: "Mean, out-of-round and taper of readings",
        allowed: "mean 1e-8 mm, form 1e-5 µm",
        checks: readings,
    },
];

/// A chain from "+40.00~0.10;-25.00~0.05". A dimension that stands alone is made of its two limits.
pub fn chain(links: &str, inches: bool) -> Chain {
    let length = |value: f64| if inches { Length::new::<inch>(value) } else { Length::new::<millimeter>(value) };
    let links = links.split(';').map(|link| {
        let way = if link.starts_with('+') { Way::Opens } else { Way::Fills };
        let (size, either) = link[1..].split_once('~').unwrap();
        let (size, either): (f64, f64) = (size.parse().unwrap(), either.parse().unwrap());
        Link { least: length(size - either), most: length(size + either), way }
    });
    Chain::new(links.collect()).unwrap()
}

fn worked_stacks() -> Vec<Check> {
    let mut sheet = Sheet::of("assembly/stacks.csv");
    for row in read("assembly/stacks.csv") {
        let inches = row["unit"] == "in";
        let chain = chain(&row["links"], inches);
        let unit = |length: Length| if inches { length.get::<inch>() } else { in_mm(length) };
        let (worst, usual) = (chain.worst_case(), chain.root_sum_square());
        let half = |ends: Ends| unit(ends.most - ends.least) / 2.0;
        sheet.row(row["id"].clone());
        sheet.source(&row["source"], &row["status"]);
        let mut printed = |column: &str, digit: &str, computed: f64| {
            let name = if inches { "in" } else { "mm" };
            sheet.within((column, name), [number(&row, column), computed], number(&row, digit) / 2.0 + 1e-9);
        };
        printed("middle", "digit_of_middle", unit(worst.middle));
        printed("worst", "digit", half(worst));
        if !row["root"].is_empty() {
            printed("root", "digit", half(usual));
        }
    }
    sheet.done()
}

/// A play of sizes spread over these widths, mm, about zero.
pub fn spread(widths: &[f64]) -> Scatter {
    let opens = widths.iter().map(|width| Link {
        least: mm(10.0 - width / 2.0),
        most: mm(10.0 + width / 2.0),
        way: Way::Opens,
    });
    let mut links: Vec<Link> = opens.collect();
    let middle = mm(10.0 * widths.len() as f64);
    links.push(Link { least: middle, most: middle, way: Way::Fills });
    Chain::new(links).unwrap().scatter()
}

fn shares() -> Vec<Check> {
    let mut sheet = Sheet::of("assembly/scatter.csv");
    for row in read("assembly/scatter.csv") {
        let widths: Vec<f64> = row["widths"].split(';').map(|width| width.parse().unwrap()).collect();
        sheet.row(format!("widths {}, below {}", row["widths"].replace(';', " "), row["x"]));
        sheet.source(&row["source"], "closed form");
        let computed = spread(&widths).share_below(mm(number(&row, "x")));
        sheet.within(("share", ""), [number(&row, "share"), computed], 2e-6);
    }
    sheet.done()
}

/// A table of readings, mm, a depth a row.
pub fn table(rows: &[Vec<f64>]) -> Result<Readings, ReadingsError> {
    Readings::new(rows.iter().map(|row| row.iter().copied().map(mm).collect()).collect())
}

fn readings() -> Vec<Check> {
    let mut sheet = Sheet::of("assembly/readings.csv");
    for (k, row) in (1..).zip(read("assembly/readings.csv")) {
        let depth = |depth: &str| depth.split(' ').map(|reading| reading.parse().unwrap()).collect();
        let rows: Vec<Vec<f64>> = row["readings"].split('|').map(depth).collect();
        let form = table(&rows).unwrap().form();
        sheet.row(format!("table {k}"));
        sheet.column(&row, "mean_mm", in_mm(form.mean), [0.0, 1e-8]);
        for (column, computed) in [("out_of_round_um", form.out_of_round), ("taper_um", form.taper)] {
            assert_eq!(computed.is_none(), row[column].is_empty(), "{column} of table {k}");
            if let Some(length) = computed {
                sheet.column(&row, column, length.get::<micrometer>(), [0.0, 1e-5]);
            }
        }
    }
    sheet.done()
}
